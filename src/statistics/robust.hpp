#pragma once
/// Middle and spread that one wild reading cannot pull away.

#include <span>

namespace wm::statistics {

/// The middle value; the mean of the two middle ones for an even count. @pre not empty
[[nodiscard]] double median(std::span<const double> values);

/// Median distance from the median, as it is (not scaled). @pre not empty
[[nodiscard]] double median_absolute_deviation(std::span<const double> values);

/// MAD times this is the standard deviation when the values are normal:
/// 1 / normal_quantile(3/4).
inline constexpr double k_mad_to_sd = 1.4826022185056018;

/// The p-quantile, straight between ranks: position 1 + (n - 1) p. @pre not empty, 0 <= p <= 1
[[nodiscard]] double quantile(std::span<const double> values, double p);

}  // namespace wm::statistics
