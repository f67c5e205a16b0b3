#include "ignition/harness.hpp"

#include <gtest/gtest.h>

#include "support/ignition_input.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;

describe::Context with_tables() {
  describe::Context c;
  c.tables = tables::all_of_ignition();
  return c;
}

HarnessLead lead(const std::string& name, const std::string& length, const std::string& reading) {
  HarnessLead l;
  l.name = name;
  if (!length.empty()) l.length = measured<quantity::Length>(length);
  if (!reading.empty()) l.reading = read_ohms(reading);
  return l;
}

/// Eight leads of 50 ohm for a foot and 30 ohm in their ends, read to a tenth.
HarnessCheckInput eight() {
  HarnessCheckInput in;
  in.leads = {lead("1 top", "13 in", "84.2 ohm"),  lead("1 bottom", "20 in", "113.3 ohm"),
              lead("2 top", "26 in", "138.3 ohm"), lead("2 bottom", "31 in", "159.2 ohm"),
              lead("3 top", "36 in", "180.0 ohm"), lead("3 bottom", "39 in", "192.5 ohm"),
              lead("4 top", "40 in", "196.7 ohm"), lead("4 bottom", "34 in", "171.7 ohm")};
  in.core = LeadCore::spiral;
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  return in;
}

HarnessCheckInput with_limits() {
  auto in = eight();
  in.per_length_low = entered<quantity::ResistancePerLength>("45 ohm/ft");
  in.per_length_high = entered<quantity::ResistancePerLength>("55 ohm/ft");
  in.terminals = some_ohms("30 ohm");
  in.limit_source = "data sheet";
  return in;
}

const HarnessLeadAnswer& of(const HarnessCheckAnswer& a, const std::string& name) {
  return *std::find_if(a.leads.begin(), a.leads.end(),
                       [&](const HarnessLeadAnswer& l) { return l.name == name; });
}

TEST(Harness, JudgesEachLeadByTheMakersLimits) {
  const auto got = harness_check(with_limits(), with_tables());
  ASSERT_TRUE(got) << got.error()[0].path << got.error()[0].what;
  for (const auto& l : got->leads) {
    EXPECT_EQ(l.verdict, Verdict::conforms) << l.name << ": " << l.reason;
    EXPECT_NE(l.not_covered.find("conductor only, insulation not tested"), std::string::npos);
    EXPECT_NE(l.siblings.find("like its siblings"), std::string::npos) << l.siblings;
  }
  EXPECT_EQ(got->verdict, Verdict::conforms);
  EXPECT_NE(got->in_words.find("conductor only, insulation not tested"), std::string::npos);
  EXPECT_TRUE(says(got->notes, "insulation: not tested"));
  EXPECT_TRUE(says(got->notes, "lead map: not tested"));
}

TEST(Harness, FindsItsOwnOhmForALengthAndItsEnds) {
  const auto got = harness_check(eight(), with_tables());
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->own_per_length->si * 0.3048, 50.0, 0.1);
  EXPECT_NEAR(got->own_ends->si, 30.0, 0.3);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_TRUE(says(got->notes, "its two ends the rest"));
  const auto inside = std::count_if(got->figures.begin(), got->figures.end(),
                                    [](const Figure& f) { return f.stands == "inside"; });
  EXPECT_LE(inside, 1);
  EXPECT_EQ(got->figures.size(), 2U);
}

TEST(Harness, AnOddLeadStandsOut) {
  auto in = eight();
  in.leads[4].reading = read_ohms("0.230 kohm");
  const auto got = harness_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_NE(of(*got, "3 top").siblings.find("stands out"), std::string::npos);
  EXPECT_NE(of(*got, "3 bottom").siblings.find("like its siblings"), std::string::npos);
  EXPECT_NEAR(got->own_per_length->si * 0.3048, 50.0, 0.5);
}

TEST(Harness, FewLeadsOrNoLengthsAreComparedAndSaySo) {
  auto in = eight();
  in.leads.resize(4);
  EXPECT_NE(harness_check(in, with_tables())->leads[0].siblings.find("ends not taken off"),
            std::string::npos);
  in.leads[0].length.reset();
  EXPECT_NE(harness_check(in, with_tables())->leads[0].siblings.find("lengths not all known"),
            std::string::npos);
}

