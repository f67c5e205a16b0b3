// Source:    statistics notes, section 6: computed there with R 4.2.2 and scipy 1.10.1 (sums of
//            Poisson and gamma probabilities; scipy.stats.betaprime for the unsure rate).
// Tolerance: 1e-3 days, as the notes state; 1e-4 for the single beta-prime quantiles.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "life/forecast.hpp"
#include "life/months.hpp"
#include "statistics/draws.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::life;

struct Row {
  const char* id;
  double hours, rate, shape, scale;
  std::array<double, 5> days;  // q05 q10 q50 q90 q95
};
constexpr std::array<double, 5> k_p{0.05, 0.10, 0.50, 0.90, 0.95};

Flying known(double rate, double shape, double scale) {
  Flying f;
  f.flights = rate;
  f.busy_days = 1.0;
  f.rate_known = true;
  f.shape = shape;
  f.scale = scale;
  return f;
}

class HourLimit : public testing::TestWithParam<Row> {};

TEST_P(HourLimit, FallsWhereTheSumOfProbabilitiesSays) {
  const Row& row = GetParam();
  const DaysUntil until(known(row.rate, row.shape, row.scale), row.hours);
  for (std::size_t i = 0; i < k_p.size(); ++i) {
    test::check({"due-date", fmt::format("{}, quantile {}", row.id, k_p[i]),
                 "statistics notes, section 6 (R 4.2.2, scipy 1.10.1)",
                 fmt::format("{} days", row.days[i]), row.days[i], until.quantile(k_p[i]), 1e-3,
                 "stated with the figures"});
  }
}

INSTANTIATE_TEST_SUITE_P(
    Notes, HourLimit,
    testing::Values(Row{"12 h", 12, .15, 4, .3, {35.6802, 41.8000, 68.3438, 103.0762, 114.4826}},
                    Row{"25 h", 25, .12, 2, .6, {108.5834, 121.9880, 176.3992, 242.1876, 262.9499}},
                    Row{"3 h", 3, .10, 3, .4, {6.2472, 9.4341, 27.8527, 58.8665, 70.1248}}));

TEST(HourLimitCases, AnUnsureRateIsBetaPrime) {
  const std::array<double, 5> days{29.5543, 35.0452, 63.2710, 114.5782, 136.1366};
  for (std::size_t i = 0; i < k_p.size(); ++i) {
    test::check({"due-date", fmt::format("10 flights after 9 in 60 days, quantile {}", k_p[i]),
                 "statistics notes, section 6 (scipy betaprime)", fmt::format("{} days", days[i]),
                 days[i], days_for_flights(10, 9, 60, k_p[i]), 1e-4,
                 "half a unit of the last digit, doubled"});
  }
}

TEST(HourLimitCases, AKnownRateIsErlangAndTooNarrow) {
  // All flights equally long (a very large shape), so that exactly the tenth one crosses.
  const std::array<double, 5> days{36.1694, 41.4754, 64.4581, 94.7066, 104.7014};
  const DaysUntil until(known(9.0 / 60.0, 1e6, 1e-6), 9.5);
  for (std::size_t i = 0; i < k_p.size(); ++i) {
    test::check({"due-date", fmt::format("tenth flight, rate known, quantile {}", k_p[i]),
                 "statistics notes, section 6 (Erlang)", fmt::format("{} days", days[i]), days[i],
                 until.quantile(k_p[i]), 1e-3, "stated with the figures"});
  }
}

// Second way: throw flights one by one. The rate is drawn from what n flights in D days say,
// the gamma law with shape n + 1/2.
TEST(HourLimitCases, MonteCarloWithAnUnsureRateAgrees) {
  Flying f;
  f.flights = 31;
  f.busy_days = 200;
  f.shape = 2.5;
  f.scale = 0.5;
  constexpr double k_hours = 18;
  statistics::Draws draws(20261125);
  std::vector<double> days;
  for (int i = 0; i < 40000; ++i) {
    const double rate = draws.gamma(f.flights + 0.5, f.busy_days);
    double t = 0;
    for (double flown = 0; flown < k_hours; flown += draws.gamma(f.shape, 1.0 / f.scale)) {
      t += draws.exponential(rate);
    }
    days.push_back(t);
  }
  std::sort(days.begin(), days.end());
  const DaysUntil until(f, k_hours);
  for (const double p : k_p) {
    // Four standard errors of the share below the quantile.
    const auto below = std::lower_bound(days.begin(), days.end(), until.quantile(p)) - days.begin();
    const double share = static_cast<double>(below) / static_cast<double>(days.size());
    EXPECT_NEAR(share, p, 4.0 * std::sqrt(p * (1 - p) / 40000.0)) << p;
  }
}

}  // namespace
