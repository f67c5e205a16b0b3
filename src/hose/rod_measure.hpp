#pragma once
/// What is read off a solved shape: points, tightest bend, clocking, invariants.

#include <vector>

#include "hose/rod.hpp"

namespace wm::hose {

/// Nodes of the shape, start first: N + 1 points.
[[nodiscard]] std::vector<Vector> points(const Shape& shape);
/// Point at a station along the hose, 0 to length.
[[nodiscard]] Vector point_at(const Shape& shape, double station);
/// Curvature at the N + 1 nodes (1/m). At the ends from the half link, which by the balance of
/// moments is the end moment over EI.
[[nodiscard]] std::vector<double> curvatures(const Shape& shape);

struct Tightest {
  double curvature{};  ///< greatest; radius = 1 / curvature, to the centreline
  double station{};    ///< from the start
};
/// An inner peak is a parabola through the squared curvature at three nodes.
[[nodiscard]] Tightest tightest(const Shape& shape);

/// `vector` carried along the hose without twist, square to the start direction at the start and
/// to the end direction at the end.
[[nodiscard]] Vector carried(const Shape& shape, const Vector& vector);
/// Right-hand angle about `axis` from one vector to another, -pi to pi.
[[nodiscard]] double angle_about(const Vector& axis, const Vector& from, const Vector& to);

/// H = 1/2 curvature^2 + n . t at inner nodes: constant along a weightless hose.
[[nodiscard]] std::vector<double> invariant(const Shape& shape);

}  // namespace wm::hose
