#include "binder/stored.hpp"

#include <fmt/core.h>

#include <array>

#include "calculation/json_face.hpp"

namespace wm::binder {
namespace {

/// Lifts a body from one version of its kind to the next; pure. One line a change of layout,
/// e.g. {"reading-taken", 1, &lift_reading_to_2}. Frozen samples of every version are tests.
struct Lift {
  std::string_view kind;
  int from;
  std::string (*lift)(std::string_view body);
};
std::string as_it_was(std::string_view body) { return std::string(body); }
constexpr std::array<Lift, 1> k_lifts{{
    {"joint-worked", 1, &as_it_was},  // 2 adds reason_outside_band; nothing else changed
}};

Result<std::string> lifted(const bay::EventKind& kind, int version, std::string_view body) {
  std::string text(body);
  while (version < kind.version) {
    bool found = false;
    for (const auto& step : k_lifts) {
      if (step.kind != kind.word || step.from != version) continue;
      text = step.lift(text);
      ++version;
      found = true;
      break;
    }
    if (!found) {
      return Fail(Kind::not_applicable,
                  fmt::format("version {} of `{}` cannot be read", version, kind.word));
    }
  }
  return text;
}

using Reader = Problems (*)(std::string_view, const describe::Type&, void*);

Checked<bay::Payload> decode_with(Reader reader, std::string_view word, int version,
                                  std::string_view body) {
  const auto* kind = bay::find_kind(word);
  if (kind == nullptr || version > kind->version) {
    return Fail(Problems{
        {Kind::not_applicable,
         {},
         fmt::format("this binder holds `{}` (version {}), which this program does not know", word,
                     version),
         "a program at least as new as the one that wrote it",
         {},
         "Use the newer program; this one only reads.",
         {}}});
  }
  const auto text = lifted(*kind, version, body);
  if (!text) return Fail(Problems{text.error()});
  auto payload = kind->make();
  auto problems = reader(*text, *kind->type, bay::body_of(payload));
  if (!problems.empty()) return Fail(std::move(problems));
  return payload;
}

}  // namespace

Checked<bay::Payload> decode_payload(std::string_view kind, int version, std::string_view body) {
  return decode_with(&calculation::read_payload, kind, version, body);
}
Checked<bay::Payload> read_payload_strictly(std::string_view kind, int version,
                                            std::string_view body) {
  return decode_with(&calculation::read_json, kind, version, body);
}

std::string encode(const bay::Payload& payload) {
  return calculation::write_payload(*bay::kind_of(payload).type, bay::body_of(payload));
}

Result<bay::Event> decode(const record::StoredEvent& stored) {
  auto payload = decode_payload(stored.kind, stored.version, stored.body);
  if (!payload) {
    auto problem = payload.error().front();
    if (problem.kind != Kind::not_applicable) problem.kind = Kind::damaged;
    problem.what = fmt::format("event {} ({}): {}", stored.sequence, stored.kind, problem.what);
    return Fail(std::move(problem));
  }
  bay::Event event{{stored.id, stored.sequence, stored.happened, stored.recorded, stored.author,
                    stored.device, stored.refers_to, stored.version},
                   std::move(*payload),
                   {}};
  if (const auto* correction = std::get_if<bay::EventCorrected>(&event.payload)) {
    auto replacement =
        decode_payload(correction->kind, static_cast<int>(correction->version), correction->body);
    if (!replacement) {
      auto problem = replacement.error().front();
      if (problem.kind != Kind::not_applicable) problem.kind = Kind::damaged;
      problem.what = fmt::format("event {} (correction): {}", stored.sequence, problem.what);
      return Fail(std::move(problem));
    }
    event.replacement = std::make_shared<const bay::Payload>(std::move(*replacement));
  }
  return event;
}

}  // namespace wm::binder
