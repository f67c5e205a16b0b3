#pragma once
/// Where a stage stands: objections, what is missing before it may be signed open or closed,
/// and the text of its entries.

#include "bay/state.hpp"
#include "describe/fields.hpp"

namespace wm::desk {

/// One objection of the rules to a stage, and whether it has been answered.
struct StageObjection {
  std::string rule;    ///< "ignition-with-fuel"
  std::string words;   ///< what is wrong and why it matters
  std::string answer;  ///< what would settle it
  std::string source;
  std::vector<std::string> changes;
  std::vector<std::string> accepted;  ///< answers that settle it
  bool settled{};
  std::string settled_by;
};
std::string_view describe(describe::Fields<StageObjection>& f);

[[nodiscard]] std::vector<StageObjection> objections(const bay::Aircraft& aircraft,
                                                     const bay::Stage& stage);

/// What still has to be done before a stage may be signed, in the order of the work.
struct Missing {
  std::string what;   ///< "Torque, mark and look again: upper oil hose at the engine (joint 3)."
  std::string where;  ///< which part of the work: changes, joints, mass, leak-run, ...
};
std::string_view describe(describe::Fields<Missing>& f);

[[nodiscard]] std::vector<Missing> missing_to_open(const bay::Aircraft& aircraft,
                                                   const bay::Stage& stage);
[[nodiscard]] std::vector<Missing> missing_to_close(const bay::Aircraft& aircraft,
                                                    const bay::Stage& stage);

/// What forbids a step of this stage now, and what comes first.
/// @return refused or conflict, at `step` or `stage`; nothing where it may be entered.
[[nodiscard]] Problems out_of_order(const bay::Aircraft& aircraft, const bay::Stage& stage,
                                    const bay::StageStepDone& step);

/// Whether the stage disturbs a line that holds fuel or oil.
[[nodiscard]] bool disturbs_fluid(const bay::Aircraft& aircraft, const bay::Stage& stage);

/// The text of an entry with all that it must contain, for a person to read and sign.
/// @source 14 CFR 43.9(a), 91.417(a): content; conditional return to service after CAR 571.10
///         pattern (rules-records, sections 1, 2 and 2a).
[[nodiscard]] std::string opening_text(const bay::State& state, const bay::Aircraft& aircraft,
                                       const bay::Stage& stage, bay::Date day);
[[nodiscard]] std::string closing_text(const bay::State& state, const bay::Aircraft& aircraft,
                                       const bay::Stage& stage, bay::Date day);
[[nodiscard]] std::string quick_job_text(const bay::Aircraft& aircraft,
                                         const bay::QuickJobRecord& job);

/// The events that an entry about this stage (or quick job) reports.
[[nodiscard]] std::vector<std::string> events_about(const bay::State& state,
                                                    const bay::Aircraft& aircraft,
                                                    const std::string& about);

}  // namespace wm::desk
