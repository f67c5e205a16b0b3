#pragma once
/// SVG in which text stays text, shapes carry their role, and a screen reader hears words.

#include <string>

#include "drawing/display_list.hpp"
#include "drawing/palette.hpp"

namespace wm::drawing {

struct SvgOptions {
  Ground ground{Ground::day};
  /// With a size in mm (for paper), or only a view box so that the page sets the size.
  bool sized{true};
  /// Paint the ground; off where the page already is the ground.
  bool with_ground{true};
  /// Beginning of the ids of title and description; other characters than letters,
  /// digits, '-' and '_' are left out. Give each drawing on one page another one.
  std::string id{"drawing"};
};

/// A page or mark as one stand-alone SVG document.
///
/// Every shape has its colour as an attribute and also a class (`fill-ink`,
/// `line-lacquer-text`), so that a style sheet can recolour it without inline styles.
/// @return  or `Kind::out_of_bounds`, see `check` and `qr_squares`.
[[nodiscard]] Result<std::string> svg(const Page& page, const SvgOptions& options = {});

/// The same with <title> and <desc>.
[[nodiscard]] Result<std::string> svg(const Fragment& fragment, const SvgOptions& options = {});

}  // namespace wm::drawing
