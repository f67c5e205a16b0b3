#include "evidence/reading_trend.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <ranges>
#include <span>

#include "evidence/detail/budget.hpp"
#include "evidence/detail/figures.hpp"
#include "statistics/robust.hpp"
#include "statistics/step.hpp"
#include "statistics/trend.hpp"

namespace wm::evidence {
namespace {

using describe::AnyQuantity;

constexpr std::size_t k_least_for_drift = 5;  // with 4 no p below 0.08 is possible
constexpr std::size_t k_least_for_jump = 8;
constexpr double k_shows = 0.05;
constexpr double k_jump_shows = 0.01;  // looked for everywhere, so asked for more
constexpr double k_much_less = 0.6;    ///< ours, no source
constexpr double k_days_a_year = 365.25;
constexpr double k_hours_shown = 100;

struct Point {
  double at{};
  double value{};
  std::size_t index{};  ///< in the input
};

struct Run {
  std::string part;
  std::vector<Point> points;
  std::optional<statistics::TheilSen> slope;
  bool drifts{};

  [[nodiscard]] std::vector<double> ats() const {
    std::vector<double> out;
    std::ranges::transform(points, std::back_inserter(out), &Point::at);
    return out;
  }
  [[nodiscard]] std::vector<double> values() const {
    std::vector<double> out;
    std::ranges::transform(points, std::back_inserter(out), &Point::value);
    return out;
  }
  /// Values carried along the drift, where it shows, to another moment.
  [[nodiscard]] std::vector<double> carried_to(double at) const {
    auto out = values();
    if (!drifts) return out;
    for (std::size_t i = 0; i < out.size(); ++i) out[i] += slope->slope * (at - points[i].at);
    return out;
  }
};

Problem missing(std::string path, std::string what, std::string expected, std::string example) {
  return {Kind::missing,
          std::move(path),
          std::move(what),
          std::move(expected),
          std::move(example),
          {},
          {}};
}

class Work {
 public:
  Work(const ReadingTrendInput& in, const describe::Context& context)
      : in_(in), context_(context) {}

  Checked<ReadingTrendAnswer> run() {
    check();
    if (!problems_.empty()) return Fail(std::move(problems_));
    split();
    for (auto& r : runs_) drift_of(r);
    for (std::size_t i = 1; i < runs_.size(); ++i) change_between(runs_[i - 1], runs_[i]);
    for (const auto& r : runs_) jump_in(r);
    crossing();
    last_line();
    tell();
    return std::move(out_);
  }

 private:
  const ReadingTrendInput& in_;
  const describe::Context& context_;
  ReadingTrendAnswer out_;
  Problems problems_;
  const quantity::Unit* unit_{};
  bool hours_{};
  quantity::Date first_day_{};
  std::vector<Run> runs_;

  void check() {
    if (in_.readings.empty()) {
      problems_.push_back(missing("readings", "there is no reading", "readings in the order taken",
                                  R"([{"hours": "1000 h", "value": "5.2 kohm"}])"));
      return;
    }
    unit_ = &detail::unit_of(in_.readings.front().value);
    const bool all_hours =
        std::ranges::all_of(in_.readings, [](const auto& r) { return r.hours.has_value(); });
    hours_ = in_.over == TrendOver::hours || (in_.over == TrendOver::hours_if_known && all_hours);
    for (std::size_t i = 0; i < in_.readings.size(); ++i) check_reading(i);
    const auto kind = in_.readings.front().value.kind;
    if (in_.lowest) detail::need_kind(*in_.lowest, kind, "lowest", false, problems_);
    if (in_.highest) detail::need_kind(*in_.highest, kind, "highest", false, problems_);
    if (in_.lowest && in_.highest && in_.lowest->si > in_.highest->si)
      problems_.push_back({Kind::conflict,
                           "lowest",
                           "the lowest is above the highest",
                           "the lower limit first",
                           in_.highest->text,
                           {},
                           {}});
  }

