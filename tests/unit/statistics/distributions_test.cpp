#include "statistics/distributions.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace wm::statistics {
namespace {

TEST(Distributions, QuantileUndoesCdf) {
  for (const double p : {1e-9, 0.001, 0.05, 0.5, 0.9, 0.999}) {
    EXPECT_NEAR(normal_cdf(normal_quantile(p)), p, 1e-14);
    EXPECT_NEAR(t_cdf(t_quantile(p, 2.5), 2.5), p, 1e-13);
    EXPECT_NEAR(chi_squared_cdf(chi_squared_quantile(p, 3.7), 3.7), p, 1e-12);
    EXPECT_NEAR(gamma_cdf(gamma_quantile(p, 0.4, 2.0), 0.4, 2.0), p, 1e-12);
    EXPECT_NEAR(beta_cdf(beta_quantile(p, 2.0, 5.0), 2.0, 5.0), p, 1e-12);
  }
}

TEST(Distributions, InfiniteDegreesOfFreedomIsTheNormal) {
  const double infinite = std::numeric_limits<double>::infinity();
  EXPECT_EQ(t_quantile(0.975, infinite), normal_quantile(0.975));
  EXPECT_EQ(t_cdf(1.5, infinite), normal_cdf(1.5));
  EXPECT_NEAR(t_quantile(0.975, 1e9), normal_quantile(0.975), 1e-8);
}

TEST(Distributions, ClosedForms) {
  // t with one degree of freedom is Cauchy: F = 1/2 + atan(t) / pi.
  EXPECT_NEAR(t_cdf(1.0, 1.0), 0.75, 1e-15);
  // Chi-squared with two is exponential: F = 1 - exp(-x / 2).
  EXPECT_NEAR(chi_squared_cdf(3.0, 2.0), -std::expm1(-1.5), 1e-15);
  // Gamma(1, rate) is exponential.
  EXPECT_NEAR(gamma_cdf(0.7, 1.0, 2.0), -std::expm1(-1.4), 1e-15);
  EXPECT_NEAR(gamma_density(0.7, 1.0, 2.0), 2.0 * std::exp(-1.4), 1e-15);
  // Beta(1, b): F = 1 - (1 - x)^b.
  EXPECT_NEAR(beta_cdf(0.3, 1.0, 4.0), 1.0 - std::pow(0.7, 4), 1e-15);
  EXPECT_NEAR(poisson_probability(0, 1.2), std::exp(-1.2), 1e-15);
  EXPECT_NEAR(poisson_cdf(1, 1.2), 2.2 * std::exp(-1.2), 1e-15);
  EXPECT_EQ(poisson_probability(0, 0.0), 1.0);
  EXPECT_EQ(poisson_probability(3, 0.0), 0.0);
  EXPECT_NEAR(normal_density(0.0), 1.0 / std::sqrt(2.0 * 3.14159265358979323846), 1e-16);
}

TEST(Distributions, FarTailsKeepTheirDigits) {
  // Symmetric, and not 1 - something: 1 - cdf(9) would be 0.
  EXPECT_GT(normal_cdf(-9.0), 1e-19);
  EXPECT_LT(normal_cdf(-9.0), 2e-19);
}

}  // namespace
}  // namespace wm::statistics
