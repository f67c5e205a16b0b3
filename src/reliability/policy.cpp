// When to renew by age, and how often to inspect.
#include "reliability/policy.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>

#include "quantity/as_typed.hpp"
#include "reliability/detail/problem.hpp"
#include "statistics/numeric.hpp"

namespace wm::reliability {
namespace {

using detail::problem;
using quantity::pencil;

constexpr double k_hour = 3600.0;
constexpr int k_renewal_steps = 4000;
constexpr int k_bits = 45;

double hours_of(quantity::Duration d) { return d.si / k_hour; }

/// Costs of a renewal with the fault that the job itself may bring in.
struct Costs {
  double planned{}, failure{};
};

class Renewal {
 public:
  explicit Renewal(const RenewalAgeInput& in)
      : in_(in),
        shape_(in.shape),
        scale_(hours_of(in.scale)),
        costs_{in.planned_cost + in.job_fault_chance.si * in.job_fault_cost,
               in.failure_cost + in.job_fault_chance.si * in.job_fault_cost} {}

  RenewalAgeAnswer run() {
    switch (in_.rule) {
      case RenewalRule::by_age:
        by_age();
        break;
      case RenewalRule::all_at_a_time:
        all_at_a_time();
        break;
      case RenewalRule::minimal_repair:
        minimal_repair();
        break;
    }
    say();
    return std::move(out_);
  }

 private:
  double survival(double t) const { return std::exp(-std::pow(t / scale_, shape_)); }
  double lived(double t) const {
    const double breaks[] = {0.0, t / 4, t / 2, t};
    return statistics::integrate([&](double x) { return survival(x); }, breaks);
  }
  double mean() const { return scale_ * std::tgamma(1.0 + 1.0 / shape_); }

  void take(double at, double cost) {
    out_.pays = true;
    out_.renew_at = quantity::hours(at);
    out_.cost_per_hour = cost;
  }

  /// h(T) x integral of R - F(T) = c_p / (c_f - c_p); the left side rises from 0 for shape > 1.
  void by_age() {
    const double wait = costs_.failure / mean();
    out_.never_renewed_per_hour = wait;
    out_.cost_per_hour = wait;
    if (shape_ <= 1.0) return;
    const double wanted = costs_.planned / (costs_.failure - costs_.planned);
    const auto off = [&](double t) {
      const double hazard = shape_ / scale_ * std::pow(t / scale_, shape_ - 1.0);
      return hazard * lived(t) - (1.0 - survival(t)) - wanted;
    };
    const auto root = statistics::crossing(off, scale_ * 1e-6, scale_ * 50.0);
    if (!root) return;  // beyond fifty times the scale: never
    const double t = *root;
    const double r = survival(t);
    take(t, (costs_.planned * r + costs_.failure * (1.0 - r)) / lived(t));
    out_.survives_to_it = quantity::Fraction{r};
    out_.saving = quantity::Fraction{1.0 - out_.cost_per_hour / wait};
    out_.working.push_back(fmt::format("survives to {} h: {}; mean hours lived by then {}",
                                       pencil(t), pencil(r), pencil(lived(t))));
    out_.working.push_back(fmt::format(
        "({} x {} + {} x {}) / {} = {} an hour", pencil(costs_.planned), pencil(r),
        pencil(costs_.failure), pencil(1.0 - r), pencil(lived(t)), pencil(out_.cost_per_hour)));
    out_.working.push_back(fmt::format("never renewed before failure: {} / {} = {} an hour",
                                       pencil(costs_.failure), pencil(mean()), pencil(wait)));
  }

  void minimal_repair() {
    if (shape_ <= 1.0) return;
    const double t =
        scale_ * std::pow(costs_.planned / (costs_.failure * (shape_ - 1.0)), 1.0 / shape_);
    const double failures = std::pow(t / scale_, shape_);
    take(t, (costs_.planned + costs_.failure * failures) / t);
    out_.working.push_back(fmt::format("({} + {} x {}) / {} = {} an hour", pencil(costs_.planned),
                                       pencil(costs_.failure), pencil(failures), pencil(t),
                                       pencil(out_.cost_per_hour)));
  }

