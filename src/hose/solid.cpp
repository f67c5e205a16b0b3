#include "hose/solid.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <limits>
#include <utility>

#include "hose/detail/near.hpp"
#include "hose/rod_measure.hpp"

namespace wm::hose {
namespace {

Nearest from_centre(const Vector& on_piece, const Vector& centre, double radius) {
  const Vector away = on_piece - centre;
  const double distance = away.norm();
  const Vector out = distance > 0 ? Vector(away / distance) : Vector(Vector::UnitX());
  return {distance - radius, on_piece, centre + out * radius};
}

Nearest to(const Sphere& solid, const Vector& a, const Vector& b) {
  return from_centre(detail::on_segment(solid.centre, a, b), solid.centre, solid.radius);
}

Nearest to(const Capsule& solid, const Vector& a, const Vector& b) {
  const auto [piece, axis] = detail::between_segments(a, b, solid.from, solid.to);
  return from_centre(piece, axis, solid.radius);
}

Nearest to(const Wall& solid, const Vector& a, const Vector& b) {
  const double at_a = (a - solid.point).dot(solid.normal);
  const double at_b = (b - solid.point).dot(solid.normal);
  const Vector& near = at_a < at_b ? a : b;
  const double distance = std::min(at_a, at_b);
  return {distance, near, near - solid.normal * distance};
}

/// Signed distance of a point in the box's own axes, and the nearest point of its surface.
double to_box(const Vector& p, const Vector& half, Vector& on_box) {
  const Vector inside = p.cwiseMax(-half).cwiseMin(half);
  const double outside = (p - inside).norm();
  on_box = inside;
  if (outside > 0) return outside;
  Eigen::Index side = 0;
  const double depth = (half - p.cwiseAbs()).minCoeff(&side);
  on_box[side] = std::copysign(half[side], p[side]);
  return -depth;
}

Nearest to(const Box& solid, const Vector& a, const Vector& b) {
  const Vector from = solid.axes.transpose() * (a - solid.centre);
  const Vector along = solid.axes.transpose() * (b - a);
  Vector on_box;
  // The signed distance from a convex solid is convex: along a straight piece it has one valley.
  const auto at = [&](double u) { return to_box(from + along * u, solid.half, on_box); };
  double best = boost::math::tools::brent_find_minima(at, 0.0, 1.0, 40).first;
  double distance = at(best);
  for (const double end : {0.0, 1.0}) {
    if (at(end) < distance) {
      distance = at(end);
      best = end;
    }
  }
  distance = at(best);
  return {distance, a + (b - a) * best, solid.centre + solid.axes * on_box};
}

Nearest to(const std::shared_ptr<const Mesh>& solid, const Vector& a, const Vector& b) {
  Nearest out;
  out.distance = solid->distance(a, b, out.on_piece, out.on_solid);
  return out;
}

}  // namespace

Nearest nearest(const Solid& solid, const Vector& a, const Vector& b) {
  return std::visit([&](const auto& s) { return to(s, a, b); }, solid);
}

Gap gap(const Shape& shape, double outside_diameter, const Solid& solid) {
  Gap out;
  double best = std::numeric_limits<double>::infinity();
  const double h = shape.spacing();
  const auto nodes = points(shape);
  for (std::size_t i = 0; i + 1 < nodes.size();) {
    const auto near = nearest(solid, nodes[i], nodes[i + 1]);
    if (near.distance < best) {
      best = near.distance;
      out.station = static_cast<double>(i) * h + (near.on_piece - nodes[i]).norm();
      out.on_hose = near.on_piece;
      out.on_solid = near.on_solid;
    }
    // A distance changes by no more than one spacing from a piece to the next: what cannot beat
    // the best is left out.
    i += 1 + static_cast<std::size_t>(std::min(1e6, std::max(0.0, (near.distance - best) / h)));
  }
  out.clear = best - 0.5 * outside_diameter;
  return out;
}

}  // namespace wm::hose
