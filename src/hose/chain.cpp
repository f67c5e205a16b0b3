#include "hose/chain.hpp"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace wm::hose {
namespace {

constexpr double k_step = 1e-6;     // of the differences that make the matrix
constexpr double k_settled = 1e-7;  // gradient, scaled with the length
constexpr int k_most_steps = 60;
constexpr double k_taut = 1 + 1e-6;

void basis(const Vector& t, Vector& u, Vector& v) {
  const Vector pick = std::abs(t.x()) < 0.6 ? Vector::UnitX() : Vector::UnitY();
  u = t.cross(pick).normalized();
  v = t.cross(u);
}

/// Weight over EI of a span, seen from its start; and its share of the tangents' linear terms.
double weight_energy(const Rod& rod, const Shape& shape) {
  if (rod.weight.isZero(0.0)) return 0;
  const double h = shape.spacing();
  const auto n = shape.segments();
  double out = 0;
  for (std::size_t i = 0; i < n; ++i)
    out -= rod.weight.dot(shape.tangents[i]) * h * h * (static_cast<double>(n - i) - 0.5);
  return out;
}

}  // namespace

std::vector<double> Lie::stations() const {
  std::vector<double> out;
  double at = 0;
  for (std::size_t k = 0; k + 1 < spans.size(); ++k) out.push_back(at += spans[k].length);
  return out;
}

double shortest_way(const Rod& rod, const std::vector<Support>& supports) {
  double out = 0;
  Vector from = rod.start;
  for (const auto& s : supports) {
    out += (s.place - from).norm();
    from = s.place;
  }
  return out + (rod.end - from).norm();
}

/// What is sought: the stations of the sliding supports and the directions of the turning ones.
class LieSolver::Work {
 public:
  Work(const Rod& rod, const std::vector<Support>& supports, std::vector<RodSolver>& solvers)
      : rod_(rod), supports_(supports), solvers_(solvers) {
    for (const auto& s : supports_) {
      if (!s.station) ++slides_;
      if (!s.way) ++turns_;
    }
  }

  [[nodiscard]] std::size_t unknowns() const { return slides_ + 2 * turns_; }

  void start(const Lie* before) {
    const std::size_t n = supports_.size();
    lengths_.assign(n + 1, 0.0);
    ways_.assign(n, Vector::UnitX());
    for (std::size_t k = 0; k < n; ++k) {
      const Vector& from = k == 0 ? rod_.start : supports_[k - 1].place;
      const Vector& to = k + 1 == n ? rod_.end : supports_[k + 1].place;
      ways_[k] = supports_[k].way ? *supports_[k].way : Vector((to - from).normalized());
    }
    share_out();
    if (before != nullptr && before->spans.size() == n + 1) {
      for (std::size_t k = 0; k < n; ++k) {
        if (!supports_[k].way) ways_[k] = before->spans[k].end_direction;
      }
      if (slides_ > 0 && slides_ == n) {
        for (std::size_t k = 0; k <= n; ++k)
          lengths_[k] = before->spans[k].length * rod_.length / before->length;
      }
    }
  }

