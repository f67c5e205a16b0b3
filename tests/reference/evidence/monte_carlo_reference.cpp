// Propagation of distributions against JCGM 101 and against exact sums.
// Sources:   JCGM 101:2008, 9.2.2 and 9.3, inputs read through the manual page of the R package
//            `propagate`; exact values in closed form.
// Tolerance: draws are seeded, so nothing flickers; the width is four standard errors of the
//            figure at the number of trials, unless said otherwise.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>
#include <vector>

#include "evidence/monte_carlo.hpp"
#include "support/reference_case.hpp"

namespace wm::evidence {
namespace {

using test::check;
const std::string k_calc = "meter-uncertainty";
const std::string k_why = "four standard errors of a million seeded draws";

double sum(std::span<const double> x) { return std::accumulate(x.begin(), x.end(), 0.0); }

MonteCarloAnswer run(const Model& model, const std::vector<RandomInput>& inputs, double level) {
  MonteCarloSettings settings;
  settings.trials = 1'000'000;
  settings.level = level;
  const auto answer = monte_carlo(model, inputs, {}, settings);
  EXPECT_TRUE(answer);
  return *answer;
}

TEST(Jcgm101, SumOfFourNormal) {
  const std::vector<RandomInput> four(4, {"x", Distribution::normal, 0.0, 1.0, k_no_end});
  const auto a = run(sum, four, 0.95);
  const std::string source = "JCGM 101:2008, 9.2.2 (normal inputs); exact";
  check({k_calc, "9.2 four normal, u", source, "2", 2.0, a.u, 0.006, k_why});
  check({k_calc, "9.2 four normal, low", source, "-3.919928", -3.919928, a.symmetric.low, 0.022,
         k_why});
  check({k_calc, "9.2 four normal, high", source, "3.919928", 3.919928, a.symmetric.high, 0.022,
         k_why});
}

TEST(Jcgm101, SumOfFourRectangular) {
  const std::vector<RandomInput> four(
      4, {"x", Distribution::rectangular, 0.0, std::numbers::sqrt3, k_no_end});
  const auto a = run(sum, four, 0.95);
  const std::string source = "JCGM 101:2008, 9.2.3 (rectangular inputs); exact";
  const double end = 2.0 * std::numbers::sqrt3 * (2.0 - std::pow(0.6, 0.25));
  check({k_calc, "9.2 four rectangular, u", source, "2", 2.0, a.u, 0.005, k_why});
  check({k_calc, "9.2 four rectangular, low", source, "-3.87938", -end, a.symmetric.low, 0.016,
         k_why});
  check({k_calc, "9.2 four rectangular, high", source, "3.87938", end, a.symmetric.high, 0.016,
         k_why});
}

// dm = (m_Rc + dm_Rc) (1 + (rho_a - 1.2)(1 / rho_W - 1 / rho_R)) - 100 000, in mg.
double mass_deviation(std::span<const double> x) {
  return (x[0] + x[1]) * (1.0 + (x[2] - 1.2) * (1.0 / x[3] - 1.0 / x[4])) - 100'000.0;
}

TEST(Jcgm101, MassCalibrationWhereTheSlopeVanishes) {
  const std::vector<RandomInput> inputs{
      {"m_Rc", Distribution::normal, 100'000.0, 0.050, k_no_end},
      {"dm_Rc", Distribution::normal, 1.234, 0.020, k_no_end},
      {"rho_a", Distribution::rectangular, 1.20, 0.10, k_no_end},
      {"rho_W", Distribution::rectangular, 8000.0, 1000.0, k_no_end},
      {"rho_R", Distribution::rectangular, 8000.0, 50.0, k_no_end}};
  std::vector<Component> components;
  std::vector<double> x;
  std::vector<double> u;
  for (const auto& in : inputs) {
    x.push_back(in.centre);
    u.push_back(in.spread / divisor(in.distribution));
  }
  const auto slopes = sensitivities(mass_deviation, x, u);
  ASSERT_TRUE(slopes);
  for (std::size_t i = 0; i < inputs.size(); ++i)
    components.push_back({inputs[i].what, u[i], (*slopes)[i], k_no_end, Distribution::normal, {}});
  const auto first = combine(components);
  const std::string source = "JCGM 101:2008, 9.3, inputs of table 5; computed";
  check({k_calc, "9.3 first order (wrong by a third)", source, "0.0538516 mg", 0.0538516, first->u,
         5e-8, "half a unit of the last digit given"});
  const auto a = run(mass_deviation, inputs, 0.95);
  const std::string exact = source + " in closed form";
  check({k_calc, "9.3 mean", exact, "1.2340 mg", 1.2340, a.mean, 3.1e-4, k_why});
  check({k_calc, "9.3 u", exact, "0.0754793 mg", 0.0754793, a.u, 2.5e-4, k_why});
  const std::string by_draws = source + " with 4e6 independent draws";
  check({k_calc, "9.3 symmetric low", by_draws, "1.0842 mg", 1.0842, a.symmetric.low, 0.001,
         "as stated with the value"});
  check({k_calc, "9.3 symmetric high", by_draws, "1.3837 mg", 1.3837, a.symmetric.high, 0.001,
         "as stated with the value"});
  check({k_calc, "9.3 shortest low", by_draws, "1.0847 mg", 1.0847, a.shortest.low, 0.001,
         "as stated with the value"});
  check({k_calc, "9.3 shortest width", by_draws, "0.2994 mg", 0.2994,
         a.shortest.high - a.shortest.low, 0.001, "as stated with the value"});
}

TEST(Jcgm101, EndGaugeAgreesWithTheSecondOrder) {
  // GUM H.1: the formula is of the second degree and the inputs independent, so first plus
  // second order is the exact variance: 33.807 nm.
  const auto model = [](std::span<const double> x) {
    return x[0] + x[1] - x[0] * (x[2] * (x[3] + x[4]) + x[5] * x[6]);
  };
  const double ud = std::sqrt(5.8 * 5.8 + 3.9 * 3.9 + 6.7 * 6.7);
  const std::vector<RandomInput> inputs{{"l_s", Distribution::normal, 50'000'623.0, 25.0, k_no_end},
                                        {"d", Distribution::normal, 215.0, ud, k_no_end},
                                        {"da", Distribution::rectangular, 0.0, 1e-6, k_no_end},
                                        {"theta", Distribution::normal, -0.1, 0.2, k_no_end},
                                        {"cycle", Distribution::arcsine, 0.0, 0.5, k_no_end},
                                        {"a_s", Distribution::rectangular, 11.5e-6, 2e-6, k_no_end},
                                        {"dtheta", Distribution::rectangular, 0.0, 0.05, k_no_end}};
  const auto a = run(model, inputs, 0.99);
  const std::string source = "JCGM 100:2008, H.1, second order; R 4.2.2, computed";
  check(
      {k_calc, "H.1 by Monte Carlo, l", source, "50 000 838 nm", 50'000'838, a.mean, 0.14, k_why});
  check({k_calc, "H.1 by Monte Carlo, u", source, "33.807 nm", 33.807, a.u, 0.1, k_why});
}

TEST(Jcgm101, CorrelatedNormalInputs) {
  // The sum of two normal inputs with r = 1 is 2 u wide, with r = -1 it has no width.
  const std::vector<RandomInput> two(2, {"x", Distribution::normal, 1.0, 0.5, k_no_end});
  MonteCarloSettings settings;
  for (const double r : {1.0, 0.6, -1.0}) {
    const std::vector<Correlation> c{{0, 1, r}};
    const auto a = monte_carlo(sum, two, c, settings);
    ASSERT_TRUE(a);
    EXPECT_NEAR(a->u, 0.5 * std::sqrt(2.0 + 2.0 * r), 0.005) << r;
    EXPECT_NEAR(a->mean, 2.0, 0.01);
  }
}

}  // namespace
}  // namespace wm::evidence
