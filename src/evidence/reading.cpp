#include "evidence/reading.hpp"

#include <fmt/format.h>

namespace wm::evidence {

using quantity::per_cent;

std::string_view describe(describe::Fields<MeterRange>& f) {
  f.has<&MeterRange::name>("name", "Name of the range").example("60 kohm");
  f.has<&MeterRange::full_scale>("full_scale", "Largest value it can show").example("60 kohm");
  f.has<&MeterRange::resolution>("resolution", "One count of its last digit")
      .example("0.01 kohm")
      .help("Left out: the last digit of the reading as typed");
  f.has<&MeterRange::of_reading>("of_reading", "Accuracy: per cent of the reading")
      .example("0.9 %")
      .between(per_cent(0), per_cent(50));
  f.has<&MeterRange::counts>("counts", "Accuracy: counts of the last digit")
      .example("2")
      .between(0, 10000);
  f.has<&MeterRange::of_full_scale>("of_full_scale", "Accuracy: per cent of full scale")
      .help("Pointer instruments and gauges")
      .between(per_cent(0), per_cent(50));
  return "meter-range";
}

bool accuracy_given(const MeterRange& range) {
  return range.of_reading.si > 0.0 || range.counts > 0 || range.of_full_scale.si > 0.0;
}

std::string_view describe(describe::Choices<TestLeads>& c) {
  c.has(TestLeads::not_stated, "not-stated", "not stated");
  c.has(TestLeads::nulled, "nulled", "nulled on the meter");
  c.has(TestLeads::not_nulled, "not-nulled", "in the reading");
  c.has(TestLeads::four_wire, "four-wire", "four wires: not in the reading");
  return "test-leads";
}

std::string_view describe(describe::Fields<Instrument>& f) {
  f.has<&Instrument::id>("id", "Identity, as marked on it").needed("DMM-1").unique();
  f.has<&Instrument::name>("name", "What it is").example("multimeter");
  f.has<&Instrument::calibrated>("calibrated", "Last calibrated on").example("2026-03-01");
  f.has<&Instrument::calibration_due>("calibration_due", "Calibration good until")
      .example("2027-03-01");
  f.has<&Instrument::certificate>("certificate", "Certificate").example("C-1041");
  f.has<&Instrument::ranges>("ranges", "Ranges, each with its accuracy");
  return "instrument";
}

Result<MeterRange> range_of(const Instrument& instrument, std::string_view name) {
  std::string names;
  for (const auto& range : instrument.ranges) {
    if (range.name == name) return range;
    names += (names.empty() ? "" : ", ") + range.name;
  }
  return Fail(Kind::not_found,
              fmt::format("instrument {} has no range `{}`", instrument.id, name.substr(0, 60)),
              names.empty() ? "its ranges are not entered yet" : "one of " + names);
}

std::string_view describe(describe::Choices<CalibrationState>& c) {
  c.has(CalibrationState::unknown, "unknown", "calibration unknown");
  c.has(CalibrationState::in_date, "in-date", "calibration in date");
  c.has(CalibrationState::past_due, "past-due", "calibration past due");
  c.has(CalibrationState::not_yet, "not-yet", "taken before the calibration on file");
  return "calibration-state";
}

CalibrationState calibration_on(const Instrument& instrument, quantity::Date day) {
  if (instrument.calibration_due && day > *instrument.calibration_due)
    return CalibrationState::past_due;
  if (instrument.calibrated && day < *instrument.calibrated) return CalibrationState::not_yet;
  if (!instrument.calibration_due) return CalibrationState::unknown;
  return CalibrationState::in_date;
}

std::string_view describe(describe::Fields<Reading>& f) {
  f.has<&Reading::value>("value", "Reading, with its unit").example("15.6 kohm");
  f.has<&Reading::over_range>("over_range", "The display showed overload or open");
  f.has<&Reading::repeats>("repeats", "Further readings, each taken afresh").example("15.7 kohm");
  f.has<&Reading::instrument>("instrument", "Instrument").example("DMM-1").refers_to("instrument");
  f.has<&Reading::range>("range", "Range used").example("60 kohm");
  f.has<&Reading::leads>("leads", "Resistance of the test leads");
  f.has<&Reading::taken_on>("taken_on", "Taken on").example("2026-11-25");
  f.has<&Reading::by>("by", "Taken by").example("the owner");
  return "reading";
}

std::vector<InDoubt> readings_in_doubt(std::span<const TakenReading> readings,
                                       std::string_view instrument,
                                       std::optional<quantity::Date> last_known_good,
                                       std::optional<quantity::Date> good_again) {
  std::vector<InDoubt> out;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const auto& r = readings[i];
    if (r.instrument != instrument) continue;
    if (!r.taken_on) {
      out.push_back({i, "no date: it may have been taken while the instrument was bad"});
      continue;
    }
    if (last_known_good && *r.taken_on < *last_known_good) continue;
    if (good_again && *r.taken_on > *good_again) continue;
    if (!last_known_good)
      out.push_back({i, "the instrument was never shown to be good"});
    else if (*r.taken_on == *last_known_good)
      out.push_back({i,
                     "taken on the last day it was known to be good: before or after is not "
                     "recorded"});
    else
      out.push_back({i, "taken after the instrument was last known to be good, on " +
                            quantity::print_date(*last_known_good)});
  }
  return out;
}

}  // namespace wm::evidence
