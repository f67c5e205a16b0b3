#pragma once
/// A whole ignition harness: each lead alone, against its siblings, against its own earlier
/// reading, while it is flexed; its insulation; and whether each lead goes where it should.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ignition/insulation.hpp"
#include "ignition/lead.hpp"
#include "ignition/lead_map.hpp"
#include "ignition/part.hpp"

namespace wm::ignition {

/// What the conductor is made of; picks the figures of the trade that are shown.
enum class LeadCore : std::uint8_t { not_said, spiral, carbon, metal };

struct HarnessLead {
  std::string name;
  std::optional<quantity::Measured<quantity::Length>> length;
  std::optional<MeasuredResistance> reading;
  bool over_range{};
  std::string range;                        ///< of the meter; empty: the lowest that can show it
  std::vector<MeasuredResistance> flexing;  ///< read while bent and pulled at both ends
  bool open_when_flexed{};                  ///< over-range for a moment while flexed
  std::optional<EnteredResistance> lowest;  ///< of this lead alone
  std::optional<EnteredResistance> highest;
  std::optional<MeasuredResistance> earlier;
};

struct HarnessCheckInput {
  std::vector<HarnessLead> leads;
  LeadCore core{LeadCore::not_said};
  std::optional<quantity::Entered<quantity::ResistancePerLength>> per_length_low;
  std::optional<quantity::Entered<quantity::ResistancePerLength>> per_length_high;
  std::optional<EnteredResistance> terminals;
  std::optional<EnteredResistance> lowest;  ///< of every lead
  std::optional<EnteredResistance> highest;
  LimitBasis limit_basis{LimitBasis::makers_limit};
  std::string limit_source;
  std::optional<quantity::Temperature> temperature;
  std::optional<double> temperature_coefficient;
  std::vector<evidence::MeterRange> ranges;
  evidence::TestLeads test_leads{evidence::TestLeads::not_stated};
  std::optional<EnteredResistance> test_lead_resistance;
  evidence::GuardFrom guard_from{evidence::GuardFrom::worst_case};
  std::vector<InsulationReading> insulation;
  std::string firing_order;
  std::vector<TowerTrace> towers;
};

struct HarnessLeadAnswer {
  std::string name;
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<std::string> found;  ///< "open", "short", "intermittent", "high", "low", "insulation"
  std::string reason;
  std::optional<EnteredResistance> lowest;
  std::optional<EnteredResistance> highest;
  std::optional<EnteredResistance> guard;
  std::optional<quantity::ResistancePerLength> per_length;
  std::string siblings;
  std::string earlier;
  std::string flexing;
  std::string not_covered;
  std::vector<std::string> do_next;
  std::vector<std::string> working;
};

struct HarnessCheckAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<HarnessLeadAnswer> leads;
  /// By the harness's own leads, where five or more of them differ in length.
  std::optional<quantity::ResistancePerLength> own_per_length;
  std::optional<quantity::Resistance> own_ends;
  std::string own_in_words;
  std::vector<InsulationAnswer> insulation;
  std::optional<LeadMapAnswer> lead_map;
  std::vector<Figure> figures;
  std::vector<std::string> notes;
};

/// Judge a harness.
///
/// Each lead is judged as by lead-check. Beside that:
/// - intermittent: readings while flexed that lie further apart than the meter's doubt of both,
///     x_max - x_min > a(x_max) + a(x_min),
///   or over-range for a moment: the lead does not conform (intermittent). This is no limit of
///   resistance: a conductor whose resistance moves when it is bent is broken.
/// - short: a reading that could be 0 where the lead's lowest limit could not.
/// - siblings: with five leads or more of three lengths or more, a line R = r L + T through them
///   by the median of slopes (one odd lead does not turn it), and how far each lies from it; else
///   ohm for a length, or the reading alone where lengths are missing. Advice, no verdict.
///
/// @return what lead_check, judge_insulation and trace_leads refuse, and not_found or missing for
///         the meter's range; each with its path.
/// @source as lead_check; Theil-Sen line: statistics::theil_sen.
[[nodiscard]] Checked<HarnessCheckAnswer> harness_check(const HarnessCheckInput& in,
                                                        const describe::Context& context);

std::string_view describe(describe::Choices<LeadCore>& c);
std::string_view describe(describe::Fields<HarnessLead>& f);
std::string_view describe(describe::Fields<HarnessCheckInput>& f);
std::string_view describe(describe::Fields<HarnessLeadAnswer>& f);
std::string_view describe(describe::Fields<HarnessCheckAnswer>& f);

}  // namespace wm::ignition
