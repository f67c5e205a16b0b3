#include "evidence/limit.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "describe/fields.hpp"

namespace wm::evidence {
namespace {

std::optional<std::size_t> column_of(const describe::Table& table, std::string_view key) {
  const auto at = std::find_if(table.columns.begin(), table.columns.end(),
                               [&](const describe::TableColumn& c) { return c.key == key; });
  if (at == table.columns.end()) return std::nullopt;
  return static_cast<std::size_t>(at - table.columns.begin());
}

Result<Limit::End> cell(const describe::Table& table, std::size_t row, std::string_view key,
                        std::string_view unit_key) {
  if (key.empty()) return Limit::End{};
  const auto at = column_of(table, key);
  if (!at) return Fail(Kind::not_found, fmt::format("table {} has no column {}", table.name, key));
  const std::string_view text = table.rows[row][*at];
  if (text.empty()) return Limit::End{};
  const auto unit_at = column_of(table, unit_key);
  const auto unit = unit_at ? table.rows[row][*unit_at] : table.columns[*at].unit;
  auto value = describe::read_any(fmt::format("{} {}", text, unit));
  if (!value) return Fail(value.error());
  return Limit::End{std::move(*value)};
}

}  // namespace

std::string_view provenance_of(const describe::Table& table, std::size_t row) {
  return row < table.row_provenance.size() ? table.row_provenance[row] : table.provenance;
}

Limit::Limit(End lowest, End highest, std::string source)
    : lowest_(std::move(lowest)), highest_(std::move(highest)), source_(std::move(source)) {}

Limit Limit::entered(End lowest, End highest, std::string source) {
  return {std::move(lowest), std::move(highest), std::move(source)};
}

Result<Limit> Limit::of_row(const describe::Table& table, std::size_t row, LimitColumns columns) {
  if (row >= table.rows.size()) {
    return Fail(Kind::not_found, fmt::format("table {} has no row {}", table.name, row + 1));
  }
  if (const auto known = provenance_of(table, row); known != "read") {
    return Fail(Kind::refused,
                fmt::format("row {} of table {} is advice ({}): it cannot become a limit", row + 1,
                            table.name, known),
                "a figure that was read in a government or standard text, or a limit entered");
  }
  auto lowest = cell(table, row, columns.lowest, columns.unit);
  if (!lowest) return Fail(lowest.error());
  auto highest = cell(table, row, columns.highest, columns.unit);
  if (!highest) return Fail(highest.error());
  if (!*lowest && !*highest) {
    return Fail(Kind::missing,
                fmt::format("row {} of table {} holds no figure", row + 1, table.name));
  }
  return Limit{std::move(*lowest), std::move(*highest),
               fmt::format("{}, {}", table.document, table.place)};
}

}  // namespace wm::evidence
