// Source:    statistics notes, section 4.1: noisy-OR by enumeration, value of information, rule of
//            chance over cost (120 orders tried), trouble-free hours, noisy test, own error rate;
//            computed outside the project with R 4.2.2 and Python 3.11.
// Tolerance: half a unit of the last printed digit.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "staging/cause_rank.hpp"
#include "staging/search_value.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::staging;

const char* const k_source = "statistics notes, 4.1 (enumerated)";
const char* const k_why = "half a unit of the last printed digit";

CauseSuspect suspect(const char* name, double p, double to_first, double to_second) {
  CauseSuspect s;
  s.name = name;
  s.fault_chance = quantity::Fraction{p};
  s.symptoms = {{"s1", {to_first}}, {"s2", {to_second}}};
  return s;
}

CauseRankInput three(SymptomState first, SymptomState second) {
  CauseRankInput in;
  in.symptoms = {{"s1", first, {.01}}, {"s2", second, {.005}}};
  in.suspects = {suspect("1", .05, .9, 0), suspect("2", .10, .6, .3), suspect("3", .02, .3, .8)};
  return in;
}

double now(const CauseRankAnswer& a, const std::string& name) {
  for (const auto& r : a.ranking) {
    if (r.name == name) return r.now.si;
  }
  return -1;
}
double before(const CauseRankAnswer& a, const std::string& name) {
  for (const auto& r : a.ranking) {
    if (r.name == name) return r.before.si;
  }
  return -1;
}

TEST(CauseCases, NoisyOrWithLeak) {
  const auto on = SymptomState::seen, off = SymptomState::not_seen;
  const struct {
    const char* id;
    SymptomState first, second;
    double evidence, one, two, three, none;
  } rows[] = {
      {"1,?", on, SymptomState::not_looked_for, .11660934, .389119, .535196, .064814, .071855},
      {"1,0", on, off, .09173233, .468683, .464922, .015439, .090885},
      {"1,1", on, on, .02487701, .095733, .794327, .246881, .001684},
      {"0,1", off, on, .02541539, .005236, .460505, .393374, .163193},
      {"0,0", off, off, .85797527, .005236, .030172, .002849, .962001},
  };
  for (const auto& r : rows) {
    const auto got = cause_rank(three(r.first, r.second), {});
    ASSERT_TRUE(got) << r.id;
    const auto check = [&](const char* what, double expected, double value, double tolerance) {
      test::check({"cause-rank", fmt::format("noisy-OR {} {}", r.id, what), k_source,
                   fmt::format("{}", expected), expected, value, tolerance, k_why});
    };
    check("evidence", r.evidence, got->evidence, 5e-9);
    check("P(1)", r.one, now(*got, "1"), 5e-7);
    check("P(2)", r.two, now(*got, "2"), 5e-7);
    check("P(3)", r.three, now(*got, "3"), 5e-7);
    check("no change at fault", r.none, got->no_change.si, 5e-7);
  }
}

TEST(CauseCases, TroubleFreeHours) {
  const struct {
    double p, rate, hours, after;
  } rows[] = {{.1, .5, 2, .03927030}, {.1, .5, 5, .00903812}, {.2, .3, 10, .01229375}};
  for (const auto& r : rows) {
    CauseRankInput in;
    CauseSuspect s;
    s.name = "change";
    s.fault_chance = quantity::Fraction{r.p};
    s.found_per_hour = r.rate;
    s.quiet_hours = quantity::Entered<quantity::Duration>{quantity::hours(r.hours), 0, {}};
    in.suspects = {s};
    const auto got = cause_rank(in, {});
    ASSERT_TRUE(got);
    test::check({"cause-rank", fmt::format("quiet hours {} {} {}", r.p, r.rate, r.hours), k_source,
                 fmt::format("{:.8f}", r.after), r.after, before(*got, "change"), 5e-9, k_why});
  }
}

TEST(CauseCases, NoisyTest) {
  const auto after = [](std::vector<bool> outcomes) {
    CauseRankInput in;
    CauseSuspect s;
    s.name = "part";
    s.kind = SuspectKind::unchanged;
    s.fault_chance = quantity::Fraction{.2};
    in.suspects = {s};
    for (const bool found : outcomes) in.checks.push_back({"part", found, {.9}, {.05}});
    return now(*cause_rank(in, {}), "part");
  };
  const auto check = [&](const char* id, double expected, const std::vector<bool>& outcomes) {
    test::check({"cause-rank", fmt::format("noisy test {}", id), k_source,
                 fmt::format("{}", expected), expected, after(outcomes), 5e-8, k_why});
  };
  check("+", .8181818, {true});
  check("-", .02564103, {false});
  check("+ +", .9878049, {true, true});
}

TEST(CauseCases, OwnRateOfFaults) {
  auto in = three(SymptomState::seen, SymptomState::not_seen);
  in.jobs_done = 20;
  in.jobs_with_fault = 3;
  const auto got = cause_rank(in, {});
  test::check({"cause-rank", "own rate, 3 faults in 20 jobs", k_source, ".133333", .133333,
               got->own_rate->si, 5e-7, k_why});
  test::check_text("cause-rank", "own rate, its 90 % interval .048520 to .246139", k_source,
                   "3 of your 20 jobs brought a fault in: 13.3 %, between 4.85 % and 24.6 % (90 %)",
                   got->own_rate_in_words);
}

TEST(CauseCases, ValueOfInformation) {
  const std::vector<Place> places{{.6, 200}, {.4, 150}};
  const std::vector<double> positive{.9, .15};
  const auto value = test_value(places, positive);
  const auto check = [&](const char* what, double expected, double got) {
    test::check({"cause-rank", fmt::format("value of information, {}", what), k_source,
                 fmt::format("{}", expected), expected, got, 1e-9, "exact"});
  };
  check("cost without a test", 260, search_cost(places));
  check("perfect test", 80, value.perfect);
  check("P(+)", .6, value.positive);
  check("expected cost", 201, value.cost_after);
  check("worth at most", 59, value.worth_at_most);
}

TEST(CauseCases, ChanceOverCost) {
  const std::vector<Place> places{{.30, 60}, {.25, 20}, {.20, 50}, {.15, 10}, {.10, 40}};
  std::string order;
  for (const auto i : best_order(places)) order += static_cast<char>('a' + i);
  test::check_text("cause-rank", "order by chance over cost", k_source, "dbace", order);
  test::check({"cause-rank", "expected cost of that order", k_source, "82", 82, search_cost(places),
               1e-9, "exact"});
}

}  // namespace
