#include "drawing/detail/hose_space.hpp"

#include <fmt/format.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace wm::drawing::detail {
namespace {

/// The part of a-b inside the frame (Liang and Barsky).
std::optional<std::pair<Point, Point>> inside(Point a, Point b, const Frame& frame) {
  double from = 0;
  double to = 1;
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const std::array<std::pair<double, double>, 4> sides{{{-dx, a.x - frame.left},
                                                        {dx, frame.right() - a.x},
                                                        {-dy, a.y - frame.top},
                                                        {dy, frame.bottom() - a.y}}};
  for (const auto& [p, q] : sides) {
    if (p == 0) {
      if (q < 0) return std::nullopt;
      continue;
    }
    if (p < 0)
      from = std::max(from, q / p);
    else
      to = std::min(to, q / p);
  }
  if (from > to) return std::nullopt;
  return std::pair{Point{a.x + from * dx, a.y + from * dy}, Point{a.x + to * dx, a.y + to * dy}};
}

Vector any_across(const Vector& axis) {
  // Nuts are drawn with a flat or a corner up, whichever the axis gives.
  const Vector helper = std::abs(axis.z()) < 0.9 ? Vector(0, 0, 1) : Vector(1, 0, 0);
  return (helper - axis * axis.dot(helper)).normalized();
}

}  // namespace

const std::array<View, 3>& views() {
  static const std::array<View, 3> all{
      View{"SIDE", "seen from the left, nose at the left", {1, 0, 0}, {0, 0, 1}, {0, -1, 0}},
      View{"FRONT", "seen from ahead", {0, -1, 0}, {0, 0, 1}, {-1, 0, 0}},
      View{"TOP", "seen from above", {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
  return all;
}

void Extent::take(const Vector& at, double around) {
  const Vector room = Vector::Constant(around);
  low = low ? Vector(low->cwiseMin(at - room)) : Vector(at - room);
  high = high ? Vector(high->cwiseMax(at + room)) : Vector(at + room);
}

std::string Scale::text() const { return fmt::format("{}:{}", drawn, real); }

const std::vector<Scale>& standard_scales() {
  static const std::vector<Scale> all{
      {50, 1}, {20, 1}, {10, 1},  {5, 1},   {2, 1},   {1, 1},    {1, 2},    {1, 5},    {1, 10},
      {1, 20}, {1, 50}, {1, 100}, {1, 200}, {1, 500}, {1, 1000}, {1, 2000}, {1, 5000}, {1, 10000}};
  return all;
}

Point Placed::at(const Vector& v) const {
  const Vector from = v - middle;
  return {frame.left + frame.width / 2 + from.dot(view->right) * mm_per_m,
          frame.top + frame.height / 2 - from.dot(view->up) * mm_per_m};
}

std::vector<Point> Placed::at(const std::vector<Vector>& points) const {
  std::vector<Point> out;
  out.reserve(points.size());
  for (const auto& p : points) out.push_back(at(p));
  return out;
}

double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

std::vector<std::vector<Point>> clipped(const std::vector<Point>& points, bool closed,
                                        const Frame& frame) {
  std::vector<std::vector<Point>> out;
  const std::size_t count = points.size();
  for (std::size_t i = 0; i + (closed ? 0 : 1) < count; ++i) {
    const auto piece = inside(points[i], points[(i + 1) % count], frame);
    if (!piece) continue;
    if (out.empty() || distance(out.back().back(), piece->first) > 1e-6)
      out.push_back({piece->first});
    out.back().push_back(piece->second);
  }
  return out;
}

std::vector<std::vector<Point>> chain_dotted(const std::vector<Point>& line) {
  constexpr std::array<double, 4> pattern{6, 0.9, 0.5, 0.9};
  std::vector<std::vector<Point>> out;
  std::size_t part = 0;
  double left = pattern[0] / 2;
  bool drawing = true;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    Point at = line[i];
    const Point end = line[i + 1];
    double to_go = distance(at, end);
    if (drawing && (i == 0 || out.empty())) out.push_back({at});
    while (to_go > 1e-9) {
      const double step = std::min(left, to_go);
      at = {at.x + (end.x - at.x) * step / to_go, at.y + (end.y - at.y) * step / to_go};
      to_go -= step;
      left -= step;
      if (drawing) out.back().push_back(at);
      if (left > 1e-9) continue;
      part = (part + 1) % pattern.size();
      left = pattern[part];
      drawing = part % 2 == 0;
      if (drawing) out.push_back({at});
    }
  }
  std::erase_if(out, [](const auto& piece) { return piece.size() < 2; });
  return out;
}

Body prism(const Vector& from, const Vector& to, double radius, int sides) {
  const Vector axis = (to - from).normalized();
  const Vector across = any_across(axis);
  const Vector third = axis.cross(across);
  Body body;
  const auto n = static_cast<std::size_t>(sides);
  for (const Vector* end : {&from, &to})
    for (std::size_t i = 0; i < n; ++i) {
      const double turn = 2 * std::numbers::pi * static_cast<double>(i) / sides;
      body.corners.push_back(*end + radius * (std::cos(turn) * across + std::sin(turn) * third));
    }
  std::vector<std::size_t> first, last;
  for (std::size_t i = 0; i < n; ++i) {
    body.faces.push_back({i, (i + 1) % n, n + (i + 1) % n, n + i});
    first.push_back(n - 1 - i);
    last.push_back(n + i);
  }
  body.faces.push_back(first);
  body.faces.push_back(last);
  return body;
}

Body block(const Vector& centre, const Vector& size) {
  Body body;
  for (int i = 0; i < 8; ++i)
    body.corners.push_back(centre + 0.5 * Vector((i & 1) != 0 ? size.x() : -size.x(),
                                                 (i & 2) != 0 ? size.y() : -size.y(),
                                                 (i & 4) != 0 ? size.z() : -size.z()));
  body.faces = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
  return body;
}

Seen seen(const Body& body, const Placed& placed) {
  Seen out;
  out.outline = hull(placed.at(body.corners));
  std::vector<Vector> normals;
  for (const auto& face : body.faces) {
    const Vector a = body.corners[face[1]] - body.corners[face[0]];
    const Vector b = body.corners[face[2]] - body.corners[face[1]];
    normals.push_back(a.cross(b).normalized());
  }
  constexpr double to_the_eye = 1e-6;
  const double nearly_flat = std::cos(20 * std::numbers::pi / 180);
  for (std::size_t f = 0; f < body.faces.size(); ++f) {
    if (normals[f].dot(placed.view->towards) < to_the_eye) continue;
    for (std::size_t g = f + 1; g < body.faces.size(); ++g) {
      if (normals[g].dot(placed.view->towards) < to_the_eye) continue;
      if (normals[f].dot(normals[g]) > nearly_flat) continue;
      std::vector<Point> common;
      for (const auto corner : body.faces[f])
        if (std::ranges::find(body.faces[g], corner) != body.faces[g].end())
          common.push_back(placed.at(body.corners[corner]));
      if (common.size() == 2) out.edges.push_back(std::move(common));
    }
  }
  return out;
}

}  // namespace wm::drawing::detail
