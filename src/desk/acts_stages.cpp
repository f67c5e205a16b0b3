#include <fmt/core.h>

#include <algorithm>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"
#include "desk/stage_state.hpp"

namespace wm::desk {
namespace {

const bay::Stage& stage_of(const Desk& desk, const std::string& aircraft, const std::string& id) {
  return aircraft_of(desk.state, aircraft).stages.find(id)->second;
}

Problems as_problems(const std::vector<Missing>& missing) {
  Problems out;
  for (const auto& m : missing) out.push_back(problem(Kind::refused, "stage", m.what));
  return out;
}

bay::EntrySigned entry_for(const StageSigned& in, const Desk& desk, bay::EntryPurpose purpose,
                           const std::string& text) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  bay::EntrySigned entry;
  entry.aircraft = in.aircraft;
  entry.id = free_name(aircraft.entries, fmt::format("{}-{}", in.stage, bay::word(purpose)));
  entry.about = in.stage;
  entry.purpose = purpose;
  entry.text = in.text.empty() ? text : in.text;
  entry.name = in.name;
  entry.signer = in.signer;
  entry.certificate = in.certificate;
  entry.covers = events_about(desk.state, aircraft, in.stage);
  return entry;
}

std::vector<std::string> entry_notes(const StageSigned& in, const bay::Aircraft& aircraft) {
  std::vector<std::string> notes;
  if (in.certificate.empty()) {
    notes.push_back(aircraft.about.part_43_applies == bay::YesNoUnknown::yes
                        ? "Part 43 applies to this aircraft: a certificate number belongs to the "
                          "entry (14 CFR 43.9(a)(4))."
                        : "No certificate number given.");
  }
  if (in.text.find("airworthy") != std::string::npos) {
    notes.push_back(
        "The text says \"airworthy\"; operating limitations of an amateur-built aircraft ask for "
        "\"condition for safe operation\". You decide.");
  }
  return notes;
}

/// Whether this person did one of the changes: their own look at it is not independent.
bool did_one_of(const bay::Aircraft& aircraft, const std::vector<std::string>& changes,
                const std::string& person) {
  return std::any_of(changes.begin(), changes.end(), [&](const std::string& id) {
    const auto change = aircraft.changes.find(id);
    return change != aircraft.changes.end() && change->second.result &&
           is_same_person(change->second.result->by, person);
  });
}

}  // namespace

Simple plan_stage(const bay::StagePlanned& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  bay::StagePlanned plan = in;
  Problems problems;
  const auto existing = aircraft.stages.find(in.id);
  if (existing == aircraft.stages.end()) {
    const auto name = name_for(aircraft.stages, in.id, in.title);
    if (!name) return Fail(Problems{name.error()});
    plan.id = *name;
  } else if (existing->second.state == bay::StageState::open ||
             existing->second.state == bay::StageState::closed) {
    problems.push_back(problem(Kind::refused, "id",
                               "this stage is signed: its changes stay as they were",
                               "Hold it first, or plan another stage."));
  }
  for (std::size_t i = 0; i < in.changes.size(); ++i) {
    const auto& change = aircraft.changes.find(in.changes[i])->second;
    const auto path = fmt::format("changes/{}", i);
    if (change.withdrawn)
      problems.push_back(problem(Kind::conflict, path, "this change was withdrawn"));
    const auto holder = aircraft.stages.find(change.stage);
    if (holder != aircraft.stages.end() && holder->first != plan.id &&
        (holder->second.state == bay::StageState::open ||
         holder->second.state == bay::StageState::closed)) {
      problems.push_back(problem(Kind::conflict, path,
                                 fmt::format("this change flew in stage `{}`", change.stage)));
    }
    for (std::size_t k = 0; k < i; ++k) {
      if (in.changes[k] == in.changes[i])
        problems.push_back(problem(Kind::duplicate, path, "twice in this stage"));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));
  bay::Stage trial;
  trial.about = plan;
  if (existing != aircraft.stages.end() && !bay::brings_more(existing->second.about, plan))
    trial.answers = existing->second.answers;
  Said said{fmt::format("Stage planned: {}.", plan.title), plan.id, {}};
  for (const auto& id : plan.changes) {
    const auto& change = aircraft.changes.find(id)->second;
    if (!change.stage.empty() && change.stage != plan.id)
      said.notes.push_back(
          fmt::format("\"{}\" is taken out of stage `{}`.", change.about.title, change.stage));
  }
  for (const auto& o : objections(aircraft, trial)) {
    if (!o.settled)
      said.notes.push_back(fmt::format("Objection ({}): {} {}", o.rule, o.words, o.answer));
  }
  return Outcome<Said>{{{std::move(plan), {}}}, std::move(said)};
}

