#include "drawing/hose_tag.hpp"

#include <gtest/gtest.h>

#include "drawing/pdf.hpp"
#include "drawing/svg.hpp"
#include "sheet_checks.hpp"

namespace wm::drawing {
namespace {

HoseTag sample() {
  HoseTag tag;
  tag.title = "oil cooler, pressure side";
  tag.registration = "Q-PEB";
  tag.between = "oil cooler, inlet to engine, oil outlet";
  tag.made_as = "MIL-H-8794 -8, overall 23.12 in";
  tag.clocking = "35 deg, seen along the hose from the far end, counterclockwise";
  tag.working_pressure = "at most 90 psi";
  tag.assembled = "4Q26 (2026-11-20)";
  tag.proved = true;
  tag.proof = "4000 psi, 5 min, water, 2026-11-25: conforms";
  tag.by = "owner of Pebblewing (invented)";
  tag.part = "hose-7";
  tag.mark = "WM1 812 " + std::string(64, 'a');
  tag.mark_words = "record at entry 812, head aaaa aaaa aaaa aaaa";
  return tag;
}

std::string words(const Page& page) { return test::all_text({page}); }

void tidy(const HoseTag& tag) {
  const TextMeasurer measurer;
  const auto one = lay_out_tag(tag);
  ASSERT_TRUE(one) << one.error().what;
  test::expect_tidy(*one, measurer, 3);
  // The square keeps clear of the words, and lies inside the frame.
  for (const Item& item : one->items) {
    const auto* code = std::get_if<QrCode>(&item);
    if (code == nullptr) continue;
    EXPECT_LE(code->at.x + code->side, one->width);
    EXPECT_LE(code->at.y + code->side, one->height);
    for (const auto& box : test::text_boxes(*one, measurer))
      EXPECT_LE(box.right, code->at.x) << box.text;
  }
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const auto page = lay_out_tags(tag, paper);
    ASSERT_TRUE(page);
    test::expect_tidy(*page, measurer, 9);
    EXPECT_TRUE(check(*page));
  }
}

TEST(HoseTag, SaysWhatTheNextMechanicNeeds) {
  const auto page = lay_out_tag(sample());
  ASSERT_TRUE(page);
  const auto text = words(*page);
  // Test date, number, pressure and who: TM 1-1500-204-23-2, tagging of hose assemblies.
  for (const auto* wanted : {"oil cooler, pressure side", "Q-PEB", "4000 psi", "2026-11-25",
                             "conforms", "at most 90 psi", "hose-7", "owner of Pebblewing", "4Q26"})
    EXPECT_NE(text.find(wanted), std::string::npos) << wanted << " is not in " << text;
  tidy(sample());
}

TEST(HoseTag, AnUnprovedHoseSaysSoAsLarge) {
  auto tag = sample();
  tag.proved = false;
  tag.proof = "No proof test is on record.";
  const auto page = lay_out_tag(tag);
  ASSERT_TRUE(page);
  EXPECT_NE(words(*page).find("NOT PROVED."), std::string::npos);
  double size = 0;
  for (const Item& item : page->items)
    if (const auto* t = std::get_if<Text>(&item); t != nullptr && t->text.starts_with("NOT PROVED"))
      size = t->size;
  EXPECT_DOUBLE_EQ(size, 3.4) << "as large as a verdict";
  tidy(tag);
}

TEST(HoseTag, LongNamesMakeItHigherAndNeverOverlap) {
  auto tag = sample();
  tag.title =
      "oil cooler, pressure side, behind the left magneto, above the baffle of cylinder four";
  tag.between += ", by way of the bulkhead union at the upper right of the firewall";
  tag.clocking += ", " + tag.clocking;
  tidy(tag);
  const auto shorter = lay_out_tag(sample());
  const auto longer = lay_out_tag(tag);
  ASSERT_TRUE(shorter && longer);
  EXPECT_GT(longer->height, shorter->height);
}

TEST(HoseTag, WithoutATitleOrBeyondAPageItIsRefused) {
  auto tag = sample();
  tag.title.clear();
  EXPECT_EQ(lay_out_tag(tag).error().kind, Kind::missing);
  tag = sample();
  for (int i = 0; i < 60; ++i) tag.between += ", and from there to the next union";
  EXPECT_EQ(lay_out_tag(tag).error().kind, Kind::out_of_bounds);
}

TEST(HoseTag, NothingOnItIsYellow) {
  // A yellow tag means serviceable in many stores: ours must not be taken for one.
  const auto page = lay_out_tags(sample(), Paper::a4);
  ASSERT_TRUE(page);
  for (const Item& item : page->items) {
    if (const auto* rect = std::get_if<Rect>(&item)) {
      EXPECT_FALSE(rect->fill.has_value());
    }
  }
}

TEST(QuarterCode, IsQuarterAndYear) {
  // NAVEDTRA 14018, p. 5-10: January to March is 1Q, October to December 4Q.
  const auto code = [](const char* day) { return quarter_code(*quantity::parse_date(day)); };
  EXPECT_EQ(code("1980-04-01"), "2Q80");
  EXPECT_EQ(code("2026-03-31"), "1Q26");
  EXPECT_EQ(code("2026-12-31"), "4Q26");
  EXPECT_EQ(code("2026-07-15"), "3Q26");
}

}  // namespace
}  // namespace wm::drawing
