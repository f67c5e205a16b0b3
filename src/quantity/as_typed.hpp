#pragma once
/// The unit in which somebody typed a value, so that an answer and its working speak it too.

#include <fmt/core.h>

#include <string>

#include "quantity/text.hpp"

namespace wm::quantity {

/// Unit of a typed value; the default unit of the set for a computed one.
template <class Q>
[[nodiscard]] const Unit& typed_unit(const Entered<Q>& entered, UnitSet set) {
  if (!entered.text.empty()) {
    if (const auto parsed = parse(entered.text, Q::kind)) {
      if (const Unit* unit = find_unit(Q::kind, parsed->unit)) return *unit;
    }
  }
  return default_unit(Q::kind, set);
}
template <class Q>
[[nodiscard]] const Unit& typed_unit(const Measured<Q>& measured, UnitSet set) {
  return typed_unit(Entered<Q>{measured.value, measured.resolution_si, measured.text}, set);
}

[[nodiscard]] inline double in_unit(double si, const Unit& unit) {
  return (si - unit.offset) / unit.factor;
}

/// A number of the working: enough digits that a pencil gets the same answer ("66.6667").
[[nodiscard]] inline std::string pencil(double value) {
  // -0.0000001 of a rounding would print as a puzzling "-1e-07".
  if (value > -1e-9 && value < 1e-9) value = 0.0;
  return fmt::format("{:.6g}", value);
}
/// The same with its unit: "66.6667 in-lb".
[[nodiscard]] inline std::string pencil(double si, const Unit& unit) {
  return fmt::format("{} {}", pencil(in_unit(si, unit)), unit.symbol);
}

}  // namespace wm::quantity
