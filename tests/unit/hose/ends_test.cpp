// Ends by tape and inclinometer, "hose-ends", and what hose-shape and hose-length refuse in words.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "hose/fit.hpp"
#include "hose/measured_ends.hpp"
#include "hose/shape.hpp"
#include "hose/sheet.hpp"
#include "hose/supports.hpp"
#include "hose/tape.hpp"
#include "quantity/as_typed.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm::hose;
using wm::Kind;
using wm::statistics::Draws;
namespace quantity = wm::quantity;
constexpr double k_degree = std::numbers::pi / 180;

double rise(const Vector& v) { return std::atan2(v.z(), std::hypot(v.x(), v.y())); }

TapeReadings readings(const Vector& near, const Vector& seat, const Vector& far) {
  TapeReadings r;
  r.near_rod = r.far_rod = 0.2;
  const Vector near_mark = 0.2 * near, far_mark = seat + 0.2 * far;
  r.seat_to_seat = seat.norm();
  r.near_seat_to_far_mark = far_mark.norm();
  r.near_mark_to_far_seat = (seat - near_mark).norm();
  r.mark_to_mark = (far_mark - near_mark).norm();
  r.near_rise = rise(near);
  r.far_rise = rise(far);
  r.line_rise = rise(seat);
  r.to_the_left = seat.y() > 0;
  r.tape_within = 0.0015;
  r.rise_within = 0.5 * k_degree;
  return r;
}

struct Bay {
  Vector near, seat, far;
};
Bay any_bay(Draws& draws) {
  Bay out;
  out.near = Vector(draws.uniform(0.3, 1), 0, draws.uniform(-0.6, 0.6)).normalized();
  do {
    out.seat = Vector(draws.uniform(-0.5, 0.5), draws.uniform(-0.5, 0.5), draws.uniform(-0.3, 0.3));
  } while (out.seat.norm() < 0.15 || std::abs(out.seat.y()) < 0.05);
  out.far =
      Vector(draws.uniform(-1, 1), draws.uniform(-1, 1), draws.uniform(-0.6, 0.6)).normalized();
  return out;
}

TEST(Tape, ExactReadingsGiveTheEndsBack) {
  Draws draws(21);
  int two_ways = 0;
  for (int i = 0; i < 200; ++i) {
    const auto bay = any_bay(draws);
    const auto got = tape_ends(readings(bay.near, bay.seat, bay.far));
    if (got.found == TapeEnds::Found::two_ways) {
      ++two_ways;
      continue;
    }
    ASSERT_EQ(got.found, TapeEnds::Found::yes);
    EXPECT_LT((got.far_seat - bay.seat).norm(), 1e-6) << i;
    EXPECT_LT((got.far_way - bay.far).norm(), 1e-6) << i;
    EXPECT_LT((got.near_way - bay.near).norm(), 1e-6) << i;
    EXPECT_LT(got.contradiction, 1e-4);
  }
  EXPECT_LT(two_ways, 10);
}

TEST(Tape, UncertaintyAgreesWithDraws) {
  const Bay bay{
      Vector(1, 0, 0.1).normalized(), {0.35, 0.33, 0.1}, Vector(0.1, -1, 0.2).normalized()};
  const auto exact = readings(bay.near, bay.seat, bay.far);
  const auto told = tape_ends(exact);
  Draws draws(22);
  Eigen::Matrix3d place = Eigen::Matrix3d::Zero();
  const int n = 400;
  for (int i = 0; i < n; ++i) {
    auto r = exact;
    for (double* length :
         {&r.seat_to_seat, &r.near_seat_to_far_mark, &r.near_mark_to_far_seat, &r.mark_to_mark})
      *length += draws.uniform(-r.tape_within, r.tape_within);
    for (double* angle : {&r.near_rise, &r.far_rise, &r.line_rise})
      *angle += draws.uniform(-r.rise_within, r.rise_within);
    const auto got = tape_ends(r);
    const Vector off = got.far_seat - bay.seat;
    place += off * off.transpose() / n;
  }
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> eigen(place);
  EXPECT_NEAR(told.place_u, std::sqrt(eigen.eigenvalues().maxCoeff()), 0.15 * told.place_u);
}

TEST(Tape, ABlunderIsFound) {
  const Bay bay{{1, 0, 0}, {0.35, 0.33, 0.1}, {0, -1, 0}};
  auto r = readings(bay.near, bay.seat, bay.far);
  r.mark_to_mark += 0.025;  // an inch misread
  EXPECT_GT(tape_ends(r).contradiction, 3);
}

