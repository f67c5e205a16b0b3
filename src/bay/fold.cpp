#include <algorithm>
#include <utility>

#include "bay/state.hpp"

// One small function an event kind. None of them fails: what does not fit is written down as an
// oddity and shown, because a record that cannot be read is worse than one that contradicts itself.
namespace wm::bay {
namespace {

struct Taking {
  State& state;
  const Event& event;
  Date day;
  Sequence sequence;
  bool corrected;

  void odd(std::string words) const { state.oddities.push_back({sequence, std::move(words)}); }

  Aircraft& aircraft(const std::string& id) const {
    auto [at, fresh] = state.aircraft.try_emplace(id);
    if (fresh) {
      at->second.about.id = id;
      odd("refers to aircraft `" + id + "`, which the record has not described before");
    }
    return at->second;
  }
};

/// Insert so that the list stays in the order in which things happened.
template <class T>
T& insert_in_order(std::vector<T>& list, T item, Date(T::* day)) {
  auto at = list.end();
  while (at != list.begin() && item.*day < (*std::prev(at)).*day) --at;
  return *list.insert(at, std::move(item));
}

std::optional<double> figure(const CounterReading& reading) {
  if (reading.hours) return reading.hours->value.si / 3600.0;
  if (reading.count) return static_cast<double>(*reading.count);
  return std::nullopt;
}

/// Take counter readings in, and give the totals at that moment.
std::map<std::string, double> take_readings(const Taking& t, Aircraft& aircraft,
                                            const std::vector<CounterReading>& at) {
  std::map<std::string, double> totals;
  for (const auto& reading : at) {
    const auto found = aircraft.counters.find(reading.counter);
    const auto value = figure(reading);
    if (found == aircraft.counters.end() || !value) {
      t.odd("reads a counter `" + reading.counter + "` that is not defined");
      continue;
    }
    auto& series = found->second.series;
    const auto added = series.add({t.day, t.sequence, *value, false, {}});
    if (!added) {
      t.odd(added.error().what);
      continue;
    }
    if (const auto total = found->second.on(t.day)) totals[reading.counter] = *total;
  }
  return totals;
}

/// Totals that were not read at the moment are taken from the series where it reaches.
void fill_from_series(std::map<std::string, double>& totals, const Aircraft& aircraft, Date day) {
  for (const auto& [id, counter] : aircraft.counters) {
    if (totals.contains(id)) continue;
    if (const auto total = counter.on(day)) totals[id] = *total;
  }
}

void take(const Taking& t, const AircraftDescribed& e) { t.state.aircraft[e.id].about = e; }
void take(const Taking& t, const CounterDefined& e) {
  auto& counter = t.aircraft(e.aircraft).counters[e.id];
  counter.about = e;
  if (counter.series.points().empty()) counter.series = life::CounterSeries(unit_of(e.kind));
}
void take(const Taking& t, const CounterRead& e) { take_readings(t, t.aircraft(e.aircraft), e.at); }
void take(const Taking& t, const CounterReplaced& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  const auto found = aircraft.counters.find(e.counter);
  if (found == aircraft.counters.end()) return t.odd("replaces a counter that is not defined");
  life::CounterEvent exchange{t.day, t.sequence, 0, true, {}};
  if (e.old_last_hours) exchange.old_shown = e.old_last_hours->value.si / 3600.0;
  if (e.new_first_hours) exchange.shown = e.new_first_hours->value.si / 3600.0;
  if (e.old_last_count) exchange.old_shown = static_cast<double>(*e.old_last_count);
  if (e.new_first_count) exchange.shown = static_cast<double>(*e.new_first_count);
  const auto added = found->second.series.add(exchange);
  if (!added) t.odd(added.error().what);
}
void take(const Taking& t, const PositionAdded& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  if (aircraft.positions.insert_or_assign(e.id, e).second) aircraft.position_order.push_back(e.id);
}
void take(const Taking& t, const JointAdded& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  auto [at, fresh] = aircraft.joints.try_emplace(e.id);
  at->second.about = e;
  if (fresh) aircraft.joint_order.push_back(e.id);
}
void take(const Taking& t, const PartRegistered& e) { t.state.parts[e.id].about = e; }

void take(const Taking& t, const PartInstalled& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  auto& part = t.state.parts[e.part];
  if (part.about.id.empty()) {
    part.about.id = e.part;
    t.odd("installs part `" + e.part + "`, which is not registered");
  }
  Installation installation{e.part, e.aircraft, e.position, t.day, {}, {}, {}, t.sequence, 0, {}};
  installation.day_known = e.day_known;
  installation.from_counters = take_readings(t, aircraft, e.at);
  if (e.day_known) fill_from_series(installation.from_counters, aircraft, t.day);
  insert_in_order(part.installations, std::move(installation), &Installation::from);
  // Old installations may be entered late: the position holds the part that was fitted last.
  auto& fitted = aircraft.fitted[e.position];
  const auto holder = t.state.parts.find(fitted);
  const bool newer = holder == t.state.parts.end() || holder->second.current() == nullptr ||
                     holder->second.current()->from <= t.day;
  if (newer) fitted = e.part;
}
void take(const Taking& t, const PartRemoved& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  const auto found = t.state.parts.find(e.part);
  if (found == t.state.parts.end()) return t.odd("removes part `" + e.part + "`, not registered");
  auto& list = found->second.installations;
  // Old history is entered as one act, its removal right behind its installation: that one is
  // meant, even where the part was fitted elsewhere on the day on which it was taken out.
  auto open = std::find_if(list.rbegin(), list.rend(), [&](const Installation& i) {
    return !i.to && i.from <= t.day && i.fitted == t.sequence - 1;
  });
  if (open == list.rend()) {
    open = std::find_if(list.rbegin(), list.rend(),
                        [&](const Installation& i) { return !i.to && i.from <= t.day; });
  }
  if (open == list.rend()) return t.odd("removes part `" + e.part + "`, which was not installed");
  open->to = t.day;
  open->removed = t.sequence;
  open->why_removed = e.reason;
  open->to_counters = take_readings(t, aircraft, e.at);
  fill_from_series(open->to_counters, aircraft, t.day);
  const auto holder = aircraft.fitted.find(open->position);
  if (holder == aircraft.fitted.end() || holder->second != e.part) return;
  // An old removal entered late: the same part may have come back since.
  const auto* current = found->second.current();
  const bool came_back =
      current != nullptr && current->aircraft == e.aircraft && current->position == open->position;
  if (!came_back) aircraft.fitted.erase(holder);
}
void take(const Taking& t, const LimitSet& e) {
  auto& limit = t.aircraft(e.aircraft).limits[e.id];
  limit.about = e;
  limit.sequence = t.sequence;
}

void mark_done(const Taking& t, Aircraft& aircraft, const std::string& id,
               std::map<std::string, double> totals, const std::string& text) {
  const auto found = aircraft.limits.find(id);
  if (found == aircraft.limits.end()) return t.odd("does task `" + id + "`, which is no limit");
  fill_from_series(totals, aircraft, t.day);
  insert_in_order(found->second.done, LimitRecord::Done{t.day, t.sequence, std::move(totals), text},
                  &LimitRecord::Done::day);
}
void take(const Taking& t, const TaskDone& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  mark_done(t, aircraft, e.limit, take_readings(t, aircraft, e.at), e.text);
}
void take(const Taking& t, const QuickJobDone& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  const auto totals = take_readings(t, aircraft, e.at);
  for (const auto& limit : e.limits) mark_done(t, aircraft, limit, totals, e.text);
  aircraft.quick_jobs[e.id] = {e, t.sequence, t.day};
}
void take(const Taking& t, const InstrumentRegistered& e) {
  auto& instrument = t.state.instruments[e.id];
  instrument.about = e;
  instrument.bad.reset();  // registered anew: repaired, calibrated
}
void take(const Taking& t, const InstrumentFoundBad& e) {
  auto& instrument = t.state.instruments[e.instrument];
  instrument.bad = e;
  instrument.found_bad_on = t.day;
}
void take(const Taking& t, const CheckDescribed& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  auto [at, fresh] = aircraft.checks.try_emplace(e.id);
  at->second.about = e;
  if (fresh) aircraft.check_order.push_back(e.id);
}
void take(const Taking& t, const ReadingTaken& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  const auto found = aircraft.checks.find(e.check);
  if (found == aircraft.checks.end()) return t.odd("reads check `" + e.check + "`, not described");
  ReadingRecord record{t.sequence, t.event.meta.id, t.day, t.event.meta.happened, e, {}, {},
                       {},         t.corrected};
  if (const auto at = aircraft.fitted.find(found->second.about.position);
      at != aircraft.fitted.end()) {
    record.part = at->second;
  }
  if (const auto* hours = aircraft.engine_hours()) record.engine_hours = hours->on(t.day);
  insert_in_order(found->second.readings, std::move(record), &ReadingRecord::day);
}
void take(const Taking& t, const VerdictGiven& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  const auto found = aircraft.checks.find(e.check);
  if (found == aircraft.checks.end()) return t.odd("judges check `" + e.check + "`, not described");
  for (auto& reading : found->second.readings) {
    if (reading.event == t.event.meta.refers_to) reading.verdict = e;
  }
}
void take(const Taking& t, const DefectNoted& e) {
  t.aircraft(e.aircraft).defects[e.id] = {
      e, t.day, t.sequence, t.event.meta.happened, e.decision, e.reason, {}, false, {}};
}
void take(const Taking& t, const DefectDecided& e) {
  auto& defects = t.aircraft(e.aircraft).defects;
  const auto found = defects.find(e.defect);
  if (found == defects.end()) return t.odd("decides on defect `" + e.defect + "`, not noted");
  found->second.decision = e.decision;
  found->second.reason = e.reason;
  found->second.until = e.until;
}
void take(const Taking& t, const DefectClosed& e) {
  auto& defects = t.aircraft(e.aircraft).defects;
  const auto found = defects.find(e.defect);
  if (found == defects.end()) return t.odd("closes defect `" + e.defect + "`, not noted");
  found->second.closed = true;
  found->second.how = e.how;
}
void take(const Taking& t, const ChangePlanned& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  auto [at, fresh] = aircraft.changes.try_emplace(e.id);
  at->second.about = e;
  at->second.sequence = t.sequence;
  if (fresh) aircraft.change_order.push_back(e.id);
}
void take(const Taking& t, const ChangeDone& e) {
  auto& changes = t.aircraft(e.aircraft).changes;
  const auto found = changes.find(e.change);
  if (found == changes.end()) return t.odd("does change `" + e.change + "`, not planned");
  found->second.done = true;
  found->second.done_on = t.day;
  found->second.done_sequence = t.sequence;
  found->second.result = e;
}
void take(const Taking& t, const ChangeWithdrawn& e) {
  auto& changes = t.aircraft(e.aircraft).changes;
  const auto found = changes.find(e.change);
  if (found == changes.end()) return t.odd("withdraws change `" + e.change + "`, not planned");
  found->second.withdrawn = true;
}
bool contains(const std::vector<std::string>& list, const std::string& item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}
void take(const Taking& t, const StagePlanned& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  auto [at, fresh] = aircraft.stages.try_emplace(e.id);
  // Objections were answered for the changes that stood there then.
  if (!fresh && brings_more(at->second.about, e)) at->second.answers.clear();
  at->second.about = e;
  at->second.sequence = t.sequence;
  if (fresh) aircraft.stage_order.push_back(e.id);
  // A change sits in one stage: the last one that asks for it.
  for (auto& [id, other] : aircraft.stages) {
    const bool is_signed = other.state == StageState::open || other.state == StageState::closed;
    if (id == e.id || is_signed) continue;
    std::erase_if(other.about.changes,
                  [&](const std::string& c) { return contains(e.changes, c); });
  }
  for (auto& [id, change] : aircraft.changes) {
    if (change.stage == e.id) change.stage.clear();
  }
  for (const auto& id : e.changes) {
    const auto found = aircraft.changes.find(id);
    if (found != aircraft.changes.end()) found->second.stage = e.id;
  }
}
Stage* find_stage(const Taking& t, const std::string& aircraft, const std::string& id) {
  auto& stages = t.aircraft(aircraft).stages;
  const auto found = stages.find(id);
  if (found != stages.end()) return &found->second;
  t.odd("refers to stage `" + id + "`, not planned");
  return nullptr;
}
void take(const Taking& t, const StageRuleAnswered& e) {
  if (auto* stage = find_stage(t, e.aircraft, e.stage)) stage->answers.push_back(e);
}
void take(const Taking& t, const JointWorked& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  const auto found = aircraft.joints.find(e.joint);
  if (found == aircraft.joints.end()) return t.odd("works joint `" + e.joint + "`, not described");
  auto& joint = found->second;
  joint.ever_worked = true;
  if (e.state == JointState::open) {
    joint.reached.clear();
    joint.torque.reset();
    joint.outside_band.clear();
  }
  joint.state = e.state;
  joint.reached.insert(e.state);
  joint.since = t.sequence;
  const bool looking = e.state == JointState::marked || e.state == JointState::seen;
  if (!looking) {
    // An old mark and an old look say nothing about what was done since.
    const bool moved = e.state != JointState::locked;
    if (moved) joint.reached.erase(JointState::marked);
    joint.reached.erase(JointState::seen);
    joint.disturbed = t.sequence;
    joint.worked_by = e.by;
  }
  joint.by = e.by;
  if (!e.stage.empty()) joint.stage = e.stage;
  if (e.torque) {
    joint.torque = e.torque;
    joint.outside_band = e.reason_outside_band;
  }
  if (!e.torque_table.empty()) joint.torque_table = e.torque_table;
  if (joint.closed()) {
    joint.open_number = 0;
  } else if (joint.open_number == 0) {
    joint.open_number = ++aircraft.joints_opened;
  }
}
void take(const Taking& t, const BungCounted& e) {
  auto& bungs = t.aircraft(e.aircraft).bungs;
  if (e.fitted) {
    bungs[e.id] = {e, t.day};
  } else {
    bungs.erase(e.id);
  }
}
void take(const Taking& t, const CowlMoved& e) { t.aircraft(e.aircraft).cowl_closed = e.closed; }
void take(const Taking& t, const MassRevised& e) {
  t.aircraft(e.aircraft).masses.push_back(e);
  if (e.stage.empty()) return;
  if (auto* stage = find_stage(t, e.aircraft, e.stage)) stage->mass = e;
}
void take(const Taking& t, const StageStepDone& e) {
  take_readings(t, t.aircraft(e.aircraft), e.at);
  if (auto* stage = find_stage(t, e.aircraft, e.stage)) {
    stage->steps.push_back({e, t.sequence, t.event.meta.id, t.day, t.event.meta.happened});
  }
}
void take(const Taking& t, const EntrySigned& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  Entry entry{e, t.event.meta.id, t.day, t.sequence, t.event.meta.happened, false};
  // What the text reports and was corrected after this signature makes it amended.
  for (const auto& id : e.covers) {
    const auto found = t.state.corrections.find(id);
    if (found == t.state.corrections.end()) continue;
    for (const auto index : found->second) {
      if (t.state.events[index]->meta.sequence > t.sequence) entry.amended_after_signature = true;
    }
  }
  aircraft.entries[e.id] = std::move(entry);
  const auto stage = aircraft.stages.find(e.about);
  if (stage != aircraft.stages.end()) stage->second.entries.push_back(e.id);
}
void take(const Taking& t, const StageMoved& e) {
  if (auto* stage = find_stage(t, e.aircraft, e.stage)) {
    stage->state = e.to;
    stage->reason = e.reason;
  }
}
void take(const Taking& t, const HoseDrawn& e) {
  auto& aircraft = t.aircraft(e.aircraft);
  auto [at, fresh] = aircraft.hoses.try_emplace(e.id);
  auto& hose = at->second;
  hose.about = e;
  hose.event = t.event.meta.id;
  hose.day = t.day;
  hose.sequence = t.sequence;
  if (fresh) aircraft.hose_order.push_back(e.id);
}
void take(const Taking& t, const HoseProved& e) {
  auto& hoses = t.aircraft(e.aircraft).hoses;
  const auto found = hoses.find(e.hose);
  if (found == hoses.end()) return t.odd("proves hose `" + e.hose + "`, which is not drawn");
  insert_in_order(found->second.proofs, HoseRecord::Proof{e, t.event.meta.id, t.day, t.sequence},
                  &HoseRecord::Proof::day);
}
void take(const Taking& t, const PartDecided& e) {
  insert_in_order(t.aircraft(e.aircraft).decisions[e.position],
                  DecisionRecord{e, t.event.meta.id, t.day, t.sequence}, &DecisionRecord::day);
}
void take(const Taking& t, const AttachmentAdded& e) {
  t.state.attachments.push_back({e, t.sequence, t.day});
}
void take(const Taking&, const EventCorrected&) {}
void take(const Taking&, const SheetImported&) {}

/// Everything but the list of events and of corrections, anew.
void take_event(State& state, std::size_t index) {
  const Event& event = *state.events[index];
  const bool corrected = state.corrections.contains(event.meta.id);
  const Taking taking{state, event, event.day(), event.meta.sequence, corrected};
  std::visit([&](const auto& body) { take(taking, body); }, state.effective(index));
}

void add_to_list(State& state, std::shared_ptr<const Event> event) {
  const auto index = state.events.size();
  state.sequence = event->meta.sequence;
  state.by_id.emplace(event->meta.id, index);
  if (std::holds_alternative<EventCorrected>(event->payload)) {
    state.corrections[event->meta.refers_to].push_back(index);
  }
  state.events.push_back(std::move(event));
}

}  // namespace

State fold(std::vector<std::shared_ptr<const Event>> events) {
  State state;
  state.events.reserve(events.size());
  state.by_id.reserve(events.size());
  for (auto& event : events) add_to_list(state, std::move(event));
  for (std::size_t i = 0; i < state.events.size(); ++i) take_event(state, i);
  return state;
}

void apply(State& state, std::shared_ptr<const Event> event) {
  if (std::holds_alternative<EventCorrected>(event->payload)) {
    auto events = std::move(state.events);
    events.push_back(std::move(event));
    auto head = std::move(state.head);
    state = fold(std::move(events));
    state.head = std::move(head);
    return;
  }
  add_to_list(state, std::move(event));
  take_event(state, state.events.size() - 1);
}

}  // namespace wm::bay
