#include "hose/rod.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace wm::hose {
namespace {

constexpr double k_tolerance = 1e-10;
constexpr double k_most_rotation = 0.6;  // rad in one step
constexpr int k_most_steps = 100;
constexpr double k_least_link_cosine = 0.5;  // a link turning more than 60 degrees is a fold

/// Two unit vectors square to t and to each other. Any two serve; these need no branch.
void square_to(const Vector& t, Vector& u, Vector& v) {
  const double sign = std::copysign(1.0, t.z());
  const double a = -1.0 / (sign + t.z());
  const double b = t.x() * t.y() * a;
  u = Vector(1.0 + sign * t.x() * t.x() * a, sign * b, -sign * t.x());
  v = Vector(b, sign + t.y() * t.y() * a, -t.y());
}

/// On the great circle from one direction to the other; opposite ones by way of a third.
Vector between_directions(const Vector& from, const Vector& to, double share) {
  const double angle = std::acos(std::clamp(from.dot(to), -1.0, 1.0));
  Vector aside = to - from * from.dot(to);
  if (aside.norm() < 1e-9) {
    Vector other;
    square_to(from, aside, other);
  }
  return from * std::cos(share * angle) + aside.normalized() * std::sin(share * angle);
}

struct Block {  // 2 x 2
  double a, b, c, d;
};

}  // namespace

/// One segment's share of the Newton system.
struct Node {
  Vector t, u, v;       // tangent and a basis of its tangent plane
  Vector gradient;      // unprojected
  Block twist{};        // part of the diagonal that the twisting moment adds
  Block coupling{};     // to the next segment
  double inverse[3]{};  // of the pivot: xx, xy, yy
  double y[2]{};        // right side, carried forward
  double border[6]{};   // three border columns, carried forward: row u, row v
  double step[2]{};
};

class RodSolver::Work {
 public:
  explicit Work(int segments) : n_(static_cast<std::size_t>(segments)), nodes_(n_), trial_(n_) {}

  std::vector<Vector> start;

  [[nodiscard]] std::size_t size() const { return n_; }

  /// Newton's method from the tangents in `from`.
  void settle(const Rod& rod, const std::vector<Vector>& from, const Vector& force, Shape& out,
              double first_shift = 1e-3);

 private:
  void gradient(const Rod& rod, std::vector<Node>& nodes, const Vector& force) const;
  [[nodiscard]] double residual(const Rod& rod, std::vector<Node>& nodes);
  void couple(const Rod& rod);
  void twist_blocks(const Rod& rod);
  [[nodiscard]] bool factor(const Rod& rod, double shift);
  void finish(const Rod& rod, const Vector& pull, double now, Shape& out) const;
  void back();
  [[nodiscard]] static Vector linear_term(const Rod& rod, std::size_t i, std::size_t n, double h);

  std::size_t n_;
  std::vector<Node> nodes_, trial_;
  Vector closure_{0, 0, 0};
  Vector force_step_{0, 0, 0};
  int negative_{};
};

Vector RodSolver::Work::linear_term(const Rod& rod, std::size_t i, std::size_t n, double h) {
  // Each segment carries the weight of everything beyond it, and the pull at a free end.
  Vector out = -rod.weight * (h * h * (static_cast<double>(n - i) - 0.5));
  if (rod.far_end_free) out -= rod.tip_force * h;
  return out;
}

void RodSolver::Work::gradient(const Rod& rod, std::vector<Node>& nodes,
                               const Vector& force) const {
  const double h = rod.length / static_cast<double>(n_);
  const bool weight = !rod.weight.isZero(0.0) || rod.far_end_free;
  const Vector pull = rod.far_end_free ? Vector(Vector::Zero()) : Vector(force * h);
  for (std::size_t i = 0; i < n_; ++i) {
    Vector g = pull;
    g -= i == 0 ? Vector(rod.start_direction * (2.0 / h)) : Vector(nodes[i - 1].t / h);
    if (i + 1 < n_) {
      g -= nodes[i + 1].t / h;
    } else if (!rod.far_end_free) {
      g -= rod.end_direction * (2.0 / h);
    }
    if (weight) g += linear_term(rod, i, n_, h);
    nodes[i].gradient = g;
  }
  if (rod.twist == 0.0) return;
  // The transport angle grows by -1/2 of the curvature binormals beside a tangent (Bergou et al.
  // 2008); the energy of a constant twisting moment is -M times the angle it turns through.
  for (std::size_t i = 0; i < n_; ++i) {
    const Vector& t = nodes[i].t;
    const Vector& before = i == 0 ? rod.start_direction : nodes[i - 1].t;
    nodes[i].gradient += rod.twist * before.cross(t) / (1.0 + before.dot(t));
    if (i + 1 == n_ && rod.far_end_free) continue;
    const Vector& after = i + 1 == n_ ? rod.end_direction : nodes[i + 1].t;
    nodes[i].gradient += rod.twist * t.cross(after) / (1.0 + t.dot(after));
  }
}

