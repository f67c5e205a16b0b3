#include "ignition/lead.hpp"

#include <gtest/gtest.h>

#include "ignition/declarations.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using evidence::Verdict;

describe::AnyQuantity any(const char* text) { return *describe::read_any(text); }
MeasuredResistance read_ohms(const char* text) {
  const auto p = *quantity::parse_measured(text, quantity::KindOf::resistance);
  MeasuredResistance m{{p.value.si}, {}, p.value.resolution_si, text};
  if (p.expanded) m.expanded_si = p.expanded->si;
  return m;
}
EnteredResistance ohms(const char* text) { return *quantity::read<quantity::Resistance>(text); }
quantity::Measured<quantity::Length> metres(const char* text) {
  const auto p = *quantity::parse_measured(text, quantity::KindOf::length);
  quantity::Measured<quantity::Length> m{{p.value.si}, {}, p.value.resolution_si, text};
  if (p.expanded) m.expanded_si = p.expanded->si;
  return m;
}
bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}

LeadCheckInput lead(const char* reading) {
  LeadCheckInput in;
  in.length = metres("1.20 m");
  in.per_length_low = *quantity::read<quantity::ResistancePerLength>("10 kohm/m");
  in.per_length_high = *quantity::read<quantity::ResistancePerLength>("23 kohm/m");
  in.reading = read_ohms(reading);
  return in;
}

TEST(Lead, TellsTheFourVerdicts) {
  EXPECT_EQ(lead_check(lead("20.0 kohm +- 0.3 kohm"), {})->verdict, Verdict::conforms);
  EXPECT_EQ(lead_check(lead("27.5 kohm +- 0.3 kohm"), {})->verdict, Verdict::undecided);
  EXPECT_EQ(lead_check(lead("29.0 kohm +- 0.3 kohm"), {})->verdict, Verdict::does_not_conform);
  auto in = lead("20.0 kohm");
  in.reading.reset();
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::not_tested);
}

TEST(Lead, SaysWhatAReadingOutsideItsBandMeans) {
  EXPECT_TRUE(says(lead_check(lead("29.0 kohm +- 0.3 kohm"), {})->do_next, "burnt core"));
  EXPECT_TRUE(says(lead_check(lead("8.0 kohm +- 0.3 kohm"), {})->do_next, "wrong cable"));
  EXPECT_FALSE(lead_check(lead("27.5 kohm +- 0.3 kohm"), {})->do_next.empty());
}

TEST(Lead, AlwaysSaysThatInsulationIsNotTested) {
  for (const char* r : {"20.0 kohm +- 0.3 kohm", "29.0 kohm +- 0.3 kohm"}) {
    EXPECT_NE(lead_check(lead(r), {})->not_covered.find("insulation not tested, and leads can be"),
              std::string::npos);
  }
}

