#pragma once
/// The drawing sheet of one hose: three views, length window, radii, clocking, ends, limits with
/// their sources, cautions and title block, all on one page.

#include <map>
#include <string>
#include <vector>

#include "drawing/card.hpp"
#include "drawing/display_list.hpp"
#include "hose/sheet.hpp"

namespace wm::drawing {

/// What stands on the sheet besides the hose itself.
struct HoseSheetAbout {
  std::vector<std::string> cautions;  ///< of the calculation; never left out
  std::vector<std::string> sources;   ///< of the calculation
  quantity::UnitSet units{quantity::UnitSet::us_customary};
  quantity::Date today{};  ///< where the sheet names no date of its own
  /// Corners of the surface of each keep-out that is a mesh, by its name.
  std::map<std::string, std::vector<hose::Vector>, std::less<>> corners;
};

/// One page, landscape. The scale is the largest of the standard ones at which all three views
/// fit; text too long for the page is set smaller, and what is still too long ends in "and 3
/// more: see the answer of hose-length". Cautions are never cut.
///
/// @return  The page, or `Kind::out_of_bounds` where no scale fits (a hose of more than a
///          kilometre) or where a title or the cautions alone fill the page.
/// @source  ISO 5455: recommended scales; ISO 5456-2: third-angle arrangement of views (both from
///          memory)
[[nodiscard]] Result<Page> lay_out_hose(const hose::HoseSheetInput& in,
                                        const hose::HoseSheetAnswer& answer,
                                        const HoseSheetAbout& about, Paper paper);

}  // namespace wm::drawing
