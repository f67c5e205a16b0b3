#include "calculation/toml_face.hpp"

#include <fmt/core.h>

#include <cstdlib>

#include "calculation/detail/parse.hpp"
#include "calculation/detail/reader.hpp"
#include "calculation/detail/words.hpp"
#include "quantity/text.hpp"

namespace wm::calculation {
namespace {

using describe::NumberValue;
using describe::Shape;
using describe::Type;

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    switch (c) {
      case '"':
        out += "\\\"";
        break;
      case '\\':
        out += "\\\\";
        break;
      case '\n':
        out += "\\n";
        break;
      case '\t':
        out += "\\t";
        break;
      case '\r':
        out += "\\r";
        break;
      default:
        if (byte < 0x20 || byte == 0x7F) {
          out += fmt::format("\\u{:04X}", byte);
        } else {
          out += c;
        }
    }
  }
  return out + '"';
}

std::string float_text(double value) {
  auto text = fmt::format("{}", value);
  // A bare 2 would be an integer; the field takes both, but a number stays a number.
  if (text.find_first_of(".e") == std::string::npos) text += ".0";
  return text;
}

/// As typed, or the shortest text that reads back as the same value.
std::string quantity_text(const Type& type, const void* at) {
  const NumberValue v = type.operations.get_number(at);
  if (!v.text.empty()) return v.text;
  const auto exact = [&](double si, const quantity::Unit& unit, bool step) {
    return fmt::format("{} {}", (si - (step ? 0 : unit.offset)) / unit.factor, unit.symbol);
  };
  const auto* si = quantity::find_unit(v.kind, quantity::info(v.kind).si_unit);
  const auto& unit = si != nullptr ? *si : quantity::default_unit(v.kind, quantity::UnitSet::si);
  auto text = exact(v.si, unit, false);
  if (v.expanded_si) text += " +- " + exact(*v.expanded_si, unit, true);
  return text;
}

std::string choice_text(const Type& type, const void* at) {
  const auto number = type.operations.get_choice(at);
  for (const auto& c : type.choices) {
    if (c.number == number) return c.value;
  }
  return {};
}

/// Whether a value is written as a table of its own, below the single values.
bool is_table(const Type& outer) {
  const Type& type = detail::inside(outer);
  if (type.shape == Shape::record || type.shape == Shape::one_of) return true;
  return type.shape == Shape::list && (detail::inside(*type.of).shape == Shape::record ||
                                       detail::inside(*type.of).shape == Shape::one_of);
}

class SheetWriter {
 public:
  [[nodiscard]] std::string take() { return std::move(out_); }

  void members(const Type& type, const void* at, const std::string& path) {
    for (const auto& field : type.fields) {
      if (is_table(*field.type)) continue;
      if (const auto text = inline_value(*field.type, describe::value_of(field, at))) {
        out_ += fmt::format("{} = {}\n", field.key, *text);
      }
    }
    for (const auto& field : type.fields) {
      if (!is_table(*field.type)) continue;
      tables(*field.type, describe::value_of(field, at),
             path.empty() ? field.key : path + "." + field.key);
    }
  }

 private:
  void heading(std::string_view before, const std::string& path, std::string_view after) {
    if (!out_.empty()) out_ += '\n';
    out_ += fmt::format("{}{}{}\n", before, path, after);
  }

  void body(const Type& type, const void* at, const std::string& path) {
    if (type.shape == Shape::one_of) {
      const auto& alternative = type.alternatives[type.operations.index(at)];
      out_ += fmt::format("is = {}\n", quoted(alternative.word));
      return members(*alternative.type, type.operations.get(at), path);
    }
    members(type, at, path);
  }

  void tables(const Type& type, const void* at, const std::string& path) {
    if (type.shape == Shape::optional) {
      if (const void* inner = type.operations.get(at)) tables(*type.of, inner, path);
      return;
    }
    if (type.shape != Shape::list) {
      heading("[", path, "]");
      return body(type, at, path);
    }
    const auto size = type.operations.size(at);
    for (std::size_t i = 0; i < size; ++i) {
      heading("[[", path, "]]");
      const void* item = type.operations.at(at, i);
      const Type* of = type.of;
      while (of->shape == Shape::optional && item != nullptr) {
        item = of->operations.get(item);
        of = of->of;
      }
      if (item != nullptr) body(*of, item, path);
    }
  }

