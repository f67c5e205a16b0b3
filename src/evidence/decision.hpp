#pragma once
/// Decision rules: what may be said of a value known with some doubt, against limits.
///
/// All figures in one unit. Microseconds: called on every keystroke.
/// Sources: JCGM 106:2012 (from memory, unconfirmed; its bearing case is checked in
/// docs/validation.md), ILAC-G8:09/2019 par. 4.2 (read in extract).

#include <cstdint>
#include <optional>
#include <string>

#include "evidence/uncertainty.hpp"
#include "evidence/verdict.hpp"
#include "outcome/result.hpp"

namespace wm::evidence {

/// Limits are inclusive. One may be missing, not both.
struct Limits {
  std::optional<double> lower;
  std::optional<double> upper;
};

/// A value and how well it is known.
struct Knowledge {
  double value{};
  double u{};         ///< standard uncertainty, >= 0
  double expanded{};  ///< U = k u, or the worst-case half-width where the rule asks for it
  /// normal, or rectangular with half-width sqrt(3) u: the law behind the probabilities.
  Distribution distribution{Distribution::normal};
};

enum class Rule : std::uint8_t {
  guarded,     ///< inside with the guard band taken off, or outside with it added, or undecided
  simple,      ///< the reading as it stands; always decides, wrong up to every second time at
               ///< the limit
  probability  ///< probability of conformity at least P, or of being outside at least P
};
std::string_view describe(describe::Choices<Rule>& c);

struct RuleSettings {
  Rule rule{Rule::guarded};
  double guard_factor{1.0};  ///< guard band w = guard_factor x expanded; 0 to 10
  double probability{0.95};  ///< P of Rule::probability; above 0.5, below 1
};

struct Decision {
  Verdict verdict{Verdict::undecided};
  double guard{};                     ///< w; 0 for simple
  std::optional<double> accept_from;  ///< conforms from here ...
  std::optional<double> accept_to;    ///< ... to here, where there is such a zone at all
  double probability_inside{};        ///< of the true value being inside the limits
  double false_accept{};              ///< if it were accepted now: 1 - probability_inside
  double false_reject{};              ///< if it were rejected now: probability_inside
  bool meter_good_enough{true};       ///< false: no reading at all could conform
};

/// Upper limit alone, guard band w: the heart of the guarded rule.
/// @pre guard >= 0
[[nodiscard]] constexpr Verdict judge_upper(double reading, double guard, double limit) {
  if (reading + guard <= limit) return Verdict::conforms;
  if (reading - guard > limit) return Verdict::does_not_conform;
  return Verdict::undecided;
}
/// Lower limit alone. @pre guard >= 0
[[nodiscard]] constexpr Verdict judge_lower(double reading, double guard, double limit) {
  if (reading - guard >= limit) return Verdict::conforms;
  if (reading + guard < limit) return Verdict::does_not_conform;
  return Verdict::undecided;
}

/// P(lower <= true value <= upper), all prior knowledge being the reading itself.
///   normal:      Phi((T_U - y) / u) - Phi((T_L - y) / u)
///   rectangular: the part of [y - a, y + a] that lies inside, a = sqrt(3) u
/// u = 0: 1 inside, 0 outside. @pre distribution is normal or rectangular
/// @source JCGM 106:2012, clause 7 (from memory, unconfirmed).
[[nodiscard]] double probability_inside(const Knowledge& known, const Limits& limits);

/// Judge.
///
/// Guarded: conforms when value +- w lies inside the limits; does not conform when it lies
/// wholly outside one of them; between, undecided. With w = U (k = 2) the chance that an
/// accepted value is in truth outside stays below 2.5 % a limit (ILAC-G8:09/2019).
/// Simple: w = 0; that chance reaches 50 % at the limit (same source).
/// Probability: conforms at P(inside) >= P; does not conform at P(above upper) >= P or
/// P(below lower) >= P. A low P(inside) alone never fails a part: a meter so coarse that its
/// doubt spills over both limits has proved nothing.
///
/// @return missing (no limit), conflict (lower above upper), out_of_bounds (u, U, factor, P).
[[nodiscard]] Result<Decision> decide(const Knowledge& known, const Limits& limits,
                                      const RuleSettings& settings);

/// The reading that a rule would just accept at this limit and doubt: "what would I need to
/// read?" One value a limit that there is; nothing where no reading conforms.
struct Acceptance {
  std::optional<double> from;
  std::optional<double> to;
  bool any{};  ///< some reading would conform
};
/// @return as `decide`.
[[nodiscard]] Result<Acceptance> acceptance_zone(double u, double expanded,
                                                 Distribution distribution, const Limits& limits,
                                                 const RuleSettings& settings);

/// Share of a limit that is used up, 1 = at the limit: x / T_U, T_L / x, or for two limits the
/// distance from the middle over half the band. Below two limits it is never negative.
/// @return Nothing where it has no meaning (T_U <= 0, x <= 0 for a lower limit, a band of no
///         width, no limit).
[[nodiscard]] std::optional<double> allowance_used(double value, const Limits& limits);

/// The risk of a rule in one plain sentence, for cards and screens.
[[nodiscard]] std::string risk_in_words(const Decision& decision, const RuleSettings& settings);

}  // namespace wm::evidence
