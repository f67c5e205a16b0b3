// Sources:   closed forms of the elastica and of the end-loaded cantilever in elliptic integrals
//            (Bisshopp and Drucker 1945, doi 10.1090/qam/13360, through Boost.Math, a
//            general-purpose library); Mattiasson 1981, Table 1, as quoted in a public test file; a
//            helix, which is an exact balance of an untwisted rod; arcs; and a boundary-value
//            solver run outside the project for the cases S1 to S8 (hose-shape notes, sections 11.1
//            to 11.8).
// Tolerance: the 128 and 256 segment answers extrapolated: 3e-5 of the radius, half a unit of the
//            last printed digit elsewhere, as the notes give them.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <functional>
#include <numbers>

#include "hose/rod.hpp"
#include "hose/rod_measure.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm::hose;
using boost::math::ellint_1;
using boost::math::ellint_2;
using std::numbers::pi;

constexpr double k_degree = pi / 180;

Shape solved(const Rod& rod, int segments) {
  RodSolver solver(segments);
  Shape shape;
  solver.cold(rod, shape);
  EXPECT_EQ(shape.settled, Settled::stable);
  EXPECT_LT(shape.residual, 1e-10);
  return shape;
}

/// The error falls with the square of the spacing: two spacings cancel it.
double fine(const Rod& rod, const std::function<double(const Shape&)>& of) {
  return (4 * of(solved(rod, 256)) - of(solved(rod, 128))) / 3;
}
double radius(const Shape& shape) { return 1 / tightest(shape).curvature; }

void expect(const std::string& id, const char* source, double expected, double got,
            double tolerance, const char* why = "half a unit of the last printed digit, twice") {
  wm::test::check(
      {"hose-shape", id, source, fmt::format("{}", expected), expected, got, tolerance, why});
}

Rod cantilever() {
  Rod rod;
  rod.length = 1;
  rod.far_end_free = true;
  return rod;
}
Vector tip(const Shape& s) { return points(s).back(); }

TEST(RodCases, ColumnBeyondItsBucklingLoad) {
  // The load leans by 0.01 degree, so that the column is not free to turn about its line. With
  // angles from that line: sin(angle / 2) = k sin(phi), root(P) l = K - F(phi0).
  const double lean = 0.01 * k_degree;
  struct Row {
    double degrees, x, y;
  };
  // x/l and y/l as printed for an exactly central load.
  for (const auto& row :
       {Row{20, 0.970, 0.220}, Row{40, 0.881, 0.422}, Row{60, 0.741, 0.593}, Row{80, 0.560, 0.719},
        Row{100, 0.349, 0.792}, Row{120, 0.123, 0.803}, Row{140, -0.107, 0.750},
        Row{160, -0.340, 0.625}, Row{176, -0.577, 0.421}}) {
    const double k = std::sin(row.degrees * k_degree / 2);
    const double phi = std::asin(std::sin(lean / 2) / k);
    const double root = ellint_1(k) - ellint_1(k, phi);
    Rod rod = cantilever();
    rod.tip_force = -root * root * Vector(std::cos(lean), -std::sin(lean), 0);
    const double along = (2 * (ellint_2(k) - ellint_2(k, phi)) - root) / root;
    const double across = 2 * k * std::cos(phi) / root;
    const char* source = "elastica in elliptic integrals (load leaning 0.01 degree); Boost.Math";
    const auto name = [&](const char* what) {
      return fmt::format("column {}: {}", row.degrees, what);
    };
    // At 176 degrees the curve turns within a few segments: the next order shows.
    const double room = row.degrees > 170 ? 20 : 1;
    const double x = fine(rod, [](const Shape& s) { return tip(s).x(); });
    const double y = fine(rod, [](const Shape& s) { return tip(s).y(); });
    const char* left = "extrapolated, fourth order left over";
    expect(name("x/l"), source, along * std::cos(lean) + across * std::sin(lean), x, 2e-6 * room,
           left);
    expect(name("y/l"), source, across * std::cos(lean) - along * std::sin(lean), y, 2e-6 * room,
           left);
    expect(name("curvature x l"), source, 2 * k * root * std::cos(phi),
           fine(rod, [](const Shape& s) { return tightest(s).curvature; }), 2e-4 * room,
           "end curvature from the half link");
    const char* book =
        "Timoshenko and Gere, Theory of Elastic Stability, table of the elastica (from memory)";
    expect(name("x/l as printed"), book, row.x, x, 2e-3, "three printed digits and the lean");
    expect(name("y/l as printed"), book, row.y, y, 2e-3, "three printed digits and the lean");
  }
}

