#pragma once
/// The far end of a hose from tape lengths and an inclinometer.
///
/// A straight rod is held in each fitting along its axis, with a mark some way out. Four tape
/// lengths join the seats and the marks; an inclinometer gives the rise of both rods and of the
/// line from seat to seat. That is seven readings for six unknowns: the seventh shows a blunder.

#include <array>
#include <string>

#include "hose/rod.hpp"

namespace wm::hose {

struct TapeReadings {
  double near_rod{}, far_rod{};  ///< from seat to mark (m)
  double seat_to_seat{};
  double near_seat_to_far_mark{};
  double near_mark_to_far_seat{};
  double mark_to_mark{};
  double near_rise{}, far_rise{};  ///< of the rods, outwards, above level (rad)
  double line_rise{};              ///< from the near seat to the far one
  /// Seen from above and along the near rod outwards, the far seat lies to the left. With a near
  /// rod steeper than 80 degrees: along the line of the seats, the far mark does.
  bool to_the_left{};
  double tape_within{};  ///< each way (m)
  double rise_within{};  ///< each way (rad)
};

struct TapeEnds {
  enum class Found : std::uint8_t { yes, no, two_ways } found{Found::no};
  // Seen from the near seat; the plan of the near rod runs along +x (an upright rod: the plan of
  // the line from seat to seat).
  Vector near_way{1, 0, 0};
  Vector far_seat{0, 0, 0};
  Vector far_way{-1, 0, 0};  ///< out of the far fitting
  double place_u{};          ///< standard uncertainty of the far seat along the least known axis
  double near_way_u{}, far_way_u{};  ///< of the directions (rad), least known way
  double contradiction{};            ///< of the readings, over its standard uncertainty
  std::size_t worst{};  ///< which reading lies farthest off: index into `k_tape_readings`
  double worst_by{};    ///< m or rad
};

/// Names of the seven readings, in the order of the equations.
extern const std::array<const char*, 7> k_tape_readings;

/// Least squares over the seven readings, each weighted by its limits (uniform within them); their
/// spread by the law of propagation (JCGM 100:2008, 5.1.2 and 4.3.7).
[[nodiscard]] TapeEnds tape_ends(const TapeReadings& in);

}  // namespace wm::hose
