#pragma once
/// Ends of a hose from a dummy tube: a rod of soft wire or tube bent to the route on the aircraft,
/// then measured on the bench.

#include <vector>

#include "hose/rod.hpp"

namespace wm::hose {

/// One straight and the bend behind it.
struct TubeStep {
  double straight{};  ///< length of the straight piece
  double bend{};      ///< angle of the bend (rad), 0 to pi
  /// How far the plane of this bend is turned about the tube from that of the bend before (rad,
  /// right hand about the direction of travel); of the first bend: from straight up.
  double turn{};
};

struct DummyTube {
  std::vector<TubeStep> steps;
  double last_straight{};
  double bend_radius{};  ///< of the bender, to the centreline
  // Each measurement lies within these, each way.
  double length_within{};
  double bend_within{};
  double turn_within{};
};

/// In a frame of the near end: it leaves along +x, up is +z.
struct FarEnd {
  Vector place{0, 0, 0};
  Vector direction{1, 0, 0};  ///< of travel
  double place_u{};           ///< standard uncertainty along the least known axis
  double direction_u{};       ///< standard uncertainty of the direction (rad), least known way
};

/// p' = p + straight t + radius (sin bend t + (1 - cos bend) n), t' = cos bend t + sin bend n.
/// Uncertainty by the law of propagation, every measurement uniform within what was stated and
/// independent of the others (JCGM 100:2008, 4.3.7 and 5.1.2).
[[nodiscard]] FarEnd far_end(const DummyTube& tube);

}  // namespace wm::hose
