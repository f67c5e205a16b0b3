#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "hose/rod.hpp"

namespace wm::hose {
namespace {

constexpr std::size_t k_pieces = 32;
constexpr double k_seed = 0.03;  // of the length, sideways: Newton keeps a symmetry it starts in

/// Cubic from start to end whose end derivatives are `reach` times the directions.
struct Cubic {
  Vector chord, first, last;  // r' = chord 6u(1-u) + reach (first (1-4u+3u2) + last (3u2-2u))
  double reach{};
  [[nodiscard]] Vector derivative(double u) const {
    return chord * (6 * u * (1 - u)) +
           (first * (1 - 4 * u + 3 * u * u) + last * (3 * u * u - 2 * u)) * reach;
  }
  /// Length up to the end of each piece, by the midpoint rule: good enough for a start.
  double length(std::array<double, k_pieces + 1>& along) const {
    along[0] = 0;
    for (std::size_t k = 0; k < k_pieces; ++k) {
      const double u = (static_cast<double>(k) + 0.5) / k_pieces;
      along[k + 1] = along[k] + derivative(u).norm() / k_pieces;
    }
    return along[k_pieces];
  }
};

/// The reach at which the cubic is as long as the hose; the length grows with the reach once it
/// is above the least.
void fit_reach(Cubic& cubic, double length, std::array<double, k_pieces + 1>& along) {
  double low = 0, high = length, low_by = cubic.chord.norm() - length, high_by = 0;
  for (int i = 0; i < 12; ++i) {
    cubic.reach = high;
    high_by = cubic.length(along) - length;
    if (high_by > 0) break;
    low = high;
    low_by = high_by;
    high *= 2;
  }
  if (high_by <= 0) return;
  // Illinois' rule: the secant, with the standing end's value halved.
  for (int i = 0, side = 0; i < 24; ++i) {
    cubic.reach = (low * high_by - high * low_by) / (high_by - low_by);
    const double by = cubic.length(along) - length;
    if (std::abs(by) < 1e-4 * length) return;
    if (by > 0) {
      high = cubic.reach;
      high_by = by;
      if (side == 1) low_by *= 0.5;
      side = 1;
    } else {
      low = cubic.reach;
      low_by = by;
      if (side == -1) high_by *= 0.5;
      side = -1;
    }
  }
}

Vector any_square_to(const Vector& axis) {
  const Vector pick = std::abs(axis.x()) < 0.6 ? Vector::UnitX() : Vector::UnitY();
  return axis.cross(pick).normalized();
}

}  // namespace

void start_curve(const Rod& rod, int side, std::vector<Vector>& tangents) {
  const auto n = tangents.size();
  if (rod.far_end_free) {
    // An arc, bent a little or up to three right angles: a push along the axis would otherwise
    // never buckle, and a hard one is far from straight.
    const Vector pull = rod.tip_force + rod.weight * rod.length;
    Vector aside = pull - rod.start_direction * pull.dot(rod.start_direction);
    aside = aside.norm() > 1e-9 * pull.norm() ? Vector(aside.normalized())
                                              : any_square_to(rod.start_direction);
    const double turn = side < 0 ? k_seed : (side + 1) * std::numbers::pi / 4;
    for (std::size_t i = 0; i < n; ++i) {
      const double angle = turn * (static_cast<double>(i) + 0.5) / static_cast<double>(n);
      tangents[i] = rod.start_direction * std::cos(angle) + aside * std::sin(angle);
    }
    return;
  }
  Cubic cubic{rod.end - rod.start, rod.start_direction, rod.end_direction, 0};
  const double chord = cubic.chord.norm();
  const Vector axis =
      chord > 1e-9 * rod.length ? Vector(cubic.chord / chord) : Vector(rod.start_direction);
  std::array<double, k_pieces + 1> along{};
  fit_reach(cubic, rod.length, along);

  // Sideways bow: all of the slack for the other starts, a little where everything lies flat.
  Vector normal = rod.start_direction.cross(rod.end_direction);
  if (normal.norm() < 1e-3) normal = axis.cross(rod.start_direction);
  const bool flat = std::abs(normal.dot(axis)) < 0.02;
  const bool straight = normal.norm() < 1e-3;
  normal = straight ? any_square_to(axis) : Vector(normal.normalized());
  const double slack = std::max(rod.length - chord, 1e-6 * rod.length);
  const double bow = 2 / std::numbers::pi * std::sqrt(std::max(chord, 0.2 * rod.length) * slack);
  double height = flat ? k_seed * rod.length : 0.0;
  Vector towards = normal;
  if (side >= 0) {
    const double angle = side * std::numbers::pi / 3;
    const Vector first = any_square_to(axis);
    towards = first * std::cos(angle) + axis.cross(first) * std::sin(angle);
    height = bow;
  } else if (straight) {
    height = std::max(bow, k_seed * rod.length);
  }

  const double total = along[k_pieces];
  std::size_t piece = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(n);
    const double s = share * total;
    while (piece + 1 < k_pieces && along[piece + 1] < s) ++piece;
    const double width = along[piece + 1] - along[piece];
    const double u =
        (static_cast<double>(piece) + (width > 0 ? (s - along[piece]) / width : 0.5)) / k_pieces;
    Vector t = cubic.derivative(u);
    const double speed = t.norm();
    t = speed > 1e-9 * rod.length ? Vector(t / speed) : rod.start_direction;
    if (side >= 0 || straight) t = axis * (chord / rod.length) + t * (straight ? 0.0 : 1.0);
    if (height != 0)
      t += towards *
           (height / rod.length * std::numbers::pi * std::sin(2 * std::numbers::pi * share));
    const double size = t.norm();
    tangents[i] = size > 1e-6 ? Vector(t / size) : axis;
  }
}

}  // namespace wm::hose
