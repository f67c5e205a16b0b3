#pragma once
/// A reference table looked at by the keys of its columns.

#include <optional>
#include <string>
#include <string_view>

#include "describe/table.hpp"
#include "quantity/text.hpp"

namespace wm::hose::detail {

class Rows {
 public:
  /// @param table  nullptr: no rows.
  explicit Rows(const describe::Table* table) : table_(table) {}

  [[nodiscard]] std::size_t size() const { return table_ == nullptr ? 0 : table_->rows.size(); }

  /// The cell as printed; empty where there is none.
  [[nodiscard]] std::string_view word(std::size_t row, std::string_view key) const {
    const auto at = column(key);
    return at ? table_->rows[row][*at] : std::string_view{};
  }

  /// The cell with its unit, as a person reads it: "0.77 in"; empty where there is none.
  [[nodiscard]] std::string text(std::size_t row, std::string_view key) const {
    const auto at = column(key);
    if (!at || table_->rows[row][*at].empty()) return {};
    return std::string(table_->rows[row][*at]) + " " + std::string(table_->columns[*at].unit);
  }

  template <class Q>
  [[nodiscard]] std::optional<Q> value(std::size_t row, std::string_view key) const {
    const auto parsed = quantity::parse(text(row, key), Q::kind);
    if (!parsed) return std::nullopt;
    return Q{parsed->si};
  }

  [[nodiscard]] std::string_view provenance(std::size_t row) const {
    return table_->row_provenance.empty() ? table_->provenance : table_->row_provenance[row];
  }

  /// "AC 43.13-1B CHG 1, table 9-3, page 9-22".
  [[nodiscard]] std::string place() const {
    if (table_ == nullptr) return {};
    return std::string(table_->document) + ", " + std::string(table_->place);
  }

 private:
  [[nodiscard]] std::optional<std::size_t> column(std::string_view key) const {
    if (table_ == nullptr) return std::nullopt;
    for (std::size_t i = 0; i < table_->columns.size(); ++i) {
      if (table_->columns[i].key == key) return i;
    }
    return std::nullopt;
  }

  const describe::Table* table_;
};

}  // namespace wm::hose::detail
