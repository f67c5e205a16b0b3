// Act: an owner asks for the cheapest split of 15 changes into stages, rules, prices and guesses
//      included; of 18 with at most four a stage; and which of 90 suspects explains 12 of 40
//      symptoms.
// Aim: 1 s, 5 s, 100 ms on this machine: what a person waits for without wondering (our choice,
//      no source). There is no peer: no library does this.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "staging/cause_rank.hpp"
#include "staging/stage_plan.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::staging;
constexpr int k_runs = 5;

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "staging_bench: %s\n", why.c_str());
  std::exit(3);
}

double seconds_of(auto&& act) {
  const auto begin = std::chrono::steady_clock::now();
  act();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

double median_of_runs(auto&& act) {
  std::array<double, k_runs> values{};
  for (double& v : values) v = seconds_of(act);
  std::ranges::sort(values);
  return values[k_runs / 2];
}

/// All invented.
StagePlanInput plan(int changes) {
  statistics::Draws draws(1);
  StagePlanInput in;
  for (int i = 0; i < changes; ++i) {
    PlannedChange c;
    c.name = std::to_string(i);
    c.fault_chance = {draws.uniform(.02, .2)};
    c.check_cost = draws.uniform(20, 150);
    c.hours = EnteredHours{quantity::hours(.5 * (1 + static_cast<double>(draws.index(8)))), 0, {}};
    c.symptoms = {std::string(1, static_cast<char>('a' + draws.index(5)))};
    in.changes.push_back(c);
  }
  in.stage_cost = 35;
  in.hour_cost = 60;
  in.risk_cap = quantity::Fraction{.35};
  in.never = {{"0", "1", ""}, {"0", "2", ""}, {"3", "4", ""}};
  return in;
}

CauseRankInput causes() {
  statistics::Draws draws(2);
  CauseRankInput in;
  for (int j = 0; j < 40; ++j) {
    in.symptoms.push_back(
        {"s" + std::to_string(j), j < 12 ? SymptomState::seen : SymptomState::not_seen, {.005}});
  }
  for (int i = 0; i < 90; ++i) {
    CauseSuspect s;
    s.name = "c" + std::to_string(i);
    s.kind = i < 30 ? SuspectKind::change : SuspectKind::unchanged;
    s.fault_chance = quantity::Fraction{draws.uniform(.001, .1)};
    for (const auto& o : in.symptoms) {
      if (draws.uniform() < .15) s.symptoms.push_back({o.name, {draws.uniform()}});
    }
    in.suspects.push_back(s);
  }
  return in;
}

void tell(const char* act, double value, const char* unit, const char* aim) {
  std::printf(
      "{\"act\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"aim\":\"%s\",\"note\":\"median of %d "
      "runs\"}\n",
      act, value, unit, aim, k_runs);
}

}  // namespace

int main() {
  const auto fifteen = plan(15);
  auto eighteen = plan(18);
  eighteen.size_cap = 4;
  const auto check = [](const StagePlanInput& in) {
    const auto got = stage_plan(in, {});
    if (!got || !got->proven) stop("no proven plan");
    double sum = 0.0;
    for (const auto& s : got->stages) sum += s.cost;
    if (std::abs(sum - got->cost) > 1e-6) stop("the stages do not add up");
  };
  check(fifteen);
  check(eighteen);
  const auto suspects = causes();
  const auto ranked = cause_rank(suspects, {});
  if (!ranked || ranked->ranking.size() != 90) stop("no ranking");
  tell("plan of 15 changes, prices and guesses included",
       median_of_runs([&] { (void)stage_plan(fifteen, {}); }), "s", "1 s");
  tell("plan of 18 changes, at most 4 a stage",
       median_of_runs([&] { (void)stage_plan(eighteen, {}); }), "s", "5 s");
  tell("90 suspects, 12 of 40 symptoms seen",
       1e3 * median_of_runs([&] { (void)cause_rank(suspects, {}); }), "ms", "100 ms");
  return 0;
}
