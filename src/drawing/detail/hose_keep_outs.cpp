#include "drawing/detail/hose_keep_outs.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/detail/hose_parts.hpp"
#include "hose/solid.hpp"

namespace wm::drawing::detail {
namespace {

void round(std::vector<Point>& out, Point centre, double radius) {
  constexpr int count = 48;
  for (int i = 0; i < count; ++i) {
    const double turn = 2 * std::numbers::pi * i / count;
    out.push_back({centre.x + radius * std::cos(turn), centre.y + radius * std::sin(turn)});
  }
}

Vector normal_of(const hose::WallShape& wall) {
  const Vector n(wall.free_side.x, wall.free_side.y, wall.free_side.z);
  return n.norm() > 0 ? Vector(n.normalized()) : Vector(0, 0, 1);
}

struct Outliner {
  const std::string& name;
  const Subject& subject;
  const Placed& placed;

  ThingSeen operator()(const hose::BallShape& ball) const {
    ThingSeen out;
    round(out.closed.emplace_back(), placed.at(hose::vector_of(ball.centre)),
          ball.radius.value.si * placed.mm_per_m);
    return out;
  }
  ThingSeen operator()(const hose::TubeShape& tube) const {
    std::vector<Point> both;
    const double radius = tube.radius.value.si * placed.mm_per_m;
    round(both, placed.at(hose::vector_of(tube.from)), radius);
    round(both, placed.at(hose::vector_of(tube.to)), radius);
    ThingSeen out;
    out.closed.push_back(hull(both));
    return out;
  }
  ThingSeen operator()(const hose::BoxShape& box) const {
    const auto look = seen(block(hose::vector_of(box.centre),
                                 {box.size_x.value.si, box.size_y.value.si, box.size_z.value.si}),
                           placed);
    return {{look.outline}, look.edges, {}};
  }
  /// Its trace at the depth of the middle of the hose, hatched behind; nothing where it is seen
  /// from the front.
  ThingSeen operator()(const hose::WallShape& wall) const {
    const Vector n = normal_of(wall);
    const double x = n.dot(placed.view->right);
    const double y = n.dot(placed.view->up);
    const double across = std::hypot(x, y);
    if (across < 0.35) return {};
    const Vector point = hose::vector_of(wall.point);
    const Vector& eye = placed.view->towards;
    const double depth = (placed.middle - point).dot(eye);
    // On the plane, at that depth.
    const Vector in_plane = (n - eye * n.dot(eye)).normalized();
    const Vector at = point + eye * depth - in_plane * (depth * n.dot(eye) / across);
    const Vector foot = at + (placed.middle - at) - in_plane * (placed.middle - at).dot(in_plane);
    const Point p = placed.at(foot);
    const Point along{-y / across, -x / across};  // page: y downwards
    const Point back{-x / across, y / across};
    const double reach = placed.frame.width + placed.frame.height;
    ThingSeen out;
    out.open.push_back({{p.x - reach * along.x, p.y - reach * along.y},
                        {p.x + reach * along.x, p.y + reach * along.y}});
    constexpr double step = 2.2;
    constexpr double deep = 1.8;
    const int lines = static_cast<int>(2 * reach / step) + 1;
    for (int i = 0; i < lines; ++i) {
      const double s = i * step - reach;
      const Point a{p.x + s * along.x, p.y + s * along.y};
      out.hatch.push_back({a, {a.x + deep * (back.x + along.x), a.y + deep * (back.y + along.y)}});
    }
    return out;
  }
  ThingSeen operator()(const hose::MeshShape& /*mesh*/) const {
    ThingSeen out;
    if (const auto corners = subject.about.corners.find(name);
        corners != subject.about.corners.end() && !corners->second.empty())
      out.closed.push_back(hull(placed.at(corners->second)));
    return out;
  }
};

std::optional<hose::Solid> solid_of(const hose::KeepOut& thing) {
  using hose::vector_of;
  if (const auto* s = std::get_if<hose::BallShape>(&thing.shape))
    return hose::Sphere{vector_of(s->centre), s->radius.value.si};
  if (const auto* s = std::get_if<hose::TubeShape>(&thing.shape))
    return hose::Capsule{vector_of(s->from), vector_of(s->to), s->radius.value.si};
  if (const auto* s = std::get_if<hose::BoxShape>(&thing.shape)) {
    hose::Box box;
    box.centre = vector_of(s->centre);
    box.half = 0.5 * Vector(s->size_x.value.si, s->size_y.value.si, s->size_z.value.si);
    return box;
  }
  if (const auto* s = std::get_if<hose::WallShape>(&thing.shape))
    return hose::Wall{vector_of(s->point), normal_of(*s)};
  return std::nullopt;
}

}  // namespace

ThingSeen thing_seen(const hose::KeepOut& thing, const Subject& subject, const Placed& placed) {
  return std::visit(Outliner{thing.name, subject, placed}, thing.shape);
}

void draw_thing(Pane& pane, const ThingSeen& seen) {
  for (const auto& ring : seen.closed) pane.line(ring, k_behind, true);
  for (const auto& line : seen.open) pane.line(line, k_behind);
  for (const auto& line : seen.hatch) pane.line(line, {Role::second_ink, 0.1});
}

double shows(const Pane& pane, const ThingSeen& seen) {
  double out = 0;
  for (const auto& ring : seen.closed) out += pane.seen_of(ring, true);
  for (const auto& line : seen.open) out += pane.seen_of(line, false);
  return out;
}

Extent thing_extent(const hose::KeepOut& thing, const Subject& subject) {
  Extent out;
  if (const auto* s = std::get_if<hose::BallShape>(&thing.shape))
    out.take(hose::vector_of(s->centre), s->radius.value.si);
  if (const auto* s = std::get_if<hose::TubeShape>(&thing.shape))
    for (const auto* end : {&s->from, &s->to}) out.take(hose::vector_of(*end), s->radius.value.si);
  if (const auto* s = std::get_if<hose::BoxShape>(&thing.shape)) {
    const Vector half = 0.5 * Vector(s->size_x.value.si, s->size_y.value.si, s->size_z.value.si);
    out.take(hose::vector_of(s->centre) - half);
    out.take(hose::vector_of(s->centre) + half);
  }
  if (const auto corners = subject.about.corners.find(thing.name);
      corners != subject.about.corners.end())
    for (const auto& c : corners->second) out.take(c);
  return out;
}

std::optional<Closest> closest(const hose::KeepOut& thing, const Subject& subject) {
  const auto solid = solid_of(thing);
  if (!solid) return std::nullopt;
  const auto line = centreline_of(subject.answer.shape.points);
  hose::Nearest best;
  best.distance = 1e300;
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    if (const auto n = hose::nearest(*solid, line[i], line[i + 1]); n.distance < best.distance)
      best = n;
  const double radius = 0.5 * subject.outside_diameter();
  if (best.distance >= 1e300 || best.distance <= radius) return std::nullopt;
  const Vector way = (best.on_solid - best.on_piece).normalized();
  return Closest{best.on_piece + radius * way, best.on_solid};
}

}  // namespace wm::drawing::detail
