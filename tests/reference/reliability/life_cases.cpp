// Source:    statistics notes, sections 2.3, 2.4 (R survival 3.5-3 and a separate optimiser agree
// to
//            1e-6; W1 also NIST/SEMATECH e-Handbook 8.4.1.3, W2
//            DOI 10.1080/00224065.1997.11979730).
// Tolerance: a unit of the last printed digit where a figure has seven; limits by likelihood ratio
//            come from two root finders, five digits.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>

#include "reliability/life_estimate.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::reliability;

const char* const k_source = "statistics notes, 2.3";

std::vector<Life> lives(const std::vector<double>& failed, const std::vector<double>& running) {
  std::vector<Life> out;
  for (const double t : failed) out.push_back({Ending::failed, t, 0, 0});
  for (const double t : running) out.push_back({Ending::running, t, 0, 0});
  return out;
}

std::vector<Life> w1() {
  return lives({54, 187, 216, 240, 244, 335, 361, 373, 375, 386}, std::vector<double>(10, 500));
}

struct Row {
  const char* id;
  std::vector<Life> data;
  double shape, scale, log_likelihood, se_shape, se_scale;
  Limits wald_shape, wald_scale, ratio_shape, ratio_scale;
  double b10;
  Limits ratio_b10;
};

std::vector<Row> rows() {
  using enum Ending;
  std::vector<Life> w6 = lives({137, 221}, {250, 250, 180});
  w6.push_back({failed_before, 50, 0, 0});
  for (const double from : {50., 100., 100., 150., 200.}) {
    w6.push_back({failed_between, from, from + 50, 0});
  }
  std::vector<Life> w7 = lives({}, std::vector<double>(5, 500));
  for (const double from : {100., 200., 200., 300., 300., 300., 400.}) {
    w7.push_back({failed_between, from, from + 100, 0});
  }
  return {
      {"W1",
       w1(),
       1.720797,
       606.5276,
       -75.134618,
       .2918128,
       .2059439,
       {.971266, 3.048746},
       {405.0893, 908.1348},
       {.905645, 2.885738},
       {437.5567, 1118.878},
       164.0224,
       {59.85455, 271.9495}},
      {"W2",
       lives({45, 46, 34, 45, 32, 24, 58, 79, 56, 63, 34, 50}, {23, 24, 57, 78, 76, 85, 51, 59}),
       2.753953,
       67.91883,
       -59.182008,
       .2327337,
       .1054953,
       {1.745232, 4.345701},
       {55.2322, 83.5195},
       {1.651176, 4.166823},
       {55.7535, 88.6661},
       29.99926,
       {17.23577, 41.43450}},
      {"W3",
       lives({1500, 2250, 4000, 4300, 7000}, {1750, 5000}),
       2.257043,
       4900.106,
       -45.852276,
       .3508004,
       .1990868,
       {1.134849, 4.488919},
       {3316.977, 7238.831},
       {.992385, 4.117455},
       {3161.075, 8561.140},
       1807.988,
       {459.194, 3277.207}},
      {"W4",
       lives({30, 49, 82, 90, 96}, {10, 45, 100}),
       3.017019,
       87.95629,
       -25.131040,
       .3807974,
       .1482570,
       {1.430351, 6.363754},
       {65.7764, 117.6152},
       {1.274915, 5.878777},
       {63.5890, 136.9846},
       41.71868,
       {14.29786, 64.88131}},
      {"W5",
       lives({3, 5, 7, 18, 43, 85, 91, 98, 100, 130, 230, 487}, {}),
       .7939438,
       94.96490,
       -67.618510,
       .2274999,
       .3833993,
       {.508325, 1.240047},
       {44.7933, 201.3322},
       {.481187, 1.188142},
       {40.6282, 210.4444},
       5.579453,
       {.566816, 20.69180}},
      {"W6 mixed",
       w6,
       1.924727,
       207.9667,
       -26.290432,
       .3331537,
       .1845906,
       {1.001817, 3.697857},
       {144.8338, 298.6191},
       {.905037, 3.437357},
       {142.2409, 349.5754},
       64.59842,
       {16.6990, 116.3526}},
      {"W7 inspections",
       w7,
       2.386732,
       516.1943,
       -17.925306,
       .3476615,
       .1661366,
       {1.207463, 4.717737},
       {372.7327, 714.8731},
       {1.094848, 4.399584},
       {385.2182, 872.2732},
       201.0629,
       {71.7922, 315.7967}},
  };
}

void check(const std::string& id, double expected, double got, double relative,
           const char* why = "printed digits") {
  test::check({"life-estimate", id, k_source, fmt::format("{}", expected), expected, got,
               std::abs(expected) * relative, why});
}

