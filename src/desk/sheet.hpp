#pragma once
/// The aircraft sheet: the plain-text description of one aircraft, to import and export.

#include "desk/act.hpp"

namespace wm::desk {

/// Sections of a sheet are the event payloads without the aircraft's name in every line.
struct SheetPosition {
  std::string id, name;
  bay::System system{bay::System::airframe};
  std::string chapter, area, redundant_with;
  std::optional<double> plan_x, plan_y;
  std::string note;
};
std::string_view describe(describe::Fields<SheetPosition>& f);

struct SheetJoint {
  std::string id, name, position, other_position;
  bay::JointKind kind{bay::JointKind::nut};
  std::optional<bay::Entered<bay::Torque>> torque_least, torque_most;
  std::string torque_table, locking;
  bool needs_second_person{};
};
std::string_view describe(describe::Fields<SheetJoint>& f);

/// An earlier time of a part in a position: it was taken out since.
struct SheetStay {
  std::string position;
  std::optional<bay::Date> fitted;
  std::vector<bay::CounterReading> at;
  std::optional<bay::Date> until_day;
  std::vector<bay::CounterReading> until;
  std::string reason;
};
std::string_view describe(describe::Fields<SheetStay>& f);

struct SheetPart {
  std::string id, type, description, serial, batch, maker_reference;
  std::optional<bay::Date> cured, assembled;
  std::string papers;
  std::optional<bay::Entered<bay::Mass>> mass;
  std::string note;
  std::string position;             ///< where it is installed; empty: on the shelf
  std::optional<bay::Date> fitted;  ///< unknown where not given
  std::vector<bay::CounterReading> at;
  std::vector<SheetStay> earlier;
};
std::string_view describe(describe::Fields<SheetPart>& f);

/// A meter that was exchanged: without it the total would start anew with the new meter.
struct SheetExchange {
  std::optional<bay::Date> on;
  std::optional<bay::Entered<bay::Duration>> old_last_hours, new_first_hours;
  std::optional<std::int64_t> old_last_count, new_first_count;
  std::string reason;
};
std::string_view describe(describe::Fields<SheetExchange>& f);

struct SheetCounter {
  std::string id, name;
  bay::CounterKind kind{bay::CounterKind::engine_hours};
  std::string meter;
  std::optional<bay::Date> read_on;
  std::optional<bay::Entered<bay::Duration>> hours;
  std::optional<std::int64_t> count;
  std::vector<SheetExchange> exchanges;
};
std::string_view describe(describe::Fields<SheetCounter>& f);

struct SheetLimit {
  std::string id, title, position, counter;
  std::optional<bay::Entered<bay::Duration>> every_hours;
  std::optional<std::int64_t> every_count, every_months;
  bay::MonthRule month_rule{bay::MonthRule::anniversary};
  std::optional<std::int64_t> every_days;
  bay::Combine which{bay::Combine::whichever_first};
  bool repeating{true};
  bay::CarryForward carry{bay::CarryForward::from_done};
  std::optional<bay::Entered<bay::Duration>> tolerance_hours;
  std::optional<std::int64_t> tolerance_days;
  bool on_condition{};
  bay::StartFrom start{bay::StartFrom::last_done};
  std::optional<bay::Date> since;
  std::optional<bay::CounterReading> since_counter;
  bay::Authority authority{bay::Authority::owners_choice};
  std::string document, revision;
};
std::string_view describe(describe::Fields<SheetLimit>& f);

struct SheetCheck {
  std::string id, title, position;
  bay::CheckKind kind{bay::CheckKind::other};
  std::string group;
  std::int64_t order{};
  std::string probes, procedure;
  std::optional<describe::AnyQuantity> lowest, highest;
  std::optional<bay::Entered<bay::Length>> length;
  std::optional<bay::Entered<bay::ResistancePerLength>> lowest_per_length, highest_per_length;
  std::optional<bay::Entered<bay::Resistance>> terminals;
  std::string unit;
  bay::Authority authority{bay::Authority::owners_choice};
  std::string document, revision;
};
std::string_view describe(describe::Fields<SheetCheck>& f);

struct SheetMass {
  bay::Entered<bay::Mass> empty_mass;
  bay::Entered<bay::Length> empty_arm;
  std::optional<bay::Entered<bay::Length>> forward_limit, aft_limit;
  std::optional<bay::Entered<bay::Mass>> greatest_mass;
  std::string document;
};
std::string_view describe(describe::Fields<SheetMass>& f);

struct AircraftSheet {
  bay::AircraftDescribed aircraft;
  std::optional<SheetMass> mass;
  std::vector<SheetCounter> counters;
  std::vector<SheetPosition> positions;
  std::vector<SheetJoint> joints;
  std::vector<SheetPart> parts;
  std::vector<SheetLimit> limits;
  std::vector<SheetCheck> checks;
};
std::string_view describe(describe::Fields<AircraftSheet>& f);

/// What an import did, or would do.
struct ImportAnswer {
  std::string words;
  std::string aircraft;
  std::int64_t added{}, changed{}, same{};
  std::vector<std::string> changes;  ///< "limit oil-change: changed"
};
std::string_view describe(describe::Fields<ImportAnswer>& f);

/// Take a sheet in, all or none. Into a filled binder it adds what is new and takes over what
/// is described differently; it removes nothing.
[[nodiscard]] Checked<Outcome<ImportAnswer>> import_sheet(const AircraftSheet& in,
                                                          const Desk& desk);

/// The sheet of an aircraft as the binder knows it.
[[nodiscard]] AircraftSheet sheet_of(const bay::State& state, const bay::Aircraft& aircraft);

/// What the binder knows of this aircraft and a sheet does not hold, one line each ("12 signed
/// entries"), for the top of the written sheet: nothing is left out in silence.
[[nodiscard]] std::vector<std::string> not_in_sheet(const bay::State& state,
                                                    const bay::Aircraft& aircraft);
/// The same as comment lines of the sheet; nothing where the sheet holds all.
[[nodiscard]] std::string sheet_preface(const bay::State& state, const std::string& aircraft);

}  // namespace wm::desk
