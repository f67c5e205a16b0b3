// Laws of hose lengths, over seeded inputs.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>

#include "hose/length.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

LengthAllowanceInput random_hose(statistics::Draws& draws) {
  LengthAllowanceInput in;
  const auto length = [&](double low, double high) {
    return EnteredLength{{draws.uniform(low, high)}, 1e-4, {}};
  };
  in.between_seats = length(0.25, 2.0);
  for (EndFitting* end : {&in.near_end, &in.far_end}) {
    end->rigid = length(0.01, 0.06);
    end->cut_off = length(0.01, 0.06);
  }
  if (draws.uniform() < 0.5) in.slack_rule = SlackRule::of_gap;
  return in;
}

TEST(HoseLaws, TheCutAndTheCutOffsGiveTheOverallBack) {
  statistics::Draws draws(1);
  for (int i = 0; i < 1000; ++i) {
    const auto in = random_hose(draws);
    const auto got = length_allowance(in, {});
    ASSERT_TRUE(got);
    ASSERT_NEAR(
        (got->cut_length->value + in.near_end.cut_off->value + in.far_end.cut_off->value).si,
        got->overall.value.si, 1e-12);
    ASSERT_GE(got->overall.value.si, got->overall_shortest->value.si - 1e-9);
    ASSERT_LE(got->overall.value.si, got->overall_longest->value.si + 1e-9);
    // 5 % of the total length outlives the 4 % of contraction; 5 % of the gap does so too.
    ASSERT_GT(got->in_hand->value.si, 0.0);
  }
}

TEST(HoseLaws, AWiderGapNeverNeedsLessHose) {
  statistics::Draws draws(2);
  for (int i = 0; i < 1000; ++i) {
    auto in = random_hose(draws);
    const auto narrow = length_allowance(in, {});
    in.between_seats->value.si += draws.uniform(0, 0.3);
    const auto wide = length_allowance(in, {});
    ASSERT_LE(narrow->overall_shortest->value.si, wide->overall_shortest->value.si);
    ASSERT_LE(narrow->cut_length->value.si, wide->cut_length->value.si);
  }
}

TEST(HoseLaws, ShareOfTheTotalIsTheLongerReading) {
  statistics::Draws draws(3);
  for (int i = 0; i < 1000; ++i) {
    const quantity::Length gap{draws.uniform(0.1, 3)};
    const quantity::Fraction s{draws.uniform(0, 0.3)};
    const auto total = flexible_length(gap, s, SlackRule::of_total);
    ASSERT_GE(total.si, flexible_length(gap, s, SlackRule::of_gap).si);
    ASSERT_NEAR(1.0 - gap / total, s.si, 1e-12);
  }
}

TEST(HoseLaws, UnitsDoNotMatter) {
  statistics::Draws draws(4);
  for (int i = 0; i < 300; ++i) {
    auto in = random_hose(draws);
    const double plain = length_allowance(in, {})->flexible_shortest->value.si;
    in.between_seats->text = fmt::format("{} mm", in.between_seats->value.si * 1000);
    ASSERT_EQ(length_allowance(in, {})->flexible_shortest->value.si, plain);
  }
}

}  // namespace