TEST(RodCases, StraightRunWithSlack) {
  const char* source =
      "clamped-clamped elastica: chord/L = 2E/K - 1, bow/L = k/K, R/L = 1/(8kK); Boost.Math";
  for (const double slack : {0.005, 0.01, 0.02, 0.03, 0.05, 0.08, 0.10, 0.15, 0.20, 0.30, 0.50}) {
    const double chord = 1 / (1 + slack);
    const auto off = [&](double k) { return 2 * ellint_2(k) / ellint_1(k) - 1 - chord; };
    const auto root =
        boost::math::tools::bisect(off, 1e-6, 0.95, boost::math::tools::eps_tolerance<double>(45));
    const double k = 0.5 * (root.first + root.second);
    Rod rod;
    rod.end = {chord, 0, 0};
    rod.length = 1;
    const auto name = [&](const char* what) {
      return fmt::format("slack {} %: {}", 100 * slack, what);
    };
    expect(name("R/L"), source, 1 / (8 * k * ellint_1(k)), fine(rod, radius), 2e-5,
           "3e-5 of the radius, extrapolated");
    expect(name("bow/L"), source, k / ellint_1(k),
           fine(rod,
                [](const Shape& s) {
                  const auto mid = point_at(s, 0.5);
                  return std::hypot(mid.y(), mid.z());
                }),
           2e-6, "extrapolated, fourth order left over");
    expect(name("push x L2/EI"), source, 16 * ellint_1(k) * ellint_1(k),
           fine(rod, [](const Shape& s) { return s.force.norm(); }), 2e-3,
           "extrapolated, fourth order left over");
  }
}

TEST(RodCases, CantileverWithASquareTipLoad) {
  struct Row {
    double a, drop, shortening;
  };
  // Mattiasson 1981, Table 1, as quoted.
  for (const auto& row : {Row{1, 0.30172, 0.05643}, Row{2, 0.49346, 0.16064},
                          Row{5, 0.71379, 0.38763}, Row{10, 0.81061, 0.55500}}) {
    Rod rod = cantilever();
    rod.tip_force = {0, -row.a, 0};
    const char* source = "Mattiasson 1981, Int. J. Numer. Meth. Eng. 17, Table 1 (quoted)";
    expect(fmt::format("cantilever a = {}: v/L", row.a), source, row.drop,
           -fine(rod, [](const Shape& s) { return tip(s).y(); }), 1e-5);
    expect(fmt::format("cantilever a = {}: u/L", row.a), source, row.shortening,
           1 - fine(rod, [](const Shape& s) { return tip(s).x(); }), 1e-5);
  }
  for (const double a : {0.25, 0.5, 3., 4., 6., 7., 8., 9., 15.}) {
    const auto phi = [](double k) { return std::asin(1 / (k * std::numbers::sqrt2)); };
    const auto off = [&](double k) { return ellint_1(k) - ellint_1(k, phi(k)) - std::sqrt(a); };
    const auto root = boost::math::tools::bisect(off, 1 / std::numbers::sqrt2 + 1e-12, 1 - 1e-12,
                                                 boost::math::tools::eps_tolerance<double>(45));
    const double k = 0.5 * (root.first + root.second);
    const double slope = std::asin(2 * k * k - 1);
    const char* source = "Bisshopp and Drucker 1945 in elliptic integrals; Boost.Math";
    Rod rod = cantilever();
    rod.tip_force = {0, -a, 0};
    expect(fmt::format("cantilever a = {}: v/L", a), source,
           1 - 2 / std::sqrt(a) * (ellint_2(k) - ellint_2(k, phi(k))),
           -fine(rod, [](const Shape& s) { return tip(s).y(); }), 2e-6, "extrapolated");
    expect(fmt::format("cantilever a = {}: u/L", a), source, 1 - std::sqrt(2 * std::sin(slope) / a),
           1 - fine(rod, [](const Shape& s) { return tip(s).x(); }), 2e-6, "extrapolated");
    expect(fmt::format("cantilever a = {}: curvature", a), source,
           std::sqrt(2 * a * std::sin(slope)),
           fine(rod, [](const Shape& s) { return tightest(s).curvature; }), 2e-4,
           "end curvature from the half link");
  }
}

