#pragma once
/// What can happen to an aircraft: one described struct an event kind.
///
/// Most acts take the payload itself as their input, so the words are described once.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bay/words.hpp"
#include "evidence/reading.hpp"
#include "quantity/date.hpp"
#include "quantity/text.hpp"

namespace wm::bay {

using describe::AnyQuantity;
using quantity::Angle;
using quantity::Date;
using quantity::Duration;
using quantity::Entered;
using quantity::Length;
using quantity::Mass;
using quantity::PressureAbsolute;
using quantity::PressureGauge;
using quantity::Resistance;
using quantity::ResistancePerLength;
using quantity::Temperature;
using quantity::Torque;
using quantity::Volume;

/// A counter's reading: hours or a count, as its kind asks.
struct CounterReading {
  std::string counter;
  std::optional<Entered<Duration>> hours;
  std::optional<std::int64_t> count;
};
std::string_view describe(describe::Fields<CounterReading>& f);

// ---- what the aircraft is -------------------------------------------------------------------

struct AircraftDescribed {
  std::string id;
  std::string name;
  std::string registration;
  std::string serial;
  std::string built;  ///< "built from plans by its owner"
  std::string engine;
  std::string engine_serial;
  std::string propeller;
  std::int64_t cylinders{4};
  IgnitionKind ignition{IgnitionKind::unknown};
  FuelKind fuel{FuelKind::unknown};
  YesNoUnknown part_43_applies{YesNoUnknown::unknown};
  std::string note;
};
std::string_view describe(describe::Fields<AircraftDescribed>& f);

struct CounterDefined {
  std::string aircraft, id, name;
  CounterKind kind{CounterKind::engine_hours};
  std::string meter;  ///< which instrument it is read from
};
std::string_view describe(describe::Fields<CounterDefined>& f);

struct CounterRead {
  std::string aircraft;
  std::vector<CounterReading> at;
  std::string note;
};
std::string_view describe(describe::Fields<CounterRead>& f);

/// A meter was exchanged: where the old one stopped and the new one started.
struct CounterReplaced {
  std::string aircraft, counter;
  std::optional<Entered<Duration>> old_last_hours, new_first_hours;
  std::optional<std::int64_t> old_last_count, new_first_count;
  std::string reason;
};
std::string_view describe(describe::Fields<CounterReplaced>& f);

struct PositionAdded {
  std::string aircraft, id, name;
  System system{System::airframe};
  std::string chapter;                   ///< system chapter code, "7920"
  std::string area;                      ///< where it is reached: "left rear"
  std::string redundant_with;            ///< the position that can do its work
  std::optional<double> plan_x, plan_y;  ///< on the plan of the bay, 0 to 100
  std::string note;
};
std::string_view describe(describe::Fields<PositionAdded>& f);

struct JointAdded {
  std::string aircraft, id, name, position;
  std::string other_position;  ///< empty for the structure
  JointKind kind{JointKind::nut};
  std::optional<Entered<Torque>> torque_least, torque_most;
  std::string torque_table;  ///< which table or manual, with metal and lubrication
  std::string locking;       ///< "lock wire"; empty: none
  bool needs_second_person{};
};
std::string_view describe(describe::Fields<JointAdded>& f);

struct PartRegistered {
  std::string id, type, description, serial, batch, maker_reference;
  std::optional<Date> cured, assembled;
  std::string papers;
  std::optional<Entered<Mass>> mass;
  std::string note;
};
std::string_view describe(describe::Fields<PartRegistered>& f);

struct PartInstalled {
  std::string aircraft, part, position;
  std::vector<CounterReading> at;
  std::string change;    ///< the change it belongs to, if any
  bool day_known{true};  ///< no: fitted some time before, nobody knows when
  std::string note;
};
std::string_view describe(describe::Fields<PartInstalled>& f);

struct PartRemoved {
  std::string aircraft, part, reason;
  std::vector<CounterReading> at;
  std::string change;
};
std::string_view describe(describe::Fields<PartRemoved>& f);

// ---- limits and what is due -----------------------------------------------------------------

struct LimitSet {
  std::string aircraft, id, title, position;  ///< position empty: the whole aircraft
  std::string counter;
  std::optional<Entered<Duration>> every_hours;
  std::optional<std::int64_t> every_count;
  std::optional<std::int64_t> every_months;
  MonthRule month_rule{MonthRule::anniversary};
  std::optional<std::int64_t> every_days;
  Combine which{Combine::whichever_first};
  bool repeating{true};
  CarryForward carry{CarryForward::from_done};
  std::optional<Entered<Duration>> tolerance_hours;
  std::optional<std::int64_t> tolerance_days;
  bool on_condition{};
  StartFrom start{StartFrom::last_done};
  std::optional<Date> since;
  std::optional<CounterReading> since_counter;
  Authority authority{Authority::owners_choice};
  std::string document, revision;
};
std::string_view describe(describe::Fields<LimitSet>& f);

struct TaskDone {
  std::string aircraft, limit;
  std::vector<CounterReading> at;
  std::string text;
  std::string document;
};
std::string_view describe(describe::Fields<TaskDone>& f);

// ---- readings and verdicts ------------------------------------------------------------------

struct InstrumentRegistered {
  std::string id, name, serial;
  std::optional<Date> calibrated, calibration_due;
  std::vector<evidence::MeterRange> ranges;
  std::string note;
};
std::string_view describe(describe::Fields<InstrumentRegistered>& f);

struct InstrumentFoundBad {
  std::string instrument;
  std::optional<Date> last_known_good;
  std::string why;
};
std::string_view describe(describe::Fields<InstrumentFoundBad>& f);

/// Something to be read on the aircraft or bench, with the limits that a document gives.
struct CheckDescribed {
  std::string aircraft, id, title, position;
  CheckKind kind{CheckKind::other};
  std::string group;     ///< siblings: "left harness"
  std::int64_t order{};  ///< within the group
  std::string probes;    ///< where the probes go
  std::string procedure;
  std::optional<AnyQuantity> lowest, highest;
  std::optional<Entered<Length>> length;  ///< of a lead
  std::optional<Entered<ResistancePerLength>> lowest_per_length, highest_per_length;
  std::optional<Entered<Resistance>> terminals;
  std::string unit;  ///< the unit people read it in: "kohm"
  Authority authority{Authority::owners_choice};
  std::string document, revision;
};
std::string_view describe(describe::Fields<CheckDescribed>& f);

struct ReadingTaken {
  std::string aircraft, check;
  std::optional<AnyQuantity> value;  ///< nothing when over range or not taken
  bool over_range{};
  std::string instrument, range;
  evidence::TestLeads leads{evidence::TestLeads::not_stated};
  std::vector<AnyQuantity> repeats;
  std::string stage;
  std::string note;
};
std::string_view describe(describe::Fields<ReadingTaken>& f);

/// A verdict is a fact: limit, figures, and which calculation said so. Refers to its reading.
struct VerdictGiven {
  std::string aircraft, check, part;
  Verdict verdict{Verdict::not_tested};
  std::string words;  ///< what a person reads
  std::string next;   ///< what to do about it
  std::optional<AnyQuantity> value, lowest, highest;
  std::optional<double> allowance_used;  ///< share of the limit
  std::optional<double> probability_within;
  std::string rule;  ///< decision rule
  std::string limit_source;
  std::string calculation;
  std::int64_t version{1};
};
std::string_view describe(describe::Fields<VerdictGiven>& f);

// ---- defects --------------------------------------------------------------------------------

struct DefectNoted {
  std::string aircraft, id, text, position;
  std::vector<std::string> photos;
  FlyDecision decision{FlyDecision::undecided};
  std::string reason;
};
std::string_view describe(describe::Fields<DefectNoted>& f);

struct DefectDecided {
  std::string aircraft, defect;
  FlyDecision decision{FlyDecision::ground};
  std::string reason;
  std::optional<Date> until;
};
std::string_view describe(describe::Fields<DefectDecided>& f);

struct DefectClosed {
  std::string aircraft, defect, how, change;
};
std::string_view describe(describe::Fields<DefectClosed>& f);

/// What the owner decided about the part in a position, with the evidence as it was shown.
struct PartDecided {
  std::string aircraft, position;
  std::string part;  ///< that was in it
  PartDecision decision{PartDecision::watch};
  std::string reason;
  std::optional<Date> look_again;
  std::string cost;  ///< as the owner puts it: money, hours of work
  std::string by;
  std::vector<std::string> evidence;
};
std::string_view describe(describe::Fields<PartDecided>& f);

// ---- changes, stages, joints ----------------------------------------------------------------

struct ChangePlanned {
  std::string aircraft, id, title, position;
  Grade grade{Grade::renewed};
  ChangeKind kind{ChangeKind::ordinary};
  std::string new_part;               ///< what goes in
  std::string document;               ///< data used, with edition and paragraph
  std::vector<std::string> joints;    ///< that will be opened
  std::vector<std::string> after;     ///< changes that come first
  std::vector<std::string> together;  ///< changes that must go into the air with it
  std::optional<Entered<Mass>> mass_out, mass_in;
  std::optional<Entered<Length>> arm;
  std::string defect;  ///< that it is meant to cure
  std::string note;
};
std::string_view describe(describe::Fields<ChangePlanned>& f);

struct ChangeDone {
  std::string aircraft, change, text;
  std::string proof;  ///< what was proved on the bench and how
  std::string parts_off, parts_on;
  std::string by;
};
std::string_view describe(describe::Fields<ChangeDone>& f);

struct ChangeWithdrawn {
  std::string aircraft, change, reason;
};
std::string_view describe(describe::Fields<ChangeWithdrawn>& f);

struct AbortValue {
  std::string what;
  std::string limit;
};
std::string_view describe(describe::Fields<AbortValue>& f);

/// The changes that go into the air together. Planning again under the same id replaces it.
struct StagePlanned {
  std::string aircraft, id, title;
  std::vector<std::string> changes;
  bool ground_only{};
  std::vector<AbortValue> abort_values;
  std::string note;
};
std::string_view describe(describe::Fields<StagePlanned>& f);

struct StageRuleAnswered {
  std::string aircraft, stage, rule;
  RuleAnswer answer{RuleAnswer::independent_inspection};
  std::string by, certificate, text;
};
std::string_view describe(describe::Fields<StageRuleAnswered>& f);

struct JointWorked {
  std::string aircraft, joint;
  JointState state{JointState::open};
  std::optional<Entered<Torque>> torque, drag;
  std::string torque_table;
  std::string instrument;
  std::string by;
  std::string stage;
  std::string note;
  /// Why a torque outside the joint's band is allowed (version 2; before, nobody was asked).
  std::string reason_outside_band;
};
std::string_view describe(describe::Fields<JointWorked>& f);

/// A bung, cap, tool or rag counted in or out.
struct BungCounted {
  std::string aircraft, id, where;
  bool fitted{true};
};
std::string_view describe(describe::Fields<BungCounted>& f);

struct CowlMoved {
  std::string aircraft;
  bool closed{};
  std::string by;
};
std::string_view describe(describe::Fields<CowlMoved>& f);

struct MassItem {
  std::string what;
  bool added{true};
  Entered<Mass> mass;
  Entered<Length> arm;
};
std::string_view describe(describe::Fields<MassItem>& f);

struct MassRevised {
  std::string aircraft, stage;
  std::vector<MassItem> items;
  Entered<Mass> empty_mass;
  Entered<Length> empty_arm;
  std::optional<Entered<Length>> forward_limit, aft_limit;
  std::optional<Entered<Mass>> greatest_mass;
  std::string document;  ///< weighing report or calculation
  std::string note;
};
std::string_view describe(describe::Fields<MassRevised>& f);

struct NamedReading {
  std::string what;
  std::optional<AnyQuantity> value;
  std::string words;
};
std::string_view describe(describe::Fields<NamedReading>& f);

struct StageStepDone {
  std::string aircraft, stage;
  StageStep step{StageStep::leak_run_static};
  StepResult result{StepResult::satisfactory};
  std::string text, by;
  std::optional<Entered<Temperature>> ambient_temperature;
  std::optional<Entered<PressureAbsolute>> ambient_pressure;
  std::vector<NamedReading> readings;
  std::vector<CounterReading> at;
  std::optional<Entered<Duration>> flight_time;
};
std::string_view describe(describe::Fields<StageStepDone>& f);

/// A person's signature over the exact text shown.
struct EntrySigned {
  std::string aircraft, id, about;  ///< stage or quick job
  EntryPurpose purpose{EntryPurpose::record_only};
  std::string text;
  std::string name;
  Signer signer{Signer::owner};
  std::string certificate;
  std::vector<std::string> covers;  ///< events that the text reports
};
std::string_view describe(describe::Fields<EntrySigned>& f);

struct StageMoved {
  std::string aircraft, stage;
  StageState to{StageState::planned};
  std::string entry, reason;
};
std::string_view describe(describe::Fields<StageMoved>& f);

struct QuickJobDone {
  std::string aircraft, id;
  QuickJob what{QuickJob::other};
  std::string text;
  std::string parts;
  std::optional<Entered<Volume>> quantity;
  std::vector<std::string> limits;  ///< limits that it restarts
  std::vector<CounterReading> at;
  std::string by;
};
std::string_view describe(describe::Fields<QuickJobDone>& f);

// ---- hoses ----------------------------------------------------------------------------------

/// A hose as it was drawn: what it was drawn from, and the figures that the sheet showed.
/// Drawing again under the same id replaces it; both stay visible.
struct HoseDrawn {
  std::string aircraft, id, title;
  std::string position, change;  ///< where it goes; the change that it belongs to
  std::string family, size;
  std::string near_at, far_at;  ///< what its ends are screwed to
  Entered<Length> overall;
  Entered<Length> tightest_radius;         ///< to the centreline
  Entered<Length> least_radius;            ///< permitted, to the centreline
  std::optional<Entered<Angle>> clocking;  ///< of two elbows
  std::string clocking_read;               ///< viewing end and sense of rotation
  std::string binding;                     ///< the rule that bounds its length
  std::vector<std::string> lines;          ///< the verdict in words, as shown
  std::optional<Entered<PressureGauge>> working_pressure, proof_pressure;
  std::string sheet;  ///< the whole input of the calculation, as JSON
  std::string calculation;
  std::int64_t version{1};
  std::string note;
};
std::string_view describe(describe::Fields<HoseDrawn>& f);

/// A hose assembly proved on the bench: a verdict, which is a fact and is not corrected.
struct HoseProved {
  std::string aircraft, hose;
  std::string part;  ///< the assembly, where it is registered
  std::optional<Date> assembled;
  Verdict verdict{Verdict::not_tested};
  std::string words;
  Entered<PressureGauge> test_pressure;
  std::string pressure_from;  ///< what set it
  Entered<Duration> held;
  std::string medium;
  std::vector<std::string> criteria;  ///< each with its verdict, in words
  std::string test;                   ///< the whole input of the calculation, as JSON
  std::string calculation;
  std::int64_t version{1};
  std::string by;
  std::string note;
};
std::string_view describe(describe::Fields<HoseProved>& f);

// ---- papers and corrections -----------------------------------------------------------------

struct AttachmentAdded {
  std::string aircraft, hash, name, media_type, about, caption;
  std::int64_t bytes{};
};
std::string_view describe(describe::Fields<AttachmentAdded>& f);

/// Replaces the body of an earlier event; both stay visible. The event it corrects stands in
/// the envelope (`refers_to`).
struct EventCorrected {
  std::string kind;
  std::int64_t version{1};
  std::string body;  ///< the whole corrected body
  std::string reason;
};
std::string_view describe(describe::Fields<EventCorrected>& f);

struct SheetImported {
  std::string aircraft, digest;
  std::int64_t positions{}, joints{}, parts{}, limits{}, checks{};
};
std::string_view describe(describe::Fields<SheetImported>& f);

}  // namespace wm::bay
