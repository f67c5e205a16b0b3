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
      const Desk trial{trial_,       desk_.context, happened.empty() ? desk_.happened : happened,
                       desk_.author, desk_.decode,  desk_.write};
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

  /// An earlier time of a part in a position: its installation and its removal together.
  void take_stay(const std::string& path, const PartFitted& stay, const std::string& happened) {
    auto problems = check_references(describe::type_of<PartFitted>(), &stay, trial_);
    if (problems.empty()) {
      const Desk trial{trial_, desk_.context, happened, desk_.author, desk_.decode, desk_.write};
      auto outcome = install_part(stay, trial);
      if (!outcome) problems = outcome.error();
      if (outcome) {
        ++answer.added;
        for (auto& e : outcome->events)
          record(std::move(e.payload), e.happened.empty() ? happened : e.happened);
      }
    }
    for (auto& p : problems) {
      p.path = path + "/" + p.path;
      all.push_back(std::move(p));
    }
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

bool is_same(double one, double other) { return std::abs(one - other) < 1e-6; }

/// Whether this exchange of a meter is on record already.
bool is_on_record(const bay::Aircraft* aircraft, const std::string& counter,
                  const SheetExchange& x) {
  if (aircraft == nullptr) return false;
  const auto found = aircraft->counters.find(counter);
  if (found == aircraft->counters.end()) return false;
  const double first = x.new_first_hours ? x.new_first_hours->value.si / 3600.0
                                         : static_cast<double>(x.new_first_count.value_or(0));
  const auto& points = found->second.series.points();
  return std::any_of(points.begin(), points.end(), [&](const auto& p) {
    return p.event.replaced && p.event.on == *x.on && is_same(p.event.shown, first);
  });
}

/// Whether the part is known to have been in that position from that day on.
bool is_on_record(const bay::State& state, const std::string& part, const std::string& aircraft,
                  const SheetStay& stay) {
  const auto found = state.parts.find(part);
  if (found == state.parts.end()) return false;
  const auto& list = found->second.installations;
  return std::any_of(list.begin(), list.end(), [&](const bay::Installation& i) {
    return i.aircraft == aircraft && i.position == stay.position && i.from == *stay.fitted;
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
    for (std::size_t k = 0; k < c.exchanges.size(); ++k) {
      const auto& x = c.exchanges[k];
      if (is_on_record(to.aircraft(), c.id, x)) {
        ++to.answer.same;
        continue;
      }
      const bay::CounterReplaced body{
          in.aircraft.id,    c.id,    x.old_last_hours, x.new_first_hours, x.old_last_count,
          x.new_first_count, x.reason};
      to.take<bay::CounterReplaced>(fmt::format("{}/exchanges/{}", path, k),
                                    "exchanged meter of " + c.id, body, nullptr, &replace_counter,
                                    quantity::print_date(*x.on));
    }
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
    for (std::size_t k = 0; k < p.earlier.size(); ++k) {
      const auto& stay = p.earlier[k];
      if (is_on_record(to.trial(), p.id, in.aircraft.id, stay)) {
        ++to.answer.same;
        continue;
      }
      to.take_stay(fmt::format("{}/earlier/{}", path, k),
                   {in.aircraft.id,
                    p.id,
                    stay.position,
                    stay.at,
                    {},
                    true,
                    stay.until_day,
                    stay.until,
                    stay.reason,
                    "from the aircraft sheet"},
                   quantity::print_date(*stay.fitted));
    }
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
                  // NOLINTNEXTLINE(bugprone-return-const-ref-from-parameter): the map holds it
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

namespace {

/// What stands in the record under a sequence number, as last corrected.
template <class Body>
const Body* body_at(const bay::State& state, bay::Sequence sequence) {
  const auto index = static_cast<std::size_t>(sequence) - 1;
  if (sequence <= 0 || index >= state.events.size()) return nullptr;
  return std::get_if<Body>(&state.effective(index));
}

/// Readings that were written down beside an act, but for those of a day on which the meter was
/// exchanged: a sheet knows days only, not which of the two meters showed it.
template <class Body>
std::vector<bay::CounterReading> readings_at(const bay::State& state, const bay::Aircraft& aircraft,
                                             bay::Sequence sequence, bay::Date day) {
  const auto* body = body_at<Body>(state, sequence);
  if (body == nullptr) return {};
  auto out = body->at;
  std::erase_if(out, [&](const bay::CounterReading& r) {
    const auto counter = aircraft.counters.find(r.counter);
    if (counter == aircraft.counters.end()) return true;
    const auto& points = counter->second.series.points();
    return std::any_of(points.begin(), points.end(),
                       [&](const auto& p) { return p.event.replaced && p.event.on == day; });
  });
  return out;
}

std::vector<SheetExchange> exchanges_of(const bay::State& state, const bay::Counter& counter) {
  std::vector<SheetExchange> out;
  for (const auto& point : counter.series.points()) {
    const auto& e = point.event;
    if (!e.replaced) continue;
    SheetExchange x;
    x.on = e.on;
    if (const auto* body = body_at<bay::CounterReplaced>(state, e.order)) {
      x.old_last_hours = body->old_last_hours;
      x.new_first_hours = body->new_first_hours;
      x.old_last_count = body->old_last_count;
      x.new_first_count = body->new_first_count;
      x.reason = body->reason;
    }
    out.push_back(std::move(x));
  }
  return out;
}

SheetPart part_section(const bay::State& state, const bay::Aircraft& aircraft,
                       const bay::Part& part) {
  const auto& a = part.about;
  SheetPart p{a.id,     a.type,      a.description,
              a.serial, a.batch,     a.maker_reference,
              a.cured,  a.assembled, a.papers,
              a.mass,   a.note,      {},
              {},       {},          {}};
  for (const auto& i : part.installations) {
    if (i.aircraft != aircraft.about.id || !i.to || !i.day_known) continue;
    p.earlier.push_back(
        {i.position, i.from, readings_at<bay::PartInstalled>(state, aircraft, i.fitted, i.from),
         i.to, readings_at<bay::PartRemoved>(state, aircraft, i.removed, *i.to), i.why_removed});
  }
  const auto* current = part.current();
  if (current == nullptr || current->aircraft != aircraft.about.id) return p;
  p.position = current->position;
  if (!current->day_known) return p;
  p.fitted = current->from;
  p.at = readings_at<bay::PartInstalled>(state, aircraft, current->fitted, current->from);
  return p;
}

/// Whether a part that is in no aircraft belongs into this one's sheet: it was in it, or nowhere.
bool is_on_its_shelf(const bay::Part& part, const std::string& aircraft) {
  if (part.current() != nullptr || part.about.type.empty()) return false;
  const auto& list = part.installations;
  return list.empty() || std::any_of(list.begin(), list.end(), [&](const bay::Installation& i) {
           return i.aircraft == aircraft;
         });
}

}  // namespace

std::vector<std::string> not_in_sheet(const bay::State& state, const bay::Aircraft& aircraft) {
  std::vector<std::string> out;
  const auto add = [&](std::size_t count, const char* what) {
    if (count > 0) out.push_back(fmt::format("{} {}", count, what));
  };
  std::size_t counter_readings = 0;
  for (const auto& [id, counter] : aircraft.counters) {
    const auto& points = counter.series.points();
    const auto plain = static_cast<std::size_t>(std::count_if(
        points.begin(), points.end(), [](const auto& p) { return !p.event.replaced; }));
    counter_readings += plain - (points.empty() || points.back().event.replaced ? 0 : 1);
  }
  std::size_t readings = 0;
  for (const auto& [id, check] : aircraft.checks) readings += check.readings.size();
  std::size_t tasks = 0;
  for (const auto& [id, limit] : aircraft.limits) tasks += limit.done.size();
  std::size_t unknown_stays = 0;
  for (const auto& [id, part] : state.parts) {
    for (const auto& i : part.installations) {
      if (i.aircraft == aircraft.about.id && i.to && !i.day_known) ++unknown_stays;
    }
  }
  add(counter_readings, "earlier counter readings");
  add(unknown_stays, "earlier installations whose first day is not known");
  add(tasks, "times that a limited task was done");
  add(readings, "readings of checks with their verdicts");
  add(state.instruments.size(), "instruments");
  add(aircraft.defects.size(), "defects");
  add(aircraft.changes.size(), "changes");
  add(aircraft.stages.size(), "stages");
  add(aircraft.quick_jobs.size(), "quick jobs");
  add(aircraft.entries.size(), "signed entries");
  add(state.attachments.size(), "attachments");
  return out;
}

std::string sheet_preface(const bay::State& state, const std::string& aircraft) {
  const auto* found = state.find_aircraft(aircraft);
  if (found == nullptr) return {};
  const auto lines = not_in_sheet(state, *found);
  if (lines.empty()) return {};
  std::string out = "# The binder holds more than a sheet can. Not in here:\n";
  for (const auto& line : lines) out += "#   " + line + "\n";
  return out + "\n";
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
    SheetCounter c{counter.about.id,
                   counter.about.name,
                   counter.about.kind,
                   counter.about.meter,
                   {},
                   {},
                   {},
                   {}};
    c.exchanges = exchanges_of(state, counter);
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
    out.parts.push_back(part_section(state, aircraft, state.parts.at(fitted->second)));
  }
  for (const auto& [id, part] : state.parts) {
    if (is_on_its_shelf(part, aircraft.about.id))
      out.parts.push_back(part_section(state, aircraft, part));
  }
  for (const auto& [id, limit] : aircraft.limits) out.limits.push_back(section(limit.about));
  for (const auto& id : aircraft.check_order)
    out.checks.push_back(section(aircraft.checks.at(id).about));
  return out;
}

}  // namespace wm::desk
