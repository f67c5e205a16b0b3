#pragma once
/// The calculation `battery-reserve`: the loads, the generator's 80 %, and how long the battery
/// carries what must stay on once charging has failed.

#include <vector>

#include "describe/catalogue.hpp"
#include "electrics/cable_drop.hpp"

namespace wm::electrics {

struct BusLoad {
  std::string name;
  EnteredCurrent current;
  quantity::Fraction duty{1.0};  ///< share of the time it draws
  bool essential{};
  std::optional<quantity::Entered<quantity::Duration>> shed_after;  ///< since charging failed
};

struct ReserveInput {
  std::string name;
  std::vector<BusLoad> loads;
  std::optional<EnteredCurrent> generator;
  quantity::Entered<quantity::Charge> capacity;
  quantity::Fraction age{};
  quantity::Fraction charged{1.0};
  quantity::Fraction cold{1.0};
  quantity::Entered<quantity::Duration> noticed_after;
  std::optional<double> peukert;
  std::optional<quantity::Entered<quantity::Duration>> rated_time;
  std::optional<EnteredVoltage> cut_out;
  std::optional<EnteredVoltage> full;
  std::optional<EnteredVoltage> empty;
  std::optional<quantity::Entered<quantity::Duration>> wanted;
};

/// A time with one constant current.
struct ReservePhase {
  quantity::Duration from{};
  quantity::Duration until{};
  quantity::Current current{};
  std::string on;
};

struct ReserveAnswer {
  quantity::Duration endurance{};
  std::string in_words;
  std::optional<Against> against_wanted;
  quantity::Charge usable{};
  quantity::Current before{};
  quantity::Current after{};  ///< when all that is shed is off
  std::optional<quantity::Fraction> of_generator;
  Against generator{Against::no_limit};
  std::vector<ReservePhase> phases;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// usable = C x age x charged x cold x share above the cut-out voltage, and
///   usable = sum over the phases of I t;   with an exponent p: I_r (I / I_r)^p t, I_r = C / n
///
/// A load that is not essential is off when the failure is noticed, or at its own time. The
/// voltage is taken to fall in a straight line from full to empty (common practice, no source).
///
/// @return missing (loads, the voltages beside a cut-out, the rated time beside an exponent),
///         duplicate, conflict (voltages out of order), not_applicable (nothing draws current).
/// @source AC 43.13-1B CHG 1 par. 11-35: 80 % of the generator; 13 V and 26 V warnings. Exponent
///         by the owner: Peukert's law, from memory.
[[nodiscard]] Checked<ReserveAnswer> battery_reserve(const ReserveInput& input,
                                                     const describe::Context& context);

std::string_view describe(describe::Fields<BusLoad>& f);
std::string_view describe(describe::Fields<ReserveInput>& f);
std::string_view describe(describe::Fields<ReservePhase>& f);
std::string_view describe(describe::Fields<ReserveAnswer>& f);

}  // namespace wm::electrics
