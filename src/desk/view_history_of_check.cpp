// One check over hours and calendar: its readings and what they tell together.
#include "desk/lookup.hpp"
#include "desk/trend_of.hpp"
#include "desk/views.hpp"

namespace wm::desk {
namespace {

/// The values that can be drawn, in the unit in which the check is read.
evidence::ReadingTrendInput asked(const bay::CheckRecord& check, const CheckLimits& limits) {
  evidence::ReadingTrendInput out;
  out.lowest = limits.lowest;
  out.highest = limits.highest;
  out.limit_source = limit_source(check.about);
  for (const auto& r : check.readings) {
    if (!r.reading.value || r.reading.over_range) continue;
    evidence::TrendReading one;
    one.day = r.day;
    if (r.engine_hours) one.hours = {quantity::hours(*r.engine_hours), 0.0, {}};
    one.value = *r.reading.value;
    one.value.text = say(one.value, check.about.unit);
    one.part = r.part;
    out.readings.push_back(std::move(one));
  }
  return out;
}

void add_trend(CheckHistory& out, const bay::CheckRecord& check, const Context& context) {
  const auto told = trend_of(check, context);
  if (!told) return;
  out.trend_lines = told->lines;
  out.trend_notes = told->notes;
  if (!told->lines.empty()) out.trend = told->lines.front();
  if (told->line)
    out.line = PlotLine{told->line->from_at, told->line->to_at, told->line->from_value,
                        told->line->to_value};
}

}  // namespace

std::optional<evidence::ReadingTrendAnswer> trend_of(const bay::CheckRecord& check,
                                                     const Context& context) {
  const auto in = asked(check, limits_of(check.about));
  if (in.readings.size() < 2) return std::nullopt;
  auto told = evidence::reading_trend(in, context);
  // Readings of another kind than their limits: the plot says enough.
  if (!told) return std::nullopt;
  return std::move(*told);
}

Checked<CheckHistory> check_history(const OfCheck& in, const bay::State& state,
                                    const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  const auto& check = aircraft.checks.find(in.check)->second;
  const auto limits = limits_of(check.about);
  CheckHistory out;
  out.check = check_line(check);
  const auto in_unit = [&](const describe::AnyQuantity& v) {
    const auto* unit = quantity::find_unit(v.kind, check.about.unit);
    if (unit == nullptr) unit = &quantity::default_unit(v.kind, quantity::UnitSet::us_customary);
    return (v.si - unit->offset) / unit->factor;
  };
  const auto width_in_unit = [&](const describe::AnyQuantity& v) {
    const auto* unit = quantity::find_unit(v.kind, check.about.unit);
    if (unit == nullptr) unit = &quantity::default_unit(v.kind, quantity::UnitSet::us_customary);
    return *v.expanded_si / unit->factor;
  };
  if (limits.lowest) out.lowest = in_unit(*limits.lowest);
  if (limits.highest) out.highest = in_unit(*limits.highest);
  for (const auto& r : check.readings) {
    ReadingPoint point{r.event,
                       quantity::print_date(r.day),
                       r.part,
                       {},
                       "not-tested",
                       {},
                       r.reading.instrument,
                       r.reading.range,
                       {},
                       {},
                       r.engine_hours,
                       r.corrected};
    point.value = r.reading.over_range ? "over range"
                  : r.reading.value    ? say(*r.reading.value, check.about.unit)
                                       : "";
    if (r.reading.value) point.number = in_unit(*r.reading.value);
    if (r.verdict) {
      point.verdict = evidence::word(r.verdict->verdict);
      point.words = r.verdict->words;
      if (r.verdict->value && r.verdict->value->expanded_si)
        point.uncertainty = width_in_unit(*r.verdict->value);
    }
    out.points.push_back(std::move(point));
  }
  add_trend(out, check, context);
  return out;
}

std::string_view describe(describe::Fields<PlotLine>& f) {
  f.has<&PlotLine::from_at>("from_at", "From");
  f.has<&PlotLine::to_at>("to_at", "To");
  f.has<&PlotLine::from_value>("from_value", "Value there");
  f.has<&PlotLine::to_value>("to_value", "Value at the end");
  return "plot-line";
}

}  // namespace wm::desk
