#include "evidence/decision.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "evidence/risk.hpp"

namespace wm::evidence {
namespace {

const Limits k_upper{{}, 10.0};
const Limits k_band{0.0, 10.0};

Knowledge about(double value, double u) { return {value, u, 2.0 * u, Distribution::normal}; }
RuleSettings rule(Rule r) {
  RuleSettings s;
  s.rule = r;
  return s;
}

TEST(Words, RoundTrip) {
  for (const auto v :
       {Verdict::conforms, Verdict::does_not_conform, Verdict::undecided, Verdict::not_tested})
    EXPECT_EQ(*verdict_by_word(word(v)), v);
  EXPECT_EQ(word(Verdict::does_not_conform), "does-not-conform");
  EXPECT_EQ(verdict_by_word("fine").error().kind, Kind::unknown_choice);
  EXPECT_FALSE(words(NextStep::hold).empty());
}

TEST(JudgeUpper, BothEdgesAreInclusive) {
  EXPECT_EQ(judge_upper(9.0, 1.0, 10.0), Verdict::conforms);
  EXPECT_EQ(judge_upper(9.5, 1.0, 10.0), Verdict::undecided);
  EXPECT_EQ(judge_upper(11.0, 1.0, 10.0), Verdict::undecided);
  EXPECT_EQ(judge_upper(11.5, 1.0, 10.0), Verdict::does_not_conform);
  EXPECT_EQ(judge_upper(10.0, 0.0, 10.0), Verdict::conforms);
  EXPECT_EQ(judge_lower(10.0, 0.0, 10.0), Verdict::conforms);
  EXPECT_EQ(judge_lower(8.0, 1.0, 10.0), Verdict::does_not_conform);
}

TEST(Decide, GuardedLeavesAMiddle) {
  EXPECT_EQ(decide(about(8.0, 0.5), k_upper, {})->verdict, Verdict::conforms);
  EXPECT_EQ(decide(about(9.5, 0.5), k_upper, {})->verdict, Verdict::undecided);
  EXPECT_EQ(decide(about(12.0, 0.5), k_upper, {})->verdict, Verdict::does_not_conform);
  const auto d = decide(about(5.0, 0.5), k_band, {});
  EXPECT_EQ(*d->accept_from, 1.0);
  EXPECT_EQ(*d->accept_to, 9.0);
  EXPECT_TRUE(d->meter_good_enough);
}

TEST(Decide, SimpleAlwaysDecides) {
  EXPECT_EQ(decide(about(10.0, 5.0), k_upper, rule(Rule::simple))->verdict, Verdict::conforms);
  EXPECT_EQ(decide(about(10.01, 5.0), k_upper, rule(Rule::simple))->verdict,
            Verdict::does_not_conform);
  EXPECT_NE(
      risk_in_words(*decide(about(10.0, 5.0), k_upper, rule(Rule::simple)), rule(Rule::simple))
          .find("50 %"),
      std::string::npos);
}

TEST(Decide, AMeterTooCoarseProvesNothing) {
  // w = 6 > half the band of 10: no pass is possible, and the middle is not a failure.
  const auto d = decide(about(5.0, 3.0), k_band, {});
  EXPECT_EQ(d->verdict, Verdict::undecided);
  EXPECT_FALSE(d->meter_good_enough);
  EXPECT_FALSE(d->accept_from.has_value());
  // The same by probability: little chance of being inside, yet nothing was proved.
  const auto p = decide(about(5.0, 100.0), k_band, rule(Rule::probability));
  EXPECT_LT(p->probability_inside, 0.05);
  EXPECT_EQ(p->verdict, Verdict::undecided);
  EXPECT_FALSE(p->meter_good_enough);
  // But a reading far outside fails even with a poor meter.
  EXPECT_EQ(decide(about(17.0, 3.0), k_band, {})->verdict, Verdict::does_not_conform);
}

TEST(Decide, ByProbability) {
  const auto s = rule(Rule::probability);
  EXPECT_EQ(decide(about(9.0, 0.5), k_upper, s)->verdict, Verdict::conforms);   // 0.977
  EXPECT_EQ(decide(about(9.5, 0.5), k_upper, s)->verdict, Verdict::undecided);  // 0.841
  EXPECT_EQ(decide(about(11.0, 0.5), k_upper, s)->verdict, Verdict::does_not_conform);
  EXPECT_EQ(decide(about(-1.0, 0.5), k_band, s)->verdict, Verdict::does_not_conform);
  const auto zone = acceptance_zone(0.5, 1.0, Distribution::normal, k_band, s);
  EXPECT_NEAR(probability_inside(about(*zone->to, 0.5), k_band), 0.95, 1e-12);
  EXPECT_NEAR(*zone->from + *zone->to, 10.0, 1e-12);
}

TEST(Decide, NoDoubtAtAll) {
  for (const auto r : {Rule::guarded, Rule::simple, Rule::probability}) {
    EXPECT_EQ(decide(about(10.0, 0.0), k_band, rule(r))->verdict, Verdict::conforms);
    EXPECT_EQ(decide(about(10.1, 0.0), k_band, rule(r))->verdict, Verdict::does_not_conform);
  }
}

TEST(Decide, Refusals) {
  EXPECT_EQ(decide(about(1, 1), {}, {}).error().kind, Kind::missing);
  EXPECT_EQ(decide(about(1, 1), {2.0, 1.0}, {}).error().kind, Kind::conflict);
  EXPECT_EQ(decide(about(1, -1), k_upper, {}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(decide(about(NAN, 1), k_upper, {}).error().kind, Kind::out_of_bounds);
  RuleSettings s;
  s.guard_factor = 11.0;
  EXPECT_EQ(decide(about(1, 1), k_upper, s).error().kind, Kind::out_of_bounds);
  s = {};
  s.probability = 0.5;
  EXPECT_EQ(decide(about(1, 1), k_upper, s).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(acceptance_zone(-1, 1, Distribution::normal, k_upper, {}).error().kind,
            Kind::out_of_bounds);
}

TEST(Allowance, ShareOfTheLimit) {
  EXPECT_NEAR(*allowance_used(8.0, k_upper), 0.8, 1e-15);
  EXPECT_EQ(*allowance_used(-3.0, k_upper), 0.0);
  EXPECT_NEAR(*allowance_used(20.0, {10.0, {}}), 0.5, 1e-15);
  EXPECT_NEAR(*allowance_used(9.0, k_band), 0.8, 1e-15);
  EXPECT_NEAR(*allowance_used(1.0, k_band), 0.8, 1e-15);
  EXPECT_GT(*allowance_used(10.5, k_band), 1.0);
  EXPECT_FALSE(allowance_used(1.0, {{}, -5.0}).has_value());
  EXPECT_FALSE(allowance_used(0.0, {10.0, {}}).has_value());
  EXPECT_FALSE(allowance_used(1.0, {1.0, 1.0}).has_value());
  EXPECT_FALSE(allowance_used(1.0, {}).has_value());
}

TEST(Risk, Refusals) {
  const Prior prior{Prior::Law::normal, 0, 1, 0, 0};
  EXPECT_EQ(global_risk(prior, 0.1, {}, {}).error().kind, Kind::missing);
  EXPECT_EQ(global_risk(prior, 0.0, k_band, k_band).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(global_risk(prior, 0.1, {1.0, 0.0}, k_band).error().kind, Kind::conflict);
  EXPECT_EQ(global_risk({Prior::Law::normal, 0, 0, 0, 0}, 0.1, k_band, k_band).error().kind,
            Kind::out_of_bounds);
  EXPECT_EQ(global_risk({Prior::Law::gamma, 0, 0, 0, 1}, 0.1, k_band, k_band).error().kind,
            Kind::out_of_bounds);
  EXPECT_EQ(guard_for_consumer_risk(prior, 0.1, k_band, 0.0).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(after_measuring({Prior::Law::gamma, 0, 0, 1, 1}, 1, 1).error().kind,
            Kind::not_applicable);
  EXPECT_EQ(after_measuring({Prior::Law::normal, 0, 0, 0, 0}, 1, 1).error().kind,
            Kind::out_of_bounds);
}

TEST(Risk, NoGuardWhereNoneIsNeededAndAUselessOneWhereNoneHelps) {
  const Prior tight{Prior::Law::normal, 5, 0.1, 0, 0};
  EXPECT_EQ(*guard_for_consumer_risk(tight, 0.1, k_band, 0.01), 0.0);
  // Nearly all such parts are bad and the meter hardly tells: the guard eats the whole band.
  const Prior bad{Prior::Law::normal, 20, 0.5, 0, 0};
  const auto guard = guard_for_consumer_risk(bad, 50.0, k_band, 1e-9);
  ASSERT_TRUE(guard);
  EXPECT_NEAR(*guard, 5.0, 1e-5);
  EXPECT_LT(global_risk(bad, 50.0, k_band, {*guard, 10.0 - *guard})->accepted, 1e-8);
}

TEST(Risk, SharesAddUp) {
  const Prior prior{Prior::Law::gamma, 0, 0, 4, 4};
  const auto r = global_risk(prior, 0.25, k_upper, {{}, 1.5});
  // accepted = inside and accepted + outside and accepted
  EXPECT_NEAR(r->accepted, (1.0 - r->outside) - r->producer + r->consumer, 1e-10);
}

}  // namespace
}  // namespace wm::evidence
