#include "hose/lean.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "hose/detail/free_step.hpp"
#include "hose/rod_measure.hpp"

namespace wm::hose {
namespace {

constexpr int k_most_rounds = 60;
constexpr int k_most_steps = 80;
constexpr int k_most_kicks = 4;
constexpr std::size_t k_most_contacts = 12;
constexpr double k_close = 1e-7;          // of the length: lies against it
constexpr double k_tolerance = 1e-9;      // of the equations, scaled as in the rod solver
constexpr double k_most_rotation = 0.25;  // rad in one step
using Matrix = Eigen::MatrixXd;
using Column = Eigen::VectorXd;

void basis(const Vector& t, Vector& u, Vector& v) {
  const Vector pick = std::abs(t.x()) < 0.6 ? Vector::UnitX() : Vector::UnitY();
  u = t.cross(pick).normalized();
  v = t.cross(u);
}

class Work {
 public:
  Work(const Rod& rod, const std::vector<Solid>& things, double outside_diameter, int segments)
      : rod_(rod),
        things_(things),
        radius_(0.5 * outside_diameter),
        n_(static_cast<std::size_t>(segments)),
        h_(rod.length / segments) {}

  Leaning run() {
    Leaning out;
    RodSolver solver(static_cast<int>(n_));
    solver.cold(rod_, out.shape);
    if (out.shape.settled != Settled::stable) return out;
    t_ = out.shape.tangents;
    closing_ = -out.shape.force;
    for (int round = 0; round < k_most_rounds; ++round) {
      const bool added = touch_more(out.shape);
      const bool gone = !added && let_go();
      if (!added && !gone) {
        out.found = true;
        out.contacts = contacts_;
        return out;
      }
      if (contacts_.size() > k_most_contacts || !press()) break;
      write(out.shape);
    }
    return out;
  }

 private:
  [[nodiscard]] double clear(std::size_t solid, const Vector& at) const {
    return nearest(things_[solid], at, at).distance - radius_;
  }
  /// By differences: the same for every kind of solid.
  [[nodiscard]] Vector outward(std::size_t solid, const Vector& at) const {
    const double step = 1e-6 * rod_.length;
    Vector out;
    for (int k = 0; k < 3; ++k) {
      const Vector by = Vector::Unit(k) * step;
      out[k] = (clear(solid, at + by) - clear(solid, at - by)) / (2 * step);
    }
    return out;
  }
  [[nodiscard]] Eigen::Matrix3d bent(std::size_t solid, const Vector& at) const {
    const double step = 1e-4 * rod_.length;
    Eigen::Matrix3d out;
    for (int k = 0; k < 3; ++k) {
      const Vector by = Vector::Unit(k) * step;
      out.col(k) = (outward(solid, at + by) - outward(solid, at - by)) / (2 * step);
    }
    return 0.5 * (out + out.transpose()).eval();
  }

  [[nodiscard]] std::vector<Vector> nodes() const {
    std::vector<Vector> out{rod_.start};
    for (const auto& t : t_) out.push_back(out.back() + h_ * t);
    return out;
  }

  /// The deepest place of each thing that is not held yet.
  bool touch_more(const Shape& shape) {
    bool added = false;
    for (std::size_t s = 0; s < things_.size(); ++s) {
      const auto worst = gap(shape, 2 * radius_, things_[s]);
      if (worst.clear > -10 * k_close * rod_.length) continue;
      const auto node = static_cast<std::size_t>(
          std::clamp(std::round(worst.station / h_), 1.0, static_cast<double>(n_) - 1));
      const bool there = std::any_of(contacts_.begin(), contacts_.end(), [&](const Contact& c) {
        return c.solid == s && c.node == node;
      });
      if (there) continue;
      contacts_.push_back({s, node, 0});
      added = true;
    }
    return added;
  }
  /// A touch that would have to pull is none.
  bool let_go() {
    const auto first = std::remove_if(contacts_.begin(), contacts_.end(),
                                      [](const Contact& c) { return c.force < 0; });
    const bool out = first != contacts_.end();
    contacts_.erase(first, contacts_.end());
    return out;
  }

  struct Look {
    Column misfit;  // of closure and touches
    double residual{};
  };

  /// Slope of the Lagrangian by every tangent, unprojected, and what the constraints lack.
  Look look(std::vector<Vector>& g, std::vector<Vector>& normals) const {
    const auto place = nodes();
    const auto m = contacts_.size();
    Look out;
    out.misfit.resize(static_cast<Eigen::Index>(3 + m));
    out.misfit.head<3>() = place.back() - rod_.end;
    normals.resize(m);
    for (std::size_t j = 0; j < m; ++j) {
      normals[j] = outward(contacts_[j].solid, place[contacts_[j].node]);
      out.misfit[static_cast<Eigen::Index>(3 + j)] =
          clear(contacts_[j].solid, place[contacts_[j].node]);
    }
    g.assign(n_, Vector::Zero());
    double sum = 0;
    for (std::size_t i = 0; i < n_; ++i) {
      g[i] = closing_ * h_;
      g[i] -= i == 0 ? Vector(rod_.start_direction * (2 / h_)) : Vector(t_[i - 1] / h_);
      g[i] -= i + 1 == n_ ? Vector(rod_.end_direction * (2 / h_)) : Vector(t_[i + 1] / h_);
      g[i] -= rod_.weight * (h_ * h_ * (static_cast<double>(n_ - i) - 0.5));
      for (std::size_t j = 0; j < m; ++j) {
        if (i < contacts_[j].node) g[i] -= normals[j] * (contacts_[j].force * h_);
      }
      sum += (g[i] - t_[i] * g[i].dot(t_[i])).squaredNorm() * h_ * h_;
    }
    out.residual = std::sqrt(sum + out.misfit.squaredNorm() / (rod_.length * rod_.length));
    return out;
  }

