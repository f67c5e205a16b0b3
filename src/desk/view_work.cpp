#include <fmt/core.h>

#include <algorithm>

#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::desk {

Checked<WorkPage> work_page(const OfAircraft& in, const bay::State& state, const Context&) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  WorkPage out;
  out.header = header_of(aircraft);
  for (const auto& id : aircraft.change_order) {
    const auto& c = aircraft.changes.find(id)->second;
    ChangeLine line{id,
                    c.about.title,
                    c.about.position,
                    {},
                    {},
                    std::string(bay::label(c.about.grade)),
                    std::string(bay::word(c.about.kind)),
                    c.stage,
                    c.withdrawn ? "withdrawn"
                    : c.done    ? "done"
                                : "planned",
                    c.about.new_part,
                    c.about.document,
                    c.about.note,
                    c.about.joints,
                    c.about.after,
                    c.about.together};
    const auto p = aircraft.positions.find(c.about.position);
    if (p != aircraft.positions.end()) {
      line.position_name = p->second.name;
      line.system = bay::label(p->second.system);
    }
    out.changes.push_back(std::move(line));
  }
  for (const auto& id : aircraft.stage_order)
    out.stages.push_back(stage_line(aircraft, aircraft.stages.find(id)->second));
  for (const auto& id : aircraft.joint_order)
    out.joints.push_back(joint_line(aircraft.joints.find(id)->second, state));
  out.bungs = bung_lines(aircraft);
  for (const auto& id : aircraft.hose_order)
    out.hoses.push_back(hose_line(aircraft.hoses.find(id)->second));
  return out;
}

Checked<JointsPage> joints_page(const OfAircraft& in, const bay::State& state, const Context&) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  JointsPage out{header_of(aircraft), {}, bung_lines(aircraft)};
  for (const auto& id : aircraft.joint_order)
    out.joints.push_back(joint_line(aircraft.joints.find(id)->second, state));
  std::stable_sort(out.joints.begin(), out.joints.end(),
                   [](const JointLine& a, const JointLine& b) {
                     if (a.closed != b.closed) return !a.closed;
                     return a.number < b.number;
                   });
  return out;
}

Checked<RunsPage> runs_page(const OfAircraft& in, const bay::State& state, const Context&) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  RunsPage out{header_of(aircraft), {}};
  // The latest stage first: it is the one that somebody stands beside the aircraft for.
  for (auto id = aircraft.stage_order.rbegin(); id != aircraft.stage_order.rend(); ++id) {
    out.stages.push_back(stage_line(aircraft, aircraft.stages.find(*id)->second));
  }
  return out;
}

Checked<MeasurePage> measure_page(const OfAircraft& in, const bay::State& state,
                                  const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  MeasurePage out;
  out.header = header_of(aircraft);
  for (const auto& id : aircraft.check_order) {
    const auto& check = aircraft.checks.find(id)->second;
    const auto& group = check.about.group.empty() ? check.about.id : check.about.group;
    auto found = std::find_if(out.groups.begin(), out.groups.end(),
                              [&](const CheckGroup& g) { return g.id == group; });
    if (found == out.groups.end()) {
      const auto position = aircraft.positions.find(group);
      out.groups.push_back({group,
                            position != aircraft.positions.end() ? position->second.name
                            : check.about.group.empty()          ? check.about.title
                                                                 : group,
                            {}});
      found = std::prev(out.groups.end());
    }
    found->checks.push_back(check_line(check));
  }
  for (auto& group : out.groups) {
    std::stable_sort(group.checks.begin(), group.checks.end(),
                     [&](const CheckLine& a, const CheckLine& b) {
                       return aircraft.checks.find(a.id)->second.about.order <
                              aircraft.checks.find(b.id)->second.about.order;
                     });
  }
  for (const auto& [id, instrument] : state.instruments)
    out.instruments.push_back(instrument_line(instrument, context.today));
  return out;
}

Checked<Judged> judge_reading(const bay::ReadingTaken& in, const bay::State& state,
                              const Context& context) {
  return judge(in, state, context);
}

Checked<InstrumentsPage> instruments_page(const Nothing&, const bay::State& state,
                                          const Context& context) {
  InstrumentsPage out;
  for (const auto& [id, instrument] : state.instruments)
    out.instruments.push_back(instrument_line(instrument, context.today));
  return out;
}

}  // namespace wm::desk
