#include "desk/sheet.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"

namespace wm::desk {
namespace {

bay::PositionAdded payload(const std::string& aircraft, const SheetPosition& p) {
  return {aircraft,         p.id,     p.name,   p.system, p.chapter, p.area,
          p.redundant_with, p.plan_x, p.plan_y, p.note};
}
bay::JointAdded payload(const std::string& aircraft, const SheetJoint& j) {
  return {aircraft,       j.id,          j.name,         j.position, j.other_position,     j.kind,
          j.torque_least, j.torque_most, j.torque_table, j.locking,  j.needs_second_person};
}
bay::PartRegistered payload(const SheetPart& p) {
  return {p.id,    p.type,      p.description, p.serial, p.batch, p.maker_reference,
          p.cured, p.assembled, p.papers,      p.mass,   p.note};
}
bay::CounterDefined payload(const std::string& aircraft, const SheetCounter& c) {
  return {aircraft, c.id, c.name, c.kind, c.meter};
}
bay::LimitSet payload(const std::string& aircraft, const SheetLimit& l) {
  return {aircraft,       l.id,          l.title,        l.position,        l.counter,
          l.every_hours,  l.every_count, l.every_months, l.month_rule,      l.every_days,
          l.which,        l.repeating,   l.carry,        l.tolerance_hours, l.tolerance_days,
          l.on_condition, l.start,       l.since,        l.since_counter,   l.authority,
          l.document,     l.revision};
}
bay::CheckDescribed payload(const std::string& aircraft, const SheetCheck& c) {
  return {aircraft,
          c.id,
          c.title,
          c.position,
          c.kind,
          c.group,
          c.order,
          c.probes,
          c.procedure,
          c.lowest,
          c.highest,
          c.length,
          c.lowest_per_length,
          c.highest_per_length,
          c.terminals,
          c.unit,
          c.authority,
          c.document,
          c.revision};
}

SheetPosition section(const bay::PositionAdded& p) {
  return {p.id, p.name, p.system, p.chapter, p.area, p.redundant_with, p.plan_x, p.plan_y, p.note};
}
SheetJoint section(const bay::JointAdded& j) {
  return {j.id,           j.name,        j.position,     j.other_position, j.kind,
          j.torque_least, j.torque_most, j.torque_table, j.locking,        j.needs_second_person};
}
SheetLimit section(const bay::LimitSet& l) {
  return {l.id,          l.title,        l.position,        l.counter,        l.every_hours,
          l.every_count, l.every_months, l.month_rule,      l.every_days,     l.which,
          l.repeating,   l.carry,        l.tolerance_hours, l.tolerance_days, l.on_condition,
          l.start,       l.since,        l.since_counter,   l.authority,      l.document,
          l.revision};
}
SheetCheck section(const bay::CheckDescribed& c) {
  return {c.id,
          c.title,
          c.position,
          c.kind,
          c.group,
          c.order,
          c.probes,
          c.procedure,
          c.lowest,
          c.highest,
          c.length,
          c.lowest_per_length,
          c.highest_per_length,
          c.terminals,
          c.unit,
          c.authority,
          c.document,
          c.revision};
}

/// Takes one section after the other into a trial state, so that the rules of the single acts
/// hold for a sheet too, and later sections see earlier ones.
class Importer {
 public:
  Importer(const Desk& desk, std::string aircraft)
      : desk_(desk), trial_(desk.state), aircraft_(std::move(aircraft)) {}

