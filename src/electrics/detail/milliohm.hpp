#pragma once
/// A resistance from a drop and a current, with its doubt; and words for milliohms.

#include <cmath>
#include <string>

#include "quantity/as_typed.hpp"

namespace wm::electrics::detail {

/// What was read, and the expanded uncertainty of it; without one stated, half a last digit is
/// all that is known.
struct Known {
  double value{};
  double doubt{};
};

template <class Q>
[[nodiscard]] Known known(const quantity::Measured<Q>& m) {
  return {m.value.si, m.expanded_si.value_or(m.resolution_si / 2.0)};
}

/// r = V / I, U_r = sqrt(U_V^2 + (r U_I)^2) / I. @pre current is not 0
[[nodiscard]] inline Known resistance_of(Known drop, Known current) {
  const double r = drop.value / current.value;
  return {r, std::hypot(drop.doubt, r * current.doubt) / std::abs(current.value)};
}

/// Mean of both polarities: a thermal voltage drops out.
[[nodiscard]] inline Known mean(Known a, Known b) {
  return {(a.value + b.value) / 2.0, std::hypot(a.doubt, b.doubt) / 2.0};
}

[[nodiscard]] inline std::string milliohm(double ohm) {
  return quantity::pencil(ohm * 1e3) + " mohm";
}

}  // namespace wm::electrics::detail
