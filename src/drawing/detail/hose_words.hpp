#pragma once
/// Everything on a hose sheet that is said in words, set so that it fits.

#include <string>
#include <vector>

#include "drawing/detail/hose_space.hpp"
#include "drawing/detail/hose_subject.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing::detail {

/// A heading with its lines.
struct Block {
  std::string heading;
  std::vector<std::string> lines;
  bool whole{};           ///< never cut
  std::string cut_words;  ///< where the rest stands: "see the answer of hose-length"
};

/// @param not_drawn  what the views could not show, in words
[[nodiscard]] std::vector<Block> blocks_of(const Subject& subject,
                                           const std::vector<std::string>& not_drawn);

/// Sets the blocks one below the other into the frames, the next frame when one is full. Text is
/// set smaller until all fits; then the longest lists are cut.
/// @return false where not even that is enough
[[nodiscard]] bool set_blocks(std::vector<Item>& items, const TextMeasurer& measurer,
                              const std::vector<Block>& blocks, const std::vector<Frame>& frames);

}  // namespace wm::drawing::detail
