// Trends and due-date sums against R.
// Sources stand beside each case. R 4.2.2 values were computed once, outside this project's
// code; the data of MK3 are the public data set `Nile` that comes with R.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "statistics/distributions.hpp"
#include "statistics/summary.hpp"
#include "statistics/trend.hpp"
#include "support/reference_case.hpp"

namespace wm::statistics {
namespace {

using test::check;
const std::string k_room = "statistics";
const std::string k_r = "R 4.2.2, computed";
const std::string k_digits = "half a unit of the last digit given";

std::vector<double> counted(std::size_t n) {
  std::vector<double> out(n);
  for (std::size_t i = 0; i < n; ++i) out[i] = static_cast<double>(i + 1);
  return out;
}

TEST(TrendReference, MK1WithTies) {
  const std::vector<double> y{61, 60, 62, 59, 60, 58, 57, 58, 55, 56};
  const auto t = mann_kendall(counted(10), y);
  ASSERT_TRUE(t);
  check({k_room, "MK1 S", k_r, "-33", -33, t->s, 0, "a whole number"});
  check({k_room, "MK1 variance", k_r, "123", 123, t->variance, 1e-12, "a whole number"});
  check({k_room, "MK1 Z", k_r, "-2.88534", -32 / std::sqrt(123.0), t->z, 1e-12, "closed form"});
  check({k_room, "MK1 p", k_r, "0.00391", 0.00391, t->p, 1e-5, "as stated with the value"});
  const auto s = theil_sen(counted(10), y);
  ASSERT_TRUE(s);
  check({k_room, "MK1 Sen slope", k_r, "-0.666667", -0.666667, s->slope, 5e-7, k_digits});
}

TEST(TrendReference, MK2Exact) {
  const std::vector<double> y{4.1, 4.4, 4.3, 4.7, 4.9, 4.8, 5.2, 5.6};
  const auto t = mann_kendall(counted(8), y);
  ASSERT_TRUE(t);
  check({k_room, "MK2 S", k_r, "24", 24, t->s, 0, "a whole number"});
  check({k_room, "MK2 variance", k_r, "65.3333", 65.3333, t->variance, 5e-5, k_digits});
  check({k_room, "MK2 Z", k_r, "2.8455", 2.8455, t->z, 5e-5, k_digits});
  check({k_room, "MK2 exact p", k_r, "0.00173611", 0.00173611, t->p, 5e-9, k_digits});
  const auto s = theil_sen(counted(8), y);
  ASSERT_TRUE(s);
  check({k_room, "MK2 Sen slope", k_r, "0.2", 0.2, s->slope, 1e-12, "exact"});
  const std::string why = "the interpolation between ranks differs between texts";
  check({k_room, "MK2 95 % low", k_r, "about 0.141", 0.141, s->slope_low, 0.005, why});
  check({k_room, "MK2 95 % high", k_r, "about 0.297", 0.297, s->slope_high, 0.005, why});
}

TEST(TrendReference, MK3Nile) {
  const std::vector<double> flow{
      1120, 1160, 963, 1210, 1160, 1160, 813,  1230, 1370, 1140, 995,  935,  1110, 994,  1020,
      960,  1180, 799, 958,  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774,  840,
      874,  694,  940, 833,  701,  916,  692,  1020, 1050, 969,  831,  726,  456,  824,  702,
      1120, 1100, 832, 764,  821,  768,  845,  864,  862,  698,  845,  744,  796,  1040, 759,
      781,  865,  845, 944,  984,  897,  822,  1010, 771,  676,  649,  846,  812,  742,  801,
      1040, 860,  874, 848,  890,  744,  749,  838,  1050, 918,  986,  797,  923,  975,  815,
      1020, 906,  901, 1170, 912,  746,  919,  718,  714,  740};
  ASSERT_EQ(flow.size(), 100u);
  const auto t = mann_kendall(counted(100), flow);
  ASSERT_TRUE(t);
  EXPECT_FALSE(t->exact);
  const std::string source = "R data set Nile (1871-1970); R 4.2.2, computed";
  check({k_room, "MK3 Nile S", source, "-1387", -1387, t->s, 0, "a whole number"});
  check({k_room, "MK3 Nile Z", source, "-4.13", -4.13, t->z, 0.005, k_digits});
  check({k_room, "MK3 Nile p", source, "3.66e-5", 3.66e-5, t->p, 5e-8, k_digits});
  const auto s = theil_sen(counted(100), flow);
  ASSERT_TRUE(s);
  check({k_room, "MK3 Nile Sen slope", source, "-2.6", -2.6, s->slope, 0.1, "as stated"});
}

TEST(TrendReference, UnevenHours) {
  const std::vector<double> hours{0, 6.5, 11, 18.2, 25, 31.4, 40};
  const std::vector<double> y{72, 71, 71.5, 70, 69, 69.5, 67};
  const auto s = theil_sen(hours, y);
  const auto t = mann_kendall(hours, y);
  ASSERT_TRUE(s && t);
  check({k_room, "TS slope", k_r, "-0.11940299", -0.11940299, s->slope, 5e-9, k_digits});
  check({k_room, "TS intercept", k_r, "72", 72, s->intercept, 1e-12, "exact"});
  check({k_room, "TS S", k_r, "-17", -17, t->s, 0, "a whole number"});
  check({k_room, "TS exact p", k_r, "0.01071429", 0.01071429, t->p, 5e-9, k_digits});
  check({k_room, "TS reaches 65 at", k_r, "58.625 h", 58.625, (65.0 - s->intercept) / s->slope,
         5e-4, k_digits});
}

TEST(FitReference, ThermometerLine) {
  const std::vector<double> t{21.521, 22.012, 22.512, 23.003, 23.507, 23.999,
                              24.513, 25.002, 25.503, 26.010, 26.511};
  const std::vector<double> b{-.171, -.169, -.166, -.159, -.164, -.165,
                              -.156, -.157, -.159, -.161, -.160};
  const auto line = fit_line(t, b, 20.0);
  ASSERT_TRUE(line);
  const std::string source = "JCGM 100:2008, H.3 (read through the GTC page H3); R 4.2.2";
  check({k_room, "H.3 intercept", source, "-0.17120379", -0.17120379, line->intercept, 5e-9,
         k_digits});
  check({k_room, "H.3 u(intercept)", source, "0.002877598", 0.002877598, line->u_intercept, 5e-10,
         k_digits});
  check(
      {k_room, "H.3 slope", source, "0.00218269774", 0.00218269774, line->slope, 5e-12, k_digits});
  check({k_room, "H.3 u(slope)", source, "0.000667938773", 0.000667938773, line->u_slope, 5e-13,
         k_digits});
  check({k_room, "H.3 correlation", source, "-0.930430", -0.930430, line->correlation, 5e-7,
         k_digits});
  check({k_room, "H.3 s", source, "0.00349756396", 0.00349756396, line->scatter, 5e-12, k_digits});
  check({k_room, "H.3 SSR", source, "1.10096583109e-4", 1.10096583109e-4, line->squares, 5e-16,
         k_digits});
  check(
      {k_room, "H.3 b(30)", source, "-0.149376813", -0.149376813, line->at(30.0), 5e-10, k_digits});
  check({k_room, "H.3 u(b(30))", source, "0.00413859575", 0.00413859575, line->u_at(30.0), 5e-12,
         k_digits});
}

TEST(DistributionReference, QuantilesInUse) {
  const std::string six = "six decimals given";
  check({k_room, "t 0.995, 16", k_r, "2.920782", 2.920782, t_quantile(0.995, 16), 5e-7, six});
  check({k_room, "t 0.975, 19", k_r, "2.093024", 2.093024, t_quantile(0.975, 19), 5e-7, six});
  check({k_room, "t 0.995, 16.7519", k_r, "2.9035", 2.9035, t_quantile(0.995, 16.7519), 5e-5,
         k_digits});
  const std::vector<double> ranks{.129449, .313810, .5, .686190, .870551};
  for (int i = 1; i <= 5; ++i)
    check({k_room, "median rank " + std::to_string(i) + " of 5", "R 4.2.2 qbeta, computed",
           std::to_string(ranks[static_cast<std::size_t>(i - 1)]),
           ranks[static_cast<std::size_t>(i - 1)], beta_quantile(0.5, i, 6 - i), 5e-7, six});
  // 2.995732: "rule of three"; chi-squared with 2 degrees is twice an exponential.
  check({k_room, "rule of three", k_r, "2.995732", 2.995732, chi_squared_quantile(0.95, 2) / 2,
         5e-7, six});
}

TEST(DistributionReference, HoursLimitFromIrregularFlying) {
  // P(due <= t) = sum over n of Poisson(n; nu t) P(Gamma(n k, theta) >= L), L 12 h, nu 0.15,
  // k 4, theta 0.3.
  const auto due = [](double t) {
    double p = 0.0;
    for (int n = 1; n < 200; ++n)
      p += poisson_probability(n, 0.15 * t) * (1.0 - gamma_cdf(12.0, 4.0 * n, 1.0 / 0.3));
    return p;
  };
  // The density is below 0.02 a day, so four printed decimals of a day are 1e-6 in p.
  const std::string why = "the printed quantile rounded to 1e-4 days";
  check({k_room, "due 5 %", k_r, "0.05 at 35.6802 d", 0.05, due(35.6802), 2e-6, why});
  check({k_room, "due 50 %", k_r, "0.5 at 68.3438 d", 0.5, due(68.3438), 2e-6, why});
  check({k_room, "due 95 %", k_r, "0.95 at 114.4826 d", 0.95, due(114.4826), 2e-6, why});
}

}  // namespace
}  // namespace wm::statistics
