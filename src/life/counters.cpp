#include "life/counters.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "life/months.hpp"

namespace wm::life {
namespace {

// Readings are typed with one or two decimals; sums of them must not fail on rounding.
constexpr double k_rounding = 1e-6;

Problem backwards(const CounterEvent& event, double value, const CounterSeries::Point& neighbour,
                  double neighbour_shows, bool neighbour_is_earlier, CountUnit unit) {
  Problem p;
  p.kind = Kind::conflict;
  p.what = fmt::format("the counter would run backwards: {} on {}, but {} on {}, {}",
                       say(value, unit), quantity::print_date(event.on), say(neighbour_shows, unit),
                       quantity::print_date(neighbour.event.on),
                       neighbour_is_earlier ? "before it" : "after it");
  p.expected = neighbour_is_earlier ? fmt::format("{} or more", say(neighbour_shows, unit))
                                    : fmt::format("{} or less", say(neighbour_shows, unit));
  p.do_next =
      "look at the reading and its date again; if the instrument was changed or reset, enter that "
      "first, with what the old one showed last";
  return p;
}

}  // namespace

std::string say(double value, CountUnit unit) {
  switch (unit) {
    case CountUnit::hours:
      // Two decimals only where the second one says something.
      return std::abs(value * 10.0 - std::round(value * 10.0)) < 1e-6
                 ? fmt::format("{:.1f} h", value)
                 : fmt::format("{:.2f} h", value);
    case CountUnit::landings:
      return fmt::format("{:.0f} landings", value);
    case CountUnit::starts:
      return fmt::format("{:.0f} starts", value);
  }
  return fmt::format("{}", value);
}

std::size_t CounterSeries::place_of(const CounterEvent& event) const {
  const auto earlier = [](const CounterEvent& a, const Point& b) {
    return a.on < b.event.on || (a.on == b.event.on && a.order < b.event.order);
  };
  return static_cast<std::size_t>(std::upper_bound(points_.begin(), points_.end(), event, earlier) -
                                  points_.begin());
}

Result<Done> CounterSeries::check(const CounterEvent& event) const {
  if (!is_day(event.on)) {
    return Fail(Kind::out_of_bounds, "the date of the reading is not a day", "a date",
                "2026-11-25");
  }
  for (const double value : {event.shown, event.old_shown.value_or(0.0)}) {
    if (!std::isfinite(value) || value < 0.0) {
      return Fail(Kind::out_of_bounds, "a counter cannot show less than nothing", "0 or more",
                  say(1140.2, unit_));
    }
  }
  const std::size_t place = place_of(event);
  // What the event meets on its left: the old instrument where it was replaced.
  if (place > 0) {
    const Point& before = points_[place - 1];
    const std::optional<double> left = event.replaced ? event.old_shown : event.shown;
    if (left && *left < before.event.shown - k_rounding) {
      return Fail(backwards(event, *left, before, before.event.shown, true, unit_));
    }
  }
  if (place < points_.size()) {
    const Point& after = points_[place];
    const std::optional<double> right =
        after.event.replaced ? after.event.old_shown : after.event.shown;
    if (right && event.shown > *right + k_rounding) {
      return Fail(backwards(event, event.shown, after, *right, false, unit_));
    }
  }
  return Done{};
}

Result<Done> CounterSeries::add(const CounterEvent& event) {
  auto fits = check(event);
  if (!fits) return fits;
  const std::size_t place = place_of(event);
  points_.insert(points_.begin() + static_cast<std::ptrdiff_t>(place), Point{event, 0.0, false});
  carry_offsets(place);
  return Done{};
}

void CounterSeries::carry_offsets(std::size_t from) {
  for (std::size_t i = from; i < points_.size(); ++i) {
    Point& point = points_[i];
    const double offset = i == 0 ? 0.0 : points_[i - 1].offset;
    point.at_least = i != 0 && points_[i - 1].at_least;
    if (!point.event.replaced) {
      point.offset = offset;
      continue;
    }
    // Where the old reading was not noted, the last one known stands in, as a lower bound.
    const double last_known = i == 0 ? 0.0 : points_[i - 1].event.shown;
    point.offset = offset + point.event.old_shown.value_or(last_known) - point.event.shown;
    if (!point.event.old_shown) point.at_least = true;
  }
}

std::optional<TotalAt> CounterSeries::total_at(quantity::Date day) const {
  const std::size_t after = place_of({.on = day, .order = INT64_MAX});
  if (after == 0) return std::nullopt;
  const Point& before = points_[after - 1];
  TotalAt at;
  at.lowest = before.total();
  at.at_least = before.at_least;
  at.exact = before.event.on == day;
  if (at.exact) {
    at.highest = at.lowest;
    at.straight = at.lowest;
  } else if (after < points_.size()) {
    const Point& next = points_[after];
    // A replacement's own total is that of the old instrument at that moment.
    at.highest = std::max(at.lowest, next.total());
    const double whole = quantity::days_between(before.event.on, next.event.on);
    const double part = quantity::days_between(before.event.on, day);
    at.straight = at.lowest + (*at.highest - at.lowest) * part / whole;
  }
  return at;
}

std::optional<double> CounterSeries::total() const {
  if (points_.empty()) return std::nullopt;
  return points_.back().total();
}

std::optional<quantity::Date> CounterSeries::last_day() const {
  if (points_.empty()) return std::nullopt;
  return points_.back().event.on;
}

}  // namespace wm::life
