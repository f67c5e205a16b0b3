#include "hose/set_rod.hpp"

#include <algorithm>
#include <cmath>

#include "hose/detail/free_step.hpp"

namespace wm::hose {
namespace {

constexpr double k_tolerance = 1e-9;
constexpr int k_most_steps = 100;
constexpr double k_most_rotation = 0.25;  // rad in one step
using Matrix = Eigen::MatrixXd;
using Column = Eigen::VectorXd;
using Six = Eigen::Matrix<double, 6, 1>;
using SixSix = Eigen::Matrix<double, 6, 6>;

Frame pure(const Vector& v) { return {0, v.x(), v.y(), v.z()}; }
Frame small_turn(const Vector& v) {
  const double angle = v.norm();
  return angle < 1e-300 ? Frame::Identity() : Frame(Eigen::AngleAxisd(angle, v / angle));
}

/// Energy, slope and second derivatives of one link by small turns of both frames about their own
/// axes: exp(-a) q exp(b), which is a polynomial of second order in a and b for small ones.
struct Link {
  double energy{};
  Six slope;
  SixSix matrix;
};
Link link(const Frame& a, const Frame& b, double spacing, const SetRod& rod) {
  Frame q = a.conjugate() * b;
  if (q.w() < 0) q.coeffs() = -q.coeffs();
  Eigen::Matrix<double, 3, 6> first;
  for (int k = 0; k < 3; ++k) {
    const Frame half = pure(0.5 * Vector::Unit(k));
    first.col(k) = -(half * q).vec();
    first.col(3 + k) = (q * half).vec();
  }
  const Vector strain = 2 * q.vec() / spacing;
  const Vector stress = rod.stiffness.cwiseProduct(strain - rod.at_rest);
  Link out;
  out.energy = 0.5 * spacing * stress.dot(strain - rod.at_rest);
  out.slope = 2 * first.transpose() * stress;
  out.matrix = (4 / spacing) * first.transpose() * rod.stiffness.asDiagonal() * first;
  for (int k = 0; k < 3; ++k) {
    for (int l = 0; l < 3; ++l) {
      const Vector both = -(pure(0.5 * Vector::Unit(k)) * q * pure(0.5 * Vector::Unit(l))).vec();
      const double by = 2 * stress.dot(both);
      out.matrix(k, 3 + l) += by;
      out.matrix(3 + l, k) += by;
    }
    const double by = -0.5 * stress.dot(q.vec());
    out.matrix(k, k) += by;
    out.matrix(3 + k, 3 + k) += by;
  }
  return out;
}

class Work {
 public:
  Work(const SetRod& rod, std::vector<Frame> from)
      : rod_(rod), frames_(std::move(from)), h_(rod.length / static_cast<double>(frames_.size())) {}

  SetShape run() {
    SetShape out;
    for (int step = 0; step < k_most_steps; ++step) {
      build();
      const auto next = detail::free_step(matrix_, slope_, rows_, misfit_,
                                          1e-3 * rod_.stiffness.maxCoeff() / h_, false);
      if (!next.good) break;
      out.residual = residual(next.multipliers);
      if (out.residual < k_tolerance) {
        out.stable = next.shift == 0;
        break;
      }
      double most = 0;
      for (Eigen::Index i = 0; i < next.step.size(); i += 3)
        most = std::max(most, next.step.segment<3>(i).norm());
      const double share = std::min(1.0, k_most_rotation / std::max(most, 1e-300));
      for (std::size_t i = 0; i < frames_.size(); ++i) {
        const Vector turn = share * next.step.segment<3>(static_cast<Eigen::Index>(3 * i));
        frames_[i] = (frames_[i] * small_turn(turn)).normalized();
      }
      if (rod_.end_frame) force_ += share * Vector(next.multipliers);
    }
    out.frames = frames_;
    out.start = rod_.start;
    out.start_direction = rod_.start_frame * Vector::UnitZ();
    if (rod_.end_frame) out.end_direction = *rod_.end_frame * Vector::UnitZ();
    out.length = rod_.length;
    return out;
  }

