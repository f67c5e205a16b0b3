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
  const std::string what = counted ? " entries" : "";
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
    out += fmt::format("| `{}` | {} | {} |", path, cell(meaning), cell(detail::expectation(type)));
    if (inputs) {
      out += fmt::format(" {} | {} | {} |", cell(bounds_words(field)), code(field.example),
                         detail::is_needed(field) ? "yes" : "");
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

}  // namespace

std::string manual_page(const describe::Calculation& calculation,
                        const describe::Catalogue& catalogue) {
  std::string out = fmt::format("# {}\n\n{}.\n\n", calculation.name, calculation.purpose);
  out += fmt::format("Version {} of this calculation.\n", calculation.version);
  if (!calculation.cautions.empty()) {
    out += "\n## Cautions\n\n";
    for (const auto& c : calculation.cautions) out += fmt::format("- {}\n", c.text);
  }
  out +=
      "\n## Inputs\n\n| key | meaning | expected | bounds | example | needed |\n"
      "| --- | --- | --- | --- | --- | --- |\n";
  rows(*calculation.input, {}, true, out);
  out += "\n## Answer\n\n| key | meaning | what |\n| --- | --- | --- |\n";
  rows(*calculation.output, {}, false, out);
  write_example(calculation, catalogue, out);
  out += "\n## Sources\n\n";
  for (const auto& s : calculation.sources) {
    out += fmt::format("- {}, {} ({})\n", s.document, s.place, describe::word(s.provenance));
  }
  return out;
}

std::string manual_index(const describe::Catalogue& catalogue) {
  std::string out = "# Calculations\n\n| name | what it answers |\n| --- | --- |\n";
  for (const auto& c : catalogue.calculations()) {
    out += fmt::format("| [{}]({}.md) | {} |\n", c.name, c.name, cell(c.purpose));
  }
  return out;
}

}  // namespace wm::calculation