  void all_at_a_time() {
    const double wait = costs_.failure / mean();
    out_.never_renewed_per_hour = wait;
    out_.cost_per_hour = wait;
    if (shape_ <= 1.0) return;
    const double most = 2.5 * scale_;
    const auto m = renewals(shape_, scale_, most, k_renewal_steps);
    double best = wait, at = 0.0;
    for (int i = 1; i <= k_renewal_steps; ++i) {
      const double t = most * i / k_renewal_steps;
      const double cost = (costs_.planned + costs_.failure * m[static_cast<std::size_t>(i)]) / t;
      if (cost < best) {
        best = cost;
        at = t;
      }
    }
    if (at == 0.0) return;
    take(at, best);
    out_.saving = quantity::Fraction{1.0 - best / wait};
    out_.working.push_back(
        fmt::format("least of (planned + failure x renewals(T)) / T on {} steps", k_renewal_steps));
  }

  void say() {
    if (!out_.pays) {
      out_.in_words = shape_ <= 1.0
                          ? "never by age: a new one is no less likely to fail than an old one"
                          : "never by age: waiting for the failure costs less";
      return;
    }
    out_.in_words = fmt::format("renew at {} h: {} an hour", pencil(hours_of(*out_.renew_at)),
                                pencil(out_.cost_per_hour));
    if (out_.saving) {
      out_.in_words +=
          fmt::format(", {:.2g} % less than waiting for the failure{}", out_.saving->si * 100.0,
                      out_.saving->si < 0.05 ? ": hardly worth it" : "");
    }
  }

