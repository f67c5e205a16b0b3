#include "evidence/risk.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "statistics/distributions.hpp"
#include "statistics/numeric.hpp"

namespace wm::evidence {
namespace {

using statistics::normal_cdf;

bool positive(double v) { return v > 0.0 && std::isfinite(v); }

Result<Done> check_inputs(const Prior& prior, double u, const Limits& limits) {
  if (!limits.lower && !limits.upper)
    return Fail(Kind::missing, "no limit, so no risk of breaking it", "a lower or upper limit");
  if (limits.lower && limits.upper && *limits.lower > *limits.upper)
    return Fail(Kind::conflict, "the lower limit lies above the upper one",
                "a lower limit below the upper one");
  if (!positive(u))
    return Fail(Kind::out_of_bounds, "the uncertainty of measurement must be above zero",
                "more than zero");
  const bool good = prior.law == Prior::Law::normal
                        ? positive(prior.sd) && std::isfinite(prior.mean)
                        : positive(prior.shape) && positive(prior.rate);
  if (!good)
    return Fail(Kind::out_of_bounds, "the spread of such parts must be above zero",
                "a mean and a standard deviation, or shape and rate, above zero");
  return Done{};
}

double density(const Prior& p, double x) {
  if (p.law == Prior::Law::normal) return statistics::normal_density((x - p.mean) / p.sd) / p.sd;
  return x < 0.0 ? 0.0 : statistics::gamma_density(x, p.shape, p.rate);
}

double below(const Prior& p, double x) {
  if (p.law == Prior::Law::normal) return normal_cdf((x - p.mean) / p.sd);
  return x <= 0.0 ? 0.0 : statistics::gamma_cdf(x, p.shape, p.rate);
}

/// P(accepted | true value) and its complement, normal error of measurement. Each is summed
/// from tails, never as 1 - the other: near 0 that would leave only rounding.
struct Chance {
  double accepted{};
  double rejected{};
};
Chance chance_of(double truth, double u, const Limits& accept) {
  if (accept.lower && accept.upper && *accept.lower > *accept.upper) return {0.0, 1.0};
  if (!accept.lower && !accept.upper) return {1.0, 0.0};
  const double to_upper = accept.upper ? (*accept.upper - truth) / u : k_no_end;
  const double to_lower = accept.lower ? (*accept.lower - truth) / u : -k_no_end;
  const auto below_z = [](double z) {
    return std::isinf(z) ? (z > 0.0 ? 1.0 : 0.0) : normal_cdf(z);
  };
  Chance c;
  c.rejected = std::min(1.0, below_z(-to_upper) + below_z(to_lower));
  c.accepted = to_lower > 0.0 ? below_z(-to_lower) - below_z(-to_upper)
                              : below_z(to_upper) - below_z(to_lower);
  return c;
}

bool inside(double x, const Limits& limits) {
  return !(limits.upper && x > *limits.upper) && !(limits.lower && x < *limits.lower);
}

/// Breaks wherever a factor bends, from one far end of the prior to the other.
std::vector<double> breaks_for(const Prior& p, double u, const Limits& limits,
                               const Limits& accept) {
  constexpr double k_tail = 1e-14;
  double low = 0.0;
  double high = 0.0;
  std::vector<double> breaks;
  if (p.law == Prior::Law::normal) {
    const double reach = -statistics::normal_quantile(k_tail);
    low = p.mean - reach * p.sd;
    high = p.mean + reach * p.sd;
    for (const double z : {-3.0, -1.0, 0.0, 1.0, 3.0}) breaks.push_back(p.mean + z * p.sd);
  } else {
    high = statistics::gamma_quantile(1.0 - k_tail, p.shape, p.rate);
    for (const double q : {0.001, 0.1, 0.5, 0.9})
      breaks.push_back(statistics::gamma_quantile(q, p.shape, p.rate));
  }
  for (const auto& t : {limits.lower, limits.upper})
    if (t) breaks.push_back(*t);
  for (const auto& a : {accept.lower, accept.upper})
    if (a)
      for (const double z : {-8.0, -4.0, -2.0, 0.0, 2.0, 4.0, 8.0}) breaks.push_back(*a + z * u);
  breaks.push_back(low);
  breaks.push_back(high);
  std::erase_if(breaks, [&](double b) { return b < low || b > high; });
  std::sort(breaks.begin(), breaks.end());
  // Breaks that differ by rounding alone leave slivers in which a quadrature finds only noise.
  const double sliver = 1e-12 * (high - low);
  const auto same = [&](double a, double b) { return b - a <= sliver; };
  breaks.erase(std::unique(breaks.begin(), breaks.end(), same), breaks.end());
  return breaks;
}

Limits shifted(const Limits& limits, double by) {
  Limits out;
  if (limits.lower) out.lower = *limits.lower + by;
  if (limits.upper) out.upper = *limits.upper + by;
  return out;
}

GlobalRisk risk_of(const Prior& asked, double u, const Limits& asked_limits,
                   const Limits& asked_accept) {
  // Counted from the prior's mean: 1500.2 - 1500 inside the integral would cost its digits.
  Prior prior = asked;
  if (prior.law == Prior::Law::normal) prior.mean = 0.0;
  const double by = asked.law == Prior::Law::normal ? -asked.mean : 0.0;
  const Limits limits = shifted(asked_limits, by);
  const Limits accept = shifted(asked_accept, by);
  GlobalRisk risk;
  const auto breaks = breaks_for(prior, u, limits, accept);
  for (std::size_t i = 1; i < breaks.size(); ++i) {
    const double piece[2] = {breaks[i - 1], breaks[i]};
    const bool in = inside(piece[0] + (piece[1] - piece[0]) / 2.0, limits);
    const double taken = statistics::integrate(
        [&](double t) { return density(prior, t) * chance_of(t, u, accept).accepted; }, piece);
    risk.accepted += taken;
    if (!in) {
      risk.consumer += taken;
    } else {
      risk.producer += statistics::integrate(
          [&](double t) { return density(prior, t) * chance_of(t, u, accept).rejected; }, piece);
    }
  }
  double within = limits.upper ? below(prior, *limits.upper) : 1.0;
  if (limits.lower) within -= below(prior, *limits.lower);
  risk.outside = 1.0 - within;
  return risk;
}

Limits narrowed(const Limits& limits, double guard) {
  Limits out;
  if (limits.lower) out.lower = *limits.lower + guard;
  if (limits.upper) out.upper = *limits.upper - guard;
  return out;
}

}  // namespace

Result<GlobalRisk> global_risk(const Prior& prior, double u_measurement, const Limits& limits,
                               const Limits& accept) {
  if (const auto good = check_inputs(prior, u_measurement, limits); !good)
    return Fail(good.error());
  return risk_of(prior, u_measurement, limits, accept);
}

Result<double> guard_for_consumer_risk(const Prior& prior, double u_measurement,
                                       const Limits& limits, double target) {
  if (const auto good = check_inputs(prior, u_measurement, limits); !good)
    return Fail(good.error());
  if (!(target > 0.0 && target < 1.0))
    return Fail(Kind::out_of_bounds, "a risk lies between 0 and 100 %", "0 % to 100 %", "0.1 %");
  const auto excess = [&](double guard) {
    return risk_of(prior, u_measurement, limits, narrowed(limits, guard)).consumer - target;
  };
  if (excess(0.0) <= 0.0) return 0.0;
  const bool both = limits.lower && limits.upper;
  double most = both ? (*limits.upper - *limits.lower) / 2.0 : u_measurement;
  for (int doubled = 0; !both && doubled < 40 && excess(most) > 0.0; ++doubled) most *= 2.0;
  return statistics::crossing(excess, 0.0, most);
}

Result<Knowledge> after_measuring(const Prior& prior, double reading, double u_measurement) {
  if (prior.law != Prior::Law::normal)
    return Fail(Kind::not_applicable, "the closed form holds for a normal prior only",
                "a normal prior");
  if (!positive(prior.sd) || !positive(u_measurement) || !std::isfinite(reading))
    return Fail(Kind::out_of_bounds, "both standard deviations must be above zero",
                "more than zero");
  const double before = 1.0 / (prior.sd * prior.sd);
  const double measured = 1.0 / (u_measurement * u_measurement);
  Knowledge out;
  out.value = (prior.mean * before + reading * measured) / (before + measured);
  out.u = 1.0 / std::sqrt(before + measured);
  out.expanded = 2.0 * out.u;
  return out;
}

}  // namespace wm::evidence
