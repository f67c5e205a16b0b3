// How near a hose comes to things: to every side, in every shape, and not judged where it is taut.
#include "hose/clearance.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "hose/fit.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

constexpr double k_inch = 0.0254;
EnteredLength in(double inches) { return {{inches * k_inch}, 1e-3 * k_inch, {}}; }

KeepOut ball(const char* name, double x, double y, double z, double radius, double needed) {
  KeepOut out;
  out.name = name;
  out.needed = in(needed);
  out.shape = BallShape{{in(x), in(y), in(z)}, in(radius)};
  return out;
}

/// Ends in line, 20 in apart where the hose can bend.
HoseLengthInput straight_run() {
  HoseLengthInput out;
  out.near_end.seat = {in(0), in(0), in(0)};
  out.near_end.leaves = {1, 0, 0};
  out.near_end.rigid = in(0);
  out.far_end.seat = {in(20), in(0), in(0)};
  out.far_end.leaves = {-1, 0, 0};
  out.far_end.rigid = in(0);
  out.outside_diameter = in(0.77);
  out.least_radius = in(4);
  return out;
}

// Symptom: a ball 4 in above a straight run was run through, the same ball to the left, to the
// right or below was "kept". The hose may bow to any side.
TEST(Clearance, FourBallsAroundAStraightRunAreOneVerdict) {
  std::vector<NearThing> found;
  for (int side = 0; side < 4; ++side) {
    auto ask = straight_run();
    ask.chosen_overall = in(23.125);
    const double y = side == 0 ? 4 : side == 1 ? -4 : 0, z = side == 2 ? 4 : side == 3 ? -4 : 0;
    ask.keep_outs = {ball("stack", 10, y, z, 1, 1)};
    const auto got = hose_length(ask, {});
    ASSERT_TRUE(got);
    ASSERT_EQ(got->near.size(), 1U);
    found.push_back(got->near[0]);
    EXPECT_TRUE(std::any_of(got->notes.begin(), got->notes.end(), [](const std::string& note) {
      return note.find("bow to any side") != std::string::npos;
    }));
  }
  for (const auto& near : found) {
    EXPECT_EQ(near.words.substr(0, 18), "runs through stack") << near.words;
    EXPECT_NEAR(near.gap->si, found[0].gap->si, 1e-4);
  }
}

/// The least gap by plain trial of 720 angles about x.
double by_trial(const Shape& shape, double diameter, const Solid& thing) {
  double out = 1e9;
  Shape turned = shape;
  for (int k = 0; k < 720; ++k) {
    const auto turn =
        Eigen::AngleAxisd(k * std::numbers::pi / 360, Vector::UnitX()).toRotationMatrix();
    for (std::size_t i = 0; i < shape.tangents.size(); ++i)
      turned.tangents[i] = turn * shape.tangents[i];
    out = std::min(out, gap(turned, diameter, thing).clear);
  }
  return out;
}

// Turning everything about the line of the ends changes no distance, whatever the thing is.
TEST(Clearance, LawRoundAStraightRun) {
  statistics::Draws draws(20);
  for (int trial = 0; trial < 12; ++trial) {
    ClearAsk ask;
    Rod rod;
    rod.end = {0.5, 0, 0};
    ask.positions = {rod};
    ask.outside_diameter = 0.02;
    const double length = 0.5 * draws.uniform(1.02, 1.3);
    const double angle = draws.uniform(0, 6), out = draws.uniform(0.05, 0.4),
                 along = draws.uniform(0.1, 0.4);
    std::vector<double> got;
    for (const double turn : {0.0, 1.1, 2.9}) {
      const Eigen::Matrix3d m = Eigen::AngleAxisd(angle + turn, Vector::UnitX()).toRotationMatrix();
      const Vector at = m * Vector(along, out, 0);
      Solid thing = Sphere{at, 0.03};
      if (trial % 3 == 1) thing = Capsule{at, at + m * Vector(0.1, 0.05, 0.2), 0.02};
      if (trial % 3 == 2) thing = Box{at, {0.02, 0.04, 0.03}, m};
      ask.things = {thing};
      Clearances clear(ask);
      const auto found = clear.at(length, true, false);
      EXPECT_TRUE(found.any_side);
      got.push_back(found.least[0].clear);
      EXPECT_LE(found.least[0].clear, found.as_drawn[0].clear);
      rod.length = length;
      RodSolver solver(64);
      Shape shape;
      solver.cold(rod, shape);
      // How deep it goes through a thing changes abruptly; that it does is what counts.
      const double tried = by_trial(shape, ask.outside_diameter, thing);
      EXPECT_NEAR(got.back(), tried, tried > 0 ? 1e-4 : 4e-3) << trial;
      EXPECT_EQ(got.back() < 0, tried < 0) << trial;
    }
    for (const double other : got) EXPECT_NEAR(got[0], other, got[0] > 0 ? 1e-4 : 4e-3) << trial;
  }
}

