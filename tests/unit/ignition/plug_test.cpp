#include "ignition/plug.hpp"

#include <gtest/gtest.h>

#include <set>

#include "support/ignition_input.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;
using quantity::Length;

describe::Context with_tables() {
  describe::Context c;
  c.tables = tables::all_of_ignition();
  return c;
}

PlugCheckInput one(const std::string& gap, const std::string& resistor) {
  PlugReading p;
  p.name = "3 top";
  p.gaps = {measured<Length>(gap)};
  p.resistor = read_ohms(resistor);
  p.look = PlugLook::normal;
  PlugCheckInput in;
  in.plugs = {p};
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  in.gap_lowest = entered<Length>("0.016 in");
  in.gap_highest = entered<Length>("0.021 in");
  in.gauge_step = entered<Length>("0.001 in");
  in.resistor_highest = some_ohms("5 kohm");
  in.limit_source = "the plugs' maker";
  return in;
}

TEST(Plug, TheMakersLimitsJudge) {
  auto got = plug_check(one("0.018 in", "1.050 kohm"), with_tables());
  ASSERT_TRUE(got) << got.error()[0].path << got.error()[0].what;
  EXPECT_EQ(got->verdict, Verdict::conforms);
  EXPECT_EQ(plug_check(one("0.023 in", "1.050 kohm"), with_tables())->plugs[0].gap.verdict,
            Verdict::does_not_conform);
  EXPECT_EQ(plug_check(one("0.018 in", "6.50 kohm"), with_tables())->plugs[0].resistor.verdict,
            Verdict::does_not_conform);
}

TEST(Plug, TheWorstElectrodeCounts) {
  auto in = one("0.018 in", "1.050 kohm");
  in.plugs[0].gaps.push_back(measured<Length>("0.024 in"));
  EXPECT_EQ(plug_check(in, with_tables())->plugs[0].gap.verdict, Verdict::does_not_conform);
}

TEST(Plug, AdviceNeverJudges) {
  auto in = one("0.050 in", "19.0 kohm");
  in.gap_lowest.reset();
  in.gap_highest.reset();
  in.resistor_highest.reset();
  const auto got = plug_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->plugs[0].gap.verdict, Verdict::not_tested);
  EXPECT_EQ(got->plugs[0].resistor.verdict, Verdict::not_tested);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  const auto above = std::count_if(got->plugs[0].figures.begin(), got->plugs[0].figures.end(),
                                   [](const Figure& f) { return f.stands == "above"; });
  EXPECT_EQ(above, 5);  // gap, bench tester, three figures for the resistor
}

TEST(Plug, OpenAndFouled) {
  auto in = one("0.018 in", "1.050 kohm");
  in.resistor_highest.reset();
  in.plugs[0].resistor.reset();
  in.plugs[0].resistor_over_range = true;
  in.plugs[0].resistor_range = "20 kohm";
  in.plugs[0].insulation = read_ohms("12.0 kohm");
  auto got = plug_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->plugs[0].resistor.in_words, "does not conform (open)");
  EXPECT_NE(got->plugs[0].insulation.reason.find("fouled or cracked"), std::string::npos);
  EXPECT_EQ(got->plugs[0].insulation.verdict, Verdict::not_tested);
  in.plugs[0].insulation.reset();
  in.plugs[0].insulation_over_range = true;
  in.plugs[0].insulation_range = "20 kohm";
  EXPECT_NE(plug_check(in, with_tables())->plugs[0].insulation.reason.find("as is expected"),
            std::string::npos);
  in.plugs[0].resistor_range.clear();
  EXPECT_EQ(plug_check(in, with_tables()).error()[0].path, "plugs/0/resistor_range");
}

TEST(Plug, WhatTheAcRejectsDoesNotConform) {
  auto in = one("0.018 in", "1.050 kohm");
  for (const auto look :
       {PlugLook::worn_electrodes, PlugLook::cracked_ceramic, PlugLook::damaged_thread,
        PlugLook::corroded_seat, PlugLook::well_flashover}) {
    in.plugs[0].look = look;
    EXPECT_EQ(plug_check(in, with_tables())->plugs[0].look.verdict, Verdict::does_not_conform);
  }
  for (const auto look : {PlugLook::dry_soot, PlugLook::wet_oil, PlugLook::lead_beads}) {
    in.plugs[0].look = look;
    EXPECT_EQ(plug_check(in, with_tables())->plugs[0].look.verdict, Verdict::undecided);
  }
  in.plugs[0].look = PlugLook::not_looked;
  EXPECT_EQ(plug_check(in, with_tables())->plugs[0].look.verdict, Verdict::not_tested);
  in.plugs[0].look = PlugLook::normal;
  in.plugs[0].dropped = true;
  EXPECT_EQ(plug_check(in, with_tables())->plugs[0].look.verdict, Verdict::undecided);
  in.plugs[0].half_worn = true;
  EXPECT_TRUE(says(plug_check(in, with_tables())->plugs[0].look.do_next, "half its original"));
}

TEST(Plug, RotationGoesRoundAndChangesTopAndBottom) {
  for (const char* order : {"1-3-2-4", "1-4-5-2-3-6", "1-3-5-7-9-2-4-6-8", "1-5-8-3-2-6-7-4"}) {
    const auto moves = plug_rotation(order, SparkFrom::magneto);
    ASSERT_TRUE(moves);
    std::set<std::string> from;
    std::set<std::string> to;
    for (const PlugMove& m : *moves) {
      from.insert(m.from);
      to.insert(m.to);
      EXPECT_NE(m.from.find("top") == std::string::npos, m.to.find("top") == std::string::npos);
    }
    EXPECT_EQ(from, to);
    EXPECT_EQ(from.size(), moves->size());
  }
  const auto four = plug_rotation("1-3-2-4", SparkFrom::magneto);
  EXPECT_EQ(four->at(0).from, "1 top");
  EXPECT_EQ(four->at(0).to, "3 bottom");
  const auto coil = plug_rotation("1-3-2-4", SparkFrom::double_ended_coil);
  EXPECT_EQ(coil->at(0).to, "2 bottom");  // 1 and 2 stand at top together
  EXPECT_FALSE(plug_rotation("1-2-3", SparkFrom::double_ended_coil));
}

TEST(Plug, ARotationAloneIsAnAnswer) {
  PlugCheckInput in;
  EXPECT_EQ(plug_check(in, with_tables()).error()[0].path, "plugs");
  in.firing_order = "1-3-2-4";
  const auto got = plug_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->rotation.size(), 8U);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  in.firing_order = "1-2";
  EXPECT_TRUE(plug_check(in, with_tables()));
  in.firing_order = "1-3-2-5";
  EXPECT_EQ(plug_check(in, with_tables()).error()[0].path, "firing_order");
}

}  // namespace
