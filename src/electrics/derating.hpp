#pragma once
/// What current a wire may carry: free-air curves, bundle and altitude factors, and the column
/// of table 11-9 for bundles.
///
/// Only table 11-9 was read in its document. The curves and factors were read off by third
/// parties: they are advice, each with the doubt of its reading.

#include <vector>

#include "electrics/wire.hpp"

namespace wm::electrics {

/// I = k dT^m through the readings at 30 K and 250 K, for sizes 24 to 10.
struct FreeAirCurve {
  double k{};
  double m{};
};
/// Nothing for size 8 and larger: no points were obtained, and nothing is guessed.
/// @source MIL-W-5088L figure 3 as read by a third party (secondary).
[[nodiscard]] std::optional<FreeAirCurve> free_air_curve(std::string_view size);
/// @pre 30 <= kelvin_above <= 250, the range of the points
[[nodiscard]] double free_air_current(const FreeAirCurve& curve, double kelvin_above);

/// Factor of a bundle by number of wires and by the share of its capacity in use; straight lines
/// between the points, 20 % for less. From 20 to 33 wires only up to 20 % loading.
/// @return Nothing outside the points.
/// @source MIL-W-5088L bundle curves as read by a third party; 33 wires computed from table 11-9.
[[nodiscard]] std::optional<double> bundle_factor(double wires, quantity::Fraction loading);

/// @return Nothing above 60,000 ft.
/// @source Altitude figure of AC 43.13-1B as read by a third party.
[[nodiscard]] std::optional<double> altitude_factor(quantity::Length altitude);

/// Table 11-9, continuous in bundles: the column at or below the rating; nothing below 105 degC.
[[nodiscard]] std::optional<double> bundle_column(std::string_view size, double rating_celsius);

/// Where the wire lies.
struct Surroundings {
  EnteredTemperature ambient;
  EnteredTemperature rating;
  std::int64_t wires{1};
  quantity::Fraction loading{1.0};
  quantity::Length altitude{quantity::feet(20000)};
};

/// What the wire may carry there.
struct CurrentAllowed {
  std::optional<double> curves;    ///< free air x altitude x bundle, A; advice
  double doubt{};                  ///< of it
  std::optional<double> free_air;  ///< A
  std::optional<double> table;     ///< table 11-9, where the surroundings lie inside its basis
  std::vector<std::string> notes;  ///< why a figure is not there
  std::vector<std::string> working;
  /// The figure to use: curves where there are some, else the table's column.
  [[nodiscard]] std::optional<double> figure() const { return curves ? curves : table; }
};

/// @pre rating above ambient
[[nodiscard]] CurrentAllowed current_allowed(const ConductorFigures& wire, CableKind kind,
                                             const Surroundings& where);

/// A current against what the wire may carry.
enum class CurrentStanding : std::uint8_t {
  within_table,   ///< at or below table 11-9, inside its basis
  within_curves,  ///< below the curves with their doubt taken off: advice
  too_close,      ///< within the doubt of the curves
  over,
  no_figure
};
[[nodiscard]] CurrentStanding stands(double amperes, const CurrentAllowed& allowed);
[[nodiscard]] std::string_view words(CurrentStanding s);

/// @return conflict: ambient at or above the rating.
[[nodiscard]] std::optional<Problem> check(const Surroundings& where, const std::string& path);

std::string_view describe(describe::Choices<CurrentStanding>& c);
std::string_view describe(describe::Fields<Surroundings>& f);

}  // namespace wm::electrics
