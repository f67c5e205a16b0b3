#pragma once
/// A pressure that falls while it is held: how much of it the pump and the temperature can account
/// for, and what may be said of the rest.
///
///   y = fall - pump's share - cooling's share
///
/// A hand pump's own valve leaks, liquid shrinks when it cools, and a hose relaxes: its first
/// hold falls more than its second. Only what none of these can explain speaks of a leak.

#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "evidence/verdict.hpp"
#include "hose/criterion.hpp"
#include "hose/stored_energy.hpp"
#include "quantity/text.hpp"

namespace wm::hose {

/// One hold as it was read; also the blank run of the pump with its end capped.
struct PressureHold {
  quantity::Measured<quantity::PressureGauge> start;
  quantity::Measured<quantity::PressureGauge> end;
  quantity::Entered<quantity::Duration> lasted;
  std::optional<quantity::Measured<quantity::Temperature>> temperature_start;  ///< of the liquid
  std::optional<quantity::Measured<quantity::Temperature>> temperature_end;
  /// Pumped in from when the air was out to the start of the hold.
  std::optional<quantity::Measured<quantity::Volume>> pumped_in;
};

struct HoldRules {
  Liquid liquid;
  double volume_m3{};  ///< of all the liquid under pressure
  /// U of a pressure that does not state its own
  std::optional<double> gauge_expanded_pa;
  std::optional<double> allowed_pa;  ///< fall that would still be accepted in a hold
  /// A later fall that is firmly at least this share of the one before is no relaxation.
  double steady_share{0.8};
};

/// One hold, worked out. All in Pa; y with its standard uncertainty.
struct JudgedHold {
  BenchReading fall;
  double pump_low{}, pump_high{};        ///< what the pump's own valve can account for
  double cooling_low{}, cooling_high{};  ///< what the temperature can; below 0: it hid some
  bool temperature_known{};
  bool pump_known{};         ///< compliance of both runs measured: a figure, not a range
  bool gauge_known{};        ///< an uncertainty was stated for its pressures
  BenchReading unexplained;  ///< y
  double leak_m3_per_s{};    ///< what y would be as a leak; with the liquid alone: at least
  bool compliance_measured{};
  std::string budget;  ///< the sum of the uncertainty, in one line
};

struct JudgedHolds {
  std::vector<JudgedHold> holds;
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string reason;
  std::vector<std::string> do_next;
  bool falls_off{};  ///< the last fall is firmly less than the one before
};

/// Judge a list of holds, the last one deciding.
///
/// Conforms when the unexplained fall of the last hold, with its doubt added, stays within what
/// is allowed. Beyond it with the doubt taken off: undecided after one hold (it may be the hose
/// relaxing: hold again); after two it does not conform if the fall is firmly at least
/// `steady_share` of the one before (a steady leak falls as much again, relaxation falls off).
/// Undecided without an allowed fall, or without the temperature of the liquid.
///
/// Cooling: dp = c M dT, M = K beta with the liquid alone, or V beta p / V_pumped when the liquid
/// pumped in was measured; walls that shrink too give back some of it, so 0 <= c <= 1
/// (rectangular). Pump: the fall of the blank run for the same time, as it is when the liquid
/// pumped in was measured in both runs (a stiff capped pump falls faster than a soft hose:
/// times C_blank / C_hold), or anything from nothing to all of it.
///
/// @param pencil  prints a pressure difference in the unit of the answer
/// @return conflict: less liquid pumped in than the liquid alone takes up; missing: one of the
///         two temperatures; out_of_bounds: a time of nothing. Paths "holds/2/...", "blank/...".
/// @source derived; JCGM 100:2008 5.1.2 for the budget, JCGM 106:2012 for the guard band
[[nodiscard]] Checked<JudgedHolds> judge_holds(const std::vector<PressureHold>& holds,
                                               const std::optional<PressureHold>& blank,
                                               const HoldRules& rules,
                                               const quantity::Unit& pressure_unit);

std::string_view describe(describe::Fields<PressureHold>& f);

}  // namespace wm::hose
