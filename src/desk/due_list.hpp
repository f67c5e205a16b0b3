#pragma once
/// What is due, by when, and how sure.

#include "bay/state.hpp"
#include "describe/catalogue.hpp"
#include "life/due.hpp"
#include "life/forecast.hpp"

namespace wm::desk {

struct DueRow {
  std::string id, title, position, position_name, part;
  std::string standing;  ///< valid, in-tolerance, past-limit, unknown, on-condition
  std::optional<double> used;
  std::string figure;  ///< "64 of 60 months", "26.0 of 50 h"
  std::string detail;  ///< "cured 2021-07-01", "last done 2026-03-14"
  std::string due;   ///< "2027-06-30", "1165.0 h", "1165.0 h or 2027-06-30, whichever comes first"
  std::string left;  ///< "24.4 h", "217 days"
  std::optional<quantity::Date> due_on;  ///< by the calendar
  std::optional<quantity::Date> expected, early,
      late;  ///< hours and calendar together; 1 in 10 before, after
  std::string how_sure;
  std::string authority, document;
  bool binding{};  ///< law or maker, mandatory
  std::string why_unknown;
};
std::string_view describe(describe::Fields<DueRow>& f);

/// How the aircraft has been flown, from its hours counter: nothing where there is too little.
[[nodiscard]] std::optional<life::Flying> flying_of(const bay::Aircraft& aircraft,
                                                    quantity::Date today);

/// A limit of the record in the words of the life room.
[[nodiscard]] life::Limit as_life(const bay::Aircraft& aircraft, const bay::LimitSet& limit);
/// Where a limit counts from today: fitting, cure date, or the last time it was done. A part
/// that moved keeps its own time.
[[nodiscard]] life::Mark start_of(const bay::State& state, const bay::Aircraft& aircraft,
                                  const bay::LimitRecord& record, const life::Limit& limit);
[[nodiscard]] life::Mark now_of(const bay::Aircraft& aircraft, quantity::Date today);

/// @param flying  Nothing: no forecasts.
[[nodiscard]] DueRow due_row(const bay::State& state, const bay::Aircraft& aircraft,
                             const bay::LimitRecord& record, const life::Mark& now,
                             const std::optional<life::Flying>& flying);

/// Every limit, past ones first, then unknown, then by share used.
[[nodiscard]] std::vector<DueRow> due_rows(const bay::State& state, const bay::Aircraft& aircraft,
                                           const describe::Context& context);

}  // namespace wm::desk