TEST(RodCases, HeavyCantilever) {
  struct Row {
    double g, drop, x, degrees;
  };
  for (const auto& row :
       {Row{0.5, 0.062306, 0.997779, 4.763}, Row{1, 0.123471, 0.991246, 9.460},
        Row{2, 0.238507, 0.966893, 18.426}, Row{3, 0.339648, 0.931511, 26.559},
        Row{5, 0.495905, 0.846657, 39.935}, Row{8, 0.640631, 0.724425, 53.865},
        Row{10, 0.700200, 0.656354, 60.312}, Row{20, 0.829881, 0.445232, 76.748},
        Row{30, 0.873092, 0.342764, 82.972}, Row{50, 0.90792, 0, 0}, Row{100, 0.93753, 0, 0}}) {
    Rod rod = cantilever();
    rod.weight = {0, 0, -row.g};
    const char* source = "shooting solution outside the project (hose-shape notes, 11.8)";
    const bool coarse = row.x == 0;
    expect(fmt::format("heavy cantilever G = {}: drop", row.g), source, row.drop,
           -fine(rod, [](const Shape& s) { return tip(s).z(); }), coarse ? 1e-5 : 2e-6);
    if (coarse) continue;
    expect(fmt::format("heavy cantilever G = {}: x", row.g), source, row.x,
           fine(rod, [](const Shape& s) { return tip(s).x(); }), 2e-6);
    expect(fmt::format("heavy cantilever G = {}: slope, degrees", row.g), source, row.degrees,
           fine(rod, [](const Shape& s) { return -std::asin(s.tangents.back().z()) / k_degree; }),
           2e-3);
  }
}

/// Clamped to a helix of this radius and pitch with its own arc length.
void helix(double r, double pitch, double turn_degrees, double clocking_degrees) {
  const double c = pitch / (2 * pi);
  const double ds = std::hypot(r, c);
  const double turn = turn_degrees * k_degree;
  const double curvature = r / (ds * ds), torsion = c / (ds * ds);
  Rod rod;
  rod.length = ds * turn;
  rod.start = {r, 0, 0};
  rod.end = {r * std::cos(turn), r * std::sin(turn), c * turn};
  rod.start_direction = Vector(0, r, c) / ds;
  rod.end_direction = Vector(-r * std::sin(turn), r * std::cos(turn), c) / ds;
  const Vector inward_start(-1, 0, 0), inward_end(-std::cos(turn), -std::sin(turn), 0);
  const char* source =
      "helix: curvature r/(r2+c2), torsion c/(r2+c2); exact balance of an untwisted rod";
  const auto name = [&](const char* what) {
    return fmt::format("helix r {}, {} degrees: {}", r, turn_degrees, what);
  };
  expect(name("R"), source, 1 / curvature, fine(rod, radius), 3e-5 / curvature,
         "3e-5 of the radius");
  expect(name("energy"), source, 0.5 * curvature * curvature * rod.length,
         fine(rod, [](const Shape& s) { return s.energy; }), 2e-6, "extrapolated");
  expect(name("thrust"), source, torsion * std::hypot(curvature, torsion),
         fine(rod, [](const Shape& s) { return s.force.norm(); }), 1e-3, "extrapolated");
  // The carried vector lags the normal by the integral of the torsion.
  expect(name("clocking"), source, clocking_degrees,
         fine(rod,
              [&](const Shape& s) {
                return angle_about(s.end_direction, carried(s, inward_start), inward_end) /
                       k_degree;
              }),
         1e-3, "0.001 degree, extrapolated");
}

