#pragma once
/// Breakdown of air between electrodes, and what that leaves of an ignition's voltage.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::ignition {

/// Density of the gas as a share of that of air at 760 torr and 20 degC.
[[nodiscard]] double relative_density(quantity::PressureAbsolute pressure,
                                      quantity::Temperature temperature);

/// Pressure of the standard atmosphere, below 11 km.
///   p = 101325 Pa (1 - 0.0065 h / 288.15)^5.2559
/// @source ISA, from memory, unconfirmed; checked against the table of the electrical notes.
[[nodiscard]] quantity::PressureAbsolute standard_pressure(quantity::Length altitude);

/// Townsend's form of Paschen's law, uniform field.
///   V = B x / (C + ln x),  x = p d in torr cm,  B = 365 V/(torr cm),  C = 1.18
/// @return not_applicable below the minimum of the formula, x = e^(1 - C) = 0.835 torr cm: there
///         the gap would only seem to grow stronger.
/// @source constants for air from a public physics text: A 15, B 365, gamma 0.01 (secondary).
[[nodiscard]] Result<quantity::Voltage> breakdown_townsend(quantity::Length gap, double density);

/// V in kV = 30 p d + 1.35, p in atmospheres, d in cm: gaps near 1 mm.
/// @source same text (secondary).
[[nodiscard]] quantity::Voltage breakdown_linear(quantity::Length gap, double density);

/// Factor on the breakdown of a sphere gap by density, straight between rows of the table
/// sphere-gap-factor. @return nothing outside 0.70 to 1.15, or without the table.
[[nodiscard]] std::optional<double> sphere_gap_factor(const describe::Table* table, double density);

struct SparkReserveInput {
  quantity::Entered<quantity::Length> gap;
  std::optional<quantity::PressureAbsolute> chamber_pressure;  ///< at the spark
  std::optional<quantity::Temperature> chamber_temperature;
  std::optional<quantity::PressureAbsolute> manifold_pressure;  ///< instead of the two above
  std::optional<quantity::Temperature> charge_temperature;
  std::optional<double> compression_ratio;
  std::optional<quantity::Entered<quantity::Voltage>> available;
  std::optional<quantity::Entered<quantity::Length>> mate_gap;  ///< double-ended coil
  std::optional<quantity::PressureAbsolute> mate_pressure;
  std::optional<quantity::Entered<quantity::Length>> air_path;  ///< in a distributor or plug well
  std::optional<quantity::Entered<quantity::Length>> altitude;
};

struct SparkReserveAnswer {
  double density{};
  std::optional<quantity::Voltage> townsend;
  quantity::Voltage linear;
  std::optional<quantity::Voltage> asked;  ///< what this gap asks for
  std::optional<quantity::Voltage> mate;   ///< what its mate on the same coil asks for
  std::optional<quantity::Voltage> sum;
  std::optional<quantity::Voltage> reserve;
  std::optional<quantity::Voltage> path_townsend;
  std::optional<quantity::Voltage> path_linear;
  std::optional<quantity::Voltage> path_holds;
  std::optional<double> sphere_factor;
  std::string in_words;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// What a plug's gap asks for, and what is left of the voltage there is. Advice, no verdict.
///
/// For what a spark asks the Townsend form is taken: from 0.5 mm at sea level upwards it lies above
/// the linear one, and below that the linear one leaves its range. For what an air path holds the
/// lower of the two is taken.
///
/// Compressed charge: density = that in the manifold x compression ratio, whatever the polytropic
/// exponent; with the full ratio it is the most that can be, the spark comes earlier.
///
/// @return missing (pressure, ratio), conflict (both ways given), not_applicable (gap so small or
///         air so thin that the law does not hold).
/// @source as above.
[[nodiscard]] Checked<SparkReserveAnswer> spark_reserve(const SparkReserveInput& in,
                                                        const describe::Context& context);

std::string_view describe(describe::Fields<SparkReserveInput>& f);
std::string_view describe(describe::Fields<SparkReserveAnswer>& f);

}  // namespace wm::ignition
