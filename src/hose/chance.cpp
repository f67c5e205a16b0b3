#include "hose/chance.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "hose/rod_measure.hpp"
#include "statistics/draws.hpp"

namespace wm::hose {
namespace {

Vector tilted(const Vector& direction, double most, statistics::Draws& draws) {
  if (most == 0) return direction;
  const Vector pick = std::abs(direction.x()) < 0.6 ? Vector::UnitX() : Vector::UnitY();
  const Vector u = direction.cross(pick).normalized(), v = direction.cross(u);
  return (direction + u * std::tan(draws.uniform(-most, most)) +
          v * std::tan(draws.uniform(-most, most)))
      .normalized();
}

Rod drawn(const ChanceAsk& ask, statistics::Draws& draws) {
  Vector shift, turn;
  for (int k = 0; k < 3; ++k) {
    shift[k] = draws.uniform(-ask.motion.shift[k], ask.motion.shift[k]);
    turn[k] = draws.uniform(-ask.motion.turn[k], ask.motion.turn[k]);
  }
  Rod rod = moved(ask.rod, ask.motion, shift, turn);
  rod.start_direction = tilted(rod.start_direction, ask.direction_tolerance, draws);
  rod.end_direction = tilted(rod.end_direction, ask.direction_tolerance, draws);
  rod.length += draws.uniform(-ask.length_tolerance, ask.length_tolerance);
  rod.length *= 1 + draws.uniform(-ask.shortens, ask.lengthens);
  return rod;
}

}  // namespace

Chance chance(const ChanceAsk& ask, const std::function<bool(double)>& go_on) {
  statistics::Draws draws(ask.seed);
  // One span needs no chain about it; that is the usual hose, and ten thousand of it.
  const bool plain = ask.supports.empty();
  RodSolver solver(ask.segments);
  LieSolver chain(ask.segments);
  Shape nominal, shape;
  Lie nominal_lie, lie;
  if (plain)
    solver.cold(ask.rod, nominal);
  else
    chain.cold(ask.rod, ask.supports, nominal_lie);
  Chance out;
  double most = 0;
  for (; out.samples < ask.samples; ++out.samples) {
    if (out.samples % 256 == 0 && go_on &&
        !go_on(static_cast<double>(out.samples) / static_cast<double>(ask.samples)))
      break;
    const Rod rod = drawn(ask, draws);
    double curvature = 0;
    if (plain) {
      if (rod.length <= (rod.end - rod.start).norm() * (1 + 1e-6)) {
        ++out.taut;
        continue;
      }
      solver.follow(rod, nominal, shape);
      if (shape.settled != Settled::stable) {
        ++out.jumped;
        solver.cold(rod, shape);
        if (shape.settled != Settled::stable) continue;
      }
      curvature = tightest(shape).curvature;
    } else {
      if (taut_span(rod, ask.supports)) {
        ++out.taut;
        continue;
      }
      chain.warm(rod, ask.supports, nominal_lie, lie);
      if (lie.settled != Settled::stable) {
        ++out.jumped;
        continue;
      }
      curvature = tightest(lie).curvature;
    }
    most = std::max(most, curvature);
    const bool tight = curvature * ask.least_radius > 1;
    const bool near = std::any_of(ask.keep_outs.begin(), ask.keep_outs.end(), [&](const Apart& a) {
      const auto g = plain ? gap(shape, ask.outside_diameter, a.solid)
                           : gap(lie, ask.outside_diameter, a.solid);
      return g.clear < a.needed;
    });
    out.too_tight += tight ? 1 : 0;
    out.too_near += near ? 1 : 0;
    out.kept += tight || near ? 0 : 1;
  }
  out.worst_radius = most > 0 ? 1 / most : 0;
  return out;
}

}  // namespace wm::hose