  /// Energy of the whole, and its slope; false where a span does not settle.
  bool look(Lie& lie, double& energy, Eigen::VectorXd* slope) {
    const std::size_t n = supports_.size();
    lie.spans.resize(n + 1);
    energy = 0;
    std::vector<double> by_length(n + 1);
    for (std::size_t k = 0; k <= n; ++k) {
      Rod span = rod_;
      span.start = k == 0 ? rod_.start : supports_[k - 1].place;
      span.end = k == n ? rod_.end : supports_[k].place;
      span.start_direction = k == 0 ? rod_.start_direction : ways_[k - 1];
      span.end_direction = k == n ? rod_.end_direction : ways_[k];
      span.length = lengths_[k];
      if (!(span.length > (span.end - span.start).norm() * k_taut)) return false;
      Shape& shape = lie.spans[k];
      Shape next;
      solvers_[k].warm(span, shape, next);
      shape = std::move(next);
      if (shape.settled != Settled::stable) return false;
      const double weight = weight_energy(span, shape);
      energy += shape.energy + weight - rod_.weight.dot(span.start) * span.length;
      // Of the span's energy with its ends held: bending goes with 1/L, weight with L^2, and the
      // closure is paid for by the force in the hose.
      by_length[k] =
          (-shape.energy + 2 * weight - shape.force.dot(span.end - span.start)) / span.length -
          rod_.weight.dot(span.start);
    }
    if (slope == nullptr) return true;
    Eigen::Index at = 0;
    for (std::size_t k = 0; k < n; ++k) {
      if (!supports_[k].station) (*slope)[at++] = by_length[k] - by_length[k + 1];
      if (supports_[k].way) continue;
      Vector u, v;
      basis(ways_[k], u, v);
      const Vector pull = -lie.spans[k].tangents.back() * (2 / lie.spans[k].spacing()) -
                          lie.spans[k + 1].tangents.front() * (2 / lie.spans[k + 1].spacing());
      (*slope)[at++] = pull.dot(u);
      (*slope)[at++] = pull.dot(v);
    }
    return true;
  }

  void move(const Eigen::VectorXd& step) {
    Eigen::Index at = 0;
    for (std::size_t k = 0; k < supports_.size(); ++k) {
      if (!supports_[k].station) {
        lengths_[k] += step[at];
        lengths_[k + 1] -= step[at++];
      }
      if (supports_[k].way) continue;
      Vector u, v;
      basis(ways_[k], u, v);
      ways_[k] = (ways_[k] + u * step[at] + v * step[at + 1]).normalized();
      at += 2;
    }
  }

  /// One unit of each unknown: the whole length for a station, a radian for a direction.
  [[nodiscard]] Eigen::VectorXd scale() const {
    Eigen::VectorXd out(static_cast<Eigen::Index>(unknowns()));
    Eigen::Index at = 0;
    for (const auto& s : supports_) {
      if (!s.station) out[at++] = rod_.length;
      if (s.way) continue;
      out[at++] = 1;
      out[at++] = 1;
    }
    return out;
  }

  struct Kept {
    std::vector<double> lengths;
    std::vector<Vector> ways;
  };
  [[nodiscard]] Kept keep() const { return {lengths_, ways_}; }
  void put_back(const Kept& kept) {
    lengths_ = kept.lengths;
    ways_ = kept.ways;
  }

 private:
  /// Lengths between grips are given; sliding supports between them share by distance.
  void share_out() {
    const std::size_t n = supports_.size();
    std::size_t from = 0;
    double begun = 0;
    for (std::size_t k = 0; k <= n; ++k) {
      const bool last = k == n;
      if (!last && !supports_[k].station) continue;
      const double ends = last ? rod_.length : *supports_[k].station;
      double chords = 0;
      const auto chord = [&](std::size_t j) {
        const Vector& a = j == 0 ? rod_.start : supports_[j - 1].place;
        const Vector& b = j == n ? rod_.end : supports_[j].place;
        return (b - a).norm();
      };
      for (std::size_t j = from; j <= k; ++j) chords += chord(j);
      for (std::size_t j = from; j <= k; ++j)
        lengths_[j] = (ends - begun) * chord(j) / std::max(chords, 1e-300);
      begun = ends;
      from = k + 1;
    }
  }

  const Rod& rod_;
  const std::vector<Support>& supports_;
  std::vector<RodSolver>& solvers_;
  std::size_t slides_{}, turns_{};
  std::vector<double> lengths_;
  std::vector<Vector> ways_;
};

