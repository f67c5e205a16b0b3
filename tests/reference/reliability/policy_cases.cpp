// Source:    statistics notes, 3.1 (renewal, inspection, delay time) and 2.4 (power-law process:
//            NIST e-Handbook listing, MIL-HDBK-189 (1981) App. C, and others named there).
// Tolerance: as stated there: renewal age 1e-3 h, cost 1e-8; otherwise the printed digits.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>

#include "reliability/policy.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::reliability;

void row(const char* calculation, const std::string& id, double expected, double got, double tol,
         const char* source = "statistics notes, 3.1") {
  test::check({calculation, id, source, fmt::format("{}", expected), expected, got, tol,
               "stated with the case, or the printed digits"});
}

RenewalAgeInput renewal(double shape, double scale, double planned, double failure) {
  RenewalAgeInput in;
  in.shape = shape;
  in.scale = quantity::hours(scale);
  in.planned_cost = planned;
  in.failure_cost = failure;
  return in;
}

TEST(PolicyCases, RenewalByAge) {
  const double rows[][8] = {{2.5, 1000, 1, 5, 493.04696, .0034620427, .0056353025, .8430787},
                            {2, 1000, 100, 1000, 336.4512, .60561214, 1.12837917, .8929726},
                            {3, 500, 150, 1200, 208.07482, 1.0910373, 2.6876317, .9304667},
                            {1.5, 800, 100, 300, 925.6614, .40337814, .41539956, .2880450},
                            {4, 600, 80, 2000, 206.04821, .51839734, 3.6775422, .9861881}};
  for (const auto& r : rows) {
    const auto got = renewal_age(renewal(r[0], r[1], r[2], r[3]), {});
    ASSERT_TRUE(got);
    const auto id = fmt::format("shape {}, scale {}", r[0], r[1]);
    row("renewal-age", id + " age", r[4], got->renew_at->si / 3600, 1e-3);
    row("renewal-age", id + " cost", r[5], got->cost_per_hour, std::max(1e-8, r[5] * 6e-8));
    row("renewal-age", id + " waiting", r[6], *got->never_renewed_per_hour, r[6] * 1e-7);
    row("renewal-age", id + " survives", r[7], got->survives_to_it->si, 5e-6);
  }
  row("renewal-age", "shape 1.5, scale 800 saving", .029,
      renewal_age(renewal(1.5, 800, 100, 300), {})->saving->si, 5e-4);
}

TEST(PolicyCases, RenewalInBlocks) {
  auto in = renewal(2.5, 1000, 1, 5);
  in.rule = RenewalRule::minimal_repair;
  auto got = renewal_age(in, {});
  row("renewal-age", "minimal repair, age", 446.65839, got->renew_at->si / 3600, 1e-4);
  row("renewal-age", "minimal repair, cost", .0037314124, got->cost_per_hour, 1e-9);
  const auto m = renewals(2.5, 1000, 1000, 4000);
  row("renewal-age", "renewals to 500 h", .164771, m[2000], 2e-5);
  row("renewal-age", "renewals to 1000 h", .702507, m[4000], 2e-5);
  const auto m2 = renewals(2, 1000, 1000, 4000);
  row("renewal-age", "renewals to 500 h, shape 2", .230794, m2[2000], 2e-5);
  row("renewal-age", "renewals to 1000 h, shape 2", .753691, m2[4000], 2e-5);
  in.rule = RenewalRule::all_at_a_time;
  got = renewal_age(in, {});
  row("renewal-age", "block, age", 478.5, got->renew_at->si / 3600, 1);
  row("renewal-age", "block, cost", .00364352, got->cost_per_hour, 1e-6);
  in = renewal(2, 1000, 100, 1000);
  in.rule = RenewalRule::all_at_a_time;
  got = renewal_age(in, {});
  row("renewal-age", "block, age, shape 2", 334.1, got->renew_at->si / 3600, 1);
  row("renewal-age", "block, cost, shape 2", .621430, got->cost_per_hour, 2e-6);
}

TEST(PolicyCases, Inspection) {
  InspectionIntervalInput in;
  in.warning = quantity::hours(100);
  auto got = inspection_interval(in, {});
  row("inspection-interval", "detection .9, miss .01", 2, double(*got->inspections_in_warning), 0);
  row("inspection-interval", "warning 100, every 50, detection .9: missed", .01, got->missed.si,
      1e-12);
  in.detection = {.8};
  in.accepted_miss = {.001};
  got = inspection_interval(in, {});
  row("inspection-interval", "detection .8, miss .001", 5, double(*got->inspections_in_warning), 0);
  row("inspection-interval", "b(50), perfect", .21306132, missed_share(50, 100, 1), 5e-9);
  row("inspection-interval", "b(50), .9", .24602425, missed_share(50, 100, .9), 5e-9);
  row("inspection-interval", "b(50), .5", .43526660, missed_share(50, 100, .5), 5e-9);
  const double rows[][8] = {{.02, 100, 30, 50, 800, 21.46991, 3.89823746, .10006220},
                            {.01, 40, 20, 40, 1000, 14.54654, 3.32679970, .16165651},
                            {.005, 60, 50, 100, 3000, 23.07603, 5.12952408, .16984649}};
  for (const auto& r : rows) {
    InspectionIntervalInput d;
    d.rule = InspectionRule::delay_time;
    d.detection = {1};
    d.defects_per_hour = r[0];
    d.mean_delay = quantity::hours(r[1]);
    d.inspection_cost = r[2];
    d.repair_cost = r[3];
    d.failure_cost = r[4];
    const auto best = inspection_interval(d, {});
    ASSERT_TRUE(best);
    const auto id = fmt::format("delay {}, ", r[1]);
    row("inspection-interval", id + "interval", r[5], best->interval.si / 3600, 2e-4);
    row("inspection-interval", id + "cost", r[6], *best->cost_per_hour, 1e-7);
    row("inspection-interval", id + "missed", r[7], best->missed.si, 2e-6);
  }
}

