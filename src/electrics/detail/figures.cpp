#include "electrics/detail/figures.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cassert>
#include <charconv>
#include <cstddef>

#include "quantity/text.hpp"

namespace wm::electrics::detail {

std::size_t column(const describe::Table& table, std::string_view key) {
  const auto found = std::find_if(table.columns.begin(), table.columns.end(),
                                  [&](const auto& c) { return c.key == key; });
  assert(found != table.columns.end());
  return static_cast<std::size_t>(found - table.columns.begin());
}

std::optional<std::size_t> row_of(const describe::Table& table, std::string_view name) {
  const auto found = std::find_if(table.rows.begin(), table.rows.end(),
                                  [&](const auto& row) { return row.front() == name; });
  if (found == table.rows.end()) return std::nullopt;
  return static_cast<std::size_t>(found - table.rows.begin());
}

std::string_view word(const describe::Table& table, std::size_t row, std::string_view key) {
  return table.rows[row][column(table, key)];
}

std::optional<double> figure(const describe::Table& table, std::size_t row, std::string_view key) {
  const auto cell = word(table, row, key);
  if (cell.empty()) return std::nullopt;
  // Nearly every cell is a plain decimal; asked thousands of times for a load analysis.
  double plain = 0.0;
  const auto read = std::from_chars(cell.data(), cell.data() + cell.size(), plain);
  if (read.ec == std::errc{} && read.ptr == cell.data() + cell.size()) return plain;
  const auto value = quantity::parse_number(cell);
  if (!value) return std::nullopt;
  return *value;
}

std::string_view provenance(const describe::Table& table, std::size_t row) {
  return table.row_provenance.empty() ? table.provenance : table.row_provenance[row];
}

std::string listed(const describe::Table& table) {
  std::string all;
  for (const auto& row : table.rows) {
    if (!all.empty()) all += ", ";
    all += row.front();
  }
  return all;
}

std::string cited(const describe::Table& table) {
  return fmt::format("{}, {}", table.document, table.place);
}

std::vector<double> numbers(const describe::Table& table, std::string_view key) {
  std::vector<double> out;
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    out.push_back(figure(table, row, key).value_or(0.0));
  }
  return out;
}

std::optional<double> between(const std::vector<double>& xs, const std::vector<double>& ys,
                              double x) {
  if (xs.empty() || x < xs.front() || x > xs.back()) return std::nullopt;
  const auto above = std::lower_bound(xs.begin(), xs.end(), x);
  const auto i = static_cast<std::size_t>(above - xs.begin());
  if (*above == x) return ys[i];
  const double share = (x - xs[i - 1]) / (xs[i] - xs[i - 1]);
  return ys[i - 1] + share * (ys[i] - ys[i - 1]);
}

}  // namespace wm::electrics::detail
