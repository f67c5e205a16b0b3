// Laws of lead checks, over seeded inputs.
#include <gtest/gtest.h>

#include <cmath>

#include "ignition/lead.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using evidence::Verdict;

LeadCheckInput random_lead(statistics::Draws& draws) {
  LeadCheckInput in;
  const double length = draws.uniform(0.2, 2);
  const double low = draws.uniform(500, 10000);
  const double high = low * draws.uniform(1.2, 3);
  in.length = quantity::Measured<quantity::Length>{{length}, {}, 0.01, {}};
  in.per_length_low = quantity::Entered<quantity::ResistancePerLength>{{low}, 1, {}};
  in.per_length_high = quantity::Entered<quantity::ResistancePerLength>{{high}, 1, {}};
  const double value = length * draws.uniform(low * 0.7, high * 1.3);
  in.reading = MeasuredResistance{{value}, value * draws.uniform(0.001, 0.05), value * 1e-4, {}};
  in.guard_from = evidence::GuardFrom::expanded;
  return in;
}

TEST(LeadLaws, ALongerLeadMayHaveMore) {
  statistics::Draws draws(1);
  for (int i = 0; i < 500; ++i) {
    auto in = random_lead(draws);
    const double before = lead_check(in, {})->highest->value.si;
    in.length->value.si *= 1.0 + draws.uniform();
    ASSERT_GT(lead_check(in, {})->highest->value.si, before);
  }
}

TEST(LeadLaws, ABetterMeterNeverOverturnsAFirmVerdict) {
  statistics::Draws draws(2);
  for (int i = 0; i < 500; ++i) {
    auto in = random_lead(draws);
    const Verdict poor = lead_check(in, {})->verdict;
    if (poor == Verdict::undecided) continue;
    in.reading->expanded_si = *in.reading->expanded_si / 2.0;
    ASSERT_EQ(lead_check(in, {})->verdict, poor);
  }
}

TEST(LeadLaws, ABetterKnownLengthNeverOverturnsAFirmVerdict) {
  statistics::Draws draws(3);
  for (int i = 0; i < 500; ++i) {
    auto in = random_lead(draws);
    in.length->expanded_si = in.length->value.si * draws.uniform(0, 0.2);
    const Verdict poor = lead_check(in, {})->verdict;
    if (poor == Verdict::undecided) continue;
    in.length->expanded_si.reset();
    ASSERT_EQ(lead_check(in, {})->verdict, poor);
  }
}

// Everything electrical times a thousand is the same lead told in another unit.
TEST(LeadLaws, UnitsDoNotMatter) {
  statistics::Draws draws(4);
  for (int i = 0; i < 500; ++i) {
    auto in = random_lead(draws);
    const auto plain = lead_check(in, {});
    in.per_length_low->value.si *= 1000;
    in.per_length_high->value.si *= 1000;
    in.reading->value.si *= 1000;
    in.reading->expanded_si = *in.reading->expanded_si * 1000;
    in.reading->resolution_si *= 1000;
    const auto scaled = lead_check(in, {});
    ASSERT_EQ(scaled->verdict, plain->verdict);
    ASSERT_NEAR(scaled->allowance_used->si, plain->allowance_used->si, 1e-9);
  }
}

}  // namespace
