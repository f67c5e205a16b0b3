#include "staging/stage_plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "staging/detail/plan_input.hpp"
#include "staging/detail/plan_search.hpp"

namespace {

using namespace wm;
using namespace wm::staging;
namespace inner = wm::staging::detail;

EnteredHours h(double hours) { return {quantity::hours(hours), 0.0, {}}; }

StagePlanInput changes(int count, double chance = .1) {
  StagePlanInput in;
  for (int i = 0; i < count; ++i) {
    PlannedChange c;
    c.name = std::string(1, static_cast<char>('a' + i));
    c.fault_chance = {chance};
    c.check_cost = 50 + i;
    c.hours = h(1 + i % 3);
    c.symptoms = {i % 2 == 0 ? "even" : "odd"};
    in.changes.push_back(c);
  }
  in.stage_cost = 20;
  in.hour_cost = 30;
  return in;
}

const Problem& refusal(const Checked<StagePlanAnswer>& got) {
  EXPECT_FALSE(got);
  return got.error().front();
}
bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST(StagePlan, NothingToPlanIsMissing) {
  EXPECT_EQ(refusal(stage_plan({}, {})).kind, Kind::missing);
}

TEST(StagePlan, OneChangeIsOneStage) {
  const auto got = stage_plan(changes(1), {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->stages.size(), 1U);
  EXPECT_FALSE(got->runner_up_cost);
  EXPECT_DOUBLE_EQ(*got->one_by_one_cost, got->cost);
}

TEST(StagePlan, AChangeThatCannotGoWrongIsLookedAtLast) {
  auto in = changes(3);
  for (auto& c : in.changes) c.symptoms = {"one"};
  in.changes[0].fault_chance = {0};
  in.changes[2].fault_chance = {1};
  const auto got = stage_plan(in, {});
  ASSERT_TRUE(got);
  ASSERT_EQ(got->stages.size(), 1U);
  EXPECT_EQ(got->stages[0].look_first[0].look_at, (std::vector<std::string>{"c", "b", "a"}));
  EXPECT_DOUBLE_EQ(got->stages[0].risk.si, 1.0);
}

TEST(StagePlan, NothingCanGoWrongAndEverythingDoes) {
  EXPECT_DOUBLE_EQ(stage_plan(changes(3, 0.0), {})->cost, 20 + 3 * 30);
  const auto sure = stage_plan(changes(3, 1.0), {});
  ASSERT_TRUE(sure);
  EXPECT_TRUE(sure->proven);
}

TEST(StagePlan, NamesTheCircleOfAnOrder) {
  auto in = changes(4);
  in.changes[0].after = {"b"};
  in.changes[1].after = {"c"};
  in.changes[2].not_later_than = {"d"};
  in.changes[2].after = {"a"};
  const auto p = refusal(stage_plan(in, {}));
  EXPECT_EQ(p.kind, Kind::conflict);
  EXPECT_TRUE(says(p.what, "the order runs in a circle"));
  for (const auto* part : {"`a` after `b`", "`b` after `c`", "`c` after `a`"}) {
    EXPECT_TRUE(says(p.what, part)) << p.what;
  }
  EXPECT_FALSE(says(p.what, "`d`")) << p.what;
}

TEST(StagePlan, TwoThatMayNotBeLaterThanEachOtherShareAStage) {
  auto in = changes(2);
  in.changes[0].not_later_than = {"b"};
  in.changes[1].not_later_than = {"a"};
  in.hour_cost = 0;
  in.stage_cost = 0;
  in.changes[1].symptoms = in.changes[0].symptoms;
  EXPECT_EQ(stage_plan(in, {})->stages.size(), 1U);
  in.never = {{"a", "b", "they look alike"}};
  const auto p = refusal(stage_plan(in, {}));
  EXPECT_TRUE(says(p.what, "they look alike")) << p.what;
}

TEST(StagePlan, NamesOnlyTheRulesThatClash) {
  auto in = changes(5);
  in.changes[0].together = {"b"};
  in.changes[1].together = {"c"};
  in.changes[3].after = {"a"};
  in.never = {{"a", "c", ""}, {"d", "e", ""}};
  const auto p = refusal(stage_plan(in, {}));
  for (const auto* part :
       {"`a` together with `b`", "`b` together with `c`", "`a` never together with `c`"}) {
    EXPECT_TRUE(says(p.what, part)) << p.what;
  }
  EXPECT_FALSE(says(p.what, "`d`")) << p.what;
}

TEST(StagePlan, ACapThatOneChangeBreaksIsNamed) {
  auto in = changes(3);
  in.changes[1].fault_chance = {.4};
  in.risk_cap = quantity::Fraction{.3};
  const auto p = refusal(stage_plan(in, {}));
  EXPECT_EQ(p.path, "risk_cap");
  EXPECT_TRUE(says(p.what, "`b` alone has 40 %")) << p.what;
}

TEST(StagePlan, ASizeCapBelowAGroupIsNamed) {
  auto in = changes(3);
  in.changes[0].together = {"b", "c"};
  in.size_cap = 2;
  EXPECT_TRUE(says(refusal(stage_plan(in, {})).what, "at most 2 changes"));
}

TEST(StagePlan, UnknownAndDoubleNamesAreTold) {
  auto in = changes(2);
  in.changes[0].after = {"z"};
  EXPECT_EQ(refusal(stage_plan(in, {})).path, "changes/0/after/0");
  EXPECT_EQ(refusal(stage_plan(in, {})).kind, Kind::not_found);
  in = changes(2);
  in.changes[1].name = "a";
  EXPECT_EQ(refusal(stage_plan(in, {})).kind, Kind::duplicate);
}

TEST(StagePlan, HoursMustBeSaidAndFit) {
  auto in = changes(2);
  in.changes[1].hours.reset();
  EXPECT_EQ(refusal(stage_plan(in, {})).path, "changes/1/hours");
  in = changes(3);
  in.test_hours = TestHours::the_same_for_all;
  EXPECT_EQ(refusal(stage_plan(in, {})).path, "same_hours");
  in.same_hours = h(2);
  EXPECT_EQ(refusal(stage_plan(in, {})).kind, Kind::conflict);
  in.test_hours = TestHours::cheapest;
  in.hours_from = h(4);
  in.hours_to = h(1);
  EXPECT_EQ(refusal(stage_plan(in, {})).path, "hours_to");
}

TEST(StagePlan, EveryRuleHasItsPrice) {
  auto in = changes(4);
  in.never = {{"a", "b", "pair"}};
  in.size_cap = 2;
  const auto got = stage_plan(in, {});
  ASSERT_TRUE(got);
  ASSERT_EQ(got->prices.size(), 2U);
  for (const auto& p : got->prices) EXPECT_TRUE(p.price);
  EXPECT_EQ(got->prices[0].reason, "pair");
  in.size_cap.reset();
  EXPECT_NEAR(got->cost - stage_plan(in, {})->cost, *got->prices[1].price, 1e-9);
}

TEST(StagePlan, TellsATieAndWhatTheGuessesDo) {
  auto in = changes(2);
  in.changes[0].symptoms = in.changes[1].symptoms = {"same"};
  in.changes[1].check_cost = in.changes[0].check_cost = 50;
  in.changes[0].hours = in.changes[1].hours = h(0);
  in.stage_cost = 50 * .1 * .9;  // exactly the entanglement
  auto got = stage_plan(in, {});
  EXPECT_TRUE(got->tie);
  EXPECT_NEAR(*got->runner_up_cost, got->cost, 1e-9);
  in.stage_cost = 50 * .2 * .8 * .95;  // together now, apart with doubled chances
  got = stage_plan(in, {});
  EXPECT_EQ(got->stages.size(), 1U);
  ASSERT_EQ(got->sensitivity.size(), 2U);
  EXPECT_TRUE(got->sensitivity[0].same_plan);
  EXPECT_FALSE(got->sensitivity[1].same_plan);
  EXPECT_TRUE(got->tie);
  in.stage_cost = 1000;
  EXPECT_FALSE(stage_plan(in, {})->tie);
}

TEST(StagePlan, ADoubledChanceMayBreakTheCap) {
  auto in = changes(2);
  in.risk_cap = quantity::Fraction{.15};
  const auto got = stage_plan(in, {});
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->sensitivity[1].best_cost);
  EXPECT_TRUE(says(got->sensitivity[1].in_words, "no plan keeps the rules"));
}

TEST(StagePlan, AGroundStageIsTakenWhereItIsCheaper) {
  auto in = changes(2);
  in.changes[0].ground_hours = in.changes[1].ground_hours = h(.5);
  in.ground_hour_cost = 10;
  EXPECT_FALSE(stage_plan(in, {})->stages[0].on_the_ground);
  in.ground_stages = true;
  EXPECT_TRUE(stage_plan(in, {})->stages[0].on_the_ground);
  in.changes[1].ground_hours.reset();
  const auto mixed = stage_plan(in, {});
  for (const auto& s : mixed->stages) {
    if (s.on_the_ground) {
      EXPECT_EQ(s.changes, std::vector<std::string>{"a"});
    }
  }
}

TEST(StagePlan, ThirtyChangesComeBackWithAProvenBound) {
  auto in = changes(26);
  for (int i = 0; i < 4; ++i) {
    auto c = in.changes[static_cast<std::size_t>(i)];
    c.name += c.name;
    in.changes.push_back(c);
  }
  in.size_cap = 5;
  int asked = 0;
  describe::Context context;
  context.progress = [&](double /*share*/) { return ++asked < 40; };
  const auto got = stage_plan(in, context);
  ASSERT_TRUE(got);
  EXPECT_GT(got->at_least, 0.0);
  EXPECT_LE(got->at_least, got->cost);
  EXPECT_GE(got->gap.si, 0.0);
  EXPECT_LT(got->gap.si, 0.5);
  std::size_t placed = 0;
  for (const auto& s : got->stages) {
    placed += s.changes.size();
    EXPECT_LE(s.changes.size(), 5U);
  }
  EXPECT_EQ(placed, 30U);
}

TEST(StagePlan, TheUserCanStopIt) {
  describe::Context context;
  context.progress = [](double /*share*/) { return false; };
  EXPECT_EQ(refusal(stage_plan(changes(12), context)).kind, Kind::stopped);
}

TEST(StagePlan, TheWorkingAddsUp) {
  const auto got = stage_plan(changes(3), {});
  double sum = 0;
  for (const auto& s : got->stages) sum += s.cost;
  EXPECT_NEAR(sum, got->cost, 1e-9);
  EXPECT_GE(got->working.size(), 3U);
}

}  // namespace
