#pragma once
/// A length in a sentence: to a hundredth of an inch or a tenth of a millimetre; whole eighths of
/// an inch as they are ordered.

#include <cmath>
#include <string>

#include "quantity/text.hpp"

namespace wm::hose::detail {

[[nodiscard]] inline std::string say(double metres, const quantity::Unit& unit) {
  if (unit.symbol == "mm") return quantity::print(metres, unit, 1e-4);
  if (unit.symbol != "in") return quantity::print(metres, unit, 0.0);
  const double eighths = 8 * metres / unit.factor;
  const bool whole = std::abs(eighths - std::round(eighths)) < 1e-6;
  return quantity::print(metres, unit, (whole ? 0.001 : 0.01) * unit.factor);
}

}  // namespace wm::hose::detail
