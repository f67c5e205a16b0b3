// Laws of cables, circuits and checks, over seeded inputs.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>

#include "electrics/cable_drop.hpp"
#include "electrics/circuit.hpp"
#include "electrics/joint.hpp"
#include "statistics/draws.hpp"
#include "unit/electrics/starting_sample.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;
using evidence::Verdict;

/// A ladder of random resistors between "a" and "0", fed with 1 A.
std::vector<CircuitElement> ladder(statistics::Draws& draws, int rungs) {
  std::vector<CircuitElement> all{{Branch::current_source, "feed", "0", "n0", 1, 0}};
  const auto ohm = [&] { return std::pow(10.0, draws.uniform(-4, 4)); };
  for (int i = 0; i < rungs; ++i) {
    all.push_back({Branch::resistor, fmt::format("s{}", i), fmt::format("n{}", i),
                   fmt::format("n{}", i + 1), ohm(), 0});
    all.push_back(
        {Branch::resistor, fmt::format("p{}", i), fmt::format("n{}", i + 1), "0", ohm(), 0});
  }
  return all;
}

TEST(CircuitLaws, AParallelPathNeverRaisesTheResistance) {
  statistics::Draws draws(1);
  for (int i = 0; i < 300; ++i) {
    auto circuit = ladder(draws, 6);
    const double before = *voltage_at(*solve(circuit, "0"), "n0");
    const auto from = static_cast<int>(draws.uniform(0, 6.999));
    circuit.push_back({Branch::resistor, "more", fmt::format("n{}", from), "0",
                       std::pow(10.0, draws.uniform(-4, 4)), 0});
    ASSERT_LE(*voltage_at(*solve(circuit, "0"), "n0"), before * (1 + 1e-12));
  }
}

TEST(CircuitLaws, PowerGivenIsPowerTaken) {
  statistics::Draws draws(2);
  for (int i = 0; i < 300; ++i) {
    auto circuit = ladder(draws, 5);
    circuit.push_back({Branch::voltage_source, "v", "n3", "0", draws.uniform(1, 28), 0.01});
    const auto solved = solve(circuit, "0");
    ASSERT_TRUE(solved);
    double sum = 0;
    double size = 0;
    for (const auto& b : solved->branches) {
      sum += b.volts * b.amperes;
      size += std::abs(b.volts * b.amperes);
    }
    ASSERT_LT(std::abs(sum), 1e-9 * size);
  }
}

TEST(CircuitLaws, ResistancesInAnotherUnitGiveTheSameCurrents) {
  statistics::Draws draws(3);
  for (int i = 0; i < 100; ++i) {
    auto circuit = ladder(draws, 5);
    circuit[0] = {Branch::voltage_source, "feed", "n0", "0", 12, 0};
    const auto plain = solve(circuit, "0");
    for (auto& e : circuit) {
      if (e.kind == Branch::resistor) e.value *= 1000;
    }
    const auto milli = solve(circuit, "0");
    for (std::size_t k = 0; k < circuit.size(); ++k) {
      ASSERT_NEAR(milli->branches[k].amperes * 1000, plain->branches[k].amperes,
                  1e-9 * std::abs(plain->branches[0].amperes));
    }
  }
}

TEST(CableLaws, TheDropIsInProportionToLengthAndCurrent) {
  statistics::Draws draws(4);
  for (int i = 0; i < 300; ++i) {
    CableDropInput in;
    in.conductor = wire("12");
    in.length = {{draws.uniform(0.1, 50)}, 0.01, {}};
    in.current = {{draws.uniform(0.1, 40)}, 0.1, {}};
    const double once = cable_drop(in, {})->drop.si;
    const double by = draws.uniform(0.1, 4);
    in.length.value.si *= by;
    ASSERT_NEAR(cable_drop(in, {})->drop.si, once * by, 1e-12 * once * by + 1e-15);
    in.current.value.si *= by;
    ASSERT_NEAR(cable_drop(in, {})->drop.si, once * by * by, 1e-12 * once * by * by + 1e-15);
  }
}

TEST(CableLaws, UnitsDoNotMatter) {
  CableDropInput in;
  in.conductor = wire("10");
  in.length = length("19.5 ft");
  in.current = current("20 A");
  const double feet = cable_drop(in, {})->drop.si;
  in.length = length("234 in");
  EXPECT_NEAR(cable_drop(in, {})->drop.si, feet, 1e-12);
  in.length = length("5.9436 m");
  in.current = current("20000 mA");
  EXPECT_NEAR(cable_drop(in, {})->drop.si, feet, 1e-12);
}

