#include "drawing/text_plot.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace wm::drawing {
namespace {

Trend sample() {
  Trend t;
  t.name = "lead 3";
  t.points = {{0, 6.4, 0.1}, {10, 6.8, 0.1}, {20, 7.3, 0.1}, {30, 7.9, 0.1}};
  t.first_when = "1000 h";
  t.last_when = "1030 h";
  t.last_text = "7.9 kohm";
  t.upper = BandLimit{8.0, "highest 8.0 kohm"};
  t.line_from = TrendPoint{0, 6.4, 0};
  t.line_to = TrendPoint{30, 7.9, 0};
  t.changes = {15};
  return t;
}

TEST(TextPlot, HoldsEachReadingItsLimitAndBothEndsOfTheTime) {
  const auto plot = text_plot(sample(), 40, 11);
  ASSERT_TRUE(plot);
  const auto field = plot->substr(0, plot->find("1000 h"));
  const auto readings = std::ranges::count(field.substr(field.find('\n')), '@');
  EXPECT_EQ(readings, 1) << "the last reading stands once\n" << *plot;
  for (const auto* wanted : {"lead 3", "highest 8.0 kohm", "1000 h", "1030 h",
                             "@ the last: 7.9 kohm", "| change of part"})
    EXPECT_NE(plot->find(wanted), std::string::npos) << wanted << " is not in\n" << *plot;
  EXPECT_TRUE(
      std::ranges::all_of(*plot, [](char c) { return c == '\n' || (c >= ' ' && c <= '~'); }));
}

TEST(TextPlot, NoLineIsLongerThanItsPlotAndItsWords) {
  const auto plot = text_plot(sample(), 40, 11);
  ASSERT_TRUE(plot);
  std::size_t start = 0;
  while (start < plot->size()) {
    const auto end = plot->find('\n', start);
    EXPECT_LE(end - start, 80U);
    start = end + 1;
  }
}

TEST(TextPlot, OneReadingAndNoLimitIsStillAPlot) {
  Trend t;
  t.points = {{5, 1.5, 0}};
  const auto plot = text_plot(t, 20, 5);
  ASSERT_TRUE(plot);
  EXPECT_NE(plot->find('@'), std::string::npos);
}

TEST(TextPlot, WhatCannotBeDrawnIsRefused) {
  EXPECT_FALSE(text_plot(Trend{}, 40, 10));
  EXPECT_FALSE(text_plot(sample(), 5, 10));
  EXPECT_FALSE(text_plot(sample(), 40, 100));
}

}  // namespace
}  // namespace wm::drawing