double RodSolver::Work::residual(const Rod& rod, std::vector<Node>& nodes) {
  const double h = rod.length / static_cast<double>(n_);
  double sum = 0;
  Vector total = Vector::Zero();
  for (const auto& node : nodes) {
    // Projected before it is squared: the axial part is larger by many orders.
    const Vector across = node.gradient - node.t * node.gradient.dot(node.t);
    sum += across.squaredNorm();
    total += node.t;
  }
  sum *= h * h;
  if (!rod.far_end_free) {
    closure_ = total * h - (rod.end - rod.start);
    sum += closure_.squaredNorm() / (rod.length * rod.length);
  }
  return std::sqrt(sum);
}

void RodSolver::Work::twist_blocks(const Rod& rod) {
  // d/dt of F(a,b) = a x b / (1 + a.b), the gradient of the transport angle at either end.
  const auto by_second = [](const Vector& a, const Vector& b, const Vector& d) {
    const double q = 1.0 / (1.0 + a.dot(b));
    return Vector((a.cross(d) - a.cross(b) * (q * a.dot(d))) * q);
  };
  const auto by_first = [](const Vector& a, const Vector& b, const Vector& d) {
    const double q = 1.0 / (1.0 + a.dot(b));
    return Vector((d.cross(b) - a.cross(b) * (q * b.dot(d))) * q);
  };
  for (std::size_t i = 0; i < n_; ++i) {
    auto& node = nodes_[i];
    const Vector& before = i == 0 ? rod.start_direction : nodes_[i - 1].t;
    Vector du = by_second(before, node.t, node.u);
    Vector dv = by_second(before, node.t, node.v);
    if (i + 1 < n_ || !rod.far_end_free) {
      const Vector& after = i + 1 == n_ ? rod.end_direction : nodes_[i + 1].t;
      du += by_first(node.t, after, node.u);
      dv += by_first(node.t, after, node.v);
    }
    const double cross = 0.5 * rod.twist * (node.u.dot(dv) + node.v.dot(du));
    node.twist = {rod.twist * node.u.dot(du), cross, cross, rod.twist * node.v.dot(dv)};
    if (i + 1 == n_) continue;
    const auto& next = nodes_[i + 1];
    const Vector nu = by_second(node.t, next.t, next.u);
    const Vector nv = by_second(node.t, next.t, next.v);
    node.coupling.a += rod.twist * node.u.dot(nu);
    node.coupling.b += rod.twist * node.u.dot(nv);
    node.coupling.c += rod.twist * node.v.dot(nu);
    node.coupling.d += rod.twist * node.v.dot(nv);
  }
}

void RodSolver::Work::couple(const Rod& rod) {
  const double stiff = static_cast<double>(n_) / rod.length;
  for (auto& node : nodes_) square_to(node.t, node.u, node.v);
  for (std::size_t i = 0; i + 1 < n_; ++i) {
    auto& node = nodes_[i];
    const auto& next = nodes_[i + 1];
    node.coupling = {-stiff * node.u.dot(next.u), -stiff * node.u.dot(next.v),
                     -stiff * node.v.dot(next.u), -stiff * node.v.dot(next.v)};
  }
  if (rod.twist != 0.0) twist_blocks(rod);
}

