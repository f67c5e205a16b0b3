// Source:    boundary-value solver run outside the project (hose-shape notes, 11.6: S2, S8).
// Tolerance: 2e-5 of the length at 256 segments; the notes print six digits.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "hose/envelope.hpp"
#include "hose/length.hpp"
#include "hose/rod_measure.hpp"
#include "hose/window.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm::hose;

Rod bend() {
  Rod rod;
  rod.end = {0.2, 0.2, 0};
  rod.end_direction = {0, 1, 0};
  return rod;
}

void expect(const char* id, double expected, double got, double tolerance) {
  wm::test::check(
      {"hose-length", id, "boundary-value solver outside the project (hose-shape notes, 11.6)",
       fmt::format("{}", expected), expected, got, tolerance, "2e-5 of the length, extrapolated"});
}

Window window(const Rod& rod, double radius, int segments) {
  WindowAsk ask;
  ask.positions = {rod};
  ask.least_radius = radius;
  ask.segments = segments;
  return length_window(ask);
}

TEST(WindowCases, S2) {
  const auto coarse = window(bend(), 0.12, 64), fine = window(bend(), 0.12, 128);
  ASSERT_TRUE(coarse.shortest && fine.shortest && coarse.longest && fine.longest);
  const auto better = [](double c, double f) { return (4 * f - c) / 3; };
  expect("S2: shortest", 0.306733, better(*coarse.shortest, *fine.shortest), 6e-6);
  expect("S2: longest", 0.340413, better(*coarse.longest, *fine.longest), 6e-6);
  expect("S2: best", std::numbers::pi / 2 * 0.2, better(coarse.best, fine.best), 2e-5);
  expect("S2: radius at the best", 0.2, better(coarse.best_radius, fine.best_radius), 2e-5);
  EXPECT_FALSE(fine.open_above);
}

TEST(WindowCases, PressureNarrowsTheWindow) {
  WindowAsk ask;
  ask.positions = {bend()};
  ask.least_radius = 0.12;
  ask.stretches = {0.96, 1.0, 1.02};
  ask.segments = 128;
  const auto got = length_window(ask);
  ASSERT_TRUE(got.shortest && got.longest);
  expect("S2 with pressure: shortest", 0.306733 / 0.96, *got.shortest, 3e-5);
  expect("S2 with pressure: longest", 0.340413 / 1.02, *got.longest, 3e-5);
}

TEST(WindowCases, EnvelopeS8HoldsTheWorstCorner) {
  Rod rod;
  rod.end = {0.5, 0.3, 0.4};
  rod.end_direction = {0, 0, 1};
  Motion motion;
  motion.shift = {0.02, 0.02, 0.02};
  WindowAsk ask;
  ask.positions = extremes(rod, motion);
  EXPECT_EQ(ask.positions.size(), 1U + 8U + 6U);
  ask.least_radius = 0.2;
  ask.segments = 64;
  const double c = worst_radius(ask, 1.0);
  ask.segments = 128;
  const double f = worst_radius(ask, 1.0);
  expect("S8: worst radius in the envelope", 0.20876, (4 * f - c) / 3, 1e-5);
}

TEST(WindowCases, NoLengthKeepsARadiusThatTheRouteDoesNotHold) {
  const auto got = window(bend(), 0.25, 64);
  EXPECT_FALSE(got.shortest);
  EXPECT_NEAR(got.best_radius, 0.2, 1e-3);
}

TEST(WindowCases, AUTurnIsScannedFarEnough) {
  // Case 8 of the hose notes: inside radius 4.00 in, outside diameter 0.67 in; a half circle.
  Rod rod;
  const double radius = 4.335 * 0.0254;
  rod.end = {0, 2 * radius, 0};
  rod.end_direction = {-1, 0, 0};
  const auto got = window(rod, radius * 0.9999, 128);
  ASSERT_TRUE(got.shortest);
  wm::test::check({"hose-length", "U-turn: best length is the half circle",
                   "hose notes, section 11 case 8: arc 13.62 in", "13.62 in", 13.62,
                   got.best / 0.0254, 0.005, "half a unit of the last printed digit"});
  wm::test::check({"hose-length", "U-turn: with two straight diameters at each end",
                   "hose notes, section 11 case 8 (FAA-H-8083-30 p. 7-19): least hose 16.30 in",
                   "16.30 in", 16.30, got.best / 0.0254 + 2 * k_straight_diameters * 0.67, 0.005,
                   "half a unit of the last printed digit"});
}

}  // namespace
