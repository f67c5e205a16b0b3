// Laws of the decision rules; draws are seeded, so a failure can be replayed.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>

#include "evidence/conformity.hpp"
#include "evidence/decision.hpp"
#include "evidence/uncertainty.hpp"
#include "statistics/draws.hpp"

namespace wm::evidence {
namespace {

using statistics::Draws;

struct Drawn {
  Knowledge known;
  Limits limits;
  RuleSettings settings;
};

Drawn drawn(Draws& d) {
  Drawn out;
  const double u = d.uniform(0.0, 2.0);
  out.known = {d.uniform(-3.0, 13.0), u, 2.0 * u, Distribution::normal};
  if (d.uniform() < 0.5) out.known.distribution = Distribution::rectangular;
  const double kind = d.uniform();
  if (kind < 0.6) out.limits.upper = d.uniform(6.0, 10.0);
  if (kind > 0.4) out.limits.lower = d.uniform(0.0, 5.0);
  out.settings.rule = d.uniform() < 0.5 ? Rule::guarded : Rule::probability;
  out.settings.guard_factor = d.uniform(0.0, 1.5);
  out.settings.probability = d.uniform(0.55, 0.999);
  return out;
}

std::string shown(const Drawn& c) {
  return fmt::format("y {} u {} lower {} upper {} rule {} P {}", c.known.value, c.known.u,
                     c.limits.lower.value_or(NAN), c.limits.upper.value_or(NAN),
                     static_cast<int>(c.settings.rule), c.settings.probability);
}

TEST(VerdictLaws, ABetterMeterNeverOverturnsAFirmVerdict) {
  Draws d(7);
  int firm = 0;
  for (int i = 0; i < 20'000; ++i) {
    auto c = drawn(d);
    const auto poor = decide(c.known, c.limits, c.settings)->verdict;
    if (poor == Verdict::undecided) continue;
    ++firm;
    const double better = d.uniform();
    c.known.u *= better;
    c.known.expanded *= better;
    ASSERT_EQ(decide(c.known, c.limits, c.settings)->verdict, poor) << shown(c);
  }
  EXPECT_GT(firm, 5000);
}

TEST(VerdictLaws, FurtherInsideNeverGetsWorse) {
  Draws d(8);
  for (int i = 0; i < 20'000; ++i) {
    auto c = drawn(d);
    if (decide(c.known, c.limits, c.settings)->verdict != Verdict::conforms) continue;
    // Half way towards the middle of the band, or away from the only limit.
    auto& y = c.known.value;
    if (c.limits.lower && c.limits.upper)
      y = 0.5 * y + 0.25 * (*c.limits.lower + *c.limits.upper);
    else
      y += (c.limits.upper ? -1.0 : 1.0) * d.uniform();
    ASSERT_EQ(decide(c.known, c.limits, c.settings)->verdict, Verdict::conforms) << shown(c);
  }
}

TEST(VerdictLaws, TheZoneAndTheVerdictAgree) {
  Draws d(9);
  for (int i = 0; i < 20'000; ++i) {
    const auto c = drawn(d);
    const auto got = decide(c.known, c.limits, c.settings);
    const double y = c.known.value;
    const double edge = 1e-9;
    const bool clearly_in = got->meter_good_enough &&
                            (!got->accept_from || y > *got->accept_from + edge) &&
                            (!got->accept_to || y < *got->accept_to - edge);
    const bool clearly_out = !got->meter_good_enough ||
                             (got->accept_from && y < *got->accept_from - edge) ||
                             (got->accept_to && y > *got->accept_to + edge);
    if (clearly_in) {
      ASSERT_EQ(got->verdict, Verdict::conforms) << shown(c);
    }
    if (clearly_out) {
      ASSERT_NE(got->verdict, Verdict::conforms) << shown(c);
    }
  }
}

TEST(VerdictLaws, MirroredInputsGiveTheSameVerdict) {
  Draws d(10);
  for (int i = 0; i < 20'000; ++i) {
    const auto c = drawn(d);
    auto m = c;
    m.known.value = -c.known.value;
    m.limits = {};
    if (c.limits.upper) m.limits.lower = -*c.limits.upper;
    if (c.limits.lower) m.limits.upper = -*c.limits.lower;
    ASSERT_EQ(decide(c.known, c.limits, c.settings)->verdict,
              decide(m.known, m.limits, m.settings)->verdict)
        << shown(c);
  }
}

TEST(VerdictLaws, AcceptedWithUAsGuardIsWrongLessThanOneInForty) {
  Draws d(11);
  for (int i = 0; i < 20'000; ++i) {
    auto c = drawn(d);
    c.settings = {};
    c.known.distribution = Distribution::normal;
    const auto got = decide(c.known, c.limits, c.settings);
    // 2.275 % a limit (ILAC-G8:09/2019: below 2.5 %), so 4.55 % for two.
    if (got->verdict == Verdict::conforms) {
      const double most = c.limits.lower && c.limits.upper ? 0.0456 : 0.0228;
      ASSERT_LT(got->false_accept, most) << shown(c);
    }
  }
}

TEST(UncertaintyLaws, MoreDoubtNeverMakesLess) {
  Draws d(12);
  for (int i = 0; i < 5'000; ++i) {
    std::vector<Component> parts;
    const auto n = 1 + d.index(6);
    for (std::uint64_t k = 0; k < n; ++k)
      parts.push_back(
          {"x", d.uniform(0, 5), d.uniform(-3, 3), d.uniform(1, 50), Distribution::normal, {}});
    const auto before = combine(parts);
    parts[d.index(n)].u *= 1.0 + d.uniform();
    const auto after = combine(parts);
    ASSERT_TRUE(before && after);
    ASSERT_GE(after->u, before->u);
    // nu_eff lies between the smallest nu and the sum of all.
    double least = k_no_end;
    double all = 0.0;
    for (const auto& p : parts) {
      least = std::min(least, p.dof);
      all += p.dof;
    }
    ASSERT_GE(*after->dof, least * (1 - 1e-12));
    ASSERT_LE(*after->dof, all * (1 + 1e-12));
  }
}

TEST(ConformityLaws, TheUnitTypedDoesNotMatter) {
  Draws d(13);
  for (int i = 0; i < 500; ++i) {
    const double kohm = std::round(d.uniform(10.0, 30.0) * 100.0) / 100.0;
    ConformityInput in;
    in.upper = *describe::read_any("27.60 kohm");
    in.lower = *describe::read_any("12.00 kohm");
    in.meter = MeterRange{};
    in.meter->of_reading = quantity::per_cent(0.9);
    in.meter->counts = 2;
    in.meter->resolution = *describe::read_any("0.01 kohm");
    in.reading = *describe::read_any(fmt::format("{:.2f} kohm", kohm));
    const auto a = conformity(in, {});
    in.reading = *describe::read_any(fmt::format("{:.0f} ohm", kohm * 1000.0));
    in.upper = *describe::read_any("0.0276 Mohm");
    const auto b = conformity(in, {});
    ASSERT_TRUE(a && b);
    ASSERT_EQ(a->verdict, b->verdict) << kohm;
    ASSERT_NEAR(a->guard->si, b->guard->si, 1e-9 * a->guard->si);
    ASSERT_NEAR(a->probability_of_conformity->si, b->probability_of_conformity->si, 1e-9);
    ASSERT_NEAR(a->allowance_used->si, b->allowance_used->si, 1e-12);
  }
}

}  // namespace
}  // namespace wm::evidence
