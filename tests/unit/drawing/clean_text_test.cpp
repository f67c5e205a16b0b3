#include "drawing/detail/clean_text.hpp"

#include <gtest/gtest.h>

namespace wm::drawing::detail {
namespace {

TEST(CleanText, KeepsWhatMechanicsWrite) {
  const std::string text = "85.2 Ω ± 0.7 Ω, 45°, Δp ≤ 2 µbar, Ω φ – “λ” 漢字 😀";
  EXPECT_EQ(clean_text(text), text);
}

TEST(CleanText, ShowsThatAControlCharacterWasThere) {
  EXPECT_EQ(clean_text(std::string{"a\0b\x1B[31mc\x7F", 10}), "a\uFFFDb\uFFFD[31mc\uFFFD");
  EXPECT_EQ(clean_text("a\tb\r\nc"), "a b \nc");
  EXPECT_EQ(clean_text("a\u0085b"), "a\uFFFDb");
}

TEST(CleanText, ReplacesBytesThatAreNotUtf8) {
  EXPECT_EQ(clean_text("\xFF"), "\uFFFD");
  EXPECT_EQ(clean_text("a\xC3"), "a\uFFFD");
  EXPECT_EQ(clean_text("a\xE2\x84z"), "a\uFFFDz");
  EXPECT_EQ(clean_text("\xC0\xAF"), "\uFFFD") << "an overlong slash";
  EXPECT_EQ(clean_text("\xED\xA0\x80"), "\uFFFD") << "half of a surrogate pair";
  EXPECT_EQ(clean_text("\xF5\x80\x80\x80"), "\uFFFD") << "beyond the last character";
  EXPECT_EQ(clean_text("\xEF\xBF\xBE"), "\uFFFD") << "a noncharacter that XML refuses";
}

TEST(CleanText, MarksThatReverseTheReadingDirectionAreShown) {
  EXPECT_EQ(clean_text("a\u202Eb"), "a\uFFFDb");
  EXPECT_EQ(clean_text("a\u2066b"), "a\uFFFDb");
}

TEST(CleanText, LeavesOutCharactersOfNoWidth) {
  EXPECT_EQ(clean_text("Q-\u200BPEB\uFEFF\u2060\u00AD"), "Q-PEB");
}

TEST(CleanText, IsStableWhenDoneTwice) {
  for (int first = 0; first < 256; ++first)
    for (int second = 0; second < 256; second += 5) {
      const std::string raw{static_cast<char>(first), static_cast<char>(second), 'x'};
      const std::string once = clean_text(raw);
      EXPECT_EQ(clean_text(once), once);
    }
}

TEST(XmlText, EscapesMarkup) {
  EXPECT_EQ(xml_text("<script a=\"b\" c='d'>&amp;</script>"),
            "&lt;script a=&quot;b&quot; c=&#39;d&#39;&gt;&amp;amp;&lt;/script&gt;");
}

}  // namespace
}  // namespace wm::drawing::detail