std::optional<std::size_t> taut_span(const Rod& rod, const std::vector<Support>& supports) {
  // Between two grips the stretch of hose is known, whatever slides in between.
  double begun = 0, chords = 0;
  Vector from = rod.start;
  for (std::size_t k = 0; k <= supports.size(); ++k) {
    const bool last = k == supports.size();
    const Vector& to = last ? rod.end : supports[k].place;
    chords += (to - from).norm();
    from = to;
    if (!last && !supports[k].station) continue;
    const double ends = last ? rod.length : *supports[k].station;
    if (!(ends - begun > chords * k_taut)) return k;
    begun = ends;
    chords = 0;
  }
  return std::nullopt;
}

void LieSolver::cold(const Rod& rod, const std::vector<Support>& supports, Lie& out) {
  settle(rod, supports, nullptr, out);
}

void LieSolver::warm(const Rod& rod, const std::vector<Support>& supports, const Lie& before,
                     Lie& out) {
  settle(rod, supports, before.settled == Settled::stable ? &before : nullptr, out);
  if (out.settled != Settled::stable && before.settled == Settled::stable)
    settle(rod, supports, nullptr, out);
}

void LieSolver::settle(const Rod& rod, const std::vector<Support>& supports, const Lie* before,
                       Lie& out) {
  while (solvers_.size() < supports.size() + 1) solvers_.emplace_back(segments_);
  out.settled = Settled::not_settled;
  out.length = rod.length;
  if (before != nullptr && before != &out) {
    out.spans = before->spans;
  } else if (before == nullptr) {
    out.spans.clear();
  }
  Work work(rod, supports, solvers_);
  work.start(before);
  const auto m = static_cast<Eigen::Index>(work.unknowns());
  Eigen::VectorXd slope(m);
  double energy = 0;
  if (taut_span(rod, supports) || !work.look(out, energy, &slope)) return;
  const auto finish = [&](bool good) {
    out.energy = 0;
    for (const auto& span : out.spans) out.energy += span.energy;
    out.settled = good ? Settled::stable : Settled::not_settled;
  };
  if (m == 0) return finish(true);
  const Eigen::VectorXd unit = work.scale();
  // Second derivatives by differences of the slopes, one side only: they are for the step and for
  // the sign of the eigenvalues.
  Eigen::MatrixXd matrix(m, m);
  const auto build = [&] {
    for (Eigen::Index j = 0; j < m; ++j) {
      Eigen::VectorXd by = Eigen::VectorXd::Zero(m), there(m);
      by[j] = k_step * unit[j];
      const auto kept = work.keep();
      Lie trial = out;
      double unused = 0;
      work.move(by);
      const bool good = work.look(trial, unused, &there);
      work.put_back(kept);
      if (!good) return false;
      matrix.col(j) = ((there - slope) / k_step).cwiseProduct(unit);
    }
    matrix = 0.5 * (matrix + matrix.transpose()).eval();
    return true;
  };
  // Kept from step to step as long as the slope falls well.
  bool fresh = false;
  double size_before = std::numeric_limits<double>::infinity();
  for (int steps = 0; steps < k_most_steps; ++steps) {
    const Eigen::VectorXd scaled = slope.cwiseProduct(unit);
    const bool falls = scaled.norm() < 0.2 * size_before;
    size_before = scaled.norm();
    if (steps == 0 || !falls) {
      if (!build()) return;
      fresh = true;
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(matrix);
    const double size = std::max(eigen.eigenvalues().cwiseAbs().maxCoeff(), 1e-300);
    if (scaled.norm() * rod.length < k_settled * std::max(1.0, size * rod.length)) {
      if (fresh) return finish(eigen.eigenvalues().minCoeff() > 0);
      // The test of a minimum is made where the hose lies, not where it lay a step before.
      if (!build()) return;
      const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> here(matrix);
      return finish(here.eigenvalues().minCoeff() > 0);
    }
    Eigen::VectorXd along = eigen.eigenvectors().transpose() * scaled;
    for (Eigen::Index j = 0; j < m; ++j)
      along[j] /= -std::max(std::abs(eigen.eigenvalues()[j]), 1e-6 * size);
    Eigen::VectorXd step = eigen.eigenvectors() * along;
    step *= std::min(1.0, 0.3 / std::max(step.cwiseAbs().maxCoeff(), 1e-300));
    const auto kept = work.keep();
    bool moved = false;
    for (int halved = 0; halved < 12 && !moved; ++halved, step *= 0.5) {
      Lie trial = out;
      Eigen::VectorXd then(m);
      double lower = 0;
      work.move(step.cwiseProduct(unit));
      if (work.look(trial, lower, &then) && lower <= energy + 1e-9 * std::abs(energy)) {
        out.spans = std::move(trial.spans);
        slope = then;
        energy = lower;
        moved = true;
      } else {
        work.put_back(kept);
      }
    }
    fresh = false;
    if (!moved) return;
  }
}

std::vector<Vector> points(const Lie& lie) {
  std::vector<Vector> out;
  for (const auto& span : lie.spans) {
    const auto more = points(span);
    out.insert(out.end(), more.begin() + (out.empty() ? 0 : 1), more.end());
  }
  return out;
}

namespace {

/// The span that holds a station, and the station in it.
std::pair<const Shape*, double> span_at(const Lie& lie, double station) {
  std::size_t k = 0;
  for (; k + 1 < lie.spans.size() && station > lie.spans[k].length; ++k)
    station -= lie.spans[k].length;
  const Shape& span = lie.spans[k];
  return {&span, std::clamp(station, 0.0, span.length)};
}

}  // namespace

Vector point_at(const Lie& lie, double station) {
  const auto [span, at] = span_at(lie, station);
  return point_at(*span, at);
}

double curvature_at(const Lie& lie, double station) {
  const auto [span, at] = span_at(lie, station);
  const auto all = curvatures(*span);
  const double place = at / span->spacing();
  const auto i = std::min(static_cast<std::size_t>(place), all.size() - 2);
  const double share = place - static_cast<double>(i);
  return all[i] * (1 - share) + all[i + 1] * share;
}

Vector tangent_at(const Lie& lie, double station) {
  const auto [span, at] = span_at(lie, station);
  // Tangents belong to the middles of their segments.
  const double place = at / span->spacing() - 0.5;
  if (place <= 0) {
    const double share = place + 0.5;
    return (span->start_direction * (1 - 2 * share) + span->tangents.front() * 2 * share)
        .normalized();
  }
  const auto i = static_cast<std::size_t>(place);
  const double share = place - static_cast<double>(i);
  if (i + 1 >= span->tangents.size())
    return (span->tangents.back() * (1 - 2 * share) + span->end_direction * 2 * share).normalized();
  return (span->tangents[i] * (1 - share) + span->tangents[i + 1] * share).normalized();
}

Tightest tightest(const Lie& lie) {
  Tightest out;
  double begun = 0;
  for (const auto& span : lie.spans) {
    auto here = tightest(span);
    if (here.curvature > out.curvature) out = {here.curvature, begun + here.station};
    begun += span.length;
  }
  return out;
}

Vector carried(const Lie& lie, const Vector& vector) {
  Vector out = vector;
  for (const auto& span : lie.spans) out = carried(span, out);
  return out;
}

Gap gap(const Lie& lie, double outside_diameter, const Solid& solid) {
  Gap out;
  out.clear = std::numeric_limits<double>::infinity();
  double begun = 0;
  for (const auto& span : lie.spans) {
    auto here = gap(span, outside_diameter, solid);
    if (here.clear < out.clear) {
      out = here;
      out.station += begun;
    }
    begun += span.length;
  }
  return out;
}

double farthest(const Lie& a, const Lie& b) {
  double out = 0;
  for (int i = 1; i < 64; ++i) {
    const double share = i / 64.0;
    out = std::max(out, (point_at(a, share * a.length) - point_at(b, share * b.length)).norm());
  }
  return out;
}

}  // namespace wm::hose