/// Block LDL' of the bordered system [H + shift, C'; C, 0], carrying the right side along.
/// @return whether every pivot could be divided by; `negative_` holds the inertia.
bool RodSolver::Work::factor(const Rod& rod, double shift) {
  const double h = rod.length / static_cast<double>(n_);
  const double least = 1e-12 * static_cast<double>(n_) / rod.length;
  negative_ = 0;
  double s[6]{};  // C H^-1 C', upper part: xx xy xz yy yz zz
  double q[3]{};  // C H^-1 (right side)
  for (std::size_t i = 0; i < n_; ++i) {
    auto& node = nodes_[i];
    const double along = -node.gradient.dot(node.t) + shift;
    double xx = along + node.twist.a, xy = node.twist.b, yy = along + node.twist.d;
    double y0 = -node.u.dot(node.gradient), y1 = -node.v.dot(node.gradient);
    double* const c = node.border;
    for (int k = 0; k < 3; ++k) {
      c[k] = h * node.u[k];
      c[3 + k] = h * node.v[k];
    }
    if (i > 0) {
      const auto& p = nodes_[i - 1];
      const Block& m = p.coupling;  // rows: the one before; columns: this one
      // m' D^-1, 2 x 2
      const double e = m.a * p.inverse[0] + m.c * p.inverse[1];
      const double f = m.a * p.inverse[1] + m.c * p.inverse[2];
      const double g = m.b * p.inverse[0] + m.d * p.inverse[1];
      const double k = m.b * p.inverse[1] + m.d * p.inverse[2];
      xx -= e * m.a + f * m.c;
      xy -= e * m.b + f * m.d;
      yy -= g * m.b + k * m.d;
      y0 -= e * p.y[0] + f * p.y[1];
      y1 -= g * p.y[0] + k * p.y[1];
      for (int j = 0; j < 3; ++j) {
        c[j] -= e * p.border[j] + f * p.border[3 + j];
        c[3 + j] -= g * p.border[j] + k * p.border[3 + j];
      }
    }
    const double determinant = xx * yy - xy * xy;
    if (!(std::abs(determinant) > least * least)) return false;
    if (determinant < 0) {
      negative_ += 1;
    } else if (xx < 0) {
      negative_ += 2;
    }
    const double over = 1.0 / determinant;
    node.inverse[0] = yy * over;
    node.inverse[1] = -xy * over;
    node.inverse[2] = xx * over;
    node.y[0] = y0;
    node.y[1] = y1;
    if (rod.far_end_free) continue;
    for (int j = 0, at = 0; j < 3; ++j) {
      const double w0 = node.inverse[0] * c[j] + node.inverse[1] * c[3 + j];
      const double w1 = node.inverse[1] * c[j] + node.inverse[2] * c[3 + j];
      q[j] += w0 * y0 + w1 * y1;
      for (int k = j; k < 3; ++k, ++at) s[at] += w0 * c[k] + w1 * c[3 + k];
    }
  }
  if (rod.far_end_free) {
    force_step_.setZero();
    return true;
  }
  Eigen::Matrix3d schur;
  schur << s[0], s[1], s[2], s[1], s[3], s[4], s[2], s[4], s[5];
  // The sign of the whole is turned in the bordered matrix: positive here is negative there.
  // By Sylvester's law the signs of the pivots of an LDL' count them, pivoted for soundness.
  const Eigen::LDLT<Eigen::Matrix3d> ldlt(schur);
  const auto d = ldlt.vectorD();
  for (int k = 0; k < 3; ++k) {
    if (d[k] > 0) negative_ += 1;
  }
  bool invertible = false;
  Eigen::Matrix3d inverse;
  schur.computeInverseWithCheck(inverse, invertible, 1e-300);
  if (!invertible) return false;
  force_step_ = inverse * (Vector(q[0], q[1], q[2]) + closure_);
  return true;
}

void RodSolver::Work::back() {
  for (std::size_t i = n_; i-- > 0;) {
    auto& node = nodes_[i];
    double r0 = node.y[0], r1 = node.y[1];
    for (int k = 0; k < 3; ++k) {
      r0 -= node.border[k] * force_step_[k];
      r1 -= node.border[3 + k] * force_step_[k];
    }
    if (i + 1 < n_) {
      const auto& next = nodes_[i + 1];
      r0 -= node.coupling.a * next.step[0] + node.coupling.b * next.step[1];
      r1 -= node.coupling.c * next.step[0] + node.coupling.d * next.step[1];
    }
    node.step[0] = node.inverse[0] * r0 + node.inverse[1] * r1;
    node.step[1] = node.inverse[1] * r0 + node.inverse[2] * r1;
  }
}

