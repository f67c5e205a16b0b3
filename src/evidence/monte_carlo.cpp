#include "evidence/monte_carlo.hpp"

#include <fmt/format.h>

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <vector>

#include "statistics/draws.hpp"
#include "statistics/summary.hpp"

namespace wm::evidence {
namespace {

Result<Done> check_settings(const MonteCarloSettings& s) {
  if (s.trials < 1000 || s.trials > 10'000'000)
    return Fail(Kind::out_of_bounds, "number of trials outside 1000 to 10 000 000",
                "1000 to 10 000 000", "200000");
  if (!(s.level >= 0.5 && s.level <= 0.9999))
    return Fail(Kind::out_of_bounds, "coverage level outside 50 % to 99.99 %", "50 % to 99.99 %",
                "95 %");
  return Done{};
}

Result<Done> check_inputs(std::span<const RandomInput> inputs,
                          std::span<const Correlation> correlations) {
  std::vector<Component> components;
  for (const auto& in : inputs) {
    if (!std::isfinite(in.centre))
      return Fail(Kind::out_of_bounds, fmt::format("`{}` has no value", in.what), "a number");
    components.push_back({in.what, in.spread, 1.0, in.dof, in.distribution, {}});
  }
  if (const auto good = combine(components, correlations); !good) return Fail(good.error());
  for (const auto& c : correlations)
    for (const std::size_t i : {c.first, c.second})
      if (c.r != 0.0 && inputs[i].distribution != Distribution::normal)
        return Fail(
            Kind::not_applicable,
            fmt::format("`{}` is not normal, so its correlation cannot be drawn", inputs[i].what),
            "correlations between normal inputs only");
  return Done{};
}

/// A matrix whose product with independent normal draws has the correlations asked for.
Result<Eigen::MatrixXd> mixing(std::size_t n, std::span<const Correlation> correlations) {
  const auto size = static_cast<Eigen::Index>(n);
  Eigen::MatrixXd r = Eigen::MatrixXd::Identity(size, size);
  for (const auto& c : correlations) {
    const auto i = static_cast<Eigen::Index>(c.first);
    const auto j = static_cast<Eigen::Index>(c.second);
    r(i, j) = c.r;
    r(j, i) = c.r;
  }
  // By eigenvalues, not Cholesky: r = 1 exactly is allowed.
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(r);
  if (solver.eigenvalues().minCoeff() < -1e-9)
    return Fail(Kind::conflict, "these correlations cannot all be true",
                "correlations found from one set of readings");
  const Eigen::VectorXd roots = solver.eigenvalues().cwiseMax(0.0).cwiseSqrt();
  return Eigen::MatrixXd(solver.eigenvectors() * roots.asDiagonal() *
                         solver.eigenvectors().transpose());
}

double draw(statistics::Draws& draws, const RandomInput& in) {
  switch (in.distribution) {
    case Distribution::normal:
      return draws.normal(in.centre, in.spread);
    case Distribution::rectangular:
      return draws.uniform(in.centre - in.spread, in.centre + in.spread);
    case Distribution::triangular:
      return draws.triangular(in.centre - in.spread, in.centre + in.spread);
    case Distribution::arcsine:
      return draws.arcsine(in.centre - in.spread, in.centre + in.spread);
    case Distribution::student_t:
      return in.centre + in.spread * draws.student_t(in.dof);
  }
  return in.centre;
}

class Sampler {
 public:
  Sampler(std::span<const RandomInput> inputs, const Eigen::MatrixXd* mix, std::uint64_t seed)
      : inputs_(inputs), mix_(mix), draws_(seed), x_(inputs.size()) {}

  std::span<const double> next() {
    for (std::size_t i = 0; i < x_.size(); ++i) x_[i] = draw(draws_, inputs_[i]);
    if (mix_ != nullptr) correlate();
    return x_;
  }

 private:
  void correlate() {
    Eigen::VectorXd z = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(x_.size()));
    for (std::size_t i = 0; i < x_.size(); ++i)
      if (normal(i))
        z(static_cast<Eigen::Index>(i)) = (x_[i] - inputs_[i].centre) / inputs_[i].spread;
    const Eigen::VectorXd mixed = *mix_ * z;
    for (std::size_t i = 0; i < x_.size(); ++i)
      if (normal(i))
        x_[i] = inputs_[i].centre + inputs_[i].spread * mixed(static_cast<Eigen::Index>(i));
  }
  bool normal(std::size_t i) const {
    return inputs_[i].distribution == Distribution::normal && inputs_[i].spread > 0.0;
  }
  std::span<const RandomInput> inputs_;
  const Eigen::MatrixXd* mix_;
  statistics::Draws draws_;
  std::vector<double> x_;
};

void intervals(const std::vector<double>& sorted, double level, MonteCarloAnswer& out) {
  const std::size_t m = sorted.size();
  const auto inside =
      std::min(m - 1, static_cast<std::size_t>(std::floor(level * static_cast<double>(m) + 0.5)));
  const std::size_t left = (m - inside) / 2;
  out.symmetric = {sorted[left == 0 ? 0 : left - 1], sorted[std::min(m - 1, left + inside - 1)]};
  out.shortest = {sorted.front(), sorted[inside]};
  for (std::size_t i = 0; i + inside < m; ++i)
    if (sorted[i + inside] - sorted[i] < out.shortest.high - out.shortest.low)
      out.shortest = {sorted[i], sorted[i + inside]};
}

}  // namespace

Result<MonteCarloAnswer> monte_carlo(const Model& model, std::span<const RandomInput> inputs,
                                     std::span<const Correlation> correlations,
                                     const MonteCarloSettings& settings) {
  if (const auto good = check_settings(settings); !good) return Fail(good.error());
  if (const auto good = check_inputs(inputs, correlations); !good) return Fail(good.error());
  Eigen::MatrixXd mix;
  if (!correlations.empty()) {
    auto made = mixing(inputs.size(), correlations);
    if (!made) return Fail(made.error());
    mix = std::move(*made);
  }
  Sampler sampler(inputs, correlations.empty() ? nullptr : &mix, settings.seed);
  std::vector<double> y(static_cast<std::size_t>(settings.trials));
  const auto total = static_cast<double>(settings.trials);
  for (std::size_t i = 0; i < y.size(); ++i) {
    if (i % 8192 == 0 && settings.progress && !settings.progress(static_cast<double>(i) / total))
      return Fail(Kind::stopped, "stopped before all trials were drawn", "");
    y[i] = model(sampler.next());
    if (!std::isfinite(y[i]))
      return Fail(Kind::not_applicable, "the formula has no value for some of the draws",
                  "a formula that holds over the whole spread of the inputs");
  }
  std::sort(y.begin(), y.end());
  MonteCarloAnswer out;
  out.mean = statistics::mean(y);
  const auto spread = statistics::standard_deviation(y);
  if (!spread) return Fail(spread.error());
  out.u = *spread;
  out.level = settings.level;
  out.trials = settings.trials;
  out.seed = settings.seed;
  intervals(y, settings.level, out);
  return out;
}

}  // namespace wm::evidence
