#include "statistics/numeric.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace wm::statistics {
namespace {

TEST(Integrate, KnownAreas) {
  const std::vector<double> breaks{0.0, 1.0, 1.0, 3.0};
  EXPECT_NEAR(integrate([](double x) { return x * x; }, breaks), 9.0, 1e-12);
  // A bend on a break costs nothing.
  EXPECT_NEAR(integrate([](double x) { return std::abs(x - 1.0); }, breaks), 2.5, 1e-12);
  EXPECT_EQ(integrate([](double) { return 1.0; }, std::vector<double>{1.0}), 0.0);
}

TEST(Crossing, FindsTheRootOrRefuses) {
  const auto root = crossing([](double x) { return x * x - 2.0; }, 0.0, 2.0);
  ASSERT_TRUE(root);
  EXPECT_NEAR(*root, std::sqrt(2.0), 1e-14);
  EXPECT_EQ(*crossing([](double x) { return x; }, 0.0, 1.0), 0.0);
  EXPECT_EQ(*crossing([](double x) { return x - 1.0; }, 0.0, 1.0), 1.0);
  EXPECT_EQ(crossing([](double) { return 1.0; }, 0.0, 1.0).error().kind, Kind::not_applicable);
}

}  // namespace
}  // namespace wm::statistics
