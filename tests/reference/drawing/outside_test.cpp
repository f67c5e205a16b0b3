// Checks from outside the project: paper sizes, contrast, and what other programs read.
#include <gtest/gtest.h>

#include "drawing/card.hpp"
#include "drawing/palette.hpp"
#include "drawing/qr.hpp"
#include "support/reference_case.hpp"

namespace wm::drawing {
namespace {

Page first_page(Paper paper) {
  Card card;
  card.title = "Card";
  return lay_out(card, paper)->front();
}

// Source: ISO 216:2007, A4 is 210 mm by 297 mm; Letter is 8.5 in by 11 in of exactly 25.4 mm.
// From memory, unconfirmed; the PDF's own page size is read back by poppler in the unit tests.
TEST(Reference, PaperSizes) {
  const auto row = [](const char* id, const char* expected, double value, double got) {
    test::check({"drawing", id, "ISO 216; inch = 25.4 mm (from memory, unconfirmed)", expected,
                 value, got, 1e-9, "exact by definition; rounding of the product only"});
  };
  const Page a4 = first_page(Paper::a4);
  const Page letter = first_page(Paper::letter);
  row("A4 width", "210 mm", 210, a4.width);
  row("A4 height", "297 mm", 297, a4.height);
  row("Letter width", "8.5 in", 8.5 * 25.4, letter.width);
  row("Letter height", "11 in", 11 * 25.4, letter.height);
}

// Source: WCAG 2.2, definition of contrast ratio: from 1:1 to 21:1, black on white being 21.
// #767676 on white is the widely quoted lightest grey that reaches 4.5 (4.54); from memory.
TEST(Reference, ContrastRatio) {
  test::check({"drawing", "contrast of black on white", "WCAG 2.2, contrast ratio", "21", 21,
               contrast({0, 0, 0}, {255, 255, 255}), 1e-9, "the end of the scale, exact"});
  test::check({"drawing", "contrast of #767676 on white",
               "quoted with WCAG 1.4.3 (from memory, unconfirmed)", "4.54", 4.54,
               contrast({0x76, 0x76, 0x76}, {255, 255, 255}), 0.005,
               "half a unit of the last printed digit"});
}

// Source: ISO/IEC 18004: version v has 17 + 4v squares a side; three finder patterns of
// 7 squares, dark corner squares, at three corners (from memory, unconfirmed).
TEST(Reference, QrFinderPatterns) {
  const auto code = qr_squares("WM1 412 " + std::string(64, 'a'));
  ASSERT_TRUE(code);
  EXPECT_EQ((code->side - 17) % 4, 0);
  const auto dark = [&](int x, int y) {
    return code->dark[static_cast<std::size_t>(y * code->side + x)];
  };
  const int last = code->side - 1;
  for (auto [x, y] : {std::pair{0, 0}, std::pair{last - 6, 0}, std::pair{0, last - 6}})
    for (int dy = 0; dy < 7; ++dy)
      for (int dx = 0; dx < 7; ++dx) {
        const bool ring = dx == 0 || dx == 6 || dy == 0 || dy == 6;
        const bool core = dx >= 2 && dx <= 4 && dy >= 2 && dy <= 4;
        EXPECT_EQ(dark(x + dx, y + dy), ring || core);
      }
}

}  // namespace
}  // namespace wm::drawing
