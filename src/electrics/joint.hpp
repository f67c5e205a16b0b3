#pragma once
/// The calculations `joint-drop` and `bonding-check`: small resistances read with a known current.

#include <vector>

#include "describe/catalogue.hpp"
#include "electrics/starting.hpp"
#include "evidence/verdict.hpp"

namespace wm::electrics {

struct JointDropInput {
  std::string name;
  MeasuredVoltage drop;
  std::optional<MeasuredVoltage> reversed;  ///< with the current the other way round
  MeasuredCurrent current;
  std::optional<EnteredResistance> limit;  ///< the maker's or the owner's
  std::string limit_source;
  std::optional<MeasuredResistance> baseline;
  std::optional<EnteredCurrent> at_current;
};

struct JointDropAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  quantity::Resistance resistance{};
  quantity::Resistance doubt{};  ///< expanded
  std::optional<quantity::Voltage> drop_at;
  std::string advice;
  std::string against_baseline;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// r = |V| / I, U_r = sqrt(U_V^2 + (r U_I)^2) / I: probes the other way round change no verdict;
/// both polarities are averaged, which takes a thermal voltage off. The verdict needs a limit
/// entered: there is none in any text read; what a good lug joint has (0.05 to 0.2 mohm) is advice.
///
/// @return conflict: a current of 0.
/// @source Four-wire rule and millivolt method: MIL-PRF-39012E par. 4.6.13.1, in the notes'
/// sect. 5.
[[nodiscard]] Checked<JointDropAnswer> joint_drop(const JointDropInput& input,
                                                  const describe::Context& context);

enum class Bond : std::uint8_t { equipment_frame, jumper_connection, ground_path, own_limit };
enum class BondInstrument : std::uint8_t { millivolt_method, bonding_meter, hand_multimeter };

struct BondingInput {
  std::string name;
  Bond bond{Bond::equipment_frame};
  std::optional<EnteredResistance> limit;
  std::string limit_source;
  BondInstrument instrument{BondInstrument::millivolt_method};
  std::optional<MeasuredResistance> reading;
  std::optional<MeasuredVoltage> drop;
  std::optional<MeasuredVoltage> reversed;
  std::optional<MeasuredCurrent> current;
};

struct BondingAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::string reason;
  std::optional<quantity::Resistance> resistance;
  std::optional<quantity::Resistance> doubt;
  quantity::Resistance limit{};
  bool strict{};  ///< at the limit itself it does not conform
  std::string limit_from;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Judge a bond: below 2.5 mohm (frame of equipment), up to 3 mohm (each connection of a jumper),
/// up to 5 mohm (ground path). A hand multimeter cannot tell: undecided, whatever it shows.
///
/// @return missing (a limit of one's own; drop or current of the millivolt method), conflict
///         (a current of 0).
/// @source AC 43.13-1B CHG 1 par. 11-188 f, i, j and 11-189; FAA-H-8083-31 (5 mohm).
[[nodiscard]] Checked<BondingAnswer> bonding_check(const BondingInput& input,
                                                   const describe::Context& context);

std::string_view describe(describe::Choices<Bond>& c);
std::string_view describe(describe::Choices<BondInstrument>& c);
std::string_view describe(describe::Fields<JointDropInput>& f);
std::string_view describe(describe::Fields<JointDropAnswer>& f);
std::string_view describe(describe::Fields<BondingInput>& f);
std::string_view describe(describe::Fields<BondingAnswer>& f);

}  // namespace wm::electrics
