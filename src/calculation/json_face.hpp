#pragma once
/// The JSON face: requests in, answers out, descriptions for the form, and payloads for the
/// journal. Everything is one walk over a described type; no JSON type leaves this room.

#include <chrono>
#include <map>
#include <string>
#include <string_view>

#include "calculation/entry.hpp"
#include "describe/catalogue.hpp"
#include "describe/fields.hpp"
#include "outcome/result.hpp"

namespace wm::calculation {

/// Largest text that any face reads.
inline constexpr std::size_t k_largest_text = std::size_t{4} * 1024 * 1024;

/// Read what a person or a program sent.
///
/// Quantities are text with a unit ("38 in"); counts are JSON integers; numbers are JSON numbers
/// or text; dates are "2026-11-25"; one of several is {"is": "word", ...}. null and, where a field
/// may stay empty, "" count as absent.
///
/// @param out  A default-constructed value of `type`. It is written only when nothing is wrong.
/// @return     Every problem at once, each with its path ("leads/2/reading"): bad_text,
///             wrong_dimension, out_of_bounds, missing, unknown_field, unknown_choice, duplicate.
[[nodiscard]] Problems read_json(std::string_view json, const describe::Type& type, void* out);

template <class T>
[[nodiscard]] Checked<T> from_json(std::string_view json) {
  T out{};
  if (auto problems = read_json(json, describe::type_of<T>(), &out); !problems.empty()) {
    return Fail(std::move(problems));
  }
  return out;
}

struct WriteOptions {
  quantity::UnitSet units{quantity::UnitSet::us_customary};
  /// Unit asked for a field: by key ("reading") or by path without indices ("leads/reading").
  std::map<std::string, std::string> field_units{};
  bool pretty{};
};

/// The unit in which a value is shown when none is asked for: of the owner's set; but where both
/// sets have the same one (ohm, volt), the one it was typed in, so that kohm stays kohm.
[[nodiscard]] const quantity::Unit& shown_unit(const describe::NumberValue& value,
                                               quantity::UnitSet set);

/// Write an answer. A quantity becomes {"value", "unit", "text"} with "u", "U" and "k" where an
/// uncertainty is stated and "as_typed" where somebody typed it: "value" is the number to compute
/// with, "text" is what to show, with no more digits than were earned. Empty optional: left out.
[[nodiscard]] std::string write_json(const describe::Type& type, const void* value,
                                     const WriteOptions& options = {});

template <class T>
[[nodiscard]] std::string to_json(const T& value, const WriteOptions& options = {}) {
  return write_json(describe::type_of<T>(), &value, options);
}

/// Write a value for the journal: compact, fields in the order of the description, quantities as
/// typed (an object with every figure where the text alone would not give the same value back).
/// `read_payload(write_payload(x))` is x, to the last bit.
[[nodiscard]] std::string write_payload(const describe::Type& type, const void* value);
/// An input as a person would type it: `read_json` takes it, by either door. Digits beyond 15 go.
[[nodiscard]] std::string write_input(const describe::Type& type, const void* value);

/// Read a payload back. Bounds and needed fields are not asked for again: what was accepted once
/// stays readable when a bound changes. `out` is unspecified after a problem.
[[nodiscard]] Problems read_payload(std::string_view payload, const describe::Type& type,
                                    void* out);

template <class T>
[[nodiscard]] std::string to_payload(const T& value) {
  return write_payload(describe::type_of<T>(), &value);
}
template <class T>
[[nodiscard]] Checked<T> from_payload(std::string_view payload) {
  T out{};
  if (auto problems = read_payload(payload, describe::type_of<T>(), &out); !problems.empty()) {
    return Fail(std::move(problems));
  }
  return out;
}

/// {"problems":[{path, kind, what, expected, example, do_next, source}]}; empty texts left out.
[[nodiscard]] std::string write_problems(const Problems& problems);

/// {title, fields:[...]}: what the form needs to draw itself.
[[nodiscard]] std::string describe_type_json(const describe::Type& type);

/// {name, purpose, version, kind:"calculation", input, output, sources, cautions, example}.
[[nodiscard]] std::string describe_json(const describe::Calculation& calculation);

/// {name, purpose, kind:"act" or "view", changes_plans (acts), input, output, cautions, example}.
[[nodiscard]] std::string describe_json(const Entry& entry);

/// {"calculations":[{name, purpose, version}]}.
[[nodiscard]] std::string list_json(const describe::Catalogue& catalogue);
/// {"acts":[{name, purpose}]} or {"views":[...]}.
[[nodiscard]] std::string list_json(Entry::Is kind);

/// A JSON string, quotes and all; bytes that are no UTF-8 are replaced.
[[nodiscard]] std::string json_string(std::string_view text);

/// An input made of the fields' own examples.
[[nodiscard]] std::string example_json(const describe::Type& type);
/// The example of a calculation: all the fields' examples where they run together, else those of
/// the needed fields alone. What every page shows and the meta-test runs.
[[nodiscard]] std::string example_json(const describe::Calculation& calculation);

/// "Today" for examples, so that pages come out the same whenever they are made.
inline constexpr quantity::Date k_example_day{std::chrono::year{2026}, std::chrono::month{11},
                                              std::chrono::day{25}};

/// Run a calculation on JSON: {"calculation", "version", "answer", "sources", "cautions"}.
///
/// The input may hold "units": {"field": "kohm"}, the units in which the answer is wanted.
[[nodiscard]] Checked<std::string> call_json(const describe::Calculation& calculation,
                                             std::string_view input_json,
                                             const describe::Context& context,
                                             const WriteOptions& options = {});

/// Name of a problem kind as the faces show it: "out-of-bounds".
[[nodiscard]] std::string_view word(Kind kind);

}  // namespace wm::calculation
