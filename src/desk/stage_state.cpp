#include "desk/stage_state.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "staging/rules.hpp"

namespace wm::desk {
namespace {

using bay::StageStep;

staging::Disturbance disturbance(bay::Grade grade) {
  switch (grade) {
    case bay::Grade::looked_at:
      return staging::Disturbance::looked_at;
    case bay::Grade::adjusted:
      return staging::Disturbance::adjusted;
    case bay::Grade::opened_and_refitted:
      return staging::Disturbance::opened;
    case bay::Grade::renewed:
      return staging::Disturbance::renewed;
    case bay::Grade::redesigned:
      return staging::Disturbance::redesigned;
  }
  return staging::Disturbance::renewed;
}

staging::ChangeFacts facts(const bay::Aircraft& aircraft, const bay::Change& change) {
  const auto& about = change.about;
  staging::ChangeFacts out;
  out.id = about.id;
  out.title = about.title;
  out.position = about.position;
  out.disturbance = disturbance(about.grade);
  out.mount_isolators = about.kind == bay::ChangeKind::mount_isolators;
  out.needs_settled_engine = about.kind == bay::ChangeKind::control_rigging ||
                             about.kind == bay::ChangeKind::hose_measuring;
  out.after = about.after;
  out.together = about.together;
  if (const auto p = aircraft.positions.find(about.position); p != aircraft.positions.end()) {
    out.redundant_with = p->second.redundant_with;
    out.ignition = p->second.system == bay::System::ignition;
    out.fuel = p->second.system == bay::System::fuel;
  }
  return out;
}

/// Changes of stages that come before this one, and those done.
std::vector<std::string> done_before(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  std::vector<std::string> out;
  for (const auto& [id, change] : aircraft.changes) {
    if (change.done) out.push_back(id);
  }
  for (const auto& id : aircraft.stage_order) {
    if (id == stage.about.id) break;
    const auto& earlier = aircraft.stages.find(id)->second;
    out.insert(out.end(), earlier.about.changes.begin(), earlier.about.changes.end());
  }
  return out;
}

std::vector<const bay::Change*> changes_of(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  std::vector<const bay::Change*> out;
  for (const auto& id : stage.about.changes) {
    const auto found = aircraft.changes.find(id);
    if (found != aircraft.changes.end() && !found->second.withdrawn) out.push_back(&found->second);
  }
  return out;
}

/// The last work on the stage: proofs and runs from before it do not count.
bay::Sequence last_work(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  bay::Sequence last = 0;
  for (const auto* change : changes_of(aircraft, stage)) {
    last = std::max(last, change->done_sequence);
    for (const auto& id : change->about.joints) {
      const auto joint = aircraft.joints.find(id);
      // Looking once more does not disturb.
      if (joint != aircraft.joints.end()) last = std::max(last, joint->second.disturbed);
    }
  }
  return last;
}

std::string joint_needs(const bay::JointRecord& joint) {
  std::string out;
  const auto add = [&](const char* word) { out += (out.empty() ? "" : ", ") + std::string(word); };
  const auto has = [&](bay::JointState s) { return joint.reached.contains(s); };
  if (joint.about.torque_most && !has(bay::JointState::torqued)) add("torqued");
  if (!joint.about.torque_most && !has(bay::JointState::assembled)) add("assembled");
  if (!joint.about.locking.empty() && !has(bay::JointState::locked)) add("locked");
  if (!has(bay::JointState::marked)) add("marked");
  if (!has(bay::JointState::seen)) add("seen");
  return out;
}

void missing_work(const bay::Aircraft& aircraft, const bay::Stage& stage,
                  std::vector<Missing>& out) {
  for (const auto& objection : objections(aircraft, stage)) {
    if (!objection.settled) out.push_back({objection.words + " " + objection.answer, "rules"});
  }
  for (const auto* change : changes_of(aircraft, stage)) {
    if (!change->done)
      out.push_back({fmt::format("Not done yet: {}.", change->about.title), "changes"});
    for (const auto& id : change->about.joints) {
      const auto joint = aircraft.joints.find(id);
      if (joint == aircraft.joints.end()) continue;
      const bool disturbs = change->about.grade >= bay::Grade::opened_and_refitted;
      if (disturbs && !joint->second.ever_worked) {
        out.push_back({fmt::format("No work recorded on a joint of \"{}\": {}.",
                                   change->about.title, joint->second.about.name),
                       "joints"});
      }
    }
  }
  for (const auto& id : aircraft.joint_order) {
    const auto& joint = aircraft.joints.find(id)->second;
    if (joint.closed()) continue;
    out.push_back({fmt::format("Joint {} is not closed: {} (still to be {}).", joint.open_number,
                               joint.about.name, joint_needs(joint)),
                   "joints"});
  }
  for (const auto& [id, bung] : aircraft.bungs) {
    out.push_back({fmt::format("Bung or tool still fitted: {}{}.", id,
                               bung.about.where.empty() ? "" : ", " + bung.about.where),
                   "bungs"});
  }
  const auto changes = changes_of(aircraft, stage);
  const bool renews = std::any_of(changes.begin(), changes.end(), [](const bay::Change* c) {
    return c->about.grade >= bay::Grade::renewed;
  });
  if (renews && !stage.mass) {
    out.push_back(
        {"Mass and balance not revised for this stage (nor stated to be unchanged).", "mass"});
  }
}

void missing_step(const bay::Stage& stage, StageStep step, bay::Sequence after,
                  std::vector<Missing>& out) {
  const auto* record = stage.latest(step);
  const auto where = std::string(bay::word(step));
  if (record == nullptr) {
    out.push_back({fmt::format("Not done yet: {}.", bay::label(step)), where});
  } else if (record->about.result == bay::StepResult::unsatisfactory) {
    out.push_back(
        {fmt::format("Was unsatisfactory: {}. Put it right and repeat it.", bay::label(step)),
         where});
  } else if (record->sequence < after) {
    out.push_back(
        {fmt::format("Was done before the last work or flight: {}. Repeat it.", bay::label(step)),
         where});
  } else if (step == StageStep::ground_run &&
             (!record->about.ambient_temperature || !record->about.ambient_pressure)) {
    out.push_back(
        {"Ground run without air temperature or air pressure: both belong to the record.", where});
  }
}

bay::Sequence opened_at(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  bay::Sequence at = 0;
  for (const auto& id : stage.entries) {
    const auto entry = aircraft.entries.find(id);
    if (entry != aircraft.entries.end() &&
        entry->second.about.purpose == bay::EntryPurpose::opens_stage) {
      at = entry->second.sequence;
    }
  }
  return at;
}

constexpr const char* k_worked_since =
    "There was work on this stage after it was signed open: hold it, prove it again, sign it open "
    "again.";

/// A joint that nothing holds together: opened, and neither assembled nor torqued since.
bool is_loose(const bay::JointRecord& joint) {
  return joint.ever_worked && !joint.reached.contains(bay::JointState::assembled) &&
         !joint.reached.contains(bay::JointState::torqued);
}

Problem first_do(std::string what, std::string do_next, std::string source = {}) {
  return {Kind::refused, "step", std::move(what), {}, {}, std::move(do_next), std::move(source)};
}

void before_a_flight(const bay::Aircraft& aircraft, const bay::Stage& stage, Problems& out) {
  if (stage.about.ground_only) {
    out.push_back({Kind::conflict, "step", "this stage is ground-only", {}, {}, {}, {}});
    return;
  }
  if (stage.state != bay::StageState::open) {
    out.push_back(
        first_do("the stage is not open: its return-to-service entry is signed before the flight",
                 "Sign the stage open first.", "14 CFR 91.407(a)"));
    return;
  }
  if (last_work(aircraft, stage) > opened_at(aircraft, stage))
    out.push_back(first_do(k_worked_since, "Hold the stage first (hold-stage)."));
  for (const auto& id : aircraft.joint_order) {
    const auto& joint = aircraft.joints.find(id)->second;
    if (joint.closed()) continue;
    out.push_back(first_do(fmt::format("joint {} is not closed: {} (still to be {})",
                                       joint.open_number, joint.about.name, joint_needs(joint)),
                           "Finish the joint first."));
  }
  if (!aircraft.cowl_closed)
    out.push_back(first_do("the cowl is on record as open", "Close the cowl first."));
}

void before_a_second_look(const bay::Aircraft& aircraft, const bay::Stage& stage, Problems& out) {
  if (stage.about.ground_only) {
    const auto* run = stage.latest(StageStep::ground_run);
    const bool proved = run != nullptr && run->about.result == bay::StepResult::satisfactory &&
                        run->sequence > last_work(aircraft, stage);
    if (!proved)
      out.push_back(first_do("the second look comes after the ground run that follows the work",
                             "Enter the ground run first."));
    return;
  }
  if (stage.state != bay::StageState::open) {
    out.push_back(
        first_do("the second look comes after the check flight, and the stage is not open",
                 "Sign the stage open and enter its check flight first."));
    return;
  }
  const auto* flight = stage.latest(StageStep::check_flight);
  if (flight == nullptr || flight->sequence < opened_at(aircraft, stage))
    out.push_back(
        first_do("the second look comes after the check flight", "Enter the check flight first."));
}

}  // namespace

Problems out_of_order(const bay::Aircraft& aircraft, const bay::Stage& stage,
                      const bay::StageStepDone& step) {
  Problems out;
  if (stage.state == bay::StageState::closed) {
    out.push_back({Kind::conflict, "stage", "this stage is closed", {}, {}, {}, {}});
    return out;
  }
  if (step.step == StageStep::check_flight) before_a_flight(aircraft, stage, out);
  if (step.step == StageStep::second_look) before_a_second_look(aircraft, stage, out);
  const bool run = step.step == StageStep::leak_run_static ||
                   step.step == StageStep::leak_run_engine || step.step == StageStep::ground_run;
  if (!run || step.result != bay::StepResult::satisfactory) return out;
  // A run over a loose joint proves nothing, and with the engine running it is a hazard.
  for (const auto& id : aircraft.joint_order) {
    const auto& joint = aircraft.joints.find(id)->second;
    if (!is_loose(joint)) continue;
    out.push_back(first_do(fmt::format("joint {} is open: {}", joint.open_number, joint.about.name),
                           "Assemble and torque it first.",
                           "a run proves closed joints: common practice, no source"));
  }
  return out;
}

std::vector<StageObjection> objections(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  staging::StageFacts input;
  for (const auto* change : changes_of(aircraft, stage))
    input.changes.push_back(facts(aircraft, *change));
  input.done_before = done_before(aircraft, stage);
  for (const auto& [id, change] : aircraft.changes) {
    const bool isolators = change.about.kind == bay::ChangeKind::mount_isolators;
    const bool before = std::find(input.done_before.begin(), input.done_before.end(), id) !=
                        input.done_before.end();
    if (isolators && !change.withdrawn && !before)
      input.isolators_pending.emplace_back(id, change.about.title);
  }
  std::vector<StageObjection> out;
  for (const auto& raised : staging::check(input)) {
    StageObjection o{staging::word(raised.rule),
                     raised.words,
                     raised.answer,
                     raised.source,
                     raised.changes,
                     {},
                     false,
                     {}};
    const std::pair<bool, bay::RuleAnswer> accepted[] = {
        {raised.accepted.independent_inspection, bay::RuleAnswer::independent_inspection},
        {raised.accepted.separate_proof, bay::RuleAnswer::separate_proof},
        {raised.accepted.override_in_writing, bay::RuleAnswer::override_in_writing}};
    for (const auto& [allowed, answer] : accepted) {
      if (!allowed) continue;
      o.accepted.emplace_back(bay::word(answer));
      for (const auto& given : stage.answers) {
        if (given.rule != o.rule || given.answer != answer) continue;
        o.settled = true;
        o.settled_by = fmt::format("{} by {}: {}", bay::label(answer), given.by, given.text);
      }
    }
    out.push_back(std::move(o));
  }
  return out;
}

bool disturbs_fluid(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  for (const auto* change : changes_of(aircraft, stage)) {
    const auto p = aircraft.positions.find(change->about.position);
    if (p == aircraft.positions.end() || change->about.grade == bay::Grade::looked_at) continue;
    if (p->second.system == bay::System::fuel || p->second.system == bay::System::oil) return true;
  }
  return false;
}

std::vector<Missing> missing_to_open(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  std::vector<Missing> out;
  if (stage.state == bay::StageState::held) {
    out.push_back({fmt::format("The stage is held{}. Go on with its work first (resume-stage).",
                               stage.reason.empty() ? "" : ": " + stage.reason),
                   "held"});
  }
  missing_work(aircraft, stage, out);
  auto after = last_work(aircraft, stage);
  // A bad check flight withdraws the signature: what was proved before it counts no more.
  const auto* flight = stage.latest(StageStep::check_flight);
  if (flight != nullptr && flight->about.result == bay::StepResult::unsatisfactory)
    after = std::max(after, flight->sequence);
  if (disturbs_fluid(aircraft, stage)) {
    missing_step(stage, StageStep::leak_run_static, after, out);
    missing_step(stage, StageStep::leak_run_engine, after, out);
  }
  missing_step(stage, StageStep::ground_run, after, out);
  for (const auto& [id, defect] : aircraft.defects) {
    if (!defect.closed && defect.decision == bay::FlyDecision::ground) {
      out.push_back(
          {fmt::format("Open defect keeps it on the ground: {}.", defect.about.text), "defects"});
    }
  }
  if (!aircraft.cowl_closed) out.push_back({"The cowl is not closed.", "cowl"});
  return out;
}

std::vector<Missing> missing_to_close(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  std::vector<Missing> out;
  if (stage.about.ground_only) {
    out = missing_to_open(aircraft, stage);
    missing_step(stage, StageStep::second_look, last_work(aircraft, stage), out);
    return out;
  }
  if (stage.state != bay::StageState::open) {
    out.push_back({"The stage is not open: its return-to-service entry comes first.", "entry"});
  }
  missing_work(aircraft, stage, out);
  const auto opened = opened_at(aircraft, stage);
  if (opened > 0 && last_work(aircraft, stage) > opened) out.push_back({k_worked_since, "entry"});
  missing_step(stage, StageStep::check_flight, opened, out);
  const auto* flight = stage.latest(StageStep::check_flight);
  missing_step(stage, StageStep::second_look, flight ? flight->sequence : opened, out);
  return out;
}

std::string_view describe(describe::Fields<StageObjection>& f) {
  f.has<&StageObjection::rule>("rule", "Rule");
  f.has<&StageObjection::words>("words", "What is wrong");
  f.has<&StageObjection::answer>("answer", "What would settle it");
  f.has<&StageObjection::source>("source", "Source");
  f.has<&StageObjection::changes>("changes", "Changes that clash");
  f.has<&StageObjection::accepted>("accepted", "Answers that settle it");
  f.has<&StageObjection::settled>("settled", "Settled");
  f.has<&StageObjection::settled_by>("settled_by", "Settled by");
  return "stage-objection";
}

std::string_view describe(describe::Fields<Missing>& f) {
  f.has<&Missing::what>("what", "What is missing");
  f.has<&Missing::where>("where", "Part of the work");
  return "missing";
}

}  // namespace wm::desk
