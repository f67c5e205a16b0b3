#include "hose/detail/near.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>

namespace wm::hose::detail {

Vector on_segment(const Vector& p, const Vector& a, const Vector& b) {
  const Vector along = b - a;
  const double size = along.squaredNorm();
  const double u = size > 0 ? std::clamp((p - a).dot(along) / size, 0.0, 1.0) : 0.0;
  return a + along * u;
}

std::pair<Vector, Vector> between_segments(const Vector& a, const Vector& b, const Vector& c,
                                           const Vector& d) {
  // Where the two lines come nearest, if that lies within both; else one of the four ends.
  const Vector u = b - a, v = d - c, w = a - c;
  const double uu = u.squaredNorm(), uv = u.dot(v), vv = v.squaredNorm();
  const double det = uu * vv - uv * uv;
  if (det > 1e-14 * uu * vv) {
    const double s = (uv * v.dot(w) - vv * u.dot(w)) / det;
    const double t = (uu * v.dot(w) - uv * u.dot(w)) / det;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) return {a + u * s, c + v * t};
  }
  std::pair<Vector, Vector> best{a, on_segment(a, c, d)};
  const auto offer = [&](const Vector& first, const Vector& second) {
    if ((first - second).squaredNorm() < (best.first - best.second).squaredNorm())
      best = {first, second};
  };
  offer(b, on_segment(b, c, d));
  offer(on_segment(c, a, b), c);
  offer(on_segment(d, a, b), d);
  return best;
}

Vector on_triangle(const Vector& p, const Vector& a, const Vector& b, const Vector& c) {
  const Vector normal = (b - a).cross(c - a);
  const double size = normal.squaredNorm();
  if (size > 0) {
    // Inside if it lies on the inner side of all three edges.
    const Vector foot = p - normal * (normal.dot(p - a) / size);
    const auto within = [&](const Vector& from, const Vector& to) {
      return (to - from).cross(foot - from).dot(normal) >= 0;
    };
    if (within(a, b) && within(b, c) && within(c, a)) return foot;
  }
  Vector best = on_segment(p, a, b);
  for (const Vector& other : {on_segment(p, b, c), on_segment(p, c, a)}) {
    if ((other - p).squaredNorm() < (best - p).squaredNorm()) best = other;
  }
  return best;
}

std::pair<Vector, Vector> segment_and_triangle(const Vector& p, const Vector& q, const Vector& a,
                                               const Vector& b, const Vector& c) {
  const Vector normal = (b - a).cross(c - a);
  const double at_p = normal.dot(p - a), at_q = normal.dot(q - a);
  if (at_p * at_q <= 0 && at_p != at_q) {
    const Vector hit = p + (q - p) * (at_p / (at_p - at_q));
    const Vector near = on_triangle(hit, a, b, c);
    if ((near - hit).squaredNorm() <= 1e-24 * normal.norm()) return {hit, hit};
  }
  std::pair<Vector, Vector> best{p, on_triangle(p, a, b, c)};
  const auto offer = [&](const std::pair<Vector, Vector>& other) {
    if ((other.first - other.second).squaredNorm() < (best.first - best.second).squaredNorm())
      best = other;
  };
  offer({q, on_triangle(q, a, b, c)});
  offer(between_segments(p, q, a, b));
  offer(between_segments(p, q, b, c));
  offer(between_segments(p, q, c, a));
  return best;
}

}  // namespace wm::hose::detail
