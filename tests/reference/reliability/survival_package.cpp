// Source:    R, packages survival (survreg, survfit) and boot (aircondit, aircondit7: failure
//            intervals of air-conditioning, published), Debian r-cran-survival and r-cran-boot,
//            run on the same lives; where parts came with an age, which survreg does not know, the
//            likelihood written out in survival.R and R's own optim.
// Tolerance: shape and scale 1e-5 of the value: both stop where the likelihood is flat to about
//            1e-12, so to about 1e-6 in what is sought. ln likelihood 1e-9 of the value: rounding.
//            Curves 1e-12: the same few products.
#include "reference/reliability/survival_package.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "reliability/life_estimate.hpp"
#include "statistics/draws.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::reliability;
using namespace wm::reliability::testing_support;
using statistics::Draws;

enum Family { right, left, inspected, mixed, right_entered, mixed_entered };
constexpr const char* k_families[] = {"removed in order",
                                      "found failed",
                                      "inspected at intervals",
                                      "mixed",
                                      "removed in order, some came with an age",
                                      "mixed, some came with an age"};
constexpr int k_family_count = 6;
constexpr int k_samples = 100;
const char* const k_survreg = "R package survival, survreg, on the same lives";
const char* const k_optim = "R, optim on the likelihood written out in R, on the same lives";

/// To a tenth of an hour, as logs are kept: gives ties as well.
double tenth(double hours) { return std::max(1.0, std::round(hours * 10.0)) / 10.0; }

class Fleet {
 public:
  Fleet(int family, Draws& draws)
      : family_(family),
        draws_(draws),
        shape_(draws.uniform(.5, 5)),
        scale_(draws.uniform(50, 3000)),
        between_(tenth(scale_ / draws.uniform(2, 6))) {}

  Life part() {
    const bool with_age = family_ >= right_entered && draws_.uniform() < .4;
    Life l;
    l.entered = with_age ? tenth(draws_.uniform(0, .6 * scale_)) : 0.0;
    const double start = std::pow(l.entered / scale_, shape_);
    const double life = tenth(scale_ * std::pow(start + draws_.exponential(1), 1 / shape_));
    const double end = l.entered + tenth(draws_.uniform(.3, 1.5) * scale_);
    int how = family_;
    if (family_ == right_entered) how = right;
    if (family_ == mixed || family_ == mixed_entered) how = static_cast<int>(draws_.index(3));
    if (how == right) known(l, life, end);
    if (how == left) found(l, life, end);
    if (how == inspected) between(l, life, end);
    return l;
  }

 private:
  static void known(Life& l, double life, double end) {
    l.ending = life < end ? Ending::failed : Ending::running;
    l.age = std::max(std::min(life, end), l.entered + .1);
  }
  void found(Life& l, double life, double end) {
    if (l.entered > 0 || draws_.uniform() < .4) return known(l, life, end);
    l.ending = life < end ? Ending::failed_before : Ending::running;
    l.age = end;
  }
  void between(Life& l, double life, double end) const {
    const double last = std::floor(std::min(life, end) / between_) * between_;
    if (life >= end) {
      l.ending = Ending::running;
      l.age = std::max(last, std::max(l.entered, between_ / 2) + .1);
    } else if (last <= l.entered && l.entered == 0) {
      l.ending = Ending::failed_before;
      l.age = between_;
    } else {
      l.ending = Ending::failed_between;
      l.age = std::max(last, l.entered + .1);
      l.until = std::max(last + between_, l.age + .1);
    }
  }

  int family_;
  Draws& draws_;
  double shape_, scale_, between_;
};

std::string name_of(int i) { return fmt::format("s{:03}", i); }

Samples drawn() {
  Samples out;
  Draws draws(20260);
  for (int i = 0; i < k_samples; ++i) {
    auto& lives = out[name_of(i)];
    int failures = 0;
    while (failures < 2) {
      lives.clear();
      Fleet fleet(i % k_family_count, draws);
      const auto n = i / k_family_count % 2 == 0 ? 4 + draws.index(5) : 9 + draws.index(52);
      for (std::uint64_t k = 0; k < n; ++k) lives.push_back(fleet.part());
      failures = static_cast<int>(std::count_if(
          lives.begin(), lives.end(), [](const Life& l) { return l.ending != Ending::running; }));
    }
  }
  return out;
}

