#pragma once
/// Uncertainty of measurement by the GUM: components, their combination, coverage.
///
/// Everything here is in the one unit the caller works in.
/// Sources: JCGM 100:2008 (the GUM). Clause numbers are from memory, unconfirmed; the worked
/// examples H.1 to H.3 and G.4 are checked in docs/validation.md.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "outcome/result.hpp"

namespace wm::evidence {

inline constexpr double k_no_end = std::numeric_limits<double>::infinity();

/// What is known about one input.
enum class Distribution : std::uint8_t {
  normal,       ///< given as U with its k, or as a standard uncertainty
  rectangular,  ///< only bounds are known: u = a / sqrt 3
  triangular,   ///< bounds, and the middle is likelier: u = a / sqrt 6
  arcsine,      ///< cycles between the bounds: u = a / sqrt 2
  student_t     ///< mean of a few repeats: a Type A with n - 1 degrees of freedom
};
[[nodiscard]] std::string_view word(Distribution distribution);

/// Half-width divided by this is the standard uncertainty; 1 for normal and Student's t.
/// @source JCGM 100:2008, 4.3.7 and 4.3.9.
[[nodiscard]] double divisor(Distribution distribution);

/// One line of a budget.
struct Component {
  std::string what;         ///< "meter accuracy"
  double u{};               ///< standard uncertainty, >= 0, in the input's own unit
  double sensitivity{1.0};  ///< change of the result for a change of 1 in the input
  double dof{k_no_end};     ///< degrees of freedom; no end when u itself is well known
  Distribution distribution{Distribution::normal};
  std::string how;  ///< the sum, so that a pencil can repeat it
};

/// Type A: u = s / sqrt(n), n - 1 degrees of freedom.
/// @return not_applicable for fewer than two readings.
/// @source JCGM 100:2008, 4.2.
[[nodiscard]] Result<Component> type_a(std::string what, std::span<const double> repeats);

/// Type B from bounds: u = half_width / divisor. @pre half_width >= 0, dof > 0
[[nodiscard]] Component type_b(std::string what, double half_width, Distribution distribution,
                               double dof = k_no_end);

/// Type B from a certificate or a stated "+- U": u = expanded / k. @pre expanded >= 0, k > 0
[[nodiscard]] Component type_b_stated(std::string what, double expanded, double k,
                                      double dof = k_no_end);

/// A digital display that steps by `step` hides up to half a step: u = step / sqrt 12.
/// @source JCGM 100:2008, F.2.2.1.
[[nodiscard]] Component last_digit(std::string what, double step);

/// Degrees of freedom of a u that is itself only known to a share of it (0.25 = 25 %):
/// nu = 1 / (2 share^2). @pre share > 0
/// @source JCGM 100:2008, G.4.2.
[[nodiscard]] double dof_from_doubt(double share);

/// Two inputs that move together; `first` and `second` count from 0.
struct Correlation {
  std::size_t first{};
  std::size_t second{};
  double r{};  ///< -1 to 1
};

struct BudgetLine {
  std::string what;
  std::string how;
  double u{};
  double sensitivity{};
  double contribution{};  ///< |sensitivity| u
  double share{};         ///< contribution^2 / u_c^2; lines add to 1 when uncorrelated
  double dof{};
};

struct Combined {
  double u{};                 ///< combined standard uncertainty u_c
  bool correlated{};          ///< some r is not 0
  std::optional<double> dof;  ///< effective; nothing when inputs are correlated
  std::vector<BudgetLine> lines;
  std::string working;  ///< the sum in one line
};

/// u_c^2 = sum c_i^2 u_i^2 + 2 sum_{i<j} c_i c_j r_ij u_i u_j
///
/// @return out_of_bounds: a component or r outside its range; conflict: a pair named twice,
///         an input with itself, or correlations that cannot all be true.
/// @source JCGM 100:2008, 5.1.2 and 5.2.2.
[[nodiscard]] Result<Combined> combine(std::span<const Component> components,
                                       std::span<const Correlation> correlations = {});

/// Welch-Satterthwaite: nu_eff = u_c^4 / sum (c_i u_i)^4 / nu_i
///
/// @return not_applicable when inputs are correlated: the formula does not hold then. Also
///         what `combine` refuses.
/// @source JCGM 100:2008, G.4.1; that it needs independent inputs: GTC page H2.
[[nodiscard]] Result<double> effective_dof(std::span<const Component> components,
                                           std::span<const Correlation> correlations = {});

/// How the coverage factor is chosen.
enum class CoverageRule : std::uint8_t {
  k_two,          ///< k = 2, about 95 % when many degrees of freedom stand behind u
  t_as_computed,  ///< Student's t at nu_eff as it comes out, whole or not
  t_truncated     ///< Student's t at the whole number below, as the GUM's examples do
};

struct Coverage {
  double k{};
  double level{};      ///< 0.95 = 95 %; for k = 2 the level that t gives at this nu
  std::string method;  ///< in words, with the degrees of freedom used
};

/// @param dof    Effective degrees of freedom; nothing where they are refused: then only
///               k = 2 can be had.
/// @param level  0.5 to 0.9999; not used for k = 2.
/// @return out_of_bounds (level), not_applicable (t without degrees of freedom, or fewer
///         than 1).
/// @note Cutting 18.99874 down to 18 is a trap of rounding: 0.01 is added before cutting.
/// @source JCGM 100:2008, G.3 and G.4; the trap: this project's check case U-G4.
[[nodiscard]] Result<Coverage> coverage(CoverageRule rule, double level, std::optional<double> dof);

/// y = f(x_1 .. x_n); the span holds the inputs in the order given.
using Model = std::function<double(std::span<const double>)>;

/// Sensitivities df/dx_i at x from four points within a tenth of u_i on either side.
/// An input with u = 0 gets 0: it adds nothing.
/// @return not_applicable when f is not a number near x; conflict when x and u differ in length.
/// @source JCGM 100:2008, 5.1.3.
[[nodiscard]] Result<std::vector<double>> sensitivities(const Model& model,
                                                        std::span<const double> x,
                                                        std::span<const double> u);

/// What the second order adds to u_c^2 for independent inputs:
///   sum_i sum_j [ f_ij^2 / 2 + f_i f_ijj ] u_i^2 u_j^2
/// @return as `sensitivities`. May be negative.
/// @source JCGM 100:2008, 5.1.2 note.
[[nodiscard]] Result<double> second_order_variance(const Model& model, std::span<const double> x,
                                                   std::span<const double> u);

}  // namespace wm::evidence
