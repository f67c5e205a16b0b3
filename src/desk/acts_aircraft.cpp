#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/check_kinds.hpp"
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

/// An installation that shares a moment with this one: the same position or the same part.
const bay::Installation* in_the_way(const bay::State& state, const PartFitted& in,
                                    quantity::Date day) {
  for (const auto& [id, part] : state.parts) {
    for (const auto& i : part.installations) {
      const bool same_place = i.aircraft == in.aircraft && i.position == in.position;
      if (!same_place && id != in.part) continue;
      const bool begins_before_its_end = !i.to || day < *i.to;
      // Days do not tell which of two came first when both begin on one.
      const bool ends_after_its_begin =
          !in.until_day || i.from < *in.until_day || (i.from == day && !i.to);
      if (begins_before_its_end && ends_after_its_begin) return &i;
    }
  }
  return nullptr;
}

Problem overlap(const bay::Installation& other, const PartFitted& in, quantity::Date day) {
  const auto since = other.day_known ? "since " + quantity::print_date(other.from)
                                     : std::string("since a day that nobody knows");
  auto p = problem(Kind::conflict, "position",
                   fmt::format("part `{}` {} in position `{}` {}{}", other.part,
                               other.to ? "was" : "is", other.position, since,
                               other.to ? " until " + quantity::print_date(*other.to) : ""));
  if (other.from <= day) {
    p.do_next =
        other.to ? "Give the right day." : "Record its removal first, or give the right day.";
  } else if (in.until_day) {
    p.path = "until_day";
    p.do_next = "Give the day on which this part was taken out; it lies before the other came in.";
  } else {
    p.do_next = "If this part was taken out before that, say so here: until_day, with the reason.";
  }
  return p;
}

/// What a removal that is entered together with its installation lacks.
Problems check_removal(const bay::Aircraft& aircraft, const PartFitted& in, const Desk& desk) {
  Problems problems;
  if (!in.until_day) {
    if (!in.until.empty() || !in.reason.empty()) {
      problems.push_back({Kind::missing,
                          "until_day",
                          "the day on which it was taken out is not said",
                          "a date",
                          "2021-03-01",
                          {},
                          {}});
    }
    return problems;
  }
  const auto day = *in.until_day;
  if (day < desk.day()) {
    problems.push_back(
        problem(Kind::conflict, "until_day",
                fmt::format("taken out on {}, before it was fitted on {}",
                            quantity::print_date(day), quantity::print_date(desk.day()))));
  }
  if (desk.context.today.ok() && day > desk.context.today) {
    problems.push_back(problem(Kind::out_of_bounds, "until_day", "lies in the future"));
  }
  if (in.reason.empty()) {
    problems.push_back({Kind::missing,
                        "reason",
                        "why it was taken out is not said",
                        "the reason, or that it is unknown",
                        "past its limit",
                        {},
                        {}});
  }
  // The later readings have to fit the earlier ones of this same act as well.
  bay::Aircraft with_first;
  with_first.counters = aircraft.counters;
  for (const auto& reading : in.at) {
    const auto counter = with_first.counters.find(reading.counter);
    if (counter == with_first.counters.end() || (!reading.hours && !reading.count)) continue;
    const double shown =
        reading.hours ? reading.hours->value.si / 3600.0 : static_cast<double>(*reading.count);
    (void)counter->second.series.add({desk.day(), desk.state.sequence + 1, shown, false, {}});
  }
  auto more = check_counters(with_first, in.until, day, "until");
  problems.insert(problems.end(), more.begin(), more.end());
  return problems;
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

Simple install_part(const PartFitted& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  auto problems = check_counters(aircraft, in.at, desk.day(), "at");
  auto more = check_removal(aircraft, in, desk);
  const bool days_in_order = !in.until_day || desk.day() <= *in.until_day;
  problems.insert(problems.end(), more.begin(), more.end());
  const auto* other = days_in_order ? in_the_way(desk.state, in, desk.day()) : nullptr;
  if (other != nullptr) problems.push_back(overlap(*other, in, desk.day()));
  if (!problems.empty()) return Fail(std::move(problems));
  const auto& place = aircraft.positions.find(in.position)->second.name;
  bay::PartInstalled installed{in.aircraft, in.part,      in.position, in.at,
                               in.change,   in.day_known, in.note};
  if (!in.until_day)
    return one(std::move(installed), fmt::format("{} installed: {}.", in.part, place));
  const auto last_day = quantity::print_date(*in.until_day);
  const auto first_day =
      in.day_known ? quantity::print_date(desk.day()) : std::string("a day that nobody knows");
  return Outcome<Said>{
      {{std::move(installed), {}},
       {bay::PartRemoved{in.aircraft, in.part, in.reason, in.until, {}}, {}, last_day}},
      {fmt::format("{}: in {} from {} until {}.", in.part, place, first_day, last_day), {}, {}}};
}

Simple fit_part(const bay::PartInstalled& in, const Desk& desk) {
  return install_part(
      {in.aircraft, in.part, in.position, in.at, in.change, in.day_known, {}, {}, {}, in.note},
      desk);
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
  } else if (!reads_in(in.kind, in.unit)) {
    problems.push_back(problem(Kind::wrong_dimension, "unit",
                               "`" + in.unit + "` is no unit of this kind of check (" +
                                   std::string(bay::word(in.kind)) + ")"));
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

std::string_view describe(describe::Fields<PartFitted>& f) {
  f.has<&PartFitted::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&PartFitted::part>("part", "Part").needed("hose-0412").refers_to("part");
  f.has<&PartFitted::position>("position", "Position")
      .needed("oil-hose-upper")
      .refers_to("position");
  f.has<&PartFitted::at>("at", "Counter readings at the time");
  f.has<&PartFitted::change>("change", "Belongs to change").refers_to("change");
  f.has<&PartFitted::day_known>("day_known", "The day is known");
  f.has<&PartFitted::until_day>("until_day", "Taken out again on")
      .help("For the history of a part that is there no more; left empty, it is still fitted")
      .example("2021-03-01");
  f.has<&PartFitted::until>("until", "Counter readings when it was taken out");
  f.has<&PartFitted::reason>("reason", "Why it was taken out").example("past its limit");
  f.has<&PartFitted::note>("note", "Note");
  return "part-fitted";
}

}  // namespace wm::desk
