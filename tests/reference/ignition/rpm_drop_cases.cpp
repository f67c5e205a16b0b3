// Source:    FAA-H-8083-32, magneto check: about 25 to 75 rpm in general; at idle OFF for an
//            instant must make the engine falter. Doubt of a drop by hand: 10 rpm steps,
//            2 x sqrt(2) x 10 / sqrt(12) = 8.16 rpm.
// Tolerance: words; drops are exact.
#include <gtest/gtest.h>

#include "ignition/rpm_drop.hpp"
#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;
using quantity::RotationSpeed;

RpmDropInput run_up(const char* left, const char* right) {
  RpmDropInput in;
  in.both = entered<RotationSpeed>("1700 rpm");
  in.left = entered<RotationSpeed>(left);
  in.right = entered<RotationSpeed>(right);
  in.step = entered<RotationSpeed>("10 rpm");
  in.grounding = GroundingCheck::faltered;
  return in;
}

RpmDropAnswer judged(const RpmDropInput& in) {
  describe::Context context;
  context.tables = tables::all_of_ignition();
  return *rpm_drop(in, context);
}

TEST(RpmDropCases, TheHandbooksGeneralFigure) {
  const auto got = judged(run_up("1640 rpm", "1620 rpm"));
  check({"rpm-drop", "1700 to 1640 rpm", "subtraction", "60 rpm", 60, got.left_drop.si * 60, 1e-9,
         "exact"});
  check_text("rpm-drop", "60 rpm by the general figure of 25 to 75 rpm", "FAA-H-8083-32", "inside",
             got.figures.at(0).stands);
  // Shown; without the aircraft's manual it judges nothing.
  EXPECT_EQ(got.parts.at(0).verdict, Verdict::not_tested);
  EXPECT_EQ(got.verdict, Verdict::not_tested);
}

TEST(RpmDropCases, TheManualsLimitsJudge) {
  auto in = run_up("1640 rpm", "1544 rpm");
  in.highest_drop = entered<RotationSpeed>("150 rpm");
  in.highest_difference = entered<RotationSpeed>("50 rpm");
  auto got = judged(in);
  check_text("rpm-drop", "156 rpm, at most 150, read to 10", "hand calculation: 156 - 8.16 < 150",
             "undecided", got.parts.at(1).in_words);
  EXPECT_EQ(got.parts.at(0).verdict, Verdict::conforms);
  EXPECT_EQ(got.parts.at(2).verdict, Verdict::does_not_conform);
  in.right = entered<RotationSpeed>("1400 rpm");
  in.right_rough = true;
  EXPECT_TRUE(says(judged(in).parts.at(1).do_next, "one plug or lead"));
  in.right_rough = false;
  EXPECT_TRUE(says(judged(in).parts.at(1).do_next, "smooth"));
}

TEST(RpmDropCases, NoDropIsNeverFine) {
  auto in = run_up("1700 rpm", "1640 rpm");
  in.highest_drop = entered<RotationSpeed>("150 rpm");
  const auto got = judged(in);
  EXPECT_EQ(got.parts.at(0).in_words, "undecided (no drop)");
  EXPECT_NE(got.parts.at(0).reason.find("right magneto may not be grounded"), std::string::npos);
}

TEST(RpmDropCases, GroundingAtIdle) {
  auto in = run_up("1640 rpm", "1620 rpm");
  in.grounding = GroundingCheck::did_not_falter;
  check_text("rpm-drop", "OFF at idle, the engine ran on", "FAA-H-8083-32, magneto check",
             "does not conform", judged(in).parts.at(3).in_words);
  in.grounding = GroundingCheck::not_done;
  EXPECT_EQ(judged(in).parts.at(3).verdict, Verdict::not_tested);
  EXPECT_TRUE(says(judged(in).notes, "live"));
}

TEST(RpmDropCases, DensityAltitude) {
  auto in = run_up("1640 rpm", "1620 rpm");
  in.pressure_altitude = entered<quantity::Length>("5000 ft");
  EXPECT_EQ(rpm_drop(in, {}).error()[0].path, "outside");
  // On a standard day density altitude is pressure altitude: 15 - 1.9812 x 5 = 5.094 degC.
  in.outside = quantity::celsius(5.094);
  check({"rpm-drop", "density altitude of a standard day", "definition of density altitude",
         "5000 ft", 5000, judged(in).density_altitude->si / 0.3048, 1, "exponents to five digits"});
}

}  // namespace