Simple answer_objection(const bay::StageRuleAnswered& in, const Desk& desk) {
  const auto& stage = stage_of(desk, in.aircraft, in.stage);
  const auto raised = objections(aircraft_of(desk.state, in.aircraft), stage);
  std::string rules;
  for (const auto& o : raised) {
    rules += (rules.empty() ? "" : ", ") + o.rule;
    if (o.rule != in.rule) continue;
    if (in.answer == bay::RuleAnswer::independent_inspection &&
        did_one_of(aircraft_of(desk.state, in.aircraft), o.changes, in.by)) {
      return Fail(Problems{problem(
          Kind::refused, "by",
          fmt::format("{} did this work: an independent inspection is another person's", in.by),
          o.answer, o.source)});
    }
    for (const auto& accepted : o.accepted) {
      if (accepted == bay::word(in.answer)) {
        return Outcome<Said>{
            {{in, {}}},
            {fmt::format("Recorded: {} by {}.", bay::label(in.answer), in.by), in.stage, {}}};
      }
    }
    std::string list;
    for (const auto& accepted : o.accepted) list += (list.empty() ? "" : ", ") + accepted;
    return Fail(Problems{{Kind::refused,
                          "answer",
                          "this objection is not settled that way",
                          list.empty() ? "another order of the work: no answer in words settles it"
                                       : "one of: " + list,
                          {},
                          o.answer,
                          o.source}});
  }
  return Fail(Problems{{Kind::not_found,
                        "rule",
                        "no such objection to this stage",
                        rules.empty() ? "there is no objection" : "one of: " + rules,
                        {},
                        {},
                        {}}});
}

Simple stage_step(const bay::StageStepDone& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& stage = stage_of(desk, in.aircraft, in.stage);
  auto problems = check_counters(aircraft, in.at, desk.day(), "at");
  const bool good = in.result == bay::StepResult::satisfactory;
  auto order = out_of_order(aircraft, stage, in);
  problems.insert(problems.end(), order.begin(), order.end());
  if (in.step == bay::StageStep::ground_run && good) {
    if (!in.ambient_temperature) {
      problems.push_back({Kind::missing,
                          "ambient_temperature",
                          "the air temperature belongs to a ground run",
                          "air temperature",
                          "41 degF",
                          {},
                          "ground-run record: rules-records, section 9"});
    }
    if (!in.ambient_pressure) {
      problems.push_back({Kind::missing,
                          "ambient_pressure",
                          "the air pressure belongs to a ground run",
                          "air pressure",
                          "29.92 inHg",
                          {},
                          "ground-run record: rules-records, section 9"});
    }
  }
  if (in.step == bay::StageStep::leak_run_engine && aircraft.cowl_closed) {
    problems.push_back(problem(Kind::refused, "step",
                               "the leak run is made uncowled, and the cowl is on record as closed",
                               "Record the cowl as open, or correct its record."));
  }
  if (!good && in.text.empty()) {
    problems.push_back({Kind::missing,
                        "text",
                        "what was unsatisfactory is not said",
                        "what was seen",
                        "drip at the upper nut",
                        {},
                        {}});
  }
  if (!problems.empty()) return Fail(std::move(problems));
  Outcome<Said> out{
      {{in, {}}},
      {fmt::format("{}: {}.", bay::label(in.step), bay::label(in.result)), in.stage, {}}};
  if (!good && stage.state == bay::StageState::open) {
    out.events.push_back(
        {bay::StageMoved{in.aircraft,
                         in.stage,
                         bay::StageState::held,
                         {},
                         fmt::format("{} unsatisfactory: {}", bay::label(in.step), in.text)},
         {}});
    out.answer.notes.push_back(
        "The stage is held and its entry no longer stands: put it right, prove it, sign again.");
  } else if (good) {
    out.answer.notes.push_back(
        "Look again after the ground run, after the check flight and after the flight that "
        "follows.");
  }
  return out;
}

