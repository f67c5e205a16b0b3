#include "statistics/detail/portable_math.hpp"

#include <cassert>
#include <cmath>

namespace wm::statistics::detail {
namespace {

// ln 2 in two parts: the first has 32 zero bits at the end, so that k * part is exact.
constexpr double k_ln2_high = 0x1.62e42feep-1;
constexpr double k_ln2_low = 0x1.a39ef35793c76p-33;
constexpr double k_sqrt_half = 0x1.6a09e667f3bcdp-1;

}  // namespace

double portable_log(double x) {
  assert(x > 0.0);
  int exponent = 0;
  double m = std::frexp(x, &exponent);  // exact
  if (m < k_sqrt_half) {
    m *= 2.0;
    --exponent;
  }
  // ln m = 2 artanh(s), s = (m - 1) / (m + 1), |s| <= 0.1716: 11 terms reach 1e-18.
  const double s = (m - 1.0) / (m + 1.0);
  const double s2 = s * s;
  double sum = 0.0;
  for (int k = 23; k >= 3; k -= 2) sum = (sum + 1.0 / k) * s2;
  const double e = exponent;
  return e * k_ln2_high + (2.0 * s + (2.0 * s * sum + e * k_ln2_low));
}

double portable_exp(double x) {
  assert(x > -700.0 && x < 700.0);
  const double k = std::floor(x / (k_ln2_high + k_ln2_low) + 0.5);
  const double r = (x - k * k_ln2_high) - k * k_ln2_low;  // |r| <= 0.35
  double sum = 1.0;
  for (int n = 16; n >= 1; --n) sum = 1.0 + sum * r / n;
  return std::ldexp(sum, static_cast<int>(k));  // exact
}

}  // namespace wm::statistics::detail