TEST(LifeCases, WeibullFitsAndTheirLimits) {
  for (const Row& r : rows()) {
    const auto fit = fit_weibull(r.data);
    ASSERT_TRUE(fit) << r.id;
    const std::string id = r.id;
    check(id + " shape", r.shape, fit->shape, 2e-6);
    check(id + " scale", r.scale, fit->scale, 2e-6);
    check(id + " ln likelihood", r.log_likelihood, fit->log_likelihood, 2e-7);
    check(id + " se of ln shape", r.se_shape, std::sqrt(fit->var_ln_shape), 1e-5);
    check(id + " se of ln scale", r.se_scale, std::sqrt(fit->var_ln_scale), 1e-5);
    const auto both = [&](const char* what, const Limits& expected, const Limits& got, double tol) {
      check(fmt::format("{} {} low", id, what), expected.low, got.low, tol);
      check(fmt::format("{} {} high", id, what), expected.high, got.high, tol);
    };
    both("shape, curvature", r.wald_shape, wald_shape(*fit, .95), 1e-5);
    both("scale, curvature", r.wald_scale, wald_scale(*fit, .95), 1e-5);
    both("shape, likelihood", r.ratio_shape, ratio_shape(r.data, *fit, .95), 2e-5);
    both("scale, likelihood", r.ratio_scale, ratio_life(r.data, *fit, -std::expm1(-1.), .95), 2e-5);
    check(id + " life of 10 %", r.b10, fit->life_at(.1), 2e-6);
    both("life of 10 %", r.ratio_b10, ratio_life(r.data, *fit, .1, .95), 3e-5);
  }
}

TEST(LifeCases, W1Extras) {
  const auto fit = *fit_weibull(w1());
  check("W1 mean", 540.7370, fit.mean(), 2e-6);
  check("W1 R(300)", .7424614, fit.survival(300), 2e-6);
  const auto r = wald_survival(fit, 300, .95);
  check("W1 R(300) low", .5401765, r.low, 1e-5);
  check("W1 R(300) high", .8658993, r.high, 1e-5);
  const auto b10 = wald_life(fit, .1, .95);
  check("W1 life of 10 %, curvature low", 83.87513, b10.low, 1e-5);
  check("W1 life of 10 %, curvature high", 320.7549, b10.high, 1e-5);
  check("W1 covariance", -.02712784, fit.cov_ln, 1e-5);
  SurvivalNextInput in;
  in.shape = fit.shape;
  in.scale = quantity::hours(fit.scale);
  in.age = quantity::hours(300);
  in.next = quantity::hours(100);
  test::check({"survival-next", "W1 R(400 | 300)", k_source, ".8263382", .8263382,
               survival_next(in, {})->survival.si, 1e-6, "printed digits"});
}

std::vector<Life> truncated() {
  const double rows[][3] = {{0, 310, 1},   {0, 500, 0},  {200, 420, 1}, {150, 500, 0},
                            {300, 610, 1}, {0, 275, 1},  {250, 700, 0}, {400, 700, 0},
                            {100, 390, 1}, {350, 640, 1}};
  std::vector<Life> out;
  for (const auto& r : rows) {
    out.push_back({r[2] > 0 ? Ending::failed : Ending::running, r[1], 0, r[0]});
  }
  return out;
}

TEST(LifeCases, PartsThatCameWithAnAge) {
  auto data = truncated();
  const auto fit = *fit_weibull(data);
  check("left truncation, shape", 2.343978, fit.shape, 2e-6);
  check("left truncation, scale", 617.7420, fit.scale, 2e-6);
  const auto curve = *survival_curve(data);
  const double expected[] = {.857143, .734694, .629738, .539775, .404831, .269888};
  for (std::size_t i = 0; i < 6; ++i) {
    check(fmt::format("delayed entry, step {}", i + 1), expected[i], curve[i].survival, 2e-6);
  }
  for (auto& l : data) l.entered = 0;
  check("age ignored (wrong), shape", 2.875493, fit_weibull(data)->shape, 2e-6);
  check("age ignored (wrong), scale", 647.0991, fit_weibull(data)->scale, 2e-6);
}

TEST(LifeCases, SurvivalCurveOfTwentyUnits) {
  auto running = std::vector<double>(10, 200);
  running.insert(running.end(), {50, 100, 125, 150});
  const auto curve = *survival_curve(lives({10, 32, 56, 98, 122, 181}, running));
  const double s[] = {.95, .90, .847059, .794118, .737395, .670359};
  const double se[] = {.048734, .067082, .081388, .091921, .101357, .112141};
  const double na[] = {.05, .102632, .161455, .223955, .295384, .386293};
  for (std::size_t i = 0; i < 6; ++i) {
    check(fmt::format("curve {} survival", i + 1), s[i], curve[i].survival, 2e-6);
    check(fmt::format("curve {} deviation", i + 1), se[i], curve[i].deviation, 2e-5);
    check(fmt::format("curve {} hazard", i + 1), na[i], curve[i].hazard_sum, 2e-5);
  }
}

ZeroFailureInput bound(const std::vector<double>& ages, double shape, int failures, double conf) {
  ZeroFailureInput in;
  for (const double t : ages) {
    PartLife p;
    p.age = quantity::hours(t);
    in.parts.push_back(p);
  }
  in.shape = shape;
  in.failures = failures;
  in.confidence = {conf};
  return in;
}

