// Single values: text, numbers, quantities, choices, dates, and their bounds.
#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "calculation/detail/reader_class.hpp"
#include "calculation/detail/words.hpp"
#include "quantity/text.hpp"

namespace wm::calculation::detail {

using describe::NumberValue;
using describe::Shape;

namespace {

std::string_view what_is(const Node& n) {
  switch (n.is) {
    case Node::Is::null:
      return "nothing (null)";
    case Node::Is::yes_no:
      return n.yes ? "true" : "false";
    case Node::Is::integer:
    case Node::Is::number:
      return "a number";
    case Node::Is::text:
      return "text";
    case Node::Is::list:
      return "a list";
    case Node::Is::object:
      return "an object";
  }
  return "something else";
}

bool is_number(const Node& n) { return n.is == Node::Is::integer || n.is == Node::Is::number; }

}  // namespace

void Reader::wrong_type(const Node& n, const Type& type, const Field* field) {
  const Type& t = inside(type);
  const bool has_unit =
      t.shape == Shape::quantity || t.shape == Shape::measured || t.shape == Shape::any_quantity;
  const auto example = example_for(t, field);
  if (has_unit && is_number(n)) {
    const auto given = n.text.empty() ? std::to_string(n.integer) : std::string(n.text);
    return add(n, {Kind::bad_text,
                   {},
                   fmt::format("`{}`: a unit is needed, e.g. \"{}\"", shown(given), example),
                   expectation(t),
                   example,
                   {},
                   {}});
  }
  add(n, {Kind::bad_text,
          {},
          fmt::format("{} was given", n.is == Node::Is::text
                                          ? fmt::format("the text `{}`", shown(n.text))
                                          : std::string(what_is(n))),
          expectation(t),
          example,
          {},
          {}});
}

void Reader::bounds(const Node& n, double got, const Type& type, const Field* field,
                    std::string_view as_given, const quantity::Unit* unit) {
  if (field == nullptr || !strict()) return;
  // A bound typed in another unit may differ from the bound in the code in the last bits.
  const auto slack = [](double bound) { return std::abs(bound) * 1e-12; };
  const auto words = [&](double bound) {
    return unit != nullptr ? bound_text(bound, *unit) : bound_text(type, *field, bound);
  };
  std::string needed;
  if (field->lowest) {
    const double low = *field->lowest;
    if (field->above ? got <= low + slack(low) : got < low - slack(low)) {
      needed = (field->above ? "more than " : "at least ") + words(low);
    }
  }
  if (field->highest && got > *field->highest + slack(*field->highest)) {
    needed = "at most " + words(*field->highest);
  }
  if (needed.empty()) return;
  std::string range = needed;
  if (field->lowest && field->highest) {
    range = fmt::format("{}{} to {}", field->above ? "above " : "", words(*field->lowest),
                        words(*field->highest));
  }
  add(n, {Kind::out_of_bounds,
          {},
          fmt::format("`{}`: {} is needed", shown(as_given), needed),
          range,
          example_for(type, field),
          {},
          {}});
}

void Reader::text(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  if (strict()) {
    const bool control = std::any_of(n.text.begin(), n.text.end(), [](char c) {
      const auto byte = static_cast<unsigned char>(c);
      return (byte < 0x20 && c != '\n' && c != '\t' && c != '\r') || byte == 0x7F;
    });
    if (control) {
      return add(n, {Kind::bad_text,
                     {},
                     "the text holds a control character",
                     "letters, digits, signs and line breaks",
                     example_for(type, field),
                     "type it again by hand",
                     {}});
    }
    const auto length = characters(n.text);
    const auto longest = field != nullptr && field->highest
                             ? static_cast<std::size_t>(*field->highest)
                             : k_longest_text_field;
    const auto shortest =
        field != nullptr && field->lowest ? static_cast<std::size_t>(*field->lowest) : 0;
    if (length > longest || length < shortest) {
      return add(n, {Kind::out_of_bounds,
                     {},
                     fmt::format("the text is {} characters long", length),
                     length > longest ? fmt::format("at most {} characters", longest)
                                      : fmt::format("at least {} characters", shortest),
                     example_for(type, field),
                     {},
                     {}});
    }
  }
  if (out != nullptr) static_cast<std::string*>(out)->assign(n.text);
}

void Reader::yes_no(const Node& n, const Type& type, const Field* field, void* out) {
  bool yes = n.yes;
  if (in_words() && n.is == Node::Is::text) {
    yes = n.text == "yes" || n.text == "true";
    if (!yes && n.text != "no" && n.text != "false") return wrong_type(n, type, field);
  } else if (n.is != Node::Is::yes_no) {
    return wrong_type(n, type, field);
  }
  if (out != nullptr) *static_cast<bool*>(out) = yes;
}

void Reader::count(const Node& n, const Type& type, const Field* field, void* out) {
  std::int64_t got = n.integer;
  bool too_large = n.too_large;
  if (in_words() && n.is == Node::Is::text) {
    const auto parsed = quantity::parse_number(n.text);
    // 2^53: beyond it a double no longer holds every whole number.
    if (!parsed || *parsed != std::floor(*parsed)) return wrong_type(n, type, field);
    too_large = std::abs(*parsed) > 9007199254740992.0;
    got = too_large ? 0 : static_cast<std::int64_t>(*parsed);
  } else if (n.is != Node::Is::integer) {
    return wrong_type(n, type, field);
  }
  if (too_large) {
    return add(n, {Kind::out_of_bounds,
                   {},
                   "the number is too large",
                   "a smaller whole number",
                   example_for(type, field),
                   {},
                   {}});
  }
  bounds(n, static_cast<double>(got), type, field, std::to_string(got), nullptr);
  if (out != nullptr) *static_cast<std::int64_t*>(out) = got;
}

void Reader::number(const Node& n, const Type& type, const Field* field, void* out) {
  double got = n.number;
  if (n.is == Node::Is::text) {
    const auto parsed = quantity::parse_number(trimmed(n.text));
    if (!parsed) {
      auto problem = parsed.error();
      if (problem.example.empty()) problem.example = example_for(type, field);
      return add(n, std::move(problem));
    }
    got = *parsed;
  } else if (!is_number(n)) {
    return wrong_type(n, type, field);
  }
  bounds(n, got, type, field, n.text.empty() ? fmt::format("{}", got) : std::string(n.text),
         nullptr);
  if (out != nullptr) *static_cast<double*>(out) = got;
}

void Reader::quantity_text(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  NumberValue got;
  std::string_view unit;
  const auto refuse = [&](Problem problem) {
    if (field != nullptr && !field->example.empty()) problem.example = field->example;
    if (problem.expected.empty()) problem.expected = expectation(type);
    if (problem.example.empty()) problem.example = example_for(type, field);
    add(n, std::move(problem));
  };
  const auto typed = strict() ? trimmed(n.text) : n.text;
  if (type.shape == Shape::any_quantity) {
    auto parsed = describe::read_any(typed);
    if (!parsed) return refuse(parsed.error());
    got = {parsed->kind, parsed->si, parsed->resolution_si, parsed->expanded_si,
           std::string(typed)};
  } else if (type.shape == Shape::measured) {
    const auto parsed = quantity::parse_measured(typed, *type.kind);
    if (!parsed) return refuse(parsed.error());
    got = {*type.kind, parsed->value.si, parsed->value.resolution_si, {}, std::string(typed)};
    if (parsed->expanded) got.expanded_si = parsed->expanded->si;
    unit = parsed->value.unit;
  } else {
    const auto parsed = quantity::parse(typed, *type.kind);
    if (!parsed) return refuse(parsed.error());
    got = {*type.kind, parsed->si, parsed->resolution_si, {}, std::string(typed)};
    unit = parsed->unit;
  }
  // Looking the unit up takes longer than reading the number: only where a bound is asked for.
  if (type.kind && strict() && field != nullptr && (field->lowest || field->highest)) {
    bounds(n, got.si, type, field, typed, quantity::find_unit(*type.kind, unit));
  }
  if (out != nullptr) type.operations.set_number(out, got);
}

/// The journal's form of a value that its text alone would not give back (see write_payload).
void Reader::quantity_object(std::uint32_t at, const Type& type, const Field* field, void* out) {
  NumberValue got;
  if (type.kind) got.kind = *type.kind;
  bool has_value = false;
  for (auto i = node(at).first; i != Node::k_none; i = node(i).next) {
    const Node& n = node(i);
    if (n.key == "si" && is_number(n)) {
      got.si = n.number;
      has_value = true;
    } else if (n.key == "resolution" && is_number(n)) {
      got.resolution_si = n.number;
    } else if (n.key == "U" && is_number(n)) {
      got.expanded_si = n.number;
    } else if (n.key == "text" && n.is == Node::Is::text) {
      got.text = n.text;
    } else if (n.key == "kind" && n.is == Node::Is::text &&
               quantity::kind_by_name(n.text) != nullptr) {
      got.kind = quantity::kind_by_name(n.text)->kind;
    } else if (n.key != "unit") {
      return wrong_type(node(at), type, field);
    }
  }
  if (!has_value || (type.kind && got.kind != *type.kind)) {
    return wrong_type(node(at), type, field);
  }
  if (out != nullptr) type.operations.set_number(out, got);
}

void Reader::choice(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  for (const auto& c : type.choices) {
    if (c.value != n.text) continue;
    if (out != nullptr) type.operations.set_choice(out, c.number);
    return;
  }
  std::vector<std::string_view> words;
  for (const auto& c : type.choices) words.emplace_back(c.value);
  const auto near = nearest(n.text, words);
  add(n, {Kind::unknown_choice,
          {},
          fmt::format("`{}` is not one of the choices", shown(n.text)),
          expectation(type),
          near.empty() ? example_for(type, field) : std::string(near),
          {},
          {}});
}

void Reader::date(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  const auto parsed = quantity::parse_date(trimmed(n.text));
  if (!parsed) {
    auto problem = parsed.error();
    if (problem.expected.empty()) problem.expected = expectation(type);
    if (problem.example.empty()) problem.example = example_for(type, field);
    return add(n, std::move(problem));
  }
  const auto days = std::chrono::sys_days{*parsed}.time_since_epoch().count();
  bounds(n, static_cast<double>(days), type, field, n.text, nullptr);
  if (out != nullptr) *static_cast<quantity::Date*>(out) = *parsed;
}

}  // namespace wm::calculation::detail
