#pragma once
/// The order sheet of a crimped hose assembly: what a hose shop must be told, and in what words.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "hose/carries.hpp"
#include "hose/length.hpp"
#include "hose/proof_pressure.hpp"

namespace wm::hose {

enum class FireSleeve : std::uint8_t {
  not_said,
  none,
  integral,  ///< moulded or bonded to the hose
  over       ///< slid over and banded at both ends
};

enum class Liner : std::uint8_t {
  not_said,
  elastomer,
  ptfe_conductive,  ///< its inner layer loaded with carbon
  ptfe_plain
};

struct OrderEnd {
  EndForm form{EndForm::straight};
  std::string thread;       ///< thread and seat: "3/4-16, 37 degree swivel nut"
  std::string metal;        ///< "steel", "aluminium"
  std::string part_number;  ///< where one is known
};

struct HoseOrderInput {
  std::string specification;
  ProofFamily family{ProofFamily::not_said};
  std::string size;
  Liner liner{Liner::not_said};
  Carries carries{Carries::not_said};
  std::string position;
  std::int64_t quantity{1};
  OrderEnd near_end;
  OrderEnd far_end;
  EnteredLength overall;
  std::optional<EnteredLength> length_tolerance;  ///< plus or minus
  std::optional<quantity::Entered<quantity::Angle>> clocking;
  std::optional<quantity::Entered<quantity::Angle>> clocking_tolerance;
  FireSleeve sleeve{FireSleeve::not_said};
  std::optional<EnteredLength> sleeve_past_socket;
  bool ahead_of_firewall{true};
  std::optional<EnteredPressure> working_pressure;
  std::optional<EnteredPressure> proof_pressure;
  std::string proof_source;
  std::optional<EnteredPressure> makers_proof;
  std::string makers_source;
  std::string tag_text;
  std::string remarks;
};

struct OrderLine {
  std::string label;
  std::string text;
};

struct HoseOrderAnswer {
  std::vector<OrderLine> lines;  ///< in the order of the sheet
  std::optional<std::string> length_code;
  std::optional<std::string> clocking_code;
  EnteredLength length_tolerance;
  std::optional<quantity::Angle> clocking_tolerance;
  EnteredPressure proof_pressure;
  std::string proof_source;
  std::string message;  ///< to paste into a letter
  std::vector<std::string> warnings;
};

/// "0164" for 16 4/8 in: three digits of inches, one of eighths.
/// @return nothing unless it is a whole number of eighths below 1000 in
/// @source MIL-DTL-8790F 1.2; example NAVEDTRA 14018 p. 5-12
[[nodiscard]] std::optional<std::string> length_code(quantity::Length overall);

/// "10" for 50 degrees: two digits of steps of 5 degrees.
/// @return nothing unless it is a whole step from 0 to 355 degrees
/// @source MIL-DTL-83796/5 fig. 3 note 4; MIL-DTL-83796B 1.2
[[nodiscard]] std::optional<std::string> clocking_code(quantity::Angle clocking);

/// What is usual for hose cut to this length. @return nothing without the table
[[nodiscard]] std::optional<quantity::Length> usual_length_tolerance(
    const describe::Context& context, quantity::Length length);

/// @return missing (each thing a hose shop would have to ask for), conflict (clocking of a
///         straight end; working pressure not below the proof; a length shorter than its
///         tolerance; fuel through plain PTFE without a word of its maker), refused (proof pressure
///         above the table), not_found (size)
[[nodiscard]] Checked<HoseOrderAnswer> hose_order(const HoseOrderInput& input,
                                                  const describe::Context& context);

[[nodiscard]] bool is_elbow(EndForm form);
[[nodiscard]] std::string_view words(EndForm form);

std::string_view describe(describe::Choices<FireSleeve>& c);
std::string_view describe(describe::Choices<Liner>& c);
std::string_view describe(describe::Fields<OrderEnd>& f);
std::string_view describe(describe::Fields<HoseOrderInput>& f);
std::string_view describe(describe::Fields<OrderLine>& f);
std::string_view describe(describe::Fields<HoseOrderAnswer>& f);

}  // namespace wm::hose
