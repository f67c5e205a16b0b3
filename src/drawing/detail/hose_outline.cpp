// Outlines by Boost.Geometry: the only file that pays for compiling it.
#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>

#include "drawing/detail/hose_space.hpp"

namespace wm::drawing::detail {
namespace {

namespace bg = boost::geometry;
using BgPoint = bg::model::d2::point_xy<double>;
using BgPolygon = bg::model::polygon<BgPoint>;

constexpr double k_least_step = 0.02;  // mm; shorter steps only upset the outline

std::vector<Point> ring_of(const BgPolygon::ring_type& ring) {
  std::vector<Point> out;
  for (const auto& p : ring) out.push_back({p.x(), p.y()});
  if (out.size() > 1 && out.front() == out.back()) out.pop_back();
  return out;
}

/// Joins a hole to the polygon around it by a cut there and back, so that one path fills both.
void cut_in(std::vector<Point>& outer, const std::vector<Point>& hole) {
  std::size_t at_outer = 0;
  std::size_t at_hole = 0;
  double best = 1e300;
  for (std::size_t i = 0; i < outer.size(); ++i)
    for (std::size_t k = 0; k < hole.size(); ++k)
      if (const double d = distance(outer[i], hole[k]); d < best)
        best = d, at_outer = i, at_hole = k;
  std::vector<Point> way(outer.begin(), outer.begin() + static_cast<std::ptrdiff_t>(at_outer) + 1);
  for (std::size_t k = 0; k <= hole.size(); ++k) way.push_back(hole[(at_hole + k) % hole.size()]);
  way.insert(way.end(), outer.begin() + static_cast<std::ptrdiff_t>(at_outer), outer.end());
  outer = std::move(way);
}

std::vector<Point> without_short_steps(const std::vector<Point>& line) {
  std::vector<Point> out;
  for (const Point& p : line)
    if (out.empty() || distance(out.back(), p) > k_least_step) out.push_back(p);
  return out;
}

}  // namespace

std::vector<Point> hull(const std::vector<Point>& points) {
  bg::model::multi_point<BgPoint> cloud;
  for (const auto& p : points) bg::append(cloud, BgPoint(p.x, p.y));
  BgPolygon out;
  bg::convex_hull(cloud, out);
  return ring_of(out.outer());
}

Outline tube_outline(const std::vector<Point>& line, double radius, bool round_ends) {
  bg::model::linestring<BgPoint> way;
  for (const auto& p : without_short_steps(line)) bg::append(way, BgPoint(p.x, p.y));
  Outline out;
  if (way.empty() || radius <= 0) return out;
  if (way.size() < 2) {  // seen end on
    const BgPoint at = way.front();
    way = {BgPoint(at.x() - k_least_step, at.y()), BgPoint(at.x() + k_least_step, at.y())};
    round_ends = true;
  }
  bg::model::multi_polygon<BgPolygon> around;
  const bg::strategy::buffer::distance_symmetric<double> far(radius);
  const bg::strategy::buffer::join_round join(36);
  const bg::strategy::buffer::side_straight side;
  const bg::strategy::buffer::point_circle circle(36);
  if (round_ends)
    bg::buffer(way, around, far, side, join, bg::strategy::buffer::end_round(36), circle);
  else
    bg::buffer(way, around, far, side, join, bg::strategy::buffer::end_flat(), circle);
  for (const auto& polygon : around) {
    auto outer = ring_of(polygon.outer());
    if (outer.size() < 3) continue;
    out.rings.push_back(outer);
    for (const auto& inner : polygon.inners()) {
      const auto hole = ring_of(inner);
      // Specks where the line nearly touches itself are no holes.
      if (hole.size() < 3 || std::abs(bg::area(inner)) < 0.05) continue;
      out.rings.push_back(hole);
      cut_in(outer, hole);
    }
    out.fills.push_back(std::move(outer));
  }
  return out;
}

}  // namespace wm::drawing::detail