  bool press() {
    std::vector<Vector> g, normals;
    Look now = look(g, normals);
    int kicks = 0;
    for (int step = 0; step < k_most_steps; ++step) {
      const bool there = now.residual < k_tolerance;
      auto [good, turn, multipliers, shift, slip] = solve(g, normals, now);
      if (!good) return false;
      if (there && shift == 0) return true;
      // In balance, but the least touch would send it aside: so it is sent.
      if (there) {
        if (++kicks > k_most_kicks) return false;
        turn = 0.05 * slip;
        multipliers.setZero();
      }
      double most = 0;
      for (Eigen::Index i = 0; i < turn.size(); i += 2)
        most = std::max(most, std::hypot(turn[i], turn[i + 1]));
      const double share = std::min(1.0, k_most_rotation / std::max(most, 1e-300));
      for (std::size_t i = 0; i < n_; ++i) {
        Vector u, v;
        basis(t_[i], u, v);
        const auto at = static_cast<Eigen::Index>(2 * i);
        t_[i] = (t_[i] + share * (u * turn[at] + v * turn[at + 1])).normalized();
      }
      closing_ += share * multipliers.head<3>();
      for (std::size_t j = 0; j < contacts_.size(); ++j)
        contacts_[j].force -= share * multipliers[static_cast<Eigen::Index>(3 + j)];
      now = look(g, normals);
    }
    return false;
  }

  [[nodiscard]] detail::FreeStep solve(const std::vector<Vector>& g,
                                       const std::vector<Vector>& normals, const Look& now) const {
    const auto size = static_cast<Eigen::Index>(2 * n_);
    const auto m = static_cast<Eigen::Index>(contacts_.size());
    std::vector<Eigen::Matrix<double, 3, 2>> planes(n_);
    for (std::size_t i = 0; i < n_; ++i) {
      Vector u, v;
      basis(t_[i], u, v);
      planes[i] << u, v;
    }
    Matrix matrix = Matrix::Zero(size, size);
    Column slope(size);
    Matrix rows(size, 3 + m);  // transposed constraints
    rows.setZero();
    for (std::size_t i = 0; i < n_; ++i) {
      const auto at = static_cast<Eigen::Index>(2 * i);
      slope.segment<2>(at) = planes[i].transpose() * g[i];
      matrix.block<2, 2>(at, at).diagonal().setConstant(-g[i].dot(t_[i]));
      if (i + 1 < n_) {
        const Eigen::Matrix2d beside = -planes[i].transpose() * planes[i + 1] / h_;
        matrix.block<2, 2>(at, at + 2) = beside;
        matrix.block<2, 2>(at + 2, at) = beside.transpose();
      }
      rows.block<2, 3>(at, 0) = h_ * planes[i].transpose();
      for (Eigen::Index j = 0; j < m; ++j) {
        if (i < contacts_[static_cast<std::size_t>(j)].node)
          rows.block<2, 1>(at, 3 + j) =
              h_ * planes[i].transpose() * normals[static_cast<std::size_t>(j)];
      }
    }
    // A round thing turns its push as the node moves along it.
    const auto place = nodes();
    for (const auto& c : contacts_) {
      if (c.force == 0) continue;
      const Eigen::Matrix3d curve = bent(c.solid, place[c.node]) * (-c.force * h_ * h_);
      if (curve.isZero(1e-300)) continue;
      for (std::size_t i = 0; i < c.node; ++i) {
        for (std::size_t k = 0; k < c.node; ++k)
          matrix.block<2, 2>(static_cast<Eigen::Index>(2 * i), static_cast<Eigen::Index>(2 * k)) +=
              planes[i].transpose() * curve * planes[k];
      }
    }
    return detail::free_step(matrix, slope, rows, now.misfit, 1e-3 / h_,
                             now.residual < k_tolerance);
  }

  void write(Shape& shape) const {
    shape.tangents = t_;
    shape.force = -closing_;
    double bent_by = 2 * (1 - rod_.start_direction.dot(t_.front())) +
                     2 * (1 - rod_.end_direction.dot(t_.back()));
    for (std::size_t i = 0; i + 1 < n_; ++i) bent_by += 1 - t_[i].dot(t_[i + 1]);
    shape.energy = bent_by / h_;
  }

  const Rod& rod_;
  const std::vector<Solid>& things_;
  double radius_;
  std::size_t n_;
  double h_;
  std::vector<Vector> t_;
  Vector closing_{0, 0, 0};
  std::vector<Contact> contacts_;
};

}  // namespace

Leaning lean(const Rod& rod, const std::vector<Solid>& things, double outside_diameter,
             int segments) {
  return Work(rod, things, outside_diameter, segments).run();
}

}  // namespace wm::hose
