#pragma once
/// The three views of a hose on its sheet.

#include "drawing/detail/hose_pane.hpp"
#include "drawing/detail/hose_subject.hpp"
#include "outcome/result.hpp"

namespace wm::drawing::detail {

struct ViewsDrawn {
  Scale scale;
  Frame spare;  ///< left of the top view and above the front view: nothing is drawn there
  std::vector<std::string> not_named;  ///< things for whose name there was no room
  std::vector<std::string> not_shown;  ///< things that lie outside of all three views
};

/// @return or out_of_bounds where no standard scale is small enough
[[nodiscard]] Result<ViewsDrawn> draw_views(std::vector<Item>& items, const TextMeasurer& measurer,
                                            const Subject& subject, const Frame& frame);

}  // namespace wm::drawing::detail
