// Laws of the proof test and of the incoming check, over seeded inputs.
#include <gtest/gtest.h>

#include "hose/declarations.hpp"
#include "hose/incoming.hpp"
#include "hose/proof.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using evidence::Verdict;

constexpr double k_psi = 6894.757293168361;

Seen any_seen(statistics::Draws& draws, double looked) {
  const double x = draws.uniform();
  if (x > looked) return Seen::not_looked;
  return x < 0.9 * looked ? Seen::no : Seen::yes;
}

/// @param accuracy  U of the gauge, Pa
PressureHold random_hold(statistics::Draws& draws, double accuracy) {
  PressureHold h;
  h.start = {{4000 * k_psi}, accuracy, k_psi, {}};
  h.end = {{(4000 - draws.uniform(0, 400)) * k_psi}, accuracy, k_psi, {}};
  h.lasted = {quantity::minutes(draws.uniform(1, 10)), 1, {}};
  h.temperature_start = quantity::Measured<quantity::Temperature>{
      quantity::celsius(draws.uniform(15, 25)), 0.2, 0.1, {}};
  h.temperature_end = quantity::Measured<quantity::Temperature>{
      {h.temperature_start->value.si + draws.uniform(-1, 1)}, 0.2, 0.1, {}};
  if (draws.uniform() < 0.8) {
    h.pumped_in = quantity::Measured<quantity::Volume>{{draws.uniform(1e-6, 6e-6)}, 1e-7, 1e-8, {}};
  }
  return h;
}

ProofTestInput random_test(statistics::Draws& draws, double accuracy, double looked) {
  ProofTestInput in;
  in.makers_proof = EnteredPressure{quantity::psi_gauge(4000), 1, {}};
  in.bore = {quantity::inches(0.4), 1e-4, {}};
  in.length = {quantity::inches(24), 1e-3, {}};
  in.findings = {any_seen(draws, looked), any_seen(draws, looked), any_seen(draws, looked),
                 any_seen(draws, looked), any_seen(draws, looked)};
  const int n = static_cast<int>(draws.uniform(0, 4));
  for (int i = 0; i < n; ++i) in.holds.push_back(random_hold(draws, accuracy));
  if (draws.uniform() < 0.8) in.blank = random_hold(draws, accuracy);
  if (draws.uniform() < 0.9) {
    in.fall_allowed =
        quantity::Entered<quantity::PressureDifference>{{draws.uniform(5, 200) * k_psi}, 1, {}};
  }
  in.hold_time = quantity::Entered<quantity::Duration>{quantity::minutes(1), 1, {}};
  return in;
}

// Twice the pressure, four times the energy of a liquid; a gas grows at least as the pressure.
TEST(ProofLaws, LiquidEnergyGrowsWithTheSquareOfThePressure) {
  statistics::Draws draws(11);
  for (int i = 0; i < 2000; ++i) {
    const double volume = draws.uniform(1e-6, 1e-3);
    const double p = draws.uniform(1e5, 4e7);
    const double k = draws.uniform(5e8, 3e9);
    const double f = draws.uniform(1, 5);
    ASSERT_NEAR(liquid_energy(volume, f * p, k) / liquid_energy(volume, p, k), f * f,
                1e-12 * f * f);
    ASSERT_NEAR(liquid_energy(volume, p, k), liquid_added(volume, p, k) * p / 2, 1e-12);
    const GasEnergy a = gas_energy(volume, p);
    const GasEnergy b = gas_energy(volume, f * p);
    ASSERT_GE(b.isentropic, f * a.isentropic * (1 - 1e-12));
    ASSERT_LT(a.isentropic, a.brode);
    ASSERT_GT(a.isentropic, liquid_energy(volume, p, k));
  }
}

TEST(ProofLaws, NeverConformsWhenSomethingWasNotLookedAt) {
  statistics::Draws draws(12);
  int conforming = 0;
  for (int i = 0; i < 4000; ++i) {
    const auto in = random_test(draws, 10 * k_psi, i % 2 == 0 ? 0.9 : 1.1);
    const auto got = proof_test(in, {});
    ASSERT_TRUE(got);
    const ProofFindings& f = in.findings;
    const bool all_looked = f.leak == Seen::no && f.push_off_moved == Seen::no &&
                            f.gap_changed == Seen::no && f.deformed == Seen::no &&
                            f.bulge_or_kink == Seen::no;
    if (got->verdict != Verdict::conforms) continue;
    ++conforming;
    ASSERT_TRUE(all_looked);
    ASSERT_FALSE(in.holds.empty());
    ASSERT_TRUE(in.fall_allowed);
  }
  EXPECT_GT(conforming, 50);
}

