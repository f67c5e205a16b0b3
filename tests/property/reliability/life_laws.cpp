// Laws of life data over seeded inputs.
#include <gtest/gtest.h>

#include <cmath>

#include "reliability/life_estimate.hpp"
#include "reliability/policy.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::reliability;
using statistics::Draws;

std::vector<Life> random_lives(Draws& draws) {
  std::vector<Life> out;
  const double shape = draws.uniform(.6, 4), scale = draws.uniform(50, 2000);
  const auto n = 6 + draws.index(12);
  for (std::uint64_t i = 0; i < n; ++i) {
    const double entered = draws.uniform() < .3 ? draws.uniform(0, scale / 3) : 0.0;
    // A life that is known to be longer than the age it came with.
    const double start = std::pow(entered / scale, shape);
    const double life = scale * std::pow(start + draws.exponential(1), 1 / shape);
    const double end = entered + draws.uniform(scale / 10, 1.5 * scale);
    Life l;
    l.entered = entered;
    l.ending = life < end ? Ending::failed : Ending::running;
    l.age = std::min(life, end);
    if (l.ending == Ending::failed && draws.uniform() < .2) {
      l.ending = Ending::failed_between;
      l.until = life + scale / 10;
      l.age = std::max(entered + 1e-3, life - scale / 10);
    }
    out.push_back(l);
  }
  return out;
}

TEST(LifeLaws, NoNeighbourIsMoreLikelyAndTheCurvatureIsThatOfTheSurface) {
  Draws draws(61);
  int fitted = 0;
  for (int i = 0; i < 150; ++i) {
    const auto lives = random_lives(draws);
    const auto fit = fit_weibull(lives);
    if (!fit) continue;
    ++fitted;
    const auto at = [&](double da, double db) {
      return weibull_log_likelihood(lives, fit->shape * std::exp(db), fit->scale * std::exp(da));
    };
    for (const double d : {1e-3, 1e-2, .1, .5}) {
      for (const auto& [x, y] : {std::pair{d, 0.}, {-d, 0.}, {0., d}, {0., -d}, {d, d}, {-d, d}}) {
        ASSERT_LE(at(x, y), fit->log_likelihood + 1e-9) << i;
      }
    }
    // Differences at two steps, extrapolated: one step is off by its square times the next bend.
    const auto bend = [&](double x, double y) {
      const auto plain = [&](double h) {
        return (at(h * x, h * y) - 2 * at(0, 0) + at(-h * x, -h * y)) / (h * h);
      };
      return (4 * plain(5e-4) - plain(1e-3)) / 3;
    };
    const double aa = bend(1, 0), bb = bend(0, 1), ab = (bend(1, 1) - bend(1, -1)) / 4;
    const double det = aa * bb - ab * ab;
    ASSERT_NEAR(fit->var_ln_scale / (-bb / det), 1.0, 1e-3) << i;
    ASSERT_NEAR(fit->var_ln_shape / (-aa / det), 1.0, 1e-3) << i;
  }
  EXPECT_GT(fitted, 100);
}

TEST(LifeLaws, AnotherUnitOfTimeScalesTheScaleAlone) {
  Draws draws(62);
  for (int i = 0; i < 100; ++i) {
    auto lives = random_lives(draws);
    const auto once = fit_weibull(lives);
    if (!once) continue;
    for (auto& l : lives) {
      l.age *= 60;
      l.until *= 60;
      l.entered *= 60;
    }
    const auto minutes = fit_weibull(lives);
    ASSERT_TRUE(minutes);
    ASSERT_NEAR(minutes->shape / once->shape, 1.0, 1e-7);
    ASSERT_NEAR(minutes->scale / once->scale, 60.0, 1e-5);
    const auto a = ratio_shape(lives, *minutes, .9);
    ASSERT_LT(a.low, minutes->shape);
    ASSERT_GT(a.high, minutes->shape);
  }
}

TEST(LifeLaws, NoAgeOfRenewalIsCheaper) {
  Draws draws(63);
  for (int i = 0; i < 60; ++i) {
    RenewalAgeInput in;
    in.shape = draws.uniform(.7, 4);
    in.scale = quantity::hours(draws.uniform(100, 2000));
    in.planned_cost = draws.uniform(10, 200);
    in.failure_cost = in.planned_cost * draws.uniform(1.1, 20);
    const auto got = renewal_age(in, {});
    ASSERT_TRUE(got);
    ASSERT_LE(got->cost_per_hour, *got->never_renewed_per_hour * (1 + 1e-9));
    // Cost at other ages, by a sum of its own.
    const double scale = in.scale.si / 3600;
    double lived = 0.0;
    const int steps = 4000;
    for (int k = 1; k <= steps; ++k) {
      const double t = 4 * scale * k / steps, mid = 4 * scale * (k - .5) / steps;
      lived += std::exp(-std::pow(mid / scale, in.shape)) * 4 * scale / steps;
      const double r = std::exp(-std::pow(t / scale, in.shape));
      const double cost = (in.planned_cost * r + in.failure_cost * (1 - r)) / lived;
      ASSERT_GE(cost, got->cost_per_hour * (1 - 1e-4)) << i;
    }
  }
}

TEST(LifeLaws, ABetterInspectionMissesLessAndAShorterIntervalToo) {
  Draws draws(64);
  for (int i = 0; i < 200; ++i) {
    const double t = draws.uniform(1, 300), mu = draws.uniform(5, 300);
    const double theta = draws.uniform(.1, .9);
    ASSERT_LE(missed_share(t, mu, theta + .1), missed_share(t, mu, theta) + 1e-12);
    ASSERT_LE(missed_share(t * .9, mu, theta), missed_share(t, mu, theta) + 1e-12);
  }
}

}  // namespace
