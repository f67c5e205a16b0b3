#pragma once
/// The budget of one reading, in the unit in which it was typed: percentages of a reading in
/// degF are percentages of the degrees shown, not of kelvin.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "evidence/reading.hpp"
#include "evidence/uncertainty.hpp"
#include "quantity/kinds.hpp"

namespace wm::evidence::detail {

/// The unit a value was typed in; the default US unit for a computed one.
[[nodiscard]] const quantity::Unit& unit_of(const describe::AnyQuantity& value);
/// A value as a point on its scale, in this unit.
[[nodiscard]] double point_in(const describe::AnyQuantity& value, const quantity::Unit& unit);
/// A value as a width ("0.5 degF" as a step, not as a temperature), in this unit.
[[nodiscard]] double width_in(const describe::AnyQuantity& value, const quantity::Unit& unit);
/// Temperature has temperature differences as widths, gauge pressure has differences, ...
[[nodiscard]] quantity::KindOf width_kind(quantity::KindOf kind);
/// One step of the second significant digit of a width; 0 where there is none.
[[nodiscard]] double second_digit(double width);
/// A computed width as a value, with two significant digits.
[[nodiscard]] describe::AnyQuantity as_width(double width, const quantity::Unit& unit);
/// A computed point whose digits end where those of `doubt` do.
[[nodiscard]] describe::AnyQuantity as_point(double value, double doubt,
                                             const quantity::Unit& unit);
/// "26.5 kohm", six digits.
[[nodiscard]] std::string with_unit(double value, const quantity::Unit& unit);

/// `value` must be of the same kind as the reading; a width may be of the width's kind.
void need_kind(const describe::AnyQuantity& value, quantity::KindOf kind, std::string path,
               bool width, Problems& problems);

struct BudgetInput {
  const describe::AnyQuantity* reading{};
  std::span<const describe::AnyQuantity> repeats;
  const MeterRange* meter{};  ///< may be null
  TestLeads leads{TestLeads::not_stated};
  const describe::AnyQuantity* lead_resistance{};  ///< may be null
};

struct Budget {
  const quantity::Unit* unit{};
  double value{};       ///< mean of the readings, leads taken off
  double worst_case{};  ///< half-width within which the meter's maker puts the value
  bool accuracy_known{};
  std::vector<Component> components;
  Combined combined;
  std::vector<std::string> working;
};

/// @return every problem, with paths as in the inputs of the two calculations.
[[nodiscard]] Checked<Budget> budget_of(const BudgetInput& input);

}  // namespace wm::evidence::detail
