#pragma once
/// Where no maker's limit exists: how a reading stands among its siblings (the other leads of
/// the harness, the other cylinders) and against the part's own earlier reading.
///
/// Neither is a verdict: parts that aged together agree with each other. The answer says so,
/// and there is no way to turn it into "conforms".

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "describe/fields.hpp"
#include "outcome/result.hpp"

namespace wm::evidence {

inline constexpr std::string_view k_siblings_label = "no maker's limit: compared with its siblings";
inline constexpr std::string_view k_baseline_label =
    "no maker's limit: compared with its own earlier reading";

enum class Standing : std::uint8_t {
  too_few,      ///< fewer than three readings: shown, not compared
  like_others,  ///< within the scatter of its siblings
  stands_out    ///< look at this one
};
std::string_view describe(describe::Choices<Standing>& c);

struct SiblingStanding {
  Standing standing{Standing::too_few};
  double from_median{};  ///< reading - median, in the unit of the readings
  double score{};        ///< from_median / scale; 0 when there is no scale
};

struct SiblingComparison {
  std::string label{k_siblings_label};
  double median{};
  double scale{};                     ///< 1.4826 MAD, never below the uncertainty of one reading
  std::vector<SiblingStanding> each;  ///< in the order of the readings
  std::string in_words;
};

/// Modified z-score: M = (x - median) / (1.4826 MAD) (that is 0.6745 (x - median) / MAD);
/// beyond 3.5 it stands out. With few siblings the MAD can be far too small by chance, so the
/// scale is never taken below `u`, nor below `least_scale`.
///
/// @param readings     Corrected for what is known to differ (divide by length first, when
///                     leads differ in length).
/// @param u            Standard uncertainty of one reading, >= 0, same unit.
/// @param least_scale  Scatter that is normal between new parts, where it is known; else 0.
/// @return missing for no reading, out_of_bounds for a reading or u that is no number.
/// @source Iglewicz and Hoaglin, as given in the NIST/SEMATECH e-Handbook, 1.3.5.17 (from
///         memory, unconfirmed). The floor is our own: common practice, no source.
[[nodiscard]] Result<SiblingComparison> compare_siblings(std::span<const double> readings, double u,
                                                         double least_scale = 0.0);

enum class Drift : std::uint8_t { unchanged, risen, fallen };
std::string_view describe(describe::Choices<Drift>& c);

struct BaselineComparison {
  std::string label{k_baseline_label};
  Drift drift{Drift::unchanged};
  double change{};           ///< now - then
  double u{};                ///< of the change
  double relative_change{};  ///< change / then; 0 when then is 0
  std::string in_words;
};

/// Against the part's own baseline: a change shows when it exceeds twice its own uncertainty,
/// u^2 = u_now^2 + u_then^2. With the same meter on the same range part of both errors is
/// common and cancels, so that the true doubt is smaller: this errs towards "unchanged".
/// @return out_of_bounds for values that are no numbers or uncertainties below 0.
[[nodiscard]] Result<BaselineComparison> compare_baseline(double now, double u_now, double then,
                                                          double u_then);

}  // namespace wm::evidence
