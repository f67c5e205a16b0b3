// Chances of causes over seeded inputs, against every state of the faults enumerated.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "staging/cause_rank.hpp"
#include "staging/search_value.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::staging;
using statistics::Draws;

CauseRankInput random_case(Draws& draws, std::size_t suspects, std::size_t symptoms) {
  CauseRankInput in;
  for (std::size_t j = 0; j < symptoms; ++j) {
    in.symptoms.push_back({"s" + std::to_string(j),
                           static_cast<SymptomState>(draws.index(3)),
                           {draws.uniform(0.001, .1)}});
  }
  for (std::size_t i = 0; i < suspects; ++i) {
    CauseSuspect s;
    s.name = "c" + std::to_string(i);
    s.kind = draws.uniform() < .5 ? SuspectKind::change : SuspectKind::unchanged;
    s.fault_chance = quantity::Fraction{draws.uniform() < .1 ? 0.0 : draws.uniform(0, .5)};
    s.look_cost = draws.uniform(1, 100);
    for (const auto& o : in.symptoms) {
      if (draws.uniform() < .5) s.symptoms.push_back({o.name, {draws.uniform()}});
    }
    in.suspects.push_back(s);
    if (draws.uniform() < .3) {
      in.checks.push_back(
          {s.name, draws.uniform() < .3, {draws.uniform(.5, 1)}, {draws.uniform(.01, .2)}});
    }
  }
  return in;
}

/// Chance of one state of all faults and of everything that was found.
double joint(const CauseRankInput& in, unsigned state) {
  double p = 1.0;
  for (std::size_t i = 0; i < in.suspects.size(); ++i) {
    const bool faulty = (state >> i & 1U) != 0;
    const double chance = in.suspects[i].fault_chance->si;
    p *= faulty ? chance : 1.0 - chance;
    for (const auto& c : in.checks) {
      if (c.suspect != in.suspects[i].name) continue;
      const double finds = faulty ? c.finds.si : c.false_alarms.si;
      p *= c.fault_found ? finds : 1.0 - finds;
    }
  }
  for (const auto& o : in.symptoms) {
    if (o.state == SymptomState::not_looked_for) continue;
    double off = 1.0 - o.from_elsewhere.si;
    for (std::size_t i = 0; i < in.suspects.size(); ++i) {
      if ((state >> i & 1U) == 0) continue;
      for (const auto& l : in.suspects[i].symptoms) {
        if (l.symptom == o.name) off *= 1.0 - l.chance.si;
      }
    }
    p *= o.state == SymptomState::seen ? 1.0 - off : off;
  }
  return p;
}

TEST(CauseLaws, EveryStateEnumeratedGivesTheSame) {
  Draws draws(51);
  for (int round = 0; round < 150; ++round) {
    const std::size_t n = 1 + draws.index(8);
    const auto in = random_case(draws, n, 1 + draws.index(7));
    double all = 0.0, no_change = 0.0, nothing = 0.0;
    std::vector<double> each(n, 0.0);
    for (unsigned state = 0; state < (1U << n); ++state) {
      const double p = joint(in, state);
      all += p;
      if (state == 0) nothing = p;
      bool change = false;
      for (std::size_t i = 0; i < n; ++i) {
        if ((state >> i & 1U) == 0) continue;
        each[i] += p;
        change = change || in.suspects[i].kind == SuspectKind::change;
      }
      if (!change) no_change += p;
    }
    const auto got = cause_rank(in, {});
    ASSERT_TRUE(got);
    ASSERT_NEAR(got->evidence, all, 1e-12);
    ASSERT_NEAR(got->no_change.si, no_change / all, 1e-9);
    ASSERT_NEAR(got->nothing_listed.si, nothing / all, 1e-9);
    for (std::size_t i = 0; i < n; ++i) {
      const auto r = std::find_if(got->ranking.begin(), got->ranking.end(),
                                  [&](const auto& x) { return x.name == in.suspects[i].name; });
      ASSERT_NEAR(r->now.si, each[i] / all, 1e-9) << round << " " << i;
    }
  }
}

