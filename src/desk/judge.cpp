#include "desk/judge.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "desk/check_kinds.hpp"
#include "desk/lookup.hpp"
#include "quantity/text.hpp"

namespace wm::desk {
namespace {

evidence::Instrument as_evidence(const bay::InstrumentRegistered& in) {
  evidence::Instrument out;
  out.id = in.id;
  out.name = in.name;
  out.calibrated = in.calibrated;
  out.calibration_due = in.calibration_due;
  out.ranges = in.ranges;
  return out;
}

evidence::Reading as_evidence(const bay::ReadingTaken& in) {
  evidence::Reading out;
  out.value = in.value;
  out.over_range = in.over_range;
  out.repeats = in.repeats;
  out.instrument = in.instrument;
  out.range = in.range;
  out.leads = in.leads;
  return out;
}

describe::AnyQuantity resistance(double si, double resolution) {
  return {quantity::KindOf::resistance, si, resolution, {}, {}};
}

/// What the instrument's papers say against using it, for a person to weigh.
std::string instrument_note(const bay::Instrument& instrument, const describe::Context& context) {
  if (instrument.bad)
    return fmt::format("{} was found bad: {}.", instrument.about.name, instrument.bad->why);
  switch (evidence::calibration_on(as_evidence(instrument.about), context.today)) {
    case evidence::CalibrationState::past_due:
      return fmt::format("Calibration of {} is past due.", instrument.about.name);
    case evidence::CalibrationState::unknown:
      return fmt::format("Calibration of {} is unknown.", instrument.about.name);
    default:
      return {};
  }
}

void add_history(Judged& out, const bay::CheckRecord& check, const bay::Aircraft& aircraft) {
  const auto& unit = check.about.unit;
  if (const auto* last = check.latest(); last != nullptr) {
    out.last_time = last->reading.over_range ? "over range"
                    : last->reading.value    ? say(*last->reading.value, unit)
                                             : "not tested";
    out.last_time +=
        last->engine_hours
            ? fmt::format(" at {}", life::say(*last->engine_hours, life::CountUnit::hours))
            : fmt::format(" on {}", quantity::print_date(last->day));
  }
  if (check.about.group.empty()) return;
  std::optional<describe::AnyQuantity> least, most;
  for (const auto& id : aircraft.check_order) {
    const auto& other = aircraft.checks.find(id)->second;
    if (id == check.about.id || other.about.group != check.about.group) continue;
    const auto* latest = other.latest();
    if (latest == nullptr) {
      out.sibling_readings.push_back({id, other.about.title, "", "not-tested"});
      continue;
    }
    const auto verdict =
        latest->verdict ? std::string(evidence::word(latest->verdict->verdict)) : "";
    out.sibling_readings.push_back(
        {id, other.about.title,
         latest->reading.value ? say(*latest->reading.value, unit) : "over range", verdict});
    if (!latest->reading.value) continue;
    const auto& value = *latest->reading.value;
    if (!least || value.si < least->si) least = value;
    if (!most || value.si > most->si) most = value;
  }
  if (least && most) out.siblings = fmt::format("{} to {}", say(*least, unit), say(*most, unit));
}

std::string joined(const std::vector<evidence::NextStep>& steps) {
  std::string out;
  for (const auto step : steps)
    out += (out.empty() ? "" : "; ") + std::string(evidence::words(step));
  return out;
}

/// The kind a check is read in: that of its limits, or of the unit people read it in.
std::optional<quantity::KindOf> kind_of(const CheckLimits& limits, const std::string& unit) {
  if (limits.highest) return limits.highest->kind;
  if (limits.lowest) return limits.lowest->kind;
  for (const auto& info : quantity::all_kinds()) {
    if (!unit.empty() && quantity::find_unit(info.kind, unit) != nullptr) return info.kind;
  }
  return std::nullopt;
}

/// A reading of another kind than the check asks for: the reading is to blame, not the limit.
Problems wrong_kinds(const bay::ReadingTaken& reading, const CheckLimits& limits,
                     const std::string& unit) {
  Problems problems;
  const auto wanted = kind_of(limits, unit);
  if (!wanted) return problems;
  const bool has_limit = limits.highest || limits.lowest;
  const auto& needed = quantity::info(*wanted);
  const auto blame = [&](const describe::AnyQuantity& value, std::string path) {
    // A unit alone may serve several kinds: psi is a gauge or an absolute pressure.
    const bool fits =
        value.kind == *wanted || (!has_limit && quantity::find_unit(value.kind, unit) != nullptr);
    if (fits) return;
    problems.push_back({Kind::wrong_dimension,
                        std::move(path),
                        fmt::format("`{}` is {}, {} is needed", value.text,
                                    quantity::info(value.kind).words, needed.words),
                        std::string(needed.words),
                        std::string(needed.example),
                        {},
                        {}});
  };
  if (reading.value) blame(*reading.value, "value");
  for (std::size_t i = 0; i < reading.repeats.size(); ++i)
    blame(reading.repeats[i], fmt::format("repeats/{}", i));
  return problems;
}

/// A drop has a size; its sign says only which way round the probes were.
bool turn_drops(bay::ReadingTaken& reading, bay::CheckKind kind) {
  if (!is_drop(kind)) return false;
  bool turned = false;
  const auto turn = [&](describe::AnyQuantity& value) {
    if (value.kind != quantity::KindOf::voltage || value.si >= 0.0) return;
    value.si = -value.si;
    value.text.clear();
    turned = true;
  };
  if (reading.value) turn(*reading.value);
  std::ranges::for_each(reading.repeats, turn);
  return turned;
}

constexpr double k_digits_below_nought = 5.0;  // what a nulled meter may show: common practice

/// A meter that was not nulled shows less than nothing.
Problems negative_resistances(const bay::ReadingTaken& reading) {
  Problems problems;
  const auto look = [&](const describe::AnyQuantity& value, std::string path) {
    if (value.kind != quantity::KindOf::resistance) return;
    if (value.si >= -k_digits_below_nought * value.resolution_si) return;
    problems.push_back(
        {Kind::out_of_bounds,
         std::move(path),
         fmt::format("`{}`: a resistance is not negative", value.text),
         "a resistance of 0 or more",
         "85.2 ohm",
         "null the meter with its probes together, take power off the circuit, then read again",
         {}});
  };
  if (reading.value) look(*reading.value, "value");
  for (std::size_t i = 0; i < reading.repeats.size(); ++i)
    look(reading.repeats[i], fmt::format("repeats/{}", i));
  return problems;
}

/// Where no document gives a limit: nothing is judged, what there is is shown.
Judged without_limit(const bay::ReadingTaken& reading) {
  Judged out;
  out.verdict = evidence::Verdict::not_tested;
  out.words = "not tested";
  out.reason =
      "No limit was entered for this check: the reading is kept, and shown beside its "
      "siblings and its own earlier readings, but not judged.";
  out.next = "Enter the maker's limit with its document when you have it.";
  out.value = reading.value;
  if (reading.over_range) out.reason = "Over range: open, or beyond this range. " + out.reason;
  return out;
}

}  // namespace

std::string say(const describe::AnyQuantity& value, const std::string& unit) {
  const auto* found = unit.empty() ? nullptr : quantity::find_unit(value.kind, unit);
  if (found == nullptr) {
    if (!value.text.empty()) return value.text;
    found = &quantity::default_unit(value.kind, quantity::UnitSet::us_customary);
  }
  return quantity::print(value.si, *found, value.resolution_si);
}

std::string limit_source(const bay::CheckDescribed& check) {
  std::string out = check.document.empty() ? "document unknown" : check.document;
  if (!check.revision.empty()) out += ", " + check.revision;
  return out + fmt::format(" ({})", bay::label(check.authority));
}

CheckLimits limits_of(const bay::CheckDescribed& check) {
  CheckLimits out{check.lowest, check.highest, {}};
  if (!check.length) return out;
  const double terminals = check.terminals ? check.terminals->value.si : 0.0;
  const auto by_length = [&](const auto& per_length, const char* which) {
    const double ohms = per_length->value.si * check.length->value.si + terminals;
    // No finer than the coarser of the two figures it is made from.
    const double share = std::max(per_length->resolution_si / per_length->value.si,
                                  check.length->resolution_si / check.length->value.si);
    const double resolution = std::isfinite(share) && share > 0 ? ohms * share / 2 : 0;
    out.working.push_back(fmt::format("{} = {} x {}{} = {}", which, check.length->text,
                                      per_length->text,
                                      check.terminals ? " + " + check.terminals->text : "",
                                      say(resistance(ohms, resolution), check.unit)));
    return resistance(ohms, resolution);
  };
  if (!out.lowest && check.lowest_per_length)
    out.lowest = by_length(check.lowest_per_length, "lowest");
  if (!out.highest && check.highest_per_length) {
    out.highest = by_length(check.highest_per_length, "highest");
  }
  return out;
}

Checked<Judged> judge(const bay::ReadingTaken& as_entered, const bay::State& state,
                      const describe::Context& context) {
  const auto& aircraft = aircraft_of(state, as_entered.aircraft);
  const auto& check = aircraft.checks.find(as_entered.check)->second;
  bay::ReadingTaken reading = as_entered;
  const bool turned = turn_drops(reading, check.about.kind);
  if (reading.value && reading.over_range) {
    return Fail(Problems{
        problem(Kind::conflict, "value", "a reading is either a value or over range, not both")});
  }
  const auto limits = limits_of(check.about);
  if (auto problems = wrong_kinds(reading, limits, check.about.unit); !problems.empty())
    return Fail(std::move(problems));
  if (auto problems = negative_resistances(reading); !problems.empty())
    return Fail(std::move(problems));
  Judged out;
  const auto instrument = state.instruments.find(reading.instrument);
  if (!limits.lowest && !limits.highest) {
    out = without_limit(reading);
  } else {
    std::optional<evidence::Instrument> papers;
    if (instrument != state.instruments.end()) papers = as_evidence(instrument->second.about);
    auto input = evidence::conformity_input(as_evidence(reading), papers ? &*papers : nullptr);
    if (!input) return Fail(Problems{input.error()});
    input->lower = limits.lowest;
    input->upper = limits.highest;
    input->limit_source = limit_source(check.about);
    auto answer = evidence::conformity(*input, context);
    if (!answer) {
      // The form knows the reading by its own field names.
      auto problems = answer.error();
      for (auto& p : problems) {
        if (p.path.starts_with("reading")) p.path = "value";
        if (p.path.starts_with("meter")) p.path = "range";
      }
      return Fail(std::move(problems));
    }
    out.verdict = answer->verdict;
    out.words = answer->in_words;
    out.reason = answer->reason;
    out.next = joined(answer->do_next);
    out.risk = answer->risk;
    out.value = answer->value;
    // In the unit of the check, so that kohm stays kohm wherever the value is shown.
    if (out.value && out.value->expanded_si) {
      const auto* unit = quantity::find_unit(out.value->kind, check.about.unit);
      if (unit != nullptr)
        out.value->text =
            quantity::print_with_uncertainty(out.value->si, *out.value->expanded_si, *unit);
    }
    out.lowest = limits.lowest;
    out.highest = limits.highest;
    if (answer->allowance_used) out.allowance_used = answer->allowance_used->si;
    if (answer->probability_of_conformity)
      out.probability_within = answer->probability_of_conformity->si;
    out.meter_good_enough = answer->meter_good_enough;
    out.limit_source = answer->limit_source;
    out.rule = "guarded acceptance, w = U";
    out.working = limits.working;
    out.working.insert(out.working.end(), answer->working.begin(), answer->working.end());
  }
  if (turned) out.reason += " The reading was negative: the probes were the other way round.";
  if (instrument != state.instruments.end()) {
    const auto note = instrument_note(instrument->second, context);
    if (!note.empty()) out.next += (out.next.empty() ? "" : " ") + note;
  }
  out.not_tested = note_of(check.about.kind).not_tested;
  add_history(out, check, aircraft);
  return out;
}

bay::VerdictGiven as_fact(const Judged& judged, const bay::ReadingTaken& reading,
                          const std::string& part) {
  bay::VerdictGiven fact;
  fact.aircraft = reading.aircraft;
  fact.check = reading.check;
  fact.part = part;
  fact.verdict = judged.verdict;
  fact.words = judged.words + ". " + judged.reason;
  fact.next = judged.next;
  fact.value = judged.value;
  fact.lowest = judged.lowest;
  fact.highest = judged.highest;
  fact.allowance_used = judged.allowance_used;
  fact.probability_within = judged.probability_within;
  fact.rule = judged.rule;
  fact.limit_source = judged.limit_source;
  fact.calculation = "conformity";
  return fact;
}

std::string_view describe(describe::Fields<SiblingReading>& f) {
  f.has<&SiblingReading::check>("check", "Check");
  f.has<&SiblingReading::title>("title", "Title");
  f.has<&SiblingReading::value>("value", "Latest reading");
  f.has<&SiblingReading::verdict>("verdict", "Verdict");
  return "sibling-reading";
}

std::string_view describe(describe::Fields<Judged>& f) {
  f.has<&Judged::verdict>("verdict", "Verdict");
  f.has<&Judged::words>("words", "In words");
  f.has<&Judged::reason>("reason", "Why");
  f.has<&Judged::next>("next", "What to do next");
  f.has<&Judged::risk>("risk", "How likely the verdict is wrong");
  f.has<&Judged::value>("value", "Reading with its uncertainty");
  f.has<&Judged::lowest>("lowest", "Lowest");
  f.has<&Judged::highest>("highest", "Highest");
  f.has<&Judged::allowance_used>("allowance_used", "Allowance used");
  f.has<&Judged::probability_within>("probability_within", "Probability of being within");
  f.has<&Judged::meter_good_enough>("meter_good_enough", "The instrument is good enough");
  f.has<&Judged::limit_source>("limit_source", "Where the limit comes from");
  f.has<&Judged::rule>("rule", "Decision rule");
  f.has<&Judged::last_time>("last_time", "Last time");
  f.has<&Judged::siblings>("siblings", "Siblings");
  f.has<&Judged::not_tested>("not_tested", "Not tested");
  f.has<&Judged::sibling_readings>("sibling_readings", "Siblings, one by one");
  f.has<&Judged::working>("working", "The sum, step by step");
  return "judged";
}

}  // namespace wm::desk
