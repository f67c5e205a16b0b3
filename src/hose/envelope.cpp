#include "hose/envelope.hpp"

#include <Eigen/Geometry>
#include <cmath>

namespace wm::hose {

Rod moved(const Rod& rod, const Motion& motion, const Vector& shift, const Vector& turn) {
  Rod out = rod;
  const double angle = turn.norm();
  if (angle > 0) {
    const Eigen::Matrix3d matrix = Eigen::AngleAxisd(angle, turn / angle).toRotationMatrix();
    out.end = motion.centre + matrix * (rod.end - motion.centre);
    out.end_direction = (matrix * rod.end_direction).normalized();
  }
  out.end += shift;
  return out;
}

std::vector<Rod> doubtful(const Rod& rod, double place, double angle) {
  std::vector<Rod> out;
  for (int k = 0; k < 3 && place > 0; ++k) {
    for (const double sign : {1.0, -1.0}) {
      Rod moved = rod;
      moved.end += Vector::Unit(k) * (sign * place);
      out.push_back(moved);
    }
  }
  if (angle == 0) return out;
  const Vector& t = rod.end_direction;
  const Vector pick = std::abs(t.x()) < 0.6 ? Vector::UnitX() : Vector::UnitY();
  const Vector u = t.cross(pick).normalized(), v = t.cross(u);
  for (const Vector& axis : {u, v}) {
    for (const double sign : {1.0, -1.0}) {
      Rod turned = rod;
      turned.end_direction = Eigen::AngleAxisd(sign * angle, axis) * t;
      out.push_back(turned);
    }
  }
  return out;
}

std::vector<Rod> extremes(const Rod& rod, const Motion& motion) {
  std::vector<int> moving;
  const auto reach = [&](int k) { return k < 3 ? motion.shift[k] : motion.turn[k - 3]; };
  for (int k = 0; k < 6; ++k) {
    if (reach(k) != 0) moving.push_back(k);
  }
  const auto put = [&](Vector& shift, Vector& turn, int k, double by) {
    (k < 3 ? shift[k] : turn[k - 3]) = by * reach(k);
  };
  std::vector<Rod> out{rod};
  if (moving.empty()) return out;
  for (unsigned corner = 0; corner < (1U << moving.size()); ++corner) {
    Vector shift = Vector::Zero(), turn = Vector::Zero();
    for (std::size_t i = 0; i < moving.size(); ++i)
      put(shift, turn, moving[i], ((corner >> i) & 1U) != 0 ? 1.0 : -1.0);
    out.push_back(moved(rod, motion, shift, turn));
  }
  if (moving.size() == 1) return out;
  for (const int k : moving) {
    for (const double by : {-1.0, 1.0}) {
      Vector shift = Vector::Zero(), turn = Vector::Zero();
      put(shift, turn, k, by);
      out.push_back(moved(rod, motion, shift, turn));
    }
  }
  return out;
}

}  // namespace wm::hose
