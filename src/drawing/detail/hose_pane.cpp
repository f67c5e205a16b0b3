#include "drawing/detail/hose_pane.hpp"

namespace wm::drawing::detail {

void arrow_head(std::vector<Item>& items, Point from, Point tip) {
  const double length = distance(from, tip);
  if (length <= 0) return;
  constexpr double long_mm = 2.0;
  constexpr double half_mm = 0.33;
  const double x = (tip.x - from.x) / length;
  const double y = (tip.y - from.y) / length;
  const Point foot{tip.x - long_mm * x, tip.y - long_mm * y};
  items.emplace_back(Path{{tip,
                           {foot.x - half_mm * y, foot.y + half_mm * x},
                           {foot.x + half_mm * y, foot.y - half_mm * x}},
                          true,
                          Role::ink,
                          {}});
}

void Pane::line(const std::vector<Point>& points, const Pen& pen, bool closed) {
  for (auto& piece : clipped(points, closed, placed_.frame)) {
    if (piece.size() < 2) continue;
    labels_.avoid(piece);
    // A whole outline stays one closed shape.
    const bool whole = closed && piece.size() == points.size() + 1;
    if (whole) piece.pop_back();
    items_.emplace_back(Path{std::move(piece), whole, {}, pen});
  }
}

void Pane::shape(const std::vector<Point>& points, const Pen& pen) {
  items_.emplace_back(Path{points, true, Role::paper, pen});
  labels_.avoid(points, true);
}

void Pane::tube(const std::vector<Point>& along, double radius_mm, const Pen& pen,
                bool round_ends) {
  const auto outline = tube_outline(along, radius_mm, round_ends);
  for (const auto& fill : outline.fills) items_.emplace_back(Path{fill, true, Role::paper, {}});
  for (const auto& ring : outline.rings) {
    items_.emplace_back(Path{ring, true, {}, pen});
    labels_.avoid(ring, true);
  }
}

void Pane::body(const Body& body, const Pen& pen, bool filled) {
  const auto look = seen(body, placed_);
  if (filled)
    shape(look.outline, pen);
  else
    line(look.outline, pen, true);
  for (const auto& edge : look.edges) line(edge, {pen.role, pen.width * 0.5});
}

void Pane::centreline(const std::vector<Point>& points) {
  for (const auto& piece : chain_dotted(points)) line(piece, {Role::second_ink, 0.13});
}

void Pane::arrow(Point from, Point tip) {
  if (placed_.frame.holds(tip)) arrow_head(items_, from, tip);
}

bool Pane::label(const std::string& text, Point near, Weight weight) {
  return labels_.put(text, near, placed_.frame, k_label_size, weight);
}

double Pane::seen_of(const std::vector<Point>& points, bool closed) const {
  double out = 0;
  for (const auto& piece : clipped(points, closed, placed_.frame))
    for (std::size_t i = 0; i + 1 < piece.size(); ++i) out += distance(piece[i], piece[i + 1]);
  return out;
}

}  // namespace wm::drawing::detail
