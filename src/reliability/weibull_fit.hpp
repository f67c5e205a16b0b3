#pragma once
/// Reliability: how long parts last, judged from few failures; when renewing by age pays.
///
/// This header: the Weibull law fitted by maximum likelihood to any mixture of failures, parts
/// still running, failures found at an inspection, and parts that came with an age.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "outcome/result.hpp"

namespace wm::reliability {

enum class Ending : std::uint8_t {
  failed,         ///< at `age`
  running,        ///< still in order at `age`
  failed_before,  ///< some time before `age`
  failed_between  ///< between `age` and `until`
};

/// One part; ages in hours.
struct Life {
  Ending ending{Ending::running};
  double age{};
  double until{};
  double entered{};  ///< age at which the record begins
};

struct Limits {
  double low{};
  double high{};  ///< infinite where the data set no bound
};

/// R(t) = exp(-(t / scale)^shape).
struct WeibullFit {
  double shape{};
  double scale{};
  double log_likelihood{};
  int failures{};
  /// Covariance of ln scale and ln shape.
  double var_ln_scale{};
  double var_ln_shape{};
  double cov_ln{};

  [[nodiscard]] double survival(double t) const;
  /// Age at which the share `p` has failed. @pre 0 < p < 1
  [[nodiscard]] double life_at(double p) const;
  [[nodiscard]] double mean() const;
};

/// @return not_applicable: fewer than two failures, or data that set no bound on the shape.
/// @source maximum likelihood with censoring and left truncation: statistics notes, 2.1.
[[nodiscard]] Result<WeibullFit> fit_weibull(std::span<const Life> lives);
[[nodiscard]] double weibull_log_likelihood(std::span<const Life> lives, double shape,
                                            double scale);

/// Likeliest scale when the shape is taken as known; 1 gives the mean life at a constant rate.
/// @pre a failure, and not every part of the kind failed_before
[[nodiscard]] double best_scale_at_shape(std::span<const Life> lives, double shape);

// Limits from the curvature, on the logarithm (Wald).
[[nodiscard]] Limits wald_shape(const WeibullFit& fit, double confidence);
[[nodiscard]] Limits wald_scale(const WeibullFit& fit, double confidence);
[[nodiscard]] Limits wald_life(const WeibullFit& fit, double p, double confidence);
[[nodiscard]] Limits wald_survival(const WeibullFit& fit, double t, double confidence);

// Limits by the likelihood ratio: preferred below ten failures.
[[nodiscard]] Limits ratio_shape(std::span<const Life> lives, const WeibullFit& fit,
                                 double confidence);
/// Of the age at which the share `p` has failed; p = 1 - 1/e gives the scale.
[[nodiscard]] Limits ratio_life(std::span<const Life> lives, const WeibullFit& fit, double p,
                                double confidence);

/// One step of a survival curve.
struct SurvivalStep {
  double age{};
  int at_risk{};
  int failed{};
  double survival{};    ///< Kaplan-Meier
  double deviation{};   ///< Greenwood
  double hazard_sum{};  ///< Nelson-Aalen
};
/// Parts that entered later count from then on. Only failures with a known age and parts running.
/// @return not_applicable where a failure is known only to an interval
[[nodiscard]] Result<std::vector<SurvivalStep>> survival_curve(std::span<const Life> lives);

}  // namespace wm::reliability