TEST(Tape, AnUprightNearRodStillHasItsTilt) {
  const Bay bay{
      Vector(0.02, 0.05, 1).normalized(), {0.3, 0, 0.2}, Vector(0.2, 0.9, 0.3).normalized()};
  auto r = readings(bay.near, bay.seat, bay.far);
  r.to_the_left = true;
  const auto got = tape_ends(r);
  ASSERT_EQ(got.found, TapeEnds::Found::yes);
  EXPECT_LT((got.far_way - bay.far).norm(), 1e-5);
  EXPECT_LT((got.near_way - bay.near).norm(), 1e-5);
}

quantity::Entered<quantity::Length> in(double inches) { return {quantity::inches(inches), 0, {}}; }
quantity::Entered<quantity::Angle> deg(double degrees) {
  return {quantity::degrees(degrees), 0, {}};
}

HoseWanted wanted() {
  HoseWanted out;
  out.outside_diameter = in(0.77);
  out.least_radius = in(4.63);
  out.rigid_near = out.rigid_far = in(1.5);
  out.made_within = in(0.125);
  return out;
}

DummyTubeRoute route() {
  DummyTubeRoute r;
  r.bends = {{in(9), deg(90), deg(90)}};
  r.last_straight = in(8);
  r.bend_radius = in(1.5);
  r.length_within = in(1.0 / 16);
  r.bend_within = deg(1);
  r.turn_within = deg(2);
  return r;
}

TEST(HoseEnds, ADummyTubeGivesTheFarEndInAircraftAxes) {
  HoseEndsInput ask;
  ask.route = route();
  const auto got = hose_ends(ask, {});
  ASSERT_TRUE(got);
  // Aft 9 + 1.5, then clockwise from up seen along the tube: to the aircraft's left.
  EXPECT_NEAR(got->far_seat.x.si, 10.5 * 0.0254, 1e-9);
  EXPECT_NEAR(got->far_seat.y.si, -9.5 * 0.0254, 1e-9);
  EXPECT_NEAR(got->far_leaves.y, 1, 1e-9);  // out of the far fitting: back along the tube
  EXPECT_EQ(got->to_order, Enough::not_asked);
  ask.near_seat = Place{in(100), in(5), in(-3)};
  ask.near_leaves = Way{0, 0, 2};
  const auto up = hose_ends(ask, {});
  ASSERT_TRUE(up);
  EXPECT_NEAR(up->far_seat.z.si, (-3 + 10.5) * 0.0254, 1e-9);
}

TEST(HoseEnds, SaysWhetherItIsGoodEnough) {
  HoseEndsInput ask;
  auto r = route();
  ask.route = r;
  ask.hose = wanted();
  // The same bend with twice the room: what is not known is small against its window.
  r.bends[0].straight = in(16);
  r.last_straight = in(15);
  ask.route = r;
  const auto good = hose_ends(ask, {});
  ASSERT_TRUE(good);
  EXPECT_EQ(good->to_order, Enough::yes) << good->words;
  EXPECT_EQ(good->to_cut, Enough::yes);
  ask.hose->elbows = true;
  r.turn_within = deg(8);
  ask.route = r;
  const auto turned = hose_ends(ask, {});
  ASSERT_TRUE(turned);
  EXPECT_EQ(turned->to_order, Enough::no) << turned->words;
  r.length_within = in(4);
  r.bend_within = deg(15);
  ask.route = r;
  const auto poor = hose_ends(ask, {});
  ASSERT_TRUE(poor);
  EXPECT_EQ(poor->to_cut, Enough::no) << poor->words;
  ask.hose->least_radius = in(40);
  EXPECT_NE(hose_ends(ask, {})->words.find("no length keeps"), std::string::npos);
}

TEST(HoseEnds, ReadingsThatContradictNameTheOneFarthestOff) {
  TapeRoute r;
  r.near_rod = r.far_rod = in(8);
  r.seat_to_seat = in(19.52);
  r.near_seat_to_far_mark = in(15.39);
  r.near_mark_to_far_seat = in(14.87);
  r.mark_to_mark = in(8.77);
  r.near_rise = r.far_rise = deg(0);
  r.line_rise = deg(11.8);
  r.to_the_left = true;
  r.tape_within = in(1.0 / 16);
  r.rise_within = deg(0.5);
  HoseEndsInput ask;
  ask.route = r;
  const auto got = hose_ends(ask, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->far_seat.y.si, 13 * 0.0254, 0.002);
  EXPECT_NEAR(got->far_leaves.y, -1, 0.01);
  r.mark_to_mark = in(10.0);
  ask.route = r;
  const auto bad = hose_ends(ask, {});
  ASSERT_FALSE(bad);
  EXPECT_EQ(bad.error()[0].kind, Kind::refused);
  EXPECT_EQ(bad.error()[0].path.substr(0, 6), "route/");
}

