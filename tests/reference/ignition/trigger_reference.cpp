// Supply of electronic ignition. Hand sums: 4.5 Ah x 0.8 / 2.4 A = 1.5 h. The meter's doubt: stated
// beside the reading, guard band U (ILAC-G8:09/2019 par. 4.2.3, read in extract).
#include <gtest/gtest.h>

#include "ignition/trigger.hpp"
#include "support/reference_case.hpp"

namespace wm::ignition {
namespace {

quantity::Measured<quantity::Voltage> volts(double value, double doubt) {
  return {quantity::Voltage{value}, doubt, 0.01, std::to_string(value) + " V"};
}

TriggerSupplyInput sample(double cranking) {
  TriggerSupplyInput in;
  SupplyRead module;
  module.name = "module 1";
  module.running = volts(13.8, 0.1);
  module.cranking = volts(cranking, 0.1);
  module.least = {quantity::Voltage{8.0}, 0.1, "8.0 V"};
  in.modules.push_back(module);
  in.limit_source = "manual of the module's maker (invented)";
  StandbySupply standby;
  standby.capacity = {quantity::Charge{4.5 * 3600}, 0, "4.5 Ah"};
  standby.draw = {quantity::Current{2.4}, 0, "2.4 A"};
  standby.wanted = {quantity::hours(1), 0, "60 min"};
  in.standby = standby;
  return in;
}

TEST(TriggerSupply, TheStandbySupplyLastsAsLongAsThePencilSays) {
  const auto told = trigger_supply(sample(9.6), {});
  ASSERT_TRUE(told);
  test::check({"trigger-supply", "4.5 Ah, 80 %, 2.4 A", "hand sum", "90 min", 5400, told->lasts->si,
               1e-9, "exact"});
  EXPECT_NE(told->lasts_words.find("enough by this sum"), std::string::npos);
  EXPECT_EQ(told->verdict, evidence::Verdict::conforms);
}

TEST(TriggerSupply, NearTheLeastTheMeterCannotTell) {
  EXPECT_EQ(trigger_supply(sample(8.05), {})->verdict, evidence::Verdict::undecided);
  EXPECT_EQ(trigger_supply(sample(7.5), {})->verdict, evidence::Verdict::does_not_conform);
}

TEST(TriggerSupply, WithoutTheMakersFigureThereIsNoVerdict) {
  auto in = sample(5.0);
  in.modules[0].least.reset();
  EXPECT_EQ(trigger_supply(in, {})->verdict, evidence::Verdict::not_tested);
  in.modules.clear();
  const auto none = trigger_supply(in, {});
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error()[0].path, "modules");
}

}  // namespace
}  // namespace wm::ignition
