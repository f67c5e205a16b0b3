#include "reliability/life_estimate.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "quantity/as_typed.hpp"
#include "reliability/detail/problem.hpp"
#include "statistics/distributions.hpp"

namespace wm::reliability {
namespace {

using detail::problem;
using quantity::pencil;

constexpr double k_hour = 3600.0;
constexpr int k_few = 10;
constexpr int k_very_few = 5;

double hours_of(Duration d) { return d.si / k_hour; }
Duration in_hours(double h) { return quantity::hours(h); }

Problems wrong_ages(const std::vector<PartLife>& parts) {
  Problems out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const PartLife& p = parts[i];
    const auto path = [&](const char* f) { return fmt::format("parts/{}/{}", i, f); };
    if (!(p.age.si > 0.0)) {
      out.push_back(
          problem(path("age"), Kind::missing, "no age is given", "more than 0 h", "310 h"));
    }
    if (p.ending == Ending::failed_between && !p.until) {
      out.push_back(problem(path("until"), Kind::missing, "the later of two ages is not given",
                            "the age at which it was found failed", "400 h"));
    }
    if (p.until && p.ending == Ending::failed_between && p.until->si <= p.age.si) {
      out.push_back(problem(path("until"), Kind::conflict, "the later age is not later",
                            fmt::format("more than {} h", pencil(hours_of(p.age)))));
    }
    const bool before = p.ending == Ending::failed_before;
    if (p.entered && p.entered->si > 0.0 && (before || p.entered->si >= p.age.si)) {
      out.push_back(problem(path("entered"), Kind::conflict,
                            before ? "a part that came with an age was in order then"
                                   : "it came with an age that it reached only later",
                            before ? "failed between that age and the other"
                                   : fmt::format("less than {} h", pencil(hours_of(p.age)))));
    }
  }
  return out;
}

std::vector<Life> lives_of(const std::vector<PartLife>& parts) {
  std::vector<Life> out;
  for (const PartLife& p : parts) {
    out.push_back({p.ending, hours_of(p.age), p.until ? hours_of(*p.until) : 0.0,
                   p.entered ? hours_of(*p.entered) : 0.0});
  }
  return out;
}

std::string range(const Limits& l) {
  return fmt::format("{} to {}", pencil(l.low), pencil(l.high));
}

std::optional<Duration> finite(double h) {
  if (std::isfinite(h)) return in_hours(h);
  return {};
}

std::string shape_words(const Limits& l) {
  if (l.low > 1.0) return "failures come more often with age: wear is shown";
  if (l.high < 1.0) {
    return "failures come less often with age: look at quality and at fitting, not at renewing";
  }
  return "neither wear nor early failures are shown: these lives fit a constant rate too";
}

void small_sample(int failures, std::vector<std::string>& notes) {
  if (failures < k_very_few) {
    notes.push_back(fmt::format(
        "{} failures: the shape is hardly known, and its estimate is likely too high. Use the "
        "limits, not the single figure.",
        failures));
  } else if (failures < k_few) {
    notes.push_back(fmt::format(
        "{} failures are few: the limits by likelihood ratio count; those by curvature are too "
        "narrow or misplaced.",
        failures));
  }
  notes.emplace_back(
      "For parts renewed by new ones. Snags of a system that is repaired in place belong in "
      "failure-trend.");
}

}  // namespace

Checked<LifeEstimateAnswer> life_estimate(const LifeEstimateInput& input,
                                          const describe::Context& /*context*/) {
  auto problems = wrong_ages(input.parts);
  if (!problems.empty()) return Fail(std::move(problems));
  const auto lives = lives_of(input.parts);
  const auto fit = fit_weibull(lives);
  if (!fit) {
    Problem p = fit.error();
    p.path = "parts";
    p.do_next = "zero-failure-bound gives a bound with a shape taken as known";
    return Fail(Problems{std::move(p)});
  }
  const double confidence = input.confidence.si;
  const double share = input.share_failed.si;
  const double at_scale = -std::expm1(-1.0);
  const auto shape = ratio_shape(lives, *fit, confidence);
  const auto scale = ratio_life(lives, *fit, at_scale, confidence);
  const auto life = ratio_life(lives, *fit, share, confidence);
  LifeEstimateAnswer out;
  out.shape = fit->shape;
  out.shape_low = shape.low;
  if (std::isfinite(shape.high)) out.shape_high = shape.high;
  out.scale = in_hours(fit->scale);
  out.scale_low = in_hours(scale.low);
  out.scale_high = finite(scale.high);
  out.life = in_hours(fit->life_at(share));
  out.life_low = in_hours(life.low);
  out.life_high = finite(life.high);
  out.mean = in_hours(fit->mean());
  out.log_likelihood = fit->log_likelihood;
  out.curvature_limits = fmt::format("shape {}, scale {} h", range(wald_shape(*fit, confidence)),
                                     range(wald_scale(*fit, confidence)));
  out.constant_rate_mean = in_hours(best_scale_at_shape(lives, 1.0));
  out.age_shown = shape.low > 1.0 || shape.high < 1.0;
  out.in_words = fmt::format("{} failures among {} parts: shape {} ({}), scale {} h ({}); {}.",
                             fit->failures, lives.size(), pencil(fit->shape), range(shape),
                             pencil(fit->scale), range(scale), shape_words(shape));
  small_sample(fit->failures, out.notes);
  if (const auto curve = survival_curve(lives)) {
    for (const auto& s : *curve) {
      out.curve.push_back(
          {in_hours(s.age), s.at_risk, s.failed, {s.survival}, s.deviation, s.hazard_sum});
    }
  } else {
    out.notes.emplace_back("No survival curve: a failure is known only to an interval.");
  }
  out.working.push_back(fmt::format("ln likelihood {} at shape {}, scale {} h",
                                    pencil(fit->log_likelihood), pencil(fit->shape),
                                    pencil(fit->scale)));
  out.working.push_back(fmt::format("{} % failed at {} x (-ln(1 - {}))^(1 / {}) = {} h",
                                    pencil(share * 100.0), pencil(fit->scale), pencil(share),
                                    pencil(fit->shape), pencil(fit->life_at(share))));
  return out;
}

