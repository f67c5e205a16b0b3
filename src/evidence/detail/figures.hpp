#pragma once
/// Numbers in the working: six digits, so that a pencil can follow the sum.

#include <string>

namespace wm::evidence::detail {

/// Six significant digits without trailing zeros; plain between 1e-4 and 1e12.
[[nodiscard]] std::string figure(double value);
/// "97.5 %" from 0.975; never rounds up to 100 % or down to 0 %.
[[nodiscard]] std::string per_cent(double share);

}  // namespace wm::evidence::detail
