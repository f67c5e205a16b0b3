#include "evidence/detail/figures.hpp"

#include <fmt/format.h>

#include <cmath>

namespace wm::evidence::detail {

std::string figure(double value) {
  const double size = std::abs(value);
  if (size >= 1e6 && size < 1e12) return fmt::format("{:.0f}", value);
  return fmt::format("{:.6g}", value == 0.0 ? 0.0 : value);
}

std::string per_cent(double share) {
  const double p = share * 100.0;
  if (p == 0.0 || p == 100.0) return fmt::format("{:.0f} %", p);
  if (p < 0.01) return "less than 0.01 %";
  if (p > 99.99) return "more than 99.99 %";
  if (p < 1.0 || p > 99.0) return fmt::format("{:.2f} %", p);
  return fmt::format("{:.1f} %", p);
}

}  // namespace wm::evidence::detail
