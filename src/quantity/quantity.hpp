#pragma once
/// Values with units: strong SI types inside, text at the edge.
///
/// Two kinds may share a dimension and still be different types: gauge and
/// absolute pressure, temperature and temperature difference, torque and energy.

#include <compare>
#include <cstdint>
#include <numbers>
#include <string_view>

namespace wm::quantity {

/// What a value measures. The order is not stored anywhere; names are (see kinds.hpp).
enum class KindOf : std::uint8_t {
  length,
  area,
  volume,
  mass,
  time,
  temperature,
  temperature_difference,
  pressure_gauge,
  pressure_absolute,
  pressure_difference,
  resistance,
  voltage,
  current,
  charge,
  capacitance,
  power,
  energy,
  frequency,
  rotation_speed,
  speed,
  volume_flow,
  torque,
  force,
  mass_moment,
  angle,
  fraction,
  resistance_per_length,
  density,
  mass_per_length,
  bending_stiffness
};
inline constexpr int k_kind_count = 30;

/// A value in SI base units (angle in radian, fraction as 1 = 100 %, time in seconds).
template <KindOf K>
struct Quantity {
  static constexpr KindOf kind = K;
  double si{};
  friend constexpr auto operator<=>(Quantity, Quantity) = default;
};

using Length = Quantity<KindOf::length>;
using Area = Quantity<KindOf::area>;
using Volume = Quantity<KindOf::volume>;
using Mass = Quantity<KindOf::mass>;
using Duration = Quantity<KindOf::time>;
using Temperature = Quantity<KindOf::temperature>;  ///< kelvin inside
using TemperatureDifference = Quantity<KindOf::temperature_difference>;
using PressureGauge = Quantity<KindOf::pressure_gauge>;
using PressureAbsolute = Quantity<KindOf::pressure_absolute>;
using PressureDifference = Quantity<KindOf::pressure_difference>;
using Resistance = Quantity<KindOf::resistance>;
using Voltage = Quantity<KindOf::voltage>;
using Current = Quantity<KindOf::current>;
using Charge = Quantity<KindOf::charge>;
using Capacitance = Quantity<KindOf::capacitance>;
using Power = Quantity<KindOf::power>;
using Energy = Quantity<KindOf::energy>;
using Frequency = Quantity<KindOf::frequency>;
using RotationSpeed = Quantity<KindOf::rotation_speed>;  ///< revolutions per second inside
using Speed = Quantity<KindOf::speed>;
using VolumeFlow = Quantity<KindOf::volume_flow>;
using Torque = Quantity<KindOf::torque>;
using Force = Quantity<KindOf::force>;
using MassMoment = Quantity<KindOf::mass_moment>;  ///< mass times arm, kg m
using Angle = Quantity<KindOf::angle>;
using Fraction = Quantity<KindOf::fraction>;
using ResistancePerLength = Quantity<KindOf::resistance_per_length>;
using Density = Quantity<KindOf::density>;
using MassPerLength = Quantity<KindOf::mass_per_length>;
using BendingStiffness = Quantity<KindOf::bending_stiffness>;  ///< EI, N m2

/// Kinds of which two may be added and that may be scaled: all but points on a scale.
constexpr bool is_vector_kind(KindOf k) {
  return k != KindOf::temperature && k != KindOf::pressure_absolute && k != KindOf::pressure_gauge;
}

template <KindOf K>
  requires(is_vector_kind(K))
constexpr Quantity<K> operator+(Quantity<K> a, Quantity<K> b) {
  return {a.si + b.si};
}
template <KindOf K>
  requires(is_vector_kind(K))
constexpr Quantity<K> operator-(Quantity<K> a, Quantity<K> b) {
  return {a.si - b.si};
}
template <KindOf K>
  requires(is_vector_kind(K))
constexpr Quantity<K> operator-(Quantity<K> a) {
  return {-a.si};
}
template <KindOf K>
  requires(is_vector_kind(K))
constexpr Quantity<K> operator*(Quantity<K> a, double s) {
  return {a.si * s};
}
template <KindOf K>
  requires(is_vector_kind(K))
constexpr Quantity<K> operator*(double s, Quantity<K> a) {
  return {a.si * s};
}
template <KindOf K>
  requires(is_vector_kind(K))
constexpr Quantity<K> operator/(Quantity<K> a, double s) {
  return {a.si / s};
}
template <KindOf K>
  requires(is_vector_kind(K))
constexpr double operator/(Quantity<K> a, Quantity<K> b) {
  return a.si / b.si;
}

// Points and the steps between them.
constexpr TemperatureDifference operator-(Temperature a, Temperature b) { return {a.si - b.si}; }
constexpr Temperature operator+(Temperature a, TemperatureDifference b) { return {a.si + b.si}; }
constexpr PressureDifference operator-(PressureGauge a, PressureGauge b) { return {a.si - b.si}; }
constexpr PressureDifference operator-(PressureAbsolute a, PressureAbsolute b) {
  return {a.si - b.si};
}
constexpr PressureGauge operator+(PressureGauge a, PressureDifference b) { return {a.si + b.si}; }
constexpr PressureAbsolute operator+(PressureAbsolute a, PressureDifference b) {
  return {a.si + b.si};
}

// Makers for code and bounds. Factors are exact by definition (NIST SP 811, App. B).
constexpr Length metres(double v) { return {v}; }
constexpr Length inches(double v) { return {v * 0.0254}; }
constexpr Length feet(double v) { return {v * 0.3048}; }
constexpr Mass kilograms(double v) { return {v}; }
constexpr Mass pounds(double v) { return {v * 0.45359237}; }
constexpr Duration seconds(double v) { return {v}; }
constexpr Duration minutes(double v) { return {v * 60.0}; }
constexpr Duration hours(double v) { return {v * 3600.0}; }
constexpr Temperature kelvin(double v) { return {v}; }
constexpr Temperature celsius(double v) { return {v + 273.15}; }
constexpr Resistance ohms(double v) { return {v}; }
constexpr Voltage volts(double v) { return {v}; }
constexpr Current amperes(double v) { return {v}; }
constexpr Torque newton_metres(double v) { return {v}; }
/// 1 in x 1 lbf, lbf = 0.45359237 kg x 9.80665 m/s2.
constexpr Torque inch_pounds(double v) { return {v * 0.0254 * 0.45359237 * 9.80665}; }
constexpr MassMoment pound_inches(double v) { return {v * 0.45359237 * 0.0254}; }
constexpr PressureGauge psi_gauge(double v) {
  return {v * 0.45359237 * 9.80665 / (0.0254 * 0.0254)};
}
constexpr Angle radians(double v) { return {v}; }
constexpr Angle degrees(double v) { return {v * std::numbers::pi / 180.0}; }
constexpr Fraction ratio(double v) { return {v}; }
constexpr Fraction per_cent(double v) { return {v / 100.0}; }
constexpr RotationSpeed rpm(double v) { return {v / 60.0}; }

}  // namespace wm::quantity
