#include <fmt/core.h>

#include <algorithm>

#include "desk/judge.hpp"
#include "desk/lookup.hpp"
#include "desk/stage_state.hpp"

// The drafted texts: everything that a maintenance entry must contain, in plain sentences. They
// say what was done and found; that the aircraft may fly is for the person who signs to say.
namespace wm::desk {
namespace {

std::string counters_line(const bay::Aircraft& aircraft, bay::Date day) {
  std::string out;
  for (const auto& [id, counter] : aircraft.counters) {
    const auto total = counter.on(day);
    out += fmt::format("{}{}: {}", out.empty() ? "" : "; ", counter.about.name,
                       total ? say_total(*total, counter.about.kind) : "unknown");
  }
  return out;
}

std::string head(const bay::Aircraft& aircraft, bay::Date day) {
  const auto& about = aircraft.about;
  return fmt::format("{} {}{}. Date completed: {}. {}.\n", about.registration, about.name,
                     about.serial.empty() ? "" : ", serial " + about.serial,
                     quantity::print_date(day), counters_line(aircraft, day));
}

std::string change_lines(const bay::Aircraft& aircraft, const bay::Change& change) {
  const auto& about = change.about;
  const auto position = aircraft.positions.find(about.position);
  std::string out = fmt::format("- {} ({}", about.title, bay::label(about.grade));
  if (position != aircraft.positions.end() && !position->second.chapter.empty()) {
    out += ", system " + position->second.chapter;
  }
  out += ").";
  if (change.result) {
    out += " " + change.result->text + ".";
    if (!change.result->proof.empty()) out += " Proof: " + change.result->proof + ".";
    if (!change.result->parts_off.empty()) out += " Off: " + change.result->parts_off + ".";
    if (!change.result->parts_on.empty()) out += " On: " + change.result->parts_on + ".";
    if (!change.result->by.empty()) out += " Done by " + change.result->by + ".";
  }
  out += " Data used: " + (about.document.empty() ? std::string("not stated") : about.document) +
         ".\n";
  for (const auto& id : about.joints) {
    const auto found = aircraft.joints.find(id);
    if (found == aircraft.joints.end()) continue;
    const auto& joint = found->second;
    out += fmt::format("  Joint {}: {}", joint.about.name, bay::label(joint.state));
    if (joint.torque) out += fmt::format(", torque {}", joint.torque->text);
    const auto& table = joint.torque_table.empty() ? joint.about.torque_table : joint.torque_table;
    if (joint.torque && !table.empty()) out += fmt::format(" ({})", table);
    if (joint.torque && !joint.outside_band.empty()) {
      out += fmt::format(", outside {} to {}: {}", joint.about.torque_least->text,
                         joint.about.torque_most->text, joint.outside_band);
    }
    out += ".\n";
  }
  return out;
}

std::string step_line(const bay::StepRecord& step) {
  const auto& a = step.about;
  std::string out = fmt::format("- {}, {}: {}", bay::label(a.step), step.happened.substr(0, 10),
                                bay::label(a.result));
  if (a.ambient_temperature) out += ", air " + a.ambient_temperature->text;
  if (a.ambient_pressure) out += ", " + a.ambient_pressure->text;
  if (a.flight_time) out += ", flight time " + a.flight_time->text;
  for (const auto& r : a.readings) {
    out += fmt::format("; {} {}", r.what, r.value ? r.value->text : r.words);
  }
  out += ".";
  if (!a.text.empty()) out += " " + a.text + ".";
  if (!a.by.empty()) out += " By " + a.by + ".";
  return out + "\n";
}

std::string readings_lines(const bay::Aircraft& aircraft, const std::string& stage) {
  std::string out;
  for (const auto& id : aircraft.check_order) {
    const auto& check = aircraft.checks.find(id)->second;
    for (const auto& r : check.readings) {
      if (r.reading.stage != stage) continue;
      out += fmt::format("- {}: {}", check.about.title,
                         r.reading.value ? say(*r.reading.value, check.about.unit) : "over range");
      if (r.verdict) {
        out +=
            fmt::format(", {} ({})", evidence::words(r.verdict->verdict), r.verdict->limit_source);
      }
      if (!r.reading.instrument.empty()) out += ", instrument " + r.reading.instrument;
      out += ".\n";
    }
  }
  return out;
}

std::string mass_line(const bay::Stage& stage) {
  if (!stage.mass) return "Mass and balance: not revised.\n";
  const auto& m = *stage.mass;
  return fmt::format("Mass and balance: empty mass {}, centre of gravity {} from the datum ({}).\n",
                     m.empty_mass.text, m.empty_arm.text, m.document);
}

}  // namespace

std::string opening_text(const bay::State& state, const bay::Aircraft& aircraft,
                         const bay::Stage& stage, bay::Date day) {
  (void)state;
  std::string out = head(aircraft, day);
  out += fmt::format("Work of stage \"{}\":\n", stage.about.title);
  for (const auto& id : stage.about.changes) {
    const auto change = aircraft.changes.find(id);
    if (change != aircraft.changes.end() && !change->second.withdrawn)
      out += change_lines(aircraft, change->second);
  }
  const auto readings = readings_lines(aircraft, stage.about.id);
  if (!readings.empty()) out += "Readings:\n" + readings;
  if (!stage.steps.empty()) out += "Proved on the ground:\n";
  for (const auto& step : stage.steps) out += step_line(step);
  out += mass_line(stage);
  for (const auto& answer : stage.answers) {
    out += fmt::format("{} ({}) by {}{}: {}.\n", bay::label(answer.answer), answer.rule, answer.by,
                       answer.certificate.empty() ? "" : ", certificate " + answer.certificate,
                       answer.text);
  }
  out += "This signature covers only the work described.";
  if (!stage.about.ground_only) {
    out +=
        " Check flight due: essential crew only until the check flight is entered as satisfactory.";
  }
  return out;
}

std::string closing_text(const bay::State& state, const bay::Aircraft& aircraft,
                         const bay::Stage& stage, bay::Date day) {
  (void)state;
  std::string out = head(aircraft, day);
  out += fmt::format("Stage \"{}\", checks judged:\n", stage.about.title);
  for (const auto& step : stage.steps) {
    const bool after_flight = step.about.step == bay::StageStep::check_flight ||
                              step.about.step == bay::StageStep::second_look;
    if (after_flight || stage.about.ground_only) out += step_line(step);
  }
  const auto readings = readings_lines(aircraft, stage.about.id);
  if (!readings.empty()) out += "Readings:\n" + readings;
  out += "Disturbed joints looked at again; look once more after the flight that follows.";
  return out;
}

std::string quick_job_text(const bay::Aircraft& aircraft, const bay::QuickJobRecord& job) {
  std::string out = head(aircraft, job.day);
  out += fmt::format("{}: {}.", bay::label(job.about.what),
                     job.about.text.empty() ? "done" : job.about.text);
  if (job.about.quantity) out += " Quantity " + job.about.quantity->text + ".";
  if (!job.about.parts.empty()) out += " Parts: " + job.about.parts + ".";
  if (!job.about.by.empty()) out += " Done by " + job.about.by + ".";
  return out + "\nThis signature covers only the work described.";
}

std::vector<std::string> events_about(const bay::State& state, const bay::Aircraft& aircraft,
                                      const std::string& about) {
  const auto stage = aircraft.stages.find(about);
  const bool is_stage = stage != aircraft.stages.end();
  const auto in_stage = [&](const std::string& change) {
    return is_stage &&
           std::find(stage->second.about.changes.begin(), stage->second.about.changes.end(),
                     change) != stage->second.about.changes.end();
  };
  std::vector<std::string> joints;
  if (is_stage) {
    for (const auto& id : stage->second.about.changes) {
      const auto change = aircraft.changes.find(id);
      if (change == aircraft.changes.end()) continue;
      joints.insert(joints.end(), change->second.about.joints.begin(),
                    change->second.about.joints.end());
    }
  }
  const auto belongs = [&](const bay::Event& event, const auto& body) {
    using Body = std::remove_cvref_t<decltype(body)>;
    if constexpr (std::is_same_v<Body, bay::EntrySigned>) {
      return false;
    } else if constexpr (std::is_same_v<Body, bay::ChangePlanned>) {
      return in_stage(body.id);
    } else if constexpr (std::is_same_v<Body, bay::StagePlanned> ||
                         std::is_same_v<Body, bay::QuickJobDone>) {
      return body.id == about;
    } else if constexpr (std::is_same_v<Body, bay::JointWorked>) {
      const bool ours = std::find(joints.begin(), joints.end(), body.joint) != joints.end();
      return body.stage == about || (body.stage.empty() && ours);
    } else if constexpr (requires { body.stage; }) {
      return body.stage == about;
    } else if constexpr (requires { body.change; }) {
      return in_stage(body.change);
    } else {
      (void)event;
      return false;
    }
  };
  std::vector<std::string> out;
  for (std::size_t i = 0; i < state.events.size(); ++i) {
    const auto& payload = state.effective(i);
    if (bay::aircraft_of(payload) != aircraft.about.id) continue;
    if (std::visit([&](const auto& body) { return belongs(*state.events[i], body); }, payload)) {
      out.push_back(state.events[i]->meta.id);
    }
  }
  return out;
}

}  // namespace wm::desk
