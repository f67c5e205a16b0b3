#pragma once
/// The plan of a proof test: pressure, medium, energy, hold. No reading yet.

#include "hose/proof.hpp"

namespace wm::hose::detail {

struct ProofPlan {
  ProofLimit limit;
  EnteredPressure test_pressure;
  std::string pressure_from;
  MediumFigures medium;
  double hose_volume_m3{};
  double volume_m3{};  ///< with pump and line, where entered
  quantity::Duration hold_time;
  std::string hold_from;
};

/// Everything that is wrong with the plan at once; problems as proof_test says.
[[nodiscard]] Checked<ProofPlan> plan(const ProofTestInput& in, const describe::Context& context);

/// What the hose holds at this pressure, with the liquid and if it were air.
[[nodiscard]] StoredEnergy stored_energy(double volume_m3, double pressure_pa,
                                         const Liquid& liquid);

}  // namespace wm::hose::detail
