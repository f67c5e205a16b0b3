// Laws of the shape of a hose, over seeded inputs.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "hose/rod.hpp"
#include "hose/rod_measure.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm::hose;
using wm::statistics::Draws;

Vector any_direction(Draws& draws) {
  return Vector(draws.normal(), draws.normal(), draws.normal()).normalized();
}
Rod any_rod(Draws& draws, double longest = 2.2) {
  Rod rod;
  rod.start = any_direction(draws);
  rod.end = rod.start + any_direction(draws) * 0.5;
  rod.start_direction = any_direction(draws);
  rod.end_direction = any_direction(draws);
  rod.length = 0.5 * draws.uniform(1.33, longest);
  return rod;
}
Shape solved(const Rod& rod, int segments = 64) {
  RodSolver solver(segments);
  Shape shape;
  solver.cold(rod, shape);
  return shape;
}
Vector directed_force(const Shape& s) { return s.force; }

TEST(RodLaws, TenThousandColdStartsSettleStable) {
  Draws draws(11);
  RodSolver solver(64);
  Shape shape;
  for (int i = 0; i < 10000; ++i) {
    const Rod rod = any_rod(draws, 3.3);
    solver.cold(rod, shape);
    ASSERT_EQ(shape.settled, Settled::stable) << i;
    ASSERT_LT(shape.residual, 1e-10) << i;
    ASSERT_EQ(shape.negative, 3) << i;
    const Vector reached = points(shape).back();
    ASSERT_LT((reached - rod.end).norm(), 1e-9) << i;
  }
}

// What owners have: 2 to 33 % of slack. An end that turns back on the run by more than 140 degrees
// may, with 2 or 3 % of slack, have no shape but a fold tighter than a piece (5 of 2000 drawn up to
// 150 degrees): that is refused in words.
TEST(RodLaws, ColdStartsWithLittleSlackSettleStable) {
  constexpr double k_turned_back = -0.5;  // cos 120 degrees
  Draws draws(13);
  RodSolver solver(64);
  Shape shape;
  int seen = 0;
  while (seen < 2000) {
    Rod rod = any_rod(draws);
    rod.length = 0.5 * draws.uniform(1.02, 1.33);
    const Vector chord = (rod.end - rod.start).normalized();
    if (rod.start_direction.dot(chord) < k_turned_back) continue;
    if (rod.end_direction.dot(chord) < k_turned_back) continue;
    solver.cold(rod, shape);
    ASSERT_EQ(shape.settled, Settled::stable) << seen;
    ASSERT_LT((points(shape).back() - rod.end).norm(), 1e-9) << seen;
    ++seen;
  }
}

TEST(RodLaws, FlatProblemsDoNotStayOnASaddle) {
  Draws draws(12);
  const auto flat = [&] { return Vector(draws.normal(), draws.normal(), 0).normalized(); };
  RodSolver solver(64);
  Shape shape;
  for (int i = 0; i < 2000; ++i) {
    Rod rod;
    rod.end = flat() * 0.5;
    rod.start_direction = flat();
    rod.end_direction = flat();
    rod.length = 0.5 * draws.uniform(1.33, 3.3);
    solver.cold(rod, shape);
    ASSERT_EQ(shape.settled, Settled::stable) << i;
  }
}

TEST(RodLaws, EndToEndItIsTheSameHose) {
  Draws draws(13);
  for (int i = 0; i < 50; ++i) {
    const Rod rod = any_rod(draws, 1.8);
    Rod turned = rod;
    std::swap(turned.start, turned.end);
    turned.start_direction = -rod.end_direction;
    turned.end_direction = -rod.start_direction;
    const auto a = solved(rod), b = solved(turned);
    EXPECT_NEAR(a.energy, b.energy, 1e-7 * a.energy);
    EXPECT_NEAR(tightest(a).curvature, tightest(b).curvature, 1e-6 * tightest(a).curvature);
    EXPECT_LT((point_at(a, 0.3 * rod.length) - point_at(b, 0.7 * rod.length)).norm(), 1e-7);
  }
}

