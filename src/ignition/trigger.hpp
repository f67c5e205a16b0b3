#pragma once
/// "trigger-supply": electronic ignition lives on volts. What reaches the modules, and how long the
/// standby supply carries them on a bus that fails.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "ignition/insulation.hpp"
#include "ignition/part.hpp"

namespace wm::ignition {

/// One module or trigger with the volts at its terminals.
struct SupplyRead {
  std::string name;
  std::optional<quantity::Measured<quantity::Voltage>> running;   ///< on the bus, engine running
  std::optional<quantity::Measured<quantity::Voltage>> cranking;  ///< the least while cranking
  std::optional<quantity::Entered<quantity::Voltage>> least;      ///< the maker's figure
};

/// What carries the modules when the bus is gone.
struct StandbySupply {
  quantity::Entered<quantity::Charge> capacity;
  quantity::Fraction of_it{0.8};  ///< share that is there: age, cold, charge
  quantity::Entered<quantity::Current> draw;
  std::optional<quantity::Entered<quantity::Duration>> wanted;
  /// Before the change-over, on the failing bus; nothing: at once.
  std::optional<quantity::Entered<quantity::Duration>> noticed_after;
};

struct TriggerSupplyInput {
  std::vector<SupplyRead> modules;
  std::string limit_source;
  std::optional<evidence::MeterRange> meter;
  std::optional<StandbySupply> standby;
};

struct TriggerSupplyAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<PartVerdict> modules;
  std::optional<quantity::Duration> lasts;
  std::string lasts_words;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Each reading against the least that its maker asks for, with the meter's doubt; the time of the
/// standby supply is capacity x share / draw, a sum and no verdict.
/// @return missing (no module), and what evidence::conformity refuses
/// @source former 14 CFR 23.1165 (a)-(d): battery ignition backed by a generator, capacity for the
///         ignition beside the greatest other demand, a warning if a fault drains the battery; not
///         mandatory for an amateur-built aircraft
[[nodiscard]] Checked<TriggerSupplyAnswer> trigger_supply(const TriggerSupplyInput& in,
                                                          const describe::Context& context);

std::string_view describe(describe::Fields<SupplyRead>& f);
std::string_view describe(describe::Fields<StandbySupply>& f);
std::string_view describe(describe::Fields<TriggerSupplyInput>& f);
std::string_view describe(describe::Fields<TriggerSupplyAnswer>& f);

}  // namespace wm::ignition
