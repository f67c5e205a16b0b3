#pragma once
/// One page as a picture.

#include <string>

#include "drawing/display_list.hpp"
#include "drawing/palette.hpp"

namespace wm::drawing {

/// @param dpi  Dots an inch, 20 to 1200; 96 shows a mark as a browser does.
/// @return     The bytes of one PNG file, or `Kind::out_of_bounds` (also for more than
///             100 million dots; see `check`).
/// @throws std::runtime_error when cairo itself fails (no memory).
[[nodiscard]] Result<std::string> png(const Page& page, double dpi, Ground ground = Ground::print);

}  // namespace wm::drawing