void RodSolver::Work::settle(const Rod& rod, const std::vector<Vector>& from, const Vector& force,
                             Shape& out, double first_shift) {
  const double stiff = static_cast<double>(n_) / rod.length;
  const int expected = rod.far_end_free ? 0 : 3;
  Vector pull = force;
  double first = first_shift * stiff;
  for (std::size_t i = 0; i < n_; ++i) nodes_[i].t = from[i];
  gradient(rod, nodes_, pull);
  double now = residual(rod, nodes_);
  out.settled = Settled::not_settled;
  out.steps = 0;
  for (; out.steps <= k_most_steps; ++out.steps) {
    couple(rod);
    bool good = factor(rod, 0.0);
    if (now < k_tolerance && good) {
      out.settled = negative_ == expected ? Settled::stable : Settled::unstable;
      // A soft way out has hardly a slope: whoever looks for it goes on.
      if (out.settled == Settled::stable || first_shift >= 1e-3) break;
    }
    if (out.steps == k_most_steps) break;
    double shift = 0;
    for (int tries = 0; (!good || negative_ != expected) && tries < 32; ++tries) {
      shift = tries == 0 ? first : 4 * shift;
      good = factor(rod, shift);
    }
    if (!good || negative_ != expected) break;
    // The next one may do with less: a soft way down is walked in longer and longer steps.
    if (shift > 0) first = std::max(shift / 16, 1e-10 * stiff);
    back();
    double most = 0;
    for (const auto& node : nodes_)
      most = std::max(most, node.step[0] * node.step[0] + node.step[1] * node.step[1]);
    double scale = std::min(1.0, k_most_rotation / std::max(std::sqrt(most), 1e-300));
    for (int halved = 0;; ++halved) {
      for (std::size_t i = 0; i < n_; ++i) {
        const auto& node = nodes_[i];
        trial_[i].t = (node.t + node.u * (scale * node.step[0]) + node.v * (scale * node.step[1]))
                          .normalized();
      }
      const Vector trial_pull = pull + scale * force_step_;
      gradient(rod, trial_, trial_pull);
      const double then = residual(rod, trial_);
      // Halved twice at most: in a curved valley an honest step makes the residual grow first.
      if (then < now || shift > 0 || halved == 2 || now < 1e-9) {
        pull = trial_pull;
        now = then;
        break;
      }
      scale *= 0.5;
    }
    for (std::size_t i = 0; i < n_; ++i) {
      nodes_[i].t = trial_[i].t;
      nodes_[i].gradient = trial_[i].gradient;
    }
  }
  finish(rod, pull, now, out);
}

void RodSolver::Work::finish(const Rod& rod, const Vector& pull, double now, Shape& out) const {
  const double stiff = static_cast<double>(n_) / rod.length;
  out.start = rod.start;
  out.start_direction = rod.start_direction;
  out.end_direction = rod.end_direction;
  out.far_end_free = rod.far_end_free;
  out.length = rod.length;
  out.force = rod.far_end_free ? rod.tip_force : Vector(-pull);
  out.residual = now;
  out.negative = negative_;
  out.tangents.resize(n_);
  // The links to the fittings too: a hose that folds back at a fitting lies nearly along its
  // direction, only the other way, and its end would read as hardly bent.
  const double first = rod.start_direction.dot(nodes_[0].t);
  const double last = rod.far_end_free ? 1.0 : nodes_[n_ - 1].t.dot(rod.end_direction);
  double bent = 2.0 * (1.0 - first) + 2.0 * (1.0 - last);
  bool folded = std::min(first, last) < k_least_link_cosine;
  for (std::size_t i = 0; i < n_; ++i) {
    out.tangents[i] = nodes_[i].t;
    if (i == 0) continue;
    const double cosine = nodes_[i - 1].t.dot(nodes_[i].t);
    bent += 1.0 - cosine;
    folded = folded || cosine < k_least_link_cosine;
  }
  out.energy = bent * stiff;
  out.folded = folded && out.settled != Settled::not_settled;
  if (folded) out.settled = Settled::not_settled;
}

