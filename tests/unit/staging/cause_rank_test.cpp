#include "staging/cause_rank.hpp"

#include <gtest/gtest.h>

namespace {

using namespace wm;
using namespace wm::staging;

CauseRankInput sample() {
  CauseRankInput in;
  in.symptoms = {{"rough", SymptomState::seen, {.01}}, {"smell", SymptomState::not_seen, {.01}}};
  CauseSuspect a, b;
  a.name = "lead";
  a.disturbance = Disturbance::renewed;
  a.look_cost = 50;
  a.symptoms = {{"rough", {.7}}};
  b.name = "hose";
  b.kind = SuspectKind::unchanged;
  b.fault_chance = quantity::Fraction{.02};
  b.look_cost = 20;
  b.symptoms = {{"rough", {.2}}, {"smell", {.9}}};
  in.suspects = {a, b};
  return in;
}
const Problem& refusal(const Checked<CauseRankAnswer>& got) {
  EXPECT_FALSE(got);
  return got.error().front();
}
bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST(CauseRank, TheOneThatExplainsMoreComesFirstAndSaysWhy) {
  const auto got = cause_rank(sample(), {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->ranking[0].name, "lead");
  EXPECT_TRUE(says(got->ranking[0].in_words, "can bring about 1 of 1 seen"));
  EXPECT_TRUE(says(got->ranking[1].in_words, "against it: 1 not seen"));
  EXPECT_TRUE(says(got->look_next, "lead"));
}

TEST(CauseRank, TheGradeOfDisturbanceScalesTheOdds) {
  auto in = sample();
  const double renewed = cause_rank(in, {})->ranking[0].before.si;
  EXPECT_NEAR(renewed, .1, 1e-12);
  in.suspects[0].disturbance = Disturbance::looked_at;
  const auto got = cause_rank(in, {});
  for (const auto& r : got->ranking) {
    if (r.name != "lead") continue;
    EXPECT_NEAR(r.before.si / (1 - r.before.si), .1 * .1 / .9, 1e-12);
  }
}

TEST(CauseRank, ACheckThatCannotErrClearsItsSuspect) {
  auto in = sample();
  in.checks = {{"lead", false, {1.0}, {0.0}}};
  auto got = cause_rank(in, {});
  EXPECT_DOUBLE_EQ(got->ranking.back().now.si, 0.0);
  in.checks[0].fault_found = true;
  got = cause_rank(in, {});
  EXPECT_DOUBLE_EQ(got->ranking.front().now.si, 1.0);
  in.checks.push_back({"lead", false, {1.0}, {0.0}});
  EXPECT_EQ(refusal(cause_rank(in, {})).kind, Kind::conflict);
}

TEST(CauseRank, WhatCannotBeExplainedIsAConflict) {
  auto in = sample();
  in.symptoms[0].from_elsewhere = {0};
  for (auto& s : in.suspects) s.symptoms.clear();
  EXPECT_EQ(refusal(cause_rank(in, {})).kind, Kind::conflict);
}

TEST(CauseRank, RareEvidenceIsSaidToBeRare) {
  auto in = sample();
  in.symptoms[0].from_elsewhere = {1e-6};
  for (auto& s : in.suspects) s.symptoms.clear();
  const auto got = cause_rank(in, {});
  EXPECT_TRUE(says(got->notes[0], "missing from the list"));
  EXPECT_DOUBLE_EQ(got->something_else.si, 1.0);
}

TEST(CauseRank, FieldsThatAreMissingOrWrongAreNamed) {
  EXPECT_EQ(refusal(cause_rank({}, {})).path, "suspects");
  auto in = sample();
  in.suspects[1].fault_chance.reset();
  EXPECT_EQ(refusal(cause_rank(in, {})).path, "suspects/1/fault_chance");
  in = sample();
  in.suspects[0].symptoms[0].symptom = "noise";
  EXPECT_EQ(refusal(cause_rank(in, {})).path, "suspects/0/symptoms/0/symptom");
  in = sample();
  in.suspects[0].quiet_hours = quantity::Entered<quantity::Duration>{quantity::hours(3), 0, {}};
  EXPECT_EQ(refusal(cause_rank(in, {})).path, "suspects/0/found_per_hour");
  in = sample();
  in.suspects[1].name = "lead";
  EXPECT_EQ(refusal(cause_rank(in, {})).kind, Kind::duplicate);
  in = sample();
  in.checks = {{"pump", false, {1}, {0}}};
  EXPECT_EQ(refusal(cause_rank(in, {})).path, "checks/0/suspect");
  in = sample();
  in.jobs_with_fault = 2;
  EXPECT_EQ(refusal(cause_rank(in, {})).path, "jobs_with_fault");
  in = sample();
  for (int i = 0; i < 17; ++i) in.symptoms.push_back({"x" + std::to_string(i), {}, {.01}});
  EXPECT_EQ(refusal(cause_rank(in, {})).kind, Kind::not_applicable);
}

TEST(CauseRank, ATestThatTellsThePlacesApartIsWorthSomething) {
  auto in = sample();
  in.suspects[1].symptoms = {{"rough", {.9}}};
  in.suspects[1].fault_chance = quantity::Fraction{.08};
  in.tests = {{"swap", 1.0, {{"lead", {.95}}}, {.05}}, {"guess", 1.0, {{"lead", {.5}}}, {.5}}};
  const auto got = cause_rank(in, {});
  ASSERT_EQ(got->tests.size(), 2U);
  EXPECT_TRUE(got->tests[0].pays);
  EXPECT_FALSE(got->tests[1].pays);
  EXPECT_NEAR(got->tests[1].worth_at_most, 0.0, 1e-9);
}

}  // namespace
