#pragma once
/// Text to the neutral tree. Each gives the one problem that stopped it, or none.

#include <optional>
#include <span>

#include "calculation/detail/tree.hpp"
#include "outcome/result.hpp"

namespace wm::calculation::detail {

/// Refuses what is no JSON (with line and column), too large, too deep, or invalid UTF-8.
[[nodiscard]] std::optional<Problem> parse_json(std::string_view json, Tree& tree);

/// Refuses what is no TOML; every node knows its line and column.
[[nodiscard]] std::optional<Problem> parse_toml(std::string_view toml, Tree& tree);

/// "wrench=12 in", "items/0/mass=9 lb", or a whole JSON object in braces.
[[nodiscard]] Problems parse_key_values(std::span<const std::string_view> pairs, Tree& tree);

/// A JSON object with some of its fields given anew; a later pair replaces an earlier value.
[[nodiscard]] Problems parse_replacing(std::string_view body,
                                       std::span<const std::string_view> pairs, Tree& tree);

/// "line 12, column 5" of a place in a text.
[[nodiscard]] std::string place_in(std::string_view text, std::size_t offset);

}  // namespace wm::calculation::detail