TEST(HoseEnds, ATubeWithoutABendOrADirectionWithoutLengthIsRefused) {
  HoseEndsInput ask;
  ask.route = DummyTubeRoute{};
  EXPECT_EQ(hose_ends(ask, {}).error()[0].path, "route/bends");
  ask.route = route();
  ask.near_leaves = Way{0, 0, 0};
  EXPECT_EQ(hose_ends(ask, {}).error()[0].path, "near_leaves");
}

HoseShapeInput shape_ask() {
  HoseShapeInput out;
  out.near_end.seat = {in(0), in(0), in(0)};
  out.near_end.leaves = {1, 0, 0};
  out.near_end.rigid = in(1.5);
  out.far_end.seat = {in(14), in(13), in(4)};
  out.far_end.leaves = {0, -1, 0};
  out.far_end.rigid = in(1.5);
  out.overall = in(22.5);
  out.outside_diameter = in(0.77);
  out.least_radius = in(4.63);
  return out;
}

TEST(Refusals, TooShortIsSaidWithBothFigures) {
  auto ask = shape_ask();
  ask.overall = in(11);
  const auto got = hose_shape(ask, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "overall");
  EXPECT_NE(got.error()[0].what.find("needs more than"), std::string::npos);
  EXPECT_NE(got.error()[0].what.find("you gave"), std::string::npos);
}

TEST(Refusals, AClampOnTheWayAsksForMoreHose) {
  auto ask = shape_ask();
  ask.clamps.push_back({"far away", {in(5), in(30), in(0)}, std::nullopt, std::nullopt});
  const auto got = hose_shape(ask, {});
  ASSERT_FALSE(got);
  EXPECT_NE(got.error()[0].what.find("needs more than"), std::string::npos);
  ask.clamps[0].way = Way{0, 0, 0};
  EXPECT_EQ(hose_shape(ask, {}).error()[0].path, "clamps/0/way");
}

// Symptom: a clamp that grips beyond the hose's end was refused as "no slack before the far end",
// at the path of the length.
TEST(Refusals, AClampGripsTheHoseThatThereIs) {
  auto ask = shape_ask();
  ask.clamps.push_back({"clip", {in(9), in(3), in(1)}, std::nullopt, in(99)});
  const auto answer = hose_shape(ask, {});
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error()[0].path, "clamps/0/at_hose");
  EXPECT_NE(answer.error()[0].what.find("clip grips 99.000 in from the near end"),
            std::string::npos)
      << answer.error()[0].what;
}

TEST(Refusals, EndsThatRunIntoEachOther) {
  auto ask = shape_ask();
  ask.far_end.seat = {in(1), in(0.3), in(0)};
  ask.far_end.leaves = {-1, 0, 0};
  const auto got = hose_shape(ask, {});
  ASSERT_FALSE(got);
  EXPECT_NE(got.error()[0].what.find("run into each other"), std::string::npos);
  // In the unit that was typed.
  ask.outside_diameter = *quantity::read<quantity::Length>("0.77 in");
  EXPECT_NE(hose_shape(ask, {}).error()[0].what.find("the hose is 0.77 in thick"),
            std::string::npos)
      << hose_shape(ask, {}).error()[0].what;
}

HoseLengthInput length_ask() {
  const auto shape = shape_ask();
  HoseLengthInput out;
  out.near_end = shape.near_end;
  out.far_end = shape.far_end;
  out.outside_diameter = shape.outside_diameter;
  out.least_radius = *shape.least_radius;
  return out;
}

KeepOut ball(double x, double y, double z, double radius, double needed) {
  KeepOut out;
  out.name = "the ball";
  out.needed = in(needed);
  out.shape = BallShape{{in(x), in(y), in(z)}, in(radius)};
  return out;
}

TEST(Refusals, AThingAroundAFitting) {
  auto ask = length_ask();
  ask.keep_outs = {ball(0.5, 0, 0, 0.4, 0.5)};
  const auto got = hose_length(ask, {});
  ASSERT_FALSE(got);
  EXPECT_NE(got.error()[0].what.find("lies around the near"), std::string::npos);
}

