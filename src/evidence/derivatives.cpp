// Numeric derivatives of a user's function for the GUM's first and second order terms.
#include <cmath>

#include "evidence/uncertainty.hpp"

namespace wm::evidence {
namespace {

// Small beside u, so that the curve is straight over it; large beside rounding.
constexpr double k_step = 0.05;

/// f with some inputs moved by whole steps, in units of u.
class Moved {
 public:
  Moved(const Model& model, std::span<const double> x, std::span<const double> u)
      : model_(&model), x_(x.begin(), x.end()), base_(x), u_(u) {}

  double at(std::size_t i, double steps_i) {
    move(i, steps_i);
    const double y = (*model_)(x_);
    x_[i] = base_[i];
    return y;
  }
  double at(std::size_t i, double steps_i, std::size_t j, double steps_j) {
    move(i, steps_i);
    move(j, steps_j);
    const double y = (*model_)(x_);
    x_[i] = base_[i];
    x_[j] = base_[j];
    return y;
  }
  double centre() { return (*model_)(x_); }
  /// df/dx_i times u_i from four points: exact up to the fourth degree, so that the bend of
  /// the curve over the step does not show in the result.
  double slope(std::size_t i) {
    const double near = at(i, 1.0) - at(i, -1.0);
    const double far = at(i, 2.0) - at(i, -2.0);
    return (8.0 * near - far) / (12.0 * k_step);
  }

 private:
  void move(std::size_t i, double steps) { x_[i] = base_[i] + steps * k_step * u_[i]; }
  const Model* model_;
  std::vector<double> x_;
  std::span<const double> base_;
  std::span<const double> u_;
};

Result<Done> check_lengths(std::span<const double> x, std::span<const double> u) {
  if (x.size() != u.size() || x.empty())
    return Fail(Kind::conflict, "each input needs its value and its uncertainty",
                "as many uncertainties as values");
  return Done{};
}

detail::Failure<Problem> not_a_number() {
  return Fail(Kind::not_applicable, "the formula has no value near the readings",
              "a formula that holds all around the readings");
}

}  // namespace

Result<std::vector<double>> sensitivities(const Model& model, std::span<const double> x,
                                          std::span<const double> u) {
  if (const auto good = check_lengths(x, u); !good) return Fail(good.error());
  Moved f(model, x, u);
  std::vector<double> out(x.size(), 0.0);
  for (std::size_t i = 0; i < x.size(); ++i) {
    if (u[i] == 0.0) continue;
    out[i] = f.slope(i) / u[i];
    if (!std::isfinite(out[i])) return not_a_number();
  }
  return out;
}

Result<double> second_order_variance(const Model& model, std::span<const double> x,
                                     std::span<const double> u) {
  if (const auto good = check_lengths(x, u); !good) return Fail(good.error());
  Moved f(model, x, u);
  const double centre = f.centre();
  const double h = k_step;
  double sum = 0.0;
  // Derivatives in units of u: f_i u_i, f_ij u_i u_j, f_ijj u_i u_j^2.
  for (std::size_t i = 0; i < x.size(); ++i) {
    if (u[i] == 0.0) continue;
    const double first = f.slope(i);
    for (std::size_t j = 0; j < x.size(); ++j) {
      if (u[j] == 0.0) continue;
      double second = 0.0;
      double third = 0.0;
      if (i == j) {
        second = (f.at(i, 1.0) - 2.0 * centre + f.at(i, -1.0)) / (h * h);
        third = (f.at(i, 2.0) - 2.0 * f.at(i, 1.0) + 2.0 * f.at(i, -1.0) - f.at(i, -2.0)) /
                (2.0 * h * h * h);
      } else {
        const double pp = f.at(i, 1.0, j, 1.0);
        const double pm = f.at(i, 1.0, j, -1.0);
        const double mp = f.at(i, -1.0, j, 1.0);
        const double mm = f.at(i, -1.0, j, -1.0);
        second = (pp - pm - mp + mm) / (4.0 * h * h);
        const double up = pp - 2.0 * f.at(i, 1.0) + pm;
        const double down = mp - 2.0 * f.at(i, -1.0) + mm;
        third = (up - down) / (2.0 * h * h * h);
      }
      sum += 0.5 * second * second + first * third;
    }
  }
  if (!std::isfinite(sum)) return not_a_number();
  return sum;
}

}  // namespace wm::evidence