TEST(RodLaws, TurningMovingAndScalingTheWholeChangesNothingElse) {
  Draws draws(14);
  for (int i = 0; i < 50; ++i) {
    const Rod rod = any_rod(draws, 1.8);
    const Eigen::Matrix3d turn =
        Eigen::AngleAxisd(draws.uniform(0, 6), any_direction(draws)).toRotationMatrix();
    const Vector move = any_direction(draws);
    const double scale = draws.uniform(0.1, 10);
    Rod other = rod;
    other.start = turn * rod.start * scale + move;
    other.end = turn * rod.end * scale + move;
    other.start_direction = turn * rod.start_direction;
    other.end_direction = turn * rod.end_direction;
    other.length = rod.length * scale;
    const auto a = solved(rod), b = solved(other);
    // Where two shapes exist the start may pick another one: compare equals.
    if (std::abs(b.energy * scale - a.energy) > 1e-3 * a.energy) continue;
    EXPECT_NEAR(b.energy * scale, a.energy, 1e-7 * a.energy);
    EXPECT_LT((turn * directed_force(a) / (scale * scale) - b.force).norm(), 1e-5 * b.force.norm());
    EXPECT_LT(
        (turn * point_at(a, 0.4 * rod.length) * scale + move - point_at(b, 0.4 * other.length))
            .norm(),
        1e-7 * scale);
  }
}

TEST(RodLaws, AMirrorTurnsTheClockingRound) {
  Draws draws(15);
  for (int i = 0; i < 50; ++i) {
    const Rod rod = any_rod(draws, 1.6);
    const Vector mirror(1, 1, -1);
    Rod other = rod;
    for (Vector* v : {&other.start, &other.end, &other.start_direction, &other.end_direction})
      *v = v->cwiseProduct(mirror);
    const auto a = solved(rod), b = solved(other);
    if (std::abs(b.energy - a.energy) > 1e-6 * a.energy) continue;
    const auto side = [](const Vector& d) {
      return Vector(d.cross(Vector(0.3, -0.5, 0.7)).normalized());
    };
    const Vector from = side(rod.start_direction), to = side(rod.end_direction);
    const double there = angle_about(a.end_direction, carried(a, from), to);
    const double here = angle_about(b.end_direction, carried(b, from.cwiseProduct(mirror)),
                                    to.cwiseProduct(mirror));
    EXPECT_NEAR(std::remainder(there + here, 2 * std::numbers::pi), 0, 1e-6);
  }
}

TEST(RodLaws, TheInvariantIsConstantAndIsTheSlopeOfTheEnergy) {
  Draws draws(16);
  for (int i = 0; i < 20; ++i) {
    const Rod rod = any_rod(draws, 1.5);
    const auto shape = solved(rod, 512);
    const auto h = invariant(shape);
    const double middle = h[h.size() / 2];
    for (const double other : h)
      EXPECT_NEAR(other, middle, 2e-3 * (std::abs(middle) + shape.force.norm()));
    const double d = 1e-4 * rod.length;
    Rod longer = rod, shorter = rod;
    longer.length += d;
    shorter.length -= d;
    RodSolver solver(512);
    Shape a, b;
    solver.follow(longer, shape, a);
    solver.follow(shorter, shape, b);
    EXPECT_NEAR((a.energy - b.energy) / (2 * d), -middle,
                2e-3 * (std::abs(middle) + shape.force.norm()));
  }
}

TEST(RodLaws, TheErrorFallsWithTheSquareOfTheSpacing) {
  Draws draws(17);
  for (int i = 0; i < 20; ++i) {
    const Rod rod = any_rod(draws, 1.5);
    const double e64 = solved(rod, 64).energy, e128 = solved(rod, 128).energy,
                 e256 = solved(rod, 256).energy;
    EXPECT_NEAR((e64 - e128) / (e128 - e256), 4, 0.2);
  }
}

TEST(RodLaws, AnEndTurnedByARightAngleInOneStepIsStillFollowed) {
  Draws draws(18);
  RodSolver solver(64);
  Shape before, after;
  for (int i = 0; i < 500; ++i) {
    Rod rod = any_rod(draws, 2.0);
    solver.cold(rod, before);
    const Vector aside = rod.end_direction.cross(any_direction(draws)).normalized();
    rod.end_direction = aside;
    solver.warm(rod, before, after);
    ASSERT_EQ(after.settled, Settled::stable) << i;
  }
}

}  // namespace
