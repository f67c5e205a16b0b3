#include "hose/window.hpp"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "hose/rod_measure.hpp"

namespace wm::hose {
namespace {

constexpr double k_taut = 1 + 1e-6;

double chord_of(const Rod& rod) { return (rod.end - rod.start).norm(); }

double longest_chord(const WindowAsk& ask) {
  double out = 0;
  for (const auto& rod : ask.positions) out = std::max(out, chord_of(rod));
  return out;
}

}  // namespace

double worst_radius(RodSolver& solver, const WindowAsk& ask, double length,
                    std::vector<Shape>& before) {
  before.resize(ask.positions.size() * ask.stretches.size());
  double worst = 0;  // greatest curvature
  std::size_t at = 0;
  Shape shape;
  for (const auto& position : ask.positions) {
    for (const double stretch : ask.stretches) {
      Shape& last = before[at++];
      Rod rod = position;
      rod.length = length * stretch;
      if (rod.length <= chord_of(rod) * k_taut) {
        last.settled = Settled::not_settled;
        return 0;
      }
      solver.warm(rod, last, shape);
      if (shape.settled != Settled::stable) return 0;
      worst = std::max(worst, tightest(shape).curvature);
      std::swap(last, shape);
    }
  }
  return worst > 0 ? 1 / worst : std::numeric_limits<double>::infinity();
}

Window length_window(const WindowAsk& ask) {
  Window out;
  RodSolver solver(ask.segments);
  std::vector<Shape> before;
  const double chord = longest_chord(ask);
  const double shrink = *std::min_element(ask.stretches.begin(), ask.stretches.end());
  const double from = std::max(chord * 1.0005 / shrink, 1e-3 * ask.least_radius);
  const double to = ask.longest_asked > 0
                        ? ask.longest_asked
                        : std::max(2 * chord, chord + 2 * std::numbers::pi * ask.least_radius);
  // Twice the distance first, closer together near the short end, where the radius changes fastest:
  // the peak of the hose that does not loop must not fall between two steps, however large the
  // radius that is asked for. Then the rest.
  const double middle = std::min(to, std::max(2 * chord, from));
  std::vector<double> lengths;
  for (int i = 0; i <= ask.lengths; ++i) {
    const double u = static_cast<double>(i) / ask.lengths;
    lengths.push_back(from + (middle - from) * u * (0.35 + 0.65 * u));
  }
  for (int i = 1; i <= ask.lengths && middle < to; ++i)
    lengths.push_back(middle + (to - middle) * i / ask.lengths);
  // From the long end down: there the shape is easy, and each length starts from the one before.
  std::reverse(lengths.begin(), lengths.end());
  for (const double length : lengths)
    out.scan.push_back({length, worst_radius(solver, ask, length, before)});
  std::reverse(out.scan.begin(), out.scan.end());

  const auto over = [&](double length) {
    const double radius = worst_radius(solver, ask, length, before);
    return radius > 0 ? ask.least_radius / radius - 1 : 1e3;
  };
  const auto crossing = [&](const ScanPoint& a, const ScanPoint& b) {
    std::uintmax_t most = 60;
    const auto sure = [](double x, double y) { return std::abs(x - y) < 1e-9 * (x + y); };
    const auto root = boost::math::tools::toms748_solve(over, a.length, b.length, sure, most);
    return 0.5 * (root.first + root.second);
  };
  // The peak between three lengths of the scan, by Brent's minimum of the curvature.
  const auto peak = [&](std::size_t i) {
    const auto low = out.scan[i > 0 ? i - 1 : i].length;
    const auto high = out.scan[std::min(i + 1, out.scan.size() - 1)].length;
    std::uintmax_t most = 60;
    return boost::math::tools::brent_find_minima(
        [&](double length) {
          const double radius = worst_radius(solver, ask, length, before);
          return radius > 0 ? 1 / radius : 1e9;
        },
        low, high, 26, most);
  };
  // The first peak, which is the hose that does not loop.
  std::size_t top = 0;
  while (top + 1 < out.scan.size() &&
         (out.scan[top].radius == 0 || out.scan[top + 1].radius >= out.scan[top].radius))
    ++top;
  const auto [best, curvature] = peak(top);
  out.best = best;
  out.best_radius = curvature > 0 ? 1 / curvature : 0;
  if (out.best_radius < ask.least_radius) {
    // Only a loop may do it.
    out.another = std::any_of(out.scan.begin(), out.scan.end(),
                              [&](const ScanPoint& p) { return p.radius >= ask.least_radius; });
    return out;
  }
  const ScanPoint summit{best, out.best_radius};
  std::size_t below = out.scan.size();
  for (std::size_t i = 0; i < out.scan.size() && out.scan[i].length < best; ++i) {
    if (out.scan[i].radius < ask.least_radius) below = i;
  }
  out.shortest = below < out.scan.size() ? crossing(out.scan[below], summit) : out.scan[0].length;
  out.open_above = true;
  for (const auto& point : out.scan) {
    if (point.length <= best) continue;
    if (point.radius < ask.least_radius && out.open_above) {
      out.longest = crossing(summit, point);
      out.open_above = false;
    } else if (point.radius >= ask.least_radius && !out.open_above) {
      out.another = true;
    }
  }
  if (out.open_above) out.longest = to;
  return out;
}

}  // namespace wm::hose
