#pragma once
/// Nearest points of the simplest figures in space.

#include <Eigen/Core>
#include <utility>

namespace wm::hose::detail {

using Vector = Eigen::Vector3d;

/// Nearest to p on the straight piece a-b.
[[nodiscard]] Vector on_segment(const Vector& p, const Vector& a, const Vector& b);
/// Nearest points of two straight pieces: on the first, on the second.
[[nodiscard]] std::pair<Vector, Vector> between_segments(const Vector& a, const Vector& b,
                                                         const Vector& c, const Vector& d);
/// Nearest to p on a triangle.
[[nodiscard]] Vector on_triangle(const Vector& p, const Vector& a, const Vector& b,
                                 const Vector& c);
/// Nearest points of a straight piece and a triangle; equal where the piece goes through it.
[[nodiscard]] std::pair<Vector, Vector> segment_and_triangle(const Vector& p, const Vector& q,
                                                             const Vector& a, const Vector& b,
                                                             const Vector& c);

}  // namespace wm::hose::detail
