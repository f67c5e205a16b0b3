#pragma once
/// A calculation that is drawn: its sheet on paper and its files for other programs. Both doors
/// ask here.

#include <string>
#include <string_view>

#include "binder/binder.hpp"
#include "describe/catalogue.hpp"
#include "drawing/card.hpp"

namespace wm::binder {

/// What is wanted: "pdf", "svg", "png" (the sheet), "csv", "dxf" (the centreline).
struct PaperWanted {
  std::string calculation;  ///< "hose-sheet"
  std::string as;
  std::string paper;  ///< "a4", "letter"; empty: a4
};

/// A file to hand out.
struct PaperMade {
  std::string bytes;
  std::string type;  ///< of the content, for the web
  std::string name;  ///< of the file, from the title
};

/// Whether a calculation of this name is drawn.
[[nodiscard]] bool is_drawn(std::string_view calculation);

/// Reads the input, runs the calculation and draws it.
///
/// @return not_found (no drawn calculation of that name), unknown_choice ("as", "paper"), and
///         every problem of the input and of the calculation, as the calculation alone gives them
[[nodiscard]] Checked<PaperMade> paper_of(const PaperWanted& wanted, const InputReader& input,
                                          const describe::Context& context);

}  // namespace wm::binder
