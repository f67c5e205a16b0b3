#include <fmt/core.h>

#include <algorithm>

#include "desk/check_kinds.hpp"
#include "desk/lookup.hpp"
#include "desk/views.hpp"

// Pieces that several pages share: lines about joints, checks, stages, defects, instruments.
namespace wm::desk {

Header header_of(const bay::Aircraft& aircraft) {
  Header out;
  out.aircraft = aircraft.about.id;
  out.name = aircraft.about.name;
  out.registration = aircraft.about.registration;
  const auto* hours = aircraft.engine_hours();
  const auto total = hours ? hours->now() : std::nullopt;
  out.engine_hours = total ? say_total(*total, hours->about.kind) : "unknown";
  for (const auto& [id, joint] : aircraft.joints) out.open_joints += joint.closed() ? 0 : 1;
  out.bungs = static_cast<std::int64_t>(aircraft.bungs.size());
  out.cowl_closed = aircraft.cowl_closed && out.open_joints == 0;
  for (const auto& [id, defect] : aircraft.defects) {
    if (defect.closed) continue;
    ++out.open_defects;
    if (defect.decision == bay::FlyDecision::ground) ++out.grounding_defects;
  }
  for (const auto& [id, stage] : aircraft.stages) {
    if (stage.state == bay::StageState::open) out.flight_due.push_back(stage.about.title);
  }
  return out;
}

JointLine joint_line(const bay::JointRecord& joint, const bay::State& state) {
  JointLine out;
  const auto& about = joint.about;
  out.id = about.id;
  out.name = about.name;
  out.position = about.position;
  out.kind = bay::label(about.kind);
  out.state = joint.ever_worked ? std::string(bay::label(joint.state)) : "no work recorded";
  out.number = joint.open_number;
  out.closed = joint.closed();
  if (joint.torque) out.torque = joint.torque->text;
  if (joint.torque && !joint.outside_band.empty())
    out.torque += ", outside its limits: " + joint.outside_band;
  if (about.torque_least)
    out.torque_limits = about.torque_least->text + " to " + about.torque_most->text;
  out.torque_table = joint.torque_table.empty() ? about.torque_table : joint.torque_table;
  out.by = joint.by;
  if (joint.since > 0 && joint.since <= static_cast<bay::Sequence>(state.events.size())) {
    // Sequence numbers count from 1 without gaps.
    out.since =
        state.events[static_cast<std::size_t>(joint.since - 1)]->meta.happened.substr(0, 10);
  }
  if (out.closed) return out;
  const auto has = [&](bay::JointState s) { return joint.reached.contains(s); };
  const auto add = [&](const char* word) {
    out.needs += (out.needs.empty() ? "" : ", ") + std::string(word);
  };
  if (about.torque_most && !has(bay::JointState::torqued)) add("torqued");
  if (!about.torque_most && !has(bay::JointState::assembled)) add("assembled");
  if (!about.locking.empty() && !has(bay::JointState::locked)) add("locked");
  if (!has(bay::JointState::marked)) add("marked");
  if (!has(bay::JointState::seen))
    add(about.needs_second_person ? "seen by a second person" : "seen");
  return out;
}

CheckLine check_line(const bay::CheckRecord& check) {
  const auto& a = check.about;
  const auto limits = limits_of(a);
  CheckLine out;
  out.id = a.id;
  out.title = a.title;
  out.position = a.position;
  out.kind = bay::word(a.kind);
  out.unit = a.unit;
  out.probes = a.probes;
  out.procedure = a.procedure;
  if (limits.lowest) out.lowest = say(*limits.lowest, a.unit);
  if (limits.highest) out.highest = say(*limits.highest, a.unit);
  out.limit_source = limits.lowest || limits.highest ? limit_source(a) : "no limit entered";
  const auto number = [&](const describe::AnyQuantity& v) -> std::optional<double> {
    const auto* unit = quantity::find_unit(v.kind, a.unit);
    if (unit == nullptr) return std::nullopt;
    return (v.si - unit->offset) / unit->factor;
  };
  if (limits.lowest) out.lowest_number = number(*limits.lowest);
  if (limits.highest) out.highest_number = number(*limits.highest);
  out.not_tested = note_of(a.kind).not_tested;
  out.calculation = note_of(a.kind).calculation;
  if (const auto* caution = caution_of(a)) out.caution = caution->text;
  out.verdict = "not-tested";
  const auto* last = check.latest();
  if (last == nullptr) return out;
  auto read = last->reading.value;
  // Read several times: the mean is what was judged.
  if (read && !last->reading.repeats.empty() && last->verdict && last->verdict->value) {
    read->si = last->verdict->value->si;
    read->text.clear();
  }
  out.last = last->reading.over_range ? "over range" : read ? say(*read, a.unit) : "";
  out.last_when = quantity::print_date(last->day);
  if (last->engine_hours)
    out.last_when += ", " + life::say(*last->engine_hours, life::CountUnit::hours);
  out.last_event = last->event;
  if (read) out.last_number = number(*read);
  if (last->verdict) {
    out.verdict = evidence::word(last->verdict->verdict);
    out.used = last->verdict->allowance_used;
    out.last_words = last->verdict->words;
  }
  return out;
}

StepLine step_line(const bay::StepRecord& step) {
  const auto& a = step.about;
  StepLine out{a.stage,
               std::string(bay::word(a.step)),
               std::string(bay::label(a.step)),
               std::string(bay::word(a.result)),
               step.happened,
               a.text,
               a.by,
               {},
               {},
               {},
               step.event};
  if (a.ambient_temperature) out.air = a.ambient_temperature->text;
  if (a.ambient_pressure) out.air += (out.air.empty() ? "" : ", ") + a.ambient_pressure->text;
  if (a.flight_time) out.flight_time = a.flight_time->text;
  for (const auto& r : a.readings)
    out.readings.push_back(r.what + " " + (r.value ? r.value->text : r.words));
  return out;
}

StageLine stage_line(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  StageLine out;
  out.id = stage.about.id;
  out.title = stage.about.title;
  out.state = bay::word(stage.state);
  out.state_label = bay::label(stage.state);
  out.reason = stage.reason;
  out.ground_only = stage.about.ground_only;
  out.changes = stage.about.changes;
  out.objections = objections(aircraft, stage);
  const bool signed_open = stage.state == bay::StageState::open;
  if (stage.state != bay::StageState::closed) {
    if (!signed_open && !stage.about.ground_only)
      out.missing_to_open = missing_to_open(aircraft, stage);
    if (signed_open || stage.about.ground_only)
      out.missing_to_close = missing_to_close(aircraft, stage);
  }
  for (const auto& step : stage.steps) out.steps.push_back(step_line(step));
  out.abort_values = stage.about.abort_values;
  out.entries = stage.entries;
  if (stage.mass) out.mass = stage.mass->empty_mass.text + " at " + stage.mass->empty_arm.text;
  const auto& missing =
      signed_open || stage.about.ground_only ? out.missing_to_close : out.missing_to_open;
  if (stage.state == bay::StageState::closed) {
    out.next = "Nothing: closed.";
  } else if (stage.state == bay::StageState::held) {
    out.next = "Held: " + stage.reason;
  } else if (!missing.empty()) {
    out.next = missing.front().what;
  } else {
    out.next = signed_open || stage.about.ground_only ? "Sign it closed."
                                                      : "Sign it open: check flight due.";
  }
  return out;
}

DefectLine defect_line(const bay::Defect& d) {
  return {d.about.id,
          d.about.text,
          d.about.position,
          d.happened,
          std::string(bay::word(d.decision)),
          d.reason,
          d.until ? quantity::print_date(*d.until) : "",
          d.closed,
          d.how,
          d.about.photos};
}

std::vector<BungLine> bung_lines(const bay::Aircraft& aircraft) {
  std::vector<BungLine> out;
  for (const auto& [id, bung] : aircraft.bungs)
    out.push_back({id, bung.about.where, quantity::print_date(bung.day)});
  return out;
}

InstrumentLine instrument_line(const bay::Instrument& instrument, quantity::Date today) {
  const auto& a = instrument.about;
  InstrumentLine out;
  out.id = a.id;
  out.name = a.name;
  out.serial = a.serial;
  if (a.calibrated) out.calibrated = quantity::print_date(*a.calibrated);
  if (a.calibration_due) out.calibration_due = quantity::print_date(*a.calibration_due);
  evidence::Instrument papers;
  papers.calibrated = a.calibrated;
  papers.calibration_due = a.calibration_due;
  switch (evidence::calibration_on(papers, today)) {
    case evidence::CalibrationState::in_date:
      out.state = "calibration in date";
      break;
    case evidence::CalibrationState::past_due:
      out.state = "calibration past due";
      break;
    case evidence::CalibrationState::not_yet:
      out.state = "calibrated later than today";
      break;
    case evidence::CalibrationState::unknown:
      out.state = "calibration unknown";
      break;
  }
  if (instrument.bad) {
    out.found_bad = instrument.bad->why;
    out.state = "found bad";
  }
  for (const auto& r : a.ranges) {
    out.ranges.push_back(r.name);
    out.range_accuracy.push_back(fmt::format("+-({} % of reading + {} digits)",
                                             quantity::significant(100 * r.of_reading.si, 3),
                                             r.counts));
  }
  return out;
}

}  // namespace wm::desk