TEST(Harness, OverRangeIsOpenWithoutAnyLimit) {
  auto in = eight();
  in.leads[2].reading.reset();
  in.leads[2].over_range = true;
  in.leads[2].range = "20 kohm";
  const auto got = harness_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(of(*got, "2 top").in_words, "does not conform (open)");
  EXPECT_TRUE(says(of(*got, "2 top").found, "open"));
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
}

TEST(Harness, OverRangeNeedsItsRange) {
  auto in = eight();
  in.leads[2].reading.reset();
  in.leads[2].over_range = true;
  const auto got = harness_check(in, with_tables());
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "leads/2/range");
  in.leads[2].range = "60 kohm";
  EXPECT_EQ(harness_check(in, with_tables()).error()[0].kind, Kind::not_found);
}

TEST(Harness, JumpyWhileFlexedIsIntermittent) {
  auto in = with_limits();
  in.leads[0].flexing = {read_ohms("84.4 ohm"), read_ohms("84.1 ohm")};
  EXPECT_EQ(harness_check(in, with_tables())->leads[0].verdict, Verdict::conforms);
  // 0.8 % and 3 digits of two readings near 85 ohm explain about 2 ohm.
  in.leads[0].flexing = {read_ohms("85.3 ohm")};
  const auto between = harness_check(in, with_tables());
  EXPECT_EQ(between->leads[0].verdict, Verdict::conforms);
  EXPECT_NE(between->leads[0].flexing.find("should repeat better"), std::string::npos);
  in.leads[0].flexing = {read_ohms("86.9 ohm")};
  const auto jumpy = harness_check(in, with_tables());
  EXPECT_EQ(jumpy->leads[0].in_words, "does not conform (intermittent)");
  EXPECT_TRUE(says(jumpy->leads[0].found, "intermittent"));
  in.leads[0].flexing.clear();
  in.leads[0].open_when_flexed = true;
  EXPECT_EQ(harness_check(in, with_tables())->leads[0].in_words, "does not conform (intermittent)");
}

TEST(Harness, AFlexedReadingOutsideItsLimitsCounts) {
  auto in = with_limits();
  in.leads[0].flexing = {read_ohms("95.0 ohm")};
  in.leads[0].reading = read_ohms("94.9 ohm");
  const auto got = harness_check(in, with_tables());
  EXPECT_EQ(got->leads[0].verdict, Verdict::does_not_conform);
  EXPECT_TRUE(says(got->leads[0].found, "high"));
}

TEST(Harness, AShortIsCalledSo) {
  auto in = with_limits();
  in.leads[3].reading = read_ohms("0.6 ohm");
  const auto got = harness_check(in, with_tables());
  EXPECT_EQ(got->leads[3].in_words, "does not conform (short)");
  EXPECT_TRUE(says(got->leads[3].found, "short"));
  in.leads[3].reading = read_ohms("95.0 ohm");
  EXPECT_TRUE(says(harness_check(in, with_tables())->leads[3].found, "low"));
}

TEST(Harness, ShowsAChangeAgainstTheEarlierReading) {
  auto in = eight();
  in.leads[5].earlier = read_ohms("150.0 ohm");
  EXPECT_NE(harness_check(in, with_tables())->leads[5].earlier.find("risen"), std::string::npos);
}

TEST(Harness, InsulationIsJudgedByItself) {
  auto in = with_limits();
  InsulationReading r;
  r.part = "1 top";
  r.test_voltage = entered<quantity::Voltage>("10 kV");
  r.reading = read_ohms("450 Mohm +- 20 Mohm");
  in.insulation = {r};
  auto got = harness_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->insulation[0].judged.verdict, Verdict::not_tested);
  EXPECT_EQ(got->insulation[0].figures.at(0).stands, "inside");
  in.insulation[0].least = some_ohms("100 Mohm");
  in.insulation[0].source = "maintenance manual";
  got = harness_check(in, with_tables());
  EXPECT_EQ(got->insulation[0].judged.verdict, Verdict::conforms);
  EXPECT_NE(got->leads[0].not_covered.find("insulation tested by itself: conforms"),
            std::string::npos);
  EXPECT_NE(got->leads[1].not_covered.find("insulation not tested"), std::string::npos);
  in.insulation[0].test_with = entered<quantity::Voltage>("15 kV");
  EXPECT_EQ(harness_check(in, with_tables())->insulation[0].judged.verdict, Verdict::not_tested);
  in.insulation[0].reading = read_ohms("20 Mohm +- 2 Mohm");
  got = harness_check(in, with_tables());
  EXPECT_EQ(got->insulation[0].judged.in_words, "does not conform (insulation)");
  EXPECT_TRUE(says(got->leads[0].found, "insulation"));
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
}

