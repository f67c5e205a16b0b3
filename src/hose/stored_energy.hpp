#pragma once
/// Why a hose is proof tested with liquid: what is stored in it, liquid against gas.
///
/// All in SI. Pressures are gauge unless they say absolute.

#include "quantity/quantity.hpp"

namespace wm::hose {

/// What makes a test liquid springy and how it grows with heat.
struct Liquid {
  double bulk_modulus_pa{};
  double expansion_per_k{};  ///< of volume
};

/// One atmosphere, exact by definition.
inline constexpr double k_atmosphere_pa = 101325.0;
/// Ratio of the specific heats of air and of nitrogen.
inline constexpr double k_gamma = 1.4;

/// Inside of a round hose: V = pi d^2 / 4 L
[[nodiscard]] double bore_volume(quantity::Length bore, quantity::Length length);

/// Liquid pressed into a rigid volume: E = V p^2 / (2 K). A hose also swells: E = p dV / 2 more.
/// @source derived from K = V dp/dV; fluids notes 9.2
[[nodiscard]] double liquid_energy(double volume_m3, double pressure_pa, double bulk_modulus_pa);

/// Liquid to be pumped in to reach the pressure, the walls rigid: dV = V p / K
[[nodiscard]] double liquid_added(double volume_m3, double pressure_pa, double bulk_modulus_pa);

struct GasEnergy {
  double isentropic{};  ///< p1 V / (g - 1) [1 - (pa/p1)^((g-1)/g)]
  double brode{};       ///< p V / (g - 1), p gauge: an upper figure
  double isothermal{};  ///< p1 V ln(p1/pa) - (p1 - pa) V: what could be had at most, slowly
};
/// The same volume filled with air or nitrogen. p1 is absolute: gauge + pa.
/// @source fluids notes 9.2; the closed forms are those of an ideal gas.
[[nodiscard]] GasEnergy gas_energy(double volume_m3, double pressure_pa,
                                   double atmosphere_pa = k_atmosphere_pa);

/// Pressure of a liquid that is heated where it can neither leave nor swell the walls:
/// dp = K beta dT
/// @source fluids notes 9.1, CHK-34 (engineering-data page of a maker of hydraulic components)
[[nodiscard]] double trapped_rise(const Liquid& liquid, double heated_by_k);

}  // namespace wm::hose
