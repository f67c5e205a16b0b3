#pragma once
/// The shape of a hose between two end fittings.
///
/// A hose that is round, made straight and not twisted lies in the curve of least bending energy
/// among all curves of its length that leave both fittings in their directions (Kirchhoff's
/// inextensible rod). The stiffness EI drops out as long as there is neither weight nor contact,
/// so forces here are per EI. docs/method/hose-shape.md has the equations.
///
/// Lengths are metres, curvatures 1/m; the unit does not matter as long as it is one.

#include <Eigen/Core>
#include <cstdint>
#include <memory>
#include <vector>

namespace wm::hose {

using Vector = Eigen::Vector3d;

/// What the shape depends on. Points are those where the hose leaves the rigid metal.
struct Rod {
  Vector start{0, 0, 0};
  Vector end{0, 0, 0};
  Vector start_direction{1, 0, 0};  ///< of travel from start to end; unit length
  Vector end_direction{1, 0, 0};    ///< likewise, where the hose enters the far fitting
  double length{};
  /// Weight per length over EI, pointing where it pulls (1/m^3). Filled hose, times load factor.
  Vector weight{0, 0, 0};
  /// Twisting moment over EI that the fittings force into the hose (1/m); 0 for a hose that is
  /// clocked rightly. Right hand about the direction of travel.
  double twist{};
  /// Only for bench tests of stiffness: the far end hangs free and `tip_force` (over EI) pulls it.
  bool far_end_free{false};
  Vector tip_force{0, 0, 0};
};

enum class Settled : std::uint8_t {
  stable,      ///< a strict minimum of the energy: the hose can lie like this
  unstable,    ///< in balance, but the least touch sends it elsewhere: never to be reported
  not_settled  ///< no balance found
};

/// A solved shape: N equal segments, each straight, its unit tangents in order of travel.
struct Shape {
  Settled settled{Settled::not_settled};
  std::vector<Vector> tangents;
  Vector start{0, 0, 0};
  Vector start_direction{1, 0, 0};
  Vector end_direction{1, 0, 0};
  bool far_end_free{false};
  double length{};
  Vector force{0, 0, 0};  ///< in the hose at its start, over EI (1/m^2); positive along: pulled
  double energy{};        ///< bending energy over EI (1/m)
  double residual{};      ///< of the equations, scaled; below 1e-10 where settled
  int negative{};         ///< negative eigenvalues of the bordered matrix: 3 for a strict minimum
  int steps{};            ///< Newton steps taken
  bool folded{};          ///< why it did not settle: a link turns by more than 60 degrees

  [[nodiscard]] std::size_t segments() const { return tangents.size(); }
  [[nodiscard]] double spacing() const { return length / static_cast<double>(tangents.size()); }
};

/// Solves one rod after another without asking for memory again. One thread at a time.
class RodSolver {
 public:
  /// @param segments  8 to 4096; 32 while moving, 64 by default
  explicit RodSolver(int segments = 64);
  ~RodSolver();
  RodSolver(RodSolver&&) noexcept;
  RodSolver& operator=(RodSolver&&) noexcept;
  RodSolver(const RodSolver&) = delete;
  RodSolver& operator=(const RodSolver&) = delete;

  /// From nothing: a cubic start curve, then bows to six sides, then approached from afar.
  /// @pre directions are unit vectors; length above the distance of the ends
  void cold(const Rod& rod, Shape& out);
  /// From an earlier shape, with the same number of segments: the next step of a movement.
  /// Falls back to `cold` where that does not settle.
  void warm(const Rod& rod, const Shape& before, Shape& out);
  /// From an earlier shape and nowhere else: says whether this family of shapes goes on.
  void follow(const Rod& rod, const Shape& before, Shape& out);
  /// Every stable shape found from the cubic curve and six bows, least energy first.
  [[nodiscard]] std::vector<Shape> every(const Rod& rod);

  [[nodiscard]] int segments() const;

 private:
  /// From afar, in small steps: slow, for what nothing else settles.
  void approach(const Rod& rod, Shape& out);

  /// A nudge out of a balance that is none, and on from there.
  void leave_saddle(const Rod& rod, Shape& out);

  class Work;
  std::unique_ptr<Work> work_;
};

/// Tangents of a start curve: a cubic between the ends, as long as the hose, bowed to one of six
/// sides (`side` 0 to 5) or, with -1, only as much as keeps it from being exactly flat.
void start_curve(const Rod& rod, int side, std::vector<Vector>& tangents);

}  // namespace wm::hose
