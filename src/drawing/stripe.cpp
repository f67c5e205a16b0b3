#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/detail/clean_text.hpp"
#include "drawing/marks.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing {
namespace {

// The sign is laid out on a grid 220 wide and 64 high and scaled to its height.
constexpr double k_grid_width = 220;
constexpr double k_grid_height = 64;
constexpr double k_half = 31;       // height of one plate
constexpr double k_lower_top = 33;  // the joint is 2 wide
constexpr double k_stripe_left = 31;
constexpr double k_stripe_width = 18;
constexpr double k_centre = k_stripe_left + k_stripe_width / 2;
constexpr double k_allowance = 70;  // displacement at the limit
constexpr double k_inset = 4;       // stripe to the outer edge of its plate

/// Draws on the grid, in mm.
class Sign {
 public:
  explicit Sign(double height) : scale_(height / k_grid_height) {}

  void plates() {
    rect(0, 0, k_grid_width, k_half, Role::zinc, {}, 3);
    rect(0, k_lower_top, k_grid_width, k_half, Role::zinc_dark, {}, 3);
  }
  void limit() {
    const double x = k_centre + k_allowance;
    items.emplace_back(Line{at(x, k_lower_top), at(x, k_grid_height), pen(Role::ink, 2.4, 4, 3.5)});
  }
  void upper() {
    rect(k_stripe_left, k_inset, k_stripe_width, k_half - k_inset, Role::lacquer, edge());
  }
  void lower(double used) {
    rect(k_stripe_left + used * k_allowance, k_lower_top, k_stripe_width, k_half - k_inset,
         Role::lacquer, edge());
  }
  /// Two ragged pieces; the lower one stands clear of the limit line.
  void broken(double used) {
    polygon({{31, 4}, {49, 4}, {52, 23}, {44, 19}, {38, 26}, {31, 21}});
    const double beyond = std::min((used - 1) * k_allowance, 70.0);
    const double x = k_centre + k_allowance + 15 + beyond;
    polygon({{x - 11, 44}, {x - 3, 39}, {x + 3, 46}, {x + 8, 41}, {x + 9, 60}, {x - 9, 60}});
  }
  /// As wide as the uncertainty, at the best estimate, cut off at the ends of the plate.
  void hatched(double used, double uncertainty) {
    const double middle = k_centre + used * k_allowance;
    const double half = std::max(uncertainty * k_allowance, 2.0);
    const double left = std::clamp(middle - half, 2.0, k_grid_width - 6);
    const double right = std::clamp(middle + half, left + 4, k_grid_width - 2);
    constexpr double top = k_lower_top;
    constexpr double high = k_half - k_inset;
    rect(left, top, right - left, high, Role::zinc_light, edge());
    // Lines at 45 degrees, each cut to the rectangle.
    const int count = static_cast<int>((right - left + high) / 7) + 1;
    for (int i = 0; i < count; ++i) {
      const double start = left - high + 5 + 7 * i;
      const double from = std::max(start, left);
      const double to = std::min(start + high, right);
      if (to - from > 0.5)
        items.emplace_back(Line{at(from, top + high - (from - start)),
                                at(to, top + high - (to - start)), pen(Role::lacquer_text, 2.6)});
    }
  }
  void outline() {
    rect(k_stripe_left, k_inset, k_stripe_width, k_grid_height - 2 * k_inset, Role::zinc_light,
         pen(Role::ink, 2.6));
  }

  std::vector<Item> items;

 private:
  [[nodiscard]] Point at(double x, double y) const { return {x * scale_, y * scale_}; }
  [[nodiscard]] Pen pen(Role role, double width, double on = 0, double off = 0) const {
    return {role, width * scale_, on * scale_, off * scale_};
  }
  /// An edge in the darker lacquer: the fill alone is too near to zinc in grey.
  [[nodiscard]] Pen edge() const { return pen(Role::lacquer_text, 2.6); }
  void rect(double x, double y, double w, double h, Role fill, Pen line, double corner = 0) {
    items.emplace_back(Rect{at(x, y), w * scale_, h * scale_, corner * scale_, fill, line});
  }
  void polygon(std::vector<Point> points) {
    for (Point& p : points) p = at(p.x, p.y);
    items.emplace_back(Path{std::move(points), true, Role::lacquer, edge()});
  }

