#include <gtest/gtest.h>

#include <cmath>

#include "electrics/contactor.hpp"
#include "electrics/joint.hpp"
#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;
using evidence::Verdict;

JointDropInput joint(const char* drop) {
  JointDropInput in;
  in.drop = measured<quantity::Voltage>(drop);
  in.current = measured<quantity::Current>("200 A +- 5 A");
  return in;
}

TEST(JointDrop, NeedsALimitForAVerdict) {
  const auto got = joint_drop(joint("25 mV +- 0.5 mV"), {});
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_NE(got->advice.find("like that"), std::string::npos);
  EXPECT_NE(joint_drop(joint("90 mV +- 0.5 mV"), {})->advice.find("has more"), std::string::npos);
  auto in = joint("25 mV +- 0.5 mV");
  in.limit = resistance("0.3 mohm");
  EXPECT_EQ(joint_drop(in, {})->verdict, Verdict::conforms);
  in.limit = resistance("0.125 mohm");
  EXPECT_EQ(joint_drop(in, {})->verdict, Verdict::undecided);
  in.limit = resistance("0.1 mohm");
  EXPECT_EQ(joint_drop(in, {})->verdict, Verdict::does_not_conform);
}

TEST(JointDrop, AveragesPolaritiesAndTellsAThermalVoltage) {
  auto in = joint("25 mV +- 0.1 mV");
  in.reversed = measured<quantity::Voltage>("-27 mV +- 0.1 mV");
  in.at_current = current("300 A");
  in.baseline = measured<quantity::Resistance>("0.05 mohm +- 0.005 mohm");
  const auto got = joint_drop(in, {});
  EXPECT_NEAR(got->resistance.si, 0.13e-3, 1e-12);
  EXPECT_NEAR(got->drop_at->si, 0.039, 1e-12);
  EXPECT_TRUE(says(got->notes, "thermal voltage, or the contact moved"));
  EXPECT_NE(got->against_baseline.find("risen"), std::string::npos);
  in.current = measured<quantity::Current>("0 A");
  EXPECT_TRUE(complains(joint_drop(in, {}).error(), "current", Kind::conflict));
}

TEST(Bonding, AHandMultimeterCannotTell) {
  BondingInput in;
  in.instrument = BondInstrument::hand_multimeter;
  for (const char* r : {"0.001 ohm", "0.2 ohm", "5 ohm"}) {
    in.reading = measured<quantity::Resistance>(r);
    EXPECT_EQ(bonding_check(in, {})->verdict, Verdict::undecided);
  }
  in.instrument = BondInstrument::bonding_meter;
  in.reading = measured<quantity::Resistance>("1.2 mohm +- 0.1 mohm");
  EXPECT_EQ(bonding_check(in, {})->verdict, Verdict::conforms);
  in.reading = measured<quantity::Resistance>("2.45 mohm +- 0.1 mohm");
  EXPECT_EQ(bonding_check(in, {})->verdict, Verdict::undecided);
  in.reading.reset();
  EXPECT_EQ(bonding_check(in, {})->verdict, Verdict::not_tested);
}

TEST(Bonding, AsksForWhatIsMissing) {
  BondingInput in;
  in.bond = Bond::own_limit;
  in.drop = measured<quantity::Voltage>("20 mV");
  const auto got = bonding_check(in, {});
  EXPECT_TRUE(complains(got.error(), "limit", Kind::missing));
  EXPECT_TRUE(complains(got.error(), "current", Kind::missing));
  in.limit = resistance("10 mohm");
  in.current = measured<quantity::Current>("0 A");
  EXPECT_TRUE(complains(bonding_check(in, {}).error(), "current", Kind::conflict));
  in.current = measured<quantity::Current>("0.5 A +- 0.01 A");
  EXPECT_TRUE(says(bonding_check(in, {})->notes, "Below 1 A"));
}

ContactorInput coil(const char* reading) {
  ContactorInput in;
  in.coil = measured<quantity::Resistance>(reading);
  in.coil_nominal = resistance("4 ohm");
  in.coil_tolerance = quantity::per_cent(10);
  return in;
}
const ContactorItem& item(const ContactorAnswer& a, const std::string& what) {
  for (const auto& i : a.items) {
    if (i.what == what) return i;
  }
  return a.items.front();
}

