// Laws that hold for any input; draws are seeded, so a failure can be replayed.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "statistics/draws.hpp"
#include "statistics/robust.hpp"
#include "statistics/summary.hpp"
#include "statistics/trend.hpp"

namespace wm::statistics {
namespace {

std::vector<double> some(Draws& d, std::size_t n) {
  std::vector<double> out(n);
  for (double& v : out) v = d.normal(5.0, 2.0);
  return out;
}

TEST(StatisticsLaws, ChangeOfUnitsScalesEverything) {
  Draws d(11);
  for (int round = 0; round < 300; ++round) {
    const auto n = 4 + static_cast<std::size_t>(d.index(20));
    const auto x = some(d, n);
    const auto y = some(d, n);
    const double a = d.uniform(-3.0, 3.0);
    const double b = d.uniform(0.1, 40.0);
    std::vector<double> z(n);
    for (std::size_t i = 0; i < n; ++i) z[i] = a + b * y[i];
    const double eps = 1e-12 * b * 20.0;
    EXPECT_NEAR(mean(z), a + b * mean(y), eps);
    EXPECT_NEAR(*standard_deviation(z), b * *standard_deviation(y), eps);
    EXPECT_NEAR(median(z), a + b * median(y), eps);
    EXPECT_NEAR(median_absolute_deviation(z), b * median_absolute_deviation(y), eps);
    const auto before = theil_sen(x, y);
    const auto after = theil_sen(x, z);
    ASSERT_TRUE(before && after);
    EXPECT_NEAR(after->slope, b * before->slope, 1e-9 * (1.0 + b * std::abs(before->slope)));
    EXPECT_EQ(mann_kendall(x, y)->s, mann_kendall(x, z)->s);
  }
}

TEST(StatisticsLaws, TimeReversedTurnsTheTrend) {
  Draws d(12);
  for (int round = 0; round < 300; ++round) {
    const auto n = 4 + static_cast<std::size_t>(d.index(20));
    const auto x = some(d, n);
    const auto y = some(d, n);
    std::vector<double> back(n);
    for (std::size_t i = 0; i < n; ++i) back[i] = -x[i];
    EXPECT_EQ(mann_kendall(x, y)->s, -mann_kendall(back, y)->s);
    EXPECT_EQ(mann_kendall(x, y)->p, mann_kendall(back, y)->p);
    EXPECT_NEAR(theil_sen(x, y)->slope, -theil_sen(back, y)->slope, 1e-12);
  }
}

TEST(StatisticsLaws, ExactAndNormalPAgreeForLongSeries) {
  Draws d(13);
  const auto x = some(d, 45);
  for (int round = 0; round < 20; ++round) {
    const auto t = mann_kendall(x, some(d, 45));
    ASSERT_TRUE(t && t->exact);
    EXPECT_NEAR(t->p, std::erfc(std::abs(t->z) / std::sqrt(2.0)), 0.01);
  }
}

}  // namespace
}  // namespace wm::statistics
