#pragma once
/// Ignition: high-tension leads judged by the resistance of their conductor.
///
/// A lead whose conductor conforms is not thereby insulated, and its leads can be crossed: a
/// multimeter sees neither.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "evidence/conformity.hpp"
#include "quantity/text.hpp"

namespace wm::ignition {

using EnteredResistance = quantity::Entered<quantity::Resistance>;
using MeasuredResistance = quantity::Measured<quantity::Resistance>;

/// Where the limit comes from; a typical figure of such leads is advice and gives no verdict.
enum class LimitBasis : std::uint8_t { makers_limit, owners_limit, typical_figure };

struct SiblingLead {
  std::string name;
  MeasuredResistance reading;
  std::optional<quantity::Entered<quantity::Length>> length;
};

struct LeadCheckInput {
  std::string name;
  std::optional<quantity::Measured<quantity::Length>> length;
  std::optional<quantity::Entered<quantity::ResistancePerLength>> per_length_low;
  std::optional<quantity::Entered<quantity::ResistancePerLength>> per_length_high;
  std::optional<EnteredResistance> terminals;  ///< both ends together, in every lead alike
  std::optional<EnteredResistance> lowest;     ///< a limit on the whole lead
  std::optional<EnteredResistance> highest;
  LimitBasis limit_basis{LimitBasis::makers_limit};
  std::string limit_source;
  std::optional<quantity::Temperature> temperature;  ///< of the lead; limits hold at 20 degC
  std::optional<double> temperature_coefficient;     ///< per kelvin, of the conductor
  std::optional<MeasuredResistance> reading;
  bool over_range{};
  std::optional<evidence::MeterRange> meter;
  evidence::TestLeads leads{evidence::TestLeads::not_stated};
  std::optional<EnteredResistance> lead_resistance;
  evidence::GuardFrom guard_from{evidence::GuardFrom::worst_case};
  std::vector<SiblingLead> siblings;
  std::optional<MeasuredResistance> baseline;
};

struct LeadCheckAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  bool open{};
  std::string in_words;
  std::string reason;
  std::optional<EnteredResistance> lowest;  ///< limits of this lead
  std::optional<EnteredResistance> highest;
  std::optional<EnteredResistance> accept_from;  ///< conforms from here, the meter's doubt counted
  std::optional<EnteredResistance> accept_to;
  std::optional<EnteredResistance> guard;
  std::optional<quantity::ResistancePerLength> per_length;  ///< what was read, terminals taken off
  std::optional<quantity::Fraction> allowance_used;
  std::string siblings;
  std::string baseline;
  std::string not_covered;  ///< what no such reading can show
  std::vector<std::string> do_next;
  std::vector<std::string> working;
};

/// What a resistance reading never shows.
inline constexpr std::string_view k_not_covered =
    "insulation not tested, and leads can be crossed: a high-tension test and a look at the firing "
    "order are still owed";
inline constexpr std::string_view k_no_makers_limit =
    "no maker's limit: compared with its siblings, which is advice and no verdict";

/// Judge one lead.
///
///   lowest = L r_low + R_terminals,  highest = L r_high + R_terminals
///
/// Limits on the whole lead count beside those from the length; the tighter one rules. A doubt
/// dL of the length moves each limit by r dL: a reading conforms only inside the narrowest band
/// and fails only outside the widest. Warm leads: the limits are multiplied by
/// 1 + alpha (T - 20 degC).
///
/// @return missing (length beside ohm per length, coefficient beside a temperature), conflict
///         (limits upside down, over-range and a reading), and what evidence::conformity refuses.
///         Over-range is a reading: does-not-conform (open).
/// @source Bands and guard: ILAC-G8:09/2019 par. 4.2.3; meter terms: common form of meter
///         specifications. Ohm per length is the lead maker's figure; there is no table.
[[nodiscard]] Checked<LeadCheckAnswer> lead_check(const LeadCheckInput& input,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<LimitBasis>& c);
std::string_view describe(describe::Fields<SiblingLead>& f);
std::string_view describe(describe::Fields<LeadCheckInput>& f);
std::string_view describe(describe::Fields<LeadCheckAnswer>& f);

}  // namespace wm::ignition
