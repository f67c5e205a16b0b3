#pragma once
/// The condenser across the breaker points: capacitance, leakage, and what an ohmmeter shows.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ignition/insulation.hpp"

namespace wm::ignition {

/// What the display of an ohmmeter does.
enum class OhmmeterShows : std::uint8_t { not_tried, climbs, stays_low, over_range_at_once };

struct CondenserCheckInput {
  std::optional<quantity::Measured<quantity::Capacitance>> capacitance;
  std::optional<quantity::Entered<quantity::Capacitance>> lowest;
  std::optional<quantity::Entered<quantity::Capacitance>> highest;
  std::string limit_source;
  std::optional<evidence::MeterRange> meter;
  std::optional<InsulationReading> leakage;
  OhmmeterShows ohmmeter{OhmmeterShows::not_tried};
};

struct CondenserCheckAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  PartVerdict capacitance;
  std::optional<InsulationAnswer> leakage;
  std::string ohmmeter;
  std::vector<Figure> figures;
  std::vector<std::string> notes;
};

/// Judge a condenser by the maker's limits entered. What the ohmmeter shows is advice.
/// @return missing (nothing read), and what evidence::conformity refuses.
/// @source figures beside it: tables condenser-figures and insulation-figures (advice).
[[nodiscard]] Checked<CondenserCheckAnswer> condenser_check(const CondenserCheckInput& in,
                                                            const describe::Context& context);

std::string_view describe(describe::Choices<OhmmeterShows>& c);
std::string_view describe(describe::Fields<CondenserCheckInput>& f);
std::string_view describe(describe::Fields<CondenserCheckAnswer>& f);

}  // namespace wm::ignition
