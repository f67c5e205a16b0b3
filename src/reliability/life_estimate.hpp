#pragma once
/// "life-estimate", "survival-next" and "zero-failure-bound": what lives of parts tell.

#include <string>
#include <string_view>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"
#include "reliability/weibull_fit.hpp"

namespace wm::reliability {

using quantity::Duration;
using quantity::Fraction;

struct PartLife {
  std::string name;
  Ending ending{Ending::running};
  Duration age;
  std::optional<Duration> until;
  std::optional<Duration> entered;
};

struct LifeEstimateInput {
  std::vector<PartLife> parts;
  Fraction confidence{0.95};
  Fraction share_failed{0.1};
};

struct CurveStep {
  Duration age;
  std::int64_t at_risk{};
  std::int64_t failed{};
  Fraction survival;
  double deviation{};
  double hazard_sum{};
};

struct LifeEstimateAnswer {
  double shape{};
  double shape_low{};
  std::optional<double> shape_high;
  Duration scale;
  Duration scale_low;
  std::optional<Duration> scale_high;
  Duration life;  ///< at which the share asked for has failed
  Duration life_low;
  std::optional<Duration> life_high;
  Duration mean;
  double log_likelihood{};
  std::string curvature_limits;  ///< Wald, for comparison
  Duration constant_rate_mean;   ///< if the rate did not change with age
  bool age_shown{};              ///< the shape is shown to differ from 1
  std::string in_words;
  std::vector<CurveStep> curve;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Weibull law by maximum likelihood; limits by the likelihood ratio.
/// @return missing (until), conflict (ages out of order), not_applicable (too few failures)
/// @source statistics notes 2.1; docs/method/reliability.md
[[nodiscard]] Checked<LifeEstimateAnswer> life_estimate(const LifeEstimateInput& input,
                                                        const describe::Context& context);

struct SurvivalNextInput {
  double shape{1.0};
  Duration scale;
  Duration age;
  Duration next;
  std::optional<double> shape_low;
  std::optional<double> shape_high;
};
struct SurvivalNextAnswer {
  Fraction survival;
  Fraction failure;
  std::optional<Fraction> failure_low;
  std::optional<Fraction> failure_high;
  std::string in_words;
  std::vector<std::string> working;
};
/// R(age + next) / R(age) = exp((age / scale)^shape - ((age + next) / scale)^shape).
[[nodiscard]] Checked<SurvivalNextAnswer> survival_next(const SurvivalNextInput& input,
                                                        const describe::Context& context);

enum class TestEnd : std::uint8_t { at_a_time, at_a_failure };
struct ZeroFailureInput {
  std::vector<PartLife> parts;
  std::int64_t failures{};
  double shape{1.0};
  Fraction confidence{0.95};
  TestEnd ended{TestEnd::at_a_time};
};
struct ZeroFailureAnswer {
  Duration scale_low;                ///< one-sided
  std::optional<Duration> scale;     ///< best estimate, with failures
  std::optional<Duration> mean_low;  ///< two-sided, shape 1
  std::optional<Duration> mean_high;
  std::string in_words;
  std::vector<std::string> working;
};
/// A bound on the scale for a shape taken as known: (2 sum t^shape / chi2(conf; 2 r +
/// 2))^(1/shape).
[[nodiscard]] Checked<ZeroFailureAnswer> zero_failure_bound(const ZeroFailureInput& input,
                                                            const describe::Context& context);

std::string_view describe(describe::Choices<Ending>& c);
std::string_view describe(describe::Choices<TestEnd>& c);
std::string_view describe(describe::Fields<PartLife>& f);
std::string_view describe(describe::Fields<CurveStep>& f);
std::string_view describe(describe::Fields<LifeEstimateInput>& f);
std::string_view describe(describe::Fields<LifeEstimateAnswer>& f);
std::string_view describe(describe::Fields<SurvivalNextInput>& f);
std::string_view describe(describe::Fields<SurvivalNextAnswer>& f);
std::string_view describe(describe::Fields<ZeroFailureInput>& f);
std::string_view describe(describe::Fields<ZeroFailureAnswer>& f);

}  // namespace wm::reliability
