#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "desk/lookup.hpp"
#include "desk/views.hpp"
#include "statistics/trend.hpp"

namespace wm::desk {
namespace {

/// What comes first in "most used first": past, not conforming, doubtful, unknown, then by share.
int rank(const std::string& standing) {
  if (standing == "past-limit" || standing == "does-not-conform") return 0;
  if (standing == "undecided" || standing == "in-tolerance") return 1;
  if (standing == "unknown") return 2;
  if (standing == "not-tested") return 3;
  return 4;
}

Mark mark_of(const DueRow& row) {
  Mark out{row.id,     row.title,  row.position, "limit", row.standing, row.used, {},
           row.figure, row.detail, {},           {}};
  if (!row.why_unknown.empty()) out.detail = row.why_unknown;
  out.limit = row.authority + (row.document.empty() ? "" : ": " + row.document);
  return out;
}

/// Kilo-ohms a year and the like, said only where the trend shows against its own scatter.
std::string drift(const bay::CheckRecord& check) {
  std::vector<double> years, values;
  const auto* unit = check.about.unit.empty() || !check.about.highest
                         ? nullptr
                         : quantity::find_unit(check.about.highest->kind, check.about.unit);
  for (const auto& r : check.readings) {
    if (!r.reading.value) continue;
    years.push_back(quantity::days_between(check.readings.front().day, r.day) / 365.25);
    values.push_back(r.reading.value->si);
  }
  if (unit == nullptr || values.size() < 4) return {};
  const auto slope = statistics::theil_sen(years, values, 0.95);
  if (!slope || (slope->slope_low <= 0) == (slope->slope_high >= 0)) return {};
  return fmt::format("drifting: {}{} {} a year", slope->slope > 0 ? "+" : "",
                     quantity::significant(slope->slope / unit->factor, 2), unit->symbol);
}

Mark mark_of(const bay::CheckRecord& check) {
  const auto line = check_line(check);
  Mark out{line.id, line.title, line.position, "check", line.verdict, line.used, {}, {}, {},
           {},      {}};
  out.figure = line.last.empty() ? "not tested"
                                 : line.last + (line.highest.empty() ? "" : " of " + line.highest);
  out.detail = line.last.empty() ? "" : "read " + line.last_when;
  out.limit = line.limit_source;
  const auto* last = check.latest();
  if (last != nullptr && last->verdict && last->verdict->value && last->verdict->highest &&
      last->verdict->value->expanded_si) {
    out.uncertainty = *last->verdict->value->expanded_si / last->verdict->highest->si;
  }
  out.trend = drift(check);
  return out;
}

std::vector<PlanSpot> plan_of(const bay::Aircraft& aircraft, const std::vector<Mark>& marks) {
  std::vector<PlanSpot> out;
  for (const auto& id : aircraft.position_order) {
    const auto& p = aircraft.positions.find(id)->second;
    if (!p.plan_x || !p.plan_y) continue;
    PlanSpot spot{id, p.name, std::string(bay::word(p.system)), *p.plan_x, *p.plan_y, {}, {}, {}};
    if (const auto fitted = aircraft.fitted.find(id); fitted != aircraft.fitted.end())
      spot.part = fitted->second;
    // Marks are sorted worst first: the first one of this position tells.
    const auto worst =
        std::find_if(marks.begin(), marks.end(), [&](const Mark& m) { return m.position == id; });
    if (worst != marks.end()) {
      spot.standing = worst->standing;
      spot.used = worst->used;
    }
    out.push_back(std::move(spot));
  }
  return out;
}

}  // namespace

Checked<AircraftList> aircraft_list(const Nothing&, const bay::State& state, const Context&) {
  AircraftList out;
  for (const auto& [id, aircraft] : state.aircraft) {
    out.aircraft.push_back(
        {id, aircraft.about.name, aircraft.about.registration, header_of(aircraft).engine_hours});
  }
  return out;
}

Checked<BayPage> bay_page(const OfAircraft& in, const bay::State& state, const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  BayPage out;
  out.header = header_of(aircraft);
  auto rows = due_rows(state, aircraft, context);
  for (const auto& row : rows) out.marks.push_back(mark_of(row));
  for (const auto& id : aircraft.check_order) {
    const auto& check = aircraft.checks.find(id)->second;
    if (!check.readings.empty()) out.marks.push_back(mark_of(check));
  }
  std::stable_sort(out.marks.begin(), out.marks.end(), [](const Mark& a, const Mark& b) {
    if (rank(a.standing) != rank(b.standing)) return rank(a.standing) < rank(b.standing);
    return a.used.value_or(0) > b.used.value_or(0);
  });
  for (const auto& m : out.marks) {
    if (m.standing == "past-limit")
      ++out.past_limit;
    else if (m.standing == "does-not-conform" || m.standing == "undecided")
      ++out.doubtful;
    else if (m.standing == "unknown" || m.standing == "not-tested")
      ++out.unknown;
    else
      ++out.within;
  }
  out.plan = plan_of(aircraft, out.marks);
  for (auto& row : rows) {
    if (row.expected && row.standing != "past-limit" && row.standing != "unknown")
      out.ahead.push_back(std::move(row));
  }
  std::sort(out.ahead.begin(), out.ahead.end(),
            [](const DueRow& a, const DueRow& b) { return *a.expected < *b.expected; });
  for (const auto& id : aircraft.joint_order) {
    const auto& joint = aircraft.joints.find(id)->second;
    if (!joint.closed()) out.open_joints.push_back(joint_line(joint, state));
  }
  std::sort(out.open_joints.begin(), out.open_joints.end(),
            [](const JointLine& a, const JointLine& b) { return a.number < b.number; });
  out.bungs = bung_lines(aircraft);
  for (const auto& [id, defect] : aircraft.defects) {
    if (!defect.closed) out.defects.push_back(defect_line(defect));
  }
  for (const auto& oddity : state.oddities)
    out.oddities.push_back(fmt::format("event {}: {}", oddity.sequence, oddity.words));
  return out;
}

Checked<DuePage> due_page(const OfAircraft& in, const bay::State& state, const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  DuePage out{header_of(aircraft), due_rows(state, aircraft, context), 0, 0};
  for (const auto& row : out.rows) {
    if (row.standing == "past-limit") ++out.past_limit;
    if (row.standing == "unknown") ++out.unknown;
  }
  return out;
}

Checked<PositionPage> position_page(const OfPosition& in, const bay::State& state,
                                    const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  const auto& p = aircraft.positions.find(in.position)->second;
  PositionPage out;
  out.id = p.id;
  out.name = p.name;
  out.system = bay::label(p.system);
  out.chapter = p.chapter;
  out.area = p.area;
  out.redundant_with = p.redundant_with;
  out.note = p.note;
  for (const auto& [id, part] : state.parts) {
    for (const auto& i : part.installations) {
      if (i.aircraft != in.aircraft || i.position != in.position) continue;
      InstallationLine line{
          id,
          part.about.description.empty() ? part.about.type : part.about.description,
          part.about.serial,
          part.about.cured ? quantity::print_date(*part.about.cured) : "",
          part.about.assembled ? quantity::print_date(*part.about.assembled) : "",
          i.day_known ? quantity::print_date(i.from) : "unknown",
          i.to ? quantity::print_date(*i.to) : "",
          {},
          i.why_removed};
      if (const auto hours = hours_served(aircraft, i))
        line.hours = life::say(*hours, life::CountUnit::hours);
      out.installations.push_back(std::move(line));
    }
  }
  std::sort(out.installations.begin(), out.installations.end(),
            [](const auto& a, const auto& b) { return a.from > b.from; });
  const auto now = now_of(aircraft, context.today);
  const auto flying = flying_of(aircraft, context.today);
  for (const auto& [id, limit] : aircraft.limits) {
    if (limit.about.position == in.position)
      out.limits.push_back(due_row(state, aircraft, limit, now, flying));
  }
  for (const auto& id : aircraft.check_order) {
    const auto& check = aircraft.checks.find(id)->second;
    if (check.about.position == in.position) out.checks.push_back(check_line(check));
  }
  for (const auto& id : aircraft.joint_order) {
    const auto& joint = aircraft.joints.find(id)->second;
    if (joint.about.position == in.position) out.joints.push_back(joint_line(joint, state));
  }
  for (const auto& [id, defect] : aircraft.defects) {
    if (defect.about.position == in.position) out.defects.push_back(defect_line(defect));
  }
  return out;
}

}  // namespace wm::desk
