#include "calculation/text_face.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "calculation/detail/answer.hpp"
#include "calculation/detail/parse.hpp"
#include "calculation/detail/reader.hpp"
#include "calculation/detail/units.hpp"
#include "calculation/detail/words.hpp"
#include "describe/stands_first.hpp"
#include "quantity/text.hpp"

namespace wm::calculation {
namespace {

using describe::Field;
using describe::Shape;
using describe::Type;

class TextWriter {
 public:
  explicit TextWriter(const WriteOptions& options) : options_(&options) {}
  [[nodiscard]] std::string take() { return std::move(out_); }

  void members(const Type& type, const void* at, std::size_t indent) {
    std::size_t width = 0;
    for (const auto& f : type.fields) {
      if (is_line(*f.type)) width = std::max(width, detail::characters(f.label));
    }
    width = std::min<std::size_t>(width, 44);
    for (const auto& field : type.fields) {
      keys_.emplace_back(field.key);
      member(field, describe::value_of(field, at), indent, width);
      keys_.pop_back();
    }
  }

 private:
  static bool is_line(const Type& type) {
    const auto shape = detail::inside(type).shape;
    return shape != Shape::record && shape != Shape::list && shape != Shape::one_of;
  }

  void line(std::size_t indent, std::string_view label, std::size_t width, std::string_view text) {
    out_.append(indent, ' ');
    out_ += label;
    const auto length = detail::characters(label);
    out_.append(length < width ? width - length : 0, ' ');
    if (!text.empty()) out_ += "  ";
    // A text of several lines stays in its column.
    for (std::size_t start = 0; start <= text.size();) {
      const auto end = std::min(text.find('\n', start), text.size());
      if (start != 0) out_.append(indent + width + 2, ' ');
      out_ += text.substr(start, end - start);
      out_ += '\n';
      start = end + 1;
      if (text.empty()) break;
    }
  }

  void member(const Field& field, const void* at, std::size_t indent, std::size_t width) {
    const Type* type = field.type;
    while (type->shape == Shape::optional) {
      at = type->operations.get(at);
      if (at == nullptr) return;
      type = type->of;
    }
    if (is_line(*type)) {
      const auto text = scalar(*type, at);
      if (!text.empty()) line(indent, field.label, width, text);
      return;
    }
    if (type->shape == Shape::list) return list(field, *type, at, indent, width);
    line(indent, field.label, 0, {});
    part(*type, at, indent + 2);
  }

  void part(const Type& type, const void* at, std::size_t indent) {
    if (type.shape == Shape::one_of) {
      const auto& alternative = type.alternatives[type.operations.index(at)];
      return members(*alternative.type, type.operations.get(at), indent);
    }
    members(type, at, indent);
  }

  void list(const Field& field, const Type& type, const void* at, std::size_t indent,
            std::size_t width) {
    const auto size = type.operations.size(at);
    if (size == 0) return;
    const Type& of = *type.of;
    if (is_line(of)) {
      std::string text;
      for (std::size_t i = 0; i < size; ++i) {
        if (i != 0) text += '\n';
        text += scalar_of(of, type.operations.at(at, i));
      }
      return line(indent, field.label, width, text);
    }
    line(indent, field.label, 0, {});
    for (std::size_t i = 0; i < size; ++i) {
      // A dash in the margin starts each entry.
      const auto start = out_.size();
      const void* item = type.operations.at(at, i);
      const Type* inner = &of;
      while (inner->shape == Shape::optional && item != nullptr) {
        item = inner->operations.get(item);
        inner = inner->of;
      }
      if (item == nullptr) continue;
      if (inner->shape == Shape::list) continue;
      part(*inner, item, indent + 4);
      if (out_.size() > start + indent + 2) out_[start + indent + 2] = '-';
    }
  }

  std::string scalar_of(const Type& type, const void* at) {
    if (type.shape != Shape::optional) return scalar(type, at);
    const void* inner = type.operations.get(at);
    return inner == nullptr ? std::string{} : scalar_of(*type.of, inner);
  }

  std::string scalar(const Type& type, const void* at) {
    switch (type.shape) {
      case Shape::text:
        return *static_cast<const std::string*>(at);
      case Shape::yes_no:
        return *static_cast<const bool*>(at) ? "yes" : "no";
      case Shape::count:
        return std::to_string(*static_cast<const std::int64_t*>(at));
      case Shape::number:
        return quantity::significant(*static_cast<const double*>(at), 4);
      case Shape::quantity:
      case Shape::measured:
      case Shape::any_quantity:
        return quantity_text(type.operations.get_number(at));
      case Shape::choice: {
        const auto number = type.operations.get_choice(at);
        for (const auto& c : type.choices) {
          if (c.number == number) return c.label;
        }
        return {};
      }
      case Shape::date: {
        const auto& date = *static_cast<const quantity::Date*>(at);
        return date.ok() ? quantity::print_date(date) : std::string{};
      }
      default:
        return {};
    }
  }

