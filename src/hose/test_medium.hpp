#pragma once
/// What a proof test is made with, and how springy it is.

#include <optional>
#include <string>

#include "describe/catalogue.hpp"
#include "hose/stored_energy.hpp"

namespace wm::hose {

enum class TestMedium : std::uint8_t {
  water,
  hydraulic_oil,  ///< red mineral oil
  light_oil,      ///< light lubricating oil
  other_liquid,   ///< its stiffness and its growth with heat are asked for
  fuel,           ///< refused
  air,            ///< refused
  nitrogen        ///< refused
};

[[nodiscard]] bool is_gas(TestMedium medium);
/// "water", "hydraulic oil", ... in a sentence.
[[nodiscard]] std::string_view words(TestMedium medium);

struct MediumFigures {
  Liquid liquid;
  std::string source;
};
/// Bulk modulus and expansion of a test liquid; the user's own figures win.
///
/// Water: 2.2 GPa; its expansion is that of its density at this temperature. Hydraulic oil:
/// 1.79 GPa, 8.3e-4 /K. Light oil: 1.5 GPa, 7e-4 /K.
/// @return missing ("bulk_modulus", "expansion") for another liquid; refused ("medium") for fuel.
///         Gas has no figures here: ask is_gas first.
/// @source fluids notes 9.1: an engineering-data page of a maker of hydraulic components (oils);
///         water 2.179 GPa tangent, 2.225 secant to 14 MPa by IAPWS-95, so 2.2; expansion of
///         light oil from memory, unconfirmed.
[[nodiscard]] Checked<MediumFigures> figures_of(
    TestMedium medium, std::optional<quantity::PressureDifference> bulk_modulus,
    std::optional<quantity::Fraction> expansion_per_k, quantity::Temperature at);

/// Density of air-free water at one atmosphere, 0 to 100 degC, kg/m3.
/// @source Kell 1975, the usual rational formula (coefficients from memory; compared with the
///         density tables of the handbooks in the tests).
[[nodiscard]] double water_density(quantity::Temperature at);
/// -1/rho d(rho)/dT, 1/K.
[[nodiscard]] double water_expansion(quantity::Temperature at);

std::string_view describe(describe::Choices<TestMedium>& c);

}  // namespace wm::hose