// What is not listed is a cause like any other: list it, one for each symptom seen, and ask for
// the chance that at least one of those is at fault.
TEST(CauseLaws, SomethingElseIsACauseLikeAnyOther) {
  Draws draws(52);
  for (int round = 0; round < 100; ++round) {
    const auto in = random_case(draws, 4, 4);
    auto listed = in;
    for (auto& s : listed.suspects) s.kind = SuspectKind::unchanged;
    for (auto& o : listed.symptoms) {
      if (o.state != SymptomState::seen) continue;
      CauseSuspect other;
      other.name = "other " + o.name;
      other.fault_chance = o.from_elsewhere;
      other.symptoms = {{o.name, {1.0}}};
      listed.suspects.push_back(other);
      o.from_elsewhere = {0};
    }
    const auto got = cause_rank(in, {});
    const auto same = cause_rank(listed, {});
    ASSERT_TRUE(got && same);
    ASSERT_NEAR(got->evidence, same->evidence, 1e-12);
    ASSERT_NEAR(got->something_else.si, 1.0 - same->no_change.si, 1e-9);
  }
}

TEST(CauseLaws, ASymptomThatItCausesNeverSpeaksAgainstASuspectAlone) {
  Draws draws(53);
  for (int round = 0; round < 200; ++round) {
    auto in = random_case(draws, 1, 3);
    in.checks.clear();
    for (auto& o : in.symptoms) o.state = SymptomState::not_looked_for;
    const double start = cause_rank(in, {})->ranking[0].now.si;
    in.symptoms[0].state = SymptomState::seen;
    const double seen = cause_rank(in, {})->ranking[0].now.si;
    in.symptoms[0].state = SymptomState::not_seen;
    const double not_seen = cause_rank(in, {})->ranking[0].now.si;
    const bool linked = !in.suspects[0].symptoms.empty() &&
                        in.suspects[0].symptoms[0].symptom == in.symptoms[0].name;
    if (!linked) {
      ASSERT_NEAR(seen, start, 1e-12);
      continue;
    }
    ASSERT_GE(seen, start - 1e-12);
    ASSERT_LE(not_seen, start + 1e-12);
  }
}

TEST(CauseLaws, NoOrderOfLookingIsBetterAndNoTestIsWorthLessThanNothing) {
  Draws draws(54);
  for (int round = 0; round < 200; ++round) {
    std::vector<Place> places;
    std::vector<double> positive;
    const std::size_t n = 1 + draws.index(6);
    for (std::size_t i = 0; i < n; ++i) {
      places.push_back({draws.uniform(), draws.uniform(0, 100)});
      positive.push_back(draws.uniform());
    }
    double all = 0.0;
    for (const auto& p : places) all += p.chance;
    std::vector<std::size_t> order(n);
    for (std::size_t i = 0; i < n; ++i) order[i] = i;
    double least = 1e300;
    do {
      double paid = 0.0, cost = 0.0;
      for (const auto i : order) {
        paid += places[i].cost;
        cost += places[i].chance / all * paid;
      }
      least = std::min(least, cost);
    } while (std::next_permutation(order.begin(), order.end()));
    ASSERT_NEAR(search_cost(places), least, 1e-9);
    const auto value = test_value(places, positive);
    ASSERT_LE(value.worth_at_most, value.perfect + 1e-9);
    ASSERT_LE(value.cost_after, least + 1e-9);
  }
}

TEST(CauseLaws, RareEvidenceLosesNoDigits) {
  // Ten symptoms that one part alone brings about, each a millionth otherwise: 1e-60 by accident.
  CauseRankInput in;
  CauseSuspect common;
  common.name = "common";
  common.fault_chance = quantity::Fraction{1e-6};
  for (int j = 0; j < 10; ++j) {
    in.symptoms.push_back({"s" + std::to_string(j), SymptomState::seen, {1e-6}});
    common.symptoms.push_back({in.symptoms.back().name, {.5}});
  }
  in.suspects = {common};
  const auto got = cause_rank(in, {});
  const double hit = 1e-6 * std::pow(1 - (1 - 1e-6) * .5, 10);
  ASSERT_NEAR(got->evidence / hit, 1.0, 1e-12);
  ASSERT_NEAR(got->ranking[0].now.si, 1.0, 1e-12);
}

}  // namespace
