#include "hose/stiffness.hpp"

#include <fmt/core.h>

#include <boost/math/special_functions/gamma.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>
#include <numeric>

#include "hose/rod.hpp"
#include "hose/rod_measure.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::BendingStiffness;
using quantity::Length;

constexpr double k_gravity = 9.80665;  // NIST SP 811 (2008), B.8
constexpr double k_most_drop = 0.9;    // of the free length: beyond, the tip hangs straight down
constexpr double k_good_from = 0.1, k_good_to = 0.4;  // derived: where EI follows the drop best

/// Drop over length of a heavy cantilever; two spacings, extrapolated.
class Cantilever {
 public:
  double operator()(double g) {
    Rod rod;
    rod.length = 1;
    rod.far_end_free = true;
    rod.weight = {0, 0, -g};
    coarse_.cold(rod, shape_);
    const double c = -points(shape_).back().z();
    fine_.cold(rod, shape_);
    const double f = -points(shape_).back().z();
    return (4 * f - c) / 3;
  }

 private:
  RodSolver coarse_{64}, fine_{128};
  Shape shape_;
};

Problem problem(std::string path, Kind kind, std::string what, std::string expected) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, {}, {}};
}

struct Work {
  const describe::Context& context;

  Checked<HoseStiffnessAnswer> operator()(const SagTest& t) const {
    if (t.drops.empty()) {
      return Fail(Problems{problem("test/drops", Kind::missing, "no drop is entered",
                                   "four, with the hose rolled on by a quarter turn each time")});
    }
    Problems problems;
    HoseStiffnessAnswer out;
    const double length = t.free_length.value.si, mass = t.mass.value.si;
    const auto stiff = [&](double drop, const std::string& path) -> double {
      const auto g = sag_number(drop / length);
      if (!g) {
        problems.push_back(problem(path, Kind::out_of_bounds,
                                   "no drop of a hose of this free length",
                                   "between a thousandth and nine tenths of the free length"));
        return 0;
      }
      return mass * k_gravity * length * length * length / *g;
    };
    double sum = 0, least = 0, most = 0;
    for (std::size_t i = 0; i < t.drops.size(); ++i) {
      const double drop = t.drops[i].value.si;
      const double one = stiff(drop, fmt::format("test/drops/{}", i));
      least = i == 0 ? one : std::min(least, one);
      most = std::max(most, one);
      sum += drop;
    }
    if (!problems.empty()) return Fail(std::move(problems));
    const double mean = sum / static_cast<double>(t.drops.size());
    const double g = *sag_number(mean / length);
    out.stiffness = {stiff(mean, {})};
    if (t.drops.size() > 1) {
      out.from_least = BendingStiffness{least};
      out.from_most = BendingStiffness{most};
    } else {
      out.notes.emplace_back(
          "one drop only: roll the hose by a quarter turn and measure again, four times in all; "
          "their mean takes the set of the coil out");
    }
    out.drop = Length{mean};
    const auto& unit = quantity::typed_unit(t.free_length, context.units);
    out.working.push_back(fmt::format("mean drop {} over free length {} = {:.4f}",
                                      quantity::pencil(mean, unit), quantity::pencil(length, unit),
                                      mean / length));
    out.working.push_back(
        fmt::format("G of a heavy cantilever with that drop = {:.4f}; EI = w L^3 / G, w = mass x "
                    "9.80665 m/s2",
                    g));
    if (mean / length < k_good_from || mean / length > k_good_to)
      out.notes.emplace_back(
          "a drop of a tenth to four tenths of the free length gives the stiffness best: change "
          "the free length");
    return out;
  }

  Checked<HoseStiffnessAnswer> operator()(const BoardTest& t) const {
    // kappa D of the elastica that touches both boards along them: sqrt(pi) Gamma(3/4)/Gamma(5/4).
    const double tight =
        std::sqrt(std::numbers::pi) * boost::math::tgamma(0.75) / boost::math::tgamma(1.25);
    HoseStiffnessAnswer out;
    const double apart = t.apart.value.si;
    // Along the boards the hose has no moment and carries F; at the turn it has the greatest
    // curvature and F square to it: 1/2 EI kappa^2 = F (the invariant H).
    out.stiffness = {t.push.value.si * apart * apart / (0.5 * tight * tight)};
    out.tightest_radius = Length{apart / tight};
    out.working.push_back(fmt::format("EI = F D^2 / {:.5f}; tightest radius = D / {:.5f}",
                                      0.5 * tight * tight, tight));
    out.notes.emplace_back(
        "look at the U while it is bent: no kink, no flattening; then the radius shown is one that "
        "this piece bears, cold and empty");
    return out;
  }
};

}  // namespace

std::optional<double> sag_number(double drop_over_length) {
  if (!(drop_over_length >= 0.001 && drop_over_length <= k_most_drop)) return std::nullopt;
  Cantilever cantilever;
  std::uintmax_t most = 60;
  const auto over = [&](double g) { return cantilever(g) - drop_over_length; };
  const auto sure = [](double a, double b) { return std::abs(a - b) < 1e-9 * (a + b); };
  const auto root = boost::math::tools::toms748_solve(over, 0.001, 60.0, sure, most);
  return 0.5 * (root.first + root.second);
}

Checked<HoseStiffnessAnswer> hose_stiffness(const HoseStiffnessInput& in,
                                            const describe::Context& context) {
  return std::visit(Work{context}, in.test);
}

std::string_view describe(describe::Fields<SagTest>& f) {
  using quantity::feet;
  using quantity::inches;
  f.has<&SagTest::free_length>("free_length", "Free length, vice to tip")
      .needed("24 in")
      .above(inches(0))
      .at_most(feet(30));
  f.has<&SagTest::mass>("mass", "Mass of the hose, as tested")
      .needed("0.25 lb/ft")
      .above(quantity::MassPerLength{0})
      .at_most(quantity::MassPerLength{100});
  f.has<&SagTest::drops>("drops", "Drop of the tip, rolled on by a quarter turn each time")
      .needed(R"(["4.1 in", "4.6 in", "4.4 in", "4.0 in"])");
  return "sag-test";
}

std::string_view describe(describe::Fields<BoardTest>& f) {
  using quantity::feet;
  using quantity::inches;
  f.has<&BoardTest::apart>("apart", "Centreline to centreline")
      .needed("9 in")
      .above(inches(0))
      .at_most(feet(20))
      .help("Between the boards, less the diameter of the hose.");
  f.has<&BoardTest::push>("push", "Force that holds them so")
      .needed("3.2 lbf")
      .above(quantity::Force{0})
      .at_most(quantity::Force{1e5});
  return "board-test";
}

std::string_view describe(describe::Fields<HoseStiffnessInput>& f) {
  f.has<&HoseStiffnessInput::test>("test", "Tested by")
      .needed(
          R"({"is": "sag-test", "free_length": "24 in", "mass": "0.25 lb/ft", "drops": ["4.1 in", "4.6 in", "4.4 in", "4.0 in"]})");
  return "hose-stiffness-input";
}

std::string_view describe(describe::Fields<HoseStiffnessAnswer>& f) {
  using A = HoseStiffnessAnswer;
  f.has<&A::stiffness>("stiffness", "Bending stiffness EI");
  f.has<&A::from_least>("from_least", "Least, from one drop alone");
  f.has<&A::from_most>("from_most", "Most, from one drop alone");
  f.has<&A::drop>("drop", "Mean drop");
  f.has<&A::tightest_radius>("tightest_radius", "Tightest radius of the U, to the centreline");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-stiffness-answer";
}

}  // namespace wm::hose