FailureTrendInput trend(const std::vector<double>& times, double until) {
  FailureTrendInput in;
  for (const double t : times) in.times.push_back(quantity::hours(t));
  if (until > 0) in.until = quantity::hours(until);
  return in;
}

const char* const k_process = "statistics notes, 2.4";

TEST(PolicyCases, PowerLawProcess) {
  const auto one =
      *failure_trend(trend({5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478}, 1500), {});
  const auto check = [&](const char* id, double expected, double got, double relative = 2e-6) {
    row("failure-trend", id, expected, got, std::abs(expected) * relative, k_process);
  };
  check("NHPP-1 shape", .5372289, one.shape);
  check("NHPP-1 shape unbiased", .483506, *one.shape_unbiased);
  check("NHPP-1 factor", .1966582, one.rate_factor);
  check("NHPP-1 between failures", 279.2106, one.between_failures.si / 3600);
  check("NHPP-1 shape low", .2914685, *one.shape_low);
  check("NHPP-1 shape high", .8437296, *one.shape_high);
  check("NHPP-1 misfit", .0537687, *one.misfit);
  check("NHPP-1 trend statistic", 37.22808, *one.trend_statistic);
  check("NHPP-1 upper tail", .0109864, one.fewer_p->si, 1e-5);
  check("NHPP-1 Laplace", -1.326949, *one.laplace);
  const auto two =
      *failure_trend(trend({2.6,   16.5, 16.5,  17,    21.4, 29.1,  33.3,  56.5,  63.1,
                            70.6,  73,   77.7,  93.9,  95.5, 98.1,  101.1, 132,   142.2,
                            147.7, 149,  167.2, 190.7, 193,  198.7, 251.9, 282.5, 286.1},
                           300),
                     {});
  check("NHPP-2 shape", .7163393, two.shape);
  check("NHPP-2 factor", .4538419, two.rate_factor);
  check("NHPP-2 shape unbiased", .6898082, *two.shape_unbiased);
  check("NHPP-2 rate", .06447053, two.rate_now);
  check("NHPP-2 between failures", 15.510962, two.between_failures.si / 3600);
  check("NHPP-2 misfit", .0910611, *two.misfit);
  check("NHPP-2 shape low", .5056323, *two.shape_low);
  check("NHPP-2 shape high", .9571515, *two.shape_high);
  check("NHPP-2 Laplace", -2.318, *two.laplace, 3e-4);
  const auto three = *failure_trend(
      trend({.2,    4.2,   4.5,   5,     5.4,   6.1,   7.9,   14.8,  19.2,  48.6,  85.8, 108.9,
             127.2, 129.8, 150.1, 159.7, 227.4, 244.7, 262.7, 315.3, 329.6, 404.3, 486.2},
            500),
      {});
  check("NHPP-3 shape", .4127384, three.shape);
  check("NHPP-3 factor", 1.7691282, three.rate_factor);
  check("NHPP-3 shape unbiased", .3947932, *three.shape_unbiased);
  check("NHPP-3 between failures", 52.67048, three.between_failures.si / 3600);
  check("NHPP-3 misfit", .0519362, *three.misfit);
}

TEST(PolicyCases, EndedAtAFailureAndGrouped) {
  const auto check = [&](const char* id, double expected, double got, double relative = 2e-6) {
    row("failure-trend", id, expected, got, std::abs(expected) * relative, k_process);
  };
  const auto four = *failure_trend(
      trend({2.7,   10.3,  12.5,  30.6,  57,    61.3,  80,    109.5, 125,   128.6, 143.8,
             167.9, 229.2, 296.7, 320.6, 328.2, 366.2, 396.7, 421.1, 438.2, 501.2, 620},
            0),
      {});
  check("NHPP-4 shape", .6142104, four.shape);
  check("NHPP-4 factor", .4239422, four.rate_factor);
  check("NHPP-4 between failures", 45.88300, four.between_failures.si / 3600);
  check("NHPP-4 shape unbiased", .5583731, *four.shape_unbiased);
  check("NHPP-4 shape low", .3928720, *four.shape_low);
  check("NHPP-4 shape high", .8113725, *four.shape_high);
  FailureTrendInput in;
  const std::int64_t counts[] = {13, 16, 5, 8, 7};
  for (int i = 0; i < 5; ++i) in.grouped.push_back({quantity::hours(20. * (i + 1)), counts[i]});
  const auto five = *failure_trend(in, {});
  check("NHPP-5 shape", .7528509, five.shape);
  check("NHPP-5 factor", 1.5293057, five.rate_factor);
  check("NHPP-5 rate", .3688969, five.rate_now);
  check("NHPP-5 between failures", 2.7107843, five.between_failures.si / 3600);
}

}  // namespace