TEST(CheckLaws, ABetterMeterNeverOverturnsAFirmVerdict) {
  statistics::Draws draws(5);
  for (int i = 0; i < 500; ++i) {
    BondingInput in;
    in.drop = MeasuredVoltage{{draws.uniform(0.005, 0.05)}, draws.uniform(0, 0.02), 1e-4, {}};
    in.current = MeasuredCurrent{{10}, draws.uniform(0, 2), 0.1, {}};
    const auto poor = bonding_check(in, {})->verdict;
    if (poor == Verdict::undecided) continue;
    in.drop->expanded_si = *in.drop->expanded_si / 2;
    in.current->expanded_si = *in.current->expanded_si / 3;
    ASSERT_EQ(bonding_check(in, {})->verdict, poor);
  }
}

TEST(CheckLaws, ABetterMeterNeverOverturnsAFirmStanding) {
  statistics::Draws draws(6);
  for (int i = 0; i < 300; ++i) {
    auto in = example();
    in.measured_current = MeasuredCurrent{{200}, draws.uniform(0, 20), 1, {}};
    for (auto& e : in.elements) {
      e.drop = MeasuredVoltage{{draws.uniform(0.02, 0.8)}, draws.uniform(0, 0.1), 1e-3, {}};
    }
    const auto poor = *starting_circuit(in, {});
    in.measured_current->expanded_si = *in.measured_current->expanded_si / 2;
    for (auto& e : in.elements) e.drop->expanded_si = *e.drop->expanded_si / 2;
    const auto better = *starting_circuit(in, {});
    for (std::size_t k = 0; k < in.elements.size(); ++k) {
      if (poor.elements[k].standing == ElementStanding::undecided) continue;
      ASSERT_EQ(better.elements[k].standing, poor.elements[k].standing);
    }
  }
}

TEST(CheckLaws, ASecondGroundStrapNeverLowersTheVoltageAtTheStarter) {
  statistics::Draws draws(7);
  for (int i = 0; i < 200; ++i) {
    auto in = example();
    const double before = starting_circuit(in, {})->at_starter.si;
    StartElement strap = element("strap", StartElementKind::ground, "1 mohm");
    strap.resistance->value.si = draws.uniform(1e-5, 1);
    strap.in_return = true;
    strap.beside = "ground path";
    in.elements.push_back(strap);
    ASSERT_GE(starting_circuit(in, {})->at_starter.si, before - 1e-12);
  }
}

TEST(CheckLaws, ProbesTheOtherWayRoundChangeNoVerdict) {
  statistics::Draws draws(11);
  const auto text = [](double volts) { return fmt::format("{:.6f} V +- 0.0005 V", volts); };
  for (int i = 0; i < 300; ++i) {
    const double volts = std::pow(10.0, draws.uniform(-4, 0));
    JointDropInput in;
    in.current = measured<quantity::Current>("200 A +- 5 A");
    in.limit = resistance("0.3 mohm");
    in.drop = measured<quantity::Voltage>(text(volts));
    const auto right = joint_drop(in, {});
    in.drop = measured<quantity::Voltage>(text(-volts));
    const auto turned = joint_drop(in, {});
    ASSERT_EQ(right->verdict, turned->verdict) << volts;
    ASSERT_DOUBLE_EQ(right->resistance.si, turned->resistance.si);
    ASSERT_TRUE(says(turned->notes, "the other way round"));
    BondingInput bond;
    bond.current = in.current;
    bond.drop = measured<quantity::Voltage>(text(-volts));
    const auto reversed = bonding_check(bond, {});
    bond.drop = measured<quantity::Voltage>(text(volts));
    ASSERT_EQ(bonding_check(bond, {})->verdict, reversed->verdict) << volts;
  }
}

TEST(CheckLaws, ANegativeDropInTheStartingCircuitIsJudgedByItsSize) {
  auto in = example();
  in.current.reset();
  in.measured_current = measured<quantity::Current>("200 A +- 2 A");
  in.elements[2].drop = measured<quantity::Voltage>("0.36 V +- 0.01 V");
  const auto right = starting_circuit(in, {});
  in.elements[2].drop = measured<quantity::Voltage>("-0.36 V +- 0.01 V");
  const auto turned = starting_circuit(in, {});
  ASSERT_TRUE(right && turned);
  EXPECT_EQ(right->elements[2].standing, ElementStanding::high);
  EXPECT_EQ(turned->elements[2].standing, ElementStanding::high);
  EXPECT_DOUBLE_EQ(right->at_starter.si, turned->at_starter.si);
  EXPECT_TRUE(says(turned->notes, "the other way round"));
}

}  // namespace
