#include <gtest/gtest.h>

#include <cmath>

#include "reliability/life_estimate.hpp"
#include "reliability/policy.hpp"

namespace {

using namespace wm;
using namespace wm::reliability;

PartLife part(Ending ending, double age, double until = 0, double entered = 0) {
  PartLife p;
  p.ending = ending;
  p.age = quantity::hours(age);
  if (until > 0) p.until = quantity::hours(until);
  if (entered > 0) p.entered = quantity::hours(entered);
  return p;
}
bool says(const std::vector<std::string>& lines, const std::string& part) {
  for (const auto& l : lines) {
    if (l.find(part) != std::string::npos) return true;
  }
  return false;
}

TEST(LifeEstimate, AgesOutOfOrderAreNamed) {
  const auto path = [](const PartLife& p) {
    LifeEstimateInput in;
    in.parts = {p};
    const auto got = life_estimate(in, {});
    EXPECT_FALSE(got);
    return got.error().front().path;
  };
  EXPECT_EQ(path(part(Ending::failed, 0)), "parts/0/age");
  EXPECT_EQ(path(part(Ending::failed_between, 100)), "parts/0/until");
  EXPECT_EQ(path(part(Ending::failed_between, 100, 90)), "parts/0/until");
  EXPECT_EQ(path(part(Ending::failed, 100, 0, 120)), "parts/0/entered");
  EXPECT_EQ(path(part(Ending::failed_before, 100, 0, 20)), "parts/0/entered");
}

TEST(LifeEstimate, TooFewFailuresPointToTheBound) {
  LifeEstimateInput in;
  in.parts = {part(Ending::failed, 100), part(Ending::running, 300)};
  const auto got = life_estimate(in, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().front().kind, Kind::not_applicable);
  EXPECT_NE(got.error().front().do_next.find("zero-failure-bound"), std::string::npos);
  in.parts = {part(Ending::failed, 100), part(Ending::failed, 100)};
  EXPECT_EQ(life_estimate(in, {}).error().front().kind, Kind::not_applicable);
}

// One age of inspection tells one chance of survival: every shape fits it equally well.
TEST(LifeEstimate, OneAgeOfInspectionTellsNoShape) {
  LifeEstimateInput in;
  in.parts = {part(Ending::failed_before, 513.8), part(Ending::failed_before, 513.8),
              part(Ending::failed_before, 513.8), part(Ending::running, 513.8)};
  const auto got = life_estimate(in, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().front().kind, Kind::not_applicable);
  // Neither does one interval with the rest on either side of it: the steeper, the better.
  in.parts = {part(Ending::failed_between, 237.3, 474.6), part(Ending::failed_before, 237.3),
              part(Ending::failed_before, 237.3), part(Ending::running, 237.3)};
  EXPECT_FALSE(life_estimate(in, {}));
}

TEST(LifeEstimate, FewFailuresAreSaidToBeFew) {
  LifeEstimateInput in;
  for (const double t : {310., 420., 275.}) in.parts.push_back(part(Ending::failed, t));
  in.parts.push_back(part(Ending::running, 500));
  const auto got = life_estimate(in, {});
  ASSERT_TRUE(got);
  EXPECT_TRUE(says(got->notes, "3 failures: the shape is hardly known"));
  EXPECT_TRUE(says(got->notes, "failure-trend"));
  EXPECT_EQ(got->curve.size(), 3U);
  EXPECT_LT(got->life_low.si, got->life.si);
}

// By hand: at a constant rate the mean is the hours watched by the number of failures.
TEST(LifeEstimate, OldPartsWatchedForAMomentHaveALikeliestRateToo) {
  const double watched = .02;
  std::vector<Life> lives;
  for (const double t : {600., 900., 1100., 1200., 1400., 1500.}) {
    const auto ending = t == 600 || t == 1500 ? Ending::running : Ending::failed;
    lives.push_back({ending, t, 0, t - watched});
  }
  EXPECT_NEAR(best_scale_at_shape(lives, 1), 6 * watched / 4, 1e-9);
  const auto fit = fit_weibull(lives);
  ASSERT_TRUE(fit);
  EXPECT_GT(fit->log_likelihood, weibull_log_likelihood(lives, 1, 6 * watched / 4));
}

TEST(LifeEstimate, AConstantRateHeedsThatFailuresAreFoundLate) {
  LifeEstimateInput in;
  in.parts = {part(Ending::failed_before, 100),
              part(Ending::failed_between, 100, 200),
              part(Ending::failed_between, 100, 200),
              part(Ending::running, 100),
              part(Ending::running, 100),
              part(Ending::running, 200)};
  const auto got = life_estimate(in, {});
  ASSERT_TRUE(got);
  // By hand, x = exp(-100 / mean): the likelihood x^6 (1 - x)^3 is highest at x = 6 / 9.
  EXPECT_NEAR(got->constant_rate_mean.si / 3600, -100 / std::log(6. / 9.), 1e-6);
}

TEST(SurvivalNext, AConstantRateForgetsItsAge) {
  SurvivalNextInput in;
  in.scale = quantity::hours(1000);
  in.next = quantity::hours(100);
  const double fresh = survival_next(in, {})->survival.si;
  in.age = quantity::hours(5000);
  EXPECT_NEAR(survival_next(in, {})->survival.si, fresh, 1e-12);
  in.scale = {};
  EXPECT_EQ(survival_next(in, {}).error().front().path, "scale");
}

TEST(SurvivalNext, TheRangeOfShapesGivesARange) {
  SurvivalNextInput in;
  in.shape = 2;
  in.scale = quantity::hours(1000);
  in.age = in.next = quantity::hours(500);
  in.shape_low = 1;
  in.shape_high = 4;
  const auto got = survival_next(in, {});
  EXPECT_LT(got->failure_low->si, got->failure_high->si);
}

TEST(ZeroFailure, AnEndAtAFailureNeedsOne) {
  ZeroFailureInput in;
  EXPECT_EQ(zero_failure_bound(in, {}).error().front().path, "parts");
  in.parts = {part(Ending::running, 100)};
  in.ended = TestEnd::at_a_failure;
  EXPECT_EQ(zero_failure_bound(in, {}).error().front().path, "failures");
}

TEST(RenewalAge, WithoutWearItNeverPays) {
  RenewalAgeInput in;
  in.shape = 1;
  in.scale = quantity::hours(1000);
  in.planned_cost = 10;
  in.failure_cost = 1000;
  for (const auto rule :
       {RenewalRule::by_age, RenewalRule::all_at_a_time, RenewalRule::minimal_repair}) {
    in.rule = rule;
    EXPECT_FALSE(renewal_age(in, {})->pays);
  }
  in.failure_cost = 5;
  in.rule = RenewalRule::by_age;
  EXPECT_EQ(renewal_age(in, {}).error().front().kind, Kind::conflict);
  in.scale = {};
  EXPECT_EQ(renewal_age(in, {}).error().front().path, "scale");
}

TEST(RenewalAge, AJobThatBringsFaultsInPostponesTheNext) {
  RenewalAgeInput in;
  in.shape = 2.5;
  in.scale = quantity::hours(1000);
  in.planned_cost = 100;
  in.failure_cost = 500;
  const double clean = renewal_age(in, {})->renew_at->si;
  in.job_fault_chance = quantity::per_cent(10);
  in.job_fault_cost = 500;
  EXPECT_GT(renewal_age(in, {})->renew_at->si, clean);
}

TEST(InspectionInterval, EachRuleNamesWhatItLacks) {
  InspectionIntervalInput in;
  EXPECT_EQ(inspection_interval(in, {}).error().front().path, "warning");
  in.rule = InspectionRule::delay_time;
  EXPECT_EQ(inspection_interval(in, {}).error().size(), 5U);
}

TEST(FailureTrend, RefusesWhatShowsNoTrend) {
  FailureTrendInput in;
  in.times = {quantity::hours(10), quantity::hours(20)};
  EXPECT_EQ(failure_trend(in, {}).error().front().kind, Kind::not_applicable);
  in.times.push_back(quantity::hours(40));
  in.until = quantity::hours(30);
  EXPECT_EQ(failure_trend(in, {}).error().front().path, "until");
  in.grouped = {{quantity::hours(10), 2}};
  EXPECT_EQ(failure_trend(in, {}).error().front().path, "grouped");
  in.times.clear();
  EXPECT_EQ(failure_trend(in, {}).error().front().kind, Kind::not_applicable);
  in.grouped = {{quantity::hours(10), 2}, {quantity::hours(5), 2}};
  EXPECT_EQ(failure_trend(in, {}).error().front().kind, Kind::conflict);
}

TEST(FailureTrend, SaysWhichWay) {
  FailureTrendInput in;
  for (const double t : {1., 2., 4., 8., 16., 32., 64.}) in.times.push_back(quantity::hours(t));
  in.until = quantity::hours(500);
  EXPECT_NE(failure_trend(in, {})->in_words.find("failures become fewer"), std::string::npos);
  in.times.clear();
  for (const double t : {300., 400., 450., 470., 480., 490., 495.}) {
    in.times.push_back(quantity::hours(t));
  }
  EXPECT_NE(failure_trend(in, {})->in_words.find("failures become more"), std::string::npos);
}

}  // namespace
