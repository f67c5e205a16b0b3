#pragma once
/// Means, spreads, covariance; a straight line by least squares.

#include <span>

#include "outcome/result.hpp"

namespace wm::statistics {

/// @pre not empty
[[nodiscard]] double mean(std::span<const double> values);

/// Sample standard deviation, divisor n - 1.
/// @return not_applicable for fewer than two values: one value has no spread.
[[nodiscard]] Result<double> standard_deviation(std::span<const double> values);

/// s / sqrt(n): how well the mean of n independent readings is known.
/// @return not_applicable for fewer than two values.
/// @source JCGM 100:2008, 4.2.3 (clause from memory, unconfirmed).
[[nodiscard]] Result<double> standard_deviation_of_mean(std::span<const double> values);

/// Sample covariance, divisor n - 1, of pairs in the same order.
/// @return not_applicable for fewer than two pairs or runs of different length.
[[nodiscard]] Result<double> covariance(std::span<const double> x, std::span<const double> y);

/// Pearson's r. @return not_applicable also when one of the two does not vary.
[[nodiscard]] Result<double> correlation(std::span<const double> x, std::span<const double> y);

/// y = intercept + slope (x - origin).
struct Line {
  double origin{};
  double intercept{};
  double slope{};
  double u_intercept{};  ///< standard uncertainty
  double u_slope{};
  double correlation{};  ///< between intercept and slope; hangs on the origin
  double scatter{};      ///< residual standard deviation s
  double squares{};      ///< residual sum of squares
  double dof{};          ///< n - 2

  [[nodiscard]] double at(double x) const { return intercept + slope * (x - origin); }
  /// Standard uncertainty of at(x): that of the line, not of the next single reading.
  [[nodiscard]] double u_at(double x) const;
};

/// Least squares with equal weights, errors in y alone.
/// @return not_applicable for fewer than three points, or all x alike.
/// @source JCGM 100:2008, H.3 (read through the GTC H3 page).
[[nodiscard]] Result<Line> fit_line(std::span<const double> x, std::span<const double> y,
                                    double origin = 0.0);

}  // namespace wm::statistics
