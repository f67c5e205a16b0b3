#include "statistics/trend.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace wm::statistics {
namespace {

const std::vector<double> k_time{0.0, 1.0, 2.0, 3.0, 4.0, 5.0};
const std::vector<double> k_rise{1.0, 2.0, 3.0, 4.0, 5.0, 6.0};

TEST(MannKendall, AllRisingIsTheLeastLikelyOrder) {
  const auto t = mann_kendall(k_time, k_rise);
  ASSERT_TRUE(t);
  EXPECT_EQ(t->s, 15.0);
  EXPECT_TRUE(t->exact);
  EXPECT_NEAR(t->p, 2.0 / 720.0, 1e-15);  // two orders of 6! = 720
}

TEST(MannKendall, NoTrendHasPOfOne) {
  const auto t = mann_kendall(std::vector<double>{0, 1, 2, 3}, std::vector<double>{2, 4, 1, 3});
  ASSERT_TRUE(t);
  EXPECT_EQ(t->s, 0.0);
  EXPECT_EQ(t->z, 0.0);
  EXPECT_NEAR(t->p, 1.0, 1e-12);
}

TEST(MannKendall, TheOrderOfEntryDoesNotMatter) {
  const auto t =
      mann_kendall(std::vector<double>{5, 0, 3, 1, 4, 2}, std::vector<double>{6, 1, 4, 2, 5, 3});
  ASSERT_TRUE(t);
  EXPECT_EQ(t->s, 15.0);
}

TEST(MannKendall, RefusesWhatHasNoTrend) {
  const std::vector<double> flat(6, 2.0);
  EXPECT_EQ(mann_kendall(k_time, flat).error().kind, Kind::not_applicable);
  EXPECT_EQ(mann_kendall(flat, k_rise).error().kind, Kind::not_applicable);
  const std::vector<double> three{1, 2, 3};
  EXPECT_EQ(mann_kendall(three, three).error().kind, Kind::not_applicable);
  EXPECT_EQ(mann_kendall(k_time, three).error().kind, Kind::not_applicable);
  std::vector<double> many(k_most_trend_points + 1);
  for (std::size_t i = 0; i < many.size(); ++i) many[i] = static_cast<double>(i);
  EXPECT_EQ(mann_kendall(many, many).error().kind, Kind::not_applicable);
}

TEST(TheilSen, OneWildReadingDoesNotTurnIt) {
  std::vector<double> y = k_rise;
  y[2] = 400.0;
  const auto t = theil_sen(k_time, y);
  ASSERT_TRUE(t);
  EXPECT_NEAR(t->slope, 1.0, 1e-14);
  EXPECT_NEAR(t->at(10.0), 11.0, 1e-13);
}

TEST(TheilSen, SameTimeTwiceIsSkipped) {
  const auto t = theil_sen(std::vector<double>{0, 0, 1, 2}, std::vector<double>{1, 1, 2, 3});
  ASSERT_TRUE(t);
  EXPECT_EQ(t->pairs, 5u);
  EXPECT_EQ(t->slope, 1.0);
}

TEST(TheilSen, Refusals) {
  EXPECT_EQ(theil_sen(k_time, k_rise, 0.2).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(theil_sen(k_time, k_rise, 1.0).error().kind, Kind::out_of_bounds);
  const std::vector<double> two{1, 2};
  EXPECT_EQ(theil_sen(two, two).error().kind, Kind::not_applicable);
}

TEST(TheilSen, TheIntervalHoldsTheSlope) {
  const auto t = theil_sen(k_time, std::vector<double>{1, 3, 2, 5, 4, 6}, 0.9);
  ASSERT_TRUE(t);
  EXPECT_LE(t->slope_low, t->slope);
  EXPECT_GE(t->slope_high, t->slope);
}

}  // namespace
}  // namespace wm::statistics
