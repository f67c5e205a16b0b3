#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/marks.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing {
namespace {

constexpr double k_text = 3.2;
constexpr double k_small = 2.65;
constexpr double k_bar = 4.5;       // height of the band, mm
constexpr double k_overhang = 1.6;  // limit lines stand out by this much
constexpr double k_edge = 1.5;      // dots keep this far from the ends

bool finite(double v) { return std::abs(v) <= 1e300; }

Result<Done> sound(const AcceptanceBand& b) {
  if (!b.lower && !b.upper)
    return Fail(Kind::missing, "no limit to draw", "a lower or an upper limit");
  const bool good = (!b.lower || finite(b.lower->value)) && (!b.upper || finite(b.upper->value)) &&
                    (!b.reading || finite(*b.reading)) && b.uncertainty >= 0 &&
                    finite(b.uncertainty);
  if (!good)
    return Fail(Kind::out_of_bounds, "a limit, reading or uncertainty that cannot be drawn",
                "finite figures, an uncertainty of zero or more");
  if (b.lower && b.upper && b.lower->value > b.upper->value)
    return Fail(Kind::conflict, "the lower limit is above the upper one", "lower, then upper");
  if (!(b.width >= 40 && b.width <= 400))
    return Fail(Kind::out_of_bounds, fmt::format("a band of {} mm", b.width), "40 mm to 400 mm");
  return Done{};
}

struct Scale {
  double low, high;
  double width;
  [[nodiscard]] double x(double value) const {
    return std::clamp((value / 2 - low / 2) / (high / 2 - low / 2) * width, 0.0, width);
  }
};

/// What the limits alone would show, then widened for a reading that is not too far out.
Scale scale(const AcceptanceBand& b) {
  double low = b.lower ? b.lower->value : std::min(0.0, b.upper->value);
  double high = b.upper ? b.upper->value : std::max(0.0, b.lower->value);
  if (!b.lower && !(low < high)) low = high - std::max(std::abs(high), b.uncertainty * 4);
  if (!b.upper && (b.lower && b.lower->value >= 0)) high = low + std::max(low, b.uncertainty * 4);
  double span = high - low;
  if (!(span > 0)) span = std::max({std::abs(high) * 0.1, b.uncertainty * 4, 1e-9});
  if (b.reading) {
    const double left = *b.reading - b.uncertainty;
    const double right = *b.reading + b.uncertainty;
    // Beyond twice the span the limits would shrink to nothing: leave it off the scale.
    if (left > low - 2 * span && left < low) low = left;
    if (right < high + 2 * span && right > high) high = right;
  }
  const double margin = std::max(high - low, span) * 0.14;
  return {low - margin, high + margin, b.width};
}

class Drawing {
 public:
  Drawing(const AcceptanceBand& band, const Scale& s) : b_(band), s_(s) {}

  Page page() {
    head();
    if (b_.reading) reading_text();
    bar();
    limits();
    if (b_.reading) dot();
    foot();
    return {b_.width, y_ + 1, std::move(items_)};
  }

