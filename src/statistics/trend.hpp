#pragma once
/// Is a reading creeping, and how fast? Rank methods: no normal law is assumed, uneven
/// spacing in hours is welcome, and one bad reading does not turn the answer.

#include <cstddef>
#include <span>

#include "outcome/result.hpp"

namespace wm::statistics {

/// More points than this make more pairs than a page call should sort.
inline constexpr std::size_t k_most_trend_points = 3000;

/// Kendall's rank test for a trend.
///
///   S = sum over pairs i < j of sign(x_j - x_i) sign(y_j - y_i)
struct MannKendall {
  double s{};         ///< whole number; positive: rising
  double variance{};  ///< of S when there is no trend, with the terms for ties
  double z{};         ///< (S -+ 1) / sqrt(variance), 0 when S is 0
  double p{};         ///< two-sided: chance of an S at least as far out without any trend
  bool exact{};       ///< p counted exactly (no ties, 50 points or fewer), or from z
};

/// @param x  When (engine hours, days); need not be sorted or even.
/// @param y  What was read, in the same order.
/// @return   not_applicable: fewer than 4 points (p can never be below 0.08 with 4 or fewer),
///           different lengths, all x or all y alike, more than k_most_trend_points.
/// @source   Kendall, Rank Correlation Methods (from memory, unconfirmed); checked against
///           R 4.2.2 results in docs/validation.md.
[[nodiscard]] Result<MannKendall> mann_kendall(std::span<const double> x,
                                               std::span<const double> y);

/// The median of all slopes between two points, with an interval from ranks.
struct TheilSen {
  double slope{};      ///< y per x
  double intercept{};  ///< median of y - slope x
  double slope_low{};
  double slope_high{};
  double confidence{};  ///< two-sided level of the interval, 0.95 = 95 %
  std::size_t pairs{};

  [[nodiscard]] double at(double x) const { return intercept + slope * x; }
};

/// Interval: the slopes of rank (N -+ z sqrt(Var S)) / 2, straight between ranks; an end that
/// falls outside the slopes there are is taken as the smallest or largest of them.
///
/// @param confidence  0.5 to 0.999.
/// @return not_applicable: fewer than 3 points, lengths differ, all x alike, too many points;
///         out_of_bounds for the confidence.
/// @source Sen (1968) as given in statistics texts (from memory, unconfirmed).
[[nodiscard]] Result<TheilSen> theil_sen(std::span<const double> x, std::span<const double> y,
                                         double confidence = 0.95);

}  // namespace wm::statistics