// The same readings with a finer gauge: a firm verdict on the fall stays.
TEST(ProofLaws, ABetterGaugeNeverOverturnsAFirmVerdict) {
  statistics::Draws draws(13);
  int firm = 0;
  int failed = 0;
  for (int i = 0; i < 6000; ++i) {
    auto in = random_test(draws, draws.uniform(0, 60) * k_psi, 1.1);
    const double finer = draws.uniform();
    const HoldRules rules{{2.2e9, 2.07e-4},
                          bore_volume(in.bore.value, in.length.value),
                          {},
                          in.fall_allowed ? std::optional(in.fall_allowed->value.si) : std::nullopt,
                          0.8};
    const auto& unit = *quantity::find_unit(quantity::KindOf::pressure_difference, "psi");
    const auto poor = judge_holds(in.holds, in.blank, rules, unit);
    if (!poor) continue;
    if (poor->verdict != Verdict::conforms && poor->verdict != Verdict::does_not_conform) continue;
    ++firm;
    failed += poor->verdict == Verdict::does_not_conform ? 1 : 0;
    for (PressureHold& h : in.holds) {
      *h.start.expanded_si *= finer;
      *h.end.expanded_si *= finer;
    }
    if (in.blank) {
      *in.blank->start.expanded_si *= finer;
      *in.blank->end.expanded_si *= finer;
    }
    const auto fine = judge_holds(in.holds, in.blank, rules, unit);
    ASSERT_TRUE(fine);
    ASSERT_EQ(fine->verdict, poor->verdict) << poor->reason << " | " << fine->reason;
  }
  EXPECT_GT(firm, 200);
  EXPECT_GT(failed, 20);
}

TEST(IncomingLaws, ABetterTapeNeverOverturnsAFirmVerdict) {
  statistics::Draws draws(14);
  HoseIncomingInput in;
  in.ordered.specification = "hose";
  in.ordered.size = "-8";
  in.ordered.liner = Liner::elastomer;
  in.ordered.carries = Carries::oil;
  in.ordered.sleeve = FireSleeve::integral;
  in.ordered.near_end = {EndForm::elbow_90, "3/4-16", "", ""};
  in.ordered.far_end = {EndForm::elbow_45, "3/4-16", "", ""};
  in.ordered.overall = {quantity::inches(20), 1e-4, {}};
  in.ordered.length_tolerance = EnteredLength{quantity::inches(0.2), 1e-5, {}};
  in.ordered.clocking = quantity::Entered<quantity::Angle>{quantity::degrees(5), 1e-3, {}};
  in.ordered.makers_proof = EnteredPressure{quantity::psi_gauge(3000), 1, {}};
  for (int i = 0; i < 3000; ++i) {
    const double u = draws.uniform(0, 0.3);
    in.overall = quantity::Measured<quantity::Length>{
        quantity::inches(20 + draws.uniform(-0.5, 0.5)), quantity::inches(u).si, 0, {}};
    in.clocking = quantity::Measured<quantity::Angle>{
        quantity::degrees(5 + draws.uniform(-9, 9)), quantity::degrees(20 * u).si, 0, {}};
    const auto poor = hose_incoming(in, {});
    const double finer = draws.uniform();
    *in.overall->expanded_si *= finer;
    *in.clocking->expanded_si *= finer;
    // A whole turn more is the same clocking.
    in.clocking->value.si -= quantity::degrees(360).si;
    const auto fine = hose_incoming(in, {});
    ASSERT_TRUE(poor && fine);
    for (std::size_t line = 0; line < 2; ++line) {
      if (poor->lines[line].verdict == Verdict::undecided) continue;
      ASSERT_EQ(fine->lines[line].verdict, poor->lines[line].verdict) << poor->lines[line].reason;
    }
    ASSERT_NE(poor->verdict, Verdict::conforms);  // nobody has looked at the rest
  }
}

}  // namespace