// A hose of which the ends force the bow is not swung round.
TEST(Clearance, ABendIsNotSwungRound) {
  Rod rod;
  rod.end = {0.2, 0.2, 0};
  rod.end_direction = {0, 1, 0};
  rod.length = 0.32;
  RodSolver solver(64);
  Shape shape;
  solver.cold(rod, shape);
  EXPECT_FALSE(bows_to_any_side(shape));
  rod.end = {0.3, 0, 0};
  for (const double degrees : {0.0, 1.0, -6.0, 6.0}) {
    const double a = degrees * std::numbers::pi / 180;
    rod.start_direction = {std::cos(a), std::sin(a), 0};
    rod.end_direction = {std::cos(a), -std::sin(a), 0};
    solver.cold(rod, shape);
    EXPECT_EQ(bows_to_any_side(shape), std::abs(degrees) < 3) << degrees;
  }
}

// A hose that flops to either side of its ends' plane is looked at on both.
TEST(Clearance, TheOtherShapeCountsToo) {
  Rod rod;
  rod.start_direction = {0, 1, 0};
  rod.end = {0.3, 0, 0};
  rod.end_direction = {0, 1, 0};
  rod.length = 0.6;
  RodSolver solver(64);
  const auto shapes = solver.every(rod);
  ASSERT_GE(shapes.size(), 2U);
  ClearAsk ask;
  ask.positions = {rod};
  ask.outside_diameter = 0.01;
  for (const auto& shape : shapes) {
    Vector middle = shape.start;
    for (std::size_t i = 0; i < shape.tangents.size() / 2; ++i)
      middle += shape.tangents[i] * shape.spacing();
    ask.things = {Sphere{middle, 0.01}};
    Clearances clear(ask);
    const auto found = clear.at(rod.length, true, false);
    EXPECT_TRUE(found.other_shapes);
    EXPECT_LT(found.least[0].clear, 0);
  }
}

// Symptom: "39370078740.16 in from stack, 2.000 in needed: kept", of a hose that is taut.
TEST(Clearance, ATautHoseIsNotJudged) {
  auto ask = straight_run();
  ask.chosen_overall = in(20);
  ask.lengthens = quantity::ratio(0);
  ask.least_radius = in(2000);  // no length keeps it: the chosen one is looked at all the same
  ask.keep_outs = {ball("stack", 10, 0, 4, 1, 2)};
  auto got = hose_length(ask, {});
  ASSERT_TRUE(got);
  ASSERT_EQ(got->near.size(), 1U);
  EXPECT_FALSE(got->near[0].gap);
  EXPECT_EQ(got->near[0].words,
            "distance from stack: not judged where the hose is taut (as made, shortened under "
            "pressure)");
  // Slack as made, taut under pressure.
  ask.chosen_overall = in(20.4);
  ask.keep_outs = {ball("stack", 10, 0, 14, 1, 2)};
  got = hose_length(ask, {});
  ASSERT_TRUE(got);
  ASSERT_TRUE(got->near[0].gap);
  EXPECT_NE(got->near[0].words.find("kept where looked at; not judged where the hose is taut "
                                    "(shortened under pressure)"),
            std::string::npos)
      << got->near[0].words;
}

}  // namespace
