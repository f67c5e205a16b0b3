#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/marks.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing {
namespace {

constexpr double k_text = 3.2;
constexpr double k_small = 2.65;
constexpr double k_gap = 2;

bool finite(double v) { return std::abs(v) <= 1e150; }

Result<Done> sound(const Trend& t) {
  if (t.points.empty()) return Fail(Kind::missing, "no reading to draw", "one reading or more");
  bool good = (!t.lower || finite(t.lower->value)) && (!t.upper || finite(t.upper->value));
  for (std::size_t i = 0; i < t.points.size(); ++i) {
    const TrendPoint& p = t.points[i];
    good = good && finite(p.when) && finite(p.value) && finite(p.uncertainty) && p.uncertainty >= 0;
    good = good && (i == 0 || t.points[i - 1].when <= p.when);
  }
  for (const auto* end : {&t.line_from, &t.line_to})
    good = good && (!*end || (finite((*end)->when) && finite((*end)->value)));
  good = good && std::ranges::all_of(t.changes, finite);
  if (!good)
    return Fail(Kind::out_of_bounds, "readings that cannot be drawn in order",
                "finite figures in order of time, uncertainties of zero or more");
  if (!(t.width >= 40 && t.width <= 400) || !(t.height >= 15 && t.height <= 400))
    return Fail(Kind::out_of_bounds, fmt::format("a plot of {} mm by {} mm", t.width, t.height),
                "40 mm to 400 mm wide, 15 mm to 400 mm high");
  return Done{};
}

struct Range {
  double low, high;
  void take(double v) {
    low = std::min(low, v);
    high = std::max(high, v);
  }
  [[nodiscard]] double share(double v) const { return high > low ? (v - low) / (high - low) : 0.5; }
};

class Drawing {
 public:
  explicit Drawing(const Trend& trend) : t_(trend) {
    const TrendPoint& first = t_.points.front();
    when_ = {first.when, t_.points.back().when};
    value_ = {first.value, first.value};
    for (const TrendPoint& p : t_.points) {
      value_.take(p.value - p.uncertainty);
      value_.take(p.value + p.uncertainty);
    }
    for (const auto* limit : {&t_.lower, &t_.upper})
      if (*limit) value_.take((*limit)->value);
    for (const auto* end : {&t_.line_from, &t_.line_to})
      if (*end) value_.take((*end)->value);
    last_width_ = std::min(m_.width(t_.last_text, k_text, Weight::bold), t_.width * 0.4);
  }

  Page page() {
    for (std::string& line : m_.wrap(t_.name, k_text, Weight::normal, t_.width)) {
      y_ += k_text * 1.3;
      items_.emplace_back(Text{{0, y_ - k_text * 0.3}, std::move(line), k_text});
    }
    top_ = y_ + 5;  // room for the label of an upper limit
    limit(t_.upper, -0.8);
    limit(t_.lower, k_small);
    changes();
    line();
    points();
    axis();
    foot();
    return {t_.width, y_ + 1, std::move(items_)};
  }

 private:
  [[nodiscard]] double right() const { return t_.width - last_width_ - 3; }
  [[nodiscard]] Point at(const TrendPoint& p) const {
    return {k_gap + when_.share(p.when) * (right() - 2 * k_gap), y(p.value)};
  }
  [[nodiscard]] double y(double value) const {
    return top_ + (1 - value_.share(value)) * t_.height;
  }
  /// A line over the whole width with its words on the side away from the readings.
  void limit(const std::optional<BandLimit>& limit, double shift) {
    if (!limit) return;
    const double at_y = y(limit->value);
    items_.emplace_back(Line{{0, at_y}, {right(), at_y}, {Role::ink, 0.35}});
    items_.emplace_back(Text{
        {0, at_y + shift}, m_.shortened(limit->text, k_small, Weight::normal, right()), k_small});
  }
  [[nodiscard]] bool inside(double when) const { return when >= when_.low && when <= when_.high; }
  void changes() {
    for (const double when : t_.changes) {
      if (!inside(when)) continue;
      const double x = at({when, value_.low, 0}).x;
      items_.emplace_back(
          Line{{x, top_}, {x, top_ + t_.height}, {Role::second_ink, 0.25, 0.4, 1.2}});
    }
  }
  void line() {
    if (!t_.line_from || !t_.line_to) return;
    items_.emplace_back(Line{at(*t_.line_from), at(*t_.line_to), {Role::ink, 0.3, 2, 1}});
  }
  void points() {
    for (std::size_t i = 0; i < t_.points.size(); ++i) {
      const TrendPoint& p = t_.points[i];
      const bool last = i + 1 == t_.points.size();
      const Point c = at(p);
      if (p.uncertainty > 0)
        items_.emplace_back(Line{{c.x, y(p.value - p.uncertainty)},
                                 {c.x, y(p.value + p.uncertainty)},
                                 {last ? Role::lacquer_text : Role::second_ink, 0.25}});
      items_.emplace_back(last ? Circle{c, 1.05, Role::lacquer, {Role::lacquer_text, 0.3}}
                               : Circle{c, 0.65, Role::ink, {}});
    }
    items_.emplace_back(Text{{right(), at(t_.points.back()).y + k_text * 0.36},
                             m_.shortened(t_.last_text, k_text, Weight::bold, t_.width - right()),
                             k_text,
                             Weight::bold,
                             Anchor::start,
                             Role::lacquer_text});
  }
  void axis() {
    y_ = top_ + t_.height + (t_.lower ? 5.5 : 2.5);
    items_.emplace_back(Line{{0, y_}, {right(), y_}, {Role::second_ink, 0.2}});
    const double half = right() / 2 - 1;
    y_ += k_small * 1.4;
    const double baseline = y_ - 0.2;
    items_.emplace_back(Text{{0, baseline},
                             m_.shortened(t_.first_when, k_small, Weight::normal, half),
                             k_small,
                             Weight::normal,
                             Anchor::start,
                             Role::second_ink});
    if (t_.points.size() > 1)
      items_.emplace_back(Text{{right(), baseline},
                               m_.shortened(t_.last_when, k_small, Weight::normal, half),
                               k_small,
                               Weight::normal,
                               Anchor::end,
                               Role::second_ink});
  }
  void foot() {
    for (std::string& line : m_.wrap(t_.words, k_small, Weight::normal, t_.width)) {
      y_ += k_small * 1.4;
      items_.emplace_back(
          Text{{0, y_}, std::move(line), k_small, Weight::normal, Anchor::start, Role::second_ink});
    }
  }

  const Trend& t_;
  TextMeasurer m_;
  Range when_{};
  Range value_{};
  double last_width_{};
  std::vector<Item> items_;
  double y_{};
  double top_{};
};

}  // namespace

Result<Fragment> trend(const Trend& trend) {
  if (auto good = sound(trend); !good) return Fail(good.error());
  Fragment out;
  out.page = Drawing{trend}.page();
  out.title = trend.name.empty() ? "readings over time" : trend.name;
  out.description =
      fmt::format("{} {}", trend.points.size(), trend.points.size() == 1 ? "reading" : "readings");
  const auto say = [&](const std::string& words) {
    if (!words.empty()) out.description += "; " + words;
  };
  if (!trend.last_text.empty()) say("last " + trend.last_text);
  if (trend.upper) say(trend.upper->text);
  if (trend.lower) say(trend.lower->text);
  say(trend.words);
  return out;
}

}  // namespace wm::drawing
