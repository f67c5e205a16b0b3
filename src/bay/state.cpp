#include "bay/state.hpp"

#include <algorithm>

namespace wm::bay {

std::optional<double> Counter::on(Date day) const {
  const auto total = series.total_at(day);
  if (!total) return std::nullopt;
  return total->straight.value_or(total->lowest);
}

life::CountUnit unit_of(CounterKind kind) {
  if (counts_hours(kind)) return life::CountUnit::hours;
  return kind == CounterKind::landings ? life::CountUnit::landings : life::CountUnit::starts;
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

const HoseRecord::Proof* HoseRecord::latest() const {
  return proofs.empty() ? nullptr : &proofs.back();
}

bool HoseRecord::drawn_since() const {
  return !proofs.empty() && proofs.back().sequence < sequence;
}

const StepRecord* Stage::latest(StageStep step) const {
  const StepRecord* found = nullptr;
  for (const auto& record : steps) {
    if (record.about.step == step) found = &record;
  }
  return found;
}

bool brings_more(const StagePlanned& before, const StagePlanned& after) {
  return std::any_of(after.changes.begin(), after.changes.end(), [&](const std::string& id) {
    return std::find(before.changes.begin(), before.changes.end(), id) == before.changes.end();
  });
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
