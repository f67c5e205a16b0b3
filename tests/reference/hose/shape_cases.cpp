// Sources:   MIL-DTL-83796/5, fig. 3 (clocking, through hoses notes section 11 cases 9, 12, 13);
//            hose-shape notes 11.6 (S1, S2: boundary-value solver outside the project);
//            hoses notes section 11 case 4 (AC 43.13-1B table 9-3: radius taken inside).
// Tolerance: beside each case.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "hose/fit.hpp"
#include "hose/rod_measure.hpp"
#include "hose/shape.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

constexpr double k_degree = std::numbers::pi / 180;

EnteredLength metres(double m) { return {{m}, 1e-4, {}}; }
Place at(double x, double y, double z) { return {metres(x), metres(y), metres(z)}; }

HoseEnd straight(Place seat, Way leaves) {
  HoseEnd end;
  end.seat = std::move(seat);
  end.leaves = leaves;
  end.rigid = metres(0);
  return end;
}

HoseShapeInput case_s1() {
  HoseShapeInput in;
  in.near_end = straight(at(0, 0, 0), {1, 0, 0});
  in.far_end = straight(at(0.5, 0.3, 0.4), {0, 0, -1});
  in.flexible = metres(1.0);
  in.outside_diameter = metres(0.02);
  in.fineness = Fineness::printed;
  return in;
}

void expect(const char* id, const char* source, const char* unit, double expected, double got,
            double tolerance, const char* why) {
  test::check({"hose-shape", id, source, fmt::format("{} {}", expected, unit), expected, got,
               tolerance, why});
}

TEST(ShapeCases, S1AsAnOwnerEntersIt) {
  const auto got = hose_shape(case_s1(), {});
  ASSERT_TRUE(got) << got.error()[0].what;
  const char* source = "boundary-value solver outside the project (hose-shape notes, 11.6)";
  expect("S1: tightest radius", source, "m", 0.230552, got->tightest_radius.si, 7e-6,
         "3e-5 of the radius");
  expect("S1: where", source, "m", 0.52, got->tightest_at.si, 0.006, "printed to 0.01");
  EXPECT_NEAR(got->tightest_inside.si, got->tightest_radius.si - 0.01, 1e-12);
  ASSERT_EQ(got->points.size(), 9U);
  EXPECT_NEAR(got->points[4].x.si, 0.45555, 1e-4);
  EXPECT_NEAR(got->points.back().z.si, 0.4, 1e-9);
}

TEST(ShapeCases, ClockingIsReadAsTheOrderReadsIt) {
  // Nearly straight along x with both elbows: near outlet down, far outlet down, up, to the right.
  struct Row {
    const char* id;
    Way port;
    double degrees;
  };
  for (const auto& row :
       {Row{"clocking: both down", {0, 0, 1}, 0}, Row{"clocking: far one up", {0, 0, -1}, 180},
        Row{"clocking: far one to the viewer's right", {0, 1, 0}, 90}}) {
    HoseShapeInput in;
    in.near_end = straight(at(0, 0, -0.02), {1, 0, 0});
    in.near_end.form = EndForm::elbow_90;
    in.near_end.port = Way{0, 0, 1};
    in.near_end.drop = metres(0.02);
    in.far_end =
        straight(at(0.5 - 0.02 * row.port.x, -0.02 * row.port.y, -0.02 * row.port.z), {-1, 0, 0});
    in.far_end.form = EndForm::elbow_90;
    in.far_end.port = row.port;
    in.far_end.drop = metres(0.02);
    in.flexible = metres(0.51);
    in.outside_diameter = metres(0.015);
    const auto got = hose_shape(in, {});
    ASSERT_TRUE(got) << got.error()[0].what;
    ASSERT_TRUE(got->clocking);
    const double apart =
        std::remainder(got->clocking->si - row.degrees * k_degree, 2 * std::numbers::pi);
    expect(row.id, "MIL-DTL-83796/5 fig. 3, notes 1 and 5 (hoses notes, cases 12 and 13)",
           "degrees", row.degrees, row.degrees + apart / k_degree, 0.05, "64 pieces: 0.05 degree");
    EXPECT_NEAR(got->clocking_tolerance->si / k_degree, 3, 1e-9) << "up to 2 ft";
  }
}

TEST(ShapeCases, RadiusInsideAndToTheCentreline) {
  expect("MIL-H-8794 -8: centreline radius",
         "AC 43.13-1B table 9-3, taken inside (hoses notes, case 4)", "in", 5.015,
         centreline_radius(4.63, RadiusTo::inside, 0.77), 5e-4, "half a unit of the last digit");
}

TEST(ShapeCases, ImpossibleInputIsRefusedInWords) {
  auto in = case_s1();
  in.flexible = metres(0.5);
  auto got = hose_shape(in, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "flexible");
  EXPECT_NE(got.error()[0].what.find("too short: needs more than"), std::string::npos);

  in = case_s1();
  in.near_end.leaves = {0, 0, 0};
  in.far_end.rigid.reset();
  got = hose_shape(in, {});
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 2U);
  EXPECT_EQ(got.error()[0].path, "near_end/leaves");
  EXPECT_EQ(got.error()[1].path, "far_end/rigid");

  in = case_s1();
  in.near_end.form = EndForm::elbow_45;
  in.near_end.port = Way{0, 1, 0};
  in.near_end.drop = metres(0.02);
  got = hose_shape(in, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "near_end/leaves");
  EXPECT_NE(got.error()[0].what.find("90 degrees apart"), std::string::npos);

  in = case_s1();
  in.overall = metres(1.1);
  EXPECT_FALSE(hose_shape(in, {}));
  in.flexible.reset();
  in.overall.reset();
  EXPECT_FALSE(hose_shape(in, {}));
}

