#pragma once
/// The proof test of a hose: how, with what pressure, why with liquid, and what may be said of it.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "hose/carries.hpp"
#include "hose/criterion.hpp"
#include "hose/length.hpp"
#include "hose/pressure_hold.hpp"
#include "hose/proof_pressure.hpp"
#include "hose/test_medium.hpp"

namespace wm::hose {

/// How long the pressure is held. For aircraft hose in the field no figure was found.
enum class HoldTime : std::uint8_t {
  five_minutes,    ///< common practice, no source
  thirty_seconds,  ///< MIL-PRF-11588H 4.5.3, ground fuel hose
  as_entered
};

/// Where the assembly was made: sets the tolerance of its clocking.
enum class MadeIn : std::uint8_t { factory, field };

/// What was seen once the pressure was off. All these must not be.
struct ProofFindings {
  Seen leak{Seen::not_looked};            ///< during or after
  Seen push_off_moved{Seen::not_looked};  ///< the mark at the socket's mouth
  Seen gap_changed{Seen::not_looked};     ///< between nut or hex and socket
  Seen deformed{Seen::not_looked};        ///< for good
  Seen bulge_or_kink{Seen::not_looked};
};

struct ProofTestInput {
  ProofFamily family{ProofFamily::not_said};
  std::string size;
  std::optional<EnteredPressure> makers_proof;
  std::string makers_source;
  EnteredLength bore;
  EnteredLength length;
  Carries carries{Carries::not_said};
  std::optional<EnteredPressure> system_pressure;
  bool reused_ends{};
  std::optional<EnteredPressure> test_pressure;
  std::optional<EnteredPressure> pump_limit;
  std::optional<EnteredPressure> gauge_limit;
  std::optional<quantity::Entered<quantity::Volume>> pump_stroke;
  TestMedium medium{TestMedium::water};
  std::optional<quantity::Entered<quantity::PressureDifference>> bulk_modulus;
  std::optional<quantity::Fraction> expansion;  ///< of volume for each K
  std::optional<quantity::Temperature> medium_temperature;
  std::optional<quantity::Entered<quantity::Volume>> pump_volume;  ///< liquid in pump and line
  bool closed_off{};                                               ///< shut off from the pump
  HoldTime hold{HoldTime::five_minutes};
  std::optional<quantity::Entered<quantity::Duration>> hold_time;
  ProofFindings findings;
  bool two_elbows{};
  MadeIn made_in{MadeIn::factory};
  std::optional<quantity::Measured<quantity::Angle>> clocking_before;
  std::optional<quantity::Measured<quantity::Angle>> clocking_after;
  std::vector<PressureHold> holds;
  std::optional<PressureHold> blank;
  std::optional<quantity::Entered<quantity::PressureDifference>> gauge_doubt;
  std::optional<quantity::Entered<quantity::PressureDifference>> fall_allowed;
  std::string fall_source;
  quantity::Fraction steady_share{0.8};
  std::optional<quantity::Measured<quantity::Length>> marks_low;   ///< between marks, at 10 psi
  std::optional<quantity::Measured<quantity::Length>> marks_high;  ///< at the test pressure, 30 s
  std::optional<quantity::Fraction> lengthens_to;                  ///< the maker's figures
  std::optional<quantity::Fraction> shortens_to;
};

/// A hold as the answer shows it.
struct HoldAnswer {
  quantity::Measured<quantity::PressureDifference> fall;
  std::optional<quantity::Entered<quantity::PressureDifference>> pump_at_most;
  std::optional<quantity::Entered<quantity::PressureDifference>>
      temperature_at_most;  ///< below 0: it hid as much
  quantity::Measured<quantity::PressureDifference> unexplained;
  std::string leak_would_be;
};

/// What the hose holds at the test pressure, with liquid and if it were gas.
struct StoredEnergy {
  quantity::Entered<quantity::Volume> volume;
  quantity::Entered<quantity::Energy> liquid;
  quantity::Entered<quantity::Energy> gas_isentropic;
  quantity::Entered<quantity::Energy> gas_brode;
  quantity::Entered<quantity::Energy> gas_isothermal;
  double gas_to_liquid{};
  quantity::Entered<quantity::Energy>
      bubble;  ///< 1 mL of air left in, its volume at the test pressure
};

struct ProofTestAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<std::string> do_next;
  EnteredPressure test_pressure;
  std::string pressure_from;
  EnteredPressure proof_limit;
  std::string limit_from;
  quantity::Entered<quantity::Duration> hold_time;
  std::string hold_from;
  std::vector<Criterion> criteria;
  std::vector<HoldAnswer> holds;
  std::optional<quantity::Measured<quantity::Fraction>> length_change;
  std::optional<quantity::Measured<quantity::Angle>> clocking_change;
  StoredEnergy energy;
  quantity::Entered<quantity::Volume>
      liquid_added;  ///< by the liquid alone; the hose swells and takes more
  std::optional<std::int64_t> strokes_at_least;
  std::optional<quantity::Entered<quantity::Volume>>
      air_at_most;  ///< left in, at the pressure of the room
  quantity::Entered<quantity::PressureDifference> trapped_rise;  ///< for 10 degC, both ends closed
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Difference of two directions, -180 to 180 degrees: 358 and 2 are 4 degrees apart.
[[nodiscard]] double turned(double from_rad, double to_rad);

/// Tolerance of the clocking: 3 degrees up to 2 ft, 5 above (factory); 5 up to 36 in, 10 above
/// (field made).
/// @source MIL-DTL-83796/5 fig. 3 note 3; TM 1-1500-204-23-2 fig. 4-50A step 11(c)
[[nodiscard]] quantity::Angle clocking_tolerance(quantity::Length overall, MadeIn made_in);

/// Plan a proof test, or judge one.
///
/// Test pressure: as entered, or the least of the table's (or maker's) proof pressure and what
/// pump and gauge can do. Verdict: conforms only if no leak, no moved push-off mark, no changed
/// gap or clocking, no lasting deformation, no bulge or kink was seen, each having been looked
/// at; if the pressure was reached and held long enough; and if the fall of pressure is explained
/// (judge_holds). Length change is judged where it was measured: 100 (Lp - L0) / L0 %.
///
/// @return missing (maker's proof pressure, figures of another liquid, one of two readings),
///         not_found (size), refused (test pressure above the table, the pump or the gauge; gas
///         or fuel as the medium), conflict (of readings)
/// @source MIL-DTL-8790F 3.7.2; FAA-H-8083-30 p. 7-18; AL0907 p. 58; TM 1-1500-204-23-2 p. 4-47
[[nodiscard]] Checked<ProofTestAnswer> proof_test(const ProofTestInput& input,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<HoldTime>& c);
std::string_view describe(describe::Choices<MadeIn>& c);
std::string_view describe(describe::Fields<ProofFindings>& f);
std::string_view describe(describe::Fields<ProofTestInput>& f);
std::string_view describe(describe::Fields<HoldAnswer>& f);
std::string_view describe(describe::Fields<StoredEnergy>& f);
std::string_view describe(describe::Fields<ProofTestAnswer>& f);

}  // namespace wm::hose
