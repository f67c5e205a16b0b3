#pragma once
/// How far the ends of a hose move against each other, and what the worst of it does.

#include <functional>
#include <vector>

#include "hose/rod.hpp"

namespace wm::hose {

/// The far end rides on something that moves as one piece: an engine on its mounts.
struct Motion {
  Vector shift{0, 0, 0};   ///< each way along x, y, z
  Vector turn{0, 0, 0};    ///< each way about x, y, z through `centre` (rad)
  Vector centre{0, 0, 0};  ///< of the mounts
  [[nodiscard]] bool none() const { return shift.isZero(0.0) && turn.isZero(0.0); }
};

/// The rod with its far end moved: first turned about the centre, then shifted.
[[nodiscard]] Rod moved(const Rod& rod, const Motion& motion, const Vector& shift,
                        const Vector& turn);

/// The nominal position first; then every corner of the box of shifts and turns, and the middle of
/// each of its faces. Directions that do not move are left out.
[[nodiscard]] std::vector<Rod> extremes(const Rod& rod, const Motion& motion);

/// Where the far end may be when it is known within `place` (m) and its direction within `angle`
/// (rad): each way along three axes and each way about two, the nominal left out.
[[nodiscard]] std::vector<Rod> doubtful(const Rod& rod, double place, double angle);

}  // namespace wm::hose
