// Source:    statistics notes, section 4.3: every ordered split of each case enumerated outside
//            the project (R 4.2.2 and Python 3.11), the dynamic programme agreeing.
// Tolerance: half a unit of the last printed digit. Optima are often not unique, so cost, number
//            of optima and feasibility are compared, not the split.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "staging/detail/plan_input.hpp"
#include "staging/detail/plan_search.hpp"
#include "staging/stage_plan.hpp"
#include "support/brute_plan.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::staging;
namespace inner = wm::staging::detail;

const char* const k_source = "statistics notes, 4.3 (enumerated)";
const char* const k_why = "half a unit of the last printed digit";

EnteredHours h(double hours) { return {quantity::hours(hours), 0.0, {}}; }

struct Row {
  double p, t, hours;
  const char* symptom;
};

StagePlanInput plan(const std::vector<Row>& rows, double stage_cost, double hour_cost) {
  StagePlanInput in;
  for (const Row& r : rows) {
    PlannedChange c;
    c.name = std::to_string(in.changes.size() + 1);
    c.fault_chance = {r.p};
    c.check_cost = r.t;
    if (r.hours >= 0.0) c.hours = h(r.hours);
    c.symptoms = {r.symptom};
    in.changes.push_back(c);
  }
  in.stage_cost = stage_cost;
  in.hour_cost = hour_cost;
  return in;
}

void never(StagePlanInput& in, const std::vector<std::pair<int, int>>& pairs) {
  for (const auto& [a, b] : pairs) in.never.push_back({std::to_string(a), std::to_string(b), ""});
}

StagePlanInput s1() { return plan({{.1, 60, 1, "A"}, {.1, 60, 1, "A"}, {.1, 60, 1, "A"}}, 10, 20); }
StagePlanInput s1b() {
  return plan({{.2, 300, 1, "A"}, {.2, 300, 1, "A"}, {.2, 300, 1, "A"}}, 10, 20);
}
StagePlanInput s2() {
  return plan({{.05, 40, 1, "A"}, {.15, 90, 2, "A"}, {.10, 60, 1, "B"}, {.30, 120, 3, "A"}}, 25,
              30);
}
StagePlanInput s3() {
  auto in = plan({{.08, 80, 2, "ignition"},
                  {.08, 80, 2, "ignition"},
                  {.05, 60, 1.5, "fuel"},
                  {.04, 50, 3, "oil"},
                  {.10, 40, .5, "electrical"},
                  {.12, 70, 5, "electrical"}},
                 35, 60);
  never(in, {{1, 2}, {1, 3}, {2, 3}});
  return in;
}
StagePlanInput s4() {
  auto in =
      plan({{.1, 50, -1, "A"}, {.2, 80, -1, "A"}, {.05, 30, -1, "B"}, {.15, 100, -1, "B"}}, 20, 40);
  const double rates[] = {1.5, .5, 2, .8};
  for (std::size_t i = 0; i < 4; ++i) in.changes[i].found_per_hour = rates[i];
  in.escape_cost = 1500;
  return in;
}
StagePlanInput s5() {
  auto in = plan({{.05, 30, 1, "A"},
                  {.10, 45, 1, "A"},
                  {.15, 60, 2, "A"},
                  {.20, 90, 2, "B"},
                  {.08, 20, .5, "B"},
                  {.12, 75, 3, "B"},
                  {.03, 15, .5, "C"},
                  {.25, 120, 4, "C"}},
                 30, 45);
  in.changes[7].after = {"7"};
  in.changes[2].after = {"1"};
  never(in, {{4, 6}, {3, 8}});
  in.risk_cap = quantity::Fraction{.4};
  return in;
}
StagePlanInput s6() {
  auto in = plan({{.08, 80, 2, "ignition"},
                  {.08, 80, 2, "ignition"},
                  {.05, 60, 1.5, "fuel"},
                  {.06, 50, 3, "oil"},
                  {.04, 45, 3, "oil"},
                  {.10, 40, .5, "electrical"},
                  {.12, 70, 5, "electrical"},
                  {.03, 25, .5, "air"},
                  {.07, 55, 1, "air"},
                  {.15, 110, 4, "electrical"}},
                 35, 60);
  never(in, {{1, 2}, {1, 3}, {2, 3}, {7, 10}});
  in.risk_cap = quantity::Fraction{.30};
  in.size_cap = 4;
  return in;
}

/// The same problem on the search itself: cost, and optima with each order counted.
inner::Plan ordered(const StagePlanInput& in) {
  const auto task = *inner::read_plan(in);
  const inner::StageCosts costs(task.model);
  const auto units = inner::units_of(task.model.suspects, task.model.changes, task.rules);
  inner::Search search{costs, units};
  search.all_orders = true;
  return inner::over_subsets(search);
}

