#pragma once
/// A rod that is not straight when it lies untouched: a hose with the set of its coil.
///
/// Here the way round matters, so every segment carries a frame of its material and the rod resists
/// twist. Energy of a link between two frames: 1/2 spacing x sum of stiffness x (strain - strain at
/// rest)^2, strain = 2 x the vector part of the quaternion that turns one frame into the next, over
/// the spacing. Newton's method on rotations; dense, for what is asked once.

#include <Eigen/Geometry>
#include <optional>
#include <vector>

#include "hose/rod.hpp"

namespace wm::hose {

using Frame = Eigen::Quaterniond;  ///< its z axis is the direction of travel

struct SetRod {
  Vector start{0, 0, 0}, end{0, 0, 0};
  Frame start_frame{Frame::Identity()};
  std::optional<Frame> end_frame;  ///< nothing: the far end is free
  double length{};
  Vector stiffness{1, 1, 1};  ///< EI about x, EI about y, GJ about z
  Vector at_rest{0, 0, 0};    ///< curvature about x and y, twist about z, untouched
  Vector tip_force{0, 0, 0};  ///< at a free far end
};

struct SetShape {
  bool stable{};              ///< a strict minimum was found
  std::vector<Frame> frames;  ///< one a segment
  Vector start{0, 0, 0};
  Vector start_direction{0, 0, 1};
  std::optional<Vector> end_direction;
  double length{};
  double residual{};
  [[nodiscard]] Shape curve() const;  ///< its centreline, to measure on
};

/// @param from  frames to begin with, one a segment; their number is that of the segments
[[nodiscard]] SetShape settle(const SetRod& rod, std::vector<Frame> from);

/// Frames along a solved hose, carried without twist from `x` at its start.
[[nodiscard]] std::vector<Frame> carried_frames(const Shape& shape, const Vector& x);

}  // namespace wm::hose