TEST(Contactor, JudgesTheCoilAtTwentyDegrees) {
  EXPECT_EQ(item(*contactor_check(coil("4.1 ohm +- 0.1 ohm"), {}), "coil").verdict,
            Verdict::conforms);
  const auto shorted = contactor_check(coil("3.0 ohm +- 0.1 ohm"), {});
  EXPECT_EQ(shorted->verdict, Verdict::does_not_conform);
  EXPECT_NE(item(*shorted, "coil").in_words.find("shorted turns"), std::string::npos);
  EXPECT_EQ(contactor_check(coil("4.4 ohm +- 0.1 ohm"), {})->verdict, Verdict::undecided);
  // Hot, the same coil reads 4.8 ohm, and is as good.
  auto in = coil("4.8 ohm +- 0.1 ohm");
  in.coil_temperature = temperature("70 degC");
  EXPECT_NEAR(contactor_check(in, {})->coil_at_20->si, 4.8 * 254.5 / 304.5, 1e-9);
  EXPECT_EQ(contactor_check(in, {})->verdict, Verdict::conforms);
  in.coil_nominal.reset();
  EXPECT_EQ(contactor_check(in, {})->verdict, Verdict::not_tested);
  in.coil.reset();
  in.coil_open = true;
  EXPECT_EQ(contactor_check(in, {})->verdict, Verdict::does_not_conform);
}

TEST(Contactor, ContactsNeedTheirMakersLimit) {
  ContactorInput in;
  in.contact_drop = measured<quantity::Voltage>("0.24 V +- 0.01 V");
  in.contact_current = measured<quantity::Current>("200 A +- 5 A");
  const auto advice = contactor_check(in, {});
  EXPECT_EQ(advice->verdict, Verdict::not_tested);
  EXPECT_TRUE(says(advice->do_next, "renew the contactor"));
  in.contact_limit = resistance("1 mohm");
  EXPECT_EQ(contactor_check(in, {})->verdict, Verdict::does_not_conform);
}

TEST(Contactor, TheDiodeIsReadWithTheCoilLifted) {
  using enum DiodeReading;
  ContactorInput in;
  in.diode_forward = drop;
  in.diode_forward_drop = voltage("0.58 V");
  in.diode_reverse = over_range;
  const auto verdict = [&] { return item(*contactor_check(in, {}), "suppression diode").verdict; };
  EXPECT_EQ(verdict(), Verdict::undecided);
  in.coil_lead_lifted = true;
  EXPECT_EQ(verdict(), Verdict::not_tested);  // common practice is no limit
  in.diode_forward_drop = voltage("1.9 V");
  EXPECT_EQ(verdict(), Verdict::undecided);
  in.diode_reverse = drop;
  EXPECT_EQ(verdict(), Verdict::does_not_conform);
  in.diode_forward = over_range;
  EXPECT_EQ(verdict(), Verdict::undecided);
  in.diode_reverse = over_range;
  EXPECT_EQ(verdict(), Verdict::does_not_conform);
}

TEST(Contactor, TellsAllThatDoesNotFit) {
  auto in = coil("4 ohm");
  in.coil_open = true;
  in.coil_tolerance.reset();
  in.contact_drop = measured<quantity::Voltage>("0.1 V");
  in.diode_forward = DiodeReading::drop;
  const auto problems = contactor_check(in, {}).error();
  EXPECT_TRUE(complains(problems, "coil_open", Kind::conflict));
  EXPECT_TRUE(complains(problems, "coil_tolerance", Kind::missing));
  EXPECT_TRUE(complains(problems, "contact_current", Kind::missing));
  EXPECT_TRUE(complains(problems, "diode_forward_drop", Kind::missing));
}

TEST(BondingCheck, ANegativeResistanceAndAMissingInstrumentAreRefused) {
  BondingInput in;
  in.reading = measured<quantity::Resistance>("2 mohm +- 0.1 mohm");
  EXPECT_TRUE(complains(bonding_check(in, {}).error(), "instrument", Kind::conflict));
  in.instrument = BondInstrument::bonding_meter;
  EXPECT_EQ(bonding_check(in, {})->verdict, Verdict::conforms);
  in.reading = measured<quantity::Resistance>("-3 mohm +- 0.1 mohm");
  EXPECT_TRUE(complains(bonding_check(in, {}).error(), "reading", Kind::conflict));
  in.reading = measured<quantity::Resistance>("-0.05 mohm +- 0.1 mohm");
  EXPECT_TRUE(bonding_check(in, {})) << "inside its doubt of nought";
}

}  // namespace
