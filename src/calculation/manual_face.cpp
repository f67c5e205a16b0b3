#include "calculation/manual_face.hpp"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "calculation/detail/to_json.hpp"
#include "calculation/detail/words.hpp"
#include "calculation/text_face.hpp"

namespace wm::calculation {
namespace {

using describe::Shape;
using describe::Type;

/// Text inside a table cell.
std::string cell(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '|') out += '\\';
    out += c == '\n' ? ' ' : c;
  }
  return out;
}

std::string code(std::string_view text) {
  return text.empty() ? std::string{} : fmt::format("`{}`", cell(text));
}

std::string bounds_words(const describe::Field& field) {
  const auto text = [&](double bound) { return detail::bound_text(*field.type, field, bound); };
  const bool counted = detail::inside(*field.type).shape == Shape::list;
  const bool one = field.highest.value_or(field.lowest.value_or(0)) == 1;
  const std::string what = !counted ? "" : one ? " entry" : " entries";
  if (field.lowest && field.highest) {
    return fmt::format("{}{} to {}{}", field.above ? "above " : "", text(*field.lowest),
                       text(*field.highest), what);
  }
  if (field.lowest) {
    return fmt::format("{} {}{}", field.above ? "more than" : "at least", text(*field.lowest),
                       what);
  }
  return field.highest ? fmt::format("at most {}{}", text(*field.highest), what) : std::string{};
}

void rows(const Type& record, const std::string& above, bool inputs, std::string& out) {
  for (const auto& field : record.fields) {
    const auto path = above + field.key;
    const Type& type = detail::inside(*field.type);
    std::string meaning = field.label;
    if (!field.help.empty()) meaning += ". " + field.help;
    std::string expected = detail::expectation(type);
    if (!field.refers_to.empty()) expected += ", naming " + detail::with_article(field.refers_to);
    out += fmt::format("| `{}` | {} | {} |", path, cell(meaning), cell(expected));
    if (inputs) {
      out +=
          fmt::format(" {} | {} | {} |", cell(bounds_words(field)),
                      code(detail::example_within(field)), detail::is_needed(field) ? "yes" : "");
    }
    out += '\n';
    const Type* inner = &type;
    std::string deeper = path + "/";
    while (inner->shape == Shape::list || inner->shape == Shape::optional) {
      if (inner->shape == Shape::list) deeper += "0/";
      inner = inner->of;
    }
    if (inner->shape == Shape::record) rows(*inner, deeper, inputs, out);
    for (const auto& a : inner->alternatives) rows(*a.type, deeper, inputs, out);
  }
}

void write_example(const describe::Calculation& calculation, const describe::Catalogue& catalogue,
                   std::string& out) {
  const auto example = detail::example_tree(calculation);
  out += "\n## Example\n\n```json\n" + detail::dumped(example, true) + "\n```\n";
  describe::Context context;
  context.today = k_example_day;
  context.tables = catalogue.tables();
  const auto input = calculation.make_input();
  if (!read_json(detail::dumped(example, false), *calculation.input, input.get()).empty()) return;
  const auto answer = calculation.run(input.get(), context);
  if (!answer) return;
  out += "\ngives\n\n```text\n" + write_text(*calculation.output, answer->get()) + "```\n";
}

void write_cautions(std::span<const describe::Caution> cautions, std::string& out) {
  if (cautions.empty()) return;
  out += "\n## Cautions\n\n";
  for (const auto& c : cautions) out += fmt::format("- {}\n", c.text);
}

void write_fields(const Type& input, const Type& output, std::string& out) {
  if (input.fields.empty()) {
    out += "\n## Inputs\n\nNone.\n";
  } else {
    out +=
        "\n## Inputs\n\n| key | meaning | expected | bounds | example | needed |\n"
        "| --- | --- | --- | --- | --- | --- |\n";
    rows(input, {}, true, out);
  }
  out += "\n## Answer\n\n| key | meaning | what |\n| --- | --- | --- |\n";
  rows(output, {}, false, out);
}

