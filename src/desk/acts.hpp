#pragma once
/// What the user does, one function an act. Inputs are mostly the event payloads themselves.

#include "desk/act.hpp"
#include "desk/judge.hpp"

namespace wm::desk {

using Simple = Checked<Outcome<Said>>;

// aircraft and parts (acts_aircraft.cpp)
[[nodiscard]] Simple describe_aircraft(const bay::AircraftDescribed& in, const Desk& desk);
[[nodiscard]] Simple define_counter(const bay::CounterDefined& in, const Desk& desk);
[[nodiscard]] Simple add_position(const bay::PositionAdded& in, const Desk& desk);
[[nodiscard]] Simple add_joint(const bay::JointAdded& in, const Desk& desk);
[[nodiscard]] Simple register_part(const bay::PartRegistered& in, const Desk& desk);
/// A part put into a position; with `until_day` also taken out again, so that the history of
/// old parts can be entered late, below parts that came after.
struct PartFitted {
  std::string aircraft, part, position;
  std::vector<bay::CounterReading> at;
  std::string change;
  bool day_known{true};
  std::optional<bay::Date> until_day;      ///< when it was taken out again
  std::vector<bay::CounterReading> until;  ///< readings at that time
  std::string reason;                      ///< why it was taken out
  std::string note;
};
std::string_view describe(describe::Fields<PartFitted>& f);
/// Overlaps are judged by when things happened, not by when they are entered.
/// @return conflict where the position or the part is taken in that time, with which, from when
///         to when; missing where a removal lacks its day or reason.
[[nodiscard]] Simple install_part(const PartFitted& in, const Desk& desk);
/// The same without a removal: a part as a sheet has it.
[[nodiscard]] Simple fit_part(const bay::PartInstalled& in, const Desk& desk);
[[nodiscard]] Simple remove_part(const bay::PartRemoved& in, const Desk& desk);
[[nodiscard]] Simple set_limit(const bay::LimitSet& in, const Desk& desk);
[[nodiscard]] Simple describe_check(const bay::CheckDescribed& in, const Desk& desk);
[[nodiscard]] Simple register_instrument(const bay::InstrumentRegistered& in, const Desk& desk);
[[nodiscard]] Simple revise_mass(const bay::MassRevised& in, const Desk& desk);

// counters and tasks (acts_counters.cpp)
[[nodiscard]] Simple read_counter(const bay::CounterRead& in, const Desk& desk);
[[nodiscard]] Simple replace_counter(const bay::CounterReplaced& in, const Desk& desk);
[[nodiscard]] Simple task_done(const bay::TaskDone& in, const Desk& desk);
[[nodiscard]] Simple quick_job(const bay::QuickJobDone& in, const Desk& desk);

// measuring (acts_measure.cpp)
[[nodiscard]] Checked<Outcome<Judged>> measure(const bay::ReadingTaken& in, const Desk& desk);
[[nodiscard]] Simple instrument_found_bad(const bay::InstrumentFoundBad& in, const Desk& desk);

// defects (acts_defects.cpp)
[[nodiscard]] Simple note_defect(const bay::DefectNoted& in, const Desk& desk);
[[nodiscard]] Simple decide_defect(const bay::DefectDecided& in, const Desk& desk);
[[nodiscard]] Simple close_defect(const bay::DefectClosed& in, const Desk& desk);

// renew, watch or leave (acts_decide.cpp)
struct DecidePart {
  std::string aircraft, position;
  bay::PartDecision decision{bay::PartDecision::watch};
  std::string reason;
  std::optional<bay::Date> look_again;
  std::string cost;
  std::string by;
};
std::string_view describe(describe::Fields<DecidePart>& f);
/// The evidence as it stands goes into the record with the decision.
/// @return missing (nothing is fitted there), out_of_bounds (a day to look again that is past)
[[nodiscard]] Simple decide_part(const DecidePart& in, const Desk& desk);

// changes, joints (acts_work.cpp)
[[nodiscard]] Simple plan_change(const bay::ChangePlanned& in, const Desk& desk);
[[nodiscard]] Simple change_done(const bay::ChangeDone& in, const Desk& desk);
[[nodiscard]] Simple withdraw_change(const bay::ChangeWithdrawn& in, const Desk& desk);
[[nodiscard]] Simple work_joint(const bay::JointWorked& in, const Desk& desk);
[[nodiscard]] Simple count_bung(const bay::BungCounted& in, const Desk& desk);
[[nodiscard]] Simple move_cowl(const bay::CowlMoved& in, const Desk& desk);

/// Several joints brought to one state at once.
struct JointsWorked {
  std::string aircraft;
  std::vector<std::string> joints;
  bay::JointState state{bay::JointState::open};
  std::optional<bay::Entered<bay::Torque>> torque;
  std::string torque_table, by, stage;
  std::string reason_outside_band;
};
std::string_view describe(describe::Fields<JointsWorked>& f);
[[nodiscard]] Simple work_joints(const JointsWorked& in, const Desk& desk);

// stages (acts_stages.cpp)
[[nodiscard]] Simple plan_stage(const bay::StagePlanned& in, const Desk& desk);
[[nodiscard]] Simple answer_objection(const bay::StageRuleAnswered& in, const Desk& desk);
[[nodiscard]] Simple stage_step(const bay::StageStepDone& in, const Desk& desk);

/// A person signs a stage open before flight, or closed after its checks.
struct StageSigned {
  std::string aircraft, stage;
  std::string text;  ///< exactly what was shown and signed; empty: the drafted text
  std::string name;
  bay::Signer signer{bay::Signer::owner};
  std::string certificate;
};
std::string_view describe(describe::Fields<StageSigned>& f);
[[nodiscard]] Simple open_stage(const StageSigned& in, const Desk& desk);
[[nodiscard]] Simple close_stage(const StageSigned& in, const Desk& desk);

struct StageHeld {
  std::string aircraft, stage, reason;
};
std::string_view describe(describe::Fields<StageHeld>& f);
[[nodiscard]] Simple hold_stage(const StageHeld& in, const Desk& desk);
[[nodiscard]] Simple resume_stage(const StageHeld& in, const Desk& desk);

// entries and papers (acts_papers.cpp)
[[nodiscard]] Simple sign_entry(const bay::EntrySigned& in, const Desk& desk);
[[nodiscard]] Simple attach(const bay::AttachmentAdded& in, const Desk& desk);

/// Correct an earlier event: the whole body anew. Both stay visible.
struct Correction {
  std::string event;
  std::string body;  ///< the whole corrected body
  std::string reason;
};
std::string_view describe(describe::Fields<Correction>& f);
[[nodiscard]] Simple correct(const Correction& in, const Desk& desk);

}  // namespace wm::desk
