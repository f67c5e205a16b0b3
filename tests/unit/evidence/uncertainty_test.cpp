#include "evidence/uncertainty.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace wm::evidence {
namespace {

Component part(double u, double dof = k_no_end) {
  return {"part", u, 1.0, dof, Distribution::normal, {}};
}

TEST(Components, DivisorsOfTheBounds) {
  EXPECT_NEAR(type_b("x", 3.0, Distribution::rectangular).u, std::sqrt(3.0), 1e-15);
  EXPECT_NEAR(type_b("x", 6.0, Distribution::triangular).u, std::sqrt(6.0), 1e-15);
  EXPECT_NEAR(type_b("x", 2.0, Distribution::arcsine).u, std::sqrt(2.0), 1e-15);
  EXPECT_EQ(type_b_stated("x", 0.7, 2.0).u, 0.35);
  EXPECT_NEAR(last_digit("x", 1.0).u, 0.288675, 5e-7);
  EXPECT_EQ(dof_from_doubt(0.25), 8.0);  // GUM G.4.2: 25 % gives 8
}

TEST(Components, TypeANeedsTwoReadings) {
  const auto a = type_a("x", std::vector<double>{1.0});
  ASSERT_FALSE(a);
  EXPECT_EQ(a.error().kind, Kind::not_applicable);
}

TEST(Components, TheSumStandsInWords) {
  EXPECT_EQ(type_b("x", 0.0817, Distribution::rectangular).how,
            "+-0.0817, rectangular: 0.0817 / sqrt(3) = 0.0471695");
  EXPECT_EQ(type_b_stated("x", 0.7, 2.0).how, "stated +-0.7 with k = 2: 0.7 / 2 = 0.35");
}

TEST(Combine, RootOfTheSquares) {
  const auto c = combine(std::vector<Component>{part(3.0), part(4.0)});
  ASSERT_TRUE(c);
  EXPECT_EQ(c->u, 5.0);
  EXPECT_NEAR(c->lines[0].share, 0.36, 1e-15);
  EXPECT_EQ(c->working, "u = sqrt(3^2 + 4^2) = 5");
  EXPECT_TRUE(std::isinf(*c->dof));
}

TEST(Combine, FullCorrelationAddsOrCancels) {
  const std::vector<Component> two{part(3.0), part(4.0)};
  EXPECT_NEAR(combine(two, std::vector<Correlation>{{0, 1, 1.0}})->u, 7.0, 1e-14);
  EXPECT_NEAR(combine(two, std::vector<Correlation>{{0, 1, -1.0}})->u, 1.0, 1e-14);
  // r = 0 is no correlation: degrees of freedom stay.
  EXPECT_TRUE(combine(two, std::vector<Correlation>{{0, 1, 0.0}})->dof.has_value());
}

TEST(Combine, Refusals) {
  const std::vector<Component> two{part(1.0), part(1.0)};
  const auto kind = [&](std::vector<Correlation> r) { return combine(two, r).error().kind; };
  EXPECT_EQ(combine({}).error().kind, Kind::missing);
  EXPECT_EQ(combine(std::vector<Component>{part(-1.0)}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(combine(std::vector<Component>{part(NAN)}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(combine(std::vector<Component>{part(1e300)}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(combine(std::vector<Component>{part(1.0, 0.0)}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(kind({{0, 5, 0.1}}), Kind::not_found);
  EXPECT_EQ(kind({{0, 0, 0.1}}), Kind::conflict);
  EXPECT_EQ(kind({{0, 1, 1.1}}), Kind::out_of_bounds);
  EXPECT_EQ(kind({{0, 1, 0.1}, {1, 0, 0.1}}), Kind::conflict);
  const std::vector<Component> three{part(1.0), part(1.0), part(1.0)};
  const std::vector<Correlation> impossible{{0, 1, -1.0}, {0, 2, -1.0}, {1, 2, -1.0}};
  EXPECT_EQ(combine(three, impossible).error().kind, Kind::conflict);
}

TEST(EffectiveDof, RefusedWhenCorrelatedAndSaysWhatToDo) {
  const std::vector<Component> two{part(1.0, 4), part(1.0, 4)};
  EXPECT_NEAR(*effective_dof(two), 8.0, 1e-12);
  const auto dof = effective_dof(two, std::vector<Correlation>{{0, 1, 0.5}});
  ASSERT_FALSE(dof);
  EXPECT_EQ(dof.error().kind, Kind::not_applicable);
  EXPECT_FALSE(dof.error().do_next.empty());
}

TEST(CoverageFactor, TwoAndStudent) {
  EXPECT_EQ(coverage(CoverageRule::k_two, 0.95, {})->k, 2.0);
  EXPECT_NEAR(coverage(CoverageRule::k_two, 0.95, 3.0)->level, 0.8607, 1e-4);
  EXPECT_NEAR(coverage(CoverageRule::t_as_computed, 0.95, k_no_end)->k, 1.959964, 5e-7);
  EXPECT_NEAR(coverage(CoverageRule::t_truncated, 0.95, k_no_end)->k, 1.959964, 5e-7);
  // A hair below whole is whole; well below is not.
  EXPECT_NE(coverage(CoverageRule::t_truncated, 0.95, 18.999)->method.find("cut to 19"),
            std::string::npos);
  EXPECT_NE(coverage(CoverageRule::t_truncated, 0.95, 18.98)->method.find("cut to 18"),
            std::string::npos);
}

TEST(CoverageFactor, Refusals) {
  EXPECT_EQ(coverage(CoverageRule::t_as_computed, 0.95, {}).error().kind, Kind::not_applicable);
  EXPECT_EQ(coverage(CoverageRule::t_as_computed, 0.95, 0.5).error().kind, Kind::not_applicable);
  EXPECT_EQ(coverage(CoverageRule::t_as_computed, 0.3, 5.0).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(coverage(CoverageRule::t_as_computed, 1.0, 5.0).error().kind, Kind::out_of_bounds);
}

TEST(Derivatives, OfAProduct) {
  const Model f = [](std::span<const double> x) { return x[0] * x[1] * x[1]; };
  const std::vector<double> x{2.0, 3.0};
  const auto s = sensitivities(f, x, std::vector<double>{0.1, 0.1});
  EXPECT_NEAR((*s)[0], 9.0, 1e-10);
  EXPECT_NEAR((*s)[1], 12.0, 1e-10);
  // y = x^2 at 0: slope 0, so the second order is all there is: var = f''^2/2 u^4 = 2 u^4.
  const Model square = [](std::span<const double> v) { return v[0] * v[0]; };
  EXPECT_NEAR(*second_order_variance(square, std::vector<double>{0.0}, std::vector<double>{0.5}),
              2.0 * 0.0625, 1e-12);
  // y = x^3 at 1: f' 3, f'' 6, f''' 6: (18 + 18) u^4.
  const Model cube = [](std::span<const double> v) { return v[0] * v[0] * v[0]; };
  EXPECT_NEAR(*second_order_variance(cube, std::vector<double>{1.0}, std::vector<double>{0.1}),
              36e-4, 1e-8);
}

TEST(Derivatives, KnownInputsAndRefusals) {
  const Model root = [](std::span<const double> x) { return std::sqrt(x[0]); };
  const std::vector<double> zero{0.0};
  EXPECT_EQ((*sensitivities(root, zero, zero))[0], 0.0);  // u = 0: adds nothing
  EXPECT_EQ(sensitivities(root, zero, std::vector<double>{0.1}).error().kind, Kind::not_applicable);
  EXPECT_EQ(second_order_variance(root, zero, std::vector<double>{0.1}).error().kind,
            Kind::not_applicable);
  EXPECT_EQ(sensitivities(root, zero, {}).error().kind, Kind::conflict);
  EXPECT_EQ(second_order_variance(root, {}, {}).error().kind, Kind::conflict);
}

}  // namespace
}  // namespace wm::evidence
