// Laws of harness, coils and breakdown, over seeded inputs.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "ignition/breakdown.hpp"
#include "ignition/coil.hpp"
#include "ignition/harness.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using evidence::Verdict;
using quantity::Length;

HarnessCheckInput random_harness(statistics::Draws& draws) {
  HarnessCheckInput in;
  const auto n = static_cast<int>(draws.uniform(4, 13));
  const double per_length = draws.uniform(50, 5000);
  for (int i = 0; i < n; ++i) {
    HarnessLead lead;
    lead.name = std::to_string(i + 1);
    const double length = draws.uniform(0.3, 1.5);
    lead.length = quantity::Measured<Length>{{length}, {}, 0.001, {}};
    const double ohm = per_length * length * draws.uniform(0.8, 1.2);
    lead.reading = MeasuredResistance{{ohm}, ohm * draws.uniform(0.002, 0.05), ohm * 1e-4, {}};
    lead.flexing = {MeasuredResistance{
        {ohm * draws.uniform(0.97, 1.03)}, lead.reading->expanded_si, ohm * 1e-4, {}}};
    in.leads.push_back(lead);
  }
  in.per_length_low = quantity::Entered<quantity::ResistancePerLength>{{per_length * 0.85}, 0, {}};
  in.per_length_high = quantity::Entered<quantity::ResistancePerLength>{{per_length * 1.15}, 0, {}};
  in.guard_from = evidence::GuardFrom::expanded;
  return in;
}

TEST(HarnessLaws, ABetterMeterNeverOverturnsAFirmVerdict) {
  statistics::Draws draws(11);
  for (int i = 0; i < 40; ++i) {
    auto in = random_harness(draws);
    const auto poor = harness_check(in, {});
    ASSERT_TRUE(poor);
    for (HarnessLead& lead : in.leads) {
      lead.flexing.clear();
      *lead.reading->expanded_si /= 2.0;
    }
    auto quiet = in;
    for (HarnessLead& lead : quiet.leads) *lead.reading->expanded_si *= 2.0;
    const auto before = harness_check(quiet, {});
    const auto after = harness_check(in, {});
    for (std::size_t k = 0; k < in.leads.size(); ++k) {
      if (before->leads[k].verdict == Verdict::undecided) continue;
      ASSERT_EQ(after->leads[k].verdict, before->leads[k].verdict);
    }
  }
}

TEST(HarnessLaws, ABetterMeterKeepsAnIntermittentLead) {
  statistics::Draws draws(12);
  for (int i = 0; i < 40; ++i) {
    auto in = random_harness(draws);
    const auto poor = harness_check(in, {});
    for (HarnessLead& lead : in.leads) {
      *lead.reading->expanded_si /= 2.0;
      *lead.flexing[0].expanded_si /= 2.0;
    }
    const auto better = harness_check(in, {});
    for (std::size_t k = 0; k < in.leads.size(); ++k) {
      if (poor->leads[k].in_words != "does not conform (intermittent)") continue;
      ASSERT_EQ(better->leads[k].in_words, poor->leads[k].in_words);
    }
  }
}

// Everything electrical times a thousand is the same harness told in another unit.
TEST(HarnessLaws, UnitsDoNotMatter) {
  statistics::Draws draws(13);
  for (int i = 0; i < 40; ++i) {
    auto in = random_harness(draws);
    const auto plain = harness_check(in, {});
    in.per_length_low->value.si *= 1000;
    in.per_length_high->value.si *= 1000;
    for (HarnessLead& lead : in.leads) {
      for (auto* r : {&*lead.reading, lead.flexing.data()}) {
        r->value.si *= 1000;
        r->resolution_si *= 1000;
        *r->expanded_si *= 1000;
      }
    }
    const auto scaled = harness_check(in, {});
    for (std::size_t k = 0; k < in.leads.size(); ++k) {
      ASSERT_EQ(scaled->leads[k].verdict, plain->leads[k].verdict);
      ASSERT_EQ(scaled->leads[k].siblings, plain->leads[k].siblings);
    }
  }
}

TEST(CoilLaws, WarmAndBackIsWhereItWas) {
  statistics::Draws draws(14);
  for (int i = 0; i < 500; ++i) {
    const auto a = quantity::celsius(draws.uniform(-40, 150));
    const auto b = quantity::celsius(draws.uniform(-40, 150));
    ASSERT_NEAR(copper_factor(a, b) * copper_factor(b, a), 1.0, 1e-12);
  }
}

TEST(BreakdownLaws, RisesWithGapAndDensityAboveItsMinimum) {
  statistics::Draws draws(15);
  for (int i = 0; i < 2000; ++i) {
    const Length gap{draws.uniform(2e-5, 1e-2)};
    const double density = draws.uniform(0.2, 10);
    const auto v = breakdown_townsend(gap, density);
    if (!v) continue;
    const double more = draws.uniform(1.001, 2);
    ASSERT_GT(breakdown_townsend(gap * more, density)->si, v->si);
    // Only their product counts.
    ASSERT_NEAR(breakdown_townsend(gap * more, density)->si,
                breakdown_townsend(gap, density * more)->si, v->si * 1e-9);
    ASSERT_GT(breakdown_linear(gap * more, density).si, breakdown_linear(gap, density).si);
  }
}

}  // namespace
