#include <fmt/core.h>

#include <algorithm>

#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::desk {
namespace {

/// Whether a described value names `wanted` in any of its texts.
bool mentions(const describe::Type& type, const void* at, const std::string& wanted) {
  using describe::Shape;
  switch (type.shape) {
    case Shape::text:
      return *static_cast<const std::string*>(at) == wanted;
    case Shape::record:
      return std::any_of(type.fields.begin(), type.fields.end(), [&](const describe::Field& f) {
        return mentions(*f.type, describe::value_of(f, at), wanted);
      });
    case Shape::list:
      for (std::size_t i = 0; i < type.operations.size(at); ++i) {
        if (mentions(*type.of, type.operations.at(at, i), wanted)) return true;
      }
      return false;
    case Shape::optional: {
      const auto* inside = type.operations.get(at);
      return inside != nullptr && mentions(*type.of, inside, wanted);
    }
    default:
      return false;
  }
}

HistoryLine line_of(const bay::State& state, std::size_t index) {
  const auto& event = *state.events[index];
  const auto& kind = bay::kind_of(event.payload);
  HistoryLine out;
  out.sequence = event.meta.sequence;
  out.event = event.meta.id;
  out.kind = kind.word;
  out.kind_label = kind.word;
  std::replace(out.kind_label.begin(), out.kind_label.end(), '-', ' ');
  out.happened = event.meta.happened;
  out.recorded = event.meta.recorded;
  out.author = event.meta.author;
  out.words = in_words(event.payload);
  out.refers_to = event.meta.refers_to;
  const auto corrections = state.corrections.find(event.meta.id);
  if (corrections != state.corrections.end()) {
    out.corrected = true;
    out.corrected_words = in_words(state.effective(index));
    const auto& last = *state.events[corrections->second.back()];
    out.correction_reason = std::get<bay::EventCorrected>(last.payload).reason;
  }
  return out;
}

}  // namespace

Checked<EntriesPage> entries_page(const OfAircraft& in, const bay::State& state, const Context&) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  EntriesPage out{header_of(aircraft), {}};
  for (const auto& [id, entry] : aircraft.entries) {
    const auto& a = entry.about;
    out.entries.push_back({id, a.about, std::string(bay::label(a.purpose)), a.text, a.name,
                           std::string(bay::label(a.signer)), a.certificate, entry.happened,
                           entry.event, entry.sequence, entry.amended_after_signature});
  }
  std::sort(out.entries.begin(), out.entries.end(),
            [](const EntryLine& a, const EntryLine& b) { return a.sequence > b.sequence; });
  return out;
}

Checked<Draft> entry_draft(const DraftWanted& in, const bay::State& state, const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  Draft out;
  const auto stage = aircraft.stages.find(in.about);
  const auto job = aircraft.quick_jobs.find(in.about);
  if (stage != aircraft.stages.end()) {
    const bool closing = in.purpose == bay::EntryPurpose::closes_stage;
    out.missing = closing ? missing_to_close(aircraft, stage->second)
                          : missing_to_open(aircraft, stage->second);
    out.text = closing && !stage->second.about.ground_only
                   ? closing_text(state, aircraft, stage->second, context.today)
                   : opening_text(state, aircraft, stage->second, context.today);
  } else if (job != aircraft.quick_jobs.end()) {
    out.text = quick_job_text(aircraft, job->second);
  } else {
    return Fail(Problems{
        problem(Kind::not_found, "about", "there is no stage or quick job `" + in.about + "`")});
  }
  out.unsigned_notes.push_back(
      "A person signs this text; the program drafts it and judges nothing.");
  return out;
}

Checked<HistoryPage> history(const HistoryWanted& in, const bay::State& state, const Context&) {
  HistoryPage out;
  const auto most = static_cast<std::size_t>(in.most);
  for (std::size_t i = state.events.size(); i-- > 0;) {
    const auto& event = *state.events[i];
    if (in.before && event.meta.sequence >= *in.before) continue;
    if (!in.aircraft.empty()) {
      const auto of = bay::aircraft_of(event.payload);
      if (!of.empty() && of != in.aircraft) continue;
    }
    if (!in.about.empty() &&
        !mentions(*bay::kind_of(event.payload).type, bay::body_of(event.payload), in.about))
      continue;
    if (out.lines.size() == most) {
      out.more = true;
      break;
    }
    out.lines.push_back(line_of(state, i));
  }
  return out;
}

Checked<AircraftSheet> export_sheet(const OfAircraft& in, const bay::State& state, const Context&) {
  return sheet_of(state, aircraft_of(state, in.aircraft));
}

}  // namespace wm::desk
