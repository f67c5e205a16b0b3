#pragma once
/// The calculation `cable-temperature`: what current a wire may carry where it lies, how warm it
/// gets, and what a short overload does.

#include "describe/catalogue.hpp"
#include "electrics/derating.hpp"

namespace wm::electrics {

struct CableTemperatureInput {
  std::string name;
  Conductor conductor;
  EnteredCurrent current;
  Surroundings surroundings;
  std::optional<EnteredCurrent> short_current;
  std::optional<quantity::Entered<quantity::Duration>> short_time;
  std::optional<EnteredTemperature> start;
};

struct CableTemperatureAnswer {
  CurrentStanding standing{CurrentStanding::no_figure};
  std::string in_words;
  std::optional<quantity::Current> allowed;        ///< by the curves: advice
  std::optional<quantity::Current> allowed_least;  ///< with their doubt taken off
  std::optional<quantity::Current> free_air;
  std::optional<quantity::Current> table;
  std::optional<quantity::Temperature> conductor;       ///< cautious estimate
  std::optional<quantity::Temperature> by_curve;        ///< along the free-air curve
  std::optional<quantity::Temperature> after_overload;  ///< no heat lost: at most this
  std::optional<quantity::Duration> time_to_rating;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Estimated conductor temperature, T1 ambient, TR rating, Imax what is allowed at TR:
///   T2 = T1 + (TR - T1) sqrt(I / Imax)
/// A fit of the free-air curves has dT ~ I^2.1, so that this over-estimates: the circular itself
/// calls it quite conservative. By the curve: T2 = T1 + (TR - T1) (I / Imax)^(1/m).
///
/// @return Nothing when no current is allowed by any figure, or when the current exceeds it.
/// @source AC 43.13-1B page 11-23: variables and remark; the square root itself from memory.
[[nodiscard]] std::optional<double> estimated_celsius(const Surroundings& where, double amperes,
                                                      const CurrentAllowed& allowed);

/// @return conductor as figures_of; conflict (rating below ambient), missing (a time beside a
///         short current and the other way round).
/// @source AC 43.13-1B CHG 1 pages 11-23 and 11-27; see derating.hpp and wire.hpp.
[[nodiscard]] Checked<CableTemperatureAnswer> cable_temperature(const CableTemperatureInput& input,
                                                                const describe::Context& context);

std::string_view describe(describe::Fields<CableTemperatureInput>& f);
std::string_view describe(describe::Fields<CableTemperatureAnswer>& f);

}  // namespace wm::electrics
