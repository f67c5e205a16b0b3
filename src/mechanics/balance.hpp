#pragma once
/// Mass and balance: the new empty mass and centre of gravity after items come and go, and the
/// extreme loadings against the limits.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::mechanics {

using EnteredMass = quantity::Entered<quantity::Mass>;
using EnteredArm = quantity::Entered<quantity::Length>;

enum class MassChangeKind : std::uint8_t { added, removed, moved };

struct MassChange {
  std::string what;
  MassChangeKind kind{MassChangeKind::added};
  EnteredMass mass;
  EnteredArm arm;                    ///< from the datum, behind it positive; where it was, if moved
  std::optional<EnteredArm> to_arm;  ///< where a moved item is now
};

/// Anything that is loaded: a seat, a tank, a baggage bay, the oil.
struct Station {
  std::string name;
  EnteredArm arm;
  std::optional<EnteredMass> least;  ///< always on board: the pilot, the oil; else nothing
  EnteredMass most;
  bool fuel{};  ///< minimum fuel stands in for `least` when that is not given
};

struct LoadedItem {
  std::string station;
  EnteredMass mass;
};
/// A loading to look at, beside the two extremes.
struct Loading {
  std::string name;
  std::vector<LoadedItem> items;
};

struct MassBalanceInput {
  EnteredMass empty_mass;
  EnteredArm empty_arm;
  std::vector<MassChange> changes;
  std::optional<EnteredMass> not_yet_counted;  ///< sum of earlier negligible changes, signed
  std::vector<Station> stations;
  std::vector<Loading> loadings;
  std::optional<EnteredArm> forward_limit;
  std::optional<EnteredArm> aft_limit;
  std::optional<EnteredMass> most_mass;
  std::optional<quantity::Entered<quantity::Power>> power;  ///< METO power, for minimum fuel
  std::optional<EnteredArm> mac_leading_edge;
  std::optional<EnteredArm> mac_length;
};

enum class Within : std::uint8_t { inside, outside, not_judged };

struct LoadingAnswer {
  std::string name;
  EnteredMass mass;
  EnteredArm arm;
  std::optional<quantity::Fraction> of_mac;
  Within within{Within::not_judged};
  std::string in_words;
  std::vector<std::string> carried;  ///< "rear seats 340 lb at +48 in"
};

struct MassBalanceAnswer {
  EnteredMass empty_mass;
  EnteredArm empty_arm;
  quantity::Entered<quantity::MassMoment> empty_moment;
  EnteredMass mass_change;
  EnteredArm arm_change;
  std::optional<quantity::Fraction> empty_of_mac;
  bool negligible{};
  std::string change_in_words;
  Within within{Within::not_judged};  ///< all loadings together
  std::string in_words;
  std::vector<LoadingAnswer> loadings;
  std::vector<std::string> working;
};

///   moment = mass x arm;  arm of the whole = sum of moments / sum of masses
///
/// Extreme loadings: forward, every station ahead of the forward limit full and the others at
/// their least; aft, the mirror. Where that is heavier than the greatest mass, the stations that
/// pull farthest are filled first, up to the mass.
///
/// @return missing (arm of a moved item, half of the mean chord), conflict (limits upside down,
///         least above most, more removed than there is), not_found (station of a loading).
/// @source AC 43.13-1B CHG 1, chapter 10, figures 10-10 to 10-13.
[[nodiscard]] Checked<MassBalanceAnswer> mass_balance(const MassBalanceInput& input,
                                                      const describe::Context& context);

/// Minimum fuel for the extremes: METO horsepower / 12 in US gallons, that is half a pound of
/// fuel a horsepower at 6 lb a gallon.
/// @source AC 43.13-1B CHG 1, figure 10-10.
[[nodiscard]] quantity::Mass minimum_fuel(quantity::Power power);

std::string_view describe(describe::Choices<MassChangeKind>& c);
std::string_view describe(describe::Choices<Within>& c);
std::string_view describe(describe::Fields<MassChange>& f);
std::string_view describe(describe::Fields<Station>& f);
std::string_view describe(describe::Fields<LoadedItem>& f);
std::string_view describe(describe::Fields<Loading>& f);
std::string_view describe(describe::Fields<MassBalanceInput>& f);
std::string_view describe(describe::Fields<LoadingAnswer>& f);
std::string_view describe(describe::Fields<MassBalanceAnswer>& f);

}  // namespace wm::mechanics
