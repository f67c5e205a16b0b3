#pragma once
/// A length in a sentence: to a hundredth of an inch or a tenth of a millimetre.

#include <string>

#include "quantity/text.hpp"

namespace wm::hose::detail {

[[nodiscard]] inline std::string say(double metres, const quantity::Unit& unit) {
  const double step = unit.symbol == "in" ? 0.01 * unit.factor : unit.symbol == "mm" ? 1e-4 : 0.0;
  return quantity::print(metres, unit, step);
}

}  // namespace wm::hose::detail