  void check_reading(std::size_t i) {
    const auto& r = in_.readings[i];
    const auto where = fmt::format("readings/{}", i);
    detail::need_kind(r.value, in_.readings.front().value.kind, where + "/value", false, problems_);
    if (hours_ && !r.hours)
      problems_.push_back(missing(where + "/hours", "when it was read is not said in hours",
                                  "hours at the time", "1040.5 h"));
    if (!hours_ && !r.day)
      problems_.push_back(missing(where + "/day", "the day on which it was read is not said",
                                  "year-month-day", "2026-11-25"));
  }

  void split() {
    out_.over = hours_ ? "hours" : "calendar";
    std::vector<Point> points;
    for (std::size_t i = 0; i < in_.readings.size(); ++i)
      points.push_back({0.0, detail::point_in(in_.readings[i].value, *unit_), i});
    if (!hours_) first_day_ = *std::ranges::min_element(in_.readings, {}, &TrendReading::day)->day;
    for (auto& p : points) {
      const auto& r = in_.readings[p.index];
      p.at = hours_ ? r.hours->value.si / 3600.0
                    : static_cast<double>(quantity::days_between(first_day_, *r.day));
    }
    std::ranges::stable_sort(points, {}, &Point::at);
    for (const auto& p : points) {
      const auto& part = in_.readings[p.index].part;
      if (runs_.empty() || runs_.back().part != part) runs_.push_back({part, {}, {}, false});
      runs_.back().points.push_back(p);
    }
  }

  [[nodiscard]] std::string when(double at) const {
    if (hours_) return fmt::format("{:.1f} h", at);
    const auto day =
        std::chrono::sys_days{first_day_} + std::chrono::days{static_cast<int>(std::lround(at))};
    return quantity::print_date(quantity::Date{day});
  }
  [[nodiscard]] double per() const { return hours_ ? k_hours_shown : k_days_a_year; }
  [[nodiscard]] std::string per_words() const { return hours_ ? "100 h" : "a year"; }
  [[nodiscard]] AnyQuantity width(double value) const {
    auto out = detail::as_width(std::abs(value), *unit_);
    if (value < 0) {
      out.si = -out.si;
      out.text = "-" + out.text;
    }
    return out;
  }
  [[nodiscard]] static std::string name_of(const Run& run) {
    return run.part.empty() ? std::string("the part") : run.part;
  }
  [[nodiscard]] static std::string signed_text(const AnyQuantity& v) {
    return v.si > 0 ? "+" + v.text : v.text;
  }

  void drift_of(Run& run) {
    PartTrend out;
    out.part = run.part;
    out.readings = static_cast<std::int64_t>(run.points.size());
    out.from = when(run.points.front().at);
    out.to = when(run.points.back().at);
    const auto values = run.values();
    const double spread = statistics::median_absolute_deviation(values);
    out.middle = detail::as_point(statistics::median(values), spread, *unit_);
    out.per = per_words();
    if (run.points.size() < k_least_for_drift) {
      out.words = fmt::format("{}: {} readings, too few to speak of a drift", name_of(run),
                              run.points.size());
      out_.parts.push_back(std::move(out));
      return;
    }
    const auto test = statistics::mann_kendall(run.ats(), values);
    const auto slope = statistics::theil_sen(run.ats(), values, in_.confidence.si);
    if (!test || !slope) {
      out.words = fmt::format("{}: {}", name_of(run), (test ? slope.error() : test.error()).what);
      out_.parts.push_back(std::move(out));
      return;
    }
    run.slope = *slope;
    out.p = test->p;
    const bool one_sign = (slope->slope_low > 0) == (slope->slope_high > 0);
    const bool slopes = test->p <= k_shows && one_sign && slope->slope != 0.0;
    const bool stepped = slopes && a_step_fits_better(run);
    run.drifts = out.drifts = slopes && !stepped;
    out.drift = width(slope->slope * per());
    out.drift_low = width(slope->slope_low * per());
    out.drift_high = width(slope->slope_high * per());
    const auto figures =
        fmt::format("{} {} ({} to {}), p {}", signed_text(*out.drift), "in " + per_words(),
                    out.drift_low->text, out.drift_high->text, quantity::significant(test->p, 2));
    out.words = out.drifts ? fmt::format("{} drifts: {}", name_of(run), figures)
                : stepped  ? fmt::format("{}: a step fits better than a drift", name_of(run))
                           : fmt::format("{}: no drift shows ({})", name_of(run), figures);
    out_.working.push_back(fmt::format(
        "{}: S = {}, var S = {}, z = {}, p = {} ({}); slope = median of {} pairs = {} in {}",
        name_of(run), test->s, quantity::significant(test->variance, 4),
        quantity::significant(test->z, 4), quantity::significant(test->p, 3),
        test->exact ? "counted" : "normal law", slope->pairs, out.drift->text, per_words()));
    out_.parts.push_back(std::move(out));
  }

