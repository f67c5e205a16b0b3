#pragma once
/// Logarithm and exponential from the four operations alone.
///
/// The C library's log and exp may differ in the last digit between machines; a seeded
/// draw must not. Built with -ffp-contract=off these give the same bits everywhere.

namespace wm::statistics::detail {

/// Natural logarithm, within 2 ulp. @pre x > 0 and finite
[[nodiscard]] double portable_log(double x);
/// e to the x, within 2 ulp. @pre -700 < x < 700
[[nodiscard]] double portable_exp(double x);

}  // namespace wm::statistics::detail
