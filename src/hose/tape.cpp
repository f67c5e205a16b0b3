#include "hose/tape.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace wm::hose {

const std::array<const char*, 7> k_tape_readings{"seat_to_seat",
                                                 "near_seat_to_far_mark",
                                                 "near_mark_to_far_seat",
                                                 "mark_to_mark",
                                                 "near_rise",
                                                 "far_rise",
                                                 "line_rise"};

namespace {

using Six = Eigen::Matrix<double, 6, 1>;
using Seven = Eigen::Matrix<double, 7, 1>;
using Slopes = Eigen::Matrix<double, 7, 6>;

constexpr double k_upright = 80 * std::numbers::pi / 180;
constexpr int k_starts = 24;

Vector way(double rise, double heading) {
  return {std::cos(rise) * std::cos(heading), std::cos(rise) * std::sin(heading), std::sin(rise)};
}
double rise_of(const Vector& v) { return std::atan2(v.z(), std::hypot(v.x(), v.y())); }

struct Ends {
  Vector near, seat, far;
};

class Net {
 public:
  explicit Net(const TapeReadings& in) : in_(in), upright_(std::abs(in.near_rise) > k_upright) {
    // An upright rod has no plan of its own: its tilt is sought, and the line gives the heading.
    weights_ << in.tape_within, in.tape_within, in.tape_within, in.tape_within, in.rise_within,
        in.rise_within, in.rise_within;
    weights_ /= std::numbers::sqrt3;
    weights_ = weights_.cwiseMax(1e-9).cwiseInverse();
  }

  /// Unknowns: near rise, and its heading if upright, else that of the line; distance, line rise;
  /// far rise and heading.
  [[nodiscard]] Ends ends(const Six& x) const {
    Ends out;
    if (upright_) {
      const double sign = in_.near_rise < 0 ? -1 : 1;
      out.near = Vector(x[0], x[1], sign).normalized();
      out.seat = x[2] * way(x[3], 0);
    } else {
      out.near = way(x[0], 0);
      out.seat = x[2] * way(x[3], x[1]);
    }
    out.far = way(x[4], x[5]);
    return out;
  }

  [[nodiscard]] Seven misfit(const Six& x) const {
    const auto e = ends(x);
    const Vector near_mark = e.near * in_.near_rod, far_mark = e.seat + e.far * in_.far_rod;
    Seven out;
    out << e.seat.norm() - in_.seat_to_seat, far_mark.norm() - in_.near_seat_to_far_mark,
        (e.seat - near_mark).norm() - in_.near_mark_to_far_seat,
        (far_mark - near_mark).norm() - in_.mark_to_mark, rise_of(e.near) - in_.near_rise,
        rise_of(e.far) - in_.far_rise, rise_of(e.seat) - in_.line_rise;
    return out;
  }

  [[nodiscard]] Slopes slopes(const Six& x) const {
    Slopes out;
    for (int k = 0; k < 6; ++k) {
      Six up = x, down = x;
      up[k] += 1e-6;
      down[k] -= 1e-6;
      out.col(k) = (misfit(up) - misfit(down)) / 2e-6;
    }
    return out;
  }

  [[nodiscard]] double cost(const Six& x) const {
    return misfit(x).cwiseProduct(weights_).squaredNorm();
  }

  /// Marquardt's steps.
  void settle(Six& x) const {
    double damp = 1e-3, now = cost(x);
    for (int i = 0; i < 200; ++i) {
      const Slopes j = weights_.asDiagonal() * slopes(x);
      const Seven r = misfit(x).cwiseProduct(weights_);
      Eigen::Matrix<double, 6, 6> normal = j.transpose() * j;
      const Six gradient = j.transpose() * r;
      normal.diagonal() += damp * normal.diagonal().cwiseMax(1e-9);
      const Six step = normal.ldlt().solve(-gradient);
      const double then = cost(x + step);
      if (then <= now) {
        x += step;
        damp = std::max(damp / 5, 1e-12);
        if (now - then < 1e-12 * (1 + now) && step.norm() < 1e-9) break;
        now = then;
      } else {
        damp *= 4;
        if (damp > 1e12) break;
      }
    }
  }

