#include "bay/state.hpp"

#include <algorithm>

namespace wm::bay {

std::optional<double> Counter::now() const {
  if (points.empty()) return std::nullopt;
  return points.back().total;
}

std::optional<double> Counter::on(Date day) const {
  const auto later = std::upper_bound(points.begin(), points.end(), day,
                                      [](Date d, const CounterPoint& p) { return d < p.day; });
  if (later == points.begin()) return std::nullopt;
  const auto& before = *std::prev(later);
  if (before.day == day || later == points.end()) return before.total;
  const double span = quantity::days_between(before.day, later->day);
  const double share = quantity::days_between(before.day, day) / span;
  return before.total + share * (later->total - before.total);
}

double Counter::total_of(double reading, Date day, Sequence sequence) const {
  double offset = 0;
  for (const auto& exchange : exchanges) {
    const bool before = exchange.day < day || (exchange.day == day && exchange.sequence < sequence);
    if (before) offset += exchange.old_last - exchange.new_first;
  }
  return reading + offset;
}

const Installation* Part::current() const {
  if (installations.empty() || installations.back().to) return nullptr;
  return &installations.back();
}

const ReadingRecord* CheckRecord::latest() const {
  return readings.empty() ? nullptr : &readings.back();
}

bool JointRecord::closed() const {
  if (!ever_worked) return true;
  const auto has = [&](JointState s) { return reached.contains(s); };
  if (about.torque_most && !has(JointState::torqued)) return false;
  if (!about.torque_most && !has(JointState::assembled) && !has(JointState::torqued)) return false;
  if (!about.locking.empty() && !has(JointState::locked)) return false;
  return has(JointState::marked) && has(JointState::seen);
}

const StepRecord* Stage::latest(StageStep step) const {
  const StepRecord* found = nullptr;
  for (const auto& record : steps) {
    if (record.about.step == step) found = &record;
  }
  return found;
}

const Counter* Aircraft::engine_hours() const {
  for (const auto& [id, counter] : counters) {
    if (counter.about.kind == CounterKind::engine_hours) return &counter;
  }
  return nullptr;
}

const Aircraft* State::find_aircraft(std::string_view id) const {
  const auto found = aircraft.find(id);
  return found == aircraft.end() ? nullptr : &found->second;
}

const Payload& State::effective(std::size_t index) const {
  const Event& event = *events[index];
  const auto found = corrections.find(event.meta.id);
  if (found == corrections.end()) return event.payload;
  const Event& correction = *events[found->second.back()];
  return correction.replacement ? *correction.replacement : event.payload;
}

std::string short_name(std::string_view text) {
  std::string out;
  bool gap = false;
  for (const char c : text) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    const bool capital = c >= 'A' && c <= 'Z';
    if (!letter && !capital) {
      gap = !out.empty();
      continue;
    }
    if (out.size() >= 36) break;
    if (gap) out += '-';
    gap = false;
    out += capital ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out.empty() ? "item" : out;
}

}  // namespace wm::bay
