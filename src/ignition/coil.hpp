#pragma once
/// Ignition coils by their resistance: what an ohmmeter can show of them, and what it cannot.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ignition/lead.hpp"
#include "ignition/part.hpp"

namespace wm::ignition {

enum class CoilKind : std::uint8_t {
  single_ended,  ///< one tower; the other end of the secondary on the case or the primary
  double_ended   ///< two towers in series with one secondary, no path to the case
};

struct CoilReading {
  std::string name;
  std::optional<MeasuredResistance> primary;
  bool primary_over_range{};
  std::string primary_range;
  std::optional<MeasuredResistance> secondary;  ///< tower to case, or tower to tower
  bool secondary_over_range{};
  std::string secondary_range;
  std::optional<MeasuredResistance> to_case;  ///< winding to case, where there should be no path
  bool to_case_over_range{};
  std::string to_case_range;
  std::optional<quantity::Temperature> temperature;
};

struct CoilCheckInput {
  CoilKind kind{CoilKind::single_ended};
  std::vector<CoilReading> coils;
  std::optional<EnteredResistance> primary_lowest;
  std::optional<EnteredResistance> primary_highest;
  std::optional<EnteredResistance> secondary_lowest;
  std::optional<EnteredResistance> secondary_highest;
  std::optional<EnteredResistance> to_case_least;
  std::string limit_source;
  std::optional<quantity::Temperature> limits_at;  ///< the limits hold at; 20 degC unless said
  std::vector<evidence::MeterRange> ranges;
  evidence::TestLeads test_leads{evidence::TestLeads::not_stated};
  std::optional<EnteredResistance> test_lead_resistance;
  evidence::GuardFrom guard_from{evidence::GuardFrom::worst_case};
};

struct CoilAnswer {
  std::string name;
  PartVerdict primary;
  PartVerdict secondary;
  PartVerdict to_case;
  std::optional<quantity::Resistance> primary_at_20;
  std::optional<quantity::Resistance> secondary_at_20;
  std::string primary_among_coils;
  std::string secondary_among_coils;
  std::vector<Figure> figures;
  std::vector<std::string> working;
};

struct CoilCheckAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<CoilAnswer> coils;
  std::string not_covered;
  std::vector<std::string> notes;
};

inline constexpr std::string_view k_coil_not_covered =
    "an ohmmeter cannot prove a coil good: shorted turns, and insulation that breaks down at high "
    "voltage or when hot, do not show";

/// Copper from one temperature to another: R2 = R1 (234.5 + T2) / (234.5 + T1), T in degC.
/// @source AC 43.13-1B CHG 1, page 11-22 (its rule for copper cable: 254.5 = 234.5 + 20).
[[nodiscard]] double copper_factor(quantity::Temperature from, quantity::Temperature to);

/// Judge coils, each alone and among the others.
///
/// The limits are moved to the temperature of the coil by the law of copper; without a temperature
/// they are taken as they are. A winding that shows over-range is open and does not conform with
/// or without a limit. To the case a double-ended coil, or a primary, should have no path:
/// over-range is expected there.
///
/// @return missing (no coil; range of an over-range reading), not_found (range), conflict (limits
///         upside down, over-range and a reading), and what evidence::conformity refuses.
/// @source as above; figures beside it: table coil-figures (advice).
[[nodiscard]] Checked<CoilCheckAnswer> coil_check(const CoilCheckInput& in,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<CoilKind>& c);
std::string_view describe(describe::Fields<CoilReading>& f);
std::string_view describe(describe::Fields<CoilCheckInput>& f);
std::string_view describe(describe::Fields<CoilAnswer>& f);
std::string_view describe(describe::Fields<CoilCheckAnswer>& f);

}  // namespace wm::ignition
