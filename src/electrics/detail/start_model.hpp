#pragma once
/// The elements of a starting circuit with what each should have, and the circuit they make.

#include <vector>

#include "electrics/starting.hpp"

namespace wm::electrics::detail {

struct ModelElement {
  double expected{};   ///< ohm, at most when good
  std::string basis;   ///< where that comes from
  std::size_t head{};  ///< itself, or the element it lies beside
  bool table_cable{};  ///< a cable whose maximum stands in a table: may serve as shunt
};

struct StartModel {
  double emf{};
  double battery_ohm{};
  std::vector<ModelElement> elements;
  std::vector<double> ohms;  ///< in use: expected, or measured where a head was read
};

struct StartState {
  double at_battery{};
  double at_starter{};
  std::vector<double> drops;
};

[[nodiscard]] Checked<StartModel> model_of(const StartingInput& in,
                                           std::vector<std::string>& working);
/// The starter draws a fixed current.
[[nodiscard]] Result<StartState> crank(const StartingInput& in, const StartModel& model,
                                       double amperes);
/// Rotor standing: (E - V_brushes) / (R + R_armature).
[[nodiscard]] Result<double> first_moment(const StartingInput& in, const StartModel& model);
/// Resistance of a head with all that lies beside it, by what they should have.
[[nodiscard]] double together(const StartModel& model, std::size_t head);
/// All heads one after the other: the circuit without its battery.
[[nodiscard]] double outside(const StartModel& model);

/// Readings against what the elements should have; fills `model.ohms` with what was read.
void judge_readings(const StartingInput& in, StartModel& model, StartingAnswer& out);
/// Published rules beside this circuit.
void show_rules(const StartingInput& in, StartingAnswer& out);

}  // namespace wm::electrics::detail
