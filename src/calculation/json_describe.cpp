#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <optional>
#include <ranges>

#include "calculation/catalogue.hpp"
#include "calculation/detail/to_json.hpp"
#include "calculation/detail/words.hpp"
#include "describe/stands_first.hpp"
#include "quantity/text.hpp"

namespace wm::calculation {
namespace detail {
namespace {

using describe::Field;
using describe::Shape;
using describe::Type;

/// @param inputs  Fields to be filled in each get an example, their own or one of their kind.
Json fields_tree(const Type& record, bool inputs);

Json choices_tree(const Type& type) {
  auto out = Json::array();
  for (const auto& c : type.choices) {
    auto one = Json::object();
    one["value"] = c.value;
    one["label"] = c.label;
    out.push_back(std::move(one));
  }
  return out;
}

void put_units(const Type& type, const Field* field, Json& out) {
  if (!type.kind) return;
  out["kind"] = quantity::info(*type.kind).name;
  auto units = Json::array();
  for (const auto& u : quantity::units_of(*type.kind)) units.push_back(u.symbol);
  out["units"] = std::move(units);
  out["unit"] = unit_of(type, field).symbol;
}

/// What a type alone says: its shape and what is inside it.
void put_type(const Type& outer, const Field* field, bool inputs, Json& out) {
  const Type& type = inside(outer);
  switch (type.shape) {
    case Shape::quantity:
    case Shape::measured:
      put_units(type, field, out);
      break;
    case Shape::choice:
      out["choices"] = choices_tree(type);
      break;
    case Shape::record:
      out["title"] = type.name;
      out["fields"] = fields_tree(type, inputs);
      break;
    case Shape::list: {
      auto of = Json::object();
      of["shape"] = shape_word(*type.of);
      put_type(*type.of, field, inputs, of);
      out["of"] = std::move(of);
      break;
    }
    case Shape::one_of: {
      auto alternatives = Json::array();
      for (const auto& a : type.alternatives) {
        auto one = Json::object();
        one["word"] = a.word;
        one["title"] = a.type->name;
        one["fields"] = fields_tree(*a.type, inputs);
        alternatives.push_back(std::move(one));
      }
      out["alternatives"] = std::move(alternatives);
      break;
    }
    default:
      break;
  }
}

Json field_tree(const Field& field, bool inputs) {
  auto out = Json::object();
  out["key"] = field.key;
  out["label"] = field.label;
  if (!field.help.empty()) out["help"] = field.help;
  out["shape"] = shape_word(field);
  if (field.type->shape == Shape::optional) out["optional"] = true;
  out["needed"] = is_needed(field);
  if (field.unique) out["unique"] = true;
  put_type(*field.type, &field, inputs, out);
  auto example = inputs ? example_within(field) : field.example;
  if (!example.empty()) out["example"] = std::move(example);
  if (field.lowest) out["min"] = bound_text(*field.type, field, *field.lowest);
  if (field.highest) out["max"] = bound_text(*field.type, field, *field.highest);
  if (field.above) out["above"] = true;
  if (!field.refers_to.empty()) out["refers_to"] = field.refers_to;
  if (!field.shown_when.empty()) out["shown_when"] = field.shown_when;
  return out;
}

Json fields_tree(const Type& record, bool inputs) {
  auto out = Json::array();
  for (const auto& field : record.fields) out.push_back(field_tree(field, inputs));
  return out;
}

/// Which fields go into an example.
enum class Examples : std::uint8_t {
  all,    ///< every field that has one
  needed  ///< only what cannot stay out
};

Json type_example(const Type& outer, const Field* field, Examples which);

/// What a field holds when it is left out, as the word in `shown_when`.
std::string default_word(const Type& record, std::string_view key) {
  const Field* field = describe::find_field(record, key);
  if (field == nullptr || record.defaults == nullptr) return {};
  const void* value = describe::value_of(*field, record.defaults);
  if (field->type->shape == Shape::yes_no)
    return *static_cast<const bool*>(value) ? "true" : "false";
  if (field->type->shape != Shape::choice) return {};
  for (const auto& c : field->type->choices) {
    if (c.number == field->type->operations.get_choice(value)) return c.value;
  }
  return {};
}

/// Whether the form would show the field beside the examples already there.
bool shown_beside(const Field& field, const Type& record, const Json& members) {
  const auto equals = field.shown_when.find('=');
  if (equals == std::string::npos) return true;
  const auto key = field.shown_when.substr(0, equals);
  const auto wanted = field.shown_when.substr(equals + 1);
  const auto found = members.find(key);
  if (found == members.end()) return default_word(record, key) == wanted;
  if (found->is_boolean()) return (found->get<bool>() ? "true" : "false") == wanted;
  return found->is_string() && found->get<std::string>() == wanted;
}

/// The example of one field, or nothing where it may stay out.
std::optional<Json> field_example(const Field& field, Examples which) {
  const Type& type = inside(*field.type);
  const bool wanted = is_needed(field);
  if (!wanted && (which == Examples::needed || field.example.empty())) return std::nullopt;
  const bool whole =
      type.shape == Shape::list || type.shape == Shape::record || type.shape == Shape::one_of;
  // A list, record or alternative may bring its example as JSON of its own.
  if (whole && (field.example.starts_with('[') || field.example.starts_with('{'))) {
    auto parsed = Json::parse(field.example, nullptr, false);
    if (!parsed.is_discarded()) return parsed;
  }
  return type_example(type, &field, which);
}

Json members_example(const Type& record, Examples which) {
  auto out = Json::object();
  for (const auto& field : record.fields) {
    if (!shown_beside(field, record, out)) continue;
    if (auto example = field_example(field, which)) out[field.key] = std::move(*example);
  }
  return out;
}

Json type_example(const Type& outer, const Field* field, Examples which) {
  const Type& type = inside(outer);
  auto text = example_for(type, field);
  switch (type.shape) {
    case Shape::yes_no:
      return text == "true" || text == "yes";
    case Shape::count:
    case Shape::number: {
      const auto parsed = quantity::parse_number(text);
      if (!parsed) return text;
      if (type.shape == Shape::count) return static_cast<std::int64_t>(*parsed);
      return *parsed;
    }
    case Shape::record:
      return members_example(type, which);
    case Shape::list: {
      auto out = Json::array();
      const auto least = field != nullptr && field->lowest ? *field->lowest : 1.0;
      const auto entries = static_cast<std::size_t>(std::max(least, 1.0));
      for (std::size_t i = 0; i < entries; ++i) {
        out.push_back(type_example(*type.of, field, which));
      }
      return out;
    }
    case Shape::one_of: {
      auto out = Json::object();
      if (type.alternatives.empty()) return out;
      out["is"] = type.alternatives.front().word;
      out.update(members_example(*type.alternatives.front().type, which));
      return out;
    }
    default:
      return text;
  }
}

}  // namespace

Json type_tree(const Type& outer, bool inputs) {
  const Type& type = inside(outer);
  auto out = Json::object();
  out["title"] = type.name;
  if (type.shape == Shape::record) {
    out["fields"] = fields_tree(type, inputs);
  } else {
    out["shape"] = shape_word(type);
    put_type(type, nullptr, inputs, out);
  }
  return out;
}

Json example_tree(const Type& type) { return type_example(type, nullptr, Examples::all); }

namespace {
bool runs(const describe::Calculation& calculation, const Json& example) {
  const auto input = calculation.make_input();
  describe::Context context;
  context.today = k_example_day;
  context.tables = catalogue().tables();
  return read_json(dumped(example, false), *calculation.input, input.get()).empty() &&
         calculation.run(input.get(), context).has_value();
}
}  // namespace

// Every example at once where they go together. Where two fields exclude each other one of them
// is left out, the later first; failing that, the needed ones stand alone.
Json example_tree(const describe::Calculation& calculation) {
  auto all = type_example(*calculation.input, nullptr, Examples::all);
  if (runs(calculation, all)) return all;
  const auto& fields = calculation.input->fields;
  for (const auto& field : std::views::reverse(fields)) {
    if (field.needed || !all.contains(field.key)) continue;
    auto fewer = all;
    fewer.erase(field.key);
    if (runs(calculation, fewer)) return fewer;
  }
  return type_example(*calculation.input, nullptr, Examples::needed);
}

Json sources_tree(const describe::Calculation& calculation) {
  auto out = Json::array();
  for (const auto& s : calculation.sources) {
    auto one = Json::object();
    one["document"] = s.document;
    one["place"] = s.place;
    one["provenance"] = word(s.provenance);
    out.push_back(std::move(one));
  }
  return out;
}

Json cautions_tree(std::span<const describe::Caution> cautions) {
  auto out = Json::array();
  for (const auto& c : cautions) {
    auto one = Json::object();
    one["id"] = c.id;
    one["text"] = c.text;
    if (describe::caution::stands_first(c)) one["first"] = true;
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace detail

std::string describe_type_json(const describe::Type& type) {
  return detail::dumped(detail::type_tree(type, true), false);
}

std::string example_json(const describe::Type& type) {
  return detail::dumped(detail::example_tree(type), false);
}

std::string example_json(const describe::Calculation& calculation) {
  return detail::dumped(detail::example_tree(calculation), false);
}

std::string describe_json(const describe::Calculation& calculation) {
  auto out = detail::Json::object();
  out["name"] = calculation.name;
  out["purpose"] = calculation.purpose;
  out["version"] = calculation.version;
  out["kind"] = "calculation";
  out["input"] = detail::type_tree(*calculation.input, true);
  out["output"] = detail::type_tree(*calculation.output, false);
  out["sources"] = detail::sources_tree(calculation);
  out["cautions"] = detail::cautions_tree(calculation.cautions);
  out["example"] = detail::example_tree(calculation);
  return detail::dumped(out, false);
}

std::string describe_json(const Entry& entry) {
  auto out = detail::Json::object();
  out["name"] = entry.name;
  out["purpose"] = entry.purpose;
  out["kind"] = word(entry.kind);
  if (entry.kind == Entry::Is::act) out["changes_plans"] = entry.changes_plans;
  out["cautions"] = detail::cautions_tree(entry.cautions);
  out["input"] = detail::type_tree(*entry.input, true);
  out["output"] = detail::type_tree(*entry.output, false);
  out["example"] = detail::example_tree(*entry.input);
  return detail::dumped(out, false);
}

std::string list_json(const describe::Catalogue& catalogue) {
  auto out = detail::Json::object();
  out["calculations"] = detail::Json::array();
  for (const auto& c : catalogue.calculations()) {
    out["calculations"].push_back(
        {{"name", c.name}, {"purpose", c.purpose}, {"version", c.version}});
  }
  return detail::dumped(out, false);
}

std::string list_json(Entry::Is kind) {
  auto list = detail::Json::array();
  for (const auto& e : entries()) {
    if (e.kind == kind) list.push_back({{"name", e.name}, {"purpose", e.purpose}});
  }
  auto out = detail::Json::object();
  out[kind == Entry::Is::act ? "acts" : "views"] = std::move(list);
  return detail::dumped(out, false);
}

std::string json_string(std::string_view text) { return detail::dumped(detail::Json(text), false); }

}  // namespace wm::calculation
