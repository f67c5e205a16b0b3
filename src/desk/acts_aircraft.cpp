#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"

namespace wm::desk {
namespace {

Outcome<Said> one(bay::Payload payload, std::string words, std::string id = {}) {
  return {{{std::move(payload), {}}}, {std::move(words), std::move(id), {}}};
}

template <class Map>
Problems new_name(const Map& taken, const std::string& id) {
  const auto name = name_for(taken, id, id);
  if (name) return {};
  return {name.error()};
}

/// A part in the position on that day, other than `part` itself.
const bay::Installation* in_the_way(const bay::State& state, const bay::PartInstalled& in,
                                    quantity::Date day) {
  for (const auto& [id, part] : state.parts) {
    for (const auto& i : part.installations) {
      const bool same_place = i.aircraft == in.aircraft && i.position == in.position;
      const bool same_part = id == in.part;
      if (!same_place && !same_part) continue;
      const bool overlaps = i.from <= day && (!i.to || day < *i.to);
      if (overlaps) return &i;
      // Fitted before an installation that is already on record, and not yet removed.
      if (day < i.from && !same_part && same_place && !i.to) return &i;
    }
  }
  return nullptr;
}

}  // namespace

Simple describe_aircraft(const bay::AircraftDescribed& in, const Desk& desk) {
  if (!is_short_name(in.id)) {
    return Fail(Problems{{Kind::bad_text,
                          "id",
                          "`" + in.id + "` is not a short name",
                          "lower-case letters, digits and dashes",
                          "pebblewing",
                          {},
                          {}}});
  }
  const bool known = desk.state.aircraft.contains(in.id);
  return one(in, fmt::format("{} {}.", in.name, known ? "described anew" : "is in the binder"),
             in.id);
}

Simple define_counter(const bay::CounterDefined& in, const Desk& desk) {
  auto problems = new_name(aircraft_of(desk.state, in.aircraft).counters, in.id);
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, in.name + " defined.", in.id);
}

