// Failures of one system that is repaired in place, in order: more of them or fewer?
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "quantity/as_typed.hpp"
#include "reliability/detail/problem.hpp"
#include "reliability/policy.hpp"
#include "statistics/distributions.hpp"
#include "statistics/numeric.hpp"

namespace wm::reliability {
namespace {

using detail::problem;
using quantity::pencil;

constexpr double k_hour = 3600.0;
double hours_of(quantity::Duration d) { return d.si / k_hour; }

class Trend {
 public:
  explicit Trend(const FailureTrendInput& in) : in_(in) {}

  Checked<FailureTrendAnswer> run() {
    if (!in_.grouped.empty() && !in_.times.empty()) {
      return fail("grouped", Kind::conflict, "times and counts as well", "one of the two");
    }
    return in_.grouped.empty() ? from_times() : from_counts();
  }

 private:
  static Checked<FailureTrendAnswer> fail(const char* path, Kind kind, const char* what,
                                          const char* expected) {
    return Fail(Problems{problem(path, kind, what, expected)});
  }

  Checked<FailureTrendAnswer> from_times() {
    std::vector<double> t;
    for (const auto& d : in_.times) t.push_back(hours_of(d));
    std::sort(t.begin(), t.end());
    if (t.size() < 3) {
      return fail("times", Kind::not_applicable, "fewer than three failures show no trend",
                  "three failures or more");
    }
    if (!(t.front() > 0.0)) {
      return fail("times", Kind::out_of_bounds, "a failure at the very start", "more than 0 h");
    }
    const double end = in_.until ? hours_of(*in_.until) : t.back();
    if (end < t.back()) {
      return fail("until", Kind::conflict, "a failure after the end of the record",
                  "an end at or after the last failure");
    }
    const bool at_failure = !in_.until;
    const auto n = static_cast<double>(t.size());
    double sum = 0.0, total = 0.0;
    for (const double x : t) {
      sum += std::log(end / x);
      total += x;
    }
    estimate(n, sum, end);
    const double free = 2.0 * (at_failure ? n - 1.0 : n);
    out_.shape_unbiased = (at_failure ? n - 2.0 : n - 1.0) / sum;
    limits(n, free);
    out_.trend_statistic = 2.0 * sum;
    const double below = statistics::chi_squared_cdf(2.0 * sum, free);
    out_.fewer_p = quantity::Fraction{1.0 - below};
    out_.more_p = quantity::Fraction{below};
    laplace(at_failure ? n - 1.0 : n, at_failure ? total - end : total, end);
    misfit(t, end, at_failure);
    say(n, end);
    return std::move(out_);
  }

  void estimate(double n, double sum, double end) {
    out_.shape = n / sum;
    finish(n, end);
    out_.working.push_back(fmt::format("sum of ln({} / t) = {}; shape = {} / {} = {}", pencil(end),
                                       pencil(sum), pencil(n), pencil(sum), pencil(out_.shape)));
  }

  void finish(double n, double end) {
    out_.rate_factor = n / std::pow(end, out_.shape);
    out_.rate_now = n * out_.shape / end;
    out_.between_failures = quantity::hours(1.0 / out_.rate_now);
    const double next = hours_of(in_.next);
    out_.expected_next =
        out_.rate_factor * (std::pow(end + next, out_.shape) - std::pow(end, out_.shape));
    out_.working.push_back(fmt::format("rate at the end = {} x {} / {} = {} an hour", pencil(n),
                                       pencil(out_.shape), pencil(end), pencil(out_.rate_now)));
  }

  void limits(double n, double free) {
    const double tail = (1.0 - in_.confidence.si) / 2.0;
    const double by = out_.shape / (2.0 * n);
    out_.shape_low = by * statistics::chi_squared_quantile(tail, free);
    out_.shape_high = by * statistics::chi_squared_quantile(1.0 - tail, free);
  }

  void laplace(double n, double total, double end) {
    out_.laplace = (total / n - end / 2.0) / (end / std::sqrt(12.0 * n));
  }

  void misfit(const std::vector<double>& t, double end, bool at_failure) {
    const std::size_t m = at_failure ? t.size() - 1 : t.size();
    const auto count = static_cast<double>(m);
    double sum = 1.0 / (12.0 * count);
    for (std::size_t i = 0; i < m; ++i) {
      const double expected = (2.0 * static_cast<double>(i) + 1.0) / (2.0 * count);
      const double off = std::pow(t[i] / end, *out_.shape_unbiased) - expected;
      sum += off * off;
    }
    out_.misfit = sum;
  }

  Checked<FailureTrendAnswer> from_counts() {
    double n = 0.0, before = 0.0;
    for (const auto& g : in_.grouped) {
      if (hours_of(g.until) <= before) {
        return fail("grouped", Kind::conflict, "the ends of the intervals do not rise",
                    "each later than the one before");
      }
      before = hours_of(g.until);
      n += static_cast<double>(g.failures);
    }
    if (in_.grouped.size() < 2 || n < 3.0) {
      return fail("grouped", Kind::not_applicable, "too little to show a trend",
                  "two intervals or more, three failures or more");
    }
    const double end = before;
    const auto score = [&](double shape) {
      double sum = 0.0, from = 0.0;
      for (const auto& g : in_.grouped) {
        const double to = hours_of(g.until);
        const double a = std::pow(to, shape), b = from > 0.0 ? std::pow(from, shape) : 0.0;
        const double top = a * std::log(to) - (from > 0.0 ? b * std::log(from) : 0.0);
        sum += static_cast<double>(g.failures) * (top / (a - b) - std::log(end));
        from = to;
      }
      return sum;
    };
    const auto root = statistics::crossing(score, 1e-3, 50.0);
    if (!root) {
      return fail("grouped", Kind::not_applicable, "these counts set no bound on the shape",
                  "failures in more than one interval");
    }
    out_.shape = *root;
    finish(n, end);
    say(n, end);
    return std::move(out_);
  }

  void say(double n, double end) {
    const char* trend = "no trend is shown";
    const double p = 1.0 - in_.confidence.si;
    if (out_.fewer_p && out_.fewer_p->si < p) trend = "failures become fewer";
    if (out_.more_p && out_.more_p->si < p) trend = "failures become more";
    if (!out_.fewer_p) trend = out_.shape < 1.0 ? "fewer with time" : "more with time";
    out_.in_words = fmt::format(
        "{:.0f} failures in {} h: {}; shape {}; about one in {} h now, {:.3g} expected in the next "
        "{} h",
        n, pencil(end), trend, pencil(out_.shape), pencil(hours_of(out_.between_failures)),
        out_.expected_next, pencil(hours_of(in_.next)));
    if (out_.fewer_p) {
      out_.working.push_back(fmt::format(
          "2 x sum = {}: upper tail {} (small: fewer with time), lower tail {} (small: more)",
          pencil(*out_.trend_statistic), pencil(out_.fewer_p->si), pencil(out_.more_p->si)));
    }
    out_.notes.emplace_back(
        "For one system repaired in place, snags in order. Lives of parts renewed by new ones "
        "belong in life-estimate.");
  }

  const FailureTrendInput& in_;
  FailureTrendAnswer out_;
};

}  // namespace

Checked<FailureTrendAnswer> failure_trend(const FailureTrendInput& input,
                                          const describe::Context& /*context*/) {
  return Trend(input).run();
}

}  // namespace wm::reliability
