#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"

namespace wm::desk {

Checked<Outcome<Judged>> measure(const bay::ReadingTaken& in, const Desk& desk) {
  if (!in.value && !in.over_range) {
    return Fail(Problems{{Kind::missing,
                          "value",
                          "nothing was read",
                          "a reading, or over range",
                          "7.9 kohm",
                          {},
                          {}}});
  }
  // Judged as on the day of the reading: a calibration that ran out later does not count.
  auto then = desk.context;
  then.today = desk.day();
  auto judged = judge(in, desk.state, then);
  if (!judged) return Fail(judged.error());
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& check = aircraft.checks.find(in.check)->second;
  const auto part = aircraft.fitted.find(check.about.position);
  auto fact = as_fact(*judged, in, part == aircraft.fitted.end() ? "" : part->second);
  return Outcome<Judged>{{{in, {}}, {std::move(fact), "#0"}}, std::move(*judged)};
}

Simple instrument_found_bad(const bay::InstrumentFoundBad& in, const Desk& desk) {
  std::vector<evidence::TakenReading> taken;
  std::vector<std::string> titles;
  for (const auto& [aircraft_id, aircraft] : desk.state.aircraft) {
    for (const auto& id : aircraft.check_order) {
      const auto& check = aircraft.checks.find(id)->second;
      for (const auto& r : check.readings) {
        taken.push_back({r.event, r.reading.instrument, r.day});
        titles.push_back(fmt::format("{}, {}: {}", aircraft.about.name, check.about.title,
                                     quantity::print_date(r.day)));
      }
    }
  }
  Said said{desk.state.instruments.find(in.instrument)->second.about.name + " marked as found bad.",
            in.instrument,
            {}};
  for (const auto& doubt : evidence::readings_in_doubt(taken, in.instrument, in.last_known_good)) {
    said.notes.push_back("In doubt: " + titles[doubt.index] + ". " + doubt.why);
  }
  if (said.notes.empty()) said.notes.push_back("No reading in the record was taken with it since.");
  return Outcome<Said>{{{in, {}}}, std::move(said)};
}

}  // namespace wm::desk
