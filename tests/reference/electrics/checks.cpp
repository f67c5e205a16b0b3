// Source:    AC 43.13-1B CHG 1 par. 11-188 f and 11-189, FAA-H-8083-31 (bonds); electrical notes,
//            section 9: E16 (computed from copper), E22.
// Tolerance: exact, or as stated with the case.
#include <gtest/gtest.h>

#include "electrics/contactor.hpp"
#include "electrics/joint.hpp"
#include "support/reference_case.hpp"
#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

TEST(ContactorCases, E16PullInHot) {
  test::check({"contactor-check", "E16 9 V at 20 degC, coil at 100 degC",
               "computed: (234.5 + T) / 254.5, AC 43.13-1B page 11-22", "11.83 V", 11.83,
               pull_in_at(quantity::volts(9), 100).si, 0.02, "stated with the case"});
  ContactorInput in;
  in.pull_in = voltage("9 V");
  in.hot = temperature("100 degC");
  in.available = voltage("10.5 V");
  const auto got = contactor_check(in, {});
  EXPECT_LT(got->to_spare->si, 0);
}

BondingInput e22(double volts) {
  BondingInput in;
  in.drop = MeasuredVoltage{{volts}, 0.0, 0.0, {}};
  in.current = MeasuredCurrent{{10}, 0.0, 0.0, {}};
  return in;
}

TEST(BondingCases, E22AtTheStrictLimit) {
  const auto got = bonding_check(e22(0.025), {});
  ASSERT_TRUE(got);
  test::check({"bonding-check", "E22 25 mV at 10 A", "AC 43.13-1B par. 11-188 f", "2.5 mohm", 2.5,
               got->resistance->si * 1e3, 1e-12, "exact"});
  test::check_text("bonding-check", "E22 not below 2.5 mohm", "AC 43.13-1B par. 11-188 f",
                   "does not conform", got->in_words);
  EXPECT_EQ(bonding_check(e22(0.0249), {})->verdict, evidence::Verdict::conforms);
}

TEST(BondingCases, TheThreePublishedLimits) {
  auto in = e22(0.030);
  in.bond = Bond::jumper_connection;
  test::check_text("bonding-check", "3.0 mohm, connection of a jumper",
                   "AC 43.13-1B par. 11-189: up to 3 mohm", "conforms",
                   bonding_check(in, {})->in_words);
  in = e22(0.050);
  in.bond = Bond::ground_path;
  test::check_text("bonding-check", "5.0 mohm, ground path", "FAA-H-8083-31: 5 mohm satisfactory",
                   "conforms", bonding_check(in, {})->in_words);
  in = e22(0.0501);
  in.bond = Bond::ground_path;
  EXPECT_EQ(bonding_check(in, {})->verdict, evidence::Verdict::does_not_conform);
}

// Ohm's law with a clamp meter: 0.2 V at 200 A is 1 mohm.
TEST(JointCases, TwoTenthsOfAVoltAtTwoHundredAmperes) {
  JointDropInput in;
  in.drop = measured<quantity::Voltage>("0.2 V");
  in.current = measured<quantity::Current>("200 A");
  test::check({"joint-drop", "0.2 V at 200 A", "electrical notes 3.3; Ohm's law", "1 mohm", 1,
               joint_drop(in, {})->resistance.si * 1e3, 1e-12, "exact"});
}

}  // namespace
