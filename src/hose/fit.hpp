#pragma once
/// "hose-length": the window of lengths between two fittings, what bounds it, and what is near.

#include <optional>
#include <string>
#include <vector>

#include "hose/between.hpp"
#include "hose/envelope.hpp"

namespace wm::hose {

/// How the engine moves on its mounts against the rest: each way.
struct EngineMotion {
  std::optional<EnteredLength> shift_x, shift_y, shift_z;
  std::optional<quantity::Entered<quantity::Angle>> turn_x, turn_y, turn_z;
  std::optional<Place> centre;
};

/// In metres and radians; about the far end where no centre was entered.
[[nodiscard]] Motion motion_of(const std::optional<EngineMotion>& entered, const Rod& rod);

struct HoseLengthInput {
  HoseEnd near_end, far_end;
  EnteredLength outside_diameter;
  EnteredLength least_radius;
  RadiusTo radius_to{RadiusTo::inside};
  quantity::Fraction lengthens{0.02};  ///< under pressure
  quantity::Fraction shortens{0.04};
  std::optional<EngineMotion> motion;  ///< of the far end
  /// How well the far end is known against the near one (k = 2), from hose-ends.
  std::optional<EnteredLength> place_within;
  std::optional<quantity::Entered<quantity::Angle>> directions_within;
  std::vector<KeepOut> keep_outs;
  std::vector<HoseClamp> clamps;
  std::optional<HoseWeight> weight;
  /// Most that the hose may turn within two diameters of each end; nothing: only told.
  std::optional<quantity::Entered<quantity::Angle>> most_turn_at_ends;
  std::optional<EnteredLength> chosen_overall;
  std::int64_t samples{};                         ///< of motion, length and direction; 0: none
  std::optional<EnteredLength> length_tolerance;  ///< each way, of the assembly made
  std::optional<quantity::Entered<quantity::Angle>> direction_tolerance;  ///< of what was measured
};

struct LengthAndRadius {
  quantity::Length overall, tightest_radius;
};

struct NearThing {
  std::string name;
  /// The least over everything that was looked at; nothing: not judged, as where the hose is taut.
  std::optional<quantity::Length> gap;
  std::optional<quantity::Length> needed;
  std::optional<quantity::Length> at;  ///< along the hose from the near end
  std::string words;
};

struct HoseLengthAnswer {
  std::optional<quantity::Length> shortest, longest;  ///< overall
  quantity::Length best;                              ///< overall, with the widest bend
  quantity::Length best_radius;                       ///< to the centreline
  quantity::Length least_radius;                      ///< to the centreline
  /// At the length looked at, the tightest over all motion and pressure; nothing: taut, or no rest.
  std::optional<quantity::Length> worst_radius;
  std::optional<EnteredLength> to_order;  ///< in the window, to an eighth of an inch
  std::string binding;                    ///< which rule binds, in words
  quantity::Length rigid;                 ///< of both ends together
  quantity::Length straight_at_ends;
  std::optional<quantity::Angle> turn_at_ends;  ///< within that, at the length looked at
  std::vector<NearThing> near;
  std::optional<quantity::Fraction> probability;
  std::vector<LengthAndRadius> scan;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// @return what `reach` refuses; missing (distance needed from a thing without a sourced one),
///         stopped, not_applicable with the widest bend that the route allows
[[nodiscard]] Checked<HoseLengthAnswer> hose_length(const HoseLengthInput& in,
                                                    const describe::Context& context);

std::string_view describe(describe::Fields<EngineMotion>& f);
std::string_view describe(describe::Fields<HoseLengthInput>& f);
std::string_view describe(describe::Fields<LengthAndRadius>& f);
std::string_view describe(describe::Fields<NearThing>& f);
std::string_view describe(describe::Fields<HoseLengthAnswer>& f);

}  // namespace wm::hose
