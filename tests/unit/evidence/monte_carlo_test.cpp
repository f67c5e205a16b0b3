#include "evidence/monte_carlo.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace wm::evidence {
namespace {

double same(std::span<const double> x) { return x[0]; }
const std::vector<RandomInput> k_one{{"x", Distribution::normal, 10.0, 1.0, k_no_end}};

MonteCarloSettings few() {
  MonteCarloSettings s;
  s.trials = 20'000;
  return s;
}

TEST(MonteCarlo, EqualSeedsGiveEqualAnswers) {
  const auto a = monte_carlo(same, k_one, {}, few());
  const auto b = monte_carlo(same, k_one, {}, few());
  auto other = few();
  other.seed = 2;
  const auto c = monte_carlo(same, k_one, {}, other);
  ASSERT_TRUE(a && b && c);
  EXPECT_EQ(a->u, b->u);
  EXPECT_EQ(a->symmetric.low, b->symmetric.low);
  EXPECT_NE(a->u, c->u);
}

TEST(MonteCarlo, TheShortestIntervalIsNotLonger) {
  const Model skewed = [](std::span<const double> x) { return std::exp(0.1 * x[0]); };
  const auto a = monte_carlo(skewed, k_one, {}, few());
  ASSERT_TRUE(a);
  EXPECT_LT(a->shortest.high - a->shortest.low, a->symmetric.high - a->symmetric.low);
  EXPECT_LT(a->shortest.low, a->symmetric.low);  // shifts towards the steep side
}

TEST(MonteCarlo, EveryLawHasItsSpread) {
  for (const auto d :
       {Distribution::rectangular, Distribution::triangular, Distribution::arcsine}) {
    const std::vector<RandomInput> in{{"x", d, 3.0, 2.0, k_no_end}};
    const auto a = monte_carlo(same, in, {}, few());
    EXPECT_NEAR(a->u, 2.0 / divisor(d), 0.02) << word(d);
  }
  const std::vector<RandomInput> t{{"x", Distribution::student_t, 3.0, 1.0, 12.0}};
  EXPECT_NEAR(monte_carlo(same, t, {}, few())->u, std::sqrt(1.2), 0.03);
}

TEST(MonteCarlo, StopsWhenTold) {
  auto s = few();
  int calls = 0;
  s.progress = [&](double share) {
    ++calls;
    return share < 0.5;
  };
  const auto a = monte_carlo(same, k_one, {}, s);
  ASSERT_FALSE(a);
  EXPECT_EQ(a.error().kind, Kind::stopped);
  EXPECT_GT(calls, 1);
}

TEST(MonteCarlo, Refusals) {
  auto s = few();
  s.trials = 10;
  EXPECT_EQ(monte_carlo(same, k_one, {}, s).error().kind, Kind::out_of_bounds);
  s.trials = 100'000'000'000;
  EXPECT_EQ(monte_carlo(same, k_one, {}, s).error().kind, Kind::out_of_bounds);
  s = few();
  s.level = 1.0;
  EXPECT_EQ(monte_carlo(same, k_one, {}, s).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(monte_carlo(same, {}, {}, few()).error().kind, Kind::missing);
  const Model root = [](std::span<const double> x) { return std::sqrt(x[0] - 10.0); };
  EXPECT_EQ(monte_carlo(root, k_one, {}, few()).error().kind, Kind::not_applicable);
  const std::vector<RandomInput> mixed{{"x", Distribution::normal, 0, 1, k_no_end},
                                       {"y", Distribution::rectangular, 0, 1, k_no_end}};
  const std::vector<Correlation> r{{0, 1, 0.5}};
  EXPECT_EQ(monte_carlo(same, mixed, r, few()).error().kind, Kind::not_applicable);
  const std::vector<RandomInput> three(3, k_one[0]);
  const std::vector<Correlation> impossible{{0, 1, -0.9}, {0, 2, -0.9}, {1, 2, -0.9}};
  EXPECT_EQ(monte_carlo(same, three, impossible, few()).error().kind, Kind::conflict);
  const std::vector<RandomInput> bad{{"x", Distribution::normal, 0, -1, k_no_end}};
  EXPECT_EQ(monte_carlo(same, bad, {}, few()).error().kind, Kind::out_of_bounds);
  const std::vector<RandomInput> lost{{"x", Distribution::normal, NAN, 1, k_no_end}};
  EXPECT_EQ(monte_carlo(same, lost, {}, few()).error().kind, Kind::out_of_bounds);
}

}  // namespace
}  // namespace wm::evidence
