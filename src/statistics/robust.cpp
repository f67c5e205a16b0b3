#include "statistics/robust.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <vector>

namespace wm::statistics {
namespace {

double middle(std::vector<double>& work) {
  const std::size_t half = work.size() / 2;
  const auto at = work.begin() + static_cast<std::ptrdiff_t>(half);
  std::nth_element(work.begin(), at, work.end());
  if (work.size() % 2 == 1) return *at;
  const double below = *std::max_element(work.begin(), at);
  return below + (*at - below) / 2.0;
}

}  // namespace

double median(std::span<const double> values) {
  assert(!values.empty());
  std::vector<double> work(values.begin(), values.end());
  return middle(work);
}

double median_absolute_deviation(std::span<const double> values) {
  const double centre = median(values);
  std::vector<double> distance;
  distance.reserve(values.size());
  for (const double v : values) distance.push_back(std::abs(v - centre));
  return middle(distance);
}

double quantile(std::span<const double> values, double p) {
  assert(!values.empty() && p >= 0.0 && p <= 1.0);
  std::vector<double> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  const double position = static_cast<double>(sorted.size() - 1) * p;
  const auto below = static_cast<std::size_t>(position);
  if (below + 1 >= sorted.size()) return sorted.back();
  const double part = position - static_cast<double>(below);
  return sorted[below] + part * (sorted[below + 1] - sorted[below]);
}

}  // namespace wm::statistics