Simple open_stage(const StageSigned& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& stage = stage_of(desk, in.aircraft, in.stage);
  if (stage.state == bay::StageState::open || stage.state == bay::StageState::closed) {
    return Fail(Problems{problem(Kind::conflict, "stage",
                                 fmt::format("this stage is {} already", bay::word(stage.state)))});
  }
  if (stage.about.ground_only) {
    return Fail(Problems{problem(Kind::conflict, "stage", "a ground-only stage ends after its run",
                                 "Sign it closed.")});
  }
  auto missing = as_problems(missing_to_open(aircraft, stage));
  if (!missing.empty()) return Fail(std::move(missing));
  auto entry = entry_for(in, desk, bay::EntryPurpose::opens_stage,
                         opening_text(desk.state, aircraft, stage, desk.day()));
  const auto id = entry.id;
  return Outcome<Said>{
      {{std::move(entry), {}},
       {bay::StageMoved{in.aircraft, in.stage, bay::StageState::open, id, "entry signed"}, "#0"}},
      {fmt::format("\"{}\" is open: check flight due.", stage.about.title), id,
       entry_notes(in, aircraft)}};
}

Simple close_stage(const StageSigned& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& stage = stage_of(desk, in.aircraft, in.stage);
  if (stage.state == bay::StageState::closed) {
    return Fail(Problems{problem(Kind::conflict, "stage", "this stage is closed already")});
  }
  auto missing = as_problems(missing_to_close(aircraft, stage));
  if (!missing.empty()) return Fail(std::move(missing));
  auto text = stage.about.ground_only ? opening_text(desk.state, aircraft, stage, desk.day())
                                      : closing_text(desk.state, aircraft, stage, desk.day());
  auto entry = entry_for(in, desk, bay::EntryPurpose::closes_stage, text);
  const auto id = entry.id;
  return Outcome<Said>{
      {{std::move(entry), {}},
       {bay::StageMoved{in.aircraft, in.stage, bay::StageState::closed, id, "checks judged"},
        "#0"}},
      {fmt::format("\"{}\" is closed.", stage.about.title), id, entry_notes(in, aircraft)}};
}

Simple hold_stage(const StageHeld& in, const Desk& desk) {
  const auto& stage = stage_of(desk, in.aircraft, in.stage);
  if (stage.state == bay::StageState::closed || stage.state == bay::StageState::held) {
    return Fail(Problems{
        problem(Kind::conflict, "stage", fmt::format("this stage is {}", bay::word(stage.state)))});
  }
  return Outcome<Said>{
      {{bay::StageMoved{in.aircraft, in.stage, bay::StageState::held, {}, in.reason}, {}}},
      {fmt::format("\"{}\" is held.", stage.about.title), in.stage, {}}};
}

Simple resume_stage(const StageHeld& in, const Desk& desk) {
  const auto& stage = stage_of(desk, in.aircraft, in.stage);
  if (stage.state != bay::StageState::held) {
    return Fail(
        Problems{problem(Kind::conflict, "stage",
                         fmt::format("this stage is {}, not held", bay::word(stage.state)))});
  }
  return Outcome<Said>{
      {{bay::StageMoved{in.aircraft, in.stage, bay::StageState::planned, {}, in.reason}, {}}},
      {fmt::format("Work on \"{}\" goes on; it is signed open again before flight.",
                   stage.about.title),
       in.stage,
       {}}};
}

std::string_view describe(describe::Fields<StageSigned>& f) {
  f.has<&StageSigned::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&StageSigned::stage>("stage", "Stage").needed("stage-1").refers_to("stage");
  f.has<&StageSigned::text>("text", "Text that is signed")
      .help("Empty: the drafted text as it stands");
  f.has<&StageSigned::name>("name", "Name").needed("name of the person who signs");
  f.has<&StageSigned::signer>("signer", "Signs as").needed("owner");
  f.has<&StageSigned::certificate>("certificate", "Certificate number");
  return "stage-signed";
}

std::string_view describe(describe::Fields<StageHeld>& f) {
  f.has<&StageHeld::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&StageHeld::stage>("stage", "Stage").needed("stage-1").refers_to("stage");
  f.has<&StageHeld::reason>("reason", "Why").needed("rough running on the left");
  return "stage-held";
}

}  // namespace wm::desk
