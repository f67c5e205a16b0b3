#pragma once
/// Did a reading jump? Two groups beside each other, and the most likely place of a jump inside one
/// run of readings. Rank methods: one wild reading does not decide.

#include <cstddef>
#include <cstdint>
#include <span>

#include "outcome/result.hpp"

namespace wm::statistics {

/// How far the second group lies from the first.
struct Shift {
  double estimate{};     ///< median of all differences b - a (Hodges and Lehmann)
  double low{}, high{};  ///< interval from the ranks of those differences
  double confidence{};   ///< that it really has, where the groups allow it: see `rank_shift`
  double p{};    ///< two-sided, of the rank sum: chance of so unequal groups by chance alone
  bool exact{};  ///< p counted exactly (no ties), or from the normal law
};

/// The rank-sum test of two groups with the shift between them.
///
///   U = number of pairs with b > a, ties half; p = P(|U - nm/2| >= observed)
///
/// The interval takes the differences of rank k and nm + 1 - k, with k the largest for which the
/// exact law of U leaves no more than (1 - confidence)/2 beyond. With very few readings there is
/// none: then the interval is from the smallest to the largest difference, and `confidence` says
/// what it is worth (2 and 2 readings: 67 %).
/// @return not_applicable for an empty group or more than 400 readings; out_of_bounds for a
///         confidence outside 0.5 to 0.999
/// @source Mann and Whitney (1947), Hodges and Lehmann (1963), from memory; checked against
///         scipy.stats.mannwhitneyu
[[nodiscard]] Result<Shift> rank_shift(std::span<const double> before,
                                       std::span<const double> after, double confidence = 0.95);

/// The place in a run where the ranks before and after differ most.
struct Jump {
  std::size_t before{};  ///< so many readings lie before it
  double k{};            ///< largest |U_t|
  double p{};            ///< share of shuffled runs with a k as large, this one counted
};

/// U_t = sum over i <= t < j of sign(y_j - y_i); p from shuffling with a seed.
/// @return not_applicable for fewer than 6 or more than 400 readings, or all alike
/// @source Pettitt (1979), from memory; the p here is by shuffling, not his formula
[[nodiscard]] Result<Jump> largest_jump(std::span<const double> y, std::uint64_t seed,
                                        std::size_t shuffles = 2000);

}  // namespace wm::statistics
