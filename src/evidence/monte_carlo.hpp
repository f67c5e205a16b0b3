#pragma once
/// Propagation of distributions by seeded random draws (JCGM 101): the check on the GUM's
/// sum, and the answer where a formula is not straight over the uncertainty.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <string>

#include "evidence/uncertainty.hpp"

namespace wm::evidence {

/// What is known about one input, as a law to draw from.
struct RandomInput {
  std::string what;
  Distribution distribution{Distribution::normal};
  double centre{};
  double spread{};       ///< standard uncertainty (normal, student_t), else the half-width; >= 0
  double dof{k_no_end};  ///< student_t only
};

struct MonteCarloSettings {
  std::uint64_t seed{1};
  std::int64_t trials{200'000};  ///< 1000 to 10 million
  double level{0.95};            ///< of the coverage intervals, 0.5 to 0.9999
  /// Told the share done; false means: stop.
  std::function<bool(double share)> progress{};
};

struct Interval {
  double low{};
  double high{};
};

struct MonteCarloAnswer {
  double mean{};
  double u{};          ///< standard deviation of the draws
  Interval symmetric;  ///< equal chance outside on either side
  Interval shortest;
  double level{};
  std::int64_t trials{};
  std::uint64_t seed{};
};

/// @param model         Evaluated once a trial; must give a number for every draw.
/// @param correlations  Only between normal inputs.
/// @return stopped; out_of_bounds (trials, level, spread); not_applicable (the formula has no
///         value for some draw, or a correlation with an input that is not normal); conflict
///         (correlations that cannot all be true, a pair twice); missing (no input).
/// @source JCGM 101:2008, 6.4, 7.7 (clauses from memory, unconfirmed); cases 9.2.2 and 9.3
///         are checked in docs/validation.md.
[[nodiscard]] Result<MonteCarloAnswer> monte_carlo(const Model& model,
                                                   std::span<const RandomInput> inputs,
                                                   std::span<const Correlation> correlations,
                                                   const MonteCarloSettings& settings);

}  // namespace wm::evidence