Simple add_position(const bay::PositionAdded& in, const Desk& desk) {
  auto problems = new_name(aircraft_of(desk.state, in.aircraft).positions, in.id);
  if (in.redundant_with == in.id) {
    problems.push_back(
        problem(Kind::conflict, "redundant_with", "a position cannot stand in for itself"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, in.name + " added.", in.id);
}

Simple add_joint(const bay::JointAdded& in, const Desk& desk) {
  auto problems = new_name(aircraft_of(desk.state, in.aircraft).joints, in.id);
  if (in.torque_least.has_value() != in.torque_most.has_value()) {
    problems.push_back(problem(Kind::missing, in.torque_least ? "torque_most" : "torque_least",
                               "a torque has a least and a most"));
  } else if (in.torque_least && in.torque_least->value > in.torque_most->value) {
    problems.push_back(problem(Kind::conflict, "torque_most", "the most is less than the least"));
  }
  if (in.torque_most && in.torque_table.empty()) {
    problems.push_back({Kind::missing,
                        "torque_table",
                        "a torque without its table cannot be checked",
                        "manual or table, metal and lubrication",
                        "hose swivel nuts, aluminium: NAVEDTRA 14018 table 5-9",
                        {},
                        {}});
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, in.name + " added.", in.id);
}

Simple register_part(const bay::PartRegistered& in, const Desk& desk) {
  auto problems = new_name(desk.state.parts, in.id);
  if (!in.serial.empty()) {
    for (const auto& [id, part] : desk.state.parts) {
      if (part.about.serial == in.serial && part.about.type == in.type) {
        problems.push_back(
            problem(Kind::duplicate, "serial",
                    fmt::format("{} with serial number {} is already registered as `{}`", in.type,
                                in.serial, id)));
      }
    }
  }
  if (in.cured && in.assembled && *in.assembled < *in.cured) {
    problems.push_back(problem(Kind::conflict, "assembled", "assembled before it was cured"));
  }
  for (const auto& [date, path] :
       {std::pair{in.cured, "cured"}, std::pair{in.assembled, "assembled"}}) {
    if (date && desk.context.today.ok() && *date > desk.context.today) {
      problems.push_back(problem(Kind::out_of_bounds, path, "lies in the future"));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, fmt::format("{} registered.", in.description.empty() ? in.type : in.description),
             in.id);
}

Simple install_part(const bay::PartInstalled& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  auto problems = check_counters(aircraft, in.at, desk.day(), "at");
  if (const auto* other = in_the_way(desk.state, in, desk.day())) {
    problems.push_back(
        problem(Kind::conflict, "position",
                fmt::format("part `{}` is in position `{}` {} {}{}", other->part, other->position,
                            "since", quantity::print_date(other->from),
                            other->to ? " until " + quantity::print_date(*other->to) : ""),
                "Record its removal first, or give the right day."));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, fmt::format("{} installed: {}.", in.part,
                             aircraft.positions.find(in.position)->second.name));
}

Simple remove_part(const bay::PartRemoved& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  auto problems = check_counters(aircraft, in.at, desk.day(), "at");
  const auto* current = desk.state.parts.find(in.part)->second.current();
  if (current == nullptr || current->aircraft != in.aircraft) {
    problems.push_back(
        problem(Kind::conflict, "part",
                fmt::format("part `{}` is not installed in this aircraft", in.part)));
  } else if (desk.day() < current->from) {
    problems.push_back(problem(Kind::conflict, "part",
                               fmt::format("it was installed on {}, after this day",
                                           quantity::print_date(current->from))));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, fmt::format("{} removed.", in.part));
}

Simple set_limit(const bay::LimitSet& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  Problems problems;
  if (!is_short_name(in.id)) problems = new_name(aircraft.limits, in.id);
  const bool any =
      in.every_hours || in.every_count || in.every_months || in.every_days || in.on_condition;
  if (!any) {
    problems.push_back({Kind::missing,
                        "every_hours",
                        "nothing is limited",
                        "hours, a count, months or days; or on condition",
                        "50 h",
                        {},
                        {}});
  }
  if ((in.every_hours || in.every_count) && in.counter.empty()) {
    problems.push_back({Kind::missing,
                        "counter",
                        "which counter counts is not said",
                        "a counter",
                        "engine",
                        {},
                        {}});
  }
  const bool binding =
      in.authority == bay::Authority::law || in.authority == bay::Authority::maker_mandatory;
  if (binding && (in.tolerance_hours || in.tolerance_days)) {
    problems.push_back(
        problem(Kind::refused, in.tolerance_hours ? "tolerance_hours" : "tolerance_days",
                "a tolerance is allowed only for recommendations and the owner's choice", "",
                "own policy tolerance: rules-records, section 3"));
  }
  if (binding && in.document.empty()) {
    problems.push_back({Kind::missing,
                        "document",
                        "a binding limit needs its document",
                        "document and revision",
                        "",
                        {},
                        {}});
  }
  if (in.since_counter) {
    auto more = check_counters(aircraft, {*in.since_counter}, desk.day(), "since_counter");
    for (auto& p : more) {
      if (p.kind == Kind::missing) problems.push_back(std::move(p));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, in.title + ": limit set.", in.id);
}

Simple describe_check(const bay::CheckDescribed& in, const Desk& desk) {
  (void)desk;
  Problems problems;
  if (!is_short_name(in.id)) {
    problems.push_back({Kind::bad_text,
                        "id",
                        "`" + in.id + "` is not a short name",
                        "lower-case letters, digits and dashes",
                        "left-lead-2-bottom",
                        {},
                        {}});
  }
  if (in.lowest && in.highest) {
    if (in.lowest->kind != in.highest->kind) {
      problems.push_back(
          problem(Kind::wrong_dimension, "highest", "lowest and highest are of different kinds"));
    } else if (in.lowest->si > in.highest->si) {
      problems.push_back(problem(Kind::conflict, "highest", "the highest is below the lowest"));
    }
  }
  if ((in.lowest_per_length || in.highest_per_length) && !in.length) {
    problems.push_back({Kind::missing,
                        "length",
                        "a limit per length needs the length",
                        "length of the lead",
                        "38 in",
                        {},
                        {}});
  }
  if (!in.unit.empty() && in.highest && quantity::find_unit(in.highest->kind, in.unit) == nullptr) {
    problems.push_back(
        problem(Kind::wrong_dimension, "unit", "`" + in.unit + "` is no unit of the limits"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return one(in, in.title + ": check described.", in.id);
}

Simple register_instrument(const bay::InstrumentRegistered& in, const Desk& desk) {
  (void)desk;
  if (!is_short_name(in.id)) {
    return Fail(Problems{{Kind::bad_text,
                          "id",
                          "`" + in.id + "` is not a short name",
                          "lower-case letters, digits and dashes",
                          "bench-meter",
                          {},
                          {}}});
  }
  return one(in, in.name + " registered.", in.id);
}

Simple revise_mass(const bay::MassRevised& in, const Desk& desk) {
  (void)desk;
  Problems problems;
  if (in.forward_limit && in.aft_limit && in.forward_limit->value > in.aft_limit->value) {
    problems.push_back(
        problem(Kind::conflict, "aft_limit", "the aft limit lies ahead of the forward limit"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  Outcome<Said> out =
      one(in, fmt::format("Empty mass {} at {}.", in.empty_mass.text, in.empty_arm.text));
  if (in.forward_limit && in.aft_limit &&
      (in.empty_arm.value < in.forward_limit->value || in.empty_arm.value > in.aft_limit->value)) {
    out.answer.notes.push_back(
        "The empty centre of gravity lies outside the limits you entered; what "
        "counts is every loading: work out the extremes.");
  }
  return out;
}

}  // namespace wm::desk
