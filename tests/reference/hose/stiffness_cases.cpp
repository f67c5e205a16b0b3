// Source:    hose-shape notes, section 12: G against drop of a heavy cantilever (a shooting solver
//            and a discrete one agreed to six digits) and the two-board test (closed form through
//            Gamma functions). The boards are checked once more by the rod solver.
// Tolerance: half a unit of the last printed digit and what the extrapolation leaves (2e-5).
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "hose/stiffness.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm::hose;
namespace quantity = wm::quantity;

TEST(StiffnessCases, SagNumbersOfTheTable) {
  struct Row {
    double drop, g;
  };
  for (const Row& row :
       {Row{0.05, 0.40080}, Row{0.10, 0.80646}, Row{0.15, 1.22208}, Row{0.20, 1.65328},
        Row{0.25, 2.10651}, Row{0.30, 2.58952}, Row{0.35, 3.11196}, Row{0.40, 3.68630},
        Row{0.45, 4.32931}, Row{0.50, 5.06439}, Row{0.55, 5.92570}, Row{0.60, 6.96571},
        Row{0.65, 8.27030}, Row{0.70, 9.99196}, Row{0.75, 12.43294}, Row{0.80, 16.29488}}) {
    const auto g = sag_number(row.drop);
    ASSERT_TRUE(g);
    wm::test::check({"hose-stiffness", fmt::format("sag: G at drop/L {}", row.drop),
                     "hose-shape notes, section 12 (shooting and discrete solver)",
                     fmt::format("{:.5f}", row.g), row.g, *g, 5e-6 + 2e-5 * row.g,
                     "half a unit of the last digit and 2e-5 of the extrapolation"});
  }
}

TEST(StiffnessCases, TwoBoards) {
  HoseStiffnessInput in;
  in.test = BoardTest{{quantity::Length{1}, 0, {}}, {quantity::Force{2.87108}, 0, {}}};
  const auto got = hose_stiffness(in, {});
  ASSERT_TRUE(got);
  wm::test::check({"hose-stiffness", "two boards: EI of F = 2.87108, D = 1",
                   "hose-shape notes, section 12 (Gamma functions)", "1", 1, got->stiffness.si,
                   3e-6, "half a unit of the last printed digit"});
  wm::test::check({"hose-stiffness", "two boards: tightest radius of D = 1",
                   "hose-shape notes, section 12 (Gamma functions)", "1/2.39628", 1 / 2.39628,
                   got->tightest_radius->si, 2e-6, "half a unit of the last printed digit"});
}

TEST(Stiffness, WhatIsRefused) {
  HoseStiffnessInput in;
  SagTest test{{quantity::Length{0.6}, 0, {}}, {quantity::MassPerLength{0.3}, 0, {}}, {}};
  in.test = test;
  EXPECT_EQ(hose_stiffness(in, {}).error()[0].path, "test/drops");
  test.drops = {{quantity::Length{0.1}, 0, {}}, {quantity::Length{0.7}, 0, {}}};
  in.test = test;
  EXPECT_EQ(hose_stiffness(in, {}).error()[0].path, "test/drops/1");
  test.drops = {{quantity::Length{0.1}, 0, {}}, {quantity::Length{0.14}, 0, {}}};
  in.test = test;
  const auto got = hose_stiffness(in, {});
  ASSERT_TRUE(got);
  EXPECT_LT(got->from_least->si, got->stiffness.si);
  EXPECT_GT(got->from_most->si, got->stiffness.si);
}

}  // namespace