TEST(Harness, InsulationOfALeadThatIsNotThereIsRefused) {
  auto in = with_limits();
  InsulationReading r;
  r.part = "9 top";
  r.test_voltage = entered<quantity::Voltage>("10 kV");
  r.reading = read_ohms("450 Mohm +- 20 Mohm");
  in.insulation = {r};
  const auto got = harness_check(in, with_tables());
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "insulation/0/part");
  in.leads.clear();
  EXPECT_TRUE(harness_check(in, with_tables())) << "insulation alone may be entered";
}

TEST(Harness, CrossedLeadsAreNamed) {
  HarnessCheckInput in;
  in.firing_order = "1-3-2-4";
  in.towers = {{"1", "", "1 top"}, {"2", "", "3 top"}, {"3", "", "2 top"}, {"4", "", "4 top"}};
  auto got = harness_check(in, with_tables());
  ASSERT_TRUE(got) << got.error()[0].path;
  EXPECT_EQ(got->lead_map->verdict, Verdict::conforms);
  std::swap(in.towers[1].reached, in.towers[2].reached);
  got = harness_check(in, with_tables());
  EXPECT_EQ(got->lead_map->verdict, Verdict::does_not_conform);
  ASSERT_EQ(got->lead_map->crossed.size(), 1U);
  EXPECT_NE(got->lead_map->crossed[0].find("towers 2 and 3 are crossed"), std::string::npos);
  in.towers[1].reached.clear();
  in.towers[2].reached = "2 top";
  EXPECT_EQ(harness_check(in, with_tables())->lead_map->verdict, Verdict::not_tested);
}

TEST(Harness, AMapMayBeEnteredInsteadOfAFiringOrder) {
  HarnessCheckInput in;
  in.towers = {{"A1", "1 top", "1 Top"},
               {"A2", "2 top", "4 top"},
               {"B1", "3 top", "2 top"},
               {"B2", "4 top", "3 top"}};
  const auto got = harness_check(in, with_tables());
  ASSERT_TRUE(got);
  // Three leads in a ring: no pair to name, and each says whose plug it holds.
  EXPECT_TRUE(got->lead_map->crossed.empty());
  EXPECT_EQ(got->lead_map->towers[0].verdict, Verdict::conforms);
  EXPECT_NE(got->lead_map->towers[1].in_words.find("belongs to tower B2"), std::string::npos);
  in.towers[3].reached = "2 top";
  EXPECT_TRUE(says(harness_check(in, with_tables())->lead_map->crossed, "both traced"));
}

TEST(Harness, TellsWhatIsWrongWithTheMap) {
  HarnessCheckInput in;
  in.towers = {{"1", "", "1"}};
  EXPECT_EQ(harness_check(in, with_tables()).error()[0].path, "towers/0/should_reach");
  in.firing_order = "1-3-3-4";
  EXPECT_EQ(harness_check(in, with_tables()).error()[0].path, "firing_order");
  in.firing_order = "1-x";
  EXPECT_EQ(harness_check(in, with_tables()).error()[0].kind, Kind::bad_text);
  in.firing_order = "1-3-2-4";
  in.towers = {{"7", "", "1"}};
  EXPECT_EQ(harness_check(in, with_tables()).error()[0].path, "towers/0/tower");
  in.towers = {{"1", "1 top", ""}, {"2", "1 top", ""}};
  EXPECT_EQ(harness_check(in, with_tables()).error()[0].kind, Kind::conflict);
  EXPECT_EQ(harness_check({}, with_tables()).error()[0].path, "leads");
}

TEST(Harness, ProblemsOfALeadCarryItsPath) {
  auto in = with_limits();
  in.leads[1].length.reset();
  in.leads[2].over_range = true;
  const auto got = harness_check(in, with_tables());
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "leads/1/length");
  EXPECT_EQ(got.error()[1].path, "leads/2/over_range");
  in = with_limits();
  in.per_length_low = entered<quantity::ResistancePerLength>("95 ohm/ft");
  const auto upside_down = harness_check(in, with_tables());
  ASSERT_FALSE(upside_down);
  EXPECT_EQ(upside_down.error().size(), 1U);
  EXPECT_EQ(upside_down.error()[0].path, "per_length_low");
}

}  // namespace