  [[nodiscard]] Six start(double far_heading) const {
    const double d = in_.seat_to_seat, a = in_.near_rod;
    Six x;
    x[2] = d;
    x[3] = in_.line_rise;
    x[4] = in_.far_rise;
    x[5] = far_heading;
    // Angle between the near rod and the line, from the triangle; then its plan.
    const double c = std::clamp(
        (d * d + a * a - in_.near_mark_to_far_seat * in_.near_mark_to_far_seat) / (2 * a * d), -1.0,
        1.0);
    if (upright_) {
      x[0] = 0.01;
      x[1] = 0.01;
      return x;
    }
    const double flat = std::cos(in_.near_rise) * std::cos(in_.line_rise);
    const double turn = std::acos(std::clamp(
        (c - std::sin(in_.near_rise) * std::sin(in_.line_rise)) / std::max(flat, 1e-9), -1.0, 1.0));
    // Seen from above, what lies to the left of +x lies towards +y.
    x[0] = in_.near_rise;
    x[1] = in_.to_the_left ? turn : -turn;
    return x;
  }

  /// Seen from above: the far seat from the near rod; with an upright near rod, the far mark from
  /// the line of the seats.
  [[nodiscard]] bool on_the_side(const Six& x) const {
    const auto e = ends(x);
    const double side = upright_ ? e.far.y() : e.seat.y();
    return std::abs(side) < 1e-6 || (side > 0) == in_.to_the_left;
  }

  [[nodiscard]] const Seven& weights() const { return weights_; }

 private:
  const TapeReadings& in_;
  bool upright_;
  Seven weights_;
};

double widest(const Eigen::Matrix3d& covariance) {
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(covariance, Eigen::EigenvaluesOnly);
  return std::sqrt(std::max(solver.eigenvalues().maxCoeff(), 0.0));
}

}  // namespace

TapeEnds tape_ends(const TapeReadings& in) {
  const Net net(in);
  struct Try {
    double cost;
    Six x;
  };
  std::vector<Try> tries;
  for (int i = 0; i < k_starts; ++i) {
    Six x = net.start(2 * std::numbers::pi * i / k_starts);
    net.settle(x);
    // The mirror image fits as well; which one it is was asked.
    if (x.allFinite() && net.on_the_side(x)) tries.push_back({net.cost(x), x});
  }
  TapeEnds out;
  if (tries.empty()) return out;
  std::sort(tries.begin(), tries.end(), [](const Try& a, const Try& b) { return a.cost < b.cost; });
  const Six best = tries.front().x;
  const auto ends = net.ends(best);
  out.found = TapeEnds::Found::yes;
  out.near_way = ends.near;
  out.far_seat = ends.seat;
  out.far_way = ends.far;
  out.contradiction = std::sqrt(tries.front().cost);
  // Another answer that the readings cannot tell from this one (within their limits).
  for (const auto& other : tries) {
    const auto there = net.ends(other.x);
    if (other.cost < tries.front().cost + 4 &&
        (there.far - ends.far).norm() + (there.near - ends.near).norm() > 0.1)
      out.found = TapeEnds::Found::two_ways;
  }
  const Slopes j = net.weights().asDiagonal() * net.slopes(best);
  const Eigen::Matrix<double, 6, 6> spread = (j.transpose() * j).inverse();
  const auto carried = [&](auto&& part) {
    Eigen::Matrix<double, 3, 6> by;
    for (int k = 0; k < 6; ++k) {
      Six up = best, down = best;
      up[k] += 1e-6;
      down[k] -= 1e-6;
      by.col(k) = (part(net.ends(up)) - part(net.ends(down))) / 2e-6;
    }
    return widest(by * spread * by.transpose());
  };
  out.place_u = carried([](const Ends& e) { return e.seat; });
  out.near_way_u = carried([](const Ends& e) { return e.near; });
  out.far_way_u = carried([](const Ends& e) { return e.far; });
  const Seven scaled = net.misfit(best).cwiseProduct(net.weights()).cwiseAbs();
  Eigen::Index worst = 0;
  scaled.maxCoeff(&worst);
  out.worst = static_cast<std::size_t>(worst);
  out.worst_by = net.misfit(best)[worst];
  return out;
}

}  // namespace wm::hose
