#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <cmath>

#include "calculation/detail/to_json.hpp"
#include "calculation/detail/words.hpp"
#include "quantity/readable.hpp"
#include "quantity/text.hpp"

namespace wm::calculation {
namespace detail {
namespace {

using describe::NumberValue;
using describe::Shape;
using describe::Type;

Json finite(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

/// Twelve digits: what arithmetic leaves behind the last of them is noise, not figures.
double tidy(double value) {
  if (!std::isfinite(value) || value == 0) return value == 0 ? 0.0 : value;
  const auto parsed = quantity::parse_number(fmt::format("{:.12g}", value));
  return parsed ? *parsed : value;
}

std::string choice_word(const Type& type, const void* value) {
  const auto number = type.operations.get_choice(value);
  for (const auto& c : type.choices) {
    if (c.number == number) return c.value;
  }
  return {};
}

class AnswerWriter {
 public:
  explicit AnswerWriter(const WriteOptions& options) : options_(&options) {}

  Json value(const Type& type, const void* at) {
    switch (type.shape) {
      case Shape::text:
        return *static_cast<const std::string*>(at);
      case Shape::yes_no:
        return *static_cast<const bool*>(at);
      case Shape::count:
        return *static_cast<const std::int64_t*>(at);
      case Shape::number:
        return finite(tidy(*static_cast<const double*>(at)));
      case Shape::quantity:
      case Shape::measured:
      case Shape::any_quantity:
        return quantity_object(type.operations.get_number(at));
      case Shape::choice:
        return choice_word(type, at);
      case Shape::date: {
        const auto& date = *static_cast<const quantity::Date*>(at);
        return date.ok() ? Json(quantity::print_date(date)) : Json(nullptr);
      }
      case Shape::record: {
        Json out = Json::object();
        members(type, at, out);
        return out;
      }
      case Shape::list: {
        Json out = Json::array();
        const auto size = type.operations.size(at);
        for (std::size_t i = 0; i < size; ++i) {
          out.push_back(value(*type.of, type.operations.at(at, i)));
        }
        return out;
      }
      case Shape::optional: {
        const void* inner = type.operations.get(at);
        return inner == nullptr ? Json(nullptr) : value(*type.of, inner);
      }
      case Shape::one_of: {
        const auto& alternative = type.alternatives[type.operations.index(at)];
        Json out = Json::object();
        out["is"] = alternative.word;
        members(*alternative.type, type.operations.get(at), out);
        return out;
      }
    }
    return nullptr;
  }

 private:
  void members(const Type& type, const void* at, Json& out) {
    for (const auto& field : type.fields) {
      keys_.push_back(field.key);
      auto member = value(*field.type, describe::value_of(field, at));
      keys_.pop_back();
      if (!member.is_null()) out[field.key] = std::move(member);
    }
  }

  const quantity::Unit& unit_for(const NumberValue& v) const {
    const auto kind = v.kind;
    if (!options_->field_units.empty() && !keys_.empty()) {
      std::string path;
      for (const auto key : keys_) {
        if (!path.empty()) path += '/';
        path += key;
      }
      for (const auto& name : {path, std::string(keys_.back())}) {
        const auto found = options_->field_units.find(name);
        if (found == options_->field_units.end()) continue;
        if (const auto* unit = quantity::find_unit(kind, found->second)) return *unit;
      }
    }
    return shown_unit(v, options_->units);
  }

  Json quantity_object(const NumberValue& v) const {
    const auto& unit = unit_for(v);
    Json out = Json::object();
    out["value"] = finite(tidy((v.si - unit.offset) / unit.factor));
    out["unit"] = unit.symbol;
    out["text"] = v.expanded_si ? quantity::print_with_uncertainty(v.si, *v.expanded_si, unit)
                                : quantity::print(v.si, unit, v.resolution_si);
    if (v.expanded_si) {
      // A step on the scale: the offset of a temperature does not apply to it.
      const double expanded = *v.expanded_si / unit.factor;
      out["u"] = finite(tidy(expanded / 2));
      out["U"] = finite(tidy(expanded));
      out["k"] = 2;
    }
    if (!v.text.empty()) out["as_typed"] = v.text;
    return out;
  }

  const WriteOptions* options_;
  std::vector<std::string_view> keys_;
};

/// Whether reading `text` as a field of this type gives exactly this value back.
bool text_says_it_all(const Type& type, const NumberValue& v, std::string_view text) {
  if (type.shape == Shape::any_quantity) {
    const auto parsed = describe::read_any(text);
    return parsed && *parsed == describe::AnyQuantity{v.kind, v.si, v.resolution_si, v.expanded_si,
                                                      std::string(text)};
  }
  if (type.shape == Shape::measured) {
    const auto parsed = quantity::parse_measured(text, *type.kind);
    return parsed && parsed->value.si == v.si && parsed->value.resolution_si == v.resolution_si &&
           parsed->expanded.has_value() == v.expanded_si.has_value() &&
           (!v.expanded_si || parsed->expanded->si == *v.expanded_si);
  }
  const auto parsed = quantity::parse(text, *type.kind);
  return parsed && parsed->si == v.si &&
         (!type.keeps_text || parsed->resolution_si == v.resolution_si);
}

/// How a value is written that will be read again.
enum class Stored : std::uint8_t {
  to_the_bit,  ///< for the journal: read back exactly
  as_input     ///< as a person would type it: read by either door
};

/// As a person would type it, in a unit of the US set, with all its digits.
std::string as_typed(const describe::NumberValue& v) {
  const auto& unit = quantity::default_unit(v.kind, quantity::UnitSet::us_customary);
  auto out = fmt::format("{:.15g} {}", (v.si - unit.offset) / unit.factor, unit.symbol);
  if (v.expanded_si)
    out += fmt::format(" +- {:.15g} {}", *v.expanded_si / unit.factor, unit.symbol);
  return out;
}

Json payload_quantity(const Type& type, const void* at, Stored form) {
  const auto v = type.operations.get_number(at);
  const auto& info = quantity::info(v.kind);
  if (!type.keeps_text) {
    auto text = fmt::format("{} {}", v.si, info.si_unit);
    if (text_says_it_all(type, v, text)) return text;
  } else if (!v.text.empty() && text_says_it_all(type, v, v.text)) {
    return v.text;
  }
  if (form == Stored::as_input) return v.text.empty() ? as_typed(v) : v.text;
  Json out = Json::object();
  out["si"] = finite(v.si);
  out["unit"] = info.si_unit;
  if (!type.kind) out["kind"] = info.name;
  if (v.expanded_si) out["U"] = finite(*v.expanded_si);
  if (v.resolution_si != 0) out["resolution"] = finite(v.resolution_si);
  if (!v.text.empty()) out["text"] = v.text;
  return out;
}

Json stored_tree(const Type& type, const void* at, Stored form);

void payload_members(const Type& type, const void* at, Stored form, Json& out) {
  for (const auto& field : type.fields) {
    auto member = stored_tree(*field.type, describe::value_of(field, at), form);
    if (!member.is_null()) out[field.key] = std::move(member);
  }
}

Json stored_tree(const Type& type, const void* at, Stored form) {
  switch (type.shape) {
    case Shape::text:
      return *static_cast<const std::string*>(at);
    case Shape::yes_no:
      return *static_cast<const bool*>(at);
    case Shape::count:
      return *static_cast<const std::int64_t*>(at);
    case Shape::number:
      return finite(*static_cast<const double*>(at));
    case Shape::quantity:
    case Shape::measured:
    case Shape::any_quantity:
      return payload_quantity(type, at, form);
    case Shape::choice:
      return choice_word(type, at);
    case Shape::date: {
      const auto& date = *static_cast<const quantity::Date*>(at);
      return date.ok() ? Json(quantity::print_date(date)) : Json(nullptr);
    }
    case Shape::record: {
      Json out = Json::object();
      payload_members(type, at, form, out);
      return out;
    }
    case Shape::list: {
      Json out = Json::array();
      const auto size = type.operations.size(at);
      for (std::size_t i = 0; i < size; ++i) {
        out.push_back(stored_tree(*type.of, type.operations.at(at, i), form));
      }
      return out;
    }
    case Shape::optional: {
      const void* inner = type.operations.get(at);
      return inner == nullptr ? Json(nullptr) : stored_tree(*type.of, inner, form);
    }
    case Shape::one_of: {
      const auto& alternative = type.alternatives[type.operations.index(at)];
      Json out = Json::object();
      out["is"] = alternative.word;
      payload_members(*alternative.type, type.operations.get(at), form, out);
      return out;
    }
  }
  return nullptr;
}

}  // namespace

Json answer_tree(const Type& type, const void* value, const WriteOptions& options) {
  return AnswerWriter(options).value(type, value);
}

Json payload_tree(const Type& type, const void* at) {
  return stored_tree(type, at, Stored::to_the_bit);
}

Json input_tree(const Type& type, const void* at) {
  return stored_tree(type, at, Stored::as_input);
}

std::string dumped(const Json& json, bool pretty) {
  return json.dump(pretty ? 2 : -1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace detail

std::string write_json(const describe::Type& type, const void* value, const WriteOptions& options) {
  return detail::dumped(detail::answer_tree(type, value, options), options.pretty);
}

std::string write_payload(const describe::Type& type, const void* value) {
  return detail::dumped(detail::payload_tree(type, value), false);
}

std::string write_input(const describe::Type& type, const void* value) {
  return detail::dumped(detail::input_tree(type, value), false);
}

std::string_view word(Kind kind) {
  switch (kind) {
    case Kind::bad_text:
      return "bad-text";
    case Kind::wrong_dimension:
      return "wrong-dimension";
    case Kind::out_of_bounds:
      return "out-of-bounds";
    case Kind::missing:
      return "missing";
    case Kind::unknown_field:
      return "unknown-field";
    case Kind::unknown_choice:
      return "unknown-choice";
    case Kind::duplicate:
      return "duplicate";
    case Kind::not_found:
      return "not-found";
    case Kind::conflict:
      return "conflict";
    case Kind::not_applicable:
      return "not-applicable";
    case Kind::refused:
      return "refused";
    case Kind::stopped:
      return "stopped";
    case Kind::damaged:
      return "damaged";
  }
  return "bad-text";
}

std::string write_problems(const Problems& problems) {
  auto list = detail::Json::array();
  for (const auto& p : problems) {
    auto one = detail::Json::object();
    one["path"] = p.path;
    one["kind"] = word(p.kind);
    one["what"] = p.what;
    const auto put = [&](const char* key, const std::string& text) {
      if (!text.empty()) one[key] = text;
    };
    put("expected", p.expected);
    put("example", p.example);
    put("do_next", p.do_next);
    put("source", p.source);
    list.push_back(std::move(one));
  }
  auto out = detail::Json::object();
  out["problems"] = std::move(list);
  return detail::dumped(out, false);
}

const quantity::Unit& shown_unit(const describe::NumberValue& value, quantity::UnitSet set) {
  const auto& of_set = quantity::default_unit(value.kind, set);
  const auto& us = quantity::default_unit(value.kind, quantity::UnitSet::us_customary);
  const auto& si = quantity::default_unit(value.kind, quantity::UnitSet::si);
  if (value.text.empty()) return quantity::readable_unit(value.kind, value.si, set);
  if (us.symbol != si.symbol) return of_set;
  const auto parsed = quantity::parse_measured(value.text, value.kind);
  const auto* typed = parsed ? quantity::find_unit(value.kind, parsed->value.unit) : nullptr;
  return typed != nullptr ? *typed : of_set;
}

}  // namespace wm::calculation
