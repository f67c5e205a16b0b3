#include "bay/words.hpp"

namespace wm::bay {

std::string_view describe(describe::Choices<Grade>& c) {
  c.has(Grade::looked_at, "looked-at", "looked at")
      .has(Grade::adjusted, "adjusted", "adjusted")
      .has(Grade::opened_and_refitted, "opened-and-refitted", "opened and refitted")
      .has(Grade::renewed, "renewed", "renewed")
      .has(Grade::redesigned, "redesigned", "redesigned");
  return "grade";
}
std::string_view describe(describe::Choices<System>& c) {
  c.has(System::fuel, "fuel", "fuel")
      .has(System::oil, "oil", "oil")
      .has(System::ignition, "ignition", "ignition")
      .has(System::starting, "starting", "starting")
      .has(System::charging, "charging", "charging")
      .has(System::induction, "induction", "induction")
      .has(System::exhaust, "exhaust", "exhaust")
      .has(System::cylinders, "cylinders", "cylinders")
      .has(System::controls, "controls", "engine controls")
      .has(System::mounts, "mounts", "engine mounts")
      .has(System::propeller, "propeller", "propeller")
      .has(System::cooling, "cooling", "cooling")
      .has(System::instruments, "instruments", "instruments")
      .has(System::airframe, "airframe", "airframe");
  return "system";
}
std::string_view describe(describe::Choices<ChangeKind>& c) {
  c.has(ChangeKind::ordinary, "ordinary", "ordinary")
      .has(ChangeKind::mount_isolators, "mount-isolators", "engine mount isolators")
      .has(ChangeKind::control_rigging, "control-rigging", "rigging of controls")
      .has(ChangeKind::hose_measuring, "hose-measuring", "hose measured on the aircraft");
  return "change-kind";
}
std::string_view describe(describe::Choices<IgnitionKind>& c) {
  c.has(IgnitionKind::two_magnetos, "two-magnetos", "two magnetos")
      .has(IgnitionKind::magneto_and_electronic, "magneto-and-electronic",
           "one magneto, one electronic ignition")
      .has(IgnitionKind::two_electronic, "two-electronic", "two electronic ignitions")
      .has(IgnitionKind::one_magneto, "one-magneto", "one magneto")
      .has(IgnitionKind::unknown, "unknown", "unknown");
  return "ignition-kind";
}
std::string_view describe(describe::Choices<FuelKind>& c) {
  c.has(FuelKind::carburettor_gravity_and_pump, "carburettor-gravity-and-pump",
        "carburettor, gravity and engine pump")
      .has(FuelKind::carburettor_gravity, "carburettor-gravity", "carburettor, gravity")
      .has(FuelKind::carburettor_pump, "carburettor-pump", "carburettor, pumps")
      .has(FuelKind::injection, "injection", "fuel injection")
      .has(FuelKind::injection_with_return, "injection-with-return",
           "fuel injection with a return line")
      .has(FuelKind::unknown, "unknown", "unknown");
  return "fuel-kind";
}
std::string_view describe(describe::Choices<YesNoUnknown>& c) {
  c.has(YesNoUnknown::yes, "yes", "yes")
      .has(YesNoUnknown::no, "no", "no")
      .has(YesNoUnknown::unknown, "unknown", "unknown");
  return "yes-no-unknown";
}
std::string_view describe(describe::Choices<CounterKind>& c) {
  c.has(CounterKind::engine_hours, "engine-hours", "engine hours")
      .has(CounterKind::airframe_hours, "airframe-hours", "airframe hours")
      .has(CounterKind::landings, "landings", "landings")
      .has(CounterKind::starts, "starts", "starts")
      .has(CounterKind::other_hours, "other-hours", "other hours")
      .has(CounterKind::other_count, "other-count", "other count");
  return "counter-kind";
}
bool counts_hours(CounterKind kind) {
  return kind == CounterKind::engine_hours || kind == CounterKind::airframe_hours ||
         kind == CounterKind::other_hours;
}
std::string_view describe(describe::Choices<JointKind>& c) {
  c.has(JointKind::nut, "nut", "nut")
      .has(JointKind::hose_swivel_nut, "hose-swivel-nut", "hose swivel nut")
      .has(JointKind::flared_tube_nut, "flared-tube-nut", "flared tube nut")
      .has(JointKind::bolt, "bolt", "bolt")
      .has(JointKind::clamp, "clamp", "clamp")
      .has(JointKind::connector, "connector", "connector")
      .has(JointKind::pin, "pin", "pin")
      .has(JointKind::stud, "stud", "stud")
      .has(JointKind::terminal, "terminal", "terminal");
  return "joint-kind";
}
std::string_view describe(describe::Choices<JointState>& c) {
  c.has(JointState::open, "open", "open")
      .has(JointState::assembled, "assembled", "assembled")
      .has(JointState::torqued, "torqued", "torqued")
      .has(JointState::locked, "locked", "locked")
      .has(JointState::marked, "marked", "marked")
      .has(JointState::seen, "seen", "seen (second person, or a second look)");
  return "joint-state";
}
std::string_view describe(describe::Choices<FlyDecision>& c) {
  c.has(FlyDecision::undecided, "undecided", "not decided yet")
      .has(FlyDecision::fly, "fly", "fly with it")
      .has(FlyDecision::ground, "ground", "stay on the ground until closed");
  return "fly-decision";
}
std::string_view describe(describe::Choices<PartDecision>& c) {
  c.has(PartDecision::renew, "renew", "renew")
      .has(PartDecision::watch, "watch", "watch")
      .has(PartDecision::leave, "leave", "leave");
  return "part-decision";
}
std::string_view describe(describe::Choices<StageStep>& c) {
  c.has(StageStep::leak_run_static, "leak-run-static", "leak run, engine stopped")
      .has(StageStep::leak_run_engine, "leak-run-engine", "leak run, engine running, uncowled")
      .has(StageStep::ground_run, "ground-run", "ground run")
      .has(StageStep::check_flight, "check-flight", "check flight")
      .has(StageStep::second_look, "second-look", "second look");
  return "stage-step";
}
std::string_view describe(describe::Choices<StepResult>& c) {
  c.has(StepResult::satisfactory, "satisfactory", "satisfactory")
      .has(StepResult::unsatisfactory, "unsatisfactory", "unsatisfactory");
  return "step-result";
}
std::string_view describe(describe::Choices<StageState>& c) {
  c.has(StageState::planned, "planned", "planned")
      .has(StageState::open, "open", "open, check flight due")
      .has(StageState::closed, "closed", "closed")
      .has(StageState::held, "held", "held");
  return "stage-state";
}
std::string_view describe(describe::Choices<Signer>& c) {
  c.has(Signer::owner, "owner", "owner")
      .has(Signer::repairman, "repairman", "repairman for this aircraft")
      .has(Signer::mechanic, "mechanic", "mechanic")
      .has(Signer::inspector, "inspector", "inspector")
      .has(Signer::pilot, "pilot", "pilot");
  return "signer";
}
std::string_view describe(describe::Choices<EntryPurpose>& c) {
  c.has(EntryPurpose::opens_stage, "opens-stage", "return to service, check flight due")
      .has(EntryPurpose::closes_stage, "closes-stage", "checks judged, stage closed")
      .has(EntryPurpose::record_only, "record-only", "record of work")
      .has(EntryPurpose::condition_inspection, "condition-inspection", "condition inspection");
  return "entry-purpose";
}
std::string_view describe(describe::Choices<RuleAnswer>& c) {
  c.has(RuleAnswer::independent_inspection, "independent-inspection", "independent inspection")
      .has(RuleAnswer::separate_proof, "separate-proof", "each half proved by itself")
      .has(RuleAnswer::override_in_writing, "override-in-writing", "override in writing");
  return "rule-answer";
}
std::string_view describe(describe::Choices<QuickJob>& c) {
  c.has(QuickJob::oil_change, "oil-change", "oil change")
      .has(QuickJob::plugs, "plugs", "plugs cleaned, gapped, rotated")
      .has(QuickJob::battery, "battery", "battery")
      .has(QuickJob::filter, "filter", "filter or strainer")
      .has(QuickJob::tyre_or_brake, "tyre-or-brake", "tyre or brake")
      .has(QuickJob::lubrication, "lubrication", "lubrication")
      .has(QuickJob::other, "other", "other");
  return "quick-job";
}
std::string_view describe(describe::Choices<CheckKind>& c) {
  c.has(CheckKind::lead_resistance, "lead-resistance", "lead resistance")
      .has(CheckKind::resistance, "resistance", "resistance")
      .has(CheckKind::insulation, "insulation", "insulation")
      .has(CheckKind::voltage_drop, "voltage-drop", "voltage drop")
      .has(CheckKind::voltage, "voltage", "voltage")
      .has(CheckKind::pressure, "pressure", "pressure")
      .has(CheckKind::temperature, "temperature", "temperature")
      .has(CheckKind::speed, "speed", "rotation speed")
      .has(CheckKind::gap, "gap", "gap")
      .has(CheckKind::coil_primary, "coil-primary", "coil, primary winding")
      .has(CheckKind::coil_secondary, "coil-secondary", "coil, secondary winding")
      .has(CheckKind::coil_double_ended, "coil-double-ended", "coil, from tower to tower")
      .has(CheckKind::condenser, "condenser", "condenser, capacitance")
      .has(CheckKind::point_gap, "point-gap", "breaker points, gap")
      .has(CheckKind::magneto_timing, "magneto-timing", "magneto, timing to the engine")
      .has(CheckKind::speed_drop, "speed-drop", "drop of speed on one magneto")
      .has(CheckKind::plug_gap, "plug-gap", "plug, gap")
      .has(CheckKind::plug_resistor, "plug-resistor", "plug, resistor")
      .has(CheckKind::compression, "compression", "differential compression")
      .has(CheckKind::contactor_coil, "contactor-coil", "contactor, coil")
      .has(CheckKind::contactor_contacts, "contactor-contacts", "contactor, drop over the contacts")
      .has(CheckKind::bond, "bond", "bond to the airframe")
      .has(CheckKind::other, "other", "other");
  return "check-kind";
}

}  // namespace wm::bay
