#include "statistics/summary.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "statistics/robust.hpp"

namespace wm::statistics {
namespace {

const std::vector<double> k_one{3.0};
const std::vector<double> k_flat{2.0, 2.0, 2.0};
const std::vector<double> k_up{1.0, 2.0, 3.0};

TEST(Summary, KnownValues) {
  EXPECT_EQ(mean(k_up), 2.0);
  EXPECT_EQ(*standard_deviation(k_up), 1.0);
  EXPECT_NEAR(*standard_deviation_of_mean(k_up), 1.0 / std::sqrt(3.0), 1e-16);
  EXPECT_EQ(*covariance(k_up, k_up), 1.0);
  EXPECT_NEAR(*correlation(k_up, std::vector<double>{3.0, 2.0, 1.0}), -1.0, 1e-15);
}

TEST(Summary, ALargeOffsetCostsNoDigits) {
  const std::vector<double> v{1e9 + 0.1, 1e9 + 0.2, 1e9 + 0.3};
  EXPECT_NEAR(*standard_deviation(v), 0.1, 1e-6);
}

TEST(Summary, RefusesWhatHasNoSpread) {
  EXPECT_EQ(standard_deviation(k_one).error().kind, Kind::not_applicable);
  EXPECT_EQ(standard_deviation_of_mean(k_one).error().kind, Kind::not_applicable);
  EXPECT_EQ(covariance(k_up, k_one).error().kind, Kind::not_applicable);
  EXPECT_EQ(correlation(k_up, k_flat).error().kind, Kind::not_applicable);
  EXPECT_EQ(correlation(k_up, k_one).error().kind, Kind::not_applicable);
}

TEST(Summary, LineThroughExactPoints) {
  const std::vector<double> x{1.0, 2.0, 4.0, 7.0};
  const std::vector<double> y{5.0, 7.0, 11.0, 17.0};
  const auto line = fit_line(x, y, 2.0);
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->slope, 2.0, 1e-14);
  EXPECT_NEAR(line->intercept, 7.0, 1e-14);
  EXPECT_NEAR(line->scatter, 0.0, 1e-14);
  EXPECT_NEAR(line->at(10.0), 23.0, 1e-13);
  EXPECT_NEAR(line->u_at(10.0), 0.0, 1e-13);
}

TEST(Summary, LineRefusesTooLittle) {
  EXPECT_EQ(fit_line(k_one, k_one).error().kind, Kind::not_applicable);
  EXPECT_EQ(fit_line(k_flat, k_up).error().kind, Kind::not_applicable);
  EXPECT_EQ(fit_line(k_up, k_one).error().kind, Kind::not_applicable);
}

TEST(Robust, MedianOfOddAndEven) {
  EXPECT_EQ(median(std::vector<double>{5.0, 1.0, 3.0}), 3.0);
  EXPECT_EQ(median(std::vector<double>{5.0, 1.0, 3.0, 4.0}), 3.5);
  EXPECT_EQ(median(k_one), 3.0);
}

TEST(Robust, OneWildValueDoesNotPull) {
  EXPECT_EQ(median_absolute_deviation(std::vector<double>{1.0, 2.0, 3.0, 4.0, 1e9}), 1.0);
  EXPECT_EQ(median_absolute_deviation(k_flat), 0.0);
}

TEST(Robust, QuantileBetweenRanks) {
  const std::vector<double> v{10.0, 20.0, 30.0, 40.0};
  EXPECT_EQ(quantile(v, 0.0), 10.0);
  EXPECT_EQ(quantile(v, 1.0), 40.0);
  EXPECT_EQ(quantile(v, 0.5), 25.0);
}

}  // namespace
}  // namespace wm::statistics