 private:
  void build() {
    const auto n = static_cast<Eigen::Index>(frames_.size());
    matrix_ = Matrix::Zero(3 * n, 3 * n);
    slope_ = Column::Zero(3 * n);
    const auto first = link(rod_.start_frame, frames_.front(), 0.5 * h_, rod_);
    slope_.head<3>() += first.slope.tail<3>();
    matrix_.topLeftCorner<3, 3>() += first.matrix.bottomRightCorner<3, 3>();
    for (Eigen::Index i = 0; i + 1 < n; ++i) {
      const auto here = link(frames_[static_cast<std::size_t>(i)],
                             frames_[static_cast<std::size_t>(i + 1)], h_, rod_);
      slope_.segment<6>(3 * i) += here.slope;
      matrix_.block<6, 6>(3 * i, 3 * i) += here.matrix;
    }
    if (rod_.end_frame) {
      const auto last = link(frames_.back(), *rod_.end_frame, 0.5 * h_, rod_);
      slope_.tail<3>() += last.slope.head<3>();
      matrix_.bottomRightCorner<3, 3>() += last.matrix.topLeftCorner<3, 3>();
    }
    rows_.resize(3 * n, rod_.end_frame ? 3 : 0);
    misfit_.resize(rod_.end_frame ? 3 : 0);
    const Vector pull = rod_.end_frame ? force_ : Vector(-rod_.tip_force);
    Vector reach = Vector::Zero();
    for (Eigen::Index i = 0; i < n; ++i) {
      const auto& frame = frames_[static_cast<std::size_t>(i)];
      reach += h_ * (frame * Vector::UnitZ());
      // h R (d x z) = h R [0 1 0; -1 0 0; 0 0 0] d
      Eigen::Matrix3d by = Eigen::Matrix3d::Zero();
      by.col(0) = -h_ * (frame * Vector::UnitY());
      by.col(1) = h_ * (frame * Vector::UnitX());
      slope_.segment<3>(3 * i) += by.transpose() * pull;
      if (rod_.end_frame) rows_.block<3, 3>(3 * i, 0) = by.transpose();
      const Vector p = frame.conjugate() * (h_ * pull);
      const Vector z = Vector::UnitZ();
      matrix_.block<3, 3>(3 * i, 3 * i) += 0.5 * (p * z.transpose() + z * p.transpose());
      matrix_.block<3, 3>(3 * i, 3 * i).diagonal().array() -= p.z();
    }
    if (rod_.end_frame) misfit_ = reach - (rod_.end - rod_.start);
  }

  /// With the multipliers at their best: what the slope lacks of balance.
  [[nodiscard]] double residual(const Column& multipliers) const {
    Column lacks = slope_;
    double closure = 0;
    if (rod_.end_frame) {
      lacks += rows_ * multipliers;
      closure = misfit_.norm() / rod_.length;
    }
    // Newton's multipliers belong to the next step; near the end both are one.
    return std::hypot(lacks.norm() * h_ / rod_.stiffness.maxCoeff(), closure);
  }

  const SetRod& rod_;
  std::vector<Frame> frames_;
  double h_;
  Vector force_{0, 0, 0};
  Matrix matrix_, rows_;
  Column slope_, misfit_;
};

}  // namespace

SetShape settle(const SetRod& rod, std::vector<Frame> from) {
  return Work(rod, std::move(from)).run();
}

Shape SetShape::curve() const {
  Shape out;
  out.settled = stable ? Settled::stable : Settled::not_settled;
  for (const auto& frame : frames) out.tangents.push_back(frame * Vector::UnitZ());
  out.start = start;
  out.start_direction = start_direction;
  out.end_direction = end_direction ? *end_direction : out.tangents.back();
  out.far_end_free = !end_direction;
  out.length = length;
  out.residual = residual;
  return out;
}

std::vector<Frame> carried_frames(const Shape& shape, const Vector& x) {
  std::vector<Frame> out;
  Vector from = shape.start_direction;
  const Vector square = (x - from * from.dot(x)).normalized();
  Eigen::Matrix3d axes;
  axes << square, from.cross(square), from;
  Frame frame(axes);
  for (const auto& t : shape.tangents) {
    frame = (Frame::FromTwoVectors(from, t) * frame).normalized();
    from = t;
    out.push_back(frame);
  }
  return out;
}

}  // namespace wm::hose
