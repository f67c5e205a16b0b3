#include "statistics/numeric.hpp"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace wm::statistics {

double integrate(const Curve& curve, std::span<const double> breaks) {
  using Rule = boost::math::quadrature::gauss_kronrod<double, 31>;
  constexpr unsigned k_most_halvings = 8;
  double sum = 0.0;
  for (std::size_t i = 1; i < breaks.size(); ++i)
    if (breaks[i] > breaks[i - 1])
      sum += Rule::integrate(curve, breaks[i - 1], breaks[i], k_most_halvings, 1e-11);
  return sum;
}

Result<double> crossing(const Curve& curve, double low, double high) {
  const double at_low = curve(low);
  const double at_high = curve(high);
  if (at_low == 0.0) return low;
  if (at_high == 0.0) return high;
  if ((at_low > 0.0) == (at_high > 0.0))
    return Fail(Kind::not_applicable, "no crossing between the two ends", "ends on either side");
  std::uintmax_t most = 200;
  const auto bracket = boost::math::tools::toms748_solve(
      curve, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(50), most);
  return bracket.first + (bracket.second - bracket.first) / 2.0;
}

}  // namespace wm::statistics
