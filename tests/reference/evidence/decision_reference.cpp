// Decision rules and their risks.
// Sources stand beside each case: JCGM 106:2012 (bearing case 9.5.4, read in a notebook of a
// national-laboratory library), ILAC-G8:09/2019 par. 4.2 (read in extract), a classic paper as
// quoted in that library's tests; figures computed with R 4.2.2 and scipy 1.10.
// Tolerance: half a unit of the last digit given, unless said otherwise.
#include <gtest/gtest.h>

#include "describe/type.hpp"
#include "evidence/conformity.hpp"
#include "evidence/risk.hpp"
#include "support/reference_case.hpp"

namespace wm::evidence {
namespace {

using test::check;
using test::check_text;
const std::string k_calc = "conformity";
const std::string k_digit = "half a unit of the last digit given";
const std::string k_bearing = "JCGM 106:2012, 9.5.4 (bearing), read in a notebook; R 4.2.2";
const std::string k_computed = "R 4.2.2, computed";

Prior bearing() { return {Prior::Law::gamma, 0, 0, 4, 4}; }
Prior normal(double mean, double sd) { return {Prior::Law::normal, mean, sd, 0, 0}; }
const Limits k_bearing_limit{{}, 2.0};

TEST(Jcgm106, BearingC1ToC3) {
  const auto open = global_risk(bearing(), 0.25, k_bearing_limit, k_bearing_limit);
  ASSERT_TRUE(open);
  check({k_calc, "C1 not conforming", k_bearing, "4.2380112 %", 0.042380112, open->outside, 5e-10,
         k_digit});
  check({k_calc, "C2 R_C", k_bearing, "0.8019112 %", 0.008019112, open->consumer, 5e-10, k_digit});
  check({k_calc, "C2 R_P", k_bearing, "1.7444569 %", 0.017444569, open->producer, 5e-10, k_digit});
  const auto guard = guard_for_consumer_risk(bearing(), 0.25, k_bearing_limit, 0.001);
  ASSERT_TRUE(guard);
  check(
      {k_calc, "C3 guard for R_C 0.1 %", k_bearing, "0.3281712", 0.3281712, *guard, 5e-8, k_digit});
  const auto held = global_risk(bearing(), 0.25, k_bearing_limit, {{}, 2.0 - *guard});
  check({k_calc, "C3 R_C", k_bearing, "0.1 %", 0.001, held->consumer, 1e-10, "by construction"});
  check({k_calc, "C3 R_P", k_bearing, "7.5493876 %", 0.075493876, held->producer, 5e-10, k_digit});
}

TEST(Jcgm106, ClassicC4ToC6) {
  const std::string source = "classic paper quoted in a laboratory library's tests; R 4.2.2";
  const Limits two{-2.0, 2.0};
  const auto c4 = global_risk(normal(0, 1), 0.25, two, two);
  check({k_calc, "C4 R_C", source, "0.00800608", 0.00800608, c4->consumer, 5e-9, k_digit});
  check({k_calc, "C4 R_P", source, "0.01485088", 0.01485088, c4->producer, 5e-9, k_digit});
  const Limits wide{-2.5, 2.5};
  check({k_calc, "C5 R_C, u 0.25", source, "0.00244535", 0.00244535,
         global_risk(normal(0, 1), 0.25, wide, wide)->consumer, 5e-9, k_digit});
  check({k_calc, "C5 R_C, u 1.0", source, "0.00472357", 0.00472357,
         global_risk(normal(0, 1), 1.0, wide, wide)->consumer, 5e-9, k_digit});
  const auto c6 = global_risk(normal(0, 1), 0.5, two, {-1.82, 1.82});
  check({k_calc, "C6 R_C", source, "0.00805161", 0.00805161, c6->consumer, 5e-9, k_digit});
  check({k_calc, "C6 R_P", source, "0.06610645", 0.06610645, c6->producer, 5e-9, k_digit});
  const auto bare = global_risk(normal(0, 1), 0.5, two, two);
  check({k_calc, "C6 R_C, no guard", source, "0.01238875", 0.01238875, bare->consumer, 5e-9,
         k_digit});
  check({k_calc, "C6 R_P, no guard", source, "0.04052676", 0.04052676, bare->producer, 5e-9,
         k_digit});
}

struct Guarded {
  double guard, consumer, producer;
};

TEST(Jcgm106, ResistorC7) {
  const Limits band{1499.8, 1500.2};
  const Guarded rows[] = {{0, .018942, .037208},
                          {.02, .009878, .069027},
                          {.04, .004334, .114657},
                          {.08, .000469, .247670},
                          {-.04, .044898, .007097}};
  for (const auto& row : rows) {
    const auto r =
        global_risk(normal(1500, 0.12), 0.04, band, {1499.8 + row.guard, 1500.2 - row.guard});
    ASSERT_TRUE(r);
    const std::string id = "C7 h = " + std::to_string(row.guard).substr(0, 5);
    check({k_calc, id + " R_C", k_computed, std::to_string(row.consumer), row.consumer, r->consumer,
           5e-7, k_digit});
    check({k_calc, id + " R_P", k_computed, std::to_string(row.producer), row.producer, r->producer,
           5e-7, k_digit});
    check({k_calc, id + " outside", k_computed, "9.55807 %", 0.0955807, r->outside, 5e-8, k_digit});
  }
}

TEST(Jcgm106, AfterMeasuringC8) {
  const auto k = after_measuring(normal(1500, 0.12), 1500.18, 0.04);
  ASSERT_TRUE(k);
  const Limits band{1499.8, 1500.2};
  check({k_calc, "C8 mean", k_computed, "1500.162", 1500.162, k->value, 1e-9, "exact"});
  check({k_calc, "C8 sd", k_computed, "0.0379473", 0.0379473, k->u, 5e-8, k_digit});
  check({k_calc, "C8 p_c", k_computed, "0.841680", 0.841680, probability_inside(*k, band), 5e-7,
         k_digit});
  check({k_calc, "C8 p_c, flat prior", k_computed, "0.691462", 0.691462,
         probability_inside({1500.18, 0.04, 0.08, Distribution::normal}, band), 5e-7, k_digit});
}

TEST(Jcgm106, ProofPressureC9) {
  const Limits limit{3000.0, {}};
  const double u = type_b("gauge, 1 % of 5000 psi", 50.0, Distribution::rectangular).u;
  check({k_calc, "C9 u", k_computed, "28.8675 psi", 28.8675, u, 5e-5, k_digit});
  check({k_calc, "C9 p_c normal", k_computed, "0.698334", 0.698334,
         probability_inside({3015, u, 2 * u, Distribution::normal}, limit), 5e-7, k_digit});
  check({k_calc, "C9 p_c rectangular", k_computed, "0.65", 0.65,
         probability_inside({3015, u, 2 * u, Distribution::rectangular}, limit), 1e-12, "exact"});
  RuleSettings s;
  s.rule = Rule::probability;
  check({k_calc, "C9 needed, normal", k_computed, "3047.483 psi", 3047.483,
         *acceptance_zone(u, 2 * u, Distribution::normal, limit, s)->from, 5e-4, k_digit});
  check({k_calc, "C9 needed, rectangular", k_computed, "3045 psi", 3045.0,
         *acceptance_zone(u, 2 * u, Distribution::rectangular, limit, s)->from, 1e-9, "exact"});
}

TEST(Jcgm106, TwoSidedC10) {
  const Limits band{-5.0, 5.0};
  const double rows[][3] = {{1, 4, .8413447}, {2, 3, .8413131}, {2.5, 4.5, .5791874}};
  for (const auto& row : rows)
    check({k_calc, "C10 u " + std::to_string(row[0]).substr(0, 3), k_computed,
           std::to_string(row[2]), row[2],
           probability_inside({row[1], row[0], 2 * row[0], Distribution::normal}, band), 5e-8,
           k_digit});
}

TEST(Jcgm106, GuardFactors) {
  const double rows[][2] = {{.80, .841621},   {.90, 1.281552}, {.95, 1.644854},
                            {.975, 1.959964}, {.99, 2.326348}, {.999, 3.090232}};
  for (const auto& row : rows) {
    RuleSettings s;
    s.rule = Rule::probability;
    s.probability = row[0];
    const auto zone = acceptance_zone(1.0, 2.0, Distribution::normal, {{}, 10.0}, s);
    ASSERT_TRUE(zone);
    check({k_calc, "guard factor for " + std::to_string(row[0]).substr(0, 5), k_computed,
           std::to_string(row[1]), row[1], 10.0 - *zone->to, 5e-7, k_digit});
  }
  const double at[][2] = {{0, .5}, {.5, .691462}, {1, .841345}, {1.5, .933193}, {2, .977250}};
  for (const auto& row : at)
    check({k_calc, "p_c at z = " + std::to_string(row[0]).substr(0, 3), k_computed,
           std::to_string(row[1]), row[1],
           probability_inside({-row[0], 1, 2, Distribution::normal}, {{}, 0.0}), 5e-7, k_digit});
}

TEST(IlacG8, RisksOfTheRules) {
  // Simple acceptance: up to 50 %. Guarded with w = U (k = 2): below 2.5 %.
  const std::string source = "ILAC-G8:09/2019, par. 4.2, read in extract";
  const Limits limit{{}, 10.0};
  RuleSettings simple;
  simple.rule = Rule::simple;
  const auto at_limit = decide({10.0, 0.5, 1.0, Distribution::normal}, limit, simple);
  EXPECT_EQ(at_limit->verdict, Verdict::conforms);
  check({k_calc, "simple, at the limit", source, "50 %", 0.5, at_limit->false_accept, 1e-12,
         "exact"});
  const auto guarded = decide({9.0, 0.5, 1.0, Distribution::normal}, limit, {});
  EXPECT_EQ(guarded->verdict, Verdict::conforms);
  check({k_calc, "guarded w = U, at its limit", source, "below 2.5 % (2.275 %)", 0.0227501,
         guarded->false_accept, 5e-8, "normal tail beyond 2, half a digit"});
  EXPECT_LT(guarded->false_accept, 0.025);
}

TEST(LeadCases, E18) {
  // A lead of 1.20 m at 10 to 23 kohm/m; 0.9 % + 2 counts of 0.01 kohm; reads 26.50 kohm.
  const std::string source = "ILAC-G8:09/2019 par. 4.2.3 applied to a lead; computed by hand";
  ConformityInput in;
  in.reading = *describe::read_any("26.50 kohm");
  in.lower = *describe::read_any("12.00 kohm");
  in.upper = *describe::read_any("27.60 kohm");
  in.meter = MeterRange{"", {}, *describe::read_any("0.01 kohm"), quantity::per_cent(0.9), 2, {}};
  in.guard_from = GuardFrom::worst_case;
  const auto got = conformity(in, {});
  ASSERT_TRUE(got);
  check({k_calc, "E18 w", source, "0.2585 kohm", 258.5, got->guard->si, 1e-9, "exact"});
  check(
      {k_calc, "E18 conforms up to", source, "27.34 kohm", 27340, got->accept_to->si, 5, k_digit});
  check_text(k_calc, "E18 verdict", source, "conforms", std::string(word(got->verdict)));
}

TEST(LeadCases, MegohmsOverRangeIsAResult) {
  ConformityInput in;
  in.over_range = true;
  in.lower = *describe::read_any("5 Mohm");
  in.meter =
      MeterRange{"60 Mohm", *describe::read_any("60.00 Mohm"), {}, quantity::per_cent(2), 5, {}};
  const auto got = conformity(in, {});
  ASSERT_TRUE(got);
  check_text(k_calc, "over-range on 60 Mohm against at least 5 Mohm",
             "meter practice: over-range on a stated range is a result", "conforms",
             std::string(word(got->verdict)));
}

}  // namespace
}  // namespace wm::evidence
