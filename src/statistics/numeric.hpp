#pragma once
/// Areas under a curve and crossing points, for smooth functions of one number.

#include <functional>
#include <span>

#include "outcome/result.hpp"

namespace wm::statistics {

using Curve = std::function<double(double)>;

/// Area from the first to the last break, by adaptive Gauss-Kronrod quadrature between
/// neighbouring breaks. Put a break wherever the curve bends sharply.
///
/// @param breaks  Two or more, rising; equal neighbours are skipped.
/// @return        The area, to about 1e-11 of the integral of |curve|. 0 for fewer than two.
[[nodiscard]] double integrate(const Curve& curve, std::span<const double> breaks);

/// Where a curve crosses zero between `low` and `high`, to the last few bits.
/// @return not_applicable when both ends have the same sign.
[[nodiscard]] Result<double> crossing(const Curve& curve, double low, double high);

}  // namespace wm::statistics
