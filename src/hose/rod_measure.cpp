#include "hose/rod_measure.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace wm::hose {
namespace {

/// v turned by the smallest rotation that takes unit vector a to unit vector b.
Vector transported(const Vector& v, const Vector& a, const Vector& b) {
  const Vector axis = a.cross(b);
  const double cosine = a.dot(b);
  return v * cosine + axis.cross(v) + axis * (axis.dot(v) / (1.0 + cosine));
}

}  // namespace

std::vector<Vector> points(const Shape& shape) {
  const double h = shape.spacing();
  std::vector<Vector> out;
  out.reserve(shape.tangents.size() + 1);
  out.push_back(shape.start);
  for (const auto& t : shape.tangents) out.emplace_back(out.back() + t * h);
  return out;
}

Vector point_at(const Shape& shape, double station) {
  const double h = shape.spacing();
  Vector p = shape.start;
  double left = std::clamp(station, 0.0, shape.length);
  for (const auto& t : shape.tangents) {
    const double step = std::min(left, h);
    p += t * step;
    left -= step;
    if (left <= 0) break;
  }
  return p;
}

std::vector<double> curvatures(const Shape& shape) {
  const double h = shape.spacing();
  const auto n = shape.tangents.size();
  std::vector<double> out(n + 1);
  out[0] = shape.start_direction.cross(shape.tangents[0]).norm() / (0.5 * h);
  for (std::size_t i = 1; i < n; ++i)
    out[i] = (shape.tangents[i] - shape.tangents[i - 1]).norm() / h;
  out[n] = shape.far_end_free ? 0.0
                              : shape.tangents[n - 1].cross(shape.end_direction).norm() / (0.5 * h);
  return out;
}

Tightest tightest(const Shape& shape) {
  const auto k = curvatures(shape);
  const double h = shape.spacing();
  std::size_t best = 0;
  for (std::size_t i = 1; i < k.size(); ++i) {
    if (k[i] > k[best]) best = i;
  }
  Tightest out{k[best], static_cast<double>(best) * h};
  if (best == 0 || best + 1 == k.size()) return out;
  const double left = k[best - 1] * k[best - 1], mid = k[best] * k[best],
               right = k[best + 1] * k[best + 1];
  const double bend = left - 2 * mid + right;
  if (bend >= 0) return out;
  const double shift = 0.5 * (left - right) / bend;
  out.curvature = std::sqrt(mid - 0.25 * (left - right) * shift);
  out.station += shift * h;
  return out;
}

Vector carried(const Shape& shape, const Vector& vector) {
  Vector v = vector;
  const Vector* at = &shape.start_direction;
  for (const auto& t : shape.tangents) {
    v = transported(v, *at, t);
    at = &t;
  }
  return shape.far_end_free ? v : transported(v, *at, shape.end_direction);
}

double angle_about(const Vector& axis, const Vector& from, const Vector& to) {
  return std::atan2(from.cross(to).dot(axis), from.dot(to) - from.dot(axis) * to.dot(axis));
}

std::vector<double> invariant(const Shape& shape) {
  const auto k = curvatures(shape);
  std::vector<double> out;
  for (std::size_t i = 1; i < shape.tangents.size(); ++i) {
    const Vector t = (shape.tangents[i - 1] + shape.tangents[i]).normalized();
    out.push_back(0.5 * k[i] * k[i] + shape.force.dot(t));
  }
  return out;
}

}  // namespace wm::hose
