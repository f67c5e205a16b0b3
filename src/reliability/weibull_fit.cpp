#include "reliability/weibull_fit.hpp"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <set>

#include "statistics/distributions.hpp"
#include "statistics/numeric.hpp"

namespace wm::reliability {
namespace {

constexpr double k_infinite = std::numeric_limits<double>::infinity();
constexpr double k_least_ln_shape = -3.5;
constexpr double k_most_ln_shape = 4.6;
constexpr int k_bits = 40;
constexpr double k_level = 1e-9;  // of ln likelihood: far above rounding, far below any evidence

/// A value with its slopes and curvatures in two unknowns: a = ln scale, b = ln shape.
struct Jet {
  double v{};
  double a{}, b{};
  double aa{}, ab{}, bb{};
};
Jet operator+(const Jet& x, const Jet& y) {
  return {x.v + y.v, x.a + y.a, x.b + y.b, x.aa + y.aa, x.ab + y.ab, x.bb + y.bb};
}
Jet operator-(const Jet& x) { return {-x.v, -x.a, -x.b, -x.aa, -x.ab, -x.bb}; }
Jet operator-(const Jet& x, const Jet& y) { return x + (-y); }
/// f(x), given f, f' and f'' there.
Jet through(const Jet& x, double f, double f1, double f2) {
  return {f,
          f1 * x.a,
          f1 * x.b,
          f2 * x.a * x.a + f1 * x.aa,
          f2 * x.a * x.b + f1 * x.ab,
          f2 * x.b * x.b + f1 * x.bb};
}
Jet exp(const Jet& x) {
  const double e = std::exp(x.v);
  return through(x, e, e, e);
}
/// ln(1 - exp(-x)), x > 0
Jet log_gone(const Jet& x) {
  const double gone = -std::expm1(-x.v);
  const double slope = std::exp(-x.v) / gone;
  return through(x, std::log(gone), slope, -slope / gone);
}

/// (t / scale)^shape as exp(shape (ln t - a)).
struct Load {
  Jet z, w;
};
Load load(double t, double a, double b) {
  const double shape = std::exp(b);
  const double z = shape * (std::log(t) - a);
  const Jet jet{z, -shape, z, 0.0, -shape, z};
  return {jet, exp(jet)};
}

Jet term(const Life& life, double a, double b) {
  Jet out;
  const Load at = load(life.age, a, b);
  switch (life.ending) {
    case Ending::failed:
      out = Jet{b - std::log(life.age), 0.0, 1.0, 0.0, 0.0, 0.0} + at.z - at.w;
      break;
    case Ending::running:
      out = -at.w;
      break;
    case Ending::failed_before:
      out = log_gone(at.w);
      break;
    case Ending::failed_between:
      out = -at.w + log_gone(load(life.until, a, b).w - at.w);
      break;
  }
  return life.entered > 0.0 ? out + load(life.entered, a, b).w : out;
}

Jet likelihood(std::span<const Life> lives, double a, double b) {
  Jet sum;
  for (const Life& life : lives) sum = sum + term(life, a, b);
  return sum;
}

struct Peak {
  double at{};
  double value{};
};
/// Highest point between two ends: a coarse look, then Brent.
Peak peak(const std::function<double(double)>& f, double low, double high) {
  constexpr int k_steps = 60;
  const double step = (high - low) / k_steps;
  int best = 0;
  double most = -k_infinite;
  for (int i = 0; i <= k_steps; ++i) {
    const double value = f(low + i * step);
    if (value > most) {
      most = value;
      best = i;
    }
  }
  const double from = low + std::max(0, best - 1) * step;
  const double to = low + std::min(k_steps, best + 1) * step;
  const auto found =
      boost::math::tools::brent_find_minima([&](double x) { return -f(x); }, from, to, k_bits);
  return {found.first, -found.second};
}

/// Best ln scale for a shape: the slope falls from plus to minus.
double best_scale(std::span<const Life> lives, double b) {
  double low = k_infinite, high = -k_infinite;
  for (const Life& life : lives) {
    low = std::min(low, std::log(life.age));
    high = std::max(high, std::log(std::max(life.age, life.until)));
  }
  const double spread = std::exp(-b);
  const auto slope = [&](double a) { return likelihood(lives, a, b).a; };
  const double top = high + 30.0 * spread + 1.0;
  auto root = statistics::crossing(slope, low - 6.0 * spread - 1.0, top);
  // Parts that came old and were watched for a moment only: the scale may be far below any age.
  if (!root) root = statistics::crossing(slope, low - 30.0 * spread - 1.0, top);
  return root ? *root : high;
}

double shape_profile(std::span<const Life> lives, double b) {
  return likelihood(lives, best_scale(lives, b), b).v;
}

/// Highest likelihood when the life at which -ln R = k is fixed at exp(c).
double life_profile(std::span<const Life> lives, double c, double ln_k) {
  const auto at = [&](double b) {
    const double value = likelihood(lives, c - ln_k * std::exp(-b), b).v;
    return std::isfinite(value) ? value : -1e300;
  };
  return peak(at, k_least_ln_shape, k_most_ln_shape).value;
}

/// Where a falling-off curve has dropped by half the chi-squared quantile, on both sides.
Limits where_dropped(const std::function<double(double)>& profile, double centre, double spread,
                     double drop_to) {
  const auto side = [&](double direction) {
    double far = spread;
    for (int i = 0; i < 12; ++i) {
      const double end = centre + direction * far;
      far *= 1.6;
      if (profile(end) > drop_to) continue;
      const auto root = statistics::crossing([&](double x) { return profile(x) - drop_to; },
                                             std::min(centre, end), std::max(centre, end));
      if (root) return std::exp(*root);
    }
    return direction > 0.0 ? k_infinite : 0.0;
  };
  return {side(-1.0), side(1.0)};
}

double half_quantile(double confidence) {
  return statistics::chi_squared_quantile(confidence, 1.0) / 2.0;
}
double two_sided(double confidence) { return statistics::normal_quantile(0.5 + confidence / 2.0); }

Result<WeibullFit> no_peak() {
  return Fail(Kind::not_applicable, "the likelihood has no peak for these lives",
              "failures told apart by more ages");
}

bool is_failure(const Life& life) { return life.ending != Ending::running; }

}  // namespace

double WeibullFit::survival(double t) const { return std::exp(-std::pow(t / scale, shape)); }
double WeibullFit::life_at(double p) const {
  return scale * std::pow(-std::log1p(-p), 1.0 / shape);
}
double WeibullFit::mean() const { return scale * std::tgamma(1.0 + 1.0 / shape); }

double weibull_log_likelihood(std::span<const Life> lives, double shape, double scale) {
  return likelihood(lives, std::log(scale), std::log(shape)).v;
}

double best_scale_at_shape(std::span<const Life> lives, double shape) {
  return std::exp(best_scale(lives, std::log(shape)));
}

Result<WeibullFit> fit_weibull(std::span<const Life> lives) {
  WeibullFit fit;
  fit.failures = static_cast<int>(std::count_if(lives.begin(), lives.end(), is_failure));
  if (fit.failures < 2) {
    return Fail(Kind::not_applicable, "fewer than two failures say nothing about the shape",
                "two failures or more; or a bound without a shape from them");
  }
  const auto top =
      peak([&](double b) { return shape_profile(lives, b); }, k_least_ln_shape, k_most_ln_shape);
  if (top.at < k_least_ln_shape + 0.01 || top.at > k_most_ln_shape - 0.01) {
    return Fail(Kind::not_applicable, "these lives set no bound on the shape: all fail alike",
                "failures at different ages");
  }
  // A ridge that stays level to either end is no peak, whatever its rounding looks like.
  const double ends =
      std::max(shape_profile(lives, k_least_ln_shape), shape_profile(lives, k_most_ln_shape));
  if (!(top.value > ends + k_level * (1.0 + std::abs(top.value)))) return no_peak();
  double a = best_scale(lives, top.at), b = top.at;
  Jet at = likelihood(lives, a, b);
  for (int i = 0; i < 20; ++i) {  // Newton: the last digits
    const double det = at.aa * at.bb - at.ab * at.ab;
    const double step_a = (at.bb * at.a - at.ab * at.b) / det;
    const double step_b = (at.aa * at.b - at.ab * at.a) / det;
    if (!(det > 0.0) || std::abs(step_a) + std::abs(step_b) > 0.1) break;
    a -= step_a;
    b -= step_b;
    at = likelihood(lives, a, b);
    if (std::abs(step_a) + std::abs(step_b) < 1e-13) break;
  }
  const double det = at.aa * at.bb - at.ab * at.ab;
  if (!(det > 0.0) || !(at.aa < 0.0)) return no_peak();
  fit.scale = std::exp(a);
  fit.shape = std::exp(b);
  fit.log_likelihood = at.v;
  fit.var_ln_scale = -at.bb / det;
  fit.var_ln_shape = -at.aa / det;
  fit.cov_ln = at.ab / det;
  return fit;
}

Limits wald_shape(const WeibullFit& fit, double confidence) {
  const double by = std::exp(two_sided(confidence) * std::sqrt(fit.var_ln_shape));
  return {fit.shape / by, fit.shape * by};
}

Limits wald_scale(const WeibullFit& fit, double confidence) {
  const double by = std::exp(two_sided(confidence) * std::sqrt(fit.var_ln_scale));
  return {fit.scale / by, fit.scale * by};
}

Limits wald_life(const WeibullFit& fit, double p, double confidence) {
  // ln t = ln scale + w / shape
  const double slope = -std::log(-std::log1p(-p)) / fit.shape;
  const double var = fit.var_ln_scale + slope * slope * fit.var_ln_shape + 2.0 * slope * fit.cov_ln;
  const double by = std::exp(two_sided(confidence) * std::sqrt(var));
  return {fit.life_at(p) / by, fit.life_at(p) * by};
}

Limits wald_survival(const WeibullFit& fit, double t, double confidence) {
  // u = shape (ln t - ln scale) = ln(-ln R)
  const double u = fit.shape * std::log(t / fit.scale);
  const double var = fit.shape * fit.shape * fit.var_ln_scale + u * u * fit.var_ln_shape -
                     2.0 * fit.shape * u * fit.cov_ln;
  const double wide = two_sided(confidence) * std::sqrt(var);
  return {std::exp(-std::exp(u + wide)), std::exp(-std::exp(u - wide))};
}

Limits ratio_shape(std::span<const Life> lives, const WeibullFit& fit, double confidence) {
  return where_dropped([&](double b) { return shape_profile(lives, b); }, std::log(fit.shape),
                       2.0 * two_sided(confidence) * std::sqrt(fit.var_ln_shape),
                       fit.log_likelihood - half_quantile(confidence));
}

Limits ratio_life(std::span<const Life> lives, const WeibullFit& fit, double p, double confidence) {
  const double ln_k = std::log(-std::log1p(-p));
  const double slope = -ln_k / fit.shape;
  const double var = fit.var_ln_scale + slope * slope * fit.var_ln_shape + 2.0 * slope * fit.cov_ln;
  return where_dropped([&](double c) { return life_profile(lives, c, ln_k); },
                       std::log(fit.life_at(p)), 2.0 * two_sided(confidence) * std::sqrt(var),
                       fit.log_likelihood - half_quantile(confidence));
}

Result<std::vector<SurvivalStep>> survival_curve(std::span<const Life> lives) {
  std::set<double> ages;
  for (const Life& life : lives) {
    if (life.ending == Ending::failed) ages.insert(life.age);
    if (life.ending == Ending::failed_before || life.ending == Ending::failed_between) {
      return Fail(Kind::not_applicable, "a failure is known only to an interval",
                  "failures with a known age");
    }
  }
  std::vector<SurvivalStep> out;
  double survival = 1.0, sum = 0.0, greenwood = 0.0;
  for (const double age : ages) {
    SurvivalStep step;
    step.age = age;
    for (const Life& life : lives) {
      if (life.entered < age && life.age >= age) ++step.at_risk;
      if (life.ending == Ending::failed && life.age == age) ++step.failed;
    }
    const double d = step.failed, n = step.at_risk;
    survival *= 1.0 - d / n;
    sum += d / n;
    greenwood += n > d ? d / (n * (n - d)) : 0.0;
    step.survival = survival;
    step.hazard_sum = sum;
    step.deviation = survival * std::sqrt(greenwood);
    out.push_back(step);
  }
  return out;
}

}  // namespace wm::reliability
