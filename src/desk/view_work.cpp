#include <fmt/core.h>

#include <algorithm>

#include "desk/lookup.hpp"
#include "desk/views.hpp"
#include "evidence/siblings.hpp"

namespace wm::desk {
namespace {

/// The latest reading as its verdict has it, the mean of its repeats; nothing when there is none.
const describe::AnyQuantity* latest_value(const bay::CheckRecord& check) {
  const auto* last = check.latest();
  if (last == nullptr || last->reading.over_range) return nullptr;
  if (last->verdict && last->verdict->value) return &*last->verdict->value;
  return last->reading.value ? &*last->reading.value : nullptr;
}

/// One kind of reading at a time, for its length where every length is known: an outlier is worth
/// a look, and no verdict.
void compare_with_siblings(CheckGroup& group, const bay::Aircraft& aircraft) {
  if (group.checks.empty()) return;
  const auto kind = group.checks.front().kind;
  std::vector<CheckLine*> lines;
  bool by_length = true;
  for (auto& line : group.checks) {
    const auto& check = aircraft.checks.find(line.id)->second;
    if (line.kind != kind || latest_value(check) == nullptr) continue;
    by_length = by_length && check.about.length && check.about.length->value.si > 0.0;
    lines.push_back(&line);
  }
  std::vector<double> values;
  double u = 0.0;
  for (const auto* line : lines) {
    const auto& check = aircraft.checks.find(line->id)->second;
    const auto& value = *latest_value(check);
    const double terminals = check.about.terminals ? check.about.terminals->value.si : 0.0;
    const double length = by_length ? check.about.length->value.si : 1.0;
    values.push_back((value.si - (by_length ? terminals : 0.0)) / length);
    u = std::max(u, value.expanded_si.value_or(0.0) / 2.0 / length);
  }
  if (values.size() < 3) return;
  const auto found = evidence::compare_siblings(values, u);
  if (!found) return;
  const char* basis = by_length ? " for its length" : "";
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto& standing = found->each[i];
    lines[i]->stands_out = standing.standing == evidence::Standing::stands_out;
    lines[i]->among = lines[i]->stands_out
                          ? fmt::format("stands out from its siblings{}: {} than their middle",
                                        basis, standing.from_median > 0 ? "higher" : "lower")
                          : fmt::format("like its siblings{}", basis);
  }
}

}  // namespace

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
    compare_with_siblings(group, aircraft);
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
