#include "evidence/uncertainty.hpp"

#include <fmt/format.h>

#include <cassert>
#include <cmath>
#include <numbers>

#include "evidence/detail/figures.hpp"
#include "statistics/distributions.hpp"
#include "statistics/summary.hpp"

namespace wm::evidence {
namespace {

using detail::figure;

double contribution(const Component& c) { return std::abs(c.sensitivity) * c.u; }

Result<Done> check_components(std::span<const Component> components) {
  if (components.empty())
    return Fail(Kind::missing, "no component of uncertainty was given", "one or more");
  for (const auto& c : components) {
    if (!(c.u >= 0.0) || !std::isfinite(c.u) || !std::isfinite(c.sensitivity))
      return Fail(Kind::out_of_bounds, fmt::format("`{}` has no usable uncertainty", c.what),
                  "a number, zero or more");
    if (!(c.dof > 0.0))
      return Fail(Kind::out_of_bounds, fmt::format("`{}` has no degrees of freedom", c.what),
                  "more than zero: two readings give one");
  }
  return Done{};
}

Result<Done> check_correlations(std::size_t n, std::span<const Correlation> correlations) {
  for (std::size_t i = 0; i < correlations.size(); ++i) {
    const auto& c = correlations[i];
    if (c.first >= n || c.second >= n)
      return Fail(Kind::not_found, "a correlation names an input that is not there",
                  fmt::format("inputs 0 to {}", n - 1));
    if (c.first == c.second)
      return Fail(Kind::conflict, "an input cannot be correlated with itself",
                  "two different inputs");
    if (!(c.r >= -1.0 && c.r <= 1.0))
      return Fail(Kind::out_of_bounds, "a correlation lies outside -1 to 1", "-1 to 1", "-0.36");
    for (std::size_t j = 0; j < i; ++j) {
      const auto& d = correlations[j];
      if ((d.first == c.first && d.second == c.second) ||
          (d.first == c.second && d.second == c.first))
        return Fail(Kind::conflict, "the same pair of inputs is correlated twice",
                    "each pair once");
    }
  }
  return Done{};
}

bool any_correlated(std::span<const Correlation> correlations) {
  for (const auto& c : correlations)
    if (c.r != 0.0) return true;
  return false;
}

double welch_satterthwaite(double u, std::span<const Component> components) {
  if (u == 0.0) return k_no_end;
  double sum = 0.0;
  for (const auto& c : components) {
    const double share = contribution(c) / u;  // first divided: no overflow of fourth powers
    if (!std::isinf(c.dof)) sum += share * share * share * share / c.dof;
  }
  return sum > 0.0 ? 1.0 / sum : k_no_end;
}

std::string sum_of_squares(std::span<const BudgetLine> lines, double u, bool correlated) {
  std::string sum;
  for (const auto& line : lines) {
    if (!sum.empty()) sum += " + ";
    sum += figure(line.contribution) + "^2";
  }
  return fmt::format("u = sqrt({}{}) = {}", sum, correlated ? " + 2 sum(c c r u u)" : "",
                     figure(u));
}

}  // namespace

std::string_view word(Distribution distribution) {
  switch (distribution) {
    case Distribution::normal:
      return "normal";
    case Distribution::rectangular:
      return "rectangular";
    case Distribution::triangular:
      return "triangular";
    case Distribution::arcsine:
      return "arcsine";
    case Distribution::student_t:
      return "student-t";
  }
  return "normal";
}

double divisor(Distribution distribution) {
  switch (distribution) {
    case Distribution::rectangular:
      return std::numbers::sqrt3;
    case Distribution::triangular:
      return std::numbers::sqrt2 * std::numbers::sqrt3;
    case Distribution::arcsine:
      return std::numbers::sqrt2;
    case Distribution::normal:
    case Distribution::student_t:
      break;
  }
  return 1.0;
}

Result<Component> type_a(std::string what, std::span<const double> repeats) {
  const auto s = statistics::standard_deviation(repeats);
  if (!s)
    return Fail(Kind::not_applicable, "one reading shows no scatter",
                "two readings or more, each taken afresh");
  const auto n = static_cast<double>(repeats.size());
  Component c;
  c.what = std::move(what);
  c.u = *s / std::sqrt(n);
  c.dof = n - 1.0;
  c.distribution = Distribution::student_t;
  c.how = fmt::format("{} readings, s = {}: s / sqrt({}) = {}", repeats.size(), figure(*s),
                      repeats.size(), figure(c.u));
  return c;
}

Component type_b(std::string what, double half_width, Distribution distribution, double dof) {
  assert(half_width >= 0.0 && dof > 0.0);
  Component c;
  c.what = std::move(what);
  c.u = half_width / divisor(distribution);
  c.dof = dof;
  c.distribution = distribution;
  const char* root = distribution == Distribution::triangular    ? " / sqrt(6)"
                     : distribution == Distribution::arcsine     ? " / sqrt(2)"
                     : distribution == Distribution::rectangular ? " / sqrt(3)"
                                                                 : "";
  c.how = fmt::format("+-{}, {}: {}{} = {}", figure(half_width), word(distribution),
                      figure(half_width), root, figure(c.u));
  return c;
}

Component type_b_stated(std::string what, double expanded, double k, double dof) {
  assert(expanded >= 0.0 && k > 0.0);
  Component c;
  c.what = std::move(what);
  c.u = expanded / k;
  c.dof = dof;
  c.how = fmt::format("stated +-{} with k = {}: {} / {} = {}", figure(expanded), figure(k),
                      figure(expanded), figure(k), figure(c.u));
  return c;
}

Component last_digit(std::string what, double step) {
  assert(step >= 0.0);
  Component c;
  c.what = std::move(what);
  c.u = step / std::sqrt(12.0);
  c.distribution = Distribution::rectangular;
  c.how = fmt::format("step {}: {} / sqrt(12) = {}", figure(step), figure(step), figure(c.u));
  return c;
}

double dof_from_doubt(double share) {
  assert(share > 0.0);
  return 0.5 / (share * share);
}

Result<Combined> combine(std::span<const Component> components,
                         std::span<const Correlation> correlations) {
  if (const auto good = check_components(components); !good) return Fail(good.error());
  if (const auto good = check_correlations(components.size(), correlations); !good)
    return Fail(good.error());
  double squares = 0.0;
  for (const auto& c : components) squares += contribution(c) * contribution(c);
  double variance = squares;
  for (const auto& c : correlations) {
    const auto& a = components[c.first];
    const auto& b = components[c.second];
    variance += 2.0 * a.sensitivity * b.sensitivity * c.r * a.u * b.u;
  }
  if (!std::isfinite(variance))
    return Fail(Kind::out_of_bounds, "the uncertainties are too large to be squared",
                "uncertainties of a sensible size");
  if (variance < -1e-12 * squares)
    return Fail(Kind::conflict, "these correlations cannot all be true: the sum is negative",
                "correlations found from one set of readings");
  Combined out;
  out.u = std::sqrt(std::max(0.0, variance));
  out.correlated = any_correlated(correlations);
  if (!out.correlated) out.dof = welch_satterthwaite(out.u, components);
  for (const auto& c : components) {
    const double part = contribution(c);
    const double share = out.u > 0.0 ? (part / out.u) * (part / out.u) : 0.0;
    out.lines.push_back({c.what, c.how, c.u, c.sensitivity, part, share, c.dof});
  }
  out.working = sum_of_squares(out.lines, out.u, out.correlated);
  return out;
}

Result<double> effective_dof(std::span<const Component> components,
                             std::span<const Correlation> correlations) {
  const auto combined = combine(components, correlations);
  if (!combined) return Fail(combined.error());
  if (combined->dof) return *combined->dof;
  Problem p;
  p.kind = Kind::not_applicable;
  p.what = "effective degrees of freedom do not exist for correlated inputs";
  p.expected = "independent inputs";
  p.do_next = "use k = 2, or evaluate the result once for each set of readings and take a Type A";
  p.source = "JCGM 100:2008, G.4.1 (needs independent inputs)";
  return Fail(p);
}

Result<Coverage> coverage(CoverageRule rule, double level, std::optional<double> dof) {
  if (rule == CoverageRule::k_two) {
    const double reached =
        dof ? 2.0 * statistics::t_cdf(2.0, *dof) - 1.0 : 2.0 * statistics::normal_cdf(2.0) - 1.0;
    std::string method = "k = 2";
    if (!dof)
      method += ", about 95 % if the result is near normal";
    else
      method += fmt::format(", {} by Student's t", detail::per_cent(reached));
    return Coverage{2.0, reached, method};
  }
  if (!(level >= 0.5 && level <= 0.9999))
    return Fail(Kind::out_of_bounds, "coverage level outside 50 % to 99.99 %", "50 % to 99.99 %",
                "95 %");
  if (!dof)
    return Fail(Kind::not_applicable, "Student's t needs degrees of freedom, and there are none",
                "independent inputs, or k = 2");
  // Ends of a hair below a whole number come from rounded inputs, so they count as whole.
  const bool cut = rule == CoverageRule::t_truncated && !std::isinf(*dof);
  const double nu = cut ? std::floor(*dof + 0.01) : *dof;
  if (nu < 1.0)
    return Fail(Kind::not_applicable, "fewer than one degree of freedom: take more readings",
                "three readings or more");
  const double k = statistics::t_quantile(0.5 + level / 2.0, nu);
  std::string method = std::isinf(nu)
                           ? fmt::format("normal, {}: k = {}", detail::per_cent(level), figure(k))
                           : fmt::format("Student's t, {}, nu_eff = {}{}: k = {}",
                                         detail::per_cent(level), figure(*dof),
                                         cut ? fmt::format(" cut to {}", figure(nu))
                                             : std::string(", not cut to a whole number"),
                                         figure(k));
  return Coverage{k, level, method};
}

}  // namespace wm::evidence
