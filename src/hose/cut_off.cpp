#include <fmt/core.h>

#include <algorithm>

#include "hose/length.hpp"

namespace wm::hose {
namespace {

Problem not_found(std::string path, std::string what, std::string expected) {
  Problem p;
  p.kind = Kind::not_found;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

/// The rows of a table whose column `col` holds `wanted`; or what that column holds at all.
std::vector<std::size_t> rows_with(const describe::Table& table, std::size_t col,
                                   std::string_view wanted, std::string& all) {
  std::vector<std::size_t> rows;
  std::vector<std::string_view> seen;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const std::string_view cell = table.rows[i][col];
    if (cell == wanted) rows.push_back(i);
    if (std::find(seen.begin(), seen.end(), cell) == seen.end()) {
      all += (seen.empty() ? "" : ", ") + std::string(cell);
      seen.push_back(cell);
    }
  }
  return rows;
}

/// A table of three columns: two that choose, one length in inches.
Result<quantity::Length> look_up(const describe::Context& context, std::string_view name,
                                 std::string_view first, std::string_view second,
                                 std::string_view first_path, std::string_view second_path) {
  const describe::Table* table = context.table(name);
  if (table == nullptr || table->columns.size() != 3) {
    return Fail(not_found("", fmt::format("the table \"{}\" is not there", name),
                          "the tables of the room hose"));
  }
  std::string all;
  const auto rows = rows_with(*table, 0, first, all);
  if (rows.empty()) {
    return Fail(
        not_found(std::string(first_path), fmt::format("{} has no \"{}\"", name, first), all));
  }
  std::string there;
  for (const std::size_t row : rows) {
    if (table->rows[row][1] == second) {
      const auto inches = quantity::parse_number(table->rows[row][2]);
      return quantity::inches(inches ? *inches : 0.0);
    }
    there += (there.empty() ? "" : ", ") + std::string(table->rows[row][1]);
  }
  return Fail(not_found(std::string(second_path),
                        fmt::format("{}, {}: no \"{}\"", name, first, second), there));
}

}  // namespace

Result<quantity::Length> cut_off(const describe::Context& context, std::string_view family,
                                 std::string_view size) {
  return look_up(context, "hose-cut-off", family, size, "family", "size");
}

Result<quantity::Length> cut_off_pair(const describe::Context& context, std::string_view size,
                                      std::string_view form) {
  return look_up(context, "hose-cut-off-pair", size, form, "size", "pair_form");
}

}  // namespace wm::hose
