#include <fmt/core.h>

#include <algorithm>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"

namespace wm::desk {
namespace {

bool in_signed_stage(const bay::Aircraft& aircraft, const bay::Change& change) {
  const auto stage = aircraft.stages.find(change.stage);
  return stage != aircraft.stages.end() && (stage->second.state == bay::StageState::open ||
                                            stage->second.state == bay::StageState::closed);
}

/// What forbids a state at a joint, and what the owner should know.
Problems check_joint(const bay::Aircraft& aircraft, const bay::JointWorked& in,
                     std::vector<std::string>& notes) {
  Problems problems;
  const auto& joint = aircraft.joints.find(in.joint)->second;
  const auto has = [&](bay::JointState s) { return joint.reached.contains(s); };
  const auto& about = joint.about;
  if (in.state == bay::JointState::torqued) {
    const auto& table = in.torque_table.empty() ? about.torque_table : in.torque_table;
    if (!in.torque) {
      problems.push_back({Kind::missing,
                          "torque",
                          "how tight is not said",
                          "the torque applied",
                          "245 in-lb",
                          {},
                          {}});
    }
    if (table.empty()) {
      problems.push_back({Kind::missing,
                          "torque_table",
                          "a torque without its table cannot be checked",
                          "manual or table, metal and lubrication",
                          "hose swivel nuts, aluminium: NAVEDTRA 14018 table 5-9",
                          {},
                          {}});
    }
    if (in.torque && about.torque_most) {
      // Final torque is the wanted torque plus the drag of a self-locking nut
      // (AC 43.13-1B CHG 1, par. 7-40).
      const double drag = in.drag ? in.drag->value.si : 0.0;
      const double net = in.torque->value.si - drag;
      if (net < about.torque_least->value.si || net > about.torque_most->value.si) {
        const auto band = fmt::format("{} to {} ({})", about.torque_least->text,
                                      about.torque_most->text, about.torque_table);
        const auto words = fmt::format("{}{} is outside {}", in.torque->text,
                                       in.drag ? " less drag " + in.drag->text : "", band);
        if (is_blank(in.reason_outside_band)) {
          problems.push_back({Kind::out_of_bounds,
                              "torque",
                              words,
                              band,
                              about.torque_most->text,
                              "Enter it again as read, or write why the maker's instruction "
                              "allows it (reason_outside_band).",
                              {}});
        } else {
          notes.push_back(words + "; allowed for this reason: " + in.reason_outside_band);
        }
      }
    }
  }
  const bool tight = about.torque_most
                         ? has(bay::JointState::torqued)
                         : has(bay::JointState::torqued) || has(bay::JointState::assembled);
  if (in.state == bay::JointState::marked && !tight) {
    problems.push_back(problem(
        Kind::refused, "state",
        fmt::format("the mark says that nothing moved since the joint was {}, and {}",
                    about.torque_most ? "torqued" : "assembled",
                    joint.ever_worked ? "that is not on record since it was opened"
                                      : "no work on this joint is on record"),
        about.torque_most ? "Record the torque first." : "Record it as assembled or torqued first.",
        "a mark is not a lock: common practice, no source"));
  }
  if (in.state == bay::JointState::locked && !tight) {
    problems.push_back(problem(
        Kind::refused, "state", "a joint is locked once it is tight, and that is not on record",
        about.torque_most ? "Record the torque first." : "Record it as assembled or torqued first.",
        "common practice, no source"));
  }
  if (in.state == bay::JointState::seen && !has(bay::JointState::marked)) {
    problems.push_back(problem(Kind::refused, "state", "the joint is looked at once it is marked",
                               "Mark the joint first."));
  }
  const bool nobody = is_blank(in.by);
  const bool same_person = nobody || is_same_person(in.by, joint.worked_by);
  if (in.state == bay::JointState::seen && about.needs_second_person && same_person) {
    problems.push_back(
        problem(Kind::refused, "by",
                nobody ? "who looked is not said; this joint needs a second person"
                       : fmt::format("{} worked on this joint: a second person must look", in.by)));
  }
  if (in.state != bay::JointState::open && !joint.ever_worked) {
    notes.push_back("The joint was not on record as open: is this the right one?");
  }
  return problems;
}

}  // namespace

Simple plan_change(const bay::ChangePlanned& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto existing = aircraft.changes.find(in.id);
  bay::ChangePlanned change = in;
  if (existing != aircraft.changes.end()) {
    if (in_signed_stage(aircraft, existing->second)) {
      return Fail(Problems{problem(Kind::refused, "id",
                                   "this change is in a signed stage: its plan stays as it was",
                                   "Plan a new change, or correct the event.")});
    }
  } else {
    const auto name = name_for(aircraft.changes, in.id, in.title);
    if (!name) return Fail(Problems{name.error()});
    change.id = *name;
  }
  Problems problems;
  for (std::size_t i = 0; i < in.after.size(); ++i) {
    if (in.after[i] == change.id)
      problems.push_back(
          problem(Kind::conflict, fmt::format("after/{}", i), "a change cannot come after itself"));
  }
  if (in.mass_in.has_value() != in.arm.has_value() && in.mass_in) {
    problems.push_back(
        {Kind::missing, "arm", "a mass needs its arm", "arm from the datum", "-30 in", {}, {}});
  }
  if (!problems.empty()) return Fail(std::move(problems));
  Said said{fmt::format("Change planned: {}.", in.title), change.id, {}};
  if (change.document.empty())
    said.notes.push_back("Data used is still to be named: document, edition, paragraph.");
  return Outcome<Said>{{{std::move(change), {}}}, std::move(said)};
}

Simple change_done(const bay::ChangeDone& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& change = aircraft.changes.find(in.change)->second;
  if (change.withdrawn)
    return Fail(Problems{problem(Kind::conflict, "change", "this change was withdrawn")});
  Said said{fmt::format("Done: {}.", change.about.title), in.change, {}};
  if (change.stage.empty()) said.notes.push_back("It is in no stage yet.");
  for (const auto& id : change.about.joints) {
    const auto joint = aircraft.joints.find(id);
    if (joint != aircraft.joints.end() && !joint->second.closed()) {
      said.notes.push_back(fmt::format("Joint {} is still open: {}.", joint->second.open_number,
                                       joint->second.about.name));
    }
  }
  return Outcome<Said>{{{in, {}}}, std::move(said)};
}

Simple withdraw_change(const bay::ChangeWithdrawn& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& change = aircraft.changes.find(in.change)->second;
  if (change.done)
    return Fail(Problems{
        problem(Kind::conflict, "change", "this change is done; plan another that undoes it")});
  if (change.withdrawn)
    return Fail(Problems{problem(Kind::conflict, "change", "it is withdrawn already")});
  return Outcome<Said>{{{in, {}}},
                       {fmt::format("Withdrawn: {}.", change.about.title), in.change, {}}};
}

Simple work_joint(const bay::JointWorked& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& joint = aircraft.joints.find(in.joint)->second;
  Said said{fmt::format("{}: {}.", joint.about.name, bay::label(in.state)), in.joint, {}};
  auto problems = check_joint(aircraft, in, said.notes);
  if (!problems.empty()) return Fail(std::move(problems));
  if (in.state == bay::JointState::open) {
    const auto number = joint.open_number != 0 ? joint.open_number : aircraft.joints_opened + 1;
    said.notes.push_back(fmt::format("It is number {} on the list of open joints.", number));
    if (aircraft.cowl_closed)
      said.notes.push_back("The cowl is on record as closed; it counts as open from here.");
  }
  Outcome<Said> out{{{in, {}}}, std::move(said)};
  if (in.state == bay::JointState::open && aircraft.cowl_closed) {
    out.events.push_back({bay::CowlMoved{in.aircraft, false, in.by}, {}});
  }
  return out;
}

Simple work_joints(const JointsWorked& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  Outcome<Said> out;
  Problems problems;
  for (std::size_t i = 0; i < in.joints.size(); ++i) {
    bay::JointWorked one{in.aircraft,           in.joints[i], in.state, in.torque, {},
                         in.torque_table,       {},           in.by,    in.stage,  {},
                         in.reason_outside_band};
    auto found = check_joint(aircraft, one, out.answer.notes);
    for (auto& p : found) {
      p.path = p.path == "state" ? fmt::format("joints/{}", i) : p.path;
      problems.push_back(std::move(p));
    }
    out.events.push_back({std::move(one), {}});
  }
  if (!problems.empty()) return Fail(std::move(problems));
  if (in.state == bay::JointState::open && aircraft.cowl_closed) {
    out.events.push_back({bay::CowlMoved{in.aircraft, false, in.by}, {}});
  }
  out.answer.words = fmt::format("{} joints: {}.", in.joints.size(), bay::label(in.state));
  return out;
}

Simple count_bung(const bay::BungCounted& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const bool there = aircraft.bungs.contains(in.id);
  if (!in.fitted && !there) {
    std::string list;
    for (const auto& [id, bung] : aircraft.bungs) list += (list.empty() ? "" : ", ") + id;
    return Fail(Problems{{Kind::not_found,
                          "id",
                          "`" + in.id + "` is not on the list of fitted bungs and tools",
                          list.empty() ? "nothing is fitted" : "one of: " + list,
                          {},
                          {},
                          {}}});
  }
  if (in.fitted && there) {
    return Fail(Problems{problem(Kind::duplicate, "id", "`" + in.id + "` is on the list already")});
  }
  const auto left = aircraft.bungs.size() + (in.fitted ? 1 : 0) - (in.fitted ? 0 : 1);
  return Outcome<Said>{
      {{in, {}}},
      {fmt::format("{} {}; {} on the list.", in.id, in.fitted ? "fitted" : "taken out", left),
       in.id,
       {}}};
}

Simple move_cowl(const bay::CowlMoved& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  Problems problems;
  if (in.closed) {
    for (const auto& id : aircraft.joint_order) {
      const auto& joint = aircraft.joints.find(id)->second;
      if (!joint.closed()) {
        problems.push_back(
            problem(Kind::refused, "closed",
                    fmt::format("joint {} is not closed: {}", joint.open_number, joint.about.name),
                    "Finish the joint: torqued, locked, marked, seen."));
      }
    }
    for (const auto& [id, bung] : aircraft.bungs) {
      problems.push_back(
          problem(Kind::refused, "closed", "still fitted: " + id, "Take it out and count it."));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return Outcome<Said>{{{in, {}}}, {in.closed ? "Cowl closed." : "Cowl open.", {}, {}}};
}

std::string_view describe(describe::Fields<JointsWorked>& f) {
  f.has<&JointsWorked::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&JointsWorked::joints>("joints", "Joints")
      .at_least(1)
      .refers_to("joint")
      .needed("oil-hose-upper-engine");
  f.has<&JointsWorked::state>("state", "State").needed("marked");
  f.has<&JointsWorked::torque>("torque", "Torque applied to each").example("245 in-lb");
  f.has<&JointsWorked::torque_table>("torque_table", "Torque table or manual");
  f.has<&JointsWorked::by>("by", "By");
  f.has<&JointsWorked::stage>("stage", "Stage").refers_to("stage");
  f.has<&JointsWorked::reason_outside_band>("reason_outside_band",
                                            "Why a torque outside the joint's limits is allowed");
  return "joints-worked";
}

}  // namespace wm::desk
