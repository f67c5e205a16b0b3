// Laws of stage plans over seeded inputs: every split tried by a program of its own, every order
// of looking, and the two searches against each other.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "staging/detail/plan_input.hpp"
#include "staging/detail/plan_search.hpp"
#include "staging/stage_plan.hpp"
#include "statistics/draws.hpp"
#include "support/brute_plan.hpp"

namespace {

using namespace wm;
using namespace wm::staging;
namespace inner = wm::staging::detail;
using statistics::Draws;

EnteredHours h(double hours) { return {quantity::hours(hours), 0.0, {}}; }

PlannedChange random_change(Draws& draws, std::size_t i) {
  PlannedChange c;
  c.name = std::to_string(i);
  const double kind = draws.uniform();
  c.fault_chance = {kind < .05 ? 0.0 : (kind < .08 ? 1.0 : draws.uniform(0.0, 0.4))};
  c.check_cost = draws.uniform() < .1 ? 0.0 : draws.uniform(0, 200);
  c.hours = h(0.5 * static_cast<double>(draws.index(8)));
  const char* const words[] = {"a", "b", "c"};
  for (const auto* w : words) {
    if (draws.uniform() < .35) c.symptoms.emplace_back(w);
    if (draws.uniform() < .2) c.areas.emplace_back(w);
  }
  if (draws.uniform() < .3) c.waiting_cost = draws.uniform(0, 10);
  if (draws.uniform() < .4) c.found_per_hour = draws.uniform(0.1, 3);
  if (draws.uniform() < .3) c.ground_hours = h(draws.uniform(0, 1));
  return c;
}

void random_rules(Draws& draws, StagePlanInput& in) {
  const auto any = [&] { return std::to_string(draws.index(in.changes.size())); };
  for (auto& c : in.changes) {
    if (draws.uniform() < .12) c.after.push_back(any());
    if (draws.uniform() < .12) c.not_later_than.push_back(any());
    if (draws.uniform() < .06) c.together.push_back(any());
    if (draws.uniform() < .25) {
      const auto other = any();
      if (other != c.name) in.never.push_back({c.name, other, ""});
    }
    if (draws.uniform() < .2) in.harms.push_back({c.name, any(), draws.uniform(0, 500)});
  }
  std::erase_if(in.harms, [](const HarmOfBoth& x) { return x.one == x.other; });
  if (draws.uniform() < .4) in.risk_cap = quantity::Fraction{draws.uniform(.3, .8)};
  if (draws.uniform() < .4) in.size_cap = 1 + static_cast<std::int64_t>(draws.index(4));
}

StagePlanInput random_plan(Draws& draws, std::size_t most) {
  StagePlanInput in;
  const std::size_t n = 1 + draws.index(most);
  for (std::size_t i = 0; i < n; ++i) in.changes.push_back(random_change(draws, i));
  in.stage_cost = draws.uniform(0, 60);
  in.hour_cost = draws.uniform(0, 60);
  in.ground_hour_cost = draws.uniform(0, 60);
  in.confirmation = h(draws.uniform(0, 2));
  in.escape_cost = draws.uniform() < .5 ? draws.uniform(0, 1500) : 0.0;
  in.ground_stages = draws.uniform() < .3;
  in.areas = {{"a", draws.uniform(0, 50)}, {"b", draws.uniform(0, 50)}};
  if (draws.uniform() < .3) in.other_causes.push_back({"a", {draws.uniform(0, .1)}, 90});
  const double rule = draws.uniform();
  if (rule < .2) {
    in.test_hours = TestHours::the_same_for_all;
    in.same_hours = h(4);
  } else if (rule < .4) {
    in.test_hours = TestHours::cheapest;
    in.hours_from = h(.5);
    in.hours_to = h(5);
    in.hours_step = h(.5);
  }
  random_rules(draws, in);
  return in;
}

TEST(PlanLaws, FiveHundredPlansAgainstEverySplit) {
  Draws draws(41);
  int planned = 0, refused = 0;
  for (int i = 0; i < 500; ++i) {
    // Seven changes have 47293 ordered splits: now and then is enough.
    const auto in = random_plan(draws, i % 25 == 0 ? 7 : 5);
    test::BrutePlan brute(in);
    brute.run();
    const auto got = stage_plan(in, {});
    if (brute.feasible == 0) {
      ASSERT_FALSE(got) << i;
      ASSERT_EQ(got.error().front().kind, Kind::conflict);
      ++refused;
      continue;
    }
    ++planned;
    ASSERT_TRUE(got) << i << ": " << got.error().front().what;
    ASSERT_TRUE(got->proven);
    ASSERT_NEAR(got->cost, brute.best, 1e-6 * std::max(1.0, brute.best)) << i;
    if (std::isfinite(brute.runner_up)) {
      ASSERT_TRUE(got->runner_up_cost) << i;
      ASSERT_NEAR(*got->runner_up_cost, brute.runner_up, 1e-6 * std::max(1.0, brute.runner_up))
          << i;
    } else {
      ASSERT_FALSE(got->runner_up_cost) << i;
    }
  }
  EXPECT_GT(planned, 300);
  EXPECT_GT(refused, 20);
}

TEST(PlanLaws, BranchAndBoundFindsTheSameAndItsBoundHolds) {
  Draws draws(42);
  for (int i = 0; i < 300; ++i) {
    const auto task = inner::read_plan(random_plan(draws, 8));
    if (!task) continue;
    const inner::StageCosts costs(task->model);
    const auto units = inner::units_of(task->model.suspects, task->model.changes, task->rules);
    const auto exact = inner::over_subsets({costs, units});
    inner::Search search{costs, units};
    const auto bound = inner::by_bound(search);
    ASSERT_TRUE(bound.proven()) << i;
    ASSERT_NEAR(bound.cost, exact.cost, 1e-7 * std::max(1.0, exact.cost)) << i;
    search.nodes = 1 + draws.index(40);
    const auto early = inner::by_bound(search);
    ASSERT_TRUE(early.found());
    ASSERT_LE(early.at_least, exact.cost * (1 + 1e-9) + 1e-9) << i;
    ASSERT_GE(early.cost, exact.cost - 1e-7 * std::max(1.0, exact.cost)) << i;
    ASSERT_NEAR(inner::cost_of(costs, early.stages), early.cost, 1e-7 * std::max(1.0, early.cost));
  }
}

/// Expected cost of looking in one order, by every state of the faults.
double in_order(const std::vector<inner::Suspect>& suspects, const std::vector<std::size_t>& order,
                double confirm) {
  double sum = 0.0;
  for (unsigned state = 1; state < (1U << order.size()); ++state) {
    double chance = 1.0, cost = 0.0, waiting = 0.0;
    for (std::size_t k = 0; k < order.size(); ++k) {
      const auto& s = suspects[order[k]];
      const bool faulty = (state >> k & 1U) != 0;
      chance *= faulty ? s.chance : 1.0 - s.chance;
      waiting += s.check_cost;  // paid once a fault at or behind it is there
      if (!faulty) continue;
      cost += waiting + confirm;
      waiting = 0.0;
    }
    sum += chance * cost;
  }
  return sum;
}

TEST(PlanLaws, NoOrderOfLookingIsBetter) {
  Draws draws(43);
  for (int i = 0; i < 200; ++i) {
    StagePlanInput in;
    const std::size_t n = 1 + draws.index(6);
    for (std::size_t k = 0; k < n; ++k) {
      in.changes.push_back(random_change(draws, k));
      in.changes.back().symptoms = {"a"};
    }
    in.hour_cost = 30;
    const auto task = *inner::read_plan(in);
    const inner::StageCosts costs(task.model);
    std::vector<std::size_t> order(n);
    for (std::size_t k = 0; k < n; ++k) order[k] = k;
    double least = inner::k_never;
    do {
      least = std::min(least, in_order(task.model.suspects, order, 30));
    } while (std::next_permutation(order.begin(), order.end()));
    ASSERT_NEAR(costs.untangle(costs.kinds((1U << n) - 1).front()), least, 1e-9);
  }
}

// The entanglement penalty of joining two classmates: t1 p2 (1 - p1).
TEST(PlanLaws, JoiningTwoPaysWhenTheSharedCostExceedsTheEntanglement) {
  Draws draws(44);
  for (int i = 0; i < 200; ++i) {
    StagePlanInput in;
    for (std::size_t k = 0; k < 2; ++k) {
      PlannedChange c;
      c.name = std::to_string(k);
      c.fault_chance = {draws.uniform(.05, .5)};
      c.check_cost = draws.uniform(10, 400);
      c.hours = h(draws.uniform(0, 3));
      c.symptoms = {"a"};
      in.changes.push_back(c);
    }
    in.stage_cost = draws.uniform(0, 30);
    in.hour_cost = draws.uniform(0, 30);
    const auto odds = [](const PlannedChange& c) {
      return c.check_cost * (1 - c.fault_chance.si) / c.fault_chance.si;
    };
    const bool swapped = odds(in.changes[1]) < odds(in.changes[0]);
    const auto& first = in.changes[swapped ? 1 : 0];
    const auto& second = in.changes[swapped ? 0 : 1];
    const double saved =
        in.stage_cost + in.hour_cost * std::min(first.hours->value, second.hours->value).si / 3600;
    const double penalty = first.check_cost * second.fault_chance.si * (1 - first.fault_chance.si);
    if (std::abs(saved - penalty) < 1e-6) continue;
    ASSERT_EQ(stage_plan(in, {})->stages.size(), saved > penalty ? 1U : 2U);
  }
}

TEST(PlanLaws, AllCostsTimesTenIsTheSamePlan) {
  Draws draws(45);
  for (int i = 0; i < 100; ++i) {
    auto in = random_plan(draws, 5);
    const auto once = stage_plan(in, {});
    if (!once) continue;
    for (auto& c : in.changes) {
      c.check_cost *= 10;
      c.waiting_cost *= 10;
    }
    for (auto& a : in.areas) a.opening_cost *= 10;
    for (auto& x : in.harms) x.harm *= 10;
    for (auto& o : in.other_causes) o.check_cost *= 10;
    in.stage_cost *= 10;
    in.hour_cost *= 10;
    in.ground_hour_cost *= 10;
    in.escape_cost *= 10;
    ASSERT_NEAR(stage_plan(in, {})->cost, 10 * once->cost, 1e-6 * std::max(1.0, once->cost));
  }
}

TEST(PlanLaws, ARuleNeverMakesAPlanCheaper) {
  Draws draws(46);
  for (int i = 0; i < 100; ++i) {
    const auto got = stage_plan(random_plan(draws, 5), {});
    if (!got) continue;
    for (const auto& p : got->prices) ASSERT_GE(p.price.value_or(0.0), 0.0);
    ASSERT_GE(got->one_by_one_cost.value_or(got->cost), got->cost - 1e-6);
  }
}

}  // namespace
