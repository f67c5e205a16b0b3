#include <fmt/core.h>

#include <algorithm>

#include "mechanics/torque.hpp"
#include "quantity/as_typed.hpp"

namespace wm::mechanics {
namespace {

constexpr std::size_t k_no_column = static_cast<std::size_t>(-1);

std::size_t column(const describe::Table& table, std::string_view key) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (table.columns[i].key == key) return i;
  }
  return k_no_column;
}

std::string listed(const std::vector<std::string_view>& words) {
  std::string list;
  for (const std::string_view word : words) {
    if (list.find(std::string(word) + ", ") != std::string::npos) continue;
    list += std::string(word) + ", ";
  }
  if (!list.empty()) list.resize(list.size() - 2);
  return list;
}

Problem not_found(std::string path, std::string what, std::string expected) {
  Problem p;
  p.kind = Kind::not_found;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

quantity::Torque cell(const describe::Table& table, std::size_t row, std::size_t col) {
  // The tables are checked when they are built, so a cell that is not a torque is our mistake.
  const auto value = quantity::parse_number(table.rows[row][col]);
  const quantity::Unit* unit =
      quantity::find_unit(quantity::KindOf::torque, table.columns[col].unit);
  return {value && unit != nullptr ? *value * unit->factor : 0.0};
}

std::vector<std::string_view> torque_tables(const describe::Context& context) {
  std::vector<std::string_view> names;
  for (const describe::Table* t : context.tables) {
    if (t->name.starts_with("torque-")) names.push_back(t->name);
  }
  return names;
}

}  // namespace

Result<TorqueBand> torque_band(const describe::Context& context, std::string_view table_name,
                               std::string_view size, std::string_view which) {
  const describe::Table* table = context.table(table_name);
  if (table == nullptr || column(*table, "lowest") == k_no_column) {
    return Fail(not_found("table", fmt::format("there is no torque table \"{}\"", table_name),
                          listed(torque_tables(context))));
  }
  const std::size_t at_size = column(*table, "size");
  const std::size_t at_case = column(*table, "case");
  std::vector<std::string_view> sizes;
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < table->rows.size(); ++i) {
    sizes.push_back(table->rows[i][at_size]);
    if (table->rows[i][at_size] == size) rows.push_back(i);
  }
  if (rows.empty()) {
    return Fail(
        not_found("size", fmt::format("{} has no size \"{}\"", table_name, size), listed(sizes)));
  }
  std::vector<std::string_view> cases;
  for (const std::size_t row : rows) cases.push_back(table->rows[row][at_case]);
  std::size_t row = rows.front();
  if (!which.empty() || rows.size() > 1) {
    const auto found = std::find(cases.begin(), cases.end(), which);
    if (found == cases.end()) {
      return Fail(not_found("which",
                            fmt::format("{}, size {}: which of them is not said", table_name, size),
                            listed(cases)));
    }
    row = rows[static_cast<std::size_t>(found - cases.begin())];
  }
  TorqueBand band;
  band.table = std::string(table->name);
  band.lowest = cell(*table, row, column(*table, "lowest"));
  band.highest = cell(*table, row, column(*table, "highest"));
  if (const std::size_t most = column(*table, "most"); most != k_no_column) {
    band.most = cell(*table, row, most);
  }
  band.may_be_limit =
      (table->row_provenance.empty() ? table->provenance : table->row_provenance[row]) == "read";
  band.in_words =
      fmt::format("{}, {}, {}: {} to {} in-lb ({}, {})", table->name, size,
                  table->rows[row][at_case], table->rows[row][column(*table, "lowest")],
                  table->rows[row][column(*table, "highest")], table->document, table->place);
  return band;
}

}  // namespace wm::mechanics
