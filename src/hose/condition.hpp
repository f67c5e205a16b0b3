#pragma once
/// A fitted hose looked at on condition: each thing to reject it for, looked at or not, and a
/// verdict over all.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "hose/age.hpp"
#include "hose/criterion.hpp"

namespace wm::hose {

enum class SleeveState : std::uint8_t {
  not_looked,
  no_sleeve,
  whole,
  worn_through,
  torn,
  cut,
  oil_soaked
};

/// A leak at a swivel nut is first put right: torque, seat, torque again.
enum class NutLeak : std::uint8_t { not_looked, dry, leaks, still_leaks };

struct HoseConditionInput {
  HoseKind kind{HoseKind::not_said};
  std::optional<EnteredPressure> operating;
  std::optional<double> drops_per_hour;            ///< standing still
  std::optional<std::int64_t> wires_in_one_plait;  ///< broken ones, in the worst plait
  std::optional<std::int64_t> wires_per_foot;      ///< broken ones, in the worst foot
  Seen wire_where_kink{Seen::not_looked};          ///< any broken one where it kinks
  Seen cover_parted{Seen::not_looked};
  Seen cracked{Seen::not_looked};
  Seen cold_flow{Seen::not_looked};
  Seen fabric_shows{Seen::not_looked};
  Seen abraded_or_kinked{Seen::not_looked};
  Seen blistered{Seen::not_looked};
  Seen rust{Seen::not_looked};
  SleeveState sleeve{SleeveState::not_looked};
  Seen twisted{Seen::not_looked};
  Seen end_moved{Seen::not_looked};
  Seen swage_failed{Seen::not_looked};
  NutLeak nut{NutLeak::not_looked};
};

struct HoseConditionAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<Criterion> criteria;
  std::vector<std::string> not_looked_at;
  std::vector<std::string> do_next;
  std::vector<std::string> notes;
};

/// Broken wires: 2 in one plait reject; in one foot 6 reject an elastomer hose, more than 6 a PTFE
/// hose. A static leak rejects an elastomer hose; over 1 drop an hour a PTFE hose.
inline constexpr std::int64_t k_wires_in_plait = 2;
inline constexpr std::int64_t k_wires_per_foot_elastomer = 6;
inline constexpr std::int64_t k_wires_per_foot_ptfe = 7;
inline constexpr double k_drops_per_hour_ptfe = 1.0;

/// Judge a hose on condition. Any reason to reject: does not conform. It conforms only when every
/// criterion was looked at.
///
/// @return missing (kind)
/// @source AL0907 p. 54; FAA-H-8083-30 p. 7-18; NAVEDTRA 14018 p. 5-26; NAVEDTRA 14315 p. 10-19
[[nodiscard]] Checked<HoseConditionAnswer> hose_condition(const HoseConditionInput& input,
                                                          const describe::Context& context);

std::string_view describe(describe::Choices<SleeveState>& c);
std::string_view describe(describe::Choices<NutLeak>& c);
std::string_view describe(describe::Fields<HoseConditionInput>& f);
std::string_view describe(describe::Fields<HoseConditionAnswer>& f);

}  // namespace wm::hose