TEST(Refusals, AMeshThatIsNotThereOrNotClosed) {
  auto ask = length_ask();
  KeepOut mesh;
  mesh.name = "cowl";
  mesh.needed = in(0.5);
  mesh.shape = MeshShape{"cowl.stl", {quantity::Length{0.001}, 0, {}}, std::nullopt};
  ask.keep_outs = {mesh};
  EXPECT_EQ(hose_length(ask, {}).error()[0].kind, Kind::not_found);
  wm::describe::Context context;
  context.file = [](std::string_view) -> std::optional<std::string> {
    return "solid x\nfacet normal 0 0 1\nouter loop\nvertex 900 900 900\nvertex 901 900 "
           "900\nvertex "
           "900 901 900\nendloop\nendfacet\nendsolid x\n";
  };
  const auto got = hose_length(ask, context);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "keep_outs/0/shape/file");
  EXPECT_NE(got.error()[0].what.find("not closed: 3 edges"), std::string::npos)
      << got.error()[0].what;
  std::get<MeshShape>(ask.keep_outs[0].shape).one_unit = *quantity::read<quantity::Length>("1 mm");
  EXPECT_NE(hose_length(ask, context).error()[0].what.find("x 900.0 mm"), std::string::npos)
      << hose_length(ask, context).error()[0].what;
}

TEST(HoseLengthAsk, AThingInTheBowBindsTheLongSide) {
  auto ask = length_ask();
  const auto free = hose_length(ask, {});
  ASSERT_TRUE(free && free->longest);
  // Just outside the bow of the best hose.
  auto shape = shape_ask();
  shape.overall = quantity::Entered<quantity::Length>{*free->longest, 0, {}};
  shape.points = 3;
  const auto lies = hose_shape(shape, {});
  ASSERT_TRUE(lies);
  const auto& middle = lies->points[1];
  auto far =
      ball(middle.x.si / 0.0254 + 1.5, middle.y.si / 0.0254 - 1.5, middle.z.si / 0.0254, 1.2, 0.25);
  ask.keep_outs = {far};
  const auto bound = hose_length(ask, {});
  ASSERT_TRUE(bound);
  ASSERT_TRUE(bound->longest) << bound->binding;
  EXPECT_LT(bound->longest->si, free->longest->si);
  EXPECT_NE(bound->binding.find("too near to the ball"), std::string::npos) << bound->binding;
}

// Symptom: "Overall length to order 23.125 in" and a bend as what binds, where no length at all
// kept away from the ball.
TEST(HoseLengthAsk, NoLengthThatKeepsAwayIsNoLengthToOrder) {
  auto ask = length_ask();
  ask.keep_outs = {ball(10, 3, 1, 1.5, 30)};
  const auto got = hose_length(ask, {});
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->to_order || got->shortest || got->longest);
  EXPECT_EQ(got->binding.find("no length keeps away from the ball: by the bend alone"), 0U)
      << got->binding;
}

TEST(HoseLengthAsk, StraightBehindTheEndsCanBeAskedFor) {
  auto ask = length_ask();
  const auto free = hose_length(ask, {});
  ASSERT_TRUE(free && free->turn_at_ends);
  ask.most_turn_at_ends = deg(12);
  const auto strict = hose_length(ask, {});
  ASSERT_TRUE(strict);
  if (strict->shortest) {
    EXPECT_GE(strict->shortest->si, free->shortest->si - 1e-6);
    EXPECT_LE(strict->turn_at_ends->si, 12 * k_degree + 1e-6);
  } else {
    EXPECT_FALSE(strict->binding.empty());
  }
}

TEST(HoseLengthAsk, WhatIsNotKnownOfTheEndsNarrowsTheWindow) {
  auto ask = length_ask();
  const auto exact = hose_length(ask, {});
  ask.place_within = in(0.2);
  ask.directions_within = deg(1.5);
  const auto doubted = hose_length(ask, {});
  ASSERT_TRUE(exact && doubted && exact->shortest && doubted->shortest);
  EXPECT_GT(doubted->shortest->si, exact->shortest->si);
  EXPECT_LT(doubted->longest->si, exact->longest->si);
}

