#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/detail/hose_gauges.hpp"
#include "drawing/detail/hose_pane.hpp"

namespace wm::drawing::detail {
namespace {

constexpr double k_tall = 5.6;  // of the strip, mm
// Classes of radius over limit: our proposal, no source.
constexpr double k_tight = 1.5;

/// One part of the strip.
struct Part {
  double from{}, to{};           ///< stations, m
  std::optional<double> radius;  ///< least; nothing: straight
};

std::vector<Part> parts_of(const std::vector<hose::HosePoint>& points, std::size_t count) {
  std::vector<Part> out;
  if (points.size() < 2) return out;
  const double start = points.front().station.si;
  const double length = points.back().station.si - start;
  if (length <= 0) return out;
  for (std::size_t i = 0; i < count; ++i) {
    const auto share = [&](std::size_t k) {
      return start + length * static_cast<double>(k) / static_cast<double>(count);
    };
    Part part{share(i), share(i + 1), {}};
    for (const auto& p : points) {
      if (p.station.si < part.from - 1e-9 || p.station.si > part.to + 1e-9 || !p.radius) continue;
      part.radius = part.radius ? std::min(*part.radius, p.radius->si) : p.radius->si;
    }
    out.push_back(part);
  }
  return out;
}

/// Lines at 45 degrees, cut to the rectangle.
void hatch(std::vector<Item>& items, const Frame& box, double step, bool rising) {
  const int lines = static_cast<int>((box.width + box.height) / step) + 1;
  for (int i = 0; i < lines; ++i) {
    const double start = box.left - box.height + (i + 0.5) * step;
    if (start >= box.right()) break;
    std::vector<Point> line{{start, box.bottom()}, {start + box.height, box.top}};
    if (!rising) line = {{start, box.top}, {start + box.height, box.bottom()}};
    for (const auto& piece : clipped(line, false, box))
      items.emplace_back(Line{piece.front(), piece.back(), {Role::ink, 0.12}});
  }
}

void rule(std::vector<Item>& items, const Subject& subject, const Frame& strip, double length) {
  const double full = quantity::in_unit(length, subject.unit);
  const double rough = full / 8;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  double step = power;
  for (const double m : {2.0, 5.0, 10.0})
    if (step < rough) step = m * power;
  const int marks = static_cast<int>((full + 1e-9) / step);
  for (int i = 0; i <= marks; ++i) {
    const double at = i * step;
    const double x = strip.left + strip.width * at / full;
    items.emplace_back(Line{{x, strip.bottom()}, {x, strip.bottom() + 1}, k_narrow});
    if (x > strip.right() - 9 && at > 0) continue;  // the end has its own figure
    items.emplace_back(Text{{x, strip.bottom() + 3.1},
                            quantity::significant(at, 3),
                            k_note_size,
                            Weight::normal,
                            Anchor::middle,
                            Role::ink});
  }
  items.emplace_back(Text{{strip.right(), strip.bottom() + 3.1},
                          subject.say(quantity::Length{length}),
                          k_note_size,
                          Weight::normal,
                          Anchor::middle,
                          Role::ink});
}

}  // namespace

void draw_strip(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject,
                const Frame& frame) {
  const auto& shape = subject.answer.shape;
  const auto parts = parts_of(shape.points, 12);
  const double y =
      part_heading(items, frame,
                   fmt::format("Radius along the hose laid out straight, to the centreline; {}",
                               subject.unit.symbol));
  if (parts.empty()) return;
  const double length = parts.back().to - parts.front().from;
  const double cap = 5;  // the rigid ends, not to scale
  const Frame strip{frame.left + cap + 1, y + 3.9, frame.width - 2 * cap - 6, k_tall};
  for (const double x : {strip.left - cap, strip.right()})
    items.emplace_back(Rect{{x, strip.top + 0.7}, cap, k_tall - 1.4, 0, Role::zinc_dark, k_narrow});
  for (const auto& part : parts) {
    const auto x = [&](double station) {
      return strip.left + strip.width * (station - parts.front().from) / length;
    };
    const Frame box{x(part.from), strip.top, x(part.to) - x(part.from), k_tall};
    items.emplace_back(Rect{{box.left, box.top}, box.width, box.height, 0, {}, k_narrow});
    const double ratio =
        part.radius && shape.least_radius ? *part.radius / shape.least_radius->si : 1e9;
    if (ratio < 1) hatch(items, box, 1.1, false);
    if (ratio < k_tight) hatch(items, box, ratio < 1 ? 1.1 : 1.8, true);
    // Three digits are what a radius is read to; above ten spans the hose is as good as straight.
    const bool straight = !part.radius || *part.radius > 20 * length;
    items.emplace_back(Text{{box.left + box.width / 2, strip.top - 0.8},
                            straight ? "-" : subject.figure(quantity::Length{*part.radius}, 3),
                            k_note_size,
                            Weight::normal,
                            Anchor::middle,
                            Role::ink});
  }
  // The one tightest place.
  const double x = strip.left + strip.width * std::clamp(shape.tightest_at.si / length, 0.0, 1.0);
  items.emplace_back(
      Path{{{x, strip.top + 0.2}, {x - 0.9, strip.top + 2}, {x + 0.9, strip.top + 2}},
           true,
           Role::ink,
           {}});
  items.emplace_back(Line{{x, strip.top + 0.2}, {x, strip.bottom()}, k_wide});
  rule(items, subject, strip, length);
  std::string words = "from the near end; grey: rigid. ";
  words += shape.least_radius
               ? fmt::format(
                     "Limit {}: crossed below it, hatched below {:g} times it, else plain "
                     "(classes ours, no source). Wedge: tightest.",
                     subject.say(*shape.least_radius), k_tight)
               : std::string("No limit entered. Wedge: tightest. \"-\": straight.");
  double at = strip.bottom() + 6;
  for (const auto& row : measurer.wrap(words, k_note_size, Weight::normal, frame.width)) {
    items.emplace_back(
        Text{{frame.left, at}, row, k_note_size, Weight::normal, Anchor::start, Role::second_ink});
    at += 1.3 * k_note_size;
  }
}

void draw_dial(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject,
               const Frame& frame) {
  const auto& shape = subject.answer.shape;
  double y = part_heading(items, frame, "Clocking");
  const auto words = [&](std::string_view text, double from) {
    for (const auto& row : measurer.wrap(text, k_note_size, Weight::normal, frame.width)) {
      items.emplace_back(
          Text{{frame.left, from}, row, k_note_size, Weight::normal, Anchor::start, Role::ink});
      from += 1.3 * k_note_size;
    }
  };
  if (!shape.clocking) {
    words(
        "Nothing to clock: a straight end swivels, so only two elbows are turned against each "
        "other.",
        y + 3.2);
    return;
  }
  constexpr double degree = std::numbers::pi / 180;
  const double angle = shape.clocking->si;
  const double radius = std::min((frame.width - 14) / 2, (frame.height - 19) / 2);
  const Point centre{frame.left + frame.width / 2, y + 4.2 + radius};
  // Counter-clockwise from six o'clock; the page's y runs down.
  const auto on = [&](double turn, double r) {
    return Point{centre.x + r * std::sin(turn), centre.y + r * std::cos(turn)};
  };
  if (shape.clocking_tolerance) {
    std::vector<Point> sector{centre};
    for (int i = -8; i <= 8; ++i)
      sector.push_back(on(angle + shape.clocking_tolerance->si * i / 8, radius));
    items.emplace_back(Path{std::move(sector), true, Role::zinc_dark, k_narrow});
  }
  items.emplace_back(Circle{centre, radius, {}, k_wide});
  for (int hour = 0; hour < 12; ++hour)
    items.emplace_back(Line{on(hour * 30 * degree, radius * (hour % 3 == 0 ? 0.86 : 0.93)),
                            on(hour * 30 * degree, radius), k_narrow});
  items.emplace_back(Line{centre, on(0, radius * 0.8), {Role::ink, 0.9}});
  items.emplace_back(Line{centre, on(angle, radius * 0.8), k_wide});
  arrow_head(items, centre, on(angle, radius * 0.98));
  items.emplace_back(Circle{centre, 0.7, Role::ink, {}});
  // The angle, as it is read.
  if (angle > 12 * degree) {
    std::vector<Point> arc;
    const double end = angle - 3 * degree;
    for (int i = 0; i <= 48; ++i) arc.push_back(on(end * i / 48, radius * 0.5));
    arrow_head(items, on(end - 14 * degree, radius * 0.5), on(end + 2 * degree, radius * 0.5));
    items.emplace_back(Path{std::move(arc), false, {}, k_narrow});
  }
  items.emplace_back(Text{{centre.x, centre.y + radius + 2.6},
                          "near elbow",
                          k_note_size,
                          Weight::bold,
                          Anchor::middle,
                          Role::ink});
  // "far" stands beside its hand, outside of the circle.
  const Point tip = on(angle, radius + 1.2);
  const double side = std::sin(angle);
  if (std::cos(angle) < 0.9)
    items.emplace_back(Text{{tip.x, tip.y + (std::cos(angle) < -0.5 ? -0.2 : 0.8)},
                            "far",
                            k_note_size,
                            Weight::bold,
                            std::abs(side) < 0.3 ? Anchor::middle
                            : side > 0           ? Anchor::start
                                                 : Anchor::end,
                            Role::ink});
  std::string text = fmt::format("Far elbow {:.0f}", angle / degree);
  if (shape.clocking_tolerance)
    text += fmt::format(" +-{:.0f}", shape.clocking_tolerance->si / degree);
  text += " degrees counter-clockwise from the near one, seen from the near end.";
  words(text, centre.y + radius + 5.8);
}

}  // namespace wm::drawing::detail
