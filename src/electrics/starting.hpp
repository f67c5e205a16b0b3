#pragma once
/// The calculation `starting-circuit`: what reaches the starter, and which joint is the bad one.
///
/// Drops scale with the current, so what is kept of a reading is its milliohm.

#include <vector>

#include "describe/catalogue.hpp"
#include "electrics/wire.hpp"

namespace wm::electrics {

using MeasuredVoltage = quantity::Measured<quantity::Voltage>;
using MeasuredCurrent = quantity::Measured<quantity::Current>;
using MeasuredResistance = quantity::Measured<quantity::Resistance>;

enum class StartElementKind : std::uint8_t { cable, contactor, joint, ground };

/// One element, in order from the battery's plus post to its minus post.
struct StartElement {
  std::string name;
  StartElementKind kind{StartElementKind::cable};
  std::optional<Conductor> conductor;  ///< of a cable
  std::optional<EnteredLength> length;
  std::optional<EnteredResistance> resistance;  ///< what it should have: wins
  std::string beside;                           ///< an earlier element it lies in parallel with
  bool in_return{};                             ///< after the starter, on the ground side
  std::optional<MeasuredVoltage> drop;          ///< read across it while cranking
};

struct StartBattery {
  EnteredVoltage open_circuit;
  EnteredResistance internal;  ///< at 25 degC
  std::optional<EnteredTemperature> temperature;
};

/// V = K w + I R_armature + V_brushes; K from one point at which all three were read.
struct StartMotor {
  EnteredResistance armature;
  EnteredVoltage brushes;
  EnteredVoltage at_voltage;
  EnteredCurrent at_current;
  quantity::Entered<quantity::RotationSpeed> at_speed;
};

struct StartingInput {
  std::string name;
  StartBattery battery;
  std::vector<StartElement> elements;
  std::optional<EnteredCurrent> current;
  std::optional<StartMotor> motor;
  std::optional<EnteredTemperature> temperature;  ///< of the cables
  std::optional<MeasuredCurrent> measured_current;
};

/// A reading against what such an element should have; advice, no verdict on the part.
enum class ElementStanding : std::uint8_t { not_measured, as_expected, undecided, high };

struct StartElementAnswer {
  std::string name;
  quantity::Resistance expected{};  ///< at most, when it is good
  quantity::Voltage computed{};     ///< drop at the cranking current
  std::optional<quantity::Resistance> measured;
  std::optional<quantity::Resistance> doubt;  ///< expanded, of `measured`
  std::optional<quantity::Resistance> excess;
  ElementStanding standing{ElementStanding::not_measured};
  std::string basis;
};

/// A published rule beside this circuit, with its scope: no verdict on an aircraft.
struct StartRule {
  std::string rule;
  std::string scope;
  std::optional<quantity::Voltage> limit;
  std::optional<quantity::Voltage> value;
  std::string against;
  std::string source;
};

struct Renewal {
  std::string element;
  quantity::Voltage at_starter{};                 ///< more volts at the same current
  std::optional<quantity::Current> first_moment;  ///< more amperes, rotor still standing
  std::optional<quantity::RotationSpeed> speed;   ///< more cranking speed at the same torque
};

struct StartingAnswer {
  quantity::Current current{};
  quantity::Voltage at_battery{};
  quantity::Voltage at_starter{};
  quantity::Resistance outside{};                 ///< all elements, battery left out
  std::optional<quantity::Current> first_moment;  ///< rotor standing
  std::optional<quantity::RotationSpeed> speed;
  std::vector<StartElementAnswer> elements;
  std::string located;
  std::optional<Renewal> renewal;
  std::optional<quantity::Current> read_current;
  std::vector<StartRule> rules;
  std::string in_words;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Internal resistance of a lead-acid battery when cold, against 25 degC.
/// @return Nothing outside -20 to 50 degC.
/// @source From memory, unconfirmed: the battery maker's curve or a measurement goes before it.
[[nodiscard]] std::optional<double> cold_factor(double celsius);

/// Rule of thumb for a whole starting circuit: 0.20 V for each 100 A.
/// @source TM 10-3930-671-24, page F-303 (ground vehicle).
[[nodiscard]] quantity::Voltage rule_of_thumb(quantity::Current current);

/// V_start = E - I (R_battery + sum of the elements), solved as a circuit so that elements may lie
/// side by side. Measured: r = V / I, U_r = r sqrt((U_V/V)^2 + (U_I/I)^2). Where the current was
/// not read, the cable serves as shunt: a good one has 0.88 to 1.0 of its table maximum.
///
/// The bad joint is the element with the largest excess over what it should have, where that
/// excess is larger than its doubt.
///
/// @return missing (elements, current, what a cable is), not_found (`beside`), duplicate,
///         conflict (a drop on an element that lies beside another; current 0 read).
/// @source Cranking model and typical figures: electrical notes, sections 3.1 and 3.3.
[[nodiscard]] Checked<StartingAnswer> starting_circuit(const StartingInput& input,
                                                       const describe::Context& context);

std::string_view describe(describe::Choices<StartElementKind>& c);
std::string_view describe(describe::Choices<ElementStanding>& c);
std::string_view describe(describe::Fields<StartElement>& f);
std::string_view describe(describe::Fields<StartBattery>& f);
std::string_view describe(describe::Fields<StartMotor>& f);
std::string_view describe(describe::Fields<StartingInput>& f);
std::string_view describe(describe::Fields<StartElementAnswer>& f);
std::string_view describe(describe::Fields<StartRule>& f);
std::string_view describe(describe::Fields<Renewal>& f);
std::string_view describe(describe::Fields<StartingAnswer>& f);

}  // namespace wm::electrics
