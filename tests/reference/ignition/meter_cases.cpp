// Source:    hand calculation from the common form of a multimeter's specification, per cent of
//            the reading plus counts of the last digit (written out in docs/method/ignition.md);
//            electrical notes, section 9, E17 and E19.
//            A meter of +-(0.8 % + 3 digits) and 1999 counts:
//              200 ohm range, 0.1 ohm:    85.2 ohm    0.6816 + 0.3    = 0.9816 ohm
//              2 kohm range, 1 ohm:       0.085 kohm  0.68 + 3        = 3.68 ohm
//              2 kohm range, 1 ohm:       1.250 kohm  10 + 3          = 13 ohm
//              20 kohm range, 0.01 kohm:  15.60 kohm  0.1248 + 0.03   = 0.1548 kohm
// Tolerance: rounding only; the sums are exact.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "ignition/harness.hpp"
#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;

struct MeterCase {
  std::string reading;
  std::string range;
  double half_width;  ///< ohm
  std::string sum;
};

class HandMeter : public testing::TestWithParam<MeterCase> {};

TEST_P(HandMeter, GuardBandIsThatOfTheRangeUsed) {
  const MeterCase& p = GetParam();
  HarnessCheckInput in;
  HarnessLead lead;
  lead.name = "1 top";
  lead.reading = read_ohms(p.reading);
  lead.range = p.range;
  in.leads = {lead};
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  in.highest = some_ohms("20 kohm");
  const auto got = harness_check(in, {});
  ASSERT_TRUE(got) << got.error()[0].path;
  check({"harness-check",
         fmt::format("{} on the {} range, +-(0.8 % + 3 digits)", p.reading, p.range),
         "hand calculation, docs/method/ignition.md", p.sum, p.half_width,
         got->leads[0].guard->value.si, 1e-9, "rounding only"});
}

INSTANTIATE_TEST_SUITE_P(ByHand, HandMeter,
                         testing::Values(MeterCase{"85.2 ohm", "200 ohm", 0.9816, "0.9816 ohm"},
                                         MeterCase{"0.085 kohm", "2 kohm", 3.68, "3.68 ohm"},
                                         MeterCase{"1.250 kohm", "2 kohm", 13.0, "13 ohm"},
                                         MeterCase{"15.60 kohm", "20 kohm", 154.8, "0.1548 kohm"}));

// The same lead, limits 80 to 88 ohm: the 200 ohm range can tell, the 2 kohm range cannot.
TEST(HandMeterCases, TheWrongRangeCannotTell) {
  HarnessCheckInput in;
  HarnessLead lead;
  lead.name = "1 top";
  lead.reading = read_ohms("85.2 ohm");
  in.leads = {lead};
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  in.lowest = some_ohms("80 ohm");
  in.highest = some_ohms("88 ohm");
  check_text("harness-check", "85.2 ohm within 80 to 88 ohm, 200 ohm range",
             "hand calculation: 85.2 +- 0.9816 lies inside", "conforms",
             harness_check(in, {})->leads[0].in_words);
  in.leads[0].reading = read_ohms("0.085 kohm");
  in.leads[0].range = "2 kohm";
  check_text("harness-check", "0.085 kohm within 80 to 88 ohm, 2 kohm range",
             "hand calculation: 85 + 3.68 lies above 88", "undecided",
             harness_check(in, {})->leads[0].in_words);
}

// Common practice, no source: a spiral lead of 50 ohm for a foot reads about 85 ohm over a little
// more than one foot, its ends included: 13.2 in x 50 ohm/ft = 55 ohm, the ends hold 30 ohm.
TEST(HarnessCases, ASpiralLeadsEndsHoldTheRest) {
  HarnessCheckInput in;
  HarnessLead lead;
  lead.name = "1 top";
  lead.length = measured<quantity::Length>("13.2 in");
  lead.reading = read_ohms("85.0 ohm");
  in.leads = {lead};
  in.core = LeadCore::spiral;
  describe::Context context;
  context.tables = tables::all_of_ignition();
  const auto got = harness_check(in, context);
  ASSERT_TRUE(got);
  EXPECT_TRUE(says(got->notes, "would hold 55 ohm; its two ends the rest of 85 ohm: 30 ohm"));
  EXPECT_EQ(got->leads[0].verdict, Verdict::not_tested);
}

TEST(HarnessCases, E17) {
  HarnessCheckInput in;
  InsulationReading r;
  r.part = "1 top";
  r.test_voltage = entered<quantity::Voltage>("10 kV");
  r.reading = read_ohms("100 Mohm");
  in.insulation = {r};
  const auto got = harness_check(in, {});
  ASSERT_TRUE(got);
  check({"harness-check", "E17 current through the insulation", "electrical notes, E17", "100 uA",
         100.0, got->insulation[0].leaks->si * 1e6, 1e-9, "exact"});
}

}  // namespace
