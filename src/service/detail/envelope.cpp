#include "service/detail/envelope.hpp"

#include <nlohmann/json.hpp>

#include "calculation/json_face.hpp"

namespace wm::service::detail {
namespace {

/// Walks over text that is known to be JSON.
class Walker {
 public:
  explicit Walker(std::string_view json) : json_(json) {}

  [[nodiscard]] char next() {
    while (at_ < json_.size() && is_space(json_[at_])) ++at_;
    return at_ < json_.size() ? json_[at_] : '\0';
  }
  void step() { ++at_; }

  /// From here, a quote, past the closing quote; gives what is between.
  std::string_view text() {
    const auto from = ++at_;
    while (at_ < json_.size() && json_[at_] != '"') at_ += json_[at_] == '\\' ? 2 : 1;
    const auto inside = json_.substr(from, at_ - from);
    ++at_;
    return inside;
  }

  std::string_view value() {
    (void)next();
    const auto from = at_;
    int depth = 0;
    while (at_ < json_.size()) {
      const char c = json_[at_];
      if (c == '"') {
        (void)text();
        continue;
      }
      if (depth == 0 && (c == ',' || c == '}' || c == ']')) break;
      if (c == '{' || c == '[') ++depth;
      if (c == '}' || c == ']') --depth;
      ++at_;
    }
    auto out = json_.substr(from, at_ - from);
    while (!out.empty() && is_space(out.back())) out.remove_suffix(1);
    return out;
  }

 private:
  static bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
  std::string_view json_;
  std::size_t at_{};
};

}  // namespace

std::string_view describe(describe::Fields<ActEnvelope>& f) {
  f.has<&ActEnvelope::id>("id", "Id of this act, made by the client")
      .help("The same id again is harmless: the answer says that it was there already")
      .needed("a3f9-1");
  f.has<&ActEnvelope::seen>("seen", "Last sequence number that the client had seen")
      .help("An act that changes plans is refused (409) when others changed them since")
      .at_least(0);
  f.has<&ActEnvelope::happened>("happened", "When it happened")
      .help("A date or an instant in UTC, 2026-11-25T09:12:00Z; now where it is left out")
      .example("2026-11-25");
  f.has<&ActEnvelope::author>("author", "Who says so");
  f.has<&ActEnvelope::device>("device", "On what it was typed");
  f.has<&ActEnvelope::try_only>("try_only", "Work it out, record nothing");
  return "act-envelope";
}

std::optional<std::vector<Member>> members_of(std::string_view json) {
  constexpr std::string_view k_byte_order_mark = "\xEF\xBB\xBF";
  if (json.starts_with(k_byte_order_mark)) json.remove_prefix(k_byte_order_mark.size());
  if (!nlohmann::json::accept(json)) return std::nullopt;
  Walker walker(json);
  if (walker.next() != '{') return std::nullopt;
  walker.step();
  std::vector<Member> out;
  while (walker.next() == '"') {
    const auto key = walker.text();
    (void)walker.next();
    walker.step();  // the colon
    out.push_back({key, walker.value()});
    if (walker.next() != ',') break;
    walker.step();
  }
  return out;
}

OpenedEnvelope open_envelope(std::string_view body) {
  OpenedEnvelope out;
  out.input = "{}";
  const auto& type = describe::type_of<ActEnvelope>();
  const auto members = members_of(body);
  if (!members) {
    // The reader says with line and column what is wrong with the text.
    out.problems = calculation::read_json(body, type, &out.envelope);
    if (out.problems.empty()) {
      out.problems.push_back({Kind::bad_text, {}, "this is not a JSON object", {}, {}, {}, {}});
    }
    return out;
  }
  std::string envelope = "{";
  int inputs = 0;
  for (const auto& member : *members) {
    if (member.key == "input") {
      ++inputs;
      out.input = member.value;
      continue;
    }
    if (envelope.size() > 1) envelope += ',';
    envelope.append("\"").append(member.key).append("\":").append(member.value);
  }
  envelope += '}';
  out.problems = calculation::read_json(envelope, type, &out.envelope);
  if (inputs > 1) {
    out.problems.push_back(
        {Kind::duplicate, "input", "`input` is given twice", "one input", {}, {}, {}});
  }
  return out;
}

}  // namespace wm::service::detail