  template <class Payload>
  void take(const std::string& path, const std::string& what, const Payload& body,
            const Payload* before, Simple (*act)(const Payload&, const Desk&),
            const std::string& happened = {}, bool checks_again = false) {
    if (before != nullptr && describe::equal(describe::type_of<Payload>(), &body, before)) {
      ++answer.same;
      return;
    }
    auto problems = check_references(describe::type_of<Payload>(), &body, trial_);
    if (problems.empty() && (before == nullptr || checks_again)) {
      const Desk trial{trial_, desk_.context, happened.empty() ? desk_.happened : happened,
                       desk_.author, desk_.decode};
      auto outcome = act(body, trial);
      if (!outcome) problems = outcome.error();
    }
    for (auto& p : problems) {
      p.path = p.path.empty() ? path : path + "/" + p.path;
      all.push_back(std::move(p));
    }
    if (!problems.empty()) return;
    if (before != nullptr) {
      ++answer.changed;
      answer.changes.push_back(what + ": changed");
    } else {
      ++answer.added;
    }
    record(body, happened);
  }

  void record(bay::Payload body, const std::string& happened) {
    auto event = std::make_shared<bay::Event>();
    event->meta.id = fmt::format("trial-{}", events.size());
    event->meta.sequence = trial_.sequence + 1;
    event->meta.happened = happened.empty() ? desk_.happened : happened;
    event->payload = body;
    bay::apply(trial_, event);
    events.push_back({std::move(body), {}, happened});
  }

  [[nodiscard]] const bay::State& trial() const { return trial_; }
  [[nodiscard]] const bay::Aircraft* aircraft() const { return trial_.find_aircraft(aircraft_); }

  Problems all;
  std::vector<NewEvent> events;
  ImportAnswer answer;

