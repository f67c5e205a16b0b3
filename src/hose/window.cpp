#include "hose/window.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "hose/rod_measure.hpp"

namespace wm::hose {
namespace {

constexpr double k_taut = 1 + 1e-6;
constexpr double k_refined_within = 0.005;  // of an end; 64 pieces miss it by a thousandth

double chord_of(const Rod& rod) { return (rod.end - rod.start).norm(); }

/// The length below which the hose is taut in one of the positions.
double longest_way(const WindowAsk& ask) {
  double gripped = 0;
  std::vector<Support> free = ask.supports;
  for (std::size_t i = 0; i < ask.supports.size(); ++i) {
    if (!ask.supports[i].station) continue;
    gripped = *ask.supports[i].station;
    free.assign(ask.supports.begin() + static_cast<std::ptrdiff_t>(i) + 1, ask.supports.end());
  }
  double out = 0;
  for (auto rod : ask.positions) {
    if (gripped > 0) rod.start = ask.supports[ask.supports.size() - free.size() - 1].place;
    out = std::max(out, gripped + shortest_way(rod, free));
  }
  return out;
}

}  // namespace

std::vector<Support> stretched(std::vector<Support> supports, double stretch) {
  for (auto& s : supports) {
    if (s.station) s.station = *s.station * stretch;
  }
  return supports;
}

double turn_at_ends(const Lie& lie, double straight) {
  const auto angle = [](const Vector& a, const Vector& b) {
    return std::atan2(a.cross(b).norm(), a.dot(b));
  };
  const double at = std::min(straight, 0.5 * lie.length);
  return std::max(angle(lie.spans.front().start_direction, tangent_at(lie, at)),
                  angle(lie.spans.back().end_direction, tangent_at(lie, lie.length - at)));
}

namespace {

/// Tightest radius over all positions and stretches at one length; 0 where one is taut or
/// unstable. Each shape starts from the one of the length asked before.
class Worst {
 public:
  explicit Worst(const WindowAsk& ask) : ask_(ask), rods_(ask.segments), lies_(ask.segments) {
    before_.resize(ask.positions.size() * ask.stretches.size());
    shapes_.resize(before_.size());
  }

  double operator()(double length) {
    double worst = 0;  // greatest curvature
    std::size_t at = 0;
    for (const auto& position : ask_.positions) {
      for (const double stretch : ask_.stretches) {
        Rod rod = position;
        rod.length = length * stretch;
        const double here = curvature(rod, stretch, at++);
        if (here < 0) return 0;
        worst = std::max(worst, here);
      }
    }
    return worst > 0 ? 1 / worst : std::numeric_limits<double>::infinity();
  }

 private:
  /// Negative: taut, or no stable shape.
  double curvature(const Rod& rod, double stretch, std::size_t at) {
    if (ask_.supports.empty() && ask_.most_turn == 0) {
      Shape& last = shapes_[at];
      if (rod.length <= chord_of(rod) * k_taut) {
        last.settled = Settled::not_settled;
        return -1;
      }
      rods_.warm(rod, last, shape_);
      if (shape_.settled != Settled::stable) return -1;
      std::swap(last, shape_);
      return tightest(last).curvature;
    }
    Lie& last = before_[at];
    const auto supports = stretched(ask_.supports, stretch);
    if (taut_span(rod, supports)) {
      last.settled = Settled::not_settled;
      return -1;
    }
    lies_.warm(rod, supports, last, lie_);
    if (lie_.settled != Settled::stable) return -1;
    std::swap(last, lie_);
    double out = tightest(last).curvature;
    if (ask_.most_turn > 0)
      out = std::max(out, turn_at_ends(last, ask_.straight) / ask_.most_turn / ask_.least_radius);
    return out;
  }

  const WindowAsk& ask_;
  RodSolver rods_;
  LieSolver lies_;
  std::vector<Shape> shapes_;
  std::vector<Lie> before_;
  Shape shape_;
  Lie lie_;
};

}  // namespace

double worst_radius(const WindowAsk& ask, double length) { return Worst(ask)(length); }

Window length_window(const WindowAsk& ask) {
  Window out;
  Worst worst(ask);
  const double chord = longest_way(ask);
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
  for (const double length : lengths) out.scan.push_back({length, worst(length)});
  std::reverse(out.scan.begin(), out.scan.end());

  const auto over = [&](double length) {
    const double radius = worst(length);
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
          const double radius = worst(length);
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

Window refined(const WindowAsk& ask, Window window) {
  WindowAsk fine = ask;
  fine.segments = 2 * ask.segments;
  Worst worst(fine);
  const auto over = [&](double length) {
    const double radius = worst(length);
    return radius > 0 ? ask.least_radius / radius - 1 : 1e3;
  };
  const auto refine = [&](double coarse) {
    const double low = coarse * (1 - k_refined_within), high = coarse * (1 + k_refined_within);
    const double at_low = over(low), at_high = over(high);
    if (!(at_low * at_high < 0)) return coarse;
    std::uintmax_t most = 40;
    const auto sure = [](double x, double y) { return std::abs(x - y) < 1e-9 * (x + y); };
    const auto root =
        boost::math::tools::toms748_solve(over, low, high, at_low, at_high, sure, most);
    return (4 * 0.5 * (root.first + root.second) - coarse) / 3;
  };
  if (window.shortest) window.shortest = refine(*window.shortest);
  if (window.longest && !window.open_above) window.longest = refine(*window.longest);
  return window;
}

}  // namespace wm::hose