TEST(HoseLengthAsk, AClampPartsTheWindow) {
  auto ask = length_ask();
  HoseShapeInput shape = shape_ask();
  shape.points = 3;
  const auto lies = hose_shape(shape, {});
  ASSERT_TRUE(lies);
  const auto& middle = lies->points[1];
  ask.clamps.push_back(
      {"clamp",
       {in(middle.x.si / 0.0254), in(middle.y.si / 0.0254), in(middle.z.si / 0.0254)},
       std::nullopt,
       std::nullopt});
  // Without what pressure does to the length: a ring leaves little room for that.
  ask.lengthens = ask.shortens = quantity::ratio(0);
  const auto held = hose_length(ask, {});
  ask.clamps.clear();
  const auto free = hose_length(ask, {});
  ASSERT_TRUE(held && free);
  ASSERT_TRUE(held->shortest) << held->binding;
  EXPECT_GE(held->shortest->si, free->shortest->si - 0.01);
  EXPECT_LE(held->longest->si, free->longest->si + 0.01);
}

TEST(HoseShapeAsk, ClampsWeightSetAndLeaningAreAnswered) {
  auto ask = shape_ask();
  ask.weight = HoseWeight{{quantity::MassPerLength{0.4}, 0, {}},
                          {quantity::BendingStiffness{0.4}, 0, {}},
                          3.8,
                          1.5,
                          1,
                          0};
  const auto heavy = hose_shape(ask, {});
  ASSERT_TRUE(heavy);
  EXPECT_GE(heavy->under_load.size(), 6U);
  EXPECT_GT(heavy->under_load[0].moves.si, 0);
  ask.weight.reset();
  ask.set = HoseSet{in(30), 1};
  const auto set = hose_shape(ask, {});
  ASSERT_TRUE(set && set->with_set);
  EXPECT_LE(set->with_set->tightest_least.si, set->with_set->tightest_most.si);
  EXPECT_GT(set->with_set->moves.si, 0);
  ask.set.reset();
  ask.points = 3;
  const auto plain = hose_shape(ask, {});
  ASSERT_TRUE(plain && plain->bend);
  const auto& middle = plain->points[1];
  ask.leans_on = {
      ball(middle.x.si / 0.0254 + 0.75, middle.y.si / 0.0254 - 0.75, middle.z.si / 0.0254, 1, 0)};
  const auto leant = hose_shape(ask, {});
  ASSERT_TRUE(leant);
  ASSERT_EQ(leant->touches.size(), 1U);
  EXPECT_GT(leant->touches[0].push, 0);
  ask.clamps.push_back({"clamp", {in(9), in(3), in(1)}, std::nullopt, std::nullopt});
  EXPECT_EQ(hose_shape(ask, {}).error()[0].path, "leans_on");
}

TEST(HoseShapeAsk, TheCircleTouchesTheTightestBend) {
  const auto got = hose_shape(shape_ask(), {});
  ASSERT_TRUE(got && got->bend);
  const auto& b = *got->bend;
  const Vector at(b.at.x.si, b.at.y.si, b.at.z.si),
      centre(b.centre.x.si, b.centre.y.si, b.centre.z.si);
  EXPECT_NEAR((at - centre).norm(), got->tightest_radius.si, 1e-9);
  EXPECT_NEAR((at - centre).dot(Vector(b.square.x, b.square.y, b.square.z)), 0, 1e-4);
}

TEST(HoseSheetAsk, SaysTheVerdictInLines) {
  HoseSheetInput ask;
  ask.title = "invented";
  ask.near_end = shape_ask().near_end;
  ask.far_end = shape_ask().far_end;
  ask.outside_diameter = in(0.77);
  ask.least_radius = in(4.63);
  const auto got = hose_sheet(ask, {});
  ASSERT_TRUE(got);
  EXPECT_GE(got->lines.size(), 4U);
  EXPECT_NEAR(got->shape.overall.si, got->length.to_order->value.si, 1e-9);
  EXPECT_EQ(got->shape.points.size(), 65U);
  const auto says = [](const HoseSheetAnswer& a, const std::string& words) {
    for (const auto& line : a.lines) {
      if (line.find(words) != std::string::npos) return true;
    }
    return false;
  };
  EXPECT_FALSE(says(*got, "Too"));
  ask.overall = in(21.5);
  const auto tight = hose_sheet(ask, {});
  ASSERT_TRUE(tight);
  EXPECT_TRUE(says(*tight, "Too short: needs at least"));
  ask.overall = in(31);
  const auto loose = hose_sheet(ask, {});
  ASSERT_TRUE(loose);
  EXPECT_TRUE(says(*loose, "Too long: at most"));
}

}  // namespace
