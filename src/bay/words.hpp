#pragma once
/// The listed words of the aircraft's record: grades, states, authorities, results.

#include <string_view>

#include "describe/fields.hpp"
#include "evidence/verdict.hpp"
#include "life/limits.hpp"

namespace wm::bay {

using evidence::Verdict;
using life::Authority;
using life::CarryForward;
using life::Combine;
using life::MonthRule;
using life::StartFrom;

/// How much a change disturbs, in rising order.
enum class Grade { looked_at, adjusted, opened_and_refitted, renewed, redesigned };
std::string_view describe(describe::Choices<Grade>& c);

enum class System {
  fuel,
  oil,
  ignition,
  starting,
  charging,
  induction,
  exhaust,
  cylinders,
  controls,
  mounts,
  propeller,
  cooling,
  instruments,
  airframe
};
std::string_view describe(describe::Choices<System>& c);

/// What a change is, where order between kinds matters.
enum class ChangeKind { ordinary, mount_isolators, control_rigging, hose_measuring };
std::string_view describe(describe::Choices<ChangeKind>& c);

enum class IgnitionKind {
  two_magnetos,
  magneto_and_electronic,
  two_electronic,
  one_magneto,
  unknown
};
std::string_view describe(describe::Choices<IgnitionKind>& c);

enum class FuelKind {
  carburettor_gravity_and_pump,
  carburettor_gravity,
  carburettor_pump,
  injection,
  injection_with_return,
  unknown
};
std::string_view describe(describe::Choices<FuelKind>& c);

enum class YesNoUnknown { yes, no, unknown };
std::string_view describe(describe::Choices<YesNoUnknown>& c);

enum class CounterKind { engine_hours, airframe_hours, landings, starts, other_hours, other_count };
std::string_view describe(describe::Choices<CounterKind>& c);
/// Whether a counter of this kind is read in hours (else in whole events).
[[nodiscard]] bool counts_hours(CounterKind kind);

enum class JointKind {
  nut,
  hose_swivel_nut,
  flared_tube_nut,
  bolt,
  clamp,
  connector,
  pin,
  stud,
  terminal
};
std::string_view describe(describe::Choices<JointKind>& c);

/// What was done at a joint. `seen` is by a second person or a second look.
enum class JointState { open, assembled, torqued, locked, marked, seen };
std::string_view describe(describe::Choices<JointState>& c);

enum class FlyDecision { undecided, fly, ground };
std::string_view describe(describe::Choices<FlyDecision>& c);

/// What an owner decides about a part that is fitted.
enum class PartDecision { renew, watch, leave };
std::string_view describe(describe::Choices<PartDecision>& c);

enum class StageStep { leak_run_static, leak_run_engine, ground_run, check_flight, second_look };
std::string_view describe(describe::Choices<StageStep>& c);

enum class StepResult { satisfactory, unsatisfactory };
std::string_view describe(describe::Choices<StepResult>& c);

enum class StageState { planned, open, closed, held };
std::string_view describe(describe::Choices<StageState>& c);

enum class Signer { owner, repairman, mechanic, inspector, pilot };
std::string_view describe(describe::Choices<Signer>& c);

enum class EntryPurpose { opens_stage, closes_stage, record_only, condition_inspection };
std::string_view describe(describe::Choices<EntryPurpose>& c);

/// How an objection to a stage was answered.
enum class RuleAnswer { independent_inspection, separate_proof, override_in_writing };
std::string_view describe(describe::Choices<RuleAnswer>& c);

enum class QuickJob { oil_change, plugs, battery, filter, tyre_or_brake, lubrication, other };
std::string_view describe(describe::Choices<QuickJob>& c);

enum class CheckKind {
  lead_resistance,
  resistance,
  insulation,
  voltage_drop,
  voltage,
  pressure,
  temperature,
  speed,
  gap,
  coil_primary,
  coil_secondary,
  coil_double_ended,
  condenser,
  point_gap,
  magneto_timing,
  speed_drop,
  plug_gap,
  plug_resistor,
  compression,
  contactor_coil,
  contactor_contacts,
  bond,
  other
};
std::string_view describe(describe::Choices<CheckKind>& c);

/// The stored word of an enumerator ("opened-and-refitted").
template <class E>
[[nodiscard]] std::string_view word(E e) {
  for (const auto& choice : describe::type_of<E>().choices) {
    if (choice.number == static_cast<std::int64_t>(e)) return choice.value;
  }
  return "?";
}
/// The shown words ("opened and refitted").
template <class E>
[[nodiscard]] std::string_view label(E e) {
  for (const auto& choice : describe::type_of<E>().choices) {
    if (choice.number == static_cast<std::int64_t>(e)) return choice.label;
  }
  return "?";
}

}  // namespace wm::bay