  static bool typed_in_another_unit(const describe::NumberValue& v, const quantity::Unit& unit) {
    if (v.text.empty()) return false;
    const auto parsed = quantity::parse_measured(v.text, v.kind);
    return !parsed || quantity::find_unit(v.kind, parsed->value.unit) != &unit;
  }

  std::string quantity_text(const describe::NumberValue& v) const {
    const auto* unit = &shown_unit(v, options_->units);
    std::string path;
    for (const auto key : keys_) {
      if (!path.empty()) path += '/';
      path += key;
    }
    for (const auto& name : {path, std::string(keys_.empty() ? "" : keys_.back())}) {
      const auto found = options_->field_units.find(name);
      if (found == options_->field_units.end()) continue;
      if (const auto* asked = quantity::find_unit(v.kind, found->second)) {
        unit = asked;
        break;
      }
    }
    auto text = v.expanded_si ? quantity::print_with_uncertainty(v.si, *v.expanded_si, *unit)
                              : quantity::print(v.si, *unit, v.resolution_si);
    if (typed_in_another_unit(v, *unit)) text += fmt::format("  (typed: {})", v.text);
    return text;
  }

  const WriteOptions* options_;
  std::vector<std::string_view> keys_;
  std::string out_;
};

constexpr std::string_view k_changes_plans =
    "changes plans: refused when somebody else changed them since they were last seen";
constexpr std::string_view k_keeps_plans = "changes no plans";

std::string source_line(const describe::Source& source) {
  return fmt::format("{}, {} ({})", source.document, source.place,
                     describe::word(source.provenance));
}

/// "  why      text", broken at 88 characters under the text.
void tail_line(std::string& out, std::string_view label, std::string_view text) {
  out += fmt::format("  {:<9}", label);
  std::size_t column = 11;
  bool first = true;
  while (!text.empty()) {
    const auto space = text.find(' ');
    const auto word = text.substr(0, space);
    const auto width = detail::characters(word);
    if (!first && column + 1 + width > 88) {
      out += "\n           ";
      column = 11;
      first = true;
    }
    if (!first) {
      out += ' ';
      ++column;
    }
    out += word;
    column += width;
    first = false;
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
  }
  out += '\n';
}

void describe_fields(const Type& type, std::size_t indent, std::string& out) {
  for (const auto& field : type.fields) {
    const Type& inner = detail::inside(*field.type);
    std::string text = fmt::format("{}: {}", field.label, detail::expectation(inner));
    if (field.lowest) {
      text += fmt::format("; {} {}", field.above ? "more than" : "at least",
                          detail::bound_text(*field.type, field, *field.lowest));
    }
    if (field.highest) {
      text += "; at most " + detail::bound_text(*field.type, field, *field.highest);
    }
    if (!field.refers_to.empty()) text += "; names " + detail::with_article(field.refers_to);
    if (!field.example.empty()) text += fmt::format("; e.g. {}", field.example);
    if (detail::is_needed(field)) text += "; needed";
    out += fmt::format("{:{}}{:<24} {}\n", "", indent, field.key, text);
    const Type* deeper = &inner;
    while (deeper->shape == Shape::list || deeper->shape == Shape::optional) deeper = deeper->of;
    if (deeper->shape == Shape::record) describe_fields(*deeper, indent + 2, out);
    for (const auto& a : deeper->alternatives) {
      out += fmt::format("{:{}}is={}\n", "", indent + 2, a.word);
      describe_fields(*a.type, indent + 4, out);
    }
  }
}

/// What must be so before anybody begins stands above everything else.
std::string first_cautions(std::span<const describe::Caution> cautions) {
  std::string out;
  for (const auto& c : cautions) {
    if (describe::caution::stands_first(c)) tail_line(out, "first", c.text);
  }
  if (!out.empty()) out += '\n';
  return out;
}
void other_cautions(std::span<const describe::Caution> cautions, std::string& out) {
  for (const auto& c : cautions) {
    if (!describe::caution::stands_first(c)) tail_line(out, "caution", c.text);
  }
}

}  // namespace

Problems read_key_values(std::span<const std::string_view> pairs, const Type& type, void* out) {
  detail::Tree tree;
  if (auto problems = detail::parse_key_values(pairs, tree); !problems.empty()) return problems;
  return detail::read_tree(tree, type, out, detail::Source::words);
}

Checked<std::string> with_fields(std::string_view payload, const Type& type, void* fresh,
                                 std::span<const std::string_view> pairs) {
  detail::Tree tree;
  auto problems = detail::parse_replacing(payload, pairs, tree);
  if (problems.empty()) problems = detail::read_tree(tree, type, fresh, detail::Source::amended);
  if (!problems.empty()) return Fail(std::move(problems));
  return write_payload(type, fresh);
}

std::string write_text(const Type& type, const void* value, const WriteOptions& options) {
  TextWriter writer(options);
  writer.members(type, value, 0);
  return writer.take();
}

Checked<Worded> call_words(const describe::Calculation& calculation,
                           std::span<const std::string_view> pairs,
                           const describe::Context& context, const WriteOptions& options,
                           bool json) {
  detail::Tree tree;
  if (auto problems = detail::parse_key_values(pairs, tree); !problems.empty()) {
    return Fail(std::move(problems));
  }
  auto wanted = options;
  auto problems = detail::take_units(tree, *calculation.output, wanted.field_units);
  const auto input = calculation.make_input();
  auto more = detail::read_tree(tree, *calculation.input, input.get(), detail::Source::words);
  problems.insert(problems.end(), more.begin(), more.end());
  if (!problems.empty()) return Fail(std::move(problems));
  const auto answer = detail::answer_of(calculation, input.get(), context);
  if (!answer) return Fail(answer.error());
  problems = detail::unfit_units(*calculation.output, answer->get(), wanted.field_units);
  if (!problems.empty()) return Fail(std::move(problems));
  const bool finding = is_finding(*calculation.output, answer->get());
  if (json) return Worded{detail::answer_json(calculation, answer->get(), wanted), finding};
  auto out = first_cautions(calculation.cautions);
  out += write_text(*calculation.output, answer->get(), wanted);
  out += '\n';
  for (const auto& s : calculation.sources) tail_line(out, "source", source_line(s));
  other_cautions(calculation.cautions, out);
  return Worded{std::move(out), finding};
}

bool is_finding(const Type& type, const void* answer) {
  constexpr std::pair<std::string_view, std::string_view> k_findings[] = {
      {"verdict", "does-not-conform"}, {"verdict", "undecided"}, {"standing", "past-limit"}};
  for (const auto& field : type.fields) {
    if (field.type->shape != Shape::choice) continue;
    const auto number = field.type->operations.get_choice(describe::value_of(field, answer));
    for (const auto& c : field.type->choices) {
      if (c.number != number) continue;
      for (const auto& [name, value] : k_findings) {
        if (field.type->name == name && c.value == value) return true;
      }
    }
  }
  return false;
}

std::string describe_text(const describe::Calculation& calculation) {
  std::string out = first_cautions(calculation.cautions);
  out += fmt::format("{}: {}\n\nInput\n", calculation.name, calculation.purpose);
  describe_fields(*calculation.input, 2, out);
  out += "\nAnswer\n";
  describe_fields(*calculation.output, 2, out);
  out += '\n';
  for (const auto& s : calculation.sources) tail_line(out, "source", source_line(s));
  other_cautions(calculation.cautions, out);
  tail_line(out, "version", std::to_string(calculation.version));
  return out;
}

std::string describe_text(const Entry& entry) {
  std::string out = fmt::format("{}: {}\n\nInput\n", entry.name, entry.purpose);
  describe_fields(*entry.input, 2, out);
  if (entry.input->fields.empty()) out += "  nothing\n";
  out += "\nAnswer\n";
  describe_fields(*entry.output, 2, out);
  out += '\n';
  for (const auto& c : entry.cautions) tail_line(out, "caution", c.text);
  if (entry.kind == Entry::Is::act) {
    tail_line(out, "plans", entry.changes_plans ? k_changes_plans : k_keeps_plans);
  }
  return out;
}

std::string problems_text(const Problems& problems) {
  std::string out;
  for (const auto& p : problems) {
    out += p.path.empty() ? p.what : fmt::format("{}: {}", p.path, p.what);
    out += '\n';
    if (!p.expected.empty()) tail_line(out, "expected", p.expected);
    if (!p.example.empty()) tail_line(out, "example", p.example);
    if (!p.do_next.empty()) tail_line(out, "do", p.do_next);
    if (!p.source.empty()) tail_line(out, "source", p.source);
  }
  return out;
}

}  // namespace wm::calculation
