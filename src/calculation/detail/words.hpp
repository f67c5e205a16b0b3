#pragma once
/// Words that every face shares: what a field expects, how a bound reads, which key was meant.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "describe/type.hpp"
#include "quantity/kinds.hpp"

namespace wm::calculation::detail {

/// The word of the form's contract: "quantity", "list", "attachment", ...; an optional is named
/// by what it may hold.
[[nodiscard]] std::string_view shape_word(const describe::Field& field);
[[nodiscard]] std::string_view shape_word(const describe::Type& type);

/// The type inside an optional, or the type itself.
[[nodiscard]] const describe::Type& inside(const describe::Type& type);

/// Whether a field must be given: it says so, or it is a list that asks for an entry.
[[nodiscard]] bool is_needed(const describe::Field& field);

/// "a length with its unit", "one of: looked-at, renewed", "a whole number".
[[nodiscard]] std::string expectation(const describe::Type& type);

/// An example for a field: its own, or one that every field of its type accepts.
[[nodiscard]] std::string example_for(const describe::Type& type, const describe::Field* field);

/// An example for a described field: its own, or one of its kind that its bounds allow; empty for
/// text and for what holds other fields.
[[nodiscard]] std::string example_within(const describe::Field& field);

/// The unit in which a field is best shown: that of its example, else of the US set.
[[nodiscard]] const quantity::Unit& unit_of(const describe::Type& type,
                                            const describe::Field* field);

/// A bound as text in a unit, exact to ten digits: "2 in".
[[nodiscard]] std::string bound_text(double si, const quantity::Unit& unit);
/// A bound of any field that has bounds: "2 in", "1", "2026-01-01".
[[nodiscard]] std::string bound_text(const describe::Type& type, const describe::Field& field,
                                     double bound);

/// "a position", "an instrument".
[[nodiscard]] std::string with_article(std::string_view noun);

/// The nearest of some words, or empty when none is near.
[[nodiscard]] std::string_view nearest(std::string_view word,
                                       std::span<const std::string_view> words);

/// "a, b, c", cut after a dozen.
[[nodiscard]] std::string join(const std::vector<std::string_view>& words);

/// Text made fit for a message: control characters out, cut to 60 characters.
[[nodiscard]] std::string shown(std::string_view text);

/// Length in characters of UTF-8 text.
[[nodiscard]] std::size_t characters(std::string_view text);
[[nodiscard]] std::string_view trimmed(std::string_view text);

inline constexpr std::size_t k_longest_text_field = 4000;

}  // namespace wm::calculation::detail
