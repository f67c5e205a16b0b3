#include "drawing/detail/label_room.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace wm::drawing::detail {
namespace {

constexpr double k_capital = 0.75;  // height of a capital, of the em
constexpr double k_descender = 0.24;
constexpr double k_apart = 0.5;  // mm between labels
constexpr double k_leader_from = 2.2;

bool apart(const Frame& a, const Frame& b) {
  return a.right() + k_apart <= b.left || b.right() + k_apart <= a.left ||
         a.bottom() + k_apart <= b.top || b.bottom() + k_apart <= a.top;
}

/// The point of the box's edge or middle that lies nearest to `at`.
Point nearest_of(const Frame& box, Point at) {
  return {std::clamp(at.x, box.left, box.right()), std::clamp(at.y, box.top, box.bottom())};
}

}  // namespace

Frame box_of(const Text& text, const TextMeasurer& measurer) {
  const double width = measurer.width(text.text, text.size, text.weight);
  const double share = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? 0.5 : 1;
  return {text.at.x - share * width, text.at.y - k_capital * text.size, width,
          (k_capital + k_descender) * text.size};
}

void LabelRoom::take(const Text& text) { taken_.push_back(box_of(text, measurer_)); }

void LabelRoom::avoid(const std::vector<Point>& line, bool closed) {
  const std::size_t count = line.size();
  for (std::size_t i = 0; i + (closed ? 0 : 1) < count; ++i) {
    const Point a = line[i];
    const Point b = line[(i + 1) % count];
    const int steps = std::clamp(static_cast<int>(distance(a, b) / 0.8) + 1, 1, 400);
    for (int k = 0; k < steps; ++k) {
      const double t = static_cast<double>(k) / steps;
      lines_.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
    }
  }
}

bool LabelRoom::is_free(const Frame& box) const {
  return std::ranges::all_of(taken_, [&](const Frame& other) { return apart(box, other); });
}

double LabelRoom::cost(const Frame& box) const {
  double out = 0;
  for (const Point& p : lines_)
    if (box.holds(p, 0.4)) out += 2;
  return out;
}

bool LabelRoom::leader_is_free(Point from, Point to) const {
  const int steps = std::max(2, static_cast<int>(distance(from, to)));
  for (int k = 0; k <= steps; ++k) {
    const double t = static_cast<double>(k) / steps;
    const Point p{from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)};
    if (std::ranges::any_of(taken_, [&](const Frame& box) { return box.holds(p, 0.2); }))
      return false;
  }
  return true;
}

bool LabelRoom::put(const std::string& text, Point at, const Frame& frame, double size,
                    Weight weight) {
  const double width = measurer_.width(text, size, weight);
  const double height = (k_capital + k_descender) * size;
  constexpr std::array<double, 9> away{1.0, 1.8, 3.2, 5, 7.5, 10.5, 14, 19, 25};
  constexpr int ways = 24;
  double best = 1e300;
  Frame chosen;
  for (const double d : away) {
    if (0.8 * d >= best) break;
    for (int k = 0; k < ways; ++k) {
      const double turn = 2 * std::numbers::pi * k / ways;
      const double x = std::cos(turn);
      const double y = std::sin(turn);
      const Frame box{at.x + d * x + (x - 1) * width / 2, at.y + d * y + (y - 1) * height / 2,
                      width, height};
      if (box.left < frame.left || box.right() > frame.right() || box.top < frame.top ||
          box.bottom() > frame.bottom() || !is_free(box))
        continue;
      const Point end = nearest_of(box, at);
      if (distance(end, at) > k_leader_from && !leader_is_free(at, end)) continue;
      const double price = cost(box) + 0.8 * d;
      if (price < best) best = price, chosen = box;
    }
  }
  if (best >= 1e300) return false;
  const Point end = nearest_of(chosen, at);
  if (distance(end, at) > k_leader_from) {
    items_.emplace_back(Line{at, end, {Role::second_ink, 0.12}});
    avoid({at, end});
  }
  // Lines are broken where a label has to lie on them.
  if (cost(chosen) > 0)
    items_.emplace_back(
        Rect{{chosen.left, chosen.top}, chosen.width, chosen.height, 0, Role::paper, {}});
  items_.emplace_back(Text{
      {chosen.left, chosen.top + k_capital * size}, text, size, weight, Anchor::start, Role::ink});
  taken_.push_back(chosen);
  return true;
}

}  // namespace wm::drawing::detail
