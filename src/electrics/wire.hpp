#pragma once
/// Electrics: cables, starting circuit, contactors, joints, bonds, battery reserve.
///
/// This header: what a conductor is made of and what its metal does with temperature. Sizes of
/// aircraft wire are labels: their resistance is read from the table, never computed from the
/// gauge formula, which holds for solid round wire alone.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "describe/fields.hpp"
#include "outcome/result.hpp"
#include "quantity/text.hpp"

namespace wm::electrics {

using EnteredCurrent = quantity::Entered<quantity::Current>;
using EnteredLength = quantity::Entered<quantity::Length>;
using EnteredResistance = quantity::Entered<quantity::Resistance>;
using EnteredVoltage = quantity::Entered<quantity::Voltage>;
using EnteredTemperature = quantity::Entered<quantity::Temperature>;

enum class Metal : std::uint8_t { copper, aluminium };

/// Whose table speaks of the conductor.
enum class CableKind : std::uint8_t {
  aircraft_copper,  ///< stranded, tin-plated, sizes 24 to 0000
  class_2_plain,    ///< metric, mm2
  class_2_tinned,
  class_5_plain,
  class_5_tinned,
  class_2_aluminium,
  makers_copper,  ///< resistance for a length is entered
  makers_aluminium
};

struct Conductor {
  CableKind kind{CableKind::aircraft_copper};
  std::string size;  ///< "10", "2/0", "16 mm2"
  std::optional<quantity::Entered<quantity::ResistancePerLength>> resistance;  ///< at 20 degC
};

/// What is known of a conductor.
struct ConductorFigures {
  std::string size;                ///< as the table words it
  std::string in_words;            ///< "No. 10 copper", "16 mm2 class 5"
  double ohm_per_metre{};          ///< at 20 degC; a maximum where a table gives it
  std::optional<double> area_mm2;  ///< nominal
  Metal metal{Metal::copper};
  std::string source;
  bool read{};     ///< read in its document, or entered by the owner; else advice
  bool entered{};  ///< the owner's own figure
};

/// @return missing or not_found with paths under `path`: no such size (with those there are), no
///         resistance for a maker's conductor.
[[nodiscard]] Result<ConductorFigures> figures_of(const Conductor& conductor,
                                                  const std::string& path);

/// "No. 2/0" and "00" are the same size: "00". Metric sizes lose their "mm2".
[[nodiscard]] std::string plain_size(std::string_view typed);

/// R(T) / R(20 degC) = (b + T) / (b + 20), T in degC; b = 234.5 (copper), 228 (aluminium).
/// @source IEC 60287-1-1 constants, secondary; for copper also AC 43.13-1B page 11-22.
[[nodiscard]] double warm_factor(Metal metal, double celsius);

/// The same from AC 43.13-1B page 11-22, whose aluminium has 238.1: only to repeat the page.
[[nodiscard]] double warm_factor_of_page(Metal metal, double celsius);

/// Diameter of solid round wire, d = 0.005 in x 92^((36 - n) / 39); n = 0, -1, -2, -3 for
/// 0, 00, 000, 0000.
/// @source The gauge formula as published for ASTM B258-02 (public extract).
[[nodiscard]] quantity::Length gauge_diameter(int gauge);

/// Resistivity at 20 degC, ohm m. @source IEC 60287-1-1, secondary.
[[nodiscard]] double resistivity(Metal metal);

/// Temperature after a current I for a time t with no heat lost:
///   I^2 t = K^2 S^2 ln((Tf + b) / (Ti + b)),   S in mm2
/// Real wire loses heat: what comes out is an upper bound, and a close one for some seconds.
/// @source IEC 60949 constants, secondary.
[[nodiscard]] double adiabatic_celsius(const ConductorFigures& wire, quantity::Current current,
                                       quantity::Duration time, double from_celsius);
/// Time until a temperature is reached, same law. @pre current above 0
[[nodiscard]] double adiabatic_seconds(const ConductorFigures& wire, quantity::Current current,
                                       double from_celsius, double to_celsius);

inline constexpr double k_zero_celsius = 273.15;

std::string_view describe(describe::Choices<CableKind>& c);
std::string_view describe(describe::Choices<Metal>& c);
std::string_view describe(describe::Fields<Conductor>& f);

}  // namespace wm::electrics