 private:
  void lines(const std::string& text, double size, Weight weight, Role role) {
    for (std::string& line : m_.wrap(text, size, weight, b_.width)) {
      y_ += size * 1.3;
      items_.emplace_back(
          Text{{0, y_ - size * 0.3}, std::move(line), size, weight, Anchor::start, role});
    }
  }
  void head() {
    lines(b_.name, k_text, Weight::normal, Role::ink);
    lines(b_.verdict, k_text, Weight::bold, Role::ink);
  }
  [[nodiscard]] bool off_left() const { return *b_.reading < s_.low; }
  [[nodiscard]] bool off_right() const { return *b_.reading > s_.high; }
  [[nodiscard]] double dot_x() const {
    return std::clamp(s_.x(*b_.reading), k_edge, b_.width - k_edge);
  }
  /// Centred on x, but within the drawing.
  [[nodiscard]] double kept_inside(double x, double text_width) const {
    return std::clamp(x, text_width / 2, std::max(text_width / 2, b_.width - text_width / 2));
  }
  void reading_text() {
    std::string text = b_.reading_text;
    if (off_left() || off_right()) text += ", off this scale";
    const auto wrapped = m_.wrap(text, k_text, Weight::bold, b_.width);
    for (const std::string& line : wrapped) {
      y_ += k_text * 1.35;
      const double w = m_.width(line, k_text, Weight::bold);
      items_.emplace_back(Text{{kept_inside(dot_x(), w), y_ - k_text * 0.25},
                               line,
                               k_text,
                               Weight::bold,
                               Anchor::middle,
                               Role::lacquer_text});
    }
  }
  void bar() {
    y_ += k_overhang + 0.8;
    top_ = y_;
    y_ += k_bar;
    items_.emplace_back(
        Rect{{0, top_}, b_.width, k_bar, 0, Role::zinc_light, {Role::second_ink, 0.15}});
    const double from = b_.lower ? s_.x(b_.lower->value) : 0;
    const double to = b_.upper ? s_.x(b_.upper->value) : b_.width;
    items_.emplace_back(Rect{{from, top_}, to - from, k_bar, 0, Role::zinc_dark, {}});
  }
  void limits() {
    y_ += k_overhang + 0.4;
    double taken_to = -1;
    for (const auto* limit : {&b_.lower, &b_.upper}) {
      if (!*limit) continue;
      const double x = s_.x((*limit)->value);
      items_.emplace_back(
          Line{{x, top_ - k_overhang}, {x, top_ + k_bar + k_overhang}, {Role::ink, 0.4}});
      const std::string text = m_.shortened((*limit)->text, k_small, Weight::normal, b_.width);
      const double w = m_.width(text, k_small, Weight::normal);
      const double middle = kept_inside(x, w);
      // The second label goes one line down where it would touch the first.
      if (taken_to > middle - w / 2 - 1.5) y_ += k_small * 1.3;
      taken_to = middle + w / 2;
      items_.emplace_back(
          Text{{middle, y_ + k_small}, text, k_small, Weight::normal, Anchor::middle, Role::ink});
    }
    y_ += k_small * 1.3;
  }
  void dot() {
    const double y = top_ + k_bar / 2;
    const double x = dot_x();
    const Pen bar{Role::lacquer_text, 0.45};
    if (off_left() || off_right()) {
      const double tip = off_right() ? 1.3 : -1.3;
      items_.emplace_back(
          Path{{{x + tip, y}, {x - tip, y - 1.3}, {x - tip, y + 1.3}}, true, Role::lacquer, bar});
      return;
    }
    const double from = s_.x(*b_.reading - b_.uncertainty);
    const double to = s_.x(*b_.reading + b_.uncertainty);
    if (b_.uncertainty > 0) {
      items_.emplace_back(Line{{from, y}, {to, y}, bar});
      for (double end : {from, to}) items_.emplace_back(Line{{end, y - 1.3}, {end, y + 1.3}, bar});
    }
    items_.emplace_back(Circle{{x, y}, 1.05, Role::lacquer, {Role::lacquer_text, 0.3}});
  }
  void foot() { lines(b_.source, k_small, Weight::normal, Role::second_ink); }

  const AcceptanceBand& b_;
  Scale s_;
  TextMeasurer m_;
  std::vector<Item> items_;
  double y_{};
  double top_{};
};

}  // namespace

Result<Fragment> acceptance_band(const AcceptanceBand& band) {
  if (auto good = sound(band); !good) return Fail(good.error());
  Fragment out;
  out.page = Drawing{band, scale(band)}.page();
  out.title = band.name;
  if (!band.verdict.empty()) out.title += (out.title.empty() ? "" : ": ") + band.verdict;
  const auto say = [&](const std::string& words) {
    if (!words.empty()) out.description += (out.description.empty() ? "" : "; ") + words;
  };
  say(band.reading ? "reading " + band.reading_text : "no reading");
  if (band.lower) say(band.lower->text);
  if (band.upper) say(band.upper->text);
  say(band.source);
  return out;
}

}  // namespace wm::drawing
