#include "statistics/summary.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>

namespace wm::statistics {
namespace {

double count(std::span<const double> values) { return static_cast<double>(values.size()); }

double products(std::span<const double> x, double mean_x, std::span<const double> y,
                double mean_y) {
  double sum = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) sum += (x[i] - mean_x) * (y[i] - mean_y);
  return sum;
}

}  // namespace

double mean(std::span<const double> values) {
  assert(!values.empty());
  // Offsets from the first value keep the digits of a long run of near-equal readings.
  double sum = 0.0;
  for (const double v : values) sum += v - values.front();
  return values.front() + sum / count(values);
}

Result<double> covariance(std::span<const double> x, std::span<const double> y) {
  if (x.size() != y.size())
    return Fail(Kind::not_applicable, "the two runs of values differ in length",
                "as many values in one as in the other");
  if (x.size() < 2)
    return Fail(Kind::not_applicable, "one value has no spread", "two values or more");
  return products(x, mean(x), y, mean(y)) / (count(x) - 1.0);
}

Result<double> standard_deviation(std::span<const double> values) {
  const auto variance = covariance(values, values);
  if (!variance) return Fail(variance.error());
  return std::sqrt(*variance);
}

Result<double> standard_deviation_of_mean(std::span<const double> values) {
  const auto s = standard_deviation(values);
  if (!s) return Fail(s.error());
  return *s / std::sqrt(count(values));
}

Result<double> correlation(std::span<const double> x, std::span<const double> y) {
  const auto xy = covariance(x, y);
  if (!xy) return Fail(xy.error());
  const double xx = products(x, mean(x), x, mean(x));
  const double yy = products(y, mean(y), y, mean(y));
  if (xx == 0.0 || yy == 0.0)
    return Fail(Kind::not_applicable, "values that never change have no correlation",
                "values that vary");
  return *xy * (count(x) - 1.0) / std::sqrt(xx * yy);
}

double Line::u_at(double x) const {
  const double a = u_intercept;
  const double b = u_slope * (x - origin);
  return std::sqrt(std::max(0.0, a * a + b * b + 2.0 * correlation * a * b));
}

Result<Line> fit_line(std::span<const double> x, std::span<const double> y, double origin) {
  if (x.size() != y.size() || x.size() < 3)
    return Fail(Kind::not_applicable, "a line with its uncertainty needs three points",
                "three or more pairs of values");
  const double n = count(x);
  const double mean_x = mean(x);
  const double mean_y = mean(y);
  const double sxx = products(x, mean_x, x, mean_x);
  if (sxx == 0.0)
    return Fail(Kind::not_applicable, "all points lie at the same place, so there is no slope",
                "points at different places");
  Line line;
  line.origin = origin;
  line.slope = products(x, mean_x, y, mean_y) / sxx;
  const double from_origin = mean_x - origin;
  line.intercept = mean_y - line.slope * from_origin;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double residual = (y[i] - mean_y) - line.slope * (x[i] - mean_x);
    line.squares += residual * residual;
  }
  line.dof = n - 2.0;
  line.scatter = std::sqrt(line.squares / line.dof);
  line.u_slope = line.scatter / std::sqrt(sxx);
  const double spread = 1.0 / n + from_origin * from_origin / sxx;
  line.u_intercept = line.scatter * std::sqrt(spread);
  line.correlation = -from_origin / std::sqrt(sxx * spread);
  return line;
}

}  // namespace wm::statistics