TEST(Lead, OverRangeIsOpen) {
  auto in = lead("1 ohm");
  in.reading.reset();
  in.over_range = true;
  evidence::MeterRange range;
  range.full_scale = any("60 kohm");
  range.of_reading = quantity::per_cent(1);
  in.meter = range;
  const auto got = lead_check(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
  EXPECT_TRUE(got->open);
  EXPECT_EQ(got->in_words, "does not conform (open)");
  // A range that ends below the limit says nothing yet.
  in.meter->full_scale = any("20 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::undecided);
}

TEST(Lead, OverRangeIsOpenWithoutAnyLimit) {
  LeadCheckInput in;
  in.over_range = true;
  const auto got = lead_check(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->in_words, "does not conform (open)");
  EXPECT_FALSE(got->do_next.empty());
}

TEST(Lead, AnUpperLimitAloneIsEnough) {
  LeadCheckInput in;
  in.highest = ohms("8 kohm");
  in.limit_basis = LimitBasis::owners_limit;
  in.reading = read_ohms("7.2 kohm +- 0.1 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::conforms);
  in.reading = read_ohms("8.5 kohm +- 0.1 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::does_not_conform);
}

TEST(Lead, TheTighterLimitRules) {
  auto in = lead("20.0 kohm +- 0.3 kohm");
  in.highest = ohms("19 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::does_not_conform);
  in.highest = ohms("40 kohm");
  EXPECT_NEAR(lead_check(in, {})->highest->value.si, 27600, 1e-6);
}

TEST(Lead, WithoutAMakersLimitThereIsNoVerdict) {
  LeadCheckInput in;
  in.reading = read_ohms("30.0 kohm +- 0.3 kohm");
  for (const char* r : {"20.1 kohm", "20.3 kohm", "19.9 kohm"}) {
    in.siblings.push_back({r, read_ohms(r), {}});
  }
  const auto got = lead_check(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_NE(got->siblings.find("stands out"), std::string::npos);
  EXPECT_NE(got->siblings.find("no maker's limit: compared with its siblings"), std::string::npos);
  EXPECT_TRUE(says(got->do_next, "swap it with a sibling"));
}

TEST(Lead, ATypicalFigureIsAdvice) {
  auto in = lead("29.0 kohm +- 0.3 kohm");
  in.limit_basis = LimitBasis::typical_figure;
  const auto got = lead_check(in, {});
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_NE(got->reason.find("by a typical figure"), std::string::npos);
}

TEST(Lead, SiblingsOfOtherLengthAreComparedForTheirLength) {
  auto in = lead("24.0 kohm +- 0.2 kohm");
  in.siblings = {{"a", read_ohms("12.1 kohm"), *quantity::read<quantity::Length>("0.60 m")},
                 {"b", read_ohms("16.0 kohm"), *quantity::read<quantity::Length>("0.80 m")},
                 {"c", read_ohms("19.9 kohm"), *quantity::read<quantity::Length>("1.00 m")}};
  EXPECT_EQ(lead_check(in, {})->siblings, "like its siblings for its length");
}

TEST(Lead, ShowsAChangeAgainstItsOwnBaseline) {
  auto in = lead("24.0 kohm +- 0.2 kohm");
  in.baseline = read_ohms("20.0 kohm +- 0.2 kohm");
  EXPECT_NE(lead_check(in, {})->baseline.find("risen"), std::string::npos);
  in.baseline = read_ohms("24.1 kohm +- 0.2 kohm");
  EXPECT_NE(lead_check(in, {})->baseline.find("not shown to have changed"), std::string::npos);
}

TEST(Lead, ADoubtfulLengthMakesItUndecided) {
  auto in = lead("27.0 kohm +- 0.1 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::conforms);
  in.length = metres("1.20 m +- 0.05 m");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::undecided);
  in.reading = read_ohms("28.0 kohm +- 0.1 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::undecided);
  in.reading = read_ohms("29.5 kohm +- 0.1 kohm");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::does_not_conform);
  in.length = metres("1.20 m +- 0.9 m");
  EXPECT_EQ(lead_check(in, {})->verdict, Verdict::undecided);
}

TEST(Lead, WarmthMovesTheLimits) {
  auto in = lead("20.0 kohm +- 0.3 kohm");
  in.temperature = quantity::celsius(70);
  EXPECT_EQ(lead_check(in, {}).error()[0].path, "temperature_coefficient");
  in.temperature_coefficient = 0.004;
  EXPECT_NEAR(lead_check(in, {})->highest->value.si, 27600 * 1.2, 1e-6);
}

TEST(Lead, NamesWhatIsMissingOrContradicts) {
  auto in = lead("20 kohm");
  in.length.reset();
  EXPECT_EQ(lead_check(in, {}).error()[0].path, "length");
  in = lead("20 kohm");
  in.over_range = true;
  EXPECT_EQ(lead_check(in, {}).error()[0].path, "over_range");
  in = lead("20 kohm");
  in.lowest = ohms("30 kohm");
  EXPECT_EQ(lead_check(in, {}).error()[0].path, "lowest");
}

TEST(Lead, IsDeclaredWithoutAGap) {
  describe::Catalogue catalogue;
  declare(catalogue);
  ASSERT_NE(catalogue.find("lead-check"), nullptr);
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<LeadCheckInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<LeadCheckAnswer>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<SiblingLead>()), "");
}

}  // namespace