Checked<SurvivalNextAnswer> survival_next(const SurvivalNextInput& input,
                                          const describe::Context& /*context*/) {
  if (!(input.scale.si > 0.0) || !(input.shape > 0.0)) {
    return Fail(Problems{problem(input.shape > 0.0 ? "scale" : "shape", Kind::missing,
                                 "the law of the part is not given", "shape and scale above 0")});
  }
  const auto failure = [&](double shape) {
    const double now = std::pow(input.age / input.scale, shape);
    const double then = std::pow((input.age + input.next) / input.scale, shape);
    return -std::expm1(now - then);
  };
  SurvivalNextAnswer out;
  out.failure = {failure(input.shape)};
  out.survival = {1.0 - out.failure.si};
  if (input.shape_low && input.shape_high) {
    const auto [low, high] = std::minmax({failure(*input.shape_low), failure(*input.shape_high)});
    out.failure_low = Fraction{low};
    out.failure_high = Fraction{high};
  }
  out.in_words = fmt::format(
      "of a hundred parts of {} h that are in order now, about {:.3g} fail in "
      "the next {} h",
      pencil(hours_of(input.age)), out.failure.si * 100.0, pencil(hours_of(input.next)));
  out.working.push_back(fmt::format("({} / {})^{} = {}", pencil(hours_of(input.age)),
                                    pencil(hours_of(input.scale)), pencil(input.shape),
                                    pencil(std::pow(input.age / input.scale, input.shape))));
  out.working.push_back(fmt::format(
      "({} / {})^{} = {}", pencil(hours_of(input.age + input.next)), pencil(hours_of(input.scale)),
      pencil(input.shape), pencil(std::pow((input.age + input.next) / input.scale, input.shape))));
  out.working.push_back(fmt::format("survival = e^(first - second) = {}", pencil(out.survival.si)));
  return out;
}

Checked<ZeroFailureAnswer> zero_failure_bound(const ZeroFailureInput& input,
                                              const describe::Context& /*context*/) {
  auto problems = wrong_ages(input.parts);
  if (input.parts.empty()) {
    problems.push_back(problem("parts", Kind::missing, "no part is listed", "one part or more"));
  }
  if (input.ended == TestEnd::at_a_failure && input.failures == 0) {
    problems.push_back(problem("failures", Kind::conflict,
                               "ended at a failure, but none is counted", "1 or more", "1"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  double sum = 0.0;
  for (const Life& l : lives_of(input.parts)) {
    sum += std::pow(l.age, input.shape) - (l.entered > 0 ? std::pow(l.entered, input.shape) : 0.0);
  }
  const auto r = static_cast<double>(input.failures);
  const double extra = input.ended == TestEnd::at_a_time ? 2.0 : 0.0;
  const double confidence = input.confidence.si;
  const auto root = [&](double x) { return std::pow(x, 1.0 / input.shape); };
  const double quantile = statistics::chi_squared_quantile(confidence, 2.0 * r + extra);
  ZeroFailureAnswer out;
  out.scale_low = in_hours(root(2.0 * sum / quantile));
  if (r > 0.0) out.scale = in_hours(root(sum / r));
  if (input.shape == 1.0) {
    const double tail = (1.0 - confidence) / 2.0;
    out.mean_low =
        in_hours(2.0 * sum / statistics::chi_squared_quantile(1.0 - tail, 2.0 * r + extra));
    if (r > 0.0) {
      out.mean_high = in_hours(2.0 * sum / statistics::chi_squared_quantile(tail, 2.0 * r));
    }
  }
  out.in_words = fmt::format(
      "with {} failures and a shape of {} taken as known, the scale is above {} h with {} % "
      "confidence",
      input.failures, pencil(input.shape), pencil(hours_of(out.scale_low)),
      pencil(confidence * 100.0));
  out.working.push_back(fmt::format("sum of age^{} = {}", pencil(input.shape), pencil(sum)));
  out.working.push_back(fmt::format("(2 x {} / {})^(1 / {}) = {} h", pencil(sum), pencil(quantile),
                                    pencil(input.shape), pencil(hours_of(out.scale_low))));
  return out;
}

}  // namespace wm::reliability
