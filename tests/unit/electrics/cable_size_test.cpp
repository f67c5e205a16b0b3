#include "electrics/cable_size.hpp"

#include <gtest/gtest.h>

#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

CableSizeInput run(const char* feet, const char* amps) {
  CableSizeInput in;
  in.length = length(feet);
  in.current = current(amps);
  in.nominal = NominalVoltage::v28;
  return in;
}
Surroundings crowded() {
  Surroundings s;
  s.ambient = temperature("50 degC");
  s.rating = temperature("150 degC");
  s.wires = 8;
  s.loading = quantity::per_cent(60);
  return s;
}

TEST(CableSize, SaysWhichRuleBinds) {
  EXPECT_EQ(cable_size(run("50 ft", "20 A"), {})->binding, SizeRule::drop);
  auto in = run("3 ft", "20 A");
  in.surroundings = crowded();
  const auto hot = cable_size(in, {});
  EXPECT_EQ(hot->binding, SizeRule::current);
  EXPECT_TRUE(hot->advice);
  EXPECT_EQ(cable_size(run("1 ft", "0.1 A"), {})->binding, SizeRule::none);
}

TEST(CableSize, WithoutSurroundingsTheCurrentIsNotJudged) {
  EXPECT_TRUE(says(cable_size(run("50 ft", "20 A"), {})->notes, "Current not judged"));
}

// A size without a figure must never be chosen for its lack of one.
TEST(CableSize, LargeWiresInACrowdedBundleAreNotGuessed) {
  auto in = run("50 ft", "150 A");
  in.surroundings = crowded();
  const auto got = cable_size(in, {});
  ASSERT_FALSE(got);
  EXPECT_TRUE(complains(got.error(), "surroundings", Kind::not_applicable));
  in.surroundings->wires = 1;
  in.length = length("10 ft");
  const auto alone = cable_size(in, {});
  ASSERT_TRUE(alone);
  EXPECT_EQ(alone->size, "1");  // table 11-9: No. 2 carries 141 A, No. 1 166 A
  EXPECT_TRUE(says(alone->notes, "No free-air points"));
}

TEST(CableSize, AWarmWireMayNeedOneSizeMore) {
  auto in = run("39 ft", "20 A");
  EXPECT_EQ(cable_size(in, {})->size, "10");
  in.temperature = temperature("80 degC");
  EXPECT_EQ(cable_size(in, {})->size, "8");
}

TEST(CableSize, MetricSizesByDropAlone) {
  auto in = run("50 ft", "20 A");
  in.kind = CableKind::class_5_tinned;
  const auto got = cable_size(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->size, "10");  // 6 mm2: 3.39 mohm/m x 15.24 m x 20 A = 1.033 V
  EXPECT_TRUE(got->advice);
  EXPECT_TRUE(says(got->notes, "copper aircraft wire only"));
  in.kind = CableKind::class_2_aluminium;
  EXPECT_EQ(cable_size(in, {})->size, "10");
}

TEST(CableSize, TellsWhenTheProtectionIsTooSmall) {
  const auto got = cable_size(run("1 ft", "60 A"), {});
  EXPECT_TRUE(says(got->notes, "above the largest breaker"));
}

TEST(CableSize, RefusesWhatItCannotDo) {
  auto in = run("50 ft", "20 A");
  in.kind = CableKind::makers_copper;
  EXPECT_TRUE(complains(cable_size(in, {}).error(), "kind", Kind::not_applicable));
  EXPECT_TRUE(
      complains(cable_size(run("900 ft", "900 A"), {}).error(), "current", Kind::not_found));
  in = run("50 ft", "20 A");
  in.surroundings = crowded();
  in.surroundings->ambient = temperature("160 degC");
  EXPECT_TRUE(complains(cable_size(in, {}).error(), "surroundings/rating", Kind::conflict));
}

}  // namespace
