#pragma once
/// A computed figure that is to be shown in one unit, with the digits it earns.

#include <fmt/core.h>

#include <cmath>

#include "quantity/text.hpp"

namespace wm::hose::detail {

/// @param digits  significant digits
/// @pre   the kind has that unit, and no offset (no temperatures)
template <class Q>
[[nodiscard]] quantity::Entered<Q> shown(double si, std::string_view symbol, int digits = 3) {
  const quantity::Unit* unit = quantity::find_unit(Q::kind, symbol);
  if (unit == nullptr) return {Q{si}, 0.0, {}};
  const double value = si / unit->factor;
  const double step =
      value == 0.0
          ? 0.0
          : std::pow(10.0, std::floor(std::log10(std::abs(value))) + 1.0 - digits) * unit->factor;
  return {Q{si}, step, fmt::format("{} {}", quantity::significant(value, digits), unit->symbol)};
}

/// With its expanded uncertainty.
template <class Q>
[[nodiscard]] quantity::Measured<Q> shown(double si, double expanded, std::string_view symbol) {
  const quantity::Unit* unit = quantity::find_unit(Q::kind, symbol);
  if (unit == nullptr) return {Q{si}, expanded, 0.0, {}};
  return {Q{si}, expanded, 0.0, quantity::print_with_uncertainty(si, expanded, *unit)};
}

}  // namespace wm::hose::detail