  const RenewalAgeInput& in_;
  double shape_, scale_;
  Costs costs_;
  RenewalAgeAnswer out_;
};

Checked<InspectionIntervalAnswer> by_warning(const InspectionIntervalInput& in) {
  if (!in.warning || !(in.warning->si > 0.0)) {
    return Fail(Problems{problem("warning", Kind::missing, "the warning time is not given",
                                 "from first visible to failed", "100 h")});
  }
  InspectionIntervalAnswer out;
  const double theta = in.detection.si;
  // A hair below the next whole number is that number: ln(.01) / ln(.1) is 2.
  const double exact = theta < 1.0 ? std::log(in.accepted_miss.si) / std::log1p(-theta) : 1.0;
  const double n = std::max(1.0, std::ceil(exact - 1e-9));
  out.inspections_in_warning = static_cast<std::int64_t>(n);
  out.interval = *in.warning * (1.0 / n);
  out.missed = {std::pow(1.0 - theta, n)};
  out.in_words = fmt::format("inspect every {} h: {:.0f} times within the warning time",
                             pencil(hours_of(out.interval)), n);
  out.working.push_back(fmt::format("ln({}) / ln(1 - {}) = {}, rounded up {:.0f}",
                                    pencil(in.accepted_miss.si), pencil(theta), pencil(exact), n));
  out.notes.emplace_back(
      "Only where there is a clear sign before failure, its time to failure is fairly steady, and "
      "what is left after finding it is enough to act.");
  return out;
}

Checked<InspectionIntervalAnswer> by_delay(const InspectionIntervalInput& in) {
  Problems missing;
  const auto need = [&](bool there, const char* path, const char* example) {
    if (!there) {
      missing.push_back(problem(path, Kind::missing, "it is needed for the delay-time rule",
                                "a figure above 0", example));
    }
  };
  need(in.defects_per_hour && *in.defects_per_hour > 0.0, "defects_per_hour", "0.02");
  need(in.mean_delay && in.mean_delay->si > 0.0, "mean_delay", "100 h");
  need(in.inspection_cost.has_value(), "inspection_cost", "30");
  need(in.repair_cost.has_value(), "repair_cost", "50");
  need(in.failure_cost.has_value(), "failure_cost", "800");
  if (!missing.empty()) return Fail(std::move(missing));
  const double k = *in.defects_per_hour, mu = hours_of(*in.mean_delay);
  const auto cost = [&](double t) {
    const double b = missed_share(t, mu, in.detection.si);
    return (*in.inspection_cost + k * t * (*in.failure_cost * b + *in.repair_cost * (1.0 - b))) / t;
  };
  const auto found =
      boost::math::tools::brent_find_minima([&](double ln_t) { return cost(std::exp(ln_t)); },
                                            std::log(mu * 1e-5), std::log(mu * 1e3), k_bits);
  const double t = std::exp(found.first);
  InspectionIntervalAnswer out;
  out.interval = quantity::hours(t);
  out.missed = {missed_share(t, mu, in.detection.si)};
  out.cost_per_hour = cost(t);
  out.in_words = fmt::format("inspect every {} h: {} an hour; {:.3g} % of defects still fail first",
                             pencil(t), pencil(*out.cost_per_hour), out.missed.si * 100.0);
  if (t > mu * 100.0) out.notes.emplace_back("Inspecting hardly pays with these costs.");
  out.working.push_back(fmt::format(
      "({} + {} x {} x ({} x {} + {} x {})) / {} = {} an hour", pencil(*in.inspection_cost),
      pencil(k), pencil(t), pencil(*in.failure_cost), pencil(out.missed.si),
      pencil(*in.repair_cost), pencil(1.0 - out.missed.si), pencil(t), pencil(*out.cost_per_hour)));
  return out;
}

}  // namespace

std::vector<double> renewals(double shape, double scale, double t, int steps) {
  const double step = t / steps;
  const auto failed = [&](double x) { return -std::expm1(-std::pow(x / scale, shape)); };
  const auto n = static_cast<std::size_t>(steps);
  std::vector<double> whole(n + 1), half(n + 1), m(n + 1, 0.0);
  for (std::size_t i = 0; i <= n; ++i) {
    whole[i] = failed(step * static_cast<double>(i));
    half[i] = failed(step * (static_cast<double>(i) + 0.5));
  }
  for (std::size_t i = 1; i <= n; ++i) {
    double sum = whole[i] - half[0] * m[i - 1];
    for (std::size_t j = 1; j < i; ++j) sum += half[i - j] * (m[j] - m[j - 1]);
    m[i] = sum / (1.0 - half[0]);
  }
  return m;
}

double missed_share(double interval, double mean_delay, double detection) {
  const double x = interval / mean_delay;
  const double q = std::exp(-x);
  const double caught_once = -std::expm1(-x) / x;
  return 1.0 - caught_once * detection / (1.0 - (1.0 - detection) * q);
}

Checked<RenewalAgeAnswer> renewal_age(const RenewalAgeInput& input,
                                      const describe::Context& /*context*/) {
  if (!(input.scale.si > 0.0)) {
    return Fail(Problems{problem("scale", Kind::missing, "the scale is not given",
                                 "the age at which 63 % have failed", "1000 h")});
  }
  const bool repair = input.rule == RenewalRule::minimal_repair;
  if (!(input.planned_cost > 0.0) ||
      (repair ? !(input.failure_cost > 0.0) : input.failure_cost <= input.planned_cost)) {
    return Fail(Problems{
        problem("failure_cost", Kind::conflict,
                repair ? "costs of nothing have no best age"
                       : "a failure costs no more than a renewal: wait for it",
                repair ? "more than 0" : fmt::format("more than {}", pencil(input.planned_cost)))});
  }
  return Renewal(input).run();
}

Checked<InspectionIntervalAnswer> inspection_interval(const InspectionIntervalInput& input,
                                                      const describe::Context& /*context*/) {
  return input.rule == InspectionRule::warning_time ? by_warning(input) : by_delay(input);
}

}  // namespace wm::reliability
