#pragma once
/// Statistics: distribution functions, seeded draws, summaries, fits and trends
/// that every room shares. Pure: no clock, no file, no randomness without a seed.
///
/// This header: distribution functions, thin over Boost.Math in double precision
/// (no long double, so that the digits do not depend on the machine).
/// An argument outside its range is a mistake of the caller (assert), not of a person:
/// ranges of input are checked at the edge.

namespace wm::statistics {

/// Standard normal, P(Z <= z). Accurate in both tails.
[[nodiscard]] double normal_cdf(double z);
[[nodiscard]] double normal_density(double z);
/// z with P(Z <= z) = p. @pre 0 < p < 1
[[nodiscard]] double normal_quantile(double p);

/// Student's t with nu degrees of freedom; nu need not be whole. Infinite nu is the normal.
/// @pre nu > 0
[[nodiscard]] double t_cdf(double t, double nu);
/// @pre 0 < p < 1, nu > 0
[[nodiscard]] double t_quantile(double p, double nu);

/// @pre x >= 0, nu > 0
[[nodiscard]] double chi_squared_cdf(double x, double nu);
/// @pre 0 <= p < 1, nu > 0
[[nodiscard]] double chi_squared_quantile(double p, double nu);

/// Gamma with density rate^shape x^(shape-1) exp(-rate x) / Gamma(shape): mean shape / rate.
/// Mind: some texts give a scale, which is 1 / rate.
/// @pre shape > 0, rate > 0; x >= 0
[[nodiscard]] double gamma_cdf(double x, double shape, double rate);
[[nodiscard]] double gamma_density(double x, double shape, double rate);
/// @pre 0 <= p < 1
[[nodiscard]] double gamma_quantile(double p, double shape, double rate);

/// @pre 0 <= x <= 1, a > 0, b > 0
[[nodiscard]] double beta_cdf(double x, double a, double b);
/// @pre 0 <= p <= 1, a > 0, b > 0
[[nodiscard]] double beta_quantile(double p, double a, double b);

/// P(N = n) and P(N <= n) of a Poisson count with this mean. @pre n >= 0, mean >= 0
[[nodiscard]] double poisson_probability(int n, double mean);
[[nodiscard]] double poisson_cdf(int n, double mean);

}  // namespace wm::statistics
