#include "electrics/reserve.hpp"

#include <gtest/gtest.h>

#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

ReserveInput bus() {
  ReserveInput in;
  in.capacity = typed<quantity::Charge>("24 Ah");
  in.age = {1.0};
  in.noticed_after = typed<quantity::Duration>("10 min");
  in.loads = {{"ignition", current("4 A"), {1.0}, true, {}},
              {"flaps", current("20 A"), {0.1}, true, {}},
              {"light", current("12 A"), {1.0}, false, {}},
              {"transponder", current("2 A"), {1.0}, true, typed<quantity::Duration>("30 min")}};
  return in;
}

TEST(Reserve, StepsThroughWhatIsShed) {
  const auto got = battery_reserve(bus(), {});
  ASSERT_TRUE(got);
  ASSERT_EQ(got->phases.size(), 3U);
  EXPECT_NEAR(got->phases[0].current.si, 20, 1e-12);
  EXPECT_NEAR(got->phases[1].current.si, 8, 1e-12);
  EXPECT_NEAR(got->phases[2].current.si, 6, 1e-12);
  EXPECT_EQ(got->phases[2].on, "ignition, flaps");
  const double rest = 24 - 20.0 / 6 - 8.0 / 3;
  EXPECT_NEAR(got->endurance.si, 1800 + rest / 6 * 3600, 1e-6);
  EXPECT_NEAR(got->after.si, 6, 1e-12);
}

TEST(Reserve, ASmallBatteryIsFlatBeforeAnythingIsShed) {
  auto in = bus();
  in.capacity = typed<quantity::Charge>("2 Ah");
  const auto got = battery_reserve(in, {});
  EXPECT_EQ(got->phases.size(), 1U);
  EXPECT_NEAR(got->endurance.si, 360, 1e-9);
}

TEST(Reserve, AgainstWhatIsWanted) {
  auto in = bus();
  in.wanted = typed<quantity::Duration>("30 min");
  EXPECT_EQ(*battery_reserve(in, {})->against_wanted, Against::within);
  in.wanted = typed<quantity::Duration>("6 h");
  const auto less = battery_reserve(in, {});
  EXPECT_EQ(*less->against_wanted, Against::over);
  EXPECT_TRUE(says(less->do_next, "shed more"));
}

TEST(Reserve, ACutOutLeavesAShare) {
  auto in = bus();
  in.cut_out = voltage("11 V");
  EXPECT_TRUE(complains(battery_reserve(in, {}).error(), "full", Kind::missing));
  in.full = voltage("12.5 V");
  EXPECT_TRUE(complains(battery_reserve(in, {}).error(), "empty", Kind::missing));
  in.empty = voltage("10.5 V");
  EXPECT_NEAR(battery_reserve(in, {})->usable.si / 3600, 24 * 0.75, 1e-9);
  in.cut_out = voltage("13 V");
  EXPECT_TRUE(complains(battery_reserve(in, {}).error(), "cut_out", Kind::conflict));
}

TEST(Reserve, TellsAllThatIsMissing) {
  auto in = bus();
  in.loads.clear();
  in.peukert = 1.2;
  const auto problems = battery_reserve(in, {}).error();
  EXPECT_TRUE(complains(problems, "loads", Kind::missing));
  EXPECT_TRUE(complains(problems, "rated_time", Kind::missing));
  in = bus();
  in.loads[1].name = "ignition";
  EXPECT_TRUE(complains(battery_reserve(in, {}).error(), "loads/1/name", Kind::duplicate));
  in.loads = {{"light", current("12 A"), {1.0}, false, {}}};
  EXPECT_TRUE(complains(battery_reserve(in, {}).error(), "loads", Kind::not_applicable));
}

}  // namespace