TEST(RodCases, HelixOf120Degrees) { helix(0.12, 0.5, 120, 66.3200); }
TEST(RodCases, HelixOf200Degrees) { helix(0.10, 0.8, 200, 157.2878); }

TEST(RodCases, ArcsLieInTheirCircle) {
  Rod quarter;
  quarter.end = {0.2, 0.2, 0};
  quarter.end_direction = {0, 1, 0};
  quarter.length = pi / 2 * 0.2;
  expect("quarter circle: R", "circle, exact", 0.2, fine(quarter, radius), 6e-6,
         "3e-5 of the radius");
  expect("quarter circle: energy", "circle, exact", pi / (4 * 0.2),
         fine(quarter, [](const Shape& s) { return s.energy; }), 2e-6, "extrapolated");
  Rod half;
  half.end = {0, 0.4, 0};
  half.end_direction = {-1, 0, 0};
  half.length = pi * 0.2;
  expect("half circle: R", "circle, exact", 0.2, fine(half, radius), 6e-6, "3e-5 of the radius");
  expect("half circle: mid x", "circle, exact", 0.2,
         fine(half, [&](const Shape& s) { return point_at(s, s.length / 2).x(); }), 1e-6,
         "extrapolated");
}

Rod case_s1() {
  Rod rod;
  rod.end = {0.5, 0.3, 0.4};
  rod.end_direction = {0, 0, 1};
  rod.length = 1;
  return rod;
}

const char* const k_outside = "boundary-value solver outside the project (hose-shape notes, 11.6)";

void expect_middle(const char* name, const Rod& rod, const Vector& middle) {
  for (int k = 0; k < 3; ++k) {
    expect(fmt::format("{}: middle {}", name, "xyz"[k]), k_outside, middle[k],
           fine(rod, [&](const Shape& s) { return point_at(s, s.length / 2)[k]; }), 1e-5);
  }
}
double clocked(const Rod& rod, const Vector& to) {
  return fine(rod, [&](const Shape& s) {
    return angle_about(s.end_direction, carried(s, {0, 0, 1}), to) / k_degree;
  });
}

TEST(RodCases, S1InSpace) {
  const Rod rod = case_s1();
  expect("S1: R", k_outside, 0.230552, fine(rod, radius), 7e-6, "3e-5 of the radius");
  expect("S1: energy", k_outside, 4.160618, fine(rod, [](const Shape& s) { return s.energy; }),
         2e-6);
  expect_middle("S1", rod, {0.45555, 0.13678, -0.03419});
  expect("S1: clocking, degrees", k_outside, 122.192, clocked(rod, {1, 0, 0}), 1e-3);
  const double force[3] = {-13.7254, -8.1863, -12.2706};
  for (int k = 0; k < 3; ++k)
    expect(fmt::format("S1: force {}", "xyz"[k]), k_outside, force[k],
           fine(rod, [&](const Shape& s) { return s.force[k]; }), 2e-4);
  expect("S1: invariant", k_outside, -10.0662,
         fine(rod,
              [](const Shape& s) {
                const auto h = invariant(s);
                return h[h.size() / 2];
              }),
         5e-4);
}

TEST(RodCases, S1bAndS1c) {
  Rod b;
  b.end = {0, 0.5, 0.2};
  b.end_direction = {-1, 0, 0};
  b.length = 1;
  expect("S1b: R", k_outside, 0.23244, fine(b, radius), 1e-5);
  expect("S1b: energy", k_outside, 5.37275, fine(b, [](const Shape& s) { return s.energy; }), 1e-5);
  expect_middle("S1b", b, {0.35710, 0.25, 0.1});
  expect("S1b: clocking, degrees", k_outside, 43.603, clocked(b, {0, 0, 1}), 1e-3);
  Rod c;
  c.end = {0.5, 0.5, 0};
  c.end_direction = {0, 1, 0};
  c.length = 0.9;
  expect("S1c: R", k_outside, 0.25326, fine(c, radius), 1e-5);
  expect("S1c: energy", k_outside, 2.75759, fine(c, [](const Shape& s) { return s.energy; }), 1e-5);
}

