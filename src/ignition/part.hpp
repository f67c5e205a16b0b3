#pragma once
/// One reading of an ignition part: its verdict by a limit with a source, and the figures of the
/// trade beside it, which are advice.

#include <string>
#include <string_view>
#include <vector>

#include "describe/fields.hpp"
#include "evidence/verdict.hpp"

namespace wm::ignition {

struct PartVerdict {
  std::string what;  ///< "coil 1, secondary"
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::string reason;
  std::string limit_source;
  std::vector<std::string> do_next;
};

/// A figure that somebody publishes or uses; shown side by side with others, never a limit.
struct Figure {
  std::string what;
  std::string figure;  ///< "15 to 16 kohm"
  std::string stands;  ///< how the reading stands to it: "inside", "above", ...
  std::string known;   ///< "read", "secondary", "from memory", "common practice, no source"
  std::string source;
};

inline constexpr std::string_view k_no_limit_entered =
    "no maker's limit entered: figures of the trade are advice and give no verdict";

/// The verdict of a whole set: does-not-conform if one part does not, else undecided if one is,
/// else not-tested if one was not, else conforms. A set without a part is not tested.
[[nodiscard]] evidence::Verdict worst(const std::vector<PartVerdict>& parts);

std::string_view describe(describe::Fields<PartVerdict>& f);
std::string_view describe(describe::Fields<Figure>& f);

}  // namespace wm::ignition