HoseLengthInput case_s2() {
  HoseLengthInput in;
  in.near_end = straight(at(0, 0, 0), {1, 0, 0});
  in.far_end = straight(at(0.2, 0.2, 0), {0, -1, 0});
  in.outside_diameter = metres(0.02);
  in.least_radius = metres(0.12);
  in.radius_to = RadiusTo::centreline;
  return in;
}

void expect_length(const char* id, double expected, double got, double tolerance = 2e-4,
                   const char* why = "64 pieces: 0.05 % of the length") {
  test::check({"hose-length", id,
               "boundary-value solver outside the project (hose-shape notes, 11.6 and 9)",
               fmt::format("{} m", expected), expected, got, tolerance, why});
}

TEST(LengthCases, S2) {
  auto in = case_s2();
  in.lengthens = in.shortens = quantity::Fraction{0};
  auto got = hose_length(in, {});
  ASSERT_TRUE(got) << got.error()[0].what;
  const char* extrapolated = "2e-5 of the length: 64 and 128 pieces, extrapolated";
  expect_length("S2: shortest", 0.306733, got->shortest->si, 6e-6, extrapolated);
  expect_length("S2: longest", 0.340413, got->longest->si, 6e-6, extrapolated);
  expect_length("S2: best", std::numbers::pi * 0.1, got->best.si);
  got = hose_length(case_s2(), {});
  ASSERT_TRUE(got);
  expect_length("S2 under pressure: shortest", 0.3195, got->shortest->si);
  expect_length("S2 under pressure: longest", 0.3337, got->longest->si);
  EXPECT_EQ(got->near.size(), 0U);
  ASSERT_TRUE(got->to_order);
  EXPECT_GE(got->to_order->value.si, got->shortest->si);
}

TEST(LengthCases, NoLengthForTheRadiusSaysWhatTheRouteAllows) {
  auto in = case_s2();
  in.least_radius = metres(0.3);
  const auto got = hose_length(in, {});
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->shortest);
  EXPECT_NE(got->binding.find("no length keeps"), std::string::npos);
}

TEST(LengthCases, ARadiusFarBeyondTheSpanDoesNotHideTheRoutesOwnBend) {
  auto in = case_s2();
  in.least_radius = metres(6.0);
  const auto got = hose_length(in, {});
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->shortest);
  EXPECT_LT(got->best.si, 0.4) << "not a loop of many metres";
  EXPECT_GT(got->best_radius.si, 0.1);
}

TEST(LengthCases, AStraightRunIsOrderedWithItsSlack) {
  auto in = case_s2();
  in.far_end = straight(at(0.762, 0, 0), {-1, 0, 0});  // 30 in
  const auto got = hose_length(in, {});
  ASSERT_TRUE(got && got->to_order);
  // 5 % of its total length: 31.58 in, up to the next eighth (hoses notes, section 11 case 5).
  EXPECT_NEAR(got->to_order->value.si / 0.0254, 31.625, 0.001);
}

TEST(LengthCases, ThingsNearAreToldWithTheirDistance) {
  auto in = case_s2();
  KeepOut wire;
  wire.name = "alternator cable";
  wire.beside = Beside::wiring;
  wire.shape = TubeShape{at(0.25, 0, -1), at(0.25, 0, 1), metres(0.005)};
  KeepOut pipe;
  pipe.name = "exhaust stack 3";
  pipe.beside = Beside::exhaust;
  pipe.needed = metres(0.02);
  pipe.shape = TubeShape{at(0, 0.2, -1), at(0, 0.2, 1), metres(0.02)};
  in.keep_outs = {wire, pipe};
  in.samples = 200;
  in.length_tolerance = metres(0.003);
  const auto got = hose_length(in, {});
  ASSERT_TRUE(got) << got.error()[0].what;
  ASSERT_EQ(got->near.size(), 2U);
  EXPECT_NEAR(got->near[0].needed->si, 6 * 0.0254, 1e-12);
  EXPECT_NE(got->near[0].words.find("too near"), std::string::npos);
  EXPECT_NE(got->near[1].words.find("kept"), std::string::npos);
  EXPECT_EQ(got->probability->si, 0) << "the cable is always too near";

  in.keep_outs[1].needed.reset();
  const auto asked = hose_length(in, {});
  ASSERT_FALSE(asked);
  EXPECT_EQ(asked.error()[0].path, "keep_outs/1/needed");

  in.keep_outs.resize(1);
  in.keep_outs[0].shape = BallShape{at(0, 0, 0), metres(0.01)};
  const auto around = hose_length(in, {});
  ASSERT_FALSE(around);
  EXPECT_EQ(around.error()[0].path, "keep_outs/0/shape");
}

TEST(LengthCases, EqualSeedsGiveEqualChances) {
  auto in = case_s2();
  in.motion = EngineMotion{};
  in.motion->shift_y = metres(0.003);
  in.motion->turn_x = EnteredAngle{{2 * k_degree}, 1e-3, {}};
  in.samples = 500;
  in.length_tolerance = metres(0.01);
  describe::Context context;
  const auto a = hose_length(in, context), b = hose_length(in, context);
  ASSERT_TRUE(a && b);
  ASSERT_TRUE(a->probability && b->probability);
  EXPECT_EQ(a->probability->si, b->probability->si);
  EXPECT_GT(a->probability->si, 0.2);
  EXPECT_LT(a->probability->si, 1.0);
  context.progress = [](double share) { return share < 0.3; };
  const auto stopped = hose_length(in, context);
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error()[0].kind, Kind::stopped);
}

}  // namespace