TEST(RodCases, S5AndS7) {
  Rod u;
  u.end = {0, 0.2, 0};
  u.end_direction = {-1, 0, 0};
  u.length = 0.45;
  expect("S5: R", k_outside, 0.083526, fine(u, radius), 3e-6, "3e-5 of the radius");
  expect("S5: energy", k_outside, 14.35504, fine(u, [](const Shape& s) { return s.energy; }), 2e-5);
  expect_middle("S5", u, {0.173051, 0.1, 0});
  Rod heavy;
  heavy.end = {0.8, 0, 0.1};
  heavy.end_direction = {0, 0, 1};
  heavy.length = 1.2;
  heavy.weight = {0, 0, -20};
  expect("S7: R", k_outside, 0.18276, fine(heavy, radius), 1e-5);
  expect_middle("S7", heavy, {0.49451, 0, -0.31418});
}

TEST(RodCases, RadiusAlongTheScanOfLengths) {
  struct Row {
    double length, radius;
  };
  for (const auto& row :
       {Row{0.309, 0.1393}, Row{0.321, 0.1649}, Row{0.333, 0.1320}, Row{0.345, 0.1143},
        Row{0.358, 0.1027}, Row{0.394, 0.0869}, Row{0.468, 0.0777}, Row{0.517, 0.0767}}) {
    Rod rod;
    rod.end = {0.2, 0.2, 0};
    rod.end_direction = {0, 1, 0};
    rod.length = row.length;
    // The lengths are printed to 0.001, which moves the radius by up to 0.005 near the short end.
    expect(fmt::format("S2 scan: R at L = {}", row.length), k_outside, row.radius,
           fine(rod, radius), row.length < 0.34 ? 5e-3 : 3e-4, "the printed length is rounded");
  }
}

TEST(RodCases, EnvelopeS8) {
  double worst = 1, x = 0, y = 0, z = 0;
  for (int corner = 0; corner < 8; ++corner) {
    Rod rod = case_s1();
    const Vector move((corner & 1) != 0 ? 0.02 : -0.02, (corner & 2) != 0 ? 0.02 : -0.02,
                      (corner & 4) != 0 ? 0.02 : -0.02);
    rod.end += move;
    const double r = fine(rod, radius);
    if (r < worst) {
      worst = r;
      x = move.x();
      y = move.y();
      z = move.z();
    }
  }
  expect("S8: worst R of eight corners", k_outside, 0.20876, worst, 1e-5);
  EXPECT_LT(std::max({x, y, z}), 0) << "at (-, -, -)";
}

TEST(RodCases, TwistLiftsAFlatBend) {
  Rod rod;
  rod.end = {0.2, 0.2, 0};
  rod.end_direction = {0, 1, 0};
  rod.length = 0.345;
  rod.twist = 8;
  const char* source = "boundary-value solver outside the project (hose-shape notes, 11.7)";
  expect("twist: height at L/4", source, 0.0030393,
         fine(rod, [](const Shape& s) { return point_at(s, s.length / 4).z(); }), 1e-7);
  expect("twist: height at 3L/4", source, -0.0030393,
         fine(rod, [](const Shape& s) { return point_at(s, 0.75 * s.length).z(); }), 1e-7);
  expect("twist: transport angle, degrees", source, -2.350,
         fine(rod,
              [](const Shape& s) {
                return angle_about(s.end_direction, carried(s, {0, 0, 1}), {0, 0, 1}) / k_degree;
              }),
         1e-3);
  expect("twist: R", source, 0.11174, fine(rod, radius), 1e-5);
  // A circle under twist stays a flat circle.
  Rod arc = rod;
  arc.length = pi / 2 * 0.2;
  EXPECT_NEAR(fine(arc, radius), 0.2, 6e-6);
}

}  // namespace
