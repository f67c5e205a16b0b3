#pragma once
/// A hose that leans on solid things: what happens where it touches, without friction.
///
/// A touch is a reject on a drawing; this answers "and if it does lean, where, how hard, and what
/// is the tightest bend then?" Each touch holds one node at the surface (an active set of
/// constraints); its multiplier is the push. Newton's method in the directions that the closure
/// and the touches leave free: the shape is reported only where the energy has a strict minimum
/// there.

#include <vector>

#include "hose/rod.hpp"
#include "hose/solid.hpp"

namespace wm::hose {

struct Contact {
  std::size_t solid{};  ///< which of the things
  std::size_t node{};   ///< of the shape, from the start
  double force{};       ///< over EI (1/m^2); positive: the thing pushes the hose away
};

struct Leaning {
  bool found{};  ///< false: no shape in which it rests against them
  Shape shape;
  std::vector<Contact> contacts;
};

/// @param rod  with its length; no twist, both ends held
[[nodiscard]] Leaning lean(const Rod& rod, const std::vector<Solid>& things,
                           double outside_diameter, int segments = 64);

}  // namespace wm::hose
