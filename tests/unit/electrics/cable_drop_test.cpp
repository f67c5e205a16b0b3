#include "electrics/cable_drop.hpp"

#include <gtest/gtest.h>

#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

CableDropInput feed() {
  CableDropInput in;
  in.conductor = wire("10");
  in.length = length("19.5 ft");
  in.current = current("20 A");
  return in;
}

TEST(CableDrop, JudgesAgainstTheTable) {
  const auto got = cable_drop(feed(), {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->standing, Against::within);
  EXPECT_NE(got->in_words.find("loses 0.491 V at 20 A"), std::string::npos);
  auto in = feed();
  in.length = length("20 ft");
  const auto over = cable_drop(in, {});
  EXPECT_EQ(over->standing, Against::over);
  EXPECT_TRUE(says(over->do_next, "shorten the run to 19.84"));
}

TEST(CableDrop, TheGroundWireCounts) {
  auto in = feed();
  in.return_length = length("2 ft");
  const auto got = cable_drop(in, {});
  EXPECT_NEAR(got->drop.si, 0.00126 * 21.5 * 20, 1e-9);
  EXPECT_FALSE(says(got->notes, "return through structure"));
  EXPECT_TRUE(says(cable_drop(feed(), {})->notes, "return through structure"));
}

TEST(CableDrop, WarmWireLosesMoreAndColdWireGetsNoCredit) {
  auto in = feed();
  in.temperature = temperature("80 degC");
  EXPECT_NEAR(cable_drop(in, {})->drop.si, 0.4914 * (234.5 + 80) / 254.5, 1e-9);
  in.temperature = temperature("-20 degC");
  const auto cold = cable_drop(in, {});
  EXPECT_NEAR(cold->drop.si, 0.4914, 1e-9);
  EXPECT_TRUE(says(cold->notes, "No credit"));
}

TEST(CableDrop, IntermittentLimitsAndMetricCablesAreAdvice) {
  auto in = feed();
  in.duty = Duty::intermittent;
  EXPECT_EQ(cable_drop(in, {})->standing, Against::advice_within);
  in = feed();
  in.conductor = wire("6 mm2", CableKind::class_5_tinned);
  EXPECT_EQ(cable_drop(in, {})->standing, Against::advice_within);
}

TEST(CableDrop, TheOwnersLimitAndTheMakersResistanceWin) {
  auto in = feed();
  in.limit = voltage("0.4 V");
  in.limit_source = "kit manual";
  const auto own = cable_drop(in, {});
  EXPECT_EQ(own->standing, Against::over);
  EXPECT_EQ(own->limit_from, "entered: kit manual");
  in = feed();
  in.conductor.resistance = typed<quantity::ResistancePerLength>("1.0 mohm/ft");
  EXPECT_NEAR(cable_drop(in, {})->drop.si, 0.39, 1e-9);
}

TEST(CableDrop, AFeederIsJudgedByItsRegulatedVoltage) {
  auto in = feed();
  in.role = CircuitRole::feeder;
  const auto missing = cable_drop(in, {});
  ASSERT_FALSE(missing);
  EXPECT_TRUE(complains(missing.error(), "regulated", Kind::missing));
  in.regulated = voltage("14.2 V");
  EXPECT_EQ(cable_drop(in, {})->standing, Against::over);
}

TEST(CableDrop, TellsTheSizesThereAre) {
  auto in = feed();
  in.conductor = wire("11");
  const auto got = cable_drop(in, {});
  ASSERT_FALSE(got);
  EXPECT_TRUE(complains(got.error(), "conductor/size", Kind::not_found));
  EXPECT_NE(got.error()[0].expected.find("24, 22, 20"), std::string::npos);
  in.conductor = wire("");
  EXPECT_TRUE(complains(cable_drop(in, {}).error(), "conductor/size", Kind::missing));
  in.conductor = wire("6", CableKind::class_2_aluminium);
  EXPECT_TRUE(complains(cable_drop(in, {}).error(), "conductor/size", Kind::not_found));
  in.conductor = wire("4", CableKind::makers_aluminium);
  EXPECT_TRUE(complains(cable_drop(in, {}).error(), "conductor/resistance", Kind::missing));
}

TEST(Wire, SizesAreReadAsPeopleWriteThem) {
  for (const char* text : {"2/0", "00", "AWG 00", "No. 2/0", "#2/0", "2/0 AWG"}) {
    EXPECT_EQ(plain_size(text), "00") << text;
  }
  EXPECT_EQ(plain_size("16 mm2"), "16");
  EXPECT_EQ(plain_size("4/0"), "0000");
}

}  // namespace