/// One run of R for all tests of this file; nothing where it is not there.
const TheirOpinion* theirs() {
  static const std::optional<TheirOpinion> opinion =
      r_there() ? std::optional<TheirOpinion>(ask_r(drawn())) : std::nullopt;
  return opinion ? &*opinion : nullptr;
}
const char* const k_no_r =
    "R with packages survival and boot is not installed: no second opinion (tools/install.sh test)";

double apart(double got, double expected) { return std::abs(got / expected - 1.0); }

/// Worst figures of a family of samples.
struct Worst {
  int fitted{}, compared{}, refused{};
  double parameters{}, surface{}, short_of{};

  void add(const std::vector<Life>& lives, double shape, double scale, const TheirFit& r) {
    ++fitted;
    if (!std::isfinite(r.log_likelihood)) return;
    const double size = 1.0 + std::abs(r.log_likelihood);
    short_of =
        std::max(short_of, (r.log_likelihood - weibull_log_likelihood(lives, shape, scale)) / size);
    if (!r.converged) return;
    ++compared;
    parameters = std::max({parameters, apart(shape, r.shape), apart(scale, r.scale)});
    const double at_theirs = weibull_log_likelihood(lives, r.shape, r.scale);
    surface = std::max(surface, std::abs(at_theirs - r.log_likelihood) / size);
  }
  void rows(const std::string& law, int family) const {
    const auto row = [&](const std::string& what, int of, double got, double tolerance,
                         const char* why) {
      test::check({"life-estimate",
                   fmt::format("{}, {}: {}, worst of {}", law, k_families[family], what, of),
                   family >= right_entered ? k_optim : k_survreg, "0 (relative)", 0, got, tolerance,
                   why});
    };
    row("parameters", compared, parameters, 1e-5, "two searches on a flat top");
    row("ln likelihood at R's parameters", compared, surface, 1e-9, "the same sum: rounding");
    row("ln likelihood below R's", fitted, short_of, 1e-9, "never worse, up to rounding");
  }
};

constexpr double k_least_shape = .0305, k_most_shape = 98.4;  // beyond, we refuse

/// Where we refuse, the likelihood has no peak: R's answer, if it has one, is beyond our range of
/// shapes, or the likelihood is as high at an end of the range: R only stopped on the way there.
bool no_peak(const std::vector<Life>& lives, const TheirFit& r) {
  if (!r.converged || r.shape < k_least_shape || r.shape > k_most_shape) return true;
  const auto best = [&](double shape) {
    return weibull_log_likelihood(lives, shape, best_scale_at_shape(lives, shape));
  };
  return std::max(best(k_least_shape), best(k_most_shape)) > r.log_likelihood - 1e-9;
}

TEST(SurvivalPackage, WeibullFitsAreNoWorseThanThoseOfR) {
  const auto* r = theirs();
  if (r == nullptr) GTEST_SKIP() << k_no_r;
  ASSERT_EQ(r->weibull.size(), k_samples + 2U) << "survival.R failed";
  const auto samples = drawn();
  int compared = 0, refused = 0;
  for (int family = 0; family < k_family_count; ++family) {
    Worst worst;
    for (int i = family; i < k_samples; i += k_family_count) {
      const auto& lives = samples.at(name_of(i));
      const auto& their = r->weibull.at(name_of(i));
      const auto fit = fit_weibull(lives);
      if (fit) {
        worst.add(lives, fit->shape, fit->scale, their);
        continue;
      }
      ++worst.refused;
      EXPECT_TRUE(no_peak(lives, their)) << name_of(i) << ": we refuse (" << fit.error().what
                                         << "), R finds shape " << their.shape;
    }
    worst.rows("Weibull", family);
    refused += worst.refused;
    compared += worst.compared;
  }
  EXPECT_GE(compared, 80);
  fmt::print("{} samples compared, {} refused where there is no peak\n", compared, refused);
}

