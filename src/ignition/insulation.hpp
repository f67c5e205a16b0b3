#pragma once
/// Insulation of a lead, core to shield, read with a high-tension tester: the half of a lead's
/// health that an ohmmeter cannot see.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "evidence/conformity.hpp"
#include "ignition/lead.hpp"
#include "ignition/part.hpp"

namespace wm::ignition {

struct InsulationReading {
  std::string part;  ///< which lead
  quantity::Entered<quantity::Voltage> test_voltage;
  std::optional<MeasuredResistance> reading;
  bool over_range{};
  std::optional<EnteredResistance> least;                         ///< the maker's figure
  std::optional<quantity::Entered<quantity::Voltage>> test_with;  ///< the maker's test voltage
  std::string source;
  std::optional<evidence::MeterRange> meter;
};

struct InsulationAnswer {
  PartVerdict judged;
  std::optional<quantity::Current> leaks;  ///< V / R
  std::vector<Figure> figures;
};

/// I = V / R. Judged by the least figure entered; a test below the maker's voltage is no test.
/// @return what detail::judge refuses, paths below `path`.
/// @source Ohm's law; the figures shown beside it: table insulation-figures.
[[nodiscard]] Checked<InsulationAnswer> judge_insulation(const InsulationReading& in,
                                                         std::string_view path,
                                                         std::string_view about,
                                                         const describe::Context& context);

std::string_view describe(describe::Fields<InsulationReading>& f);
std::string_view describe(describe::Fields<InsulationAnswer>& f);

}  // namespace wm::ignition