 private:
  const Desk& desk_;
  bay::State trial_;
  std::string aircraft_;
};

template <class Map, class Get>
auto* before_of(const bay::Aircraft* aircraft, Map bay::Aircraft::* map, const std::string& id,
                Get get) {
  using Payload =
      std::remove_reference_t<decltype(get(std::declval<const typename Map::mapped_type&>()))>;
  const Payload* none = nullptr;
  if (aircraft == nullptr) return none;
  const auto found = (aircraft->*map).find(id);
  return found == (aircraft->*map).end() ? none : &get(found->second);
}

/// Whether the counter showed this on that day already. What the instrument shows counts, not
/// the total: an exchanged meter shows less.
bool is_on_record(const bay::Aircraft* aircraft, const SheetCounter& c) {
  if (aircraft == nullptr) return false;
  const auto found = aircraft->counters.find(c.id);
  if (found == aircraft->counters.end()) return false;
  const double shown = c.hours ? c.hours->value.si / 3600.0 : static_cast<double>(*c.count);
  const auto& points = found->second.series.points();
  return std::any_of(points.begin(), points.end(), [&](const auto& p) {
    return p.event.on == *c.read_on && std::abs(p.event.shown - shown) < 1e-6;
  });
}

/// "1140.6 h"; more decimals only where they were read.
std::string as_read(double hours) {
  const double tenths = hours * 10;
  const bool fits = std::abs(tenths - std::round(tenths)) < 1e-5;
  return (fits ? fmt::format("{:.1f}", hours) : fmt::format("{:.8g}", hours)) + " h";
}

void import_counters(Importer& to, const AircraftSheet& in) {
  for (std::size_t i = 0; i < in.counters.size(); ++i) {
    const auto& c = in.counters[i];
    const auto path = fmt::format("counters/{}", i);
    const auto* before =
        before_of(to.aircraft(), &bay::Aircraft::counters, c.id,
                  [](const bay::Counter& x) -> const bay::CounterDefined& { return x.about; });
    to.take(path, "counter " + c.id, payload(in.aircraft.id, c), before, &define_counter);
    if (!c.hours && !c.count) continue;
    if (!c.read_on) {
      to.all.push_back({Kind::missing,
                        path + "/read_on",
                        "a reading needs its day",
                        "the day of the reading",
                        "2026-11-25",
                        {},
                        {}});
      continue;
    }
    const bay::CounterRead reading{
        in.aircraft.id, {{c.id, c.hours, c.count}}, "from the aircraft sheet"};
    if (is_on_record(to.aircraft(), c)) {
      ++to.answer.same;
      continue;
    }
    to.take<bay::CounterRead>(path, "reading of " + c.id, reading, nullptr, &read_counter,
                              quantity::print_date(*c.read_on));
  }
}

void import_parts(Importer& to, const AircraftSheet& in) {
  for (std::size_t i = 0; i < in.parts.size(); ++i) {
    const auto& p = in.parts[i];
    const auto path = fmt::format("parts/{}", i);
    const auto known = to.trial().parts.find(p.id);
    const auto* before = known == to.trial().parts.end() ? nullptr : &known->second.about;
    to.take(path, "part " + p.id, payload(p), before, &register_part);
    if (p.position.empty()) continue;
    const auto* aircraft = to.aircraft();
    const auto fitted =
        aircraft ? aircraft->fitted.find(p.position) : decltype(aircraft->fitted.end()){};
    if (aircraft && fitted != aircraft->fitted.end() && fitted->second == p.id) {
      ++to.answer.same;
      continue;
    }
    const bay::PartInstalled installed{in.aircraft.id,       p.id, p.position, p.at, {},
                                       p.fitted.has_value(), {}};
    to.take<bay::PartInstalled>(path, "part " + p.id + " installed", installed, nullptr, &fit_part,
                                p.fitted ? quantity::print_date(*p.fitted) : std::string{});
  }
}

}  // namespace

Checked<Outcome<ImportAnswer>> import_sheet(const AircraftSheet& in, const Desk& desk) {
  const auto& id = in.aircraft.id;
  Importer to(desk, id);
  const auto* there = desk.state.find_aircraft(id);
  to.take("aircraft", "aircraft " + id, in.aircraft, there ? &there->about : nullptr,
          &describe_aircraft, {}, true);
  if (!to.all.empty()) return Fail(std::move(to.all));
  import_counters(to, in);
  // Halves of a pair name each other: all positions first, their references afterwards.
  for (std::size_t i = 0; i < in.positions.size(); ++i) {
    auto body = payload(id, in.positions[i]);
    const auto* before =
        before_of(to.aircraft(), &bay::Aircraft::positions, body.id,
                  [](const bay::PositionAdded& x) -> const bay::PositionAdded& { return x; });
    const auto half =
        std::find_if(in.positions.begin(), in.positions.end(),
                     [&](const SheetPosition& p) { return p.id == body.redundant_with; });
    const bool later =
        half != in.positions.end() &&
        (to.aircraft() == nullptr || !to.aircraft()->positions.contains(body.redundant_with));
    const auto wanted = body.redundant_with;
    if (later) body.redundant_with.clear();
    to.take(fmt::format("positions/{}", i), "position " + body.id, body, before, &add_position);
    if (later && to.all.empty() && !to.events.empty()) {
      body.redundant_with = wanted;
      to.events.back().payload = body;
    }
  }
  for (std::size_t i = 0; i < in.joints.size(); ++i) {
    const auto body = payload(id, in.joints[i]);
    const auto* before =
        before_of(to.aircraft(), &bay::Aircraft::joints, body.id,
                  [](const bay::JointRecord& x) -> const bay::JointAdded& { return x.about; });
    to.take(fmt::format("joints/{}", i), "joint " + body.id, body, before, &add_joint);
  }
  import_parts(to, in);
  for (std::size_t i = 0; i < in.limits.size(); ++i) {
    const auto body = payload(id, in.limits[i]);
    const auto* before =
        before_of(to.aircraft(), &bay::Aircraft::limits, body.id,
                  [](const bay::LimitRecord& x) -> const bay::LimitSet& { return x.about; });
    to.take(fmt::format("limits/{}", i), "limit " + body.id, body, before, &set_limit, {}, true);
  }
  for (std::size_t i = 0; i < in.checks.size(); ++i) {
    const auto body = payload(id, in.checks[i]);
    const auto* before =
        before_of(to.aircraft(), &bay::Aircraft::checks, body.id,
                  [](const bay::CheckRecord& x) -> const bay::CheckDescribed& { return x.about; });
    to.take(fmt::format("checks/{}", i), "check " + body.id, body, before, &describe_check, {},
            true);
  }
  if (in.mass) {
    const auto& m = *in.mass;
    const bay::MassRevised body{id,          {},
                                {},          m.empty_mass,
                                m.empty_arm, m.forward_limit,
                                m.aft_limit, m.greatest_mass,
                                m.document,  "from the aircraft sheet"};
    const auto* aircraft = to.aircraft();
    // A sheet knows the figures, not the stage and the items that led to them.
    std::optional<bay::MassRevised> before;
    if (aircraft && !aircraft->masses.empty()) {
      before = aircraft->masses.back();
      before->stage.clear();
      before->items.clear();
      before->note = body.note;
    }
    to.take("mass", "mass and balance", body, before ? &*before : nullptr, &revise_mass, {}, true);
  }
  if (!to.all.empty()) return Fail(std::move(to.all));
  if (!to.events.empty()) {
    to.events.push_back({bay::SheetImported{id,
                                            {},
                                            static_cast<std::int64_t>(in.positions.size()),
                                            static_cast<std::int64_t>(in.joints.size()),
                                            static_cast<std::int64_t>(in.parts.size()),
                                            static_cast<std::int64_t>(in.limits.size()),
                                            static_cast<std::int64_t>(in.checks.size())},
                         {},
                         {}});
  }
  to.answer.aircraft = id;
  to.answer.words = to.events.empty()
                        ? "Nothing to do: the binder says the same."
                        : fmt::format("{}: {} added, {} changed, {} as before.", in.aircraft.name,
                                      to.answer.added, to.answer.changed, to.answer.same);
  return Outcome<ImportAnswer>{std::move(to.events), std::move(to.answer)};
}

AircraftSheet sheet_of(const bay::State& state, const bay::Aircraft& aircraft) {
  AircraftSheet out;
  out.aircraft = aircraft.about;
  if (!aircraft.masses.empty()) {
    const auto& m = aircraft.masses.back();
    out.mass = SheetMass{m.empty_mass, m.empty_arm,     m.forward_limit,
                         m.aft_limit,  m.greatest_mass, m.document};
  }
  for (const auto& [id, counter] : aircraft.counters) {
    SheetCounter c{
        counter.about.id, counter.about.name, counter.about.kind, counter.about.meter, {}, {}, {}};
    if (!counter.series.points().empty()) {
      const auto& last = counter.series.points().back().event;
      c.read_on = last.on;
      if (bay::counts_hours(counter.about.kind)) {
        c.hours =
            bay::Entered<bay::Duration>{quantity::hours(last.shown), 360.0, as_read(last.shown)};
      } else {
        c.count = static_cast<std::int64_t>(last.shown);
      }
    }
    out.counters.push_back(std::move(c));
  }
  for (const auto& id : aircraft.position_order)
    out.positions.push_back(section(aircraft.positions.at(id)));
  for (const auto& id : aircraft.joint_order)
    out.joints.push_back(section(aircraft.joints.at(id).about));
  for (const auto& id : aircraft.position_order) {
    const auto fitted = aircraft.fitted.find(id);
    if (fitted == aircraft.fitted.end()) continue;
    const auto& part = state.parts.at(fitted->second);
    const auto& a = part.about;
    SheetPart p{a.id,    a.type,      a.description, a.serial, a.batch, a.maker_reference,
                a.cured, a.assembled, a.papers,      a.mass,   a.note,  id,
                {},      {}};
    if (const auto* current = part.current(); current != nullptr && current->day_known)
      p.fitted = current->from;
    out.parts.push_back(std::move(p));
  }
  for (const auto& [id, limit] : aircraft.limits) out.limits.push_back(section(limit.about));
  for (const auto& id : aircraft.check_order)
    out.checks.push_back(section(aircraft.checks.at(id).about));
  return out;
}

}  // namespace wm::desk