void expect(const char* id, const StagePlanInput& in, double cost, const char* printed,
            double optima, double tolerance = 5e-4) {
  const auto got = stage_plan(in, {});
  ASSERT_TRUE(got) << id << ": " << got.error().front().what;
  test::check({"stage-plan", fmt::format("{} cost", id), k_source, printed, cost, got->cost,
               tolerance, k_why});
  EXPECT_TRUE(got->proven) << id;
  if (optima <= 0) return;
  test::check({"stage-plan", fmt::format("{} optima, each order counted", id), k_source,
               fmt::format("{}", optima), optima, ordered(in).optima, 0.0, "a count"});
}

void feasible(const char* id, const StagePlanInput& in, int all, int kept) {
  test::BrutePlan brute(in);
  brute.run();
  test::check({"stage-plan", fmt::format("{} ordered splits", id), k_source, fmt::format("{}", all),
               double(all), double(brute.splits), 0.0, "a count"});
  test::check({"stage-plan", fmt::format("{} splits that keep the rules", id), k_source,
               fmt::format("{}", kept), double(kept), double(brute.feasible), 0.0, "a count"});
}

void singles(const char* id, const StagePlanInput& in, double cost, const char* printed) {
  test::check({"stage-plan", fmt::format("{} one by one", id), k_source, printed, cost,
               stage_plan(in, {})->one_by_one_cost.value_or(-1), 5e-4, k_why});
}

TEST(PlanCases, S1ThreeAlike) {
  expect("S1", s1(), 69.66, "69.66", 1);
  singles("S1", s1(), 114, "114");
  feasible("S1", s1(), 13, 13);
  expect("S1b dear checks", s1b(), 282, "282", 6);
  test::check({"stage-plan", "S1b all at once", k_source, "356.4", 356.4,
               *stage_plan(s1b(), {})->all_at_once_cost, 5e-4, k_why});
  auto apart = s1b();
  apart.changes[1].symptoms = {"B"};
  apart.changes[2].symptoms = {"C"};
  expect("S1c three symptoms", apart, 222, "222", 1);
}

TEST(PlanCases, S2FourChanges) {
  expect("S2", s2(), 210.495, "210.495", 1);
  singles("S2", s2(), 385.5, "385.5");
  const auto got = stage_plan(s2(), {});
  test::check_text("stage-plan", "S2 where to look first", k_source, "4 2 1",
                   got->stages[0].look_first[0].look_at[0] + " " +
                       got->stages[0].look_first[0].look_at[1] + " " +
                       got->stages[0].look_first[0].look_at[2]);
  auto b = s2();
  never(b, {{2, 4}});
  expect("S2b", b, 279.325, "279.325", 4);
  feasible("S2b", b, 75, 62);
  auto c = s2();
  c.changes[3].fault_chance = {.25};
  c.risk_cap = quantity::Fraction{.25};
  expect("S2c", c, 323, "323", 12);
  singles("S2c", c, 378, "378");
  feasible("S2c", c, 75, 42);
}

TEST(PlanCases, S3SixChanges) {
  expect("S3", s3(), 673.4, "673.4", 24);
  singles("S3", s3(), 1108.4, "1108.4");
  feasible("S3", s3(), 4683, 3210);
  auto free = s3();
  free.never.clear();
  expect("S3 without pairs", free, 403.608, "403.608", 0);
  auto b = s3();
  b.changes[4].after = {"6"};
  expect("S3b", b, 673.4, "673.4", 12);
  feasible("S3b", b, 4683, 1434);
  auto c = s3();
  c.changes[2].together = {"4"};
  expect("S3c", c, 703.4, "703.4", 12);
  feasible("S3c", c, 4683, 342);
  auto d = s3();
  d.risk_cap = quantity::Fraction{.18};
  expect("S3d", d, 763.4, "763.4", 12);
  feasible("S3d", d, 4683, 2172);
  auto e = s3();
  e.changes[2].waiting_cost = 8;
  expect("S3e", e, 685.4, "685.4", 8);
  const auto first = stage_plan(e, {})->stages.front().changes;
  EXPECT_NE(std::find(first.begin(), first.end(), "3"), first.end());
}

