// Ends from a dummy tube: closed forms, the transforms of a general library, and draws.
#include <gtest/gtest.h>

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "hose/dummy_tube.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm::hose;
using std::numbers::pi;

TEST(DummyTube, OneRightAngleUp) {
  const auto end = far_end({{{0.1, pi / 2, 0}}, 0.1, 0.05});
  EXPECT_NEAR((end.place - Vector(0.15, 0, 0.15)).norm(), 0, 1e-15);
  EXPECT_NEAR((end.direction - Vector(0, 0, 1)).norm(), 0, 1e-15);
  EXPECT_EQ(end.place_u, 0);
}

TEST(DummyTube, ASecondBendTurnedOutOfThePlane) {
  // Up, then a quarter turn about "up" and a second right angle. What pointed along -x behind the
  // first bend is turned right-handed about +z: to -y.
  const auto end = far_end({{{0.1, pi / 2, 0}, {0.2, pi / 2, pi / 2}}, 0.1, 0.0});
  EXPECT_NEAR((end.place - Vector(0.1, -0.1, 0.2)).norm(), 0, 1e-15);
  EXPECT_NEAR((end.direction - Vector(0, -1, 0)).norm(), 0, 1e-15);
}

TEST(DummyTube, AgreesWithChainedTransforms) {
  wm::statistics::Draws draws(31);
  for (int i = 0; i < 200; ++i) {
    DummyTube tube;
    tube.bend_radius = draws.uniform(0, 0.05);
    Eigen::Isometry3d chain = Eigen::Isometry3d::Identity();
    for (int k = 0; k < 4; ++k) {
      const TubeStep step{draws.uniform(0, 0.3), draws.uniform(0, 2.5), draws.uniform(-3, 3)};
      tube.steps.push_back(step);
      chain.translate(Vector(step.straight, 0, 0));
      chain.rotate(Eigen::AngleAxisd(step.turn, Vector::UnitX()));
      // About an axis at the bender's centre, square to the plane of the bend.
      chain.translate(Vector(0, 0, tube.bend_radius));
      chain.rotate(Eigen::AngleAxisd(-step.bend, Vector::UnitY()));
      chain.translate(Vector(0, 0, -tube.bend_radius));
    }
    tube.last_straight = draws.uniform(0, 0.3);
    chain.translate(Vector(tube.last_straight, 0, 0));
    const auto end = far_end(tube);
    EXPECT_LT((end.place - chain.translation()).norm(), 1e-12);
    EXPECT_LT((end.direction - chain.linear() * Vector::UnitX()).norm(), 1e-12);
  }
}

TEST(DummyTube, UncertaintyAgreesWithDraws) {
  DummyTube tube{{{0.2, 1.2, 0.3}, {0.25, 0.9, 1.1}}, 0.15, 0.03, 0.002, 0.03, 0.05};
  const auto end = far_end(tube);
  wm::statistics::Draws draws(32);
  Eigen::Matrix3d place = Eigen::Matrix3d::Zero();
  constexpr int n = 20000;
  for (int i = 0; i < n; ++i) {
    DummyTube one = tube;
    for (auto& step : one.steps) {
      step.straight += draws.uniform(-0.002, 0.002);
      step.bend += draws.uniform(-0.03, 0.03);
      step.turn += draws.uniform(-0.05, 0.05);
    }
    one.last_straight += draws.uniform(-0.002, 0.002);
    one.length_within = one.bend_within = one.turn_within = 0;
    const Vector off = far_end(one).place - end.place;
    place += off * off.transpose() / n;
  }
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(place);
  const double drawn = std::sqrt(solver.eigenvalues().maxCoeff());
  // 20,000 draws know a standard deviation to half a per cent; three times that.
  EXPECT_NEAR(end.place_u / drawn, 1, 0.02);
}

}  // namespace
