// The figures of the trade: each can be read, and none that was not read itself can judge.
#include "tables/ignition/all.hpp"

#include <gtest/gtest.h>

#include "describe/fields.hpp"
#include "evidence/limit.hpp"
#include "ignition/detail/rows.hpp"

namespace {

using namespace wm;
using evidence::Limit;
using ignition::detail::Rows;

bool has_column(const describe::Table& table, std::string_view key) {
  return std::any_of(table.columns.begin(), table.columns.end(),
                     [&](const describe::TableColumn& c) { return c.key == key; });
}

TEST(IgnitionTables, EveryFigureHasAUnitThatCanBeRead) {
  for (const describe::Table* table : tables::all_of_ignition()) {
    if (!has_column(*table, "unit")) continue;
    const Rows rows(table);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      for (const std::string_view key : {"low", "high"}) {
        if (rows.word(i, key).empty()) continue;
        EXPECT_TRUE(rows.si(i, key)) << table->name << " row " << i + 1 << ' ' << key;
      }
      EXPECT_TRUE(rows.si(i, "low") || rows.si(i, "high")) << table->name << " row " << i + 1;
      EXPECT_FALSE(rows.word(i, "source").empty()) << table->name << " row " << i + 1;
    }
  }
}

TEST(IgnitionTables, OnlyRowsThatWereReadCanBecomeALimit) {
  std::size_t read = 0;
  std::size_t advice = 0;
  for (const describe::Table* table : tables::all_of_ignition()) {
    if (!has_column(*table, "unit")) continue;
    for (std::size_t i = 0; i < table->rows.size(); ++i) {
      const bool allowed = evidence::provenance_of(*table, i) == "read";
      const auto limit = Limit::of_row(*table, i, {"low", "high", "unit"});
      EXPECT_EQ(limit.has_value(), allowed) << table->name << " row " << i + 1;
      ++(allowed ? read : advice);
    }
  }
  EXPECT_GE(read, 3U);
  EXPECT_GE(advice, 20U);
}

}  // namespace