  double scale_;
};

void draw(Sign& sign, const StripeMark& mark) {
  sign.plates();
  if (mark.state == StripeState::unknown || mark.state == StripeState::not_tested)
    return sign.outline();
  if (mark.state == StripeState::undecided) {
    sign.upper();
    sign.hatched(mark.used, mark.uncertainty);
  } else if (mark.used > 1) {
    sign.broken(mark.used);
  } else {
    sign.upper();
    sign.lower(mark.used);
  }
  sign.limit();  // last, so that it shows on what has reached it
}

/// Two lines beside the sign: the words, then what they are about.
void write(Page& page, const StripeMark& mark, const std::string& about) {
  const TextMeasurer measurer;
  const double words_size = std::max(3.2, mark.height * 0.27);
  const double about_size = std::max(2.65, mark.height * 0.22);
  const double needed = (words_size + (about.empty() ? 0 : about_size)) * 1.25;
  const double sign_shift = std::max(0.0, (needed - page.height) / 2);
  for (Item& item : page.items) item = moved(std::move(item), 0, sign_shift);
  page.height = std::max(page.height, needed);
  const double x = page.width + 2.5;
  double y = (page.height - needed) / 2 + words_size;
  const std::string words = stripe_words(mark);
  page.items.emplace_back(Text{{x, y}, words, words_size, Weight::bold, Anchor::start, Role::ink});
  double width = measurer.width(words, words_size, Weight::bold);
  if (!about.empty()) {
    y += about_size * 1.25;
    page.items.emplace_back(
        Text{{x, y}, about, about_size, Weight::normal, Anchor::start, Role::second_ink});
    width = std::max(width, measurer.width(about, about_size, Weight::normal));
  }
  page.width = x + width + 1;
}

}  // namespace

std::string stripe_words(const StripeMark& mark) {
  switch (mark.state) {
    case StripeState::undecided:
      return "undecided";
    case StripeState::unknown:
      return "unknown";
    case StripeState::not_tested:
      return "not tested";
    case StripeState::used:
      break;
  }
  std::string words;
  const long percent = std::lround(std::clamp(mark.used, 0.0, 1.0) * 100);
  if (mark.used > 1)
    words = "past limit";
  else if (!(mark.used > 0))
    words = "nothing used yet";
  else if (percent == 0)
    words = "less than 1 % used";
  else if (percent == 100 && mark.used < 1)
    words = "more than 99 % used";
  else
    words = fmt::format("{} % used", percent);
  return mark.drifting ? words + ", drifting" : words;
}

Result<Fragment> stripe(const StripeMark& mark) {
  if (!(mark.used >= 0 && mark.used <= 1e6) || !(mark.uncertainty >= 0 && mark.uncertainty <= 1e6))
    return Fail(Kind::out_of_bounds,
                fmt::format("{} of the allowance, give or take {}", mark.used, mark.uncertainty),
                "shares of zero or more");
  if (!(mark.height >= 2 && mark.height <= 100))
    return Fail(Kind::out_of_bounds, fmt::format("a stripe of {} mm", mark.height),
                "a height of 2 mm to 100 mm");
  Sign sign{mark.height};
  draw(sign, mark);
  Fragment out;
  out.page = {mark.height * k_grid_width / k_grid_height, mark.height, std::move(sign.items)};
  std::string about = mark.name;
  if (!mark.detail.empty()) about += (about.empty() ? "" : " · ") + mark.detail;
  if (mark.with_words) write(out.page, mark, about);
  out.title = (mark.name.empty() ? "" : mark.name + ": ") + stripe_words(mark);
  out.description = mark.detail;
  return out;
}

}  // namespace wm::drawing
