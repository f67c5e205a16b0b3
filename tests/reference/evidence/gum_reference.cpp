// Uncertainty against the worked examples of the GUM.
// Sources:   JCGM 100:2008, examples H.1 and H.2, read through the pages GUM_H1 and GUM_H2 of the
//            open metrology library GTC and the manual page of the R package `propagate`; data of
//            H.2 from test_GUMH2.csv of a national-laboratory library. G.4.1 from memory,
//            unconfirmed; its figures computed with R 4.2.2.
// Tolerance: half a unit of the last digit given, unless said otherwise beside the case.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "describe/type.hpp"
#include "evidence/meter_uncertainty.hpp"
#include "evidence/uncertainty.hpp"
#include "statistics/summary.hpp"
#include "support/reference_case.hpp"

namespace wm::evidence {
namespace {

using test::check;
const std::string k_calc = "meter-uncertainty";
const std::string k_h1 = "JCGM 100:2008, H.1 (read through GTC page H1)";
const std::string k_h1_r = "JCGM 100:2008, H.1 inputs; R 4.2.2, computed";
const std::string k_digit = "half a unit of the last digit given";

// l = l_s + d - l_s (da theta + a_s dtheta), in nm.
// Order: l_s, d1, d2, d3 (d = 215 + these), da, theta, a_s, dtheta.
double end_gauge(std::span<const double> x) {
  return x[0] + 215.0 + x[1] + x[2] + x[3] - x[0] * (x[4] * x[5] + x[6] * x[7]);
}
const std::vector<double> k_gauge_x{50'000'623.0, 0, 0, 0, 0, -0.1, 11.5e-6, 0};

std::vector<Component> gauge_inputs() {
  Component theta_mean{"temperature of the bed", 0.2, 1, k_no_end, Distribution::normal, {}};
  const auto cycle = type_b("its cycle", 0.5, Distribution::arcsine);
  Component theta = theta_mean;
  theta.u = std::hypot(theta_mean.u, cycle.u);
  return {{"standard", 25.0, 1, 18, Distribution::normal, {}},
          {"repeated comparison", 5.8, 1, 24, Distribution::normal, {}},
          {"comparator, random", 3.9, 1, 5, Distribution::normal, {}},
          {"comparator, systematic", 6.7, 1, 8, Distribution::normal, {}},
          type_b("difference of expansion", 1e-6, Distribution::rectangular, 50),
          theta,
          type_b("expansion", 2e-6, Distribution::rectangular),
          type_b("difference of temperature", 0.05, Distribution::rectangular, 2)};
}

struct Gauge {
  std::vector<Component> components = gauge_inputs();
  std::vector<double> u;
  Combined combined;
};
Gauge gauge() {
  Gauge g;
  for (const auto& c : g.components) g.u.push_back(c.u);
  const auto s = sensitivities(end_gauge, k_gauge_x, g.u);
  EXPECT_TRUE(s);
  for (std::size_t i = 0; i < g.components.size(); ++i) g.components[i].sensitivity = (*s)[i];
  auto combined = combine(g.components);
  EXPECT_TRUE(combined);
  g.combined = *combined;
  return g;
}

TEST(GumH1, ValueAndComponents) {
  const auto g = gauge();
  check({k_calc, "H.1 l", k_h1, "50 000 838 nm", 50'000'838, end_gauge(k_gauge_x), 1e-7,
         "exact, but for the rounding of 5e7"});
  const std::vector<Component> d{g.components.begin() + 1, g.components.begin() + 4};
  const auto ud = combine(d);
  check({k_calc, "H.1 u(d)", k_h1_r, "9.681942 nm", 9.681942, ud->u, 1e-6, "six decimals given"});
  check({k_calc, "H.1 nu(d)", k_h1_r, "25.447", 25.447, *ud->dof, 5e-4, k_digit});
  check({k_calc, "H.1 u(theta)", k_h1_r, "0.406202 degC", 0.406202, g.u[5], 5e-7, k_digit});
  check({k_calc, "H.1 part of dtheta", k_h1, "16.599 nm", 16.599, g.combined.lines[7].contribution,
         5e-4, k_digit});
  check({k_calc, "H.1 part of dalpha", k_h1_r, "2.88679 nm", 2.88679,
         g.combined.lines[4].contribution, 5e-5, "as stated with the value"});
  EXPECT_NEAR(g.combined.lines[5].contribution, 0.0, 1e-6);  // vanish at first order
  EXPECT_NEAR(g.combined.lines[6].contribution, 0.0, 1e-6);
}

TEST(GumH1, CombinedAndExpanded) {
  const auto g = gauge();
  check({k_calc, "H.1 u_c", k_h1_r, "31.66388 nm", 31.66388, g.combined.u, 5e-6, k_digit});
  check({k_calc, "H.1 u_c as printed", k_h1, "32 nm", 32, g.combined.u, 0.5, k_digit});
  check({k_calc, "H.1 nu_eff", k_h1_r, "16.7519", 16.7519, *g.combined.dof, 5e-5, k_digit});
  const auto cut = coverage(CoverageRule::t_truncated, 0.99, g.combined.dof);
  const auto exact = coverage(CoverageRule::t_as_computed, 0.99, g.combined.dof);
  ASSERT_TRUE(cut && exact);
  check({k_calc, "H.1 k_99", k_h1, "2.92 (nu 16)", 2.920782, cut->k, 5e-7, k_digit});
  check({k_calc, "H.1 U_99, nu cut to 16", k_h1, "93 nm (92.48 unrounded)", 92.48,
         cut->k * g.combined.u, 0.005, k_digit});
  check({k_calc, "H.1 U_99, nu 16.7519", k_h1_r, "91.94 nm", 91.94, exact->k * g.combined.u, 0.005,
         k_digit});
  EXPECT_NE(cut->method.find("cut to 16"), std::string::npos) << cut->method;
  EXPECT_NE(exact->method.find("not cut"), std::string::npos) << exact->method;
}

TEST(GumH1, SecondOrder) {
  const auto g = gauge();
  const auto extra = second_order_variance(end_gauge, k_gauge_x, g.u);
  ASSERT_TRUE(extra);
  check({k_calc, "H.1 u_c with second order", k_h1_r, "33.807 nm (document 34)", 33.807,
         std::sqrt(g.combined.u * g.combined.u + *extra), 5e-4, k_digit});
}

// ---------------------------------------------------------------- H.2

const std::vector<double> k_volt{5.007, 4.994, 5.005, 4.990, 4.999};
const std::vector<double> k_milliamp{19.663, 19.639, 19.640, 19.685, 19.678};
const std::vector<double> k_phase{1.0456, 1.0438, 1.0468, 1.0428, 1.0433};

struct Circuit {
  std::vector<double> x;
  std::vector<Component> inputs;
  std::vector<Correlation> r;
};
Circuit circuit() {
  Circuit c;
  const std::array runs{&k_volt, &k_milliamp, &k_phase};
  for (const auto* run : runs) {
    c.x.push_back(statistics::mean(*run));
    c.inputs.push_back(*type_a("mean", *run));
  }
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = i + 1; j < 3; ++j)
      c.r.push_back({i, j, *statistics::correlation(*runs[i], *runs[j])});
  return c;
}
std::vector<double> u_of(const Circuit& c) {
  std::vector<double> u;
  for (const auto& in : c.inputs) u.push_back(in.u);
  return u;
}

double resistance(std::span<const double> x) { return 1000.0 * x[0] / x[1] * std::cos(x[2]); }
double reactance(std::span<const double> x) { return 1000.0 * x[0] / x[1] * std::sin(x[2]); }
double impedance(std::span<const double> x) { return 1000.0 * x[0] / x[1]; }

struct Row {
  const char* name;
  Model model;
  double value, u, u_ignoring, tolerance_value;
};

TEST(GumH2, MeansAndCorrelations) {
  const auto c = circuit();
  const std::string source = "JCGM 100:2008, H.2 (data of a laboratory's test file); R 4.2.2";
  check({k_calc, "H.2 mean V", source, "4.9990 V", 4.9990, c.x[0], 1e-12, "exact"});
  check({k_calc, "H.2 mean I", source, "19.6610 mA", 19.6610, c.x[1], 1e-12, "exact"});
  check({k_calc, "H.2 mean phi", source, "1.044460 rad", 1.044460, c.x[2], 1e-12, "exact"});
  check({k_calc, "H.2 u(V)", source, "0.003209361 V", 0.003209361, c.inputs[0].u, 5e-10, k_digit});
  check({k_calc, "H.2 u(I)", source, "0.009471008 mA", 0.009471008, c.inputs[1].u, 5e-10, k_digit});
  check({k_calc, "H.2 u(phi)", source, "0.0007520638 rad", 0.0007520638, c.inputs[2].u, 5e-11,
         k_digit});
  check({k_calc, "H.2 r(V,I)", source, "-0.355311", -0.355311, c.r[0].r, 5e-7, k_digit});
  check({k_calc, "H.2 r(V,phi)", source, "0.857624", 0.857624, c.r[1].r, 5e-7, k_digit});
  check({k_calc, "H.2 r(I,phi)", source, "-0.645111", -0.645111, c.r[2].r, 5e-7, k_digit});
}

TEST(GumH2, CorrelatedResultsAndTheWrongOnes) {
  auto c = circuit();
  const std::string source = "JCGM 100:2008, H.2; R 4.2.2, computed";
  const std::vector<Row> rows{{"R", resistance, 127.73217, 0.0710714, 0.194544, 5e-6},
                              {"X", reactance, 219.84651, 0.295582, 0.200909, 5e-6},
                              {"Z", impedance, 254.25970, 0.236336, 0.204076, 5e-6}};
  for (const auto& row : rows) {
    const std::string name = row.name;
    const auto s = sensitivities(row.model, c.x, u_of(c));
    ASSERT_TRUE(s);
    for (std::size_t i = 0; i < 3; ++i) c.inputs[i].sensitivity = (*s)[i];
    const auto with = combine(c.inputs, c.r);
    const auto without = combine(c.inputs);
    ASSERT_TRUE(with && without);
    check({k_calc, "H.2 " + name, source, std::to_string(row.value) + " ohm", row.value,
           row.model(c.x), row.tolerance_value, k_digit});
    const double half = name == "R" ? 5e-8 : 5e-7;
    check({k_calc, "H.2 u(" + name + ")", source, std::to_string(row.u) + " ohm", row.u, with->u,
           half, k_digit});
    // The negative test: to forget the correlation is to be wrong, and by this much.
    check({k_calc, "H.2 u(" + name + ") ignoring correlation (wrong)", source,
           std::to_string(row.u_ignoring) + " ohm", row.u_ignoring, without->u, 5e-7, k_digit});
    EXPECT_GT(std::abs(without->u - with->u), 0.03);
    EXPECT_FALSE(with->dof.has_value());
    const auto dof = effective_dof(c.inputs, c.r);
    ASSERT_FALSE(dof);
    EXPECT_EQ(dof.error().kind, Kind::not_applicable);
  }
}

TEST(GumH2, SecondApproachOneResultForEachSet) {
  const std::string source =
      "JCGM 100:2008, H.2, approach 2; the sum evaluated with 40-digit arithmetic";
  const std::vector<Row> rows{{"R", resistance, 127.731630, 0.0712735, 0, 5e-7},
                              {"X", reactance, 219.846895, 0.295489, 0, 5e-7},
                              {"Z", impedance, 254.260050, 0.236248, 0, 5e-7}};
  for (const auto& row : rows) {
    std::vector<double> results;
    for (std::size_t k = 0; k < k_volt.size(); ++k) {
      const std::array x{k_volt[k], k_milliamp[k], k_phase[k]};
      results.push_back(row.model(x));
    }
    const auto a = type_a("result", results);
    check({k_calc, std::string("H.2 approach 2 ") + row.name, source,
           std::to_string(row.value) + " ohm", row.value, statistics::mean(results), 5e-7,
           k_digit});
    check({k_calc, std::string("H.2 approach 2 u(") + row.name + ")", source,
           std::to_string(row.u) + " ohm", row.u, a->u, 5e-7, k_digit});
    EXPECT_EQ(a->dof, 4.0);
  }
}

// ---------------------------------------------------------------- G.4 and the meter

TEST(GumG4, ProductOfThree) {
  const std::string source = "JCGM 100:2008, G.4.1 (from memory, unconfirmed); R 4.2.2, computed";
  const std::vector<Component> parts{{"a", 0.25, 1, 9, Distribution::normal, {}},
                                     {"b", 0.57, 1, 4, Distribution::normal, {}},
                                     {"c", 0.82, 1, 14, Distribution::normal, {}}};
  const auto all = combine(parts);
  ASSERT_TRUE(all);
  check({k_calc, "G.4 u_c", source, "1.029466 %", 1.029466, all->u, 5e-7, k_digit});
  check({k_calc, "G.4 nu_eff", source, "18.99874", 18.99874, *all->dof, 5e-6, k_digit});
  // A blind floor gives 18; the printed guidance is 19.
  const auto k = coverage(CoverageRule::t_truncated, 0.95, all->dof);
  ASSERT_TRUE(k);
  check({k_calc, "G.4 t_95", source, "2.093024 (nu 19)", 2.093024, k->k, 5e-7, k_digit});
  check({k_calc, "G.4 U_95", source, "2.154697 %", 2.154697, k->k * all->u, 1e-6, k_digit});
}

TEST(MeterReference, UM1) {
  const std::string source = "U-M1: JCGM 100:2008, 4.3.7 and F.2.2.1 applied; R 4.2.2, computed";
  MeterUncertaintyInput in;
  in.reading = *describe::read_any("12.34 V");
  in.meter = MeterRange{"", {}, *describe::read_any("0.01 V"), quantity::per_cent(0.5), 2, {}};
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  check({k_calc, "U-M1 a", source, "0.0817 V", 0.0817, got->worst_case.si, 1e-12, "exact"});
  check({k_calc, "U-M1 u(accuracy)", source, "0.0471695 V", 0.0471695,
         got->budget[0].standard_uncertainty.si, 5e-8, k_digit});
  check({k_calc, "U-M1 u(last digit)", source, "0.00288675 V", 0.00288675,
         got->budget[1].standard_uncertainty.si, 5e-9, k_digit});
  check({k_calc, "U-M1 u_c", source, "0.0472578 V", 0.0472578, got->standard_uncertainty.si, 5e-8,
         k_digit});
  check({k_calc, "U-M1 U (k = 2)", source, "0.0945155 V", 0.0945155, got->expanded_uncertainty.si,
         5e-8, k_digit});
}

TEST(MeterReference, UM1WithRepeats) {
  const std::string source = "U-M1 with repeats; R 4.2.2, computed";
  const std::vector<double> repeats{12.34, 12.36, 12.33, 12.35, 12.34};
  const auto a = type_a("repeats", repeats);
  ASSERT_TRUE(a);
  // As in the source, the accuracy is kept at the reading 12.34.
  const std::vector<Component> parts{*a, type_b("accuracy", 0.0817, Distribution::rectangular),
                                     last_digit("last digit", 0.01)};
  const auto all = combine(parts);
  check(
      {k_calc, "U-M1 mean", source, "12.344 V", 12.344, statistics::mean(repeats), 1e-12, "exact"});
  check({k_calc, "U-M1 u_A", source, "0.00509902 V", 0.00509902, a->u, 5e-9, k_digit});
  check({k_calc, "U-M1 u_c with repeats", source, "0.0475321 V", 0.0475321, all->u, 5e-8, k_digit});
  check({k_calc, "U-M1 nu_eff", source, "30203.7", 30203.7, *all->dof, 0.05, k_digit});
  // The calculation takes the accuracy at the mean instead: 0.5 % of 0.004 V more.
  MeterUncertaintyInput in;
  in.reading = *describe::read_any("12.34 V");
  for (const char* r : {"12.36 V", "12.33 V", "12.35 V", "12.34 V"})
    in.repeats.push_back(*describe::read_any(r));
  in.meter = MeterRange{"", {}, *describe::read_any("0.01 V"), quantity::per_cent(0.5), 2, {}};
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  check({k_calc, "U-M1 u_c with repeats, accuracy at the mean", source, "0.0475321 V", 0.0475321,
         got->standard_uncertainty.si, 2e-5, "0.5 % of the 0.004 V between reading and mean"});
}

TEST(MeterReference, E19) {
  MeterUncertaintyInput in;
  in.reading = *describe::read_any("100.0 V");
  in.meter = MeterRange{"", {}, *describe::read_any("0.1 V"), quantity::per_cent(1), 2, {}};
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  const std::string source = "maintenance training text on meter accuracy, read in extract";
  check({k_calc, "E19 lower bound", source, "98.8 V", 98.8, got->value.si - got->worst_case.si,
         1e-9, "exact"});
  check({k_calc, "E19 upper bound", source, "101.2 V", 101.2, got->value.si + got->worst_case.si,
         1e-9, "exact"});
}

}  // namespace
}  // namespace wm::evidence
