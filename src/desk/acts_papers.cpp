#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"
#include "desk/stage_state.hpp"

namespace wm::desk {
namespace {

/// What the record would say against itself with this correction: a counter running backwards.
Problems contradictions(const Desk& desk, const std::string& event, const bay::Payload& corrected) {
  // A correction rebuilds the state from its events: from a list of them, not from a copy of all
  // that they led to.
  auto events = desk.state.events;
  auto correction = std::make_shared<bay::Event>();
  correction->meta.sequence = desk.state.sequence + 1;
  correction->meta.happened = desk.happened;
  correction->meta.refers_to = event;
  correction->payload = bay::EventCorrected{};
  correction->replacement = std::make_shared<const bay::Payload>(corrected);
  events.push_back(std::move(correction));
  const auto trial = bay::fold(std::move(events));
  Problems problems;
  for (auto i = desk.state.oddities.size(); i < trial.oddities.size(); ++i) {
    problems.push_back(problem(Kind::conflict, "body",
                               "the record would contradict itself: " + trial.oddities[i].words,
                               "Correct the other event first, or give the right figure."));
  }
  return problems;
}

}  // namespace

Simple sign_entry(const bay::EntrySigned& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto name =
      name_for(aircraft.entries, in.id,
               in.about.empty() ? quantity::print_date(desk.day()) : in.about + "-entry");
  Problems problems;
  if (!name) problems.push_back(name.error());
  if (in.purpose == bay::EntryPurpose::opens_stage ||
      in.purpose == bay::EntryPurpose::closes_stage) {
    problems.push_back(problem(Kind::refused, "purpose", "a stage is signed by its own act",
                               "Sign the stage open or closed."));
  }
  if (in.purpose == bay::EntryPurpose::condition_inspection && in.certificate.empty()) {
    problems.push_back({Kind::missing,
                        "certificate",
                        "an inspection entry needs number and kind of certificate",
                        "certificate number",
                        {},
                        {},
                        "14 CFR 43.11(a); operating limitations"});
  }
  const bool hours_known =
      aircraft.engine_hours() != nullptr && aircraft.engine_hours()->now().has_value();
  if (in.purpose == bay::EntryPurpose::condition_inspection && !hours_known) {
    problems.push_back(problem(Kind::missing, "text",
                               "an inspection entry states the total time, and no counter was read",
                               "Read the counters first.", "14 CFR 43.11(a)"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  bay::EntrySigned entry = in;
  entry.id = *name;
  if (entry.covers.empty() && !entry.about.empty())
    entry.covers = events_about(desk.state, aircraft, entry.about);
  Said said{"Entry signed.", entry.id, {}};
  if (in.certificate.empty()) said.notes.push_back("No certificate number given.");
  if (in.text.find("airworthy") != std::string::npos) {
    said.notes.push_back(
        "The text says \"airworthy\"; operating limitations of an amateur-built aircraft ask for "
        "\"condition for safe operation\". You decide.");
  }
  return Outcome<Said>{{{std::move(entry), {}}}, std::move(said)};
}

Simple attach(const bay::AttachmentAdded& in, const Desk& desk) {
  (void)desk;
  return Outcome<Said>{{{in, {}}}, {fmt::format("{} attached.", in.name), in.hash, {}}};
}

Simple correct(const Correction& in, const Desk& desk) {
  const auto at = desk.state.by_id.find(in.event);
  if (at == desk.state.by_id.end()) {
    return Fail(
        Problems{problem(Kind::not_found, "event", "there is no event `" + in.event + "`")});
  }
  const auto& original = *desk.state.events[at->second];
  if (std::holds_alternative<bay::EventCorrected>(original.payload)) {
    return Fail(Problems{problem(Kind::refused, "event", "this is itself a correction",
                                 "Correct the original once more.")});
  }
  if (std::holds_alternative<bay::VerdictGiven>(original.payload) ||
      std::holds_alternative<bay::EntrySigned>(original.payload) ||
      std::holds_alternative<bay::HoseProved>(original.payload)) {
    return Fail(Problems{
        problem(Kind::refused, "event", "a verdict and a signature are facts and stay as they are",
                "Take the reading or do the proof test again, or sign a new entry.")});
  }
  const auto& kind = bay::kind_of(original.payload);
  auto corrected = desk.decode(kind.word, kind.version, in.body);
  if (!corrected) {
    auto problems = corrected.error();
    for (auto& p : problems) p.path = "body/" + p.path;
    return Fail(std::move(problems));
  }
  auto problems = check_references(*kind.type, bay::body_of(*corrected), desk.state);
  if (bay::aircraft_of(*corrected) != bay::aircraft_of(original.payload)) {
    problems.push_back(
        problem(Kind::conflict, "body/aircraft", "a correction stays with its aircraft"));
  }
  for (auto& p : problems) {
    if (!p.path.starts_with("body/")) p.path = "body/" + p.path;
  }
  if (problems.empty()) problems = contradictions(desk, in.event, *corrected);
  if (!problems.empty()) return Fail(std::move(problems));
  Said said{"Corrected; the first version stays visible.", in.event, {}};
  for (const auto& [id, aircraft] : desk.state.aircraft) {
    for (const auto& [entry_id, entry] : aircraft.entries) {
      for (const auto& covered : entry.about.covers) {
        if (covered == in.event) {
          said.notes.push_back(fmt::format(
              "Entry `{}` reports this: it is now amended after signature and asks for a new one.",
              entry_id));
        }
      }
    }
  }
  Outcome<Said> out{
      {{bay::EventCorrected{std::string(kind.word), kind.version, in.body, in.reason}, in.event}},
      std::move(said)};
  // A corrected reading is judged again; the first verdict stays in the record.
  if (const auto* reading = std::get_if<bay::ReadingTaken>(&*corrected)) {
    auto judged = judge(*reading, desk.state, desk.context);
    if (!judged) return Fail(judged.error());
    out.events.push_back({as_fact(*judged, *reading, {}), in.event});
    out.answer.notes.push_back("Judged again: " + judged->words + ". " + judged->reason);
  }
  return out;
}

std::string_view describe(describe::Fields<Correction>& f) {
  f.has<&Correction::event>("event", "Event").needed("event-1").refers_to("event");
  f.has<&Correction::body>("body", "The whole corrected body, as JSON").needed("{}");
  f.has<&Correction::reason>("reason", "Why").needed("mistyped");
  return "correction";
}

}  // namespace wm::desk
