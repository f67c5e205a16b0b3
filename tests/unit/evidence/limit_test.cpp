#include "evidence/limit.hpp"

#include <gtest/gtest.h>

#include <array>
#include <type_traits>

namespace {

using namespace wm;
using namespace wm::evidence;
using describe::AnyQuantity;
using describe::TableColumn;

constexpr std::array<TableColumn, 4> k_columns{
    {{"what", "What", ""}, {"low", "Low", "in"}, {"high", "High", "in"}, {"unit", "Unit", ""}}};
constexpr std::array<std::string_view, 4> k_first{"read here", "0.012", "0.024", "mm"};
constexpr std::array<std::string_view, 4> k_second{"said here", "0.016", "0.021", "mm"};
constexpr std::array<std::string_view, 4> k_third{"nothing", "", "", "mm"};
constexpr std::array<std::span<const std::string_view>, 3> k_rows{k_first, k_second, k_third};
constexpr std::array<std::string_view, 6> k_words{"read",     "secondary", "derived",
                                                  "computed", "memory",    "common-practice"};

describe::Table table(std::span<const std::string_view> row_provenance, std::string_view all) {
  describe::Table t{};
  t.name = "sample";
  t.document = "a document";
  t.place = "page 1";
  t.provenance = all;
  t.columns = k_columns;
  t.rows = k_rows;
  t.row_provenance = row_provenance;
  return t;
}

// The only makers are `entered` and `of_row`: nothing else turns figures into a limit.
static_assert(!std::is_default_constructible_v<Limit>);
static_assert(!std::is_constructible_v<Limit, std::optional<AnyQuantity>,
                                       std::optional<AnyQuantity>, std::string>);
static_assert(!std::is_convertible_v<AnyQuantity, Limit>);
static_assert(!std::is_constructible_v<Limit, describe::Table>);

TEST(Limit, OnlyARowThatWasReadBecomesOne) {
  for (const std::string_view word : k_words) {
    const auto t = table({}, word);
    const auto got = Limit::of_row(t, 0, {"low", "high", {}});
    EXPECT_EQ(got.has_value(), word == "read") << word;
    if (!got) {
      EXPECT_EQ(got.error().kind, Kind::refused);
    }
  }
}

TEST(Limit, TheProvenanceOfTheRowGoesBeforeThatOfTheTable) {
  constexpr std::array<std::string_view, 3> rows{"secondary", "read", "read"};
  const auto t = table(rows, "read");
  EXPECT_FALSE(Limit::of_row(t, 0, {"low", "high", {}}));
  EXPECT_TRUE(Limit::of_row(t, 1, {"low", "high", {}}));
}

TEST(Limit, HoldsFiguresUnitAndSource) {
  const auto t = table({}, "read");
  const auto got = Limit::of_row(t, 0, {"low", "high", {}});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->lowest()->si, 0.012 * 0.0254, 1e-12);
  EXPECT_NEAR(got->highest()->si, 0.024 * 0.0254, 1e-12);
  EXPECT_EQ(got->source(), "a document, page 1");
  EXPECT_NEAR(Limit::of_row(t, 0, {"low", {}, "unit"})->lowest()->si, 0.012e-3, 1e-12);
  EXPECT_EQ(Limit::of_row(t, 2, {"low", "high", {}}).error().kind, Kind::missing);
  EXPECT_EQ(Limit::of_row(t, 9, {"low", "high", {}}).error().kind, Kind::not_found);
  EXPECT_EQ(Limit::of_row(t, 0, {"none", "high", {}}).error().kind, Kind::not_found);
}

TEST(Limit, WhatAPersonEntersIsOne) {
  EXPECT_FALSE(Limit::entered({}, {}, "").any());
  EXPECT_TRUE(Limit::entered({}, *describe::read_any("8 kohm"), "data sheet").any());
}

}  // namespace
