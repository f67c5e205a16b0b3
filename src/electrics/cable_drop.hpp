#pragma once
/// The calculation `cable-drop`: what a cable loses, against the limit for its circuit.

#include <vector>

#include "describe/catalogue.hpp"
#include "electrics/wire.hpp"

namespace wm::electrics {

enum class NominalVoltage : std::uint8_t { v14, v28, v115, v200 };
enum class Duty : std::uint8_t { continuous, intermittent };
enum class CircuitRole : std::uint8_t {
  equipment,  ///< from the bus to the equipment
  feeder      ///< from generator or battery to the bus: 2 % of the regulated voltage
};

/// A computed figure against a limit. No reading is judged here, so there is no verdict.
enum class Against : std::uint8_t {
  within,
  over,
  advice_within,  ///< the limit is advice only
  advice_over,
  no_limit
};

/// A limit on the drop and what it rests on.
struct DropLimit {
  double volts{};
  std::string source;
  bool advice{};
};

struct DropLimitQuestion {
  NominalVoltage nominal{NominalVoltage::v14};
  Duty duty{Duty::continuous};
  CircuitRole role{CircuitRole::equipment};
  std::optional<EnteredVoltage> regulated;  ///< of a feeder
  std::optional<EnteredVoltage> own;        ///< the owner's or the maker's: wins
  std::string own_source;
};

/// @return missing: the regulated voltage of a feeder.
/// @source AC 43.13-1B table 11-6 (intermittent figures second hand: advice); feeders:
///         FAA-H-8083-31, figures 9-121 and (8083-32) 4-78 with their text.
[[nodiscard]] Result<DropLimit> drop_limit(const DropLimitQuestion& question);

[[nodiscard]] Against against(double value, double limit, bool advice);
[[nodiscard]] std::string_view words(Against a);

struct CableDropInput {
  std::string name;
  Conductor conductor;
  EnteredLength length;
  std::optional<EnteredLength> return_length;
  EnteredCurrent current;
  std::optional<EnteredTemperature> temperature;
  NominalVoltage nominal{NominalVoltage::v14};
  Duty duty{Duty::continuous};
  CircuitRole role{CircuitRole::equipment};
  std::optional<EnteredVoltage> regulated;
  std::optional<EnteredVoltage> limit;
  std::string limit_source;
};

struct CableDropAnswer {
  quantity::Voltage drop{};
  quantity::Resistance resistance{};
  quantity::Fraction of_nominal{};
  std::optional<quantity::Voltage> limit;
  Against standing{Against::no_limit};
  std::string in_words;
  std::optional<quantity::Length> longest_run;  ///< out and back together, at this current
  quantity::Power lost{};
  std::string conductor;
  std::string limit_from;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// V = r (L + L_return) I, r warmed to the conductor's temperature; a conductor colder than
/// 20 degC gets no credit, because a cold engine bay does not stay cold.
///
/// The return through structure counts as nothing where its bonding is sound (FAA-H-8083-31);
/// a ground wire is part of the length (AC 43.13-1B page 11-26, example 1).
///
/// @return not_found and missing for the conductor, missing for a feeder without its voltage.
/// @source AC 43.13-1B CHG 1, page 11-22: VD = (ohm/ft)(ft)(A).
[[nodiscard]] Checked<CableDropAnswer> cable_drop(const CableDropInput& input,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<NominalVoltage>& c);
std::string_view describe(describe::Choices<Duty>& c);
std::string_view describe(describe::Choices<CircuitRole>& c);
std::string_view describe(describe::Choices<Against>& c);
std::string_view describe(describe::Fields<CableDropInput>& f);
std::string_view describe(describe::Fields<CableDropAnswer>& f);

}  // namespace wm::electrics
