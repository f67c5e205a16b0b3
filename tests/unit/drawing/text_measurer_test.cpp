#include "drawing/text_measurer.hpp"

#include <gtest/gtest.h>

namespace wm::drawing {
namespace {

TEST(TextMeasurer, IsLinearInSizeAndAddsUp) {
  const TextMeasurer m;
  const double one = m.width("0", 3, Weight::normal);
  EXPECT_GT(one, 0);
  // Advances are whole units of 1/1024 point; ten of them round by less than 0.01 mm.
  EXPECT_NEAR(m.width("0000000000", 3, Weight::normal), 10 * one, 0.01);
  EXPECT_NEAR(m.width("0000000000", 6, Weight::normal), 20 * one, 0.02);
  EXPECT_EQ(m.width("", 3, Weight::normal), 0);
}

TEST(TextMeasurer, FiguresAreAllAsWideAsEachOther) {
  const TextMeasurer m;
  for (Weight weight : {Weight::normal, Weight::bold})
    for (const char* figure : {"1", "2", "3", "4", "5", "6", "7", "8", "9"})
      EXPECT_EQ(m.width(figure, 4, weight), m.width("0", 4, weight)) << figure;
}

TEST(TextMeasurer, WrappedLinesFitAndLoseNoWord) {
  const TextMeasurer m;
  const std::string text = "Tighten the pump nut with the second wrench on the fitting, Ω ± 5 %.";
  for (double width : {12.0, 20.0, 33.0, 70.0, 500.0}) {
    std::string again;
    for (const std::string& line : m.wrap(text, 3.2, Weight::normal, width)) {
      EXPECT_LE(m.width(line, 3.2, Weight::normal), width + 0.05) << line;
      again += (again.empty() ? "" : " ") + line;
    }
    if (width >= 20) {
      EXPECT_EQ(again, text) << width;
    }
  }
}

TEST(TextMeasurer, AWordLongerThanTheLineIsBrokenNotCut) {
  const TextMeasurer m;
  const std::string hash(64, 'f');
  std::string again;
  for (const std::string& line : m.wrap(hash, 3.2, Weight::bold, 20)) {
    EXPECT_LE(m.width(line, 3.2, Weight::bold), 20.05);
    again += line;
  }
  EXPECT_EQ(again, hash);
}

// Symptom seen: one word of 200 kB took two and a half minutes.
TEST(TextMeasurer, AVeryLongWordIsWrappedInATimeThatGrowsWithItsLength) {
  const TextMeasurer m;
  std::string word;
  while (word.size() < 200'000) word += "Ωx";
  std::string again;
  for (const std::string& line : m.wrap(word, 3.2, Weight::normal, 50)) again += line;
  EXPECT_EQ(again, word);
  EXPECT_LE(m.width(m.shortened(word, 3.2, Weight::normal, 50), 3.2, Weight::normal), 50.05);
}

TEST(TextMeasurer, AWindowOfTextIsNotSeenInItsLines) {
  // The same words in one paragraph and, line by line, alone: no line could take one more word.
  const TextMeasurer m;
  std::string text;
  for (int i = 0; i < 2000; ++i) text += "word" + std::to_string(i) + " ";
  const auto lines = m.wrap(text, 3.2, Weight::normal, 80);
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    const std::string next = lines[i + 1].substr(0, lines[i + 1].find(' '));
    EXPECT_GT(m.width(lines[i] + " " + next, 3.2, Weight::normal), 80) << lines[i];
  }
}

TEST(TextMeasurer, NoWidthAtAllStillEnds) {
  const TextMeasurer m;
  EXPECT_EQ(m.wrap("abc", 3, Weight::normal, 0).size(), 3U);
  EXPECT_EQ(m.wrap("abc", 3, Weight::normal, -5).size(), 3U);
}

TEST(TextMeasurer, LineFeedsEndLinesAndSpacesCollapse) {
  const TextMeasurer m;
  const std::vector<std::string> expected{"a b", "", "c"};
  EXPECT_EQ(m.wrap("  a   b \n\n c \n\n", 3, Weight::normal, 100), expected);
  EXPECT_TRUE(m.wrap("", 3, Weight::normal, 100).empty());
  EXPECT_TRUE(m.wrap(" \n \t ", 3, Weight::normal, 100).empty());
}

TEST(TextMeasurer, ShortenedFitsAndSaysSo) {
  const TextMeasurer m;
  EXPECT_EQ(m.shortened("Q-PEB", 3, Weight::normal, 100), "Q-PEB");
  const std::string text(300, 'w');
  const std::string cut = m.shortened(text, 3, Weight::normal, 40);
  EXPECT_LE(m.width(cut, 3, Weight::normal), 40.05);
  EXPECT_TRUE(cut.ends_with("…"));
}

}  // namespace
}  // namespace wm::drawing