  /// Two levels leave much less over than one line: then the line only follows the step. A true
  /// drift leaves more over of two levels than of its line, unless the readings scatter over it.
  [[nodiscard]] bool a_step_fits_better(const Run& run) const {
    if (run.points.size() < k_least_for_jump) return false;
    auto values = run.values();
    const auto jump = statistics::largest_jump(values, context_.seed);
    if (!jump || jump->p > k_jump_shows) return false;
    const auto off = [](std::span<const double> some) {
      const double middle = statistics::median(some);
      double sum = 0.0;
      for (const double v : some) sum += std::abs(v - middle);
      return sum;
    };
    const std::span<const double> all(values);
    const double two_levels = off(all.first(jump->before)) + off(all.subspan(jump->before));
    std::vector<double> rest;
    for (const auto& p : run.points) rest.push_back(p.value - run.slope->at(p.at));
    return two_levels < k_much_less * off(rest);
  }

  void change_between(const Run& before, const Run& after) {
    const double at = after.points.front().at;
    const auto shift =
        statistics::rank_shift(before.carried_to(at), after.carried_to(at), in_.confidence.si);
    const auto place = fmt::format("{} to {} at {}", name_of(before), name_of(after), when(at));
    if (!shift) {
      out_.working.push_back(place + ": " + shift.error().what);
      return;
    }
    StepFound out;
    out.at = when(at);
    out.change_of_part = true;
    out.by = width(shift->estimate);
    out.by_low = width(shift->low);
    out.by_high = width(shift->high);
    out.p = shift->p;
    const auto figures =
        fmt::format("{} ({} to {}, {:.0f} %), p {}", signed_text(out.by), out.by_low.text,
                    out.by_high.text, 100 * shift->confidence, quantity::significant(shift->p, 2));
    out_.working.push_back(fmt::format("{}: rank sum, shift {}", place, figures));
    if (shift->p > k_shows) {
      const bool few = before.points.size() + after.points.size() < 8;
      out_.notes.push_back(fmt::format("change of part, {}: no step shows ({}){}", place, figures,
                                       few ? "; few readings" : ""));
      return;
    }
    out.words = fmt::format("step at the change of part, {}: {}", place, figures);
    out_.steps.push_back(std::move(out));
  }

