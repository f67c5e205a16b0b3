#pragma once
/// How often a decision rule is wrong over many parts, when something is known of how such
/// parts turn out (a prior): consumer's and producer's risk.
///
/// Sources: JCGM 106:2012, clause 9 (from memory, unconfirmed); the bearing case 9.5.4 and the
/// cases of a classic paper are checked in docs/validation.md.

#include <cstdint>

#include "evidence/decision.hpp"

namespace wm::evidence {

/// How such parts turn out before any is measured.
struct Prior {
  enum class Law : std::uint8_t { normal, gamma } law{Law::normal};
  double mean{};   ///< normal
  double sd{};     ///< normal, > 0
  double shape{};  ///< gamma, > 0: mean shape / rate
  double rate{};   ///< gamma, > 0
};

struct GlobalRisk {
  double outside{};   ///< share of such parts outside the limits, before any check
  double consumer{};  ///< R_C: outside in truth and yet accepted
  double producer{};  ///< R_P: inside in truth and yet not accepted
  double accepted{};  ///< share that is accepted
};

/// R_C = integral over the outside of g0(t) P(accept | t) dt;
/// R_P = integral over the inside of g0(t) (1 - P(accept | t)) dt, by quadrature.
///
/// @param u_measurement  Standard uncertainty of one measurement, normal, > 0.
/// @param accept         Acceptance limits; an end may be open.
/// @return missing (no limit), conflict (crossed limits), out_of_bounds (prior, u).
[[nodiscard]] Result<GlobalRisk> global_risk(const Prior& prior, double u_measurement,
                                             const Limits& limits, const Limits& accept);

/// The guard band, taken off each limit there is, that holds the consumer's risk to `target`.
/// A guard that comes out at half the band means that next to nothing would be accepted: look
/// at `global_risk(...).accepted` before using it.
/// @return 0 when no guard is needed; out_of_bounds for a target outside 0 to 1; otherwise as
///         `global_risk`.
[[nodiscard]] Result<double> guard_for_consumer_risk(const Prior& prior, double u_measurement,
                                                     const Limits& limits, double target);

/// What is known after measuring once, from a normal prior:
///   mean = (y0/u0^2 + y/u^2) / (1/u0^2 + 1/u^2), 1/u_post^2 = 1/u0^2 + 1/u^2
/// @return out_of_bounds when a standard deviation is not above 0; not_applicable for gamma.
[[nodiscard]] Result<Knowledge> after_measuring(const Prior& prior, double reading,
                                                double u_measurement);

}  // namespace wm::evidence
