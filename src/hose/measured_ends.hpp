#pragma once
/// "hose-ends": where two fittings sit, from a dummy tube or from tape and inclinometer, how well
/// that is known, and whether it is good enough to cut or order a hose.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "hose/ends.hpp"

namespace wm::hose {

using EnteredAngleOf = quantity::Entered<quantity::Angle>;

struct TubeBend {
  EnteredLength straight;  ///< of the straight before it
  EnteredAngleOf bend;
  EnteredAngleOf turn;  ///< of its plane, from the plane of the bend before
};

/// A rod of soft wire or tube, bent on the aircraft to run from seat to seat, read off on the
/// bench.
struct DummyTubeRoute {
  std::vector<TubeBend> bends;
  EnteredLength last_straight;
  EnteredLength bend_radius;  ///< of its centreline
  EnteredLength length_within;
  EnteredAngleOf bend_within, turn_within;
};

/// Tape lengths between the seats and a mark on a straight rod held in each fitting.
struct TapeRoute {
  EnteredLength near_rod, far_rod;
  EnteredLength seat_to_seat, near_seat_to_far_mark, near_mark_to_far_seat, mark_to_mark;
  EnteredAngleOf near_rise, far_rise, line_rise;
  bool to_the_left{};
  EnteredLength tape_within;
  EnteredAngleOf rise_within;
};

/// What the hose shall be: needed to say whether the measurement is good enough for it.
struct HoseWanted {
  EnteredLength outside_diameter, least_radius;
  RadiusTo radius_to{RadiusTo::inside};
  EnteredLength rigid_near, rigid_far;  ///< lengths of the ends that do not bend
  quantity::Fraction lengthens{0.02}, shortens{0.04};
  EnteredLength made_within;  ///< length of the assembly, each way
  bool elbows{};              ///< both ends: their clocking matters as well
};

struct HoseEndsInput {
  std::variant<DummyTubeRoute, TapeRoute> route;
  std::optional<Place> near_seat;  ///< nothing: the datum
  std::optional<Way> near_leaves;  ///< tube: nothing: aft. Tape: only its plan counts
  std::optional<HoseWanted> hose;
};

enum class Enough : std::uint8_t { yes, no, not_asked };

struct HoseEndsAnswer {
  Spot near_seat, far_seat;
  Way near_leaves, far_leaves;       ///< the hose out of each fitting
  quantity::Length apart;            ///< straight, seat to seat
  quantity::Length place_within;     ///< expanded uncertainty of the far seat, k = 2
  quantity::Angle direction_within;  ///< of the directions against each other, k = 2
  std::optional<quantity::Length> shortest, longest;  ///< overall, wherever in that the ends are
  Enough to_order{Enough::not_asked}, to_cut{Enough::not_asked};
  std::string words;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// @return out_of_bounds (a direction of no length, a bend that runs into itself), refused (tape
///         lengths that contradict each other, with the reading that is farthest off; readings
///         that fit two different directions)
[[nodiscard]] Checked<HoseEndsAnswer> hose_ends(const HoseEndsInput& in,
                                                const describe::Context& context);

std::string_view describe(describe::Choices<Enough>& c);
std::string_view describe(describe::Fields<TubeBend>& f);
std::string_view describe(describe::Fields<DummyTubeRoute>& f);
std::string_view describe(describe::Fields<TapeRoute>& f);
std::string_view describe(describe::Fields<HoseWanted>& f);
std::string_view describe(describe::Fields<HoseEndsInput>& f);
std::string_view describe(describe::Fields<HoseEndsAnswer>& f);

}  // namespace wm::hose
