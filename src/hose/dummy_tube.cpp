#include "hose/dummy_tube.hpp"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace wm::hose {
namespace {

struct Walked {
  Vector place{0, 0, 0}, direction{1, 0, 0};
};

Walked walk(const DummyTube& tube) {
  Vector p = Vector::Zero(), t = Vector::UnitX(), n = Vector::UnitZ();
  for (const auto& step : tube.steps) {
    p += t * step.straight;
    n = Eigen::AngleAxisd(step.turn, t) * n;
    const double c = std::cos(step.bend), s = std::sin(step.bend);
    p += tube.bend_radius * (t * s + n * (1 - c));
    const Vector ahead = t * c + n * s;
    n = n * c - t * s;
    t = ahead;
  }
  return {p + t * tube.last_straight, t};
}

/// Largest standard deviation of a spread along any axis.
double widest(const Eigen::Matrix3d& covariance) {
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(covariance, Eigen::EigenvaluesOnly);
  return std::sqrt(std::max(solver.eigenvalues().maxCoeff(), 0.0));
}

}  // namespace

FarEnd far_end(const DummyTube& tube) {
  const auto nominal = walk(tube);
  Eigen::Matrix3d place = Eigen::Matrix3d::Zero(), direction = Eigen::Matrix3d::Zero();
  DummyTube moved = tube;
  const auto spread = [&](double& value, double within) {
    if (within <= 0) return;
    // The difference over the whole half width is the derivative times it, to second order.
    const double kept = value;
    value = kept + within;
    const auto more = walk(moved);
    value = kept - within;
    const auto less = walk(moved);
    value = kept;
    const Vector dp = (more.place - less.place) / (2 * std::numbers::sqrt3);
    const Vector dt = (more.direction - less.direction) / (2 * std::numbers::sqrt3);
    place += dp * dp.transpose();
    direction += dt * dt.transpose();
  };
  for (auto& step : moved.steps) {
    spread(step.straight, tube.length_within);
    spread(step.bend, tube.bend_within);
    spread(step.turn, tube.turn_within);
  }
  spread(moved.last_straight, tube.length_within);
  return {nominal.place, nominal.direction.normalized(), widest(place), widest(direction)};
}

}  // namespace wm::hose
