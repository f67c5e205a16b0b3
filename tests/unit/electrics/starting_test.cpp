#include <gtest/gtest.h>

#include <cmath>

#include "unit/electrics/starting_sample.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

StartingInput read_out(bool with_current = true) {
  auto in = example();
  in.elements[0].drop = measured<quantity::Voltage>("0.09 V +- 0.01 V");
  in.elements[1].drop = measured<quantity::Voltage>("0.40 V +- 0.01 V");
  in.elements[2].drop = measured<quantity::Voltage>("0.40 V +- 0.01 V");
  if (with_current) in.measured_current = measured<quantity::Current>("200 A +- 4 A");
  return in;
}

StartMotor motor() {
  return {resistance("15 mohm"), voltage("1 V"), voltage("10 V"), current("200 A"),
          typed<quantity::RotationSpeed>("120 rpm")};
}

TEST(Starting, LocatesTheBadContactor) {
  auto in = read_out();
  in.motor = motor();
  const auto got = starting_circuit(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->elements[0].standing, ElementStanding::undecided);
  EXPECT_EQ(got->elements[1].standing, ElementStanding::as_expected);
  EXPECT_EQ(got->elements[2].standing, ElementStanding::high);
  EXPECT_EQ(got->elements[3].standing, ElementStanding::not_measured);
  ASSERT_TRUE(got->renewal);
  EXPECT_EQ(got->renewal->element, "starter contactor");
  EXPECT_NEAR(got->elements[2].measured->si, 2e-3, 1e-12);
  EXPECT_NEAR(got->elements[2].doubt->si, 2e-3 * std::hypot(0.025, 0.02), 1e-9);
  EXPECT_NEAR(got->renewal->at_starter.si, 0.3, 1e-9);
  // 6 V turn it at 120 rpm: 0.3 V are 6 rpm.
  EXPECT_NEAR(got->renewal->speed->si * 60, 6, 1e-9);
  EXPECT_GT(got->renewal->first_moment->si, 0);
}

TEST(Starting, TheCableServesAsShunt) {
  const auto got = starting_circuit(read_out(false), {});
  ASSERT_TRUE(got && got->read_current);
  const double least = 0.40 / (12 * 0.00018);
  EXPECT_NEAR(got->read_current->si, least * (1 + 1 / 0.88) / 2, 1e-9);
  EXPECT_TRUE(says(got->notes, "The current was not read"));
  EXPECT_EQ(got->renewal->element, "starter contactor");
}

// The current may be quite unknown: the cable tells it, and all figures hold at that current.
TEST(Starting, TheCableAloneTellsTheCurrent) {
  auto in = read_out(false);
  in.current.reset();
  const auto got = starting_circuit(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->current.si, got->read_current->si);
  in.elements[1].drop.reset();
  EXPECT_TRUE(complains(starting_circuit(in, {}).error(), "current", Kind::missing));
}

TEST(Starting, WithoutCurrentAndCableThereAreOnlyShares) {
  auto in = read_out(false);
  in.elements[1].drop.reset();
  const auto got = starting_circuit(in, {});
  EXPECT_FALSE(got->read_current);
  EXPECT_FALSE(got->renewal);
  EXPECT_TRUE(says(got->working, "82 %"));
}

TEST(Starting, ACoarseMeterLocatesNothing) {
  auto in = read_out();
  for (auto& e : in.elements) {
    if (e.drop) e.drop->expanded_si = 0.5;
  }
  const auto got = starting_circuit(in, {});
  EXPECT_FALSE(got->renewal);
  EXPECT_NE(got->located.find("beyond the doubt"), std::string::npos);
  EXPECT_FALSE(got->do_next.empty());
}

TEST(Starting, AColdBatteryGivesLess) {
  auto in = example();
  const double warm = starting_circuit(in, {})->at_starter.si;
  in.battery.temperature = temperature("-10 degC");
  const auto cold = starting_circuit(in, {});
  EXPECT_NEAR(warm - cold->at_starter.si, 200 * 8e-3 * 0.45, 1e-9);
  EXPECT_TRUE(says(cold->working, "from memory, unconfirmed"));
  EXPECT_TRUE(says(cold->notes, "model from memory"));
  EXPECT_FALSE(cold_factor(-30));
}

TEST(Starting, FirstMomentAndSpeed) {
  auto in = example();
  in.motor = motor();
  in.current.reset();
  const auto got = starting_circuit(in, {});
  EXPECT_NEAR(got->first_moment->si, (12.6 - 1) / (0.008 + 0.00416 + 0.015), 1e-6);
  EXPECT_NEAR(got->speed->si * 60, 120 * (got->at_starter.si - 1 - 3) / 6, 1e-9);
}

TEST(Starting, ASecondStrapBesideTheFirst) {
  auto in = example();
  StartElement strap = element("second strap", StartElementKind::ground, "1.0 mohm");
  strap.in_return = true;
  strap.beside = "ground path";
  in.elements.push_back(strap);
  const auto got = starting_circuit(in, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->elements[3].computed.si, 200 * 0.0005, 1e-12);
  EXPECT_NEAR(got->at_starter.si, 10.168 + 0.1, 1e-9);
  in.elements[4].drop = measured<quantity::Voltage>("0.1 V");
  EXPECT_TRUE(complains(starting_circuit(in, {}).error(), "elements/4/drop", Kind::conflict));
  in.elements[4].beside = "nothing";
  EXPECT_TRUE(complains(starting_circuit(in, {}).error(), "elements/4/beside", Kind::not_found));
}

TEST(Starting, RulesComeWithTheirScope) {
  auto in = example();
  EXPECT_EQ(starting_circuit(in, {})->rules.size(), 3U);
  in.elements.insert(in.elements.begin(), element("post", StartElementKind::joint, "0.1 mohm"));
  EXPECT_EQ(starting_circuit(in, {})->rules.size(), 4U);
  in.battery.open_circuit = voltage("25.2 V");
  const auto got = starting_circuit(in, {});
  EXPECT_EQ(got->rules.size(), 6U);
  for (const auto& r : got->rules) {
    EXPECT_FALSE(r.scope.empty());
    EXPECT_FALSE(r.source.empty());
  }
}

TEST(Starting, ElementsWithoutFiguresUseAdvice) {
  auto in = example();
  in.elements[0].resistance.reset();
  const auto got = starting_circuit(in, {});
  EXPECT_NEAR(got->elements[0].expected.si, 1e-3, 1e-12);
  EXPECT_NE(got->elements[0].basis.find("advice"), std::string::npos);
}

TEST(Starting, TellsAllThatIsMissing) {
  StartingInput in;
  in.battery = example().battery;
  const auto none = starting_circuit(in, {});
  EXPECT_TRUE(complains(none.error(), "elements", Kind::missing));
  EXPECT_TRUE(complains(none.error(), "current", Kind::missing));
  in = example();
  in.elements[1].length.reset();
  in.elements[2].name = "cable";
  in.motor = motor();
  in.motor->armature = resistance("50 mohm");
  const auto got = starting_circuit(in, {});
  EXPECT_TRUE(complains(got.error(), "elements/1/length", Kind::missing));
  EXPECT_TRUE(complains(got.error(), "elements/2/name", Kind::duplicate));
  EXPECT_TRUE(complains(got.error(), "motor", Kind::conflict));
}

}  // namespace
