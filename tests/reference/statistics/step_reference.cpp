// Steps against scipy: `scipy.stats.mannwhitneyu` of scipy 1.10.1 (a general-purpose library),
// computed once outside this project's code, method "exact" where there are no ties and
// "asymptotic" (with its step of one half) where there are. The shift is the median of all
// differences, sorted by numpy. Invented readings.
#include <gtest/gtest.h>

#include <vector>

#include "statistics/step.hpp"
#include "support/reference_case.hpp"

namespace wm::statistics {
namespace {

using test::check;
const std::string k_room = "statistics";
const std::string k_scipy = "scipy 1.10.1, mannwhitneyu";

struct Case {
  std::string name;
  std::vector<double> before, after;
  double p, shift;
};

TEST(StepReference, RankSumAgainstScipy) {
  const std::vector<Case> cases{
      {"9 and 9",
       {1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30},
       {0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06001, 3.14, 1.29001},
       0.13591114767585355,
       -0.56},
      {"4 and 3", {5.2, 5.4, 5.3, 5.1}, {6.0, 6.2, 5.9}, 0.05714285714285714, 0.8},
      {"2 and 2", {1, 2}, {3, 4}, 0.3333333333333333, 2},
      {"7 and 5",
       {12.4, 12.6, 12.1, 12.9, 12.3, 12.5, 12.2},
       {12.45, 12.7, 13.0, 12.8, 13.1},
       0.04797979797979798,
       0.4},
      {"with ties", {1, 2, 2, 3, 5, 4}, {3, 4, 5, 6, 6}, 0.06476896969888761, 2}};
  for (const auto& c : cases) {
    const auto shift = rank_shift(c.before, c.after);
    ASSERT_TRUE(shift) << c.name;
    check({k_room, "rank sum, " + c.name, k_scipy, "p " + std::to_string(c.p), c.p, shift->p, 1e-12,
           "counted, or the same closed form"});
    check({k_room, "shift, " + c.name, "numpy, median of all differences", std::to_string(c.shift),
           c.shift, shift->estimate, 1e-12, "rounding"});
  }
}

// The flow of a river, 1871 to 1970, with a change after 1898 (data set `Nile` of R; its manual
// page: "apparent changepoint near 1898").
TEST(StepReference, TheJumpInTheNile) {
  const std::vector<double> flow{
      1120, 1160, 963, 1210, 1160, 1160, 813,  1230, 1370, 1140, 995,  935,  1110, 994,  1020,
      960,  1180, 799, 958,  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774,  840,
      874,  694,  940, 833,  701,  916,  692,  1020, 1050, 969,  831,  726,  456,  824,  702,
      1120, 1100, 832, 764,  821,  768,  845,  864,  862,  698,  845,  744,  796,  1040, 759,
      781,  865,  845, 944,  984,  897,  822,  1010, 771,  676,  649,  846,  812,  742,  801,
      1040, 860,  874, 848,  890,  744,  749,  838,  1050, 918,  986,  797,  923,  975,  815,
      1020, 906,  901, 1170, 912,  746,  919,  718,  714,  740};
  ASSERT_EQ(flow.size(), 100U);
  const auto jump = largest_jump(flow, 1);
  ASSERT_TRUE(jump);
  check({k_room, "jump of the Nile, readings before it", "R data set Nile, manual page", "1898", 28,
         static_cast<double>(jump->before), 0, "the year named there is the last before the jump"});
  EXPECT_LT(jump->p, 0.001);
}

TEST(StepReference, ScatterAloneIsNoJump) {
  // Forty runs of pure scatter: a p of 0.05 or less may come in a few of them, not in many.
  int shown = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    std::vector<double> y;
    for (std::uint64_t i = 0; i < 14; ++i)
      y.push_back(static_cast<double>((seed * 2654435761U + i * 40503U * (i + seed)) % 1009U));
    const auto jump = largest_jump(y, seed, 500);
    ASSERT_TRUE(jump);
    shown += jump->p <= 0.05 ? 1 : 0;
  }
  EXPECT_LE(shown, 6);
}

}  // namespace
}  // namespace wm::statistics