/// What life-estimate says of a rate that does not change with age, in hours.
double constant_rate(const std::vector<Life>& lives) {
  LifeEstimateInput in;
  for (const Life& l : lives) {
    PartLife p;
    p.ending = l.ending;
    p.age = quantity::hours(l.age);
    if (l.ending == Ending::failed_between) p.until = quantity::hours(l.until);
    if (l.entered > 0) p.entered = quantity::hours(l.entered);
    in.parts.push_back(p);
  }
  const auto answer = life_estimate(in, {});
  return answer ? answer->constant_rate_mean.si / 3600 : 0.0;
}

TEST(SurvivalPackage, ConstantRatesAreNoWorseThanThoseOfR) {
  const auto* r = theirs();
  if (r == nullptr) GTEST_SKIP() << k_no_r;
  ASSERT_EQ(r->exponential.size(), k_samples + 2U) << "survival.R failed";
  const auto samples = drawn();
  int compared = 0;
  for (int family = 0; family < k_family_count; ++family) {
    Worst worst;
    for (int i = family; i < k_samples; i += k_family_count) {
      const auto& lives = samples.at(name_of(i));
      const double mean = constant_rate(lives);
      if (mean > 0) worst.add(lives, 1, mean, r->exponential.at(name_of(i)));
    }
    worst.rows("constant rate", family);
    compared += worst.compared;
  }
  EXPECT_GE(compared, 80);
}

TEST(SurvivalPackage, PublishedRecords) {
  const auto* r = theirs();
  if (r == nullptr) GTEST_SKIP() << k_no_r;
  ASSERT_EQ(r->records.size(), 2U) << "survival.R failed";
  for (const auto& [name, lives] : r->records) {
    const auto fit = fit_weibull(lives);
    ASSERT_TRUE(fit) << name;
    const auto& w = r->weibull.at(name);
    const auto& e = r->exponential.at(name);
    const auto row = [&, id = name](const char* what, double expected, double got,
                                    double relative) {
      test::check({"life-estimate", fmt::format("{} {}", id, what),
                   "R package survival, survreg, on the record of package boot",
                   fmt::format("{:.7g}", expected), expected, got, std::abs(expected) * relative,
                   "two searches on a flat top"});
    };
    EXPECT_TRUE(w.converged && e.converged) << name;
    row("shape", w.shape, fit->shape, 1e-5);
    row("scale", w.scale, fit->scale, 1e-5);
    row("ln likelihood", w.log_likelihood, fit->log_likelihood, 1e-9);
    row("mean at a constant rate", e.scale, constant_rate(lives), 1e-5);
    row("ln likelihood at a constant rate", e.log_likelihood,
        weibull_log_likelihood(lives, 1, constant_rate(lives)), 1e-9);
  }
}

TEST(SurvivalPackage, SurvivalCurvesAreThoseOfR) {
  const auto* r = theirs();
  if (r == nullptr) GTEST_SKIP() << k_no_r;
  auto samples = drawn();
  for (const auto& [name, lives] : r->records) samples[name] = lives;
  ASSERT_GE(r->curves.size(), 30U);
  int steps = 0;
  double worst = 0;
  for (const auto& [name, their] : r->curves) {
    const auto ours = survival_curve(samples.at(name));
    ASSERT_TRUE(ours) << name;
    ASSERT_EQ(ours->size(), their.size()) << name;
    for (std::size_t i = 0; i < their.size(); ++i, ++steps) {
      const auto& a = (*ours)[i];
      const auto& b = their[i];
      EXPECT_EQ(a.at_risk, b.at_risk) << name << " at " << b.age;
      EXPECT_EQ(a.failed, b.failed) << name << " at " << b.age;
      worst =
          std::max({worst, std::abs(a.age - b.age), std::abs(a.survival - b.survival),
                    std::abs(a.deviation - b.deviation), std::abs(a.hazard_sum - b.hazard_sum)});
    }
  }
  test::check(
      {"life-estimate",
       fmt::format("survival curves: worst of {} steps of {} records", steps, r->curves.size()),
       "R package survival, survfit, on the same lives", "0 (difference)", 0, worst, 1e-11,
       "the same few products: rounding"});
}

}  // namespace
