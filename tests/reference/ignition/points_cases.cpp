// Source:    electrical notes, section 9, E23 (FAA-H-8083-32, worked model, 0.018 +-0.006 in) and
//            E24; section 4.5 (half-speed magneto of 14 deg lag: 28 deg of crankshaft; speed
//            ratios).
// Tolerance: exact.
#include <gtest/gtest.h>

#include "ignition/points.hpp"
#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;
using quantity::Angle;
using quantity::Length;

double degrees_of(const std::optional<Angle>& a) { return a->si / quantity::degrees(1).si; }

describe::Context with_tables() {
  describe::Context c;
  c.tables = tables::all_of_ignition();
  return c;
}

TEST(PointsCases, E23) {
  for (const auto& [gap, stands, verdict] :
       {std::tuple{"0.011 in", "below", "does not conform"},
        std::tuple{"0.012 in", "inside", "conforms"}, std::tuple{"0.024 in", "inside", "conforms"},
        std::tuple{"0.025 in", "above", "does not conform"}}) {
    PointsTimingInput in;
    in.handbook_model = true;
    in.clearances = {measured<Length>(gap)};
    in.clearances[0].expanded_si = 0.0;  // the case knows no doubt of the gauge
    const auto got = points_timing(in, with_tables());
    ASSERT_TRUE(got);
    EXPECT_EQ(got->figures.at(0).stands, stands) << gap;
    check_text("points-timing", std::string("E23 point gap ") + gap,
               "electrical notes, E23; FAA-H-8083-32", verdict, got->parts.at(0).in_words);
    // Of any other model the handbook says nothing.
    in.handbook_model = false;
    EXPECT_EQ(points_timing(in, with_tables())->verdict, Verdict::not_tested);
  }
}

TEST(PointsCases, E24AndLag) {
  PointsTimingInput in;
  in.lag = entered<Angle>("25 deg");
  in.speed_ratio = 1.0;
  in.data_plate = entered<Angle>("25 deg");
  auto got = points_timing(in, with_tables());
  ASSERT_TRUE(got);
  check({"points-timing", "E24 spark at top centre", "electrical notes, E24", "0 deg", 0.0,
         degrees_of(got->start_after_top), 1e-9, "exact"});
  in.lag = entered<Angle>("14 deg");
  in.speed_ratio = 0.5;
  got = points_timing(in, with_tables());
  check({"points-timing", "half-speed magneto, 14 deg lag", "electrical notes 4.5", "28 deg", 28.0,
         degrees_of(got->crank_lag), 1e-9, "exact"});
  check({"points-timing", "speed ratio, 4 cylinders, 2 poles", "electrical notes 4.5", "1:1", 1.0,
         magneto_speed_ratio(4, 2), 1e-12, "exact"});
  check({"points-timing", "speed ratio, 6 cylinders, 2 poles", "electrical notes 4.5", "1.5:1", 1.5,
         magneto_speed_ratio(6, 2), 1e-12, "exact"});
}

TEST(PointsCases, TimingBothSides) {
  PointsTimingInput in;
  in.left = measured<Angle>("24.5 deg +- 0.3 deg");
  in.right = measured<Angle>("26.8 deg +- 0.3 deg");
  in.data_plate = entered<Angle>("25 deg");
  EXPECT_EQ(points_timing(in, with_tables()).error()[0].path, "tolerance");
  in.tolerance = entered<Angle>("1 deg");
  auto got = points_timing(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->parts.at(0).verdict, Verdict::conforms);
  EXPECT_EQ(got->parts.at(1).verdict, Verdict::does_not_conform);
  EXPECT_NEAR(degrees_of(got->difference), -2.3, 1e-9);
  in.lag = entered<Angle>("10 deg");
  EXPECT_EQ(points_timing(in, with_tables()).error()[0].path, "speed_ratio");
  in.cylinders = 4;
  in.poles = 2;
  EXPECT_TRUE(says(points_timing(in, with_tables())->notes, "kick back"));
  EXPECT_EQ(points_timing({}, with_tables()).error()[0].path, "clearances");
}

}  // namespace
