#pragma once
/// A hose with clamps, guides or rings between its ends: one span after another.
///
/// A clamp that holds place and direction parts the hose into spans that know nothing of each
/// other. A ring that lets it turn, or a guide that lets it slide, shares a direction or a length
/// between two spans; these settle where the energy of the whole is least: equal end moments on
/// both sides of a ring, equal H = 1/2 curvature^2 + n . t on both sides of a guide. No friction.
/// docs/method/hose-shape.md, section on clamps, has the equations.

#include <optional>
#include <vector>

#include "hose/rod.hpp"
#include "hose/rod_measure.hpp"
#include "hose/solid.hpp"

namespace wm::hose {

/// In the order in which the hose runs through them.
struct Support {
  Vector place{0, 0, 0};          ///< of the centreline
  std::optional<Vector> way;      ///< of travel through it, unit length; nothing: it may turn
  std::optional<double> station;  ///< where it grips, from the start; nothing: the hose slides
};

/// A solved hose of one or more spans.
struct Lie {
  Settled settled{Settled::not_settled};
  std::vector<Shape> spans;
  double length{};
  double energy{};  ///< of bending, over EI
  /// Where each support sits on the hose.
  [[nodiscard]] std::vector<double> stations() const;
};

/// Solves one hose after another. One thread at a time.
class LieSolver {
 public:
  explicit LieSolver(int segments = 64) : segments_(segments) {}
  /// @param rod  from end to end, with the whole length
  /// @pre every span longer than its chord: see `slack_everywhere`
  void cold(const Rod& rod, const std::vector<Support>& supports, Lie& out);
  /// From an earlier one with the same supports.
  void warm(const Rod& rod, const std::vector<Support>& supports, const Lie& before, Lie& out);

 private:
  class Work;
  void settle(const Rod& rod, const std::vector<Support>& supports, const Lie* before, Lie& out);
  int segments_;
  std::vector<RodSolver> solvers_;
};

/// The hose that the supports and the ends need at the least, pulled straight between them.
[[nodiscard]] double shortest_way(const Rod& rod, const std::vector<Support>& supports);
/// The first span, from 0, whose gripped ends leave it no slack.
[[nodiscard]] std::optional<std::size_t> taut_span(const Rod& rod,
                                                   const std::vector<Support>& supports);

[[nodiscard]] std::vector<Vector> points(const Lie& lie);  ///< nodes, supports counted once
[[nodiscard]] Vector point_at(const Lie& lie, double station);
[[nodiscard]] double curvature_at(const Lie& lie, double station);
[[nodiscard]] Vector tangent_at(const Lie& lie, double station);
[[nodiscard]] Tightest tightest(const Lie& lie);
[[nodiscard]] Vector carried(const Lie& lie, const Vector& vector);
[[nodiscard]] Gap gap(const Lie& lie, double outside_diameter, const Solid& solid);
/// Farthest distance between places of equal station, as a share of the length.
[[nodiscard]] double farthest(const Lie& a, const Lie& b);

}  // namespace wm::hose
