#pragma once
/// A table of figures of the trade: columns about, what, low, high, unit, source.

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>

#include "describe/fields.hpp"
#include "evidence/limit.hpp"

namespace wm::ignition::detail {

class Rows {
 public:
  struct Span {
    std::optional<double> low, high;  ///< SI
  };

  /// @param table  nullptr: no rows.
  explicit Rows(const describe::Table* table) : table_(table) {}

  [[nodiscard]] std::size_t size() const { return table_ == nullptr ? 0 : table_->rows.size(); }
  [[nodiscard]] std::string_view word(std::size_t row, std::string_view key) const {
    const auto at = column(key);
    return at ? table_->rows[row][*at] : std::string_view{};
  }
  [[nodiscard]] std::string_view provenance(std::size_t row) const {
    return evidence::provenance_of(*table_, row);
  }
  [[nodiscard]] Span span(std::size_t row) const { return {si(row, "low"), si(row, "high")}; }
  [[nodiscard]] std::optional<double> si(std::size_t row, std::string_view key) const {
    const auto text = word(row, key);
    if (text.empty()) return std::nullopt;
    const auto value = describe::read_any(std::string(text) + " " + std::string(word(row, "unit")));
    if (!value) return std::nullopt;
    return value->si;
  }

 private:
  [[nodiscard]] std::optional<std::size_t> column(std::string_view key) const {
    if (table_ == nullptr) return std::nullopt;
    const auto at = std::find_if(table_->columns.begin(), table_->columns.end(),
                                 [&](const describe::TableColumn& c) { return c.key == key; });
    if (at == table_->columns.end()) return std::nullopt;
    return static_cast<std::size_t>(at - table_->columns.begin());
  }

  const describe::Table* table_;
};

}  // namespace wm::ignition::detail
