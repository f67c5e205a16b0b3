#pragma once
/// Spark plugs on the bench: gap, resistor, insulation, what they look like; and where each goes
/// back.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ignition/lead.hpp"
#include "ignition/part.hpp"

namespace wm::ignition {

/// What was seen, in the words of the trade.
enum class PlugLook : std::uint8_t {
  not_looked,
  normal,      ///< tan to grey, dry
  dry_soot,    ///< black and dry
  wet_oil,     ///< black and wet
  lead_beads,  ///< grey beads of lead
  worn_electrodes,
  cracked_ceramic,  ///< cracked or chipped, at the nose or in the well
  damaged_thread,   ///< threads or barrel
  corroded_seat,
  well_flashover  ///< tracks in the well
};

struct PlugReading {
  std::string name;                                        ///< "3 top"
  std::vector<quantity::Measured<quantity::Length>> gaps;  ///< one an electrode
  std::optional<MeasuredResistance> resistor;              ///< well to centre electrode
  bool resistor_over_range{};
  std::string resistor_range;
  std::optional<MeasuredResistance> insulation;  ///< centre electrode to shell
  bool insulation_over_range{};
  std::string insulation_range;
  PlugLook look{PlugLook::not_looked};
  bool half_worn{};  ///< an electrode at half its original size
  bool dropped{};
};

/// How the sparks of a cylinder keep their polarity.
enum class SparkFrom : std::uint8_t { magneto, double_ended_coil };

struct PlugCheckInput {
  std::vector<PlugReading> plugs;
  std::optional<quantity::Entered<quantity::Length>> gap_lowest;
  std::optional<quantity::Entered<quantity::Length>> gap_highest;
  std::optional<EnteredResistance> resistor_highest;
  std::optional<EnteredResistance> insulation_least;
  std::string limit_source;
  std::vector<evidence::MeterRange> ranges;
  evidence::TestLeads test_leads{evidence::TestLeads::not_stated};
  std::optional<EnteredResistance> test_lead_resistance;
  std::optional<quantity::Entered<quantity::Length>> gauge_step;  ///< of the gap gauge's wires
  std::string firing_order;                                       ///< for the rotation
  SparkFrom spark_from{SparkFrom::magneto};
};

struct PlugAnswer {
  std::string name;
  PartVerdict gap;
  PartVerdict resistor;
  PartVerdict insulation;
  PartVerdict look;
  std::vector<Figure> figures;
};

struct PlugMove {
  std::string from;
  std::string to;
};

struct PlugCheckAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<PlugAnswer> plugs;
  std::vector<PlugMove> rotation;
  std::string rotation_in_words;
  std::vector<std::string> notes;
};

/// Where each plug of two a cylinder goes: the upper plug of a cylinder to the lower place of the
/// next cylinder in the firing order, and the lower to the upper. With an even number of cylinders
/// neighbours in the firing order of a magneto have sparks of opposite polarity. With a
/// double-ended coil the polarity of a tower is fixed and that of its mate opposite: the plug goes
/// to the mate, half the firing order away.
/// @return as `firing_order`; not_applicable for a double-ended coil and an odd number.
/// @source common practice, no source.
[[nodiscard]] Result<std::vector<PlugMove>> plug_rotation(std::string_view order, SparkFrom from);

/// Judge plugs by the maker's limits entered; what AC 43.13-1B par. 8-17 rejects by its look does
/// not conform without any limit.
/// @return missing (no plug; range of an over-range reading), not_found, conflict, as
///         `firing_order`, and what evidence::conformity refuses.
/// @source AC 43.13-1B CHG 1 par. 8-17; figures beside it: table plug-figures.
[[nodiscard]] Checked<PlugCheckAnswer> plug_check(const PlugCheckInput& in,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<PlugLook>& c);
std::string_view describe(describe::Choices<SparkFrom>& c);
std::string_view describe(describe::Fields<PlugReading>& f);
std::string_view describe(describe::Fields<PlugCheckInput>& f);
std::string_view describe(describe::Fields<PlugAnswer>& f);
std::string_view describe(describe::Fields<PlugMove>& f);
std::string_view describe(describe::Fields<PlugCheckAnswer>& f);

}  // namespace wm::ignition
