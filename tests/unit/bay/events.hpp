#pragma once
/// Short ways to write down events of an invented aircraft for the tests of the fold.

#include <string>
#include <utility>
#include <vector>

#include "bay/state.hpp"

namespace wm::bay::test {

/// A record being written: each event gets the next sequence number and the id "e<number>".
class Story {
 public:
  Story& on(std::string day) {
    day_ = std::move(day);
    return *this;
  }
  /// @return the id of the event
  std::string tell(Payload payload, std::string refers_to = {}) {
    auto event = std::make_shared<Event>();
    event->meta.sequence = static_cast<std::int64_t>(events_.size()) + 1;
    event->meta.id = "e" + std::to_string(event->meta.sequence);
    event->meta.happened = day_;
    event->meta.refers_to = std::move(refers_to);
    event->payload = std::move(payload);
    events_.push_back(event);
    return event->meta.id;
  }
  std::string correct(const std::string& id, Payload instead) {
    auto event = std::make_shared<Event>();
    event->meta.sequence = static_cast<std::int64_t>(events_.size()) + 1;
    event->meta.id = "e" + std::to_string(event->meta.sequence);
    event->meta.happened = day_;
    event->meta.refers_to = id;
    event->payload = EventCorrected{std::string(kind_of(instead).word), 1, "{}", "mistyped"};
    event->replacement = std::make_shared<const Payload>(std::move(instead));
    events_.push_back(event);
    return event->meta.id;
  }
  [[nodiscard]] const std::vector<std::shared_ptr<const Event>>& events() const { return events_; }
  [[nodiscard]] State folded() const { return fold(events_); }
  [[nodiscard]] State applied() const {
    State state;
    for (const auto& e : events_) apply(state, e);
    return state;
  }

 private:
  std::string day_{"2026-01-01"};
  std::vector<std::shared_ptr<const Event>> events_;
};

inline CounterReading hours(double h) {
  return {"engine", Entered<Duration>{quantity::hours(h), 360, {}}, {}};
}
inline CounterRead read_hours(double h) { return {"bird", {hours(h)}, {}}; }
inline AircraftDescribed bird() {
  AircraftDescribed out;
  out.id = "bird";
  out.name = "Bird";
  out.registration = "Q-BRD";
  return out;
}
inline PositionAdded position(const std::string& id) {
  PositionAdded out;
  out.aircraft = "bird";
  out.id = out.name = id;
  return out;
}
inline PartRegistered part(const std::string& id) {
  PartRegistered out;
  out.id = id;
  out.type = "hose";
  return out;
}
inline CheckDescribed check(const std::string& id) {
  CheckDescribed out;
  out.aircraft = "bird";
  out.id = out.title = id;
  out.position = "hose";
  return out;
}
inline ReadingTaken reading(const std::string& check_id, const std::string& note = {}) {
  ReadingTaken out;
  out.aircraft = "bird";
  out.check = check_id;
  out.over_range = true;
  out.note = note;
  return out;
}
/// Aircraft, engine counter, a position, two parts, a check.
inline Story begun() {
  Story story;
  story.tell(bird());
  story.tell(CounterDefined{"bird", "engine", "Engine hours", CounterKind::engine_hours, {}});
  story.tell(position("hose"));
  story.tell(position("shelf"));
  story.tell(part("hose-1"));
  story.tell(part("hose-2"));
  story.tell(check("look"));
  return story;
}

}  // namespace wm::bay::test
