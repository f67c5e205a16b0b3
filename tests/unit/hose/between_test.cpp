// Clamps, guides, leaning, a set: brute force, laws, and what is refused.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "hose/chain.hpp"
#include "hose/lean.hpp"
#include "hose/set_rod.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm::hose;
using wm::statistics::Draws;

Rod s1() {
  Rod rod;
  rod.end = {0.5, 0.3, 0.4};
  rod.end_direction = {0, 0, 1};
  rod.length = 1;
  return rod;
}

TEST(Between, AGuideSlidesToTheLeastEnergy) {
  // Brute force: the same ring gripping at stations around the one found.
  Draws draws(11);
  LieSolver solver;
  RodSolver free(64);
  Shape shape;
  free.cold(s1(), shape);
  for (int i = 0; i < 12; ++i) {
    Support ring;
    ring.place =
        point_at(shape, draws.uniform(0.35, 0.65)) +
        Vector(draws.uniform(-0.04, 0.04), draws.uniform(-0.04, 0.04), draws.uniform(-0.04, 0.04));
    if (taut_span(s1(), {ring})) continue;
    Lie slid;
    solver.cold(s1(), {ring}, slid);
    ASSERT_EQ(slid.settled, Settled::stable);
    for (const double off : {-0.01, -0.002, 0.002, 0.01}) {
      Support held = ring;
      held.station = slid.stations()[0] + off;
      Lie gripped;
      solver.cold(s1(), {held}, gripped);
      if (gripped.settled != Settled::stable) continue;
      EXPECT_GT(gripped.energy, slid.energy - 1e-9) << i << ' ' << off;
    }
  }
}

TEST(Between, BothSidesOfAFrictionlessGuideHaveTheSameH) {
  Support guide;
  guide.place = {0.44, 0.16, -0.01};
  guide.way = Vector(0.3, 0.5, 0.75).normalized();
  LieSolver solver(256);
  Lie lie;
  solver.cold(s1(), {guide}, lie);
  ASSERT_EQ(lie.settled, Settled::stable);
  const auto left = invariant(lie.spans[0]), right = invariant(lie.spans[1]);
  EXPECT_NEAR(left[left.size() / 2], right[right.size() / 2],
              2e-3 * std::abs(left[left.size() / 2]));
}

TEST(Between, ARingCarriesNoMoment) {
  Support ring;
  ring.place = {0.44, 0.17, 0.0};
  ring.station = 0.5;
  LieSolver solver(256);
  Lie lie;
  solver.cold(s1(), {ring}, lie);
  ASSERT_EQ(lie.settled, Settled::stable);
  EXPECT_NEAR(curvatures(lie.spans[0]).back(), curvatures(lie.spans[1]).front(), 1e-4);
}

TEST(Between, WithoutClampsItIsThePlainHose) {
  LieSolver chain;
  RodSolver plain;
  Lie lie;
  Shape shape;
  chain.cold(s1(), {}, lie);
  plain.cold(s1(), shape);
  EXPECT_NEAR(lie.energy, shape.energy, 1e-12);
  EXPECT_LT((point_at(lie, 0.37) - point_at(shape, 0.37)).norm(), 1e-12);
}

TEST(Between, WeightMovesTheGuideTowardsTheHeavySide) {
  Support ring;
  ring.place = {0.45555, 0.13678, -0.03419};
  LieSolver solver;
  Lie light, heavy;
  solver.cold(s1(), {ring}, light);
  Rod rod = s1();
  rod.weight = {0, 0, -5};
  solver.cold(rod, {ring}, heavy);
  ASSERT_EQ(heavy.settled, Settled::stable);
  EXPECT_GT(farthest(light, heavy), 1e-3);
  // The total energy of the heavy one is least at its own station: brute force over grips.
  const auto total = [&](const Lie& lie) {
    double out = lie.energy, length = lie.length;
    const int pieces = 4000;
    for (int i = 0; i < pieces; ++i)
      out -= rod.weight.dot(point_at(lie, (i + 0.5) * length / pieces)) * length / pieces;
    return out;
  };
  const double least = total(heavy);
  for (const double off : {-0.02, -0.005, 0.005, 0.02}) {
    Support held = ring;
    held.station = heavy.stations()[0] + off;
    Lie gripped;
    solver.cold(rod, {held}, gripped);
    if (gripped.settled == Settled::stable) {
      EXPECT_GT(total(gripped), least - 1e-6) << off;
    }
  }
}

