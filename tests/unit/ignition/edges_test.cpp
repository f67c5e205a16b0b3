// Condenser, points and timing, magneto drop: every refusal at its path, and what must not pass.
#include <gtest/gtest.h>

#include "ignition/condenser.hpp"
#include "ignition/points.hpp"
#include "ignition/rpm_drop.hpp"
#include "support/ignition_input.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;
using quantity::Angle;
using quantity::RotationSpeed;

describe::Context with_tables() {
  describe::Context c;
  c.tables = tables::all_of_ignition();
  return c;
}
template <class Answer>
std::string path_of(const Checked<Answer>& got) {
  return got ? "answered" : got.error()[0].path;
}

TEST(Condenser, WithoutALimitNothingIsJudged) {
  CondenserCheckInput in;
  in.capacitance = measured<quantity::Capacitance>("0.35 uF +- 0.01 uF");
  const auto got = condenser_check(in, with_tables());
  ASSERT_TRUE(got) << path_of(got);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_TRUE(says(got->notes, "leakage: not tested"));
}

TEST(Condenser, AnOhmmeterAloneIsAdviceAndNoVerdict) {
  CondenserCheckInput in;
  in.ohmmeter = OhmmeterShows::stays_low;
  const auto got = condenser_check(in, with_tables());
  ASSERT_TRUE(got) << path_of(got);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_FALSE(got->ohmmeter.empty());
}

TEST(Condenser, LimitsTheWrongWayRoundAreRefused) {
  CondenserCheckInput in;
  in.capacitance = measured<quantity::Capacitance>("0.35 uF +- 0.01 uF");
  in.lowest = entered<quantity::Capacitance>("0.40 uF");
  in.highest = entered<quantity::Capacitance>("0.30 uF");
  EXPECT_FALSE(condenser_check(in, with_tables()));
}

TEST(Points, NothingToJudgeAndHalfAnInputAreRefusedAtTheirPath) {
  PointsTimingInput in;
  EXPECT_EQ(path_of(points_timing(in, with_tables())), "clearances");
  in.left = measured<Angle>("25 deg +- 0.5 deg");
  in.data_plate = entered<Angle>("25 deg");
  EXPECT_EQ(path_of(points_timing(in, with_tables())), "tolerance");
  PointsTimingInput lag;
  lag.lag = entered<Angle>("20 deg");
  EXPECT_EQ(path_of(points_timing(lag, with_tables())), "speed_ratio");
}

TEST(Points, AClearanceOfAnotherModelIsNotJudgedByTheHandbooks) {
  PointsTimingInput in;
  in.clearances = {measured<quantity::Length>("0.030 in +- 0.001 in")};
  const auto other = points_timing(in, with_tables());
  ASSERT_TRUE(other) << path_of(other);
  EXPECT_EQ(other->verdict, Verdict::not_tested);
  in.handbook_model = true;
  const auto same = points_timing(in, with_tables());
  ASSERT_TRUE(same) << path_of(same);
  EXPECT_EQ(same->verdict, Verdict::does_not_conform);
  EXPECT_NE(same->parts[0].limit_source.find("that model only"), std::string::npos);
}

RpmDropInput run_up(const char* left, const char* right) {
  RpmDropInput in;
  in.both = entered<RotationSpeed>("1700 rpm");
  in.left = entered<RotationSpeed>(left);
  in.right = entered<RotationSpeed>(right);
  in.step = entered<RotationSpeed>("10 rpm");
  in.highest_drop = entered<RotationSpeed>("125 rpm");
  in.limit_source = "invented";
  return in;
}

// A magneto that cannot be switched off shows no drop, and so never conforms.
TEST(Drop, NoDropIsNeverGood) {
  const auto got = rpm_drop(run_up("1700 rpm", "1620 rpm"), with_tables());
  ASSERT_TRUE(got) << path_of(got);
  EXPECT_EQ(got->parts[0].verdict, Verdict::undecided);
  EXPECT_NE(got->parts[0].reason.find("Treat the propeller as live"), std::string::npos);
  EXPECT_NE(got->verdict, Verdict::conforms);
}

TEST(Drop, AnEngineThatRunsOnWithTheSwitchOffFails) {
  auto in = run_up("1640 rpm", "1620 rpm");
  in.grounding = GroundingCheck::did_not_falter;
  const auto got = rpm_drop(in, with_tables());
  ASSERT_TRUE(got) << path_of(got);
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
}

TEST(Drop, AnAltitudeNeedsItsTemperature) {
  auto in = run_up("1640 rpm", "1620 rpm");
  in.pressure_altitude = entered<quantity::Length>("3000 ft");
  EXPECT_EQ(path_of(rpm_drop(in, with_tables())), "outside");
}

TEST(Condenser, AnOhmmeterThatShowsAFaultHoldsAGoodCapacitance) {
  CondenserCheckInput in;
  in.capacitance = measured<quantity::Capacitance>("0.35 uF +- 0.01 uF");
  in.lowest = entered<quantity::Capacitance>("0.30 uF");
  in.highest = entered<quantity::Capacitance>("0.40 uF");
  in.ohmmeter = OhmmeterShows::climbs;
  EXPECT_EQ(condenser_check(in, with_tables())->verdict, Verdict::conforms);
  for (const auto shows : {OhmmeterShows::stays_low, OhmmeterShows::over_range_at_once}) {
    in.ohmmeter = shows;
    const auto got = condenser_check(in, with_tables());
    ASSERT_TRUE(got) << path_of(got);
    EXPECT_EQ(got->verdict, Verdict::undecided);
    EXPECT_TRUE(says(got->notes, "do not fit together"));
  }
}

// A figure for 500 V (table insulation-figures) says nothing about a reading at 3 V.
TEST(Condenser, AFigureForAHigherVoltageIsNotMet) {
  CondenserCheckInput in;
  InsulationReading leakage;
  leakage.part = "condenser";
  leakage.test_voltage = entered<quantity::Voltage>("3 V");
  leakage.reading = measured<quantity::Resistance>("2000 Mohm +- 10 Mohm");
  in.leakage = leakage;
  auto got = condenser_check(in, with_tables());
  ASSERT_TRUE(got) << path_of(got);
  EXPECT_EQ(got->leakage->figures.at(0).stands, "tested with less than 500 V: says nothing");
  in.leakage->test_voltage = entered<quantity::Voltage>("500 V");
  got = condenser_check(in, with_tables());
  EXPECT_EQ(got->leakage->figures.at(0).stands, "inside");
}

TEST(Drop, NothingIsSaidAboutProbesWhereThereAreNone) {
  RpmDropInput in;
  in.both = entered<RotationSpeed>("1700 rpm");
  in.left = entered<RotationSpeed>("1450 rpm");
  in.right = entered<RotationSpeed>("1640 rpm");
  in.step = entered<RotationSpeed>("10 rpm");
  in.highest_drop = entered<RotationSpeed>("150 rpm");
  in.highest_difference = entered<RotationSpeed>("50 rpm");
  in.limit_source = "engine maker's manual (invented)";
  const auto got = rpm_drop(in, with_tables());
  ASSERT_TRUE(got) << path_of(got);
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
  for (const auto& part : got->parts) EXPECT_FALSE(says(part.do_next, "probes")) << part.what;
}

}  // namespace
