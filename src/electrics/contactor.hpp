#pragma once
/// The calculation `contactor-check`: coil, pull-in when hot, contacts under load, suppression.

#include <vector>

#include "describe/catalogue.hpp"
#include "electrics/starting.hpp"
#include "evidence/verdict.hpp"

namespace wm::electrics {

/// One way through the suppression diode, read with the meter's diode range.
enum class DiodeReading : std::uint8_t { not_read, over_range, drop };

struct ContactorInput {
  std::string name;
  std::optional<MeasuredResistance> coil;
  bool coil_open{};  ///< the display showed over-range
  EnteredTemperature coil_temperature{quantity::celsius(20), 1.0, {}};
  std::optional<EnteredResistance> coil_nominal;  ///< the maker's, at 20 degC
  std::optional<quantity::Fraction> coil_tolerance;
  std::optional<EnteredVoltage> pull_in;  ///< at 20 degC
  std::optional<EnteredTemperature> hot;
  std::optional<EnteredVoltage> available;  ///< at the coil while cranking
  std::optional<MeasuredVoltage> contact_drop;
  std::optional<MeasuredCurrent> contact_current;
  std::optional<EnteredResistance> contact_limit;  ///< the maker's
  DiodeReading diode_forward{DiodeReading::not_read};
  std::optional<EnteredVoltage> diode_forward_drop;
  DiodeReading diode_reverse{DiodeReading::not_read};
  bool coil_lead_lifted{};
};

struct ContactorItem {
  std::string what;
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
};

struct ContactorAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};  ///< the worst of the items judged
  std::string in_words;
  std::vector<ContactorItem> items;
  std::optional<quantity::Resistance> coil_at_20;
  std::optional<quantity::Voltage> pull_in_hot;
  std::optional<quantity::Voltage> to_spare;
  std::optional<quantity::Resistance> contact;
  std::optional<quantity::Resistance> contact_doubt;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Pull-in follows the ampere-turns: V_pi(T) = V_pi(20) (234.5 + T) / 254.5.
/// @source computed from the resistance of copper (IEC 60287-1-1, AC 43.13-1B page 11-22).
[[nodiscard]] quantity::Voltage pull_in_at(quantity::Voltage at_20, double celsius);

/// @return missing: nominal without tolerance, a contact drop without its current, a forward
///         drop that is not there; conflict: coil open and a reading; a current of 0.
/// @source Electrical notes, section 3.2. Without the maker's figures nothing is judged: what
///         contactors usually have is advice.
[[nodiscard]] Checked<ContactorAnswer> contactor_check(const ContactorInput& input,
                                                       const describe::Context& context);

std::string_view describe(describe::Choices<DiodeReading>& c);
std::string_view describe(describe::Fields<ContactorInput>& f);
std::string_view describe(describe::Fields<ContactorItem>& f);
std::string_view describe(describe::Fields<ContactorAnswer>& f);

}  // namespace wm::electrics