RodSolver::RodSolver(int segments) : work_(std::make_unique<Work>(std::clamp(segments, 8, 4096))) {}
RodSolver::~RodSolver() = default;
RodSolver::RodSolver(RodSolver&&) noexcept = default;
RodSolver& RodSolver::operator=(RodSolver&&) noexcept = default;

int RodSolver::segments() const { return static_cast<int>(work_->size()); }

void RodSolver::follow(const Rod& rod, const Shape& before, Shape& out) {
  const Vector force = rod.far_end_free ? Vector(Vector::Zero()) : Vector(-before.force);
  work_->settle(rod, before.tangents, force, out);
}

void RodSolver::warm(const Rod& rod, const Shape& before, Shape& out) {
  if (before.tangents.size() == work_->size() && before.settled == Settled::stable) {
    follow(rod, before, out);
    if (out.settled == Settled::stable) return;
  }
  cold(rod, out);
}

void RodSolver::cold(const Rod& rod, Shape& out) {
  work_->start.resize(work_->size());
  bool folded = false;
  for (int side = -1; side < 6; ++side) {
    start_curve(rod, side, work_->start);
    work_->settle(rod, work_->start, Vector::Zero(), out);
    if (out.settled == Settled::unstable) leave_saddle(rod, out);
    if (out.settled == Settled::stable) return;
    folded = folded || out.folded;
  }
  approach(rod, out);
  out.folded = out.folded || (folded && out.settled != Settled::stable);
}

void RodSolver::leave_saddle(const Rod& rod, Shape& out) {
  // Pushes that share no symmetry with the shape: to the side, more in one half than the other.
  Vector aside, other;
  square_to(rod.start_direction, aside, other);
  const auto n = static_cast<double>(work_->size());
  const auto balanced = out.tangents;
  const Vector force = rod.far_end_free ? Vector(Vector::Zero()) : Vector(-out.force);
  for (const double push : {0.15, -0.15, 0.6, -0.6}) {
    for (std::size_t i = 0; i < work_->size(); ++i) {
      const double s = (static_cast<double>(i) + 0.5) / n * std::numbers::pi;
      const double bow = push * (std::sin(s) + 0.5 * std::sin(2 * s));
      work_->start[i] = (balanced[i] + (aside + 0.6 * other) * bow).normalized();
    }
    work_->settle(rod, work_->start, force, out, 1e-9);
    if (out.settled == Settled::stable) return;
  }
}

void RodSolver::approach(const Rod& rod, Shape& out) {
  if (rod.far_end_free) return;
  // From a hose that lies almost straight ahead, its far end brought home in small steps.
  constexpr int steps = 16;
  const Vector far = rod.start + rod.start_direction * (0.9 * rod.length);
  Rod between = rod;
  Shape before;
  for (int side = 0; side < 6; ++side) {
    between.end = far;
    between.end_direction = rod.start_direction;
    start_curve(between, side, work_->start);
    work_->settle(between, work_->start, Vector::Zero(), before);
    for (int k = 1; k <= steps && before.settled == Settled::stable; ++k) {
      const double share = static_cast<double>(k) / steps;
      between.end = far + (rod.end - far) * share;
      between.end_direction = between_directions(rod.start_direction, rod.end_direction, share);
      follow(between, before, out);
      before = out;
    }
    if (before.settled == Settled::stable) return;
  }
}

std::vector<Shape> RodSolver::every(const Rod& rod) {
  std::vector<Shape> found;
  Shape shape;
  work_->start.resize(work_->size());
  for (int side = -1; side < 6; ++side) {
    start_curve(rod, side, work_->start);
    work_->settle(rod, work_->start, Vector::Zero(), shape);
    if (shape.settled != Settled::stable) continue;
    const bool known = std::any_of(found.begin(), found.end(), [&](const Shape& other) {
      double apart = 0;
      for (std::size_t i = 0; i < shape.tangents.size(); ++i)
        apart = std::max(apart, (shape.tangents[i] - other.tangents[i]).squaredNorm());
      return apart < 1e-6;
    });
    if (!known) found.push_back(shape);
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Shape& a, const Shape& b) { return a.energy < b.energy; });
  return found;
}

}  // namespace wm::hose
