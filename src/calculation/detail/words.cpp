#include "calculation/detail/words.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <numeric>
#include <optional>

#include "quantity/date.hpp"
#include "quantity/text.hpp"

namespace wm::calculation::detail {

using describe::Field;
using describe::Shape;
using describe::Type;

const Type& inside(const Type& type) {
  const Type* inner = &type;
  while (inner->shape == Shape::optional) inner = inner->of;
  return *inner;
}

bool is_needed(const Field& field) {
  if (field.needed) return true;
  return field.type->shape == Shape::list && field.lowest && *field.lowest >= 1;
}

std::string_view shape_word(const Type& type) {
  switch (inside(type).shape) {
    case Shape::text:
      return "text";
    case Shape::yes_no:
      return "yes_no";
    case Shape::count:
      return "count";
    case Shape::number:
      return "number";
    case Shape::quantity:
      return "quantity";
    case Shape::measured:
      return "measured";
    case Shape::any_quantity:
      return "any_quantity";
    case Shape::choice:
      return "choice";
    case Shape::date:
      return "date";
    case Shape::record:
      return "record";
    case Shape::list:
      return "list";
    case Shape::one_of:
      return "one_of";
    case Shape::optional:
      break;
  }
  return "text";
}

std::string_view shape_word(const Field& field) {
  if (inside(*field.type).shape == Shape::text && !field.refers_to.empty()) {
    return field.refers_to == "attachment" ? "attachment" : "reference";
  }
  return shape_word(*field.type);
}

std::string expectation(const Type& type) {
  const Type& t = inside(type);
  switch (t.shape) {
    case Shape::text:
      return "text";
    case Shape::yes_no:
      return "yes or no: true or false";
    case Shape::count:
      return "a whole number";
    case Shape::number:
      return "a number";
    case Shape::quantity:
      return fmt::format("{} with its unit", quantity::info(*t.kind).words);
    case Shape::measured:
      return fmt::format("{} with its unit, and its uncertainty where known",
                         quantity::info(*t.kind).words);
    case Shape::any_quantity:
      return "a value with its unit";
    case Shape::choice: {
      std::vector<std::string_view> words;
      for (const auto& c : t.choices) words.emplace_back(c.value);
      return "one of: " + join(words);
    }
    case Shape::date:
      return "a date as year-month-day";
    case Shape::record:
      return "an object with the fields of " + t.name;
    case Shape::list:
      return "a list, each entry " + expectation(*t.of);
    case Shape::one_of: {
      std::vector<std::string_view> words;
      for (const auto& a : t.alternatives) words.emplace_back(a.word);
      return "an object whose \"is\" is one of: " + join(words);
    }
    case Shape::optional:
      break;
  }
  return {};
}

std::string example_for(const Type& type, const Field* field) {
  if (field != nullptr && !field->example.empty()) return field->example;
  const Type& t = inside(type);
  switch (t.shape) {
    case Shape::yes_no:
      return "true";
    case Shape::count:
      return field != nullptr && field->lowest
                 ? fmt::format("{:.0f}", *field->lowest + (field->above ? 1 : 0))
                 : "4";
    case Shape::number:
      return "2";
    case Shape::quantity:
      return std::string(quantity::info(*t.kind).example);
    case Shape::measured: {
      const auto& info = quantity::info(*t.kind);
      return std::string(info.example);
    }
    case Shape::any_quantity:
      return "85.2 ohm +- 0.7 ohm";
    case Shape::choice:
      return t.choices.empty() ? std::string{} : t.choices.front().value;
    case Shape::date:
      return "2026-11-25";
    default:
      return {};
  }
}

const quantity::Unit& unit_of(const Type& type, const Field* field) {
  const auto kind = *inside(type).kind;
  if (field != nullptr && !field->example.empty()) {
    const auto parsed = quantity::parse_measured(field->example, kind);
    if (parsed) {
      if (const auto* unit = quantity::find_unit(kind, parsed->value.unit)) return *unit;
    }
  }
  return quantity::default_unit(kind, quantity::UnitSet::us_customary);
}

std::string bound_text(double si, const quantity::Unit& unit) {
  const double value = (si - unit.offset) / unit.factor;
  return fmt::format("{:.10g} {}", value == 0 ? 0.0 : value, unit.symbol);
}

std::string bound_text(const Type& type, const Field& field, double bound) {
  const Type& t = inside(type);
  switch (t.shape) {
    case Shape::quantity:
    case Shape::measured:
      return bound_text(bound, unit_of(t, &field));
    case Shape::date:
      return quantity::print_date(std::chrono::year_month_day{
          std::chrono::sys_days{std::chrono::days{static_cast<int>(bound)}}});
    default:
      return fmt::format("{:.10g}", bound);
  }
}

std::string example_within(const Field& field) {
  const Type& type = inside(*field.type);
  if (!field.example.empty() || type.shape == Shape::text) return field.example;
  auto text = example_for(type, &field);
  std::optional<double> value;
  if (type.kind) {
    if (const auto parsed = quantity::parse_measured(text, *type.kind)) value = parsed->value.si;
  } else if (type.shape == Shape::count || type.shape == Shape::number) {
    if (const auto parsed = quantity::parse_number(text)) value = *parsed;
  }
  if (!value) return text;
  const bool low = field.lowest && (field.above ? *value <= *field.lowest : *value < *field.lowest);
  if (!low && !(field.highest && *value > *field.highest)) return text;
  if (field.highest) return bound_text(type, field, *field.highest);
  return field.above ? std::string{} : bound_text(type, field, *field.lowest);
}

namespace {
/// Insertions, deletions and replacements that make one word of the other.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const auto keep = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, keep});
    }
  }
  return row[b.size()];
}
}  // namespace

std::string_view nearest(std::string_view word, std::span<const std::string_view> words) {
  if (word.empty() || word.size() > 64) return {};
  std::string_view best;
  // In a word of three or four letters two others are another word.
  std::size_t least = (word.size() < 5 ? 1 : std::max<std::size_t>(2, word.size() / 3)) + 1;
  for (const auto candidate : words) {
    const bool begins = word.size() >= 3 && candidate.starts_with(word);
    const auto distance = begins ? 1 : edit_distance(word, candidate);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

std::string with_article(std::string_view noun) {
  const bool vowel =
      !noun.empty() && std::string_view("aeio").find(noun.front()) != std::string_view::npos;
  return fmt::format("{} {}", vowel ? "an" : "a", noun);
}

std::string join(const std::vector<std::string_view>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i == 12) return out + fmt::format(" and {} more", words.size() - i);
    if (i != 0) out += ", ";
    out += words[i];
  }
  return out;
}

std::string shown(std::string_view text) {
  std::string out;
  std::size_t count = 0;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool starts = (byte & 0xC0U) != 0x80U;
    if (starts && ++count > 60) return out + "...";
    out += byte < 0x20 || byte == 0x7F ? ' ' : c;
  }
  return out;
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

}  // namespace wm::calculation::detail
