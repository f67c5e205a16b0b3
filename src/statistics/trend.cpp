#include "statistics/trend.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "statistics/distributions.hpp"
#include "statistics/robust.hpp"

namespace wm::statistics {
namespace {

int sign(double v) { return (v > 0.0) - (v < 0.0); }

/// Sums over the groups of equal values that the variance of S needs.
struct Ties {
  double two{};    // sum t (t-1)
  double three{};  // sum t (t-1) (t-2)
  double five{};   // sum t (t-1) (2t+5)
};

Ties ties_of(std::span<const double> values) {
  std::vector<double> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  Ties ties;
  for (std::size_t i = 0; i < sorted.size();) {
    std::size_t end = i;
    while (end < sorted.size() && sorted[end] == sorted[i]) ++end;
    const auto t = static_cast<double>(end - i);
    ties.two += t * (t - 1.0);
    ties.three += t * (t - 1.0) * (t - 2.0);
    ties.five += t * (t - 1.0) * (2.0 * t + 5.0);
    i = end;
  }
  return ties;
}

/// P(|S| >= s) among all orders of n different values, by adding one value at a time:
/// the k-th may stand before 0 .. k-1 of the others, each place one more inversion.
double exact_two_sided(std::size_t n, double s) {
  std::vector<double> chance{1.0};
  for (std::size_t k = 2; k <= n; ++k) {
    std::vector<double> next(chance.size() + k - 1, 0.0);
    for (std::size_t i = 0; i < chance.size(); ++i)
      for (std::size_t j = 0; j < k; ++j) next[i + j] += chance[i] / static_cast<double>(k);
    chance = std::move(next);
  }
  const auto most = static_cast<double>(chance.size() - 1);  // n (n-1) / 2
  double p = 0.0;
  for (std::size_t inversions = 0; inversions < chance.size(); ++inversions)
    if (std::abs(most - 2.0 * static_cast<double>(inversions)) >= std::abs(s))
      p += chance[inversions];
  return std::min(p, 1.0);
}

Result<Done> check_runs(std::span<const double> x, std::span<const double> y, std::size_t least) {
  if (x.size() != y.size())
    return Fail(Kind::not_applicable, "the two runs of values differ in length",
                "one time for each reading");
  if (x.size() < least)
    return Fail(Kind::not_applicable,
                std::to_string(x.size()) + " readings are too few to speak of a trend",
                std::to_string(least) + " readings or more");
  if (x.size() > k_most_trend_points)
    return Fail(Kind::not_applicable, "too many readings for a rank method",
                std::to_string(k_most_trend_points) + " or fewer: thin the series");
  if (std::all_of(x.begin(), x.end(), [&](double v) { return v == x.front(); }))
    return Fail(Kind::not_applicable, "all readings were taken at the same time",
                "readings at different times");
  return Done{};
}

double variance_of_s(double n, const Ties& in_x, const Ties& in_y) {
  double v = (n * (n - 1.0) * (2.0 * n + 5.0) - in_x.five - in_y.five) / 18.0;
  v += in_x.two * in_y.two / (2.0 * n * (n - 1.0));
  v += in_x.three * in_y.three / (9.0 * n * (n - 1.0) * (n - 2.0));
  return v;
}

/// Value at a rank that need not be whole (1 = smallest), held inside the run.
double at_rank(const std::vector<double>& sorted, double rank) {
  const double position = std::clamp(rank - 1.0, 0.0, static_cast<double>(sorted.size() - 1));
  const auto below = static_cast<std::size_t>(position);
  if (below + 1 >= sorted.size()) return sorted.back();
  const double part = position - static_cast<double>(below);
  return sorted[below] + part * (sorted[below + 1] - sorted[below]);
}

}  // namespace

Result<MannKendall> mann_kendall(std::span<const double> x, std::span<const double> y) {
  if (const auto fit = check_runs(x, y, 4); !fit) return Fail(fit.error());
  const Ties in_x = ties_of(x);
  const Ties in_y = ties_of(y);
  MannKendall out;
  for (std::size_t i = 0; i < x.size(); ++i)
    for (std::size_t j = i + 1; j < x.size(); ++j) out.s += sign(x[j] - x[i]) * sign(y[j] - y[i]);
  out.variance = variance_of_s(static_cast<double>(x.size()), in_x, in_y);
  if (out.variance <= 0.0)
    return Fail(Kind::not_applicable, "all readings are alike: nothing moves",
                "readings that differ");
  out.z = (out.s - sign(out.s)) / std::sqrt(out.variance);
  out.exact = in_x.two == 0.0 && in_y.two == 0.0 && x.size() <= 50;
  out.p = out.exact ? exact_two_sided(x.size(), out.s)
                    : std::min(1.0, 2.0 * normal_cdf(-std::abs(out.z)));
  return out;
}

Result<TheilSen> theil_sen(std::span<const double> x, std::span<const double> y,
                           double confidence) {
  if (const auto fit = check_runs(x, y, 3); !fit) return Fail(fit.error());
  if (!(confidence >= 0.5 && confidence <= 0.999))
    return Fail(Kind::out_of_bounds, "confidence outside 50 % to 99.9 %", "50 % to 99.9 %", "95 %");
  std::vector<double> slopes;
  slopes.reserve(x.size() * (x.size() - 1) / 2);
  for (std::size_t i = 0; i < x.size(); ++i)
    for (std::size_t j = i + 1; j < x.size(); ++j)
      if (x[j] != x[i]) slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
  std::sort(slopes.begin(), slopes.end());
  TheilSen out;
  out.confidence = confidence;
  out.pairs = slopes.size();
  out.slope = median(slopes);
  std::vector<double> rest(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) rest[i] = y[i] - out.slope * x[i];
  out.intercept = median(rest);
  const double variance =
      std::max(0.0, variance_of_s(static_cast<double>(x.size()), ties_of(x), ties_of(y)));
  const double reach = normal_quantile(0.5 + confidence / 2.0) * std::sqrt(variance);
  const auto n = static_cast<double>(slopes.size());
  out.slope_low = at_rank(slopes, (n - reach) / 2.0);
  out.slope_high = at_rank(slopes, (n + reach) / 2.0 + 1.0);
  return out;
}

}  // namespace wm::statistics
