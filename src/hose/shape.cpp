#include "hose/shape.hpp"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/rod_measure.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Angle;
using quantity::Length;

constexpr double k_longest_share = 3.0;  // of the distance: beyond, loops and several shapes
constexpr double k_two_feet = 24 * 0.0254;
constexpr double k_degree = std::numbers::pi / 180;

struct Read {
  Tightest tightest;
  std::optional<double> clocking;
};

Read read_off(const Shape& shape, const Reach& ends) {
  Read out{tightest(shape), std::nullopt};
  if (ends.outlet_near && ends.outlet_far)
    out.clocking = clocking(shape, *ends.outlet_near, *ends.outlet_far);
  return out;
}

/// Errors of the second order in the spacing cancel.
double extrapolated(double coarse, double fine) { return (4 * fine - coarse) / 3; }

class Work {
 public:
  Work(const HoseShapeInput& in, const Reach& ends, const describe::Context& context)
      : in_(in), ends_(ends), unit_(quantity::typed_unit(in.outside_diameter, context.units)) {}

  Checked<HoseShapeAnswer> run() {
    const auto length = flexible();
    if (!length) return Fail(length.error());
    Rod rod = ends_.rod;
    rod.length = *length;
    RodSolver solver(in_.fineness == Fineness::moving ? 32 : 64);
    Shape shape;
    solver.cold(rod, shape);
    if (shape.settled != Settled::stable) {
      return Fail(Problems{{Kind::not_applicable,
                            length_path(),
                            "no shape was found in which this hose lies still",
                            {},
                            {},
                            "Try a length nearer to the best one of hose-length.",
                            {}}});
    }
    Read read = read_off(shape, ends_);
    if (in_.fineness == Fineness::printed) refine(rod, shape, read);
    fill(shape, read);
    others(solver, rod, shape);
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string say(double metres) const { return quantity::pencil(metres, unit_); }
  [[nodiscard]] const char* length_path() const { return in_.flexible ? "flexible" : "overall"; }

  Checked<double> flexible() {
    const double rigid = ends_.rigid_near + ends_.rigid_far;
    const double chord = (ends_.rod.end - ends_.rod.start).norm();
    if (in_.flexible && in_.overall) {
      return Fail(Problems{{Kind::conflict,
                            "overall",
                            "two lengths are given",
                            "one of the two: flexible or overall",
                            {},
                            {},
                            {}}});
    }
    if (!in_.flexible && !in_.overall) {
      return Fail(Problems{{Kind::missing,
                            "flexible",
                            "a length is needed",
                            "the hose that can bend, or the overall length",
                            say(chord * 1.1),
                            "hose-length finds the window of lengths.",
                            {}}});
    }
    const double length = in_.flexible ? in_.flexible->value.si : in_.overall->value.si - rigid;
    const double extra = in_.flexible ? 0 : rigid;
    if (length <= chord * (1 + 1e-6)) {
      return Fail(Problems{{Kind::not_applicable,
                            length_path(),
                            fmt::format("too short: needs more than {}; you gave {}",
                                        say(chord + extra), say(length + extra)),
                            "more than the straight distance between the fittings",
                            {},
                            {},
                            {}}});
    }
    if (in_.overall) {
      out_.working.push_back(fmt::format("hose that can bend = {} - {} - {} = {}",
                                         say(in_.overall->value.si), say(ends_.rigid_near),
                                         say(ends_.rigid_far), say(length)));
    }
    out_.working.push_back(
        fmt::format("straight distance between the fittings' ends = {}; slack "
                    "= {:.1f} % of the hose",
                    say(chord), 100 * (1 - chord / length)));
    if (length > k_longest_share * std::max(chord, 1e-9)) {
      out_.notes.push_back(
          "more than three times the distance: such a hose can lie in several ways, loops among "
          "them; clamp it between");
    }
    out_.flexible = {length};
    out_.overall = {length + rigid};
    return length;
  }

  void refine(const Rod& rod, Shape& shape, Read& read) const {
    RodSolver solver(128);
    Shape fine;
    solver.cold(rod, fine);
    if (fine.settled != Settled::stable) return;
    const Read finer = read_off(fine, ends_);
    // Two families of shapes must not be mixed.
    if (std::abs(fine.energy - shape.energy) > 0.01 * shape.energy) return;
    read.tightest.curvature =
        1 / extrapolated(1 / read.tightest.curvature, 1 / finer.tightest.curvature);
    read.tightest.station = finer.tightest.station;
    if (read.clocking && finer.clocking) {
      const double apart = std::remainder(*finer.clocking - *read.clocking, 2 * std::numbers::pi);
      read.clocking = *finer.clocking + apart / 3;
    }
    shape = std::move(fine);
  }

  void fill(const Shape& shape, const Read& read) {
    const double radius = 1 / read.tightest.curvature;
    const double half = 0.5 * in_.outside_diameter.value.si;
    out_.tightest_radius = {radius};
    out_.tightest_inside = {radius - half};
    out_.tightest_at = {read.tightest.station};
    out_.working.push_back(fmt::format(
        "tightest bend {} from the near end: radius {} to the centreline, {} - {} / 2 = {} to the "
        "inside",
        say(read.tightest.station), say(radius), say(radius), say(2 * half), say(radius - half)));
    if (in_.least_radius) {
      const double limit = centreline_radius(in_.least_radius->value.si, in_.radius_to, 2 * half);
      out_.least_radius = {limit};
      out_.in_hand = {radius - limit};
      if (in_.radius_to == RadiusTo::inside) {
        out_.working.push_back(fmt::format("limit to the centreline = {} + {} / 2 = {}",
                                           say(in_.least_radius->value.si), say(2 * half),
                                           say(limit)));
      }
      out_.working.push_back(
          fmt::format("in hand = {} - {} = {}", say(radius), say(limit), say(radius - limit)));
      if (radius < limit)
        out_.notes.push_back(
            "too tight: the radius is below the limit; hose-length gives the "
            "lengths that keep it, if there are any");
    } else {
      out_.notes.push_back("no least radius entered: the bend is not compared with anything");
    }
    if (radius - half <= 0)
      out_.notes.push_back("the inside of the bend folds up: no hose can lie like this");
    circle(shape, read);
    clock(read);
    list_points(shape);
    out_.notes.push_back(
        "taken: a round hose, made and stored straight, not twisted, without weight, friction or "
        "anything in its way; ends that hold it rigidly");
  }

  /// The circle through three nodes about the tightest place, drawn with the radius told.
  void circle(const Shape& shape, const Read& read) {
    const double radius = 1 / read.tightest.curvature;
    if (!(radius < 1000 * shape.length)) return;
    const double half = shape.spacing();
    const double at = std::clamp(read.tightest.station, half, shape.length - half);
    const Vector before = point_at(shape, at - half), here = point_at(shape, at),
                 after = point_at(shape, at + half);
    const Vector square = (here - before).cross(after - here);
    const Vector along = (after - before).normalized();
    if (square.norm() == 0) return;
    const Vector place = point_at(shape, read.tightest.station);
    const Vector inward = square.normalized().cross(along);
    const Vector unit = square.normalized();
    out_.bend = BendCircle{spot_of(place), spot_of(place + inward * radius),
                           Way{unit.x(), unit.y(), unit.z()}};
  }

  void clock(const Read& read) {
    if (!read.clocking) return;
    const double turn = 2 * std::numbers::pi;
    const double angle = std::fmod(*read.clocking + turn, turn);
    out_.clocking = Angle{angle};
    out_.clocking_tolerance = Angle{(out_.overall.si <= k_two_feet ? 3 : 5) * k_degree};
    out_.clocking_read =
        "Seen from the near end along the hose, near elbow at six o'clock, counter-clockwise to "
        "the far elbow.";
    const double step = std::round(angle / (5 * k_degree)) * 5;
    out_.working.push_back(fmt::format(
        "clocking {:.1f} degrees; ordered in steps of 5 degrees: {:.0f}, code {:02.0f}; the rest "
        "of {:.1f} degrees twists the hose",
        angle / k_degree, std::fmod(step, 360), std::fmod(step, 360) / 5,
        std::abs(angle / k_degree - step)));
  }

  void list_points(const Shape& shape) {
    const auto all = points(shape);
    const auto bends = curvatures(shape);
    const auto last = all.size() - 1;
    const auto wanted = static_cast<std::size_t>(in_.points);
    for (std::size_t i = 0; i < wanted; ++i) {
      const double at = static_cast<double>(i) / static_cast<double>(wanted - 1);
      const auto p = point_at(shape, at * shape.length);
      const auto node = static_cast<std::size_t>(std::llround(at * static_cast<double>(last)));
      HosePoint out{{at * shape.length}, {p.x()}, {p.y()}, {p.z()}, std::nullopt};
      // Beyond a thousand lengths it is a straight line to anybody.
      if (bends[node] * shape.length > 1e-3) out.radius = Length{1 / bends[node]};
      out_.points.push_back(out);
    }
  }

  void others(RodSolver& solver, const Rod& rod, const Shape& shown) {
    if (in_.fineness == Fineness::moving) return;
    for (const auto& shape : solver.every(rod)) {
      if (std::abs(shape.energy - shown.energy) < 0.01 * shown.energy &&
          (point_at(shape, rod.length / 2) - point_at(shown, rod.length / 2)).norm() <
              0.01 * rod.length) {
        continue;
      }
      const auto middle = point_at(shape, rod.length / 2);
      out_.other_shapes.push_back({{1 / tightest(shape).curvature},
                                   {middle.x()},
                                   {middle.y()},
                                   {middle.z()},
                                   shape.energy / shown.energy});
    }
    if (!out_.other_shapes.empty())
      out_.notes.push_back("it can also lie in another way: a clamp between decides which");
  }

  const HoseShapeInput& in_;
  const Reach& ends_;
  const quantity::Unit& unit_;
  HoseShapeAnswer out_;
};

}  // namespace

Checked<HoseShapeAnswer> hose_shape(const HoseShapeInput& in, const describe::Context& context) {
  const auto ends = reach(in.near_end, in.far_end);
  if (!ends) return Fail(ends.error());
  return Work(in, *ends, context).run();
}

}  // namespace wm::hose