/// An example as the words of a command: "items/0/mass=9 lb", quoted for the shell.
void words_of(const detail::Json& value, const std::string& path, std::string& out) {
  if (value.is_structured()) {
    std::size_t index = 0;
    for (const auto& [key, inner] : value.items()) {
      const auto step = value.is_array() ? std::to_string(index++) : key;
      words_of(inner, path.empty() ? step : fmt::format("{}/{}", path, step), out);
    }
    return;
  }
  const auto text = value.is_string() ? value.get<std::string>() : value.dump();
  const bool plain = text.find_first_not_of(
                         "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                         "0123456789-_.,:") == std::string::npos;
  std::string quoted;
  for (const char c : text) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  out += fmt::format(" \\\n    {}={}", path, plain ? text : "'" + quoted + "'");
}

void write_calls(const std::string& command, const detail::Json& example, std::string_view address,
                 const detail::Json& body, std::string& out) {
  out += "\n## Command line\n\n```sh\nwitnessmark " + command;
  words_of(example, {}, out);
  out += fmt::format("\n```\n\n## HTTP\n\n`POST {}` with `X-Witnessmark: 1` and\n\n", address);
  out += "```json\n" + detail::dumped(body, true) + "\n```\n";
}

}  // namespace

std::string manual_page(const describe::Calculation& calculation,
                        const describe::Catalogue& catalogue) {
  std::string out = fmt::format("# {}\n\n{}.\n\n", calculation.name, calculation.purpose);
  out += fmt::format("Version {} of this calculation.\n", calculation.version);
  write_cautions(calculation.cautions, out);
  write_fields(*calculation.input, *calculation.output, out);
  write_example(calculation, catalogue, out);
  const auto example = detail::example_tree(calculation);
  write_calls("calc " + calculation.name, example, "/api/calc/" + calculation.name, example, out);
  out += "\n## Sources\n\n";
  for (const auto& s : calculation.sources) {
    out += fmt::format("- {}, {} ({})\n", s.document, s.place, describe::word(s.provenance));
  }
  return out;
}

std::string manual_page(const Entry& entry, std::string_view short_command) {
  const bool is_act = entry.kind == Entry::Is::act;
  std::string out = fmt::format("# {}\n\n{}.\n\n", entry.name, entry.purpose);
  if (!is_act) {
    out += "A view: it looks, and records nothing.\n";
  } else if (entry.changes_plans) {
    out +=
        "An act that changes plans: with `seen`, the last sequence number that the caller had "
        "seen, it is refused when somebody else changed plans since, and told what they "
        "changed.\n";
  } else {
    out += "An act: it adds to the record and changes no plans.\n";
  }
  write_cautions(entry.cautions, out);
  write_fields(*entry.input, *entry.output, out);
  const auto example = detail::example_tree(*entry.input);
  auto body = example;
  if (is_act) {
    body = {{"id", "a3f9-1"}, {"happened", "2026-11-25"}, {"author", "the owner"}};
    if (entry.changes_plans) body["seen"] = 884;
    body["input"] = example;
  }
  write_calls(fmt::format("{} BINDER {}", word(entry.kind), entry.name), example,
              fmt::format("/api/{}/{}", word(entry.kind), entry.name), body, out);
  if (!short_command.empty()) {
    out += fmt::format("\nShorter on the command line: `witnessmark {} ...`\n", short_command);
  }
  return out;
}

std::string manual_file(const Entry& entry) {
  return fmt::format("{}-{}.md", word(entry.kind), entry.name);
}

std::string manual_index(const describe::Catalogue& catalogue, std::span<const Entry> entries) {
  std::string out =
      "# Manual\n\n## Calculations\n\nEach works alone, without a binder: `witnessmark calc "
      "NAME`, `POST /api/calc/NAME`.\n\n| name | what it answers |\n| --- | --- |\n";
  for (const auto& c : catalogue.calculations()) {
    out += fmt::format("| [{}]({}.md) | {} |\n", c.name, c.name, cell(c.purpose));
  }
  const auto group = [&](Entry::Is kind, std::string_view head) {
    out += head;
    for (const auto& e : entries) {
      if (e.kind != kind) continue;
      out += fmt::format("| [{}]({}) | {} | {}\n", e.name, manual_file(e), cell(e.purpose),
                         kind == Entry::Is::view ? ""
                         : e.changes_plans       ? "yes |"
                                                 : "|");
    }
  };
  group(Entry::Is::act,
        "\n## Acts\n\nWhat is done to the record: `witnessmark act BINDER NAME`, `POST "
        "/api/act/NAME`.\n\n| name | what it does | changes plans |\n| --- | --- | --- |\n");
  group(Entry::Is::view,
        "\n## Views\n\nLooks at the record: `witnessmark view BINDER NAME`, `POST "
        "/api/view/NAME`.\n\n| name | what it shows |\n| --- | --- |\n");
  return out;
}

}  // namespace wm::calculation