  void jump_in(const Run& run) {
    if (run.points.size() < k_least_for_jump) return;
    // Around its own slope, so that a drift is not taken for a jump.
    auto rest = run.values();
    if (run.slope) {
      for (std::size_t i = 0; i < rest.size(); ++i)
        rest[i] -= run.drifts ? run.slope->at(run.points[i].at) : 0.0;
    }
    const auto jump = statistics::largest_jump(rest, context_.seed);
    if (!jump) return;
    const auto cut = rest.begin() + static_cast<std::ptrdiff_t>(jump->before);
    const auto shift = statistics::rank_shift(std::vector<double>(rest.begin(), cut),
                                              std::vector<double>(cut, rest.end()));
    out_.working.push_back(fmt::format(
        "{}: largest jump of ranks before {}, K = {}, p = {} of shuffled runs", name_of(run),
        when(run.points[jump->before].at), jump->k, quantity::significant(jump->p, 2)));
    if (!shift || jump->p > k_jump_shows || run.drifts) return;
    StepFound out;
    out.at = when(run.points[jump->before].at);
    out.by = width(shift->estimate);
    out.by_low = width(shift->low);
    out.by_high = width(shift->high);
    out.p = jump->p;
    out.words = fmt::format("step without a change of part, at {}: {} ({} to {}); what happened?",
                            out.at, signed_text(out.by), out.by_low.text, out.by_high.text);
    out_.steps.push_back(std::move(out));
  }

  /// Where a line of this slope through the middle of the readings meets a limit.
  [[nodiscard]] static double meets(const Run& run, double slope, double limit) {
    std::vector<double> rest;
    for (const auto& p : run.points) rest.push_back(p.value - slope * p.at);
    return (limit - statistics::median(rest)) / slope;
  }

  void crossing() {
    const auto& run = runs_.back();
    if (!run.drifts) return;
    const bool rises = run.slope->slope > 0;
    const auto& limit = rises ? in_.highest : in_.lowest;
    if (!limit) return;
    const double at_limit = detail::point_in(*limit, *unit_);
    const double now = run.points.back().at;
    LimitMet out;
    out.limit = fmt::format("{} {}", rises ? "highest" : "lowest", limit->text);
    const double fast = rises ? run.slope->slope_high : run.slope->slope_low;
    const double slow = rises ? run.slope->slope_low : run.slope->slope_high;
    const double middle = meets(run, run.slope->slope, at_limit);
    const double early = meets(run, fast, at_limit);
    out.when = when(middle);
    out.earliest = when(early);
    out.ahead = std::max(0.0, early - now);
    const bool may_never = slow == 0.0 || (slow > 0) != rises;
    if (!may_never) out.latest = when(meets(run, slow, at_limit));
    const auto span = may_never ? fmt::format("{} at the earliest, perhaps never", out.earliest)
                                : fmt::format("{} to {}", out.earliest, out.latest);
    out.words = middle <= now ? fmt::format("the drift met {} at {}", out.limit, out.when)
                              : fmt::format("at this drift it meets {} at {} ({})", out.limit,
                                            out.when, span);
    out_.working.push_back(fmt::format("crossing = (limit - intercept) / slope = {}", out.when));
    out_.limit_met = std::move(out);
  }

  void last_line() {
    const auto& run = runs_.back();
    if (!run.slope || run.points.size() < 2) return;
    const double from = run.points.front().at;
    const double to = run.points.back().at;
    const double flat = statistics::median(run.values());
    out_.line = run.drifts ? TrendLine{from, to, run.slope->at(from), run.slope->at(to)}
                           : TrendLine{from, to, flat, flat};
  }

  void tell() {
    if (out_.limit_met) out_.lines.push_back(out_.limit_met->words);
    for (const auto& s : out_.steps) out_.lines.push_back(s.words);
    for (const auto& part : std::ranges::reverse_view(out_.parts))
      if (part.drifts) out_.lines.push_back(part.words);
    if (out_.lines.empty()) out_.lines.push_back(out_.parts.back().words);
    out_.notes.emplace_back(
        "A projection says what happens if nothing changes; it is no permission to wait.");
    if (!in_.limit_source.empty()) out_.notes.push_back("Limit from: " + in_.limit_source);
  }
};

}  // namespace

Checked<ReadingTrendAnswer> reading_trend(const ReadingTrendInput& in,
                                          const describe::Context& context) {
  return Work(in, context).run();
}

}  // namespace wm::evidence
