#pragma once
/// What a hose must keep away from, in outline, with the place where it comes nearest.

#include <variant>

#include "drawing/detail/hose_pane.hpp"
#include "drawing/detail/hose_subject.hpp"

namespace wm::drawing::detail {

/// Outlines of one thing in one view.
struct ThingSeen {
  std::vector<std::vector<Point>> closed;  ///< rings
  std::vector<std::vector<Point>> open;    ///< lines
  std::vector<std::vector<Point>> hatch;   ///< behind a wall
};
[[nodiscard]] ThingSeen thing_seen(const hose::KeepOut& thing, const Subject& subject,
                                   const Placed& placed);

void draw_thing(Pane& pane, const ThingSeen& seen);
/// Length of its outline to be seen in the view, mm.
[[nodiscard]] double shows(const Pane& pane, const ThingSeen& seen);
/// Its own extent, m; a wall has none.
[[nodiscard]] Extent thing_extent(const hose::KeepOut& thing, const Subject& subject);

/// Where the drawn hose comes nearest to it: on the hose's outside and on the thing.
struct Closest {
  Vector on_hose{0, 0, 0}, on_thing{0, 0, 0};
};
/// Nothing for a mesh, and for what the hose runs through.
[[nodiscard]] std::optional<Closest> closest(const hose::KeepOut& thing, const Subject& subject);

}  // namespace wm::drawing::detail
