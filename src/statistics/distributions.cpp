#include "statistics/distributions.hpp"

#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/gamma.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/poisson.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cassert>
#include <cmath>

namespace wm::statistics {
namespace {

namespace bmp = boost::math::policies;

// No promotion to long double: equal digits on every machine. Errors never throw:
// the ranges are asserted here and checked at the edge.
using Policy =
    bmp::policy<bmp::promote_double<false>, bmp::domain_error<bmp::ignore_error>,
                bmp::pole_error<bmp::ignore_error>, bmp::overflow_error<bmp::ignore_error>,
                bmp::evaluation_error<bmp::ignore_error>>;

using Normal = boost::math::normal_distribution<double, Policy>;
using StudentT = boost::math::students_t_distribution<double, Policy>;
using ChiSquared = boost::math::chi_squared_distribution<double, Policy>;
using Gamma = boost::math::gamma_distribution<double, Policy>;
using Beta = boost::math::beta_distribution<double, Policy>;
using Poisson = boost::math::poisson_distribution<double, Policy>;

// Named in asserts only.
[[maybe_unused]] bool inside(double p) { return p > 0.0 && p < 1.0; }

}  // namespace

double normal_cdf(double z) { return boost::math::cdf(Normal(), z); }
double normal_density(double z) { return boost::math::pdf(Normal(), z); }
double normal_quantile(double p) {
  assert(inside(p));
  return boost::math::quantile(Normal(), p);
}

double t_cdf(double t, double nu) {
  assert(nu > 0.0);
  if (std::isinf(nu)) return normal_cdf(t);
  return boost::math::cdf(StudentT(nu), t);
}
double t_quantile(double p, double nu) {
  assert(inside(p) && nu > 0.0);
  if (std::isinf(nu)) return normal_quantile(p);
  return boost::math::quantile(StudentT(nu), p);
}

double chi_squared_cdf(double x, double nu) {
  assert(x >= 0.0 && nu > 0.0);
  return boost::math::cdf(ChiSquared(nu), x);
}
double chi_squared_quantile(double p, double nu) {
  assert(p >= 0.0 && p < 1.0 && nu > 0.0);
  return boost::math::quantile(ChiSquared(nu), p);
}

double gamma_cdf(double x, double shape, double rate) {
  assert(x >= 0.0 && shape > 0.0 && rate > 0.0);
  return boost::math::cdf(Gamma(shape, 1.0 / rate), x);
}
double gamma_density(double x, double shape, double rate) {
  assert(x >= 0.0 && shape > 0.0 && rate > 0.0);
  return boost::math::pdf(Gamma(shape, 1.0 / rate), x);
}
double gamma_quantile(double p, double shape, double rate) {
  assert(p >= 0.0 && p < 1.0 && shape > 0.0 && rate > 0.0);
  return boost::math::quantile(Gamma(shape, 1.0 / rate), p);
}

double beta_cdf(double x, double a, double b) {
  assert(x >= 0.0 && x <= 1.0 && a > 0.0 && b > 0.0);
  return boost::math::cdf(Beta(a, b), x);
}
double beta_quantile(double p, double a, double b) {
  assert(p >= 0.0 && p <= 1.0 && a > 0.0 && b > 0.0);
  return boost::math::quantile(Beta(a, b), p);
}

double poisson_probability(int n, double mean) {
  assert(n >= 0 && mean >= 0.0);
  if (mean == 0.0) return n == 0 ? 1.0 : 0.0;
  return boost::math::pdf(Poisson(mean), n);
}
double poisson_cdf(int n, double mean) {
  assert(n >= 0 && mean >= 0.0);
  if (mean == 0.0) return 1.0;
  return boost::math::cdf(Poisson(mean), n);
}

}  // namespace wm::statistics