TEST(PlanCases, S4EscapesAndHours) {
  auto fixed = s4();
  fixed.test_hours = TestHours::the_same_for_all;
  fixed.same_hours = h(2);
  expect("S4", fixed, 317.686898, "317.686898", 1, 5e-7);
  test::check({"stage-plan", "S4 next", k_source, "408.551160", 408.551160,
               *stage_plan(fixed, {})->runner_up_cost, 5e-7, k_why});
  test::check({"stage-plan", "S4 one by one", k_source, "608.551160", 608.551160,
               *stage_plan(fixed, {})->one_by_one_cost, 5e-7, k_why});
  auto free = s4();
  free.test_hours = TestHours::cheapest;
  free.hours_from = free.hours_step = h(.25);
  free.hours_to = h(10);
  expect("S4b", free, 288.805059, "288.805059", 1, 5e-7);
  const auto got = stage_plan(free, {});
  test::check({"stage-plan", "S4b hours", k_source, "3.25 h", 3.25, got->stages[0].hours.si / 3600,
               1e-9, "a step of the grid"});
  test::check({"stage-plan", "S4b next", k_source, "350.693576", 350.693576, *got->runner_up_cost,
               5e-7, k_why});
  test::check({"stage-plan", "S4b one by one", k_source, "554.296263", 554.296263,
               *got->one_by_one_cost, 1e-6, "the source adds four rounded figures"});
  const auto task = *inner::read_plan(free);
  const inner::StageCosts costs(task.model);
  const struct {
    inner::Set set;
    double cost, hours;
  } rows[] = {{1, 100.461353, 1.00}, {2, 223.075324, 2.50}, {4, 69.453806, .75},
              {8, 161.305781, 1.75}, {3, 241.757339, 2.75}, {12, 170.190810, 1.75}};
  for (const auto& r : rows) {
    const auto best = costs.best(r.set, 0.0);
    test::check({"stage-plan", fmt::format("S4b stage {:b}", r.set), k_source,
                 fmt::format("{}", r.cost), r.cost, best.cost, 5e-7, k_why});
    EXPECT_NEAR(best.hours, r.hours, 1e-9);
  }
}

TEST(PlanCases, S5EightChanges) {
  expect("S5", s5(), 505.75, "505.75", 1);
  singles("S5", s5(), 988.15, "988.15");
  const auto got = stage_plan(s5(), {});
  EXPECT_EQ(got->stages[0].changes, (std::vector<std::string>{"5", "7"}));
  EXPECT_EQ(got->stages[1].changes, (std::vector<std::string>{"1", "6", "8"}));
  const double printed[] = {59.5, 269.4, 176.85};
  for (std::size_t k = 0; k < 3; ++k) {
    test::check({"stage-plan", fmt::format("S5 stage {}", k + 1), k_source,
                 fmt::format("{}", printed[k]), printed[k], got->stages[k].cost, 5e-4, k_why});
  }
}

TEST(PlanCases, S6TenChanges) {
  const auto got = stage_plan(s6(), {});
  ASSERT_TRUE(got);
  test::check({"stage-plan", "S6 cost", k_source, "835.9", 835.9, got->cost, 5e-4, k_why});
  singles("S6", s6(), 1800.9, "1800.9");
  const auto task = *inner::read_plan(s6());
  const inner::StageCosts costs(task.model);
  const auto units = inner::units_of(task.model.suspects, task.model.changes, task.rules);
  test::check({"stage-plan", "S6 optima, order not counted", k_source, "16", 16,
               inner::over_subsets({costs, units}).optima, 0.0, "a count"});
}

TEST(PlanCases, S7PairAndS8AnotherCause) {
  const auto in = plan({{.2, 100, 2, "A"}, {.1, 80, 3, "A"}}, 30, 40);
  expect("S7", in, 198, "198", 1);
  singles("S7", in, 300, "300");
  EXPECT_EQ(stage_plan(in, {})->stages[0].look_first[0].look_at[0], "1");

  auto leak = plan({{.10, 60, 0, "A"}, {.15, 90, 0, "A"}, {.05, 30, 0, "A"}}, 0, 20);
  const auto untangle = [](const StagePlanInput& p) {
    const auto task = *inner::read_plan(p);
    const inner::StageCosts costs(task.model);
    return costs.untangle(costs.kinds(0b111).front());
  };
  test::check(
      {"stage-plan", "S8 search", k_source, "40.7925", 40.7925, untangle(leak), 5e-5, k_why});
  leak.other_causes = {{"A", {.02}, 200}};
  test::check({"stage-plan", "S8 search with another cause", k_source, "48.09665", 48.09665,
               untangle(leak), 5e-6, k_why});
}

// Section 4.1: hours beyond which one more costs more than the fault it would show.
TEST(PlanCases, CheapestHoursOfOneChange) {
  auto in = plan({{.2, 0, -1, "A"}}, 0, 40);
  in.confirmation = h(0);
  in.changes[0].found_per_hour = .5;
  in.escape_cost = 1500;
  in.test_hours = TestHours::cheapest;
  in.hours_from = h(2);
  in.hours_to = h(3);
  in.hours_step = EnteredHours{quantity::seconds(10), 0.0, {}};
  test::check({"stage-plan", "cheapest hours", "statistics notes, 4.1: ln(c p rate / c_h) / rate",
               "2.643512 h", 2.643512, stage_plan(in, {})->stages[0].hours.si / 3600,
               10.0 / 3600 / 2 + 1e-6, "half a step of the grid"});
}

}  // namespace
