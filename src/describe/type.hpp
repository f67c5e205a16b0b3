#pragma once
/// Plain structs described once: fields, units, bounds, examples, lists, choices.
///
/// A `Type` is the type-erased description of one C++ type. Every face (JSON, TOML,
/// OpenAPI, form, text, manual) is one ordinary function that walks it.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/date.hpp"
#include "quantity/kinds.hpp"

namespace wm::describe {

enum class Shape : std::uint8_t {
  text,          ///< std::string
  yes_no,        ///< bool
  count,         ///< std::int64_t
  number,        ///< double without a unit (coverage factors, ratios of equal things)
  quantity,      ///< Quantity<K> or Entered<Q>: "38 in"
  measured,      ///< Measured<Q>: "85.2 ohm +- 0.7 ohm"
  any_quantity,  ///< AnyQuantity: a value of whatever kind, with or without uncertainty
  choice,        ///< a described enumeration
  date,          ///< Date: "2026-11-25"
  record,        ///< a described struct
  list,          ///< std::vector of anything described
  optional,      ///< std::optional of anything described
  one_of         ///< std::variant of described structs, told apart by "is"
};

/// A value of any kind, found from its unit: what a meter was asked to read.
struct AnyQuantity {
  quantity::KindOf kind{quantity::KindOf::length};
  double si{};
  double resolution_si{};
  std::optional<double> expanded_si{};
  std::string text;
  friend bool operator==(const AnyQuantity&, const AnyQuantity&) = default;
};

/// The common view of every shape that carries a number with a unit.
struct NumberValue {
  quantity::KindOf kind{};
  double si{};
  double resolution_si{};
  std::optional<double> expanded_si{};
  std::string text;
};

struct Type;

struct Choice {
  std::string value;  ///< as stored: "opened-and-refitted"
  std::string label;  ///< as shown: "opened and refitted"
  std::int64_t number{};
};

struct Alternative {
  std::string word;  ///< value of "is"
  const Type* type{};
};

struct Field {
  std::string key;
  std::string label;
  std::string help;
  std::string example;
  const Type* type{};
  std::size_t offset{};
  bool needed{};
  bool unique{};                 ///< within the list that holds the record
  std::string refers_to;         ///< what the text names: "position", "part", "attachment", ...
  std::optional<double> lowest;  ///< SI, count, days since 1970 for dates, items for lists
  std::optional<double> highest;
  bool above{};            ///< `lowest` itself is refused
  std::string shown_when;  ///< "key=value": a form shows the field only then
};

/// Operations on a value of the type behind a void pointer; null where senseless.
struct Operations {
  NumberValue (*get_number)(const void*){};
  void (*set_number)(void*, const NumberValue&){};
  std::int64_t (*get_choice)(const void*){};
  void (*set_choice)(void*, std::int64_t){};
  std::size_t (*size)(const void*){};
  const void* (*at)(const void*, std::size_t){};
  void* (*append)(void*){};
  const void* (*get)(const void*){};       ///< optional: null when empty; one_of: the alternative
  void* (*emplace)(void*, std::size_t){};  ///< optional: index ignored
  std::size_t (*index)(const void*){};     ///< one_of
};

struct Type {
  Shape shape{Shape::text};
  std::string name;  ///< of records and choices: "lead"
  std::optional<quantity::KindOf> kind;
  bool keeps_text{};  ///< remembers how it was typed
  std::vector<Field> fields;
  const Type* of{};
  std::vector<Alternative> alternatives;
  std::vector<Choice> choices;
  std::size_t size{};
  std::size_t alignment{};
  const void* defaults{};  ///< records: a default-constructed one
  Operations operations;
};

/// The field of a record, or nullptr.
[[nodiscard]] const Field* find_field(const Type& record, std::string_view key);

/// Where a field's value lies inside its record.
[[nodiscard]] inline const void* value_of(const Field& field, const void* record) {
  return static_cast<const std::byte*>(record) + field.offset;
}
[[nodiscard]] inline void* value_of(const Field& field, void* record) {
  return static_cast<std::byte*>(record) + field.offset;
}

/// Names of members that the description of a record leaves out, as far as gaps in its
/// layout show: "between `length` and `reading`". Empty when every member is described.
[[nodiscard]] std::string undescribed_gap(const Type& record);

/// Whether two values of a described type are the same, typed text and all.
[[nodiscard]] bool equal(const Type& type, const void* a, const void* b);

/// Read a value of whatever kind from its unit, with or without "+- U". Where a unit serves
/// two kinds the everyday one is taken: gauge pressure, torque, temperature.
[[nodiscard]] Result<AnyQuantity> read_any(std::string_view text);

}  // namespace wm::describe