TEST(Between, ASpanWithoutSlackIsNamed) {
  Support clamp;
  clamp.place = {0.4, 0, 0};
  clamp.station = 0.39;
  EXPECT_EQ(taut_span(s1(), {clamp}), std::optional<std::size_t>(0));
  clamp.station = 0.8;
  EXPECT_EQ(taut_span(s1(), {clamp}), std::optional<std::size_t>(1));
  clamp.station = 0.45;
  EXPECT_FALSE(taut_span(s1(), {clamp}));
}

TEST(Leaning, FarFromEverythingIsThePlainHose) {
  const auto leant = lean(s1(), {Sphere{{2, 2, 2}, 0.1}}, 0.02);
  EXPECT_TRUE(leant.found);
  EXPECT_TRUE(leant.contacts.empty());
}

TEST(Leaning, TouchesPushAndNothingGoesThrough) {
  RodSolver solver;
  Shape shape;
  solver.cold(s1(), shape);
  Draws draws(12);
  int touched = 0;
  for (int i = 0; i < 25; ++i) {
    const Vector at = point_at(shape, draws.uniform(0.3, 0.7));
    const Vector aside(draws.uniform(-1, 1), draws.uniform(-1, 1), draws.uniform(-1, 1));
    const std::vector<Solid> things{Sphere{at + 0.055 * aside.normalized(), 0.05}};
    const auto leant = lean(s1(), things, 0.02);
    if (!leant.found) continue;
    for (const auto& contact : leant.contacts) {
      EXPECT_GE(contact.force, 0);
      ++touched;
    }
    // Nodes lie against the ball; a straight piece between two of them cuts h^2 / 8R off it.
    EXPECT_GT(gap(leant.shape, 0.02, things[0]).clear, -1.0 / (64 * 64 * 8 * 0.05));
    EXPECT_GE(leant.shape.energy, shape.energy - 1e-9);
  }
  EXPECT_GT(touched, 10);
}

TEST(Set, NoneIsThePlainHose) {
  RodSolver solver;
  Shape shape;
  solver.cold(s1(), shape);
  auto frames = carried_frames(shape, {0, 1, 0});
  SetRod rod;
  rod.end = s1().end;
  rod.length = 1;
  Eigen::Matrix3d axes;
  axes << Vector(0, 1, 0), Vector(0, 0, 1), Vector(1, 0, 0);
  rod.start_frame = Frame(axes);
  rod.end_frame = Frame::FromTwoVectors(shape.tangents.back(), shape.end_direction) * frames.back();
  const auto same = settle(rod, frames);
  ASSERT_TRUE(same.stable);
  for (const double at : {0.2, 0.5, 0.8})
    EXPECT_LT((point_at(same.curve(), at) - point_at(shape, at)).norm(), 1e-8);
}

TEST(Set, AHoseThatLiesInItsOwnCoilFeelsNothing) {
  // A quarter circle whose set is that circle: no energy, and the shape stays.
  const double radius = 1;
  SetRod rod;
  rod.end = {0, 0, 0};
  rod.length = std::numbers::pi / 2;
  rod.at_rest = {0, 1 / radius, 0};
  rod.end = {1, 0, 1};
  rod.end_frame = Frame(Eigen::AngleAxisd(std::numbers::pi / 2, Vector::UnitY()));
  std::vector<Frame> frames;
  for (int i = 0; i < 64; ++i)
    frames.emplace_back(Eigen::AngleAxisd((i + 0.5) / 64 * std::numbers::pi / 2, Vector::UnitY()));
  const auto shape = settle(rod, frames);
  ASSERT_TRUE(shape.stable);
  EXPECT_NEAR(1 / tightest(shape.curve()).curvature, 1, 1e-3);
}

}  // namespace
