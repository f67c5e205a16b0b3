// Laws of hose-rating, over seeded demands and candidates.
#include <gtest/gtest.h>

#include <set>

#include "statistics/draws.hpp"
#include "unit/hose/rating_sample.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using RatingLaws = sample::Rating;

template <class T, std::size_t N>
T one_of(statistics::Draws& draws, const T (&list)[N]) {
  return list[static_cast<std::size_t>(draws.uniform() * static_cast<double>(N)) % N];
}

quantity::Temperature fahrenheit(double f) { return {(f - 32.0) / 1.8 + 273.15}; }

HoseCandidate random_hose(statistics::Draws& draws, std::size_t number) {
  struct Kind {
    const char* family;
    const char* size;
  };
  static constexpr Kind k_kinds[] = {{"MIL-H-8794", "-4"},      {"MIL-H-8794", "-16"},
                                     {"MIL-H-8788", "-6"},      {"AS1946 class I", "-8"},
                                     {"AS1946 class II", "-8"}, {"MA620", "DN06"},
                                     {"AS1339", "-6"},          {"MIL-DTL-83796", "-6"},
                                     {"AS620", "-8"},           {"SAE J30 R9", "-6"}};
  static constexpr EndMetal k_ends[] = {EndMetal::not_said, EndMetal::steel, EndMetal::aluminium};
  HoseCandidate hose;
  hose.name = std::to_string(number);
  const Kind kind = one_of(draws, k_kinds);
  hose.family = kind.family;
  hose.size = kind.size;
  hose.ends = one_of(draws, k_ends);
  hose.carbon_loaded = Known::yes;
  hose.fluid_stated = Known::yes;
  hose.cure = "2Q2024";
  hose.assembly = "A3Q25";
  hose.proof = "2026-06-01";
  if (draws.uniform() < 0.6) {
    hose.operating = EnteredPressure{quantity::psi_gauge(draws.uniform(50, 3000)), 1, {}};
    if (draws.uniform() < 0.6) {
      hose.operating_to = EnteredTemperature{fahrenheit(draws.uniform(60, 450)), 1, {}};
    }
  }
  if (draws.uniform() < 0.4) {
    hose.highest = EnteredTemperature{fahrenheit(draws.uniform(100, 460)), 1, {}};
  }
  if (draws.uniform() < 0.7) hose.lowest = EnteredTemperature{fahrenheit(-65), 1, {}};
  return hose;
}

HoseRatingInput random_rating(statistics::Draws& draws, std::size_t hoses) {
  auto in = sample::oil_line();
  in.candidates.clear();
  in.demand.working_pressure = {quantity::psi_gauge(draws.uniform(0, 2500)), 1, {}};
  in.demand.surge = {{draws.uniform(0, 2e6)}, 1, {}};
  in.demand.fluid_highest = {fahrenheit(draws.uniform(0, 450)), 1, {}};
  in.demand.surrounding_highest = {fahrenheit(draws.uniform(0, 450)), 1, {}};
  in.demand.lowest = {fahrenheit(-20), 1, {}};
  for (std::size_t i = 0; i < hoses; ++i) in.candidates.push_back(random_hose(draws, i));
  return in;
}

TEST_F(RatingLaws, WhatIsAcceptedStaysSoWhenPressureOrHeatFall) {
  statistics::Draws draws(31);
  int accepted_ones = 0;
  for (int i = 0; i < 1200; ++i) {
    auto in = random_rating(draws, 1);
    if (draws.uniform() < 0.7) {  // gentle demands, so that enough of them are accepted
      in.demand.working_pressure.value.si *= 0.2;
      in.demand.surge.value.si *= 0.1;
    }
    if (!accepted(in)) continue;
    ++accepted_ones;
    in.demand.working_pressure.value.si *= draws.uniform();
    in.demand.surge.value.si *= draws.uniform();
    for (auto* hot : {&in.demand.fluid_highest, &in.demand.surrounding_highest}) {
      hot->value.si =
          in.demand.lowest.value.si + draws.uniform() * (hot->value.si - in.demand.lowest.value.si);
    }
    ASSERT_TRUE(accepted(in)) << i;
  }
  EXPECT_GT(accepted_ones, 100);
}

TEST_F(RatingLaws, TheOwnersLimitAlwaysWins) {
  statistics::Draws draws(32);
  for (int i = 0; i < 400; ++i) {
    auto in = random_rating(draws, 1);
    auto& hose = in.candidates[0];
    const double system = in.demand.working_pressure.value.si + in.demand.surge.value.si;
    const auto hottest =
        std::max(in.demand.fluid_highest.value, in.demand.surrounding_highest.value);
    // Below the demand: never accepted, whatever the table says.
    hose.operating = EnteredPressure{{system * 0.99 - 1.0}, 1, {}};
    hose.operating_to = EnteredTemperature{hottest, 1, {}};
    if (hose.operating->value.si > 0.0) {
      ASSERT_EQ(worst(in, "pressure"), "refuses") << i;
    }
    // Above it, and as hot: the pressure is never an objection, whatever the table says.
    hose.operating->value.si = system * 1.01 + 1.0;
    const auto said = worst(in, "pressure");
    ASSERT_TRUE(said == "met" || said == "advises") << i << said;
    ASSERT_EQ(worst(in, "both maxima"), "") << i;
    hose.highest = EnteredTemperature{{hottest.si + 0.5}, 1, {}};
    ASSERT_EQ(worst(in, "highest temperature"), "met") << i;
    hose.highest->value.si = hottest.si - 0.5;
    ASSERT_EQ(worst(in, "highest temperature"), "refuses") << i;
  }
}

TEST_F(RatingLaws, TheRankingIsAPermutationInOrder) {
  statistics::Draws draws(33);
  for (int i = 0; i < 120; ++i) {
    const auto hoses = static_cast<std::size_t>(draws.uniform(1, 12));
    const auto in = random_rating(draws, hoses);
    const auto got = hose_rating(in, context);
    ASSERT_TRUE(got);
    std::set<std::int64_t> numbers;
    for (std::size_t k = 0; k < got->ranked.size(); ++k) {
      const auto& rated = got->ranked[k];
      ASSERT_EQ(rated.place, static_cast<std::int64_t>(k) + 1);
      ASSERT_EQ(rated.name, in.candidates[static_cast<std::size_t>(rated.number) - 1].name);
      numbers.insert(rated.number);
      if (k == 0) continue;
      const auto& above = got->ranked[k - 1];
      ASSERT_LE(above.stands, rated.stands);
      if (above.stands == rated.stands && above.margin && rated.margin) {
        ASSERT_GE(above.margin->si, rated.margin->si);
      }
    }
    ASSERT_EQ(numbers.size(), hoses);
    ASSERT_EQ(*numbers.begin(), 1);
    ASSERT_EQ(*numbers.rbegin(), static_cast<std::int64_t>(hoses));
  }
}

// Judging a hose among others must not change what is said of it.
TEST_F(RatingLaws, EachIsJudgedByItself) {
  statistics::Draws draws(34);
  for (int i = 0; i < 80; ++i) {
    const auto in = random_rating(draws, 4);
    const auto all = hose_rating(in, context);
    ASSERT_TRUE(all);
    for (const auto& rated : all->ranked) {
      auto alone = in;
      alone.candidates = {in.candidates[static_cast<std::size_t>(rated.number) - 1]};
      const auto one = judged(alone);
      ASSERT_EQ(one.stands, rated.stands);
      ASSERT_EQ(one.reasons.size(), rated.reasons.size());
    }
  }
}

}  // namespace
