#pragma once
/// From space to paper: the three views of a hose sheet, their scale and their outlines.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/display_list.hpp"
#include "hose/rod.hpp"

namespace wm::drawing::detail {

using hose::Vector;

/// One look at the aircraft. Its axes: x aft, y to its right, z up.
struct View {
  std::string_view title, how;
  Vector right, up, towards;  ///< on paper, and from the paper to the eye; unit length
};

enum : std::size_t { k_side, k_front, k_top };
/// Side (from the left), front (from ahead), top (from above).
[[nodiscard]] const std::array<View, 3>& views();

/// A box in space that grows, m.
struct Extent {
  std::optional<Vector> low, high;
  void take(const Vector& at, double around = 0);
  [[nodiscard]] bool empty() const { return !low; }
  [[nodiscard]] Vector middle() const { return 0.5 * (*low + *high); }
  [[nodiscard]] Vector size() const { return *high - *low; }
};

/// Part of the page, mm.
struct Frame {
  double left{}, top{}, width{}, height{};
  [[nodiscard]] double right() const { return left + width; }
  [[nodiscard]] double bottom() const { return top + height; }
  [[nodiscard]] bool holds(Point p, double slack = 0) const {
    return p.x >= left - slack && p.x <= right() + slack && p.y >= top - slack &&
           p.y <= bottom() + slack;
  }
};

/// Drawing over the real thing: {2, 1} is 2:1.
struct Scale {
  int drawn{1}, real{1};
  [[nodiscard]] double mm_per_m() const { return 1000.0 * drawn / real; }
  [[nodiscard]] std::string text() const;
};
/// Largest first. @source ISO 5455 (from memory): 50, 20, 10, 5, 2 to 1 and 1 to 1, 2, 5, 10, ...
[[nodiscard]] const std::vector<Scale>& standard_scales();

/// A view on its place on the page.
struct Placed {
  const View* view{};
  Frame frame;             ///< what is outside of it is not drawn
  Vector middle{0, 0, 0};  ///< shown in the middle of the frame
  double mm_per_m{1};
  [[nodiscard]] Point at(const Vector& v) const;
  [[nodiscard]] std::vector<Point> at(const std::vector<Vector>& points) const;
};

[[nodiscard]] double distance(Point a, Point b);

/// The pieces of a polyline that lie within the frame.
[[nodiscard]] std::vector<std::vector<Point>> clipped(const std::vector<Point>& points, bool closed,
                                                      const Frame& frame);
/// Around all points, counter-clockwise. @source monotone chain; Boost.Geometry
[[nodiscard]] std::vector<Point> hull(const std::vector<Point>& points);

/// The outline of a tube of `radius` mm along a line: rings, the outer ones first in each part,
/// and one simple polygon a part to fill (a hole is joined to its outer ring by a cut).
struct Outline {
  std::vector<std::vector<Point>> rings, fills;
};
[[nodiscard]] Outline tube_outline(const std::vector<Point>& line, double radius, bool round_ends);

/// A dash-dot line: pieces of a polyline. @source ISO 128-2, line 04.1 (from memory)
[[nodiscard]] std::vector<std::vector<Point>> chain_dotted(const std::vector<Point>& line);

/// A convex body: its corners, and its faces as lists of them.
struct Body {
  std::vector<Vector> corners;
  std::vector<std::vector<std::size_t>> faces;
};
/// A prism of `sides` about an axis; `radius` to its corners.
[[nodiscard]] Body prism(const Vector& from, const Vector& to, double radius, int sides);
[[nodiscard]] Body block(const Vector& centre, const Vector& size);
/// Outline of the body on paper, and its edges between two faces that look at the eye and meet
/// at more than 20 degrees.
struct Seen {
  std::vector<Point> outline;
  std::vector<std::vector<Point>> edges;
};
[[nodiscard]] Seen seen(const Body& body, const Placed& placed);

}  // namespace wm::drawing::detail
