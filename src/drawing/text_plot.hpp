#pragma once
/// A trend as plain text, for the command line: no colour, no letters beyond ASCII in the plot.

#include <string>

#include "drawing/marks.hpp"

namespace wm::drawing {

/// Readings as `o` (several in one place: `8`), the last as `@`, limits as `-`, a change of part as
/// `|`, the line through the readings as `.`; the scale at the left, both ends of the time below.
///
///      8.0 kohm -------------------------------------- highest 8.0 kohm
///               |              o
///
/// @param columns  Width of the plot alone, 20 to 200.
/// @param rows     Its height, 5 to 60.
/// @return         As `trend`, and `Kind::out_of_bounds` for columns or rows.
[[nodiscard]] Result<std::string> text_plot(const Trend& trend, int columns, int rows);

}  // namespace wm::drawing
