#include "evidence/decision.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "evidence/detail/figures.hpp"
#include "statistics/distributions.hpp"
#include "statistics/numeric.hpp"

namespace wm::evidence {
namespace {

using detail::per_cent;

/// P(true value <= limit).
double probability_below(const Knowledge& k, double limit) {
  if (k.u == 0.0) return k.value <= limit ? 1.0 : 0.0;
  if (k.distribution == Distribution::rectangular) {
    const double a = std::numbers::sqrt3 * k.u;
    return std::clamp((limit - k.value + a) / (2.0 * a), 0.0, 1.0);
  }
  return statistics::normal_cdf((limit - k.value) / k.u);
}

/// P(true value >= limit), with its own digits in the far tail.
double probability_above(const Knowledge& k, double limit) {
  Knowledge mirrored = k;
  mirrored.value = -k.value;
  return probability_below(mirrored, -limit);
}

Result<Done> check_inputs(const Knowledge& known, const Limits& limits, const RuleSettings& s) {
  if (!limits.lower && !limits.upper)
    return Fail(Kind::missing, "no limit to judge against",
                "a lower or an upper limit; without one, compare with siblings or the baseline");
  if (limits.lower && limits.upper && *limits.lower > *limits.upper)
    return Fail(Kind::conflict, "the lower limit lies above the upper one",
                "a lower limit below the upper one");
  if (!(known.u >= 0.0) || !(known.expanded >= 0.0) || !std::isfinite(known.value) ||
      !std::isfinite(known.u) || !std::isfinite(known.expanded))
    return Fail(Kind::out_of_bounds, "the reading or its uncertainty is not a usable number",
                "numbers; uncertainty zero or more");
  if (!(s.guard_factor >= 0.0 && s.guard_factor <= 10.0))
    return Fail(Kind::out_of_bounds, "guard factor outside 0 to 10", "0 to 10", "1");
  if (!(s.probability > 0.5 && s.probability < 1.0))
    return Fail(Kind::out_of_bounds, "required probability must lie between 50 % and 100 %",
                "above 50 %, below 100 %", "95 %");
  return Done{};
}

double guard_of(const Knowledge& known, const RuleSettings& s) {
  return s.rule == Rule::guarded ? s.guard_factor * known.expanded : 0.0;
}

Verdict by_guard(double value, double w, const Limits& limits) {
  bool sure = true;
  if (limits.upper) {
    const Verdict v = judge_upper(value, w, *limits.upper);
    if (v == Verdict::does_not_conform) return v;
    sure = sure && v == Verdict::conforms;
  }
  if (limits.lower) {
    const Verdict v = judge_lower(value, w, *limits.lower);
    if (v == Verdict::does_not_conform) return v;
    sure = sure && v == Verdict::conforms;
  }
  return sure ? Verdict::conforms : Verdict::undecided;
}

Verdict by_probability(const Knowledge& known, const Limits& limits, double inside, double p) {
  if (inside >= p) return Verdict::conforms;
  // Strictly outside: 1 - P(at or below the limit).
  if (limits.upper && 1.0 - probability_below(known, *limits.upper) >= p)
    return Verdict::does_not_conform;
  if (limits.lower && 1.0 - probability_above(known, *limits.lower) >= p)
    return Verdict::does_not_conform;
  return Verdict::undecided;
}

/// How far inside one limit a value must lie for probability p with that limit alone.
double margin_for(double p, double u, Distribution distribution) {
  if (distribution == Distribution::rectangular) return (2.0 * p - 1.0) * std::numbers::sqrt3 * u;
  return statistics::normal_quantile(p) * u;
}

Acceptance zone_by_probability(double u, Distribution distribution, const Limits& limits,
                               double p) {
  Acceptance zone;
  const double margin = margin_for(p, u, distribution);
  if (limits.lower && limits.upper) {
    // Both tails count. The best place is the middle; from there out, the chance only falls.
    const double middle = *limits.lower + (*limits.upper - *limits.lower) / 2.0;
    const auto excess = [&](double y) {
      return probability_inside({y, u, 0.0, distribution}, limits) - p;
    };
    zone.any = excess(middle) >= 0.0;
    if (!zone.any) return zone;
    if (u == 0.0) return {limits.lower, limits.upper, true};
    const auto to = statistics::crossing(excess, middle, *limits.upper);
    zone.to = to ? *to : *limits.upper;
    zone.from = *limits.lower + (*limits.upper - *zone.to);
    return zone;
  }
  zone.any = true;
  if (limits.upper) zone.to = *limits.upper - margin;
  if (limits.lower) zone.from = *limits.lower + margin;
  return zone;
}

Acceptance zone_of(const Knowledge& known, const Limits& limits, const RuleSettings& s) {
  if (s.rule == Rule::probability)
    return zone_by_probability(known.u, known.distribution, limits, s.probability);
  const double w = guard_of(known, s);
  Acceptance zone;
  if (limits.lower) zone.from = *limits.lower + w;
  if (limits.upper) zone.to = *limits.upper - w;
  zone.any = !(zone.from && zone.to && *zone.from > *zone.to);
  if (!zone.any) return Acceptance{};
  return zone;
}

}  // namespace

std::string_view describe(describe::Choices<Rule>& c) {
  c.has(Rule::guarded, "guarded", "guarded: inside even with the meter's doubt added");
  c.has(Rule::simple, "simple", "simple: the reading as it stands");
  c.has(Rule::probability, "probability", "by probability of conformity");
  return "decision-rule";
}

double probability_inside(const Knowledge& known, const Limits& limits) {
  // The smaller tails are taken off 1, so that a chance near 1 keeps its digits.
  double outside = 0.0;
  if (known.u == 0.0) {
    const bool over = limits.upper && known.value > *limits.upper;
    const bool under = limits.lower && known.value < *limits.lower;
    return over || under ? 0.0 : 1.0;
  }
  if (limits.upper) outside += probability_above(known, *limits.upper);
  if (limits.lower) outside += probability_below(known, *limits.lower);
  return std::clamp(1.0 - outside, 0.0, 1.0);
}

Result<Decision> decide(const Knowledge& known, const Limits& limits,
                        const RuleSettings& settings) {
  if (const auto good = check_inputs(known, limits, settings); !good) return Fail(good.error());
  Decision d;
  d.guard = guard_of(known, settings);
  d.probability_inside = probability_inside(known, limits);
  d.false_accept = 1.0 - d.probability_inside;
  d.false_reject = d.probability_inside;
  d.verdict = settings.rule == Rule::probability
                  ? by_probability(known, limits, d.probability_inside, settings.probability)
                  : by_guard(known.value, d.guard, limits);
  const Acceptance zone = zone_of(known, limits, settings);
  d.accept_from = zone.from;
  d.accept_to = zone.to;
  d.meter_good_enough = zone.any;
  return d;
}

Result<Acceptance> acceptance_zone(double u, double expanded, Distribution distribution,
                                   const Limits& limits, const RuleSettings& settings) {
  const Knowledge known{0.0, u, expanded, distribution};
  if (const auto good = check_inputs(known, limits, settings); !good) return Fail(good.error());
  return zone_of(known, limits, settings);
}

std::optional<double> allowance_used(double value, const Limits& limits) {
  if (limits.lower && limits.upper) {
    const double half = (*limits.upper - *limits.lower) / 2.0;
    if (!(half > 0.0)) return std::nullopt;
    return std::abs(value - (*limits.lower + half)) / half;
  }
  if (limits.upper && *limits.upper > 0.0) return std::max(0.0, value / *limits.upper);
  if (limits.lower && *limits.lower > 0.0 && value > 0.0) return *limits.lower / value;
  return std::nullopt;
}

std::string risk_in_words(const Decision& d, const RuleSettings& settings) {
  switch (d.verdict) {
    case Verdict::conforms:
      return fmt::format("chance that it is in truth outside: {}{}", per_cent(d.false_accept),
                         settings.rule == Rule::simple
                             ? " (simple acceptance: up to 50 % at the limit itself)"
                             : "");
    case Verdict::does_not_conform:
      return fmt::format("chance that it is in truth inside: {}{}", per_cent(d.false_reject),
                         settings.rule == Rule::simple
                             ? " (simple acceptance: up to 50 % at the limit itself)"
                             : "");
    case Verdict::undecided:
      return fmt::format("chance of being inside {}, outside {}: not enough to decide",
                         per_cent(d.probability_inside), per_cent(d.false_accept));
    case Verdict::not_tested:
      break;
  }
  return "nothing was measured, so nothing is known";
}

}  // namespace wm::evidence
