#include "statistics/step.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include "statistics/distributions.hpp"
#include "statistics/draws.hpp"
#include "statistics/robust.hpp"

namespace wm::statistics {
namespace {

constexpr std::size_t k_most_readings = 400;
constexpr std::size_t k_most_for_exact = 40;  // of each group: beyond, the normal law is close

double sign(double v) { return static_cast<double>((v > 0.0) - (v < 0.0)); }

/// P(U = u) for u = 0 .. n m without ties: Mann and Whitney's recursion over the largest value.
std::vector<double> law_of_u(std::size_t n, std::size_t m) {
  // counts[i][u] for groups of i and the present j; the whole number may be huge, so chances.
  std::vector<std::vector<double>> at(n + 1);
  for (std::size_t i = 0; i <= n; ++i) at[i] = {1.0};
  for (std::size_t j = 1; j <= m; ++j) {
    std::vector<std::vector<double>> next(n + 1);
    next[0] = {1.0};
    for (std::size_t i = 1; i <= n; ++i) {
      std::vector<double> law(i * j + 1, 0.0);
      const double from_first = static_cast<double>(i) / static_cast<double>(i + j);
      // The largest of all is one of the first group: it exceeds all j of the second.
      for (std::size_t u = 0; u < next[i - 1].size(); ++u)
        law[u + j] += from_first * next[i - 1][u];
      for (std::size_t u = 0; u < at[i].size(); ++u) law[u] += (1.0 - from_first) * at[i][u];
      next[i] = std::move(law);
    }
    at = std::move(next);
  }
  return at[n];
}

struct Pairs {
  std::vector<double> differences;  ///< sorted
  double u{};                       ///< pairs with b > a, ties half
  bool ties{};
};

Pairs pairs_of(std::span<const double> before, std::span<const double> after) {
  Pairs out;
  out.differences.reserve(before.size() * after.size());
  for (const double a : before) {
    for (const double b : after) {
      out.differences.push_back(b - a);
      out.u += b > a ? 1.0 : (b == a ? 0.5 : 0.0);
    }
  }
  std::ranges::sort(out.differences);
  std::vector<double> all(before.begin(), before.end());
  all.insert(all.end(), after.begin(), after.end());
  std::ranges::sort(all);
  out.ties = std::ranges::adjacent_find(all) != all.end();
  return out;
}

/// Variance of U with the term for ties.
double variance_of_u(std::span<const double> before, std::span<const double> after) {
  std::vector<double> all(before.begin(), before.end());
  all.insert(all.end(), after.begin(), after.end());
  std::ranges::sort(all);
  const auto total = static_cast<double>(all.size());
  double tied = 0;
  for (std::size_t i = 0; i < all.size();) {
    std::size_t end = i;
    while (end < all.size() && all[end] == all[i]) ++end;
    const auto t = static_cast<double>(end - i);
    tied += t * t * t - t;
    i = end;
  }
  const double product = static_cast<double>(before.size()) * static_cast<double>(after.size());
  return product / 12.0 * (total + 1.0 - tied / (total * (total - 1.0)));
}

double normal_p(double distance, double variance) {
  if (variance <= 0.0) return 1.0;
  // Half a step is taken off, because U moves in whole steps.
  const double z = std::max(0.0, distance - 0.5) / std::sqrt(variance);
  return std::min(1.0, 2.0 * normal_cdf(-z));
}

double exact_p(const std::vector<double>& law, double distance) {
  const double middle = static_cast<double>(law.size() - 1) / 2.0;
  double p = 0;
  for (std::size_t u = 0; u < law.size(); ++u)
    if (std::abs(static_cast<double>(u) - middle) >= distance - 1e-9) p += law[u];
  return std::min(1.0, p);
}

/// Interval from the differences of rank k and of rank nm + 1 - k.
void interval(Shift& out, const std::vector<double>& differences, const std::vector<double>& law,
              double confidence) {
  std::size_t rank = 0;
  double beyond = 0;
  // The interval of rank k misses with chance 2 P(U <= k - 1).
  while (rank < differences.size() / 2 && beyond + law[rank] <= (1.0 - confidence) / 2.0)
    beyond += law[rank++];
  const bool reached = rank > 0;
  const std::size_t from = reached ? rank - 1 : 0;
  out.low = differences[from];
  out.high = differences[differences.size() - 1 - from];
  out.confidence = reached ? 1.0 - 2.0 * beyond : 1.0 - 2.0 * law[0];
}

void normal_interval(Shift& out, const std::vector<double>& differences, double variance,
                     double confidence) {
  const double half = static_cast<double>(differences.size()) / 2.0;
  const double reach = normal_quantile(0.5 + confidence / 2.0) * std::sqrt(variance);
  const double rank = std::clamp(std::floor(half - reach), 0.0, half);
  const auto from = static_cast<std::size_t>(rank);
  out.low = differences[from];
  out.high = differences[differences.size() - 1 - from];
  out.confidence = confidence;
}

double largest_u(std::span<const double> y, std::size_t* at) {
  const std::size_t n = y.size();
  double u = 0, best = 0;
  for (std::size_t t = 0; t + 1 < n; ++t) {
    for (const double other : y) u += sign(other - y[t]);
    if (std::abs(u) > best) {
      best = std::abs(u);
      if (at != nullptr) *at = t + 1;
    }
  }
  return best;
}

}  // namespace

Result<Shift> rank_shift(std::span<const double> before, std::span<const double> after,
                         double confidence) {
  if (before.empty() || after.empty())
    return Fail(Kind::not_applicable, "nothing to compare: one side has no reading",
                "a reading before and one after");
  if (before.size() + after.size() > k_most_readings)
    return Fail(Kind::not_applicable, "too many readings for a rank method",
                std::to_string(k_most_readings) + " or fewer");
  if (!(confidence >= 0.5 && confidence <= 0.999))
    return Fail(Kind::out_of_bounds, "confidence outside 50 % to 99.9 %", "50 % to 99.9 %", "95 %");
  const auto pairs = pairs_of(before, after);
  const double half = static_cast<double>(pairs.differences.size()) / 2.0;
  const double distance = std::abs(pairs.u - half);
  Shift out;
  out.estimate = median(pairs.differences);
  const bool few = before.size() <= k_most_for_exact && after.size() <= k_most_for_exact;
  out.exact = !pairs.ties && few;
  const double variance = variance_of_u(before, after);
  const auto law = few ? law_of_u(before.size(), after.size()) : std::vector<double>{};
  out.p = out.exact ? exact_p(law, distance) : normal_p(distance, variance);
  if (few)
    interval(out, pairs.differences, law, confidence);
  else
    normal_interval(out, pairs.differences, variance, confidence);
  return out;
}

Result<Jump> largest_jump(std::span<const double> y, std::uint64_t seed, std::size_t shuffles) {
  constexpr std::size_t k_least = 6;
  if (y.size() < k_least || y.size() > k_most_readings)
    return Fail(Kind::not_applicable,
                std::to_string(y.size()) + " readings: no jump can be told from scatter",
                "6 to 400 readings");
  if (std::ranges::all_of(y, [&](double v) { return v == y.front(); }))
    return Fail(Kind::not_applicable, "all readings are alike: nothing moves",
                "readings that differ");
  Jump out;
  out.k = largest_u(y, &out.before);
  Draws draws(seed);
  std::vector<double> shuffled(y.begin(), y.end());
  std::size_t as_large = 1;  // this run itself
  for (std::size_t s = 0; s < shuffles; ++s) {
    for (std::size_t i = shuffled.size() - 1; i > 0; --i) {
      const auto j = static_cast<std::size_t>(draws.uniform(0.0, static_cast<double>(i + 1)));
      std::swap(shuffled[i], shuffled[std::min(j, i)]);
    }
    if (largest_u(shuffled, nullptr) >= out.k - 1e-9) ++as_large;
  }
  out.p = static_cast<double>(as_large) / static_cast<double>(shuffles + 1);
  return out;
}

}  // namespace wm::statistics
