#include "hose/stored_energy.hpp"

#include <cmath>
#include <numbers>

namespace wm::hose {

double bore_volume(quantity::Length bore, quantity::Length length) {
  return std::numbers::pi / 4.0 * bore.si * bore.si * length.si;
}

double liquid_energy(double volume_m3, double pressure_pa, double bulk_modulus_pa) {
  return volume_m3 * pressure_pa * pressure_pa / (2.0 * bulk_modulus_pa);
}

double liquid_added(double volume_m3, double pressure_pa, double bulk_modulus_pa) {
  return volume_m3 * pressure_pa / bulk_modulus_pa;
}

GasEnergy gas_energy(double volume_m3, double pressure_pa, double atmosphere_pa) {
  const double pa = atmosphere_pa;
  const double p1 = pressure_pa + pa;
  const double V = volume_m3;
  const double share = std::pow(pa / p1, (k_gamma - 1.0) / k_gamma);
  return {p1 * V / (k_gamma - 1.0) * (1.0 - share), pressure_pa * V / (k_gamma - 1.0),
          p1 * V * std::log(p1 / pa) - (p1 - pa) * V};
}

double trapped_rise(const Liquid& liquid, double heated_by_k) {
  return liquid.bulk_modulus_pa * liquid.expansion_per_k * heated_by_k;
}

}  // namespace wm::hose
