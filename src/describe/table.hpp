#pragma once
/// A reference table: data with its papers, built into constant arrays from data/<room>/*.json.

#include <span>
#include <string_view>

namespace wm::describe {

struct TableColumn {
  std::string_view key;
  std::string_view meaning;
  std::string_view unit;  ///< empty for words
};

/// Numbers stay text, as printed: their digits carry the tolerance.
struct Table {
  std::string_view name;
  std::string_view title;
  std::string_view document;
  std::string_view edition;
  std::string_view place;
  std::string_view provenance;    ///< read, secondary, derived, computed, memory, common-practice
  std::string_view how_read;      ///< how the figures were checked
  std::string_view between_rows;  ///< "refuse" or "interpolate"
  std::string_view outside;       ///< "refuse"
  std::span<const TableColumn> columns;
  std::span<const std::span<const std::string_view>> rows;
  std::span<const std::string_view> row_provenance;  ///< one a row, or empty: all as `provenance`
  std::span<const std::string_view> errata;
  std::span<const std::string_view> row_notes{};  ///< one a row, or empty: none
};

}  // namespace wm::describe
