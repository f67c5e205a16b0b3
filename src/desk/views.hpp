#pragma once
/// Described looks at the record, one struct a page.

#include "desk/act.hpp"
#include "desk/acts.hpp"
#include "desk/due_list.hpp"
#include "desk/part_evidence.hpp"
#include "desk/sheet.hpp"
#include "desk/stage_state.hpp"

namespace wm::desk {

struct Nothing {};
std::string_view describe(describe::Fields<Nothing>& f);

struct OfAircraft {
  std::string aircraft;
};
std::string_view describe(describe::Fields<OfAircraft>& f);

struct AircraftLine {
  std::string id, name, registration, engine_hours;
};
std::string_view describe(describe::Fields<AircraftLine>& f);
struct AircraftList {
  std::vector<AircraftLine> aircraft;
};
std::string_view describe(describe::Fields<AircraftList>& f);

/// What stands on every page about the aircraft.
struct Header {
  std::string aircraft, name, registration;
  std::string engine_hours;
  bool cowl_closed{};
  std::int64_t open_joints{}, bungs{}, open_defects{}, grounding_defects{};
  std::vector<std::string> flight_due;  ///< titles of stages that are open
};
std::string_view describe(describe::Fields<Header>& f);

/// One stripe: a limit or a check.
struct Mark {
  std::string id, title, position;
  std::string of;        ///< "limit" or "check"
  std::string standing;  ///< valid, in-tolerance, past-limit, unknown, on-condition, conforms,
                         ///< does-not-conform, undecided, not-tested
  std::optional<double> used;         ///< allowance used, 1 = at the limit
  std::optional<double> uncertainty;  ///< of `used`, same share
  std::string figure;                 ///< "64 of 60 months"
  std::string detail;                 ///< "cured 2021-07-01"
  std::string trend;                  ///< "drifting: +0.4 kohm a year"
  std::string limit;                  ///< limit with its source
};
std::string_view describe(describe::Fields<Mark>& f);

struct PlanSpot {
  std::string position, name, system;
  double x{}, y{};
  std::string part;
  std::string standing;  ///< the worst of its marks; "" without any
  std::optional<double> used;
};
std::string_view describe(describe::Fields<PlanSpot>& f);

struct JointLine {
  std::string id, name, position, kind, state;
  std::int64_t number{};  ///< on the list of open joints, 0 when closed
  bool closed{};
  std::string torque, torque_limits, torque_table, by, since, needs;
};
std::string_view describe(describe::Fields<JointLine>& f);

struct DefectLine {
  std::string id, text, position, happened, decision, reason, until;
  bool closed{};
  std::string how;
  std::vector<std::string> photos;
};
std::string_view describe(describe::Fields<DefectLine>& f);

struct BungLine {
  std::string id, where, since;
};
std::string_view describe(describe::Fields<BungLine>& f);

struct BayPage {
  Header header;
  std::int64_t past_limit{}, doubtful{}, unknown{}, within{};
  std::vector<Mark> marks;  ///< most used first
  std::vector<PlanSpot> plan;
  std::vector<DueRow> ahead;  ///< by the day on which it falls
  std::vector<JointLine> open_joints;
  std::vector<BungLine> bungs;
  std::vector<DefectLine> defects;  ///< open ones
  std::vector<std::string> oddities;
};
std::string_view describe(describe::Fields<BayPage>& f);

struct DuePage {
  Header header;
  std::vector<DueRow> rows;
  std::int64_t past_limit{}, unknown{};
};
std::string_view describe(describe::Fields<DuePage>& f);

struct ChangeLine {
  std::string id, title, position, position_name, system, grade, kind, stage,
      state;  ///< planned, done, withdrawn
  std::string new_part, document, note;
  std::vector<std::string> joints, after, together;
};
std::string_view describe(describe::Fields<ChangeLine>& f);

struct StepLine {
  std::string stage, step, label, result, happened, text, by, air, flight_time;
  std::vector<std::string> readings;
  std::string event;
};
std::string_view describe(describe::Fields<StepLine>& f);

struct StageLine {
  std::string id, title, state, state_label, reason;
  bool ground_only{};
  std::vector<std::string> changes;
  std::vector<StageObjection> objections;
  std::vector<Missing> missing_to_open, missing_to_close;
  std::vector<StepLine> steps;
  std::vector<bay::AbortValue> abort_values;
  std::vector<std::string> entries;
  std::string mass;
  std::string next;  ///< the next thing to do, in words
};
std::string_view describe(describe::Fields<StageLine>& f);

/// A hose as drawn and proved.
struct HoseLine {
  std::string id, title, position, change, family, size;
  std::string near_at, far_at;
  std::string overall, tightest_radius, least_radius, clocking, binding;
  std::string drawn;    ///< when
  std::string verdict;  ///< of its last proof test; not-tested before
  std::string proof;    ///< "conforms: 4000 psi, 5 min, water, 2026-11-25"
  bool drawn_since{};   ///< drawn anew since that proof
  std::string event;    ///< of the drawing
};
std::string_view describe(describe::Fields<HoseLine>& f);

struct WorkPage {
  Header header;
  std::vector<ChangeLine> changes;
  std::vector<StageLine> stages;
  std::vector<JointLine> joints;
  std::vector<BungLine> bungs;
  std::vector<HoseLine> hoses;
};
std::string_view describe(describe::Fields<WorkPage>& f);

struct CheckLine {
  std::string id, title, position, kind, unit, probes, procedure;
  std::string lowest, highest, limit_source;
  std::string last, last_when, last_words, last_event;
  std::string verdict;  ///< of the latest reading, not-tested without one
  std::optional<double> used;
  std::optional<double> lowest_number, highest_number, last_number;  ///< in the check's unit
  std::string among;  ///< its latest reading among those of its siblings; never a verdict
  bool stands_out{};
  std::string not_tested;   ///< what a conforming reading leaves open
  std::string calculation;  ///< which one goes further, by its name in the catalogue
  std::string caution;      ///< to be read before it is begun; may be empty
};
std::string_view describe(describe::Fields<CheckLine>& f);
struct CheckGroup {
  std::string id, title;
  std::vector<CheckLine> checks;
};
std::string_view describe(describe::Fields<CheckGroup>& f);
struct InstrumentLine {
  std::string id, name, serial, calibrated, calibration_due, state, found_bad;
  std::vector<std::string> ranges;
  std::vector<std::string> range_accuracy;
};
std::string_view describe(describe::Fields<InstrumentLine>& f);
struct MeasurePage {
  Header header;
  std::vector<CheckGroup> groups;
  std::vector<InstrumentLine> instruments;
};
std::string_view describe(describe::Fields<MeasurePage>& f);

/// What stands at the top of every page, for all aircraft; cheap, asked often.
struct FrontPage {
  std::vector<Header> aircraft;
  quantity::Date today{};
};
std::string_view describe(describe::Fields<FrontPage>& f);

/// What a field that names something may be filled with.
struct ChoicesWanted {
  std::string of;  ///< the word of `refers_to`: position, part, joint, ...
  std::string aircraft;
};
std::string_view describe(describe::Fields<ChoicesWanted>& f);
struct NamedChoice {
  std::string value, label, note;
};
std::string_view describe(describe::Fields<NamedChoice>& f);
struct NamedChoices {
  std::vector<NamedChoice> choices;
};
std::string_view describe(describe::Fields<NamedChoices>& f);

struct OfCheck {
  std::string aircraft, check;
};
std::string_view describe(describe::Fields<OfCheck>& f);
struct ReadingPoint {
  std::string event, day, part, value, verdict, words, instrument, range;
  std::optional<double> number;       ///< in the check's unit
  std::optional<double> uncertainty;  ///< expanded, same unit
  std::optional<double> engine_hours;
  bool corrected{};
};
std::string_view describe(describe::Fields<ReadingPoint>& f);
/// A line through readings, for the plot: engine hours where every reading has them, else days
/// since the first; values in the check's unit.
struct PlotLine {
  double from_at{}, to_at{}, from_value{}, to_value{};
};
std::string_view describe(describe::Fields<PlotLine>& f);
struct CheckHistory {
  CheckLine check;
  std::optional<double> lowest, highest;  ///< in the check's unit
  std::vector<ReadingPoint> points;
  std::string trend;                     ///< the first of the lines
  std::vector<std::string> trend_lines;  ///< drifts, steps, when a limit would be met
  std::vector<std::string> trend_notes;
  std::optional<PlotLine> line;  ///< through the readings of the part that is fitted
};
std::string_view describe(describe::Fields<CheckHistory>& f);

struct JointsPage {
  Header header;
  std::vector<JointLine> joints;
  std::vector<BungLine> bungs;
};
std::string_view describe(describe::Fields<JointsPage>& f);

struct RunsPage {
  Header header;
  std::vector<StageLine> stages;
};
std::string_view describe(describe::Fields<RunsPage>& f);

struct EntryLine {
  std::string id, about, purpose, text, name, signer, certificate, happened, event;
  std::int64_t sequence{};
  bool amended_after_signature{};
};
std::string_view describe(describe::Fields<EntryLine>& f);
struct EntriesPage {
  Header header;
  std::vector<EntryLine> entries;
};
std::string_view describe(describe::Fields<EntriesPage>& f);

struct DraftWanted {
  std::string aircraft, about;
  bay::EntryPurpose purpose{bay::EntryPurpose::opens_stage};
};
std::string_view describe(describe::Fields<DraftWanted>& f);
struct Draft {
  std::string text;
  std::vector<Missing> missing;
  std::vector<std::string> unsigned_notes;
};
std::string_view describe(describe::Fields<Draft>& f);

struct HistoryWanted {
  std::string aircraft;                ///< empty: the whole binder
  std::string about;                   ///< only what mentions this short name
  std::optional<std::int64_t> before;  ///< sequence number
  std::int64_t most{50};
};
std::string_view describe(describe::Fields<HistoryWanted>& f);
struct HistoryLine {
  std::int64_t sequence{};
  std::string event, kind, kind_label, happened, recorded, author, words, refers_to;
  bool corrected{};
  std::string corrected_words, correction_reason;
};
std::string_view describe(describe::Fields<HistoryLine>& f);
struct HistoryPage {
  std::vector<HistoryLine> lines;
  bool more{};
};
std::string_view describe(describe::Fields<HistoryPage>& f);

struct OfPosition {
  std::string aircraft, position;
};
std::string_view describe(describe::Fields<OfPosition>& f);
struct InstallationLine {
  std::string part, description, serial, cured, assembled, from, to, hours, why_removed;
};
std::string_view describe(describe::Fields<InstallationLine>& f);
struct PositionPage {
  std::string id, name, system, chapter, area, redundant_with, note;
  std::vector<InstallationLine> installations;  ///< newest first
  std::vector<DueRow> limits;
  std::vector<CheckLine> checks;
  std::vector<JointLine> joints;
  std::vector<DefectLine> defects;
};
std::string_view describe(describe::Fields<PositionPage>& f);

/// Every part that sits in a position, those that the record asks most for first.
struct DecidePage {
  Header header;
  std::vector<PartEvidence> parts;
  std::int64_t renew{}, watch{}, leave{};
};
std::string_view describe(describe::Fields<DecidePage>& f);

struct OfHose {
  std::string aircraft, hose;
};
std::string_view describe(describe::Fields<OfHose>& f);
struct ProofLine {
  std::string day, verdict, words, pressure, pressure_from, held, medium, by, part, assembled, note;
  std::vector<std::string> criteria;
  std::string test;  ///< what was entered, as JSON
  bool of_this_drawing{};
};
std::string_view describe(describe::Fields<ProofLine>& f);
struct HosePage {
  HoseLine hose;
  std::string clocking_read, working_pressure, proof_pressure, note;
  std::vector<std::string> lines;
  std::string sheet;              ///< what it was drawn from, as JSON
  std::vector<ProofLine> proofs;  ///< newest first
};
std::string_view describe(describe::Fields<HosePage>& f);

struct InstrumentsPage {
  std::vector<InstrumentLine> instruments;
};
std::string_view describe(describe::Fields<InstrumentsPage>& f);

using describe::Context;
[[nodiscard]] Checked<AircraftList> aircraft_list(const Nothing&, const bay::State&,
                                                  const Context&);
[[nodiscard]] Checked<FrontPage> front_page(const Nothing&, const bay::State&, const Context&);
[[nodiscard]] Checked<NamedChoices> named_choices(const ChoicesWanted&, const bay::State&,
                                                  const Context&);
[[nodiscard]] Checked<BayPage> bay_page(const OfAircraft&, const bay::State&, const Context&);
[[nodiscard]] Checked<DuePage> due_page(const OfAircraft&, const bay::State&, const Context&);
[[nodiscard]] Checked<WorkPage> work_page(const OfAircraft&, const bay::State&, const Context&);
[[nodiscard]] Checked<MeasurePage> measure_page(const OfAircraft&, const bay::State&,
                                                const Context&);
[[nodiscard]] Checked<Judged> judge_reading(const bay::ReadingTaken&, const bay::State&,
                                            const Context&);
[[nodiscard]] Checked<CheckHistory> check_history(const OfCheck&, const bay::State&,
                                                  const Context&);
[[nodiscard]] Checked<JointsPage> joints_page(const OfAircraft&, const bay::State&, const Context&);
[[nodiscard]] Checked<RunsPage> runs_page(const OfAircraft&, const bay::State&, const Context&);
[[nodiscard]] Checked<EntriesPage> entries_page(const OfAircraft&, const bay::State&,
                                                const Context&);
[[nodiscard]] Checked<Draft> entry_draft(const DraftWanted&, const bay::State&, const Context&);
[[nodiscard]] Checked<HistoryPage> history(const HistoryWanted&, const bay::State&, const Context&);
[[nodiscard]] Checked<PositionPage> position_page(const OfPosition&, const bay::State&,
                                                  const Context&);
[[nodiscard]] Checked<DecidePage> decide_page(const OfAircraft&, const bay::State&, const Context&);
[[nodiscard]] Checked<PartEvidence> evidence_of(const OfPosition&, const bay::State&,
                                                const Context&);
[[nodiscard]] Checked<HosePage> hose_page(const OfHose&, const bay::State&, const Context&);
[[nodiscard]] Checked<InstrumentsPage> instruments_page(const Nothing&, const bay::State&,
                                                        const Context&);
[[nodiscard]] Checked<AircraftSheet> export_sheet(const OfAircraft&, const bay::State&,
                                                  const Context&);

// Pieces that several pages share.
[[nodiscard]] Header header_of(const bay::Aircraft& aircraft);
[[nodiscard]] JointLine joint_line(const bay::JointRecord& joint, const bay::State& state);
[[nodiscard]] CheckLine check_line(const bay::CheckRecord& check);
[[nodiscard]] StageLine stage_line(const bay::Aircraft& aircraft, const bay::Stage& stage);
[[nodiscard]] StepLine step_line(const bay::StepRecord& step);
[[nodiscard]] HoseLine hose_line(const bay::HoseRecord& hose);
[[nodiscard]] DefectLine defect_line(const bay::Defect& defect);
[[nodiscard]] std::vector<BungLine> bung_lines(const bay::Aircraft& aircraft);
[[nodiscard]] InstrumentLine instrument_line(const bay::Instrument& instrument,
                                             quantity::Date today);
/// One sentence about an event.
[[nodiscard]] std::string in_words(const bay::Payload& payload);

}  // namespace wm::desk