  /// Nothing for what is left out: an empty optional, an unset date.
  std::optional<std::string> inline_value(const Type& type, const void* at) {
    switch (type.shape) {
      case Shape::text:
        return quoted(*static_cast<const std::string*>(at));
      case Shape::yes_no:
        return *static_cast<const bool*>(at) ? "true" : "false";
      case Shape::count:
        return std::to_string(*static_cast<const std::int64_t*>(at));
      case Shape::number:
        return float_text(*static_cast<const double*>(at));
      case Shape::quantity:
      case Shape::measured:
      case Shape::any_quantity:
        return quoted(quantity_text(type, at));
      case Shape::choice:
        return quoted(choice_text(type, at));
      case Shape::date: {
        const auto& date = *static_cast<const quantity::Date*>(at);
        if (!date.ok()) return std::nullopt;
        return quantity::print_date(date);
      }
      case Shape::optional: {
        const void* inner = type.operations.get(at);
        if (inner == nullptr) return std::nullopt;
        return inline_value(*type.of, inner);
      }
      case Shape::list:
        return inline_list(type, at);
      case Shape::record:
      case Shape::one_of:
        return inline_table(type, at);
    }
    return std::nullopt;
  }

  std::optional<std::string> inline_list(const Type& type, const void* at) {
    const auto size = type.operations.size(at);
    if (size == 0) return std::nullopt;
    std::string out = "[";
    for (std::size_t i = 0; i < size; ++i) {
      if (i != 0) out += ", ";
      out += inline_value(*type.of, type.operations.at(at, i)).value_or("[]");
    }
    return out + "]";
  }

  /// Only for lists of lists of records.
  std::string inline_table(const Type& type, const void* at) {
    const Type* record = &type;
    std::string out = "{";
    if (type.shape == Shape::one_of) {
      const auto& alternative = type.alternatives[type.operations.index(at)];
      out += fmt::format(" is = {},", quoted(alternative.word));
      record = alternative.type;
      at = type.operations.get(at);
    }
    for (const auto& field : record->fields) {
      const auto text = inline_value(*field.type, describe::value_of(field, at));
      if (text) out += fmt::format(" {} = {},", field.key, *text);
    }
    if (out.back() == ',') out.pop_back();
    return out + " }";
  }

  std::string out_;
};

}  // namespace

Problems read_toml(std::string_view sheet, const Type& type, void* out) {
  detail::Tree tree;
  if (auto problem = detail::parse_toml(sheet, tree)) return {std::move(*problem)};
  return detail::read_tree(tree, type, out, detail::Source::sheet);
}

std::string write_toml(const Type& type, const void* value) {
  SheetWriter writer;
  writer.members(type, value, {});
  return writer.take();
}

void add_places(std::string_view sheet, Problems& problems) {
  detail::Tree tree;
  if (detail::parse_toml(sheet, tree)) return;
  for (auto& problem : problems) {
    std::uint32_t at = 0;
    std::string_view rest = problem.path;
    while (!rest.empty()) {
      const auto slash = rest.find('/');
      const auto step = rest.substr(0, slash);
      rest = slash == std::string_view::npos ? std::string_view{} : rest.substr(slash + 1);
      std::uint32_t next = detail::Node::k_none;
      if (tree[at].is == detail::Node::Is::object) next = tree.member(at, step);
      if (tree[at].is == detail::Node::Is::list) {
        next = tree[at].first;
        for (long index = std::strtol(std::string(step).c_str(), nullptr, 10);
             index > 0 && next != detail::Node::k_none; --index) {
          next = tree[next].next;
        }
      }
      // The nearest place that is in the sheet: a missing field is named where its record starts.
      if (next == detail::Node::k_none) break;
      at = next;
    }
    if (at != 0 && tree[at].line != 0) {
      problem.what =
          fmt::format("line {}, column {}: {}", tree[at].line, tree[at].column, problem.what);
    }
  }
}

}  // namespace wm::calculation