TEST(LifeCases, BoundsWithAKnownShape) {
  const std::vector<double> ages{200, 350, 410, 500, 620};
  const auto low = [](const ZeroFailureInput& in) {
    return zero_failure_bound(in, {})->scale_low.si / 3600;
  };
  const auto row = [&](const char* id, double expected, double got) {
    test::check({"zero-failure-bound", id, "statistics notes, 2.4", fmt::format("{}", expected),
                 expected, got, expected * 1e-6, "printed digits"});
  };
  row("no failure, 95 %", 567.5605, low(bound(ages, 2, 0, .95)));
  row("no failure, 90 %", 647.3748, low(bound(ages, 2, 0, .90)));
  row("one failure, 95 %", 451.0218, low(bound(ages, 2, 1, .95)));
  row("one failure, 90 %", 498.0862, low(bound(ages, 2, 1, .90)));
  row("two failures, 95 %", 391.5060, low(bound(ages, 2, 2, .95)));
  row("one failure, estimate", 982.3441,
      zero_failure_bound(bound(ages, 2, 1, .95), {})->scale->si / 3600);
  row("two failures, estimate", 694.6222,
      zero_failure_bound(bound(ages, 2, 2, .95), {})->scale->si / 3600);
  auto in = bound({800}, 1, 2, .90);
  row("constant rate, 2 in 800 h, low", 127.0690, zero_failure_bound(in, {})->mean_low->si / 3600);
  row("constant rate, 2 in 800 h, high", 2251.229,
      zero_failure_bound(in, {})->mean_high->si / 3600);
  in.ended = TestEnd::at_a_failure;
  row("the same, ended at a failure", 168.6389, zero_failure_bound(in, {})->mean_low->si / 3600);
  row("constant rate, none in 800 h", 267.0466, low(bound({800}, 1, 0, .95)));
}

TEST(LifeCases, ARecordEndedAtItsLastFailure) {
  const auto row = [](const char* id, double expected, double got) {
    test::check({"zero-failure-bound", id, "statistics notes, 2.4 (R boot, aircondit)",
                 fmt::format("{}", expected), expected, got, expected * 1e-6, "printed digits"});
  };
  auto in = bound({3, 5, 7, 18, 43, 85, 91, 98, 100, 130, 230, 487}, 1, 12, .90);
  in.ended = TestEnd::at_a_failure;
  auto got = *zero_failure_bound(in, {});
  row("aircondit, mean", 108.0833, got.scale->si / 3600);
  row("aircondit, 90 %, low", 71.23433, got.mean_low->si / 3600);
  row("aircondit, 90 %, high", 187.3137, got.mean_high->si / 3600);
  in.confidence = {.95};
  got = *zero_failure_bound(in, {});
  row("aircondit, 95 %, low", 65.89765, got.mean_low->si / 3600);
  row("aircondit, 95 %, high", 209.1741, got.mean_high->si / 3600);
}

// How many parts without a failure show a life or a share? The bound answers it the other way
// round: it reaches the aim with the printed number of parts, and not with one less.
TEST(LifeCases, PlansWithoutAFailure) {
  const auto enough = [](int n, double age, double shape, double conf, double scale) {
    const auto in = bound(std::vector<double>(static_cast<std::size_t>(n), age), shape, 0, conf);
    return zero_failure_bound(in, {})->scale_low.si / 3600 >= scale;
  };
  const auto row = [&](const char* id, int expected, double age, double shape, double conf,
                       double scale) {
    int n = 1;
    while (n < 1000 && !enough(n, age, shape, conf, scale)) ++n;
    test::check({"zero-failure-bound", id, "statistics notes, 2.1 and 2.4",
                 fmt::format("{} parts", expected), double(expected), double(n), 0, "a count"});
  };
  row("scale of 1000 h, shape 2, 500 h each, 90 %", 10, 500, 2, .90, 1000);
  // A share R that outlives 1 h at a constant rate is a mean of -1 / ln R hours.
  row("share of .90 outlives, 90 %", 22, 1, 1, .90, -1 / std::log(.90));
  row("share of .95 outlives, 95 %", 59, 1, 1, .95, -1 / std::log(.95));
}

// Early failures: one that has run for a while is the better one.
TEST(LifeCases, EarlyFailuresRunOut) {
  SurvivalNextInput in;
  in.shape = .6;
  in.scale = quantity::hours(2000);
  in.next = quantity::hours(50);
  const auto row = [&](const char* id, double expected) {
    test::check({"survival-next", id, "statistics notes, 3.1 (burn-in)",
                 fmt::format("{}", expected), expected, survival_next(in, {})->survival.si, 5e-8,
                 "half a unit of the last printed digit"});
  };
  row("shape .6, R(50)", .8964290);
  in.age = quantity::hours(25);
  row("shape .6, R(50 | 25)", .9349006);
}

}  // namespace
