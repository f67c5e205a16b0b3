#pragma once
/// Figures out of reference tables. The tables are checked when they are built, so a column
/// that is not there is our own mistake.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/table.hpp"

namespace wm::electrics::detail {

/// @pre The table has the column.
[[nodiscard]] std::size_t column(const describe::Table& table, std::string_view key);
/// Row whose first cell is `name`.
[[nodiscard]] std::optional<std::size_t> row_of(const describe::Table& table,
                                                std::string_view name);
/// Nothing where the source gives no figure.
[[nodiscard]] std::optional<double> figure(const describe::Table& table, std::size_t row,
                                           std::string_view key);
[[nodiscard]] std::string_view word(const describe::Table& table, std::size_t row,
                                    std::string_view key);
/// "read", "secondary", ... of one row.
[[nodiscard]] std::string_view provenance(const describe::Table& table, std::size_t row);
/// First cells, joined by commas.
[[nodiscard]] std::string listed(const describe::Table& table);
/// "AC 43.13-1B CHG 1, table 11-9, page 11-23"
[[nodiscard]] std::string cited(const describe::Table& table);
/// One column as numbers. @pre no cell of it is empty
[[nodiscard]] std::vector<double> numbers(const describe::Table& table, std::string_view key);
/// Straight line between the points; nothing outside. @pre xs ascend, as many ys
[[nodiscard]] std::optional<double> between(const std::vector<double>& xs,
                                            const std::vector<double>& ys, double x);

}  // namespace wm::electrics::detail
