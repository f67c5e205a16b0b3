// What a stage may hold, and what answers an objection.
#include "staging/rules.hpp"

#include <gtest/gtest.h>

namespace {

using namespace wm::staging;

ChangeFacts change(const std::string& id, Disturbance disturbance) {
  ChangeFacts out;
  out.id = id;
  out.title = id;
  out.position = id;
  out.disturbance = disturbance;
  return out;
}
/// The two halves of one ignition.
StageFacts halves(Disturbance left, Disturbance right) {
  auto a = change("left", left), b = change("right", right);
  a.redundant_with = "right";
  b.redundant_with = "left";
  a.ignition = b.ignition = true;
  return {{a, b}, {}, {}};
}
StageFacts ignition_and_fuel(Disturbance ignition, Disturbance fuel) {
  auto a = change("harness", ignition), b = change("hose", fuel);
  a.ignition = true;
  b.fuel = true;
  return {{a, b}, {}, {}};
}

TEST(StageRules, BothHalvesRenewedNeedASecondPersonOrAnOverride) {
  for (const auto grade : {Disturbance::renewed, Disturbance::redesigned}) {
    const auto found = check(halves(Disturbance::renewed, grade));
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].rule, Rule::pair_renewed);
    EXPECT_EQ(found[0].changes, (std::vector<std::string>{"left", "right"}));
    EXPECT_TRUE(found[0].accepted.independent_inspection);
    EXPECT_TRUE(found[0].accepted.override_in_writing);
    EXPECT_FALSE(found[0].accepted.separate_proof) << "a proof by the same hands is not enough";
    EXPECT_FALSE(found[0].words.empty());
    EXPECT_FALSE(found[0].source.empty());
  }
}

TEST(StageRules, APairNamedByOneHalfOnlyIsStillAPair) {
  auto stage = halves(Disturbance::renewed, Disturbance::renewed);
  stage.changes[0].redundant_with.clear();
  EXPECT_EQ(check(stage).size(), 1U);
}

TEST(StageRules, OpenedHalvesNeedOnlyASeparateProof) {
  for (const auto right : {Disturbance::adjusted, Disturbance::opened, Disturbance::renewed}) {
    const auto found = check(halves(Disturbance::opened, right));
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].rule, Rule::pair_opened);
    EXPECT_TRUE(found[0].accepted.separate_proof);
  }
}

TEST(StageRules, LookingCountsForNothing) {
  EXPECT_TRUE(check(halves(Disturbance::looked_at, Disturbance::redesigned)).empty());
  EXPECT_TRUE(check(ignition_and_fuel(Disturbance::looked_at, Disturbance::renewed)).empty());
}

TEST(StageRules, OneHalfAloneIsNoObjection) {
  auto stage = halves(Disturbance::renewed, Disturbance::renewed);
  stage.changes.pop_back();
  EXPECT_TRUE(check(stage).empty());
}

TEST(StageRules, IgnitionWithFuelCannotBeToldApart) {
  const auto found = check(ignition_and_fuel(Disturbance::renewed, Disturbance::renewed));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].rule, Rule::ignition_with_fuel);
  EXPECT_FALSE(found[0].accepted.separate_proof);
  EXPECT_TRUE(check(ignition_and_fuel(Disturbance::renewed, Disturbance::opened)).empty());
}

TEST(StageRules, RiggingAndMeasuringWaitForTheIsolators) {
  auto hose = change("hose", Disturbance::renewed);
  hose.needs_settled_engine = true;
  StageFacts stage{{hose}, {}, {{"isolators", "New isolators"}}};
  const auto found = check(stage);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].rule, Rule::isolators_first);
  const auto& accepted = found[0].accepted;
  EXPECT_FALSE(accepted.independent_inspection || accepted.separate_proof ||
               accepted.override_in_writing)
      << "an order is changed, not argued with";
}

TEST(StageRules, IsolatorsInTheSameStageAreEarlyEnough) {
  auto hose = change("hose", Disturbance::renewed);
  hose.needs_settled_engine = true;
  auto isolators = change("isolators", Disturbance::renewed);
  isolators.mount_isolators = true;
  EXPECT_TRUE(check({{hose, isolators}, {}, {{"isolators", "New isolators"}}}).empty());
}

TEST(StageRules, WhatComesFirstMustBeHereOrBefore) {
  auto second = change("second", Disturbance::adjusted);
  second.after = {"first"};
  const auto found = check({{second}, {}, {}});
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].rule, Rule::order);
  EXPECT_TRUE(check({{second}, {"first"}, {}}).empty());
  EXPECT_TRUE(check({{second, change("first", Disturbance::adjusted)}, {}, {}}).empty());
}

TEST(StageRules, WhatFliesTogetherStaysTogether) {
  auto one = change("one", Disturbance::adjusted);
  one.together = {"mate"};
  const auto found = check({{one}, {"mate"}, {}});
  ASSERT_EQ(found.size(), 1U) << "a mate in an earlier stage is not together";
  EXPECT_EQ(found[0].rule, Rule::together);
  EXPECT_TRUE(check({{one, change("mate", Disturbance::adjusted)}, {}, {}}).empty());
}

TEST(StageRules, EveryRuleHasItsOwnWord) {
  EXPECT_EQ(word(Rule::pair_renewed), "pair-renewed");
  EXPECT_EQ(word(Rule::pair_opened), "pair-opened");
  EXPECT_EQ(word(Rule::ignition_with_fuel), "ignition-with-fuel");
  EXPECT_EQ(word(Rule::order), "order");
  EXPECT_EQ(word(Rule::together), "together");
  EXPECT_EQ(word(Rule::isolators_first), "isolators-first");
}

TEST(StageRules, AnEmptyStageIsFine) { EXPECT_TRUE(check({}).empty()); }

}  // namespace
