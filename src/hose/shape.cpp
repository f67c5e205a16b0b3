#include "hose/shape.hpp"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/chain.hpp"
#include "hose/detail/say.hpp"
#include "hose/lean.hpp"
#include "hose/rod_measure.hpp"
#include "hose/set_rod.hpp"
#include "hose/supports.hpp"
#include "hose/window.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Angle;
using quantity::Length;

constexpr double k_longest_share = 3.0;  // of the distance: beyond, loops and several shapes
constexpr double k_two_feet = 24 * 0.0254;
constexpr double k_shortened = 0.96;  // by pressure: AC 43.13-1B CHG 1, fig. 9-9
constexpr int k_ways_round = 12;
constexpr double k_degree = std::numbers::pi / 180;

struct Read {
  Tightest tightest;
  std::optional<double> clocking;
};

Read read_off(const Lie& lie, const Reach& ends) {
  Read out{tightest(lie), std::nullopt};
  if (ends.outlet_near && ends.outlet_far) {
    const double right_hand =
        angle_about(ends.rod.end_direction, carried(lie, *ends.outlet_near), *ends.outlet_far);
    out.clocking = std::fmod(2 * std::numbers::pi - right_hand, 2 * std::numbers::pi);
  }
  return out;
}

/// Errors of the second order in the spacing cancel.
double extrapolated(double coarse, double fine) { return (4 * fine - coarse) / 3; }

class Work {
 public:
  Work(const HoseShapeInput& in, const Reach& ends, std::vector<Support> supports,
       const describe::Context& context)
      : in_(in),
        ends_(ends),
        supports_(std::move(supports)),
        context_(context),
        unit_(quantity::typed_unit(in.outside_diameter, context.units)) {}

  Checked<HoseShapeAnswer> run() {
    const auto length = flexible();
    if (!length) return Fail(length.error());
    rod_ = ends_.rod;
    rod_.length = *length;
    if (auto short_of = too_short(rod_, supports_, in_.clamps, length_path(), extra_, unit_)) {
      if (short_of->path == length_path()) short_of->what += bend_needs();
      return Fail(Problems{std::move(*short_of)});
    }
    LieSolver solver(in_.fineness == Fineness::moving ? 32 : 64);
    Lie lie;
    solver.cold(rod_, supports_, lie);
    if (lie.settled != Settled::stable) {
      const bool folds = std::any_of(lie.spans.begin(), lie.spans.end(),
                                     [](const Shape& span) { return span.folded; });
      return Fail(Problems{{Kind::not_applicable,
                            length_path(),
                            (folds ? "no shape was found in which this hose lies still: it folds "
                                     "at a fitting or a clamp"
                                   : "no shape was found in which this hose lies still") +
                                bend_needs(),
                            {},
                            {},
                            "Try a length nearer to the best one of hose-length.",
                            {}}});
    }
    if (in_.set && in_.fineness != Fineness::moving) with_set(lie);
    if (in_.weight && in_.fineness != Fineness::moving) under_load(solver, lie);
    if (auto problems = leaning(lie); !problems.empty()) return Fail(std::move(problems));
    Read read = read_off(lie, ends_);
    if (in_.fineness == Fineness::printed && out_.touches.empty()) refine(lie, read);
    fill(lie, read);
    if (supports_.empty() && out_.touches.empty()) others(lie);
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
    extra_ = in_.flexible ? 0 : rigid;
    if (!(length > 0)) {
      return Fail(Problems{{Kind::not_applicable,
                            "overall",
                            fmt::format("the two ends alone are {} long", say(rigid)),
                            "more than that",
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

  /// The least length that the bend needs, to end a sentence; the chord alone is no answer to that.
  [[nodiscard]] std::string bend_needs() const {
    if (!in_.least_radius || in_.fineness == Fineness::moving) return {};
    WindowAsk ask;
    ask.positions = {rod_};
    ask.supports = supports_;
    ask.least_radius =
        centreline_radius(in_.least_radius->value.si, in_.radius_to, in_.outside_diameter.value.si);
    const auto limit = detail::say(ask.least_radius, unit_);
    const auto as_made = length_window(ask);
    if (!as_made.shortest)
      return fmt::format("; no length keeps a radius of {} to the centreline", limit);
    auto out = fmt::format("; a radius of {} to the centreline needs at least {}", limit,
                           detail::say(*as_made.shortest + extra_, unit_));
    ask.stretches = {k_shortened, 1.0};
    if (const auto pressed = length_window(ask); pressed.shortest)
      out += fmt::format(", and {} where pressure shortens it by 4 % (AC 43.13-1B CHG 1, fig. 9-9)",
                         detail::say(*pressed.shortest + extra_, unit_));
    return out;
  }

  void refine(Lie& lie, Read& read) const {
    LieSolver solver(128);
    Lie fine;
    solver.cold(rod_, supports_, fine);
    if (fine.settled != Settled::stable) return;
    const Read finer = read_off(fine, ends_);
    // Two families of shapes must not be mixed.
    if (std::abs(fine.energy - lie.energy) > 0.01 * lie.energy) return;
    read.tightest.curvature =
        1 / extrapolated(1 / read.tightest.curvature, 1 / finer.tightest.curvature);
    read.tightest.station = finer.tightest.station;
    if (read.clocking && finer.clocking) {
      const double apart = std::remainder(*finer.clocking - *read.clocking, 2 * std::numbers::pi);
      read.clocking = *finer.clocking + apart / 3;
    }
    lie = std::move(fine);
  }

  /// A hose with a set lies differently for each way round that it is fitted.
  void with_set(const Lie& lie) {
    const auto& plain = lie.spans.front();
    const Vector pick =
        std::abs(rod_.start_direction.x()) < 0.6 ? Vector::UnitX() : Vector::UnitY();
    const Vector u = rod_.start_direction.cross(pick).normalized();
    const Vector v = rod_.start_direction.cross(u);
    double least = std::numeric_limits<double>::infinity(), most = 0, moves = 0;
    int lost = 0;
    for (int way = 0; way < k_ways_round; ++way) {
      const double angle = 2 * std::numbers::pi * way / k_ways_round;
      const Vector x = std::cos(angle) * u + std::sin(angle) * v;
      auto frames = carried_frames(plain, x);
      SetRod rod;
      rod.start = rod_.start;
      rod.end = rod_.end;
      rod.length = rod_.length;
      Eigen::Matrix3d axes;
      axes << x, rod_.start_direction.cross(x), rod_.start_direction;
      rod.start_frame = Frame(axes);
      // Fitted without twist: the far fitting takes the frame as the hose brings it.
      rod.end_frame =
          Frame::FromTwoVectors(plain.tangents.back(), rod_.end_direction) * frames.back();
      rod.stiffness = {1, 1, in_.set->twist_stiffness};
      rod.at_rest = {0, 1 / in_.set->radius.value.si, 0};
      const auto shape = settle(rod, std::move(frames));
      if (!shape.stable) {
        ++lost;
        continue;
      }
      Lie bent;
      bent.settled = Settled::stable;
      bent.spans = {shape.curve()};
      bent.length = rod_.length;
      const double radius = 1 / tightest(bent).curvature;
      least = std::min(least, radius);
      most = std::max(most, radius);
      moves = std::max(moves, farthest(bent, lie));
    }
    if (lost > 0)
      out_.notes.push_back(
          fmt::format("with its set the hose finds no rest in {} of {} ways round: it snaps", lost,
                      k_ways_round));
    if (most == 0) return;
    out_.with_set = WithSet{{least}, {most}, {moves}};
  }

  void under_load(LieSolver& solver, const Lie& lie) {
    for (const auto& pull : pulls_of(*in_.weight)) {
      Rod heavy = rod_;
      heavy.weight = pull.weight;
      Lie bent;
      solver.warm(heavy, supports_, lie, bent);
      if (bent.settled != Settled::stable) {
        out_.notes.push_back(
            fmt::format("pulled {} no rest is found: it snaps into another shape", pull.words));
        continue;
      }
      out_.under_load.push_back(
          {pull.words, {1 / tightest(bent).curvature}, {farthest(bent, lie)}});
    }
  }

  Problems leaning(Lie& lie) {
    if (in_.leans_on.empty()) return {};
    Problems problems;
    std::vector<Solid> things;
    for (std::size_t i = 0; i < in_.leans_on.size(); ++i) {
      const auto path = fmt::format("leans_on/{}", i);
      auto solid = solid_of(in_.leans_on[i], path, context_, problems);
      if (!solid) continue;
      if (auto around =
              around_an_end(in_.leans_on[i], *solid, ends_, in_.outside_diameter.value.si, path))
        problems.push_back(std::move(*around));
      things.push_back(std::move(*solid));
    }
    if (!problems.empty() || in_.fineness == Fineness::moving) return problems;
    const auto leant = lean(rod_, things, in_.outside_diameter.value.si);
    if (!leant.found) {
      out_.notes.push_back(
          "no shape was found in which it rests against what is in its way: it slips off or jams");
      return {};
    }
    for (const auto& contact : leant.contacts) {
      out_.touches.push_back({in_.leans_on[contact.solid].name,
                              {static_cast<double>(contact.node) * leant.shape.spacing()},
                              contact.force * rod_.length * rod_.length});
    }
    if (leant.contacts.empty()) {
      out_.notes.push_back("it leans on nothing");
    } else {
      lie.spans = {leant.shape};
      lie.energy = leant.shape.energy;
      out_.notes.push_back("the shape shown leans on what is in its way: it will chafe there");
    }
    return {};
  }

  void fill(const Lie& lie, const Read& read) {
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
    pulled_tight(lie);
    circle(lie, read);
    in_clamps(lie);
    clock(read);
    list_points(lie);
    out_.notes.push_back(
        "taken for the shape shown: a round hose, made and stored straight, not twisted, without "
        "weight or friction; ends and clamps that hold it rigidly");
  }

  /// A pulled hose bends beside its fittings within sqrt(EI / pull) of them; where that is shorter
  /// than two pieces, the radius there is no figure to rely on.
  void pulled_tight(const Lie& lie) {
    for (const auto& span : lie.spans) {
      const double pull =
          std::max(span.force.dot(span.start_direction), span.force.dot(span.end_direction));
      if (!(pull > 0) || 1 / std::sqrt(pull) >= 2 * span.spacing()) continue;
      out_.notes.push_back(
          "pulled tight: it bends within so little of a fitting that its radius there is a rough "
          "figure; it needs more hose");
      return;
    }
  }

  /// The circle that touches the tightest place, drawn with the radius told.
  void circle(const Lie& lie, const Read& read) {
    const double radius = 1 / read.tightest.curvature;
    if (!(radius < 1000 * lie.length)) return;
    const double half = 0.5 * lie.spans.front().spacing();
    const double at = std::clamp(read.tightest.station, half, lie.length - half);
    const Vector before = tangent_at(lie, at - half), after = tangent_at(lie, at + half);
    const Vector square = before.cross(after);
    if (square.norm() == 0) return;
    const Vector unit = square.normalized();
    const Vector place = point_at(lie, read.tightest.station);
    const Vector along = tangent_at(lie, read.tightest.station);
    out_.bend = BendCircle{spot_of(place), spot_of(place + unit.cross(along).normalized() * radius),
                           Way{unit.x(), unit.y(), unit.z()}};
  }

  void in_clamps(const Lie& lie) {
    const auto stations = lie.stations();
    std::vector<Support> held = supports_;
    const double chords = shortest_way(rod_, supports_);
    double gone = 0;
    bool slides = false;
    Vector from = rod_.start;
    for (std::size_t k = 0; k < stations.size(); ++k) {
      InClamp out{in_.clamps[k].name, {stations[k]}, std::nullopt};
      gone += (supports_[k].place - from).norm();
      from = supports_[k].place;
      if (!supports_[k].station) {
        held[k].station = rod_.length * gone / chords;
        out.if_gripped = Length{*held[k].station};
        slides = true;
      }
      out_.in_clamps.push_back(std::move(out));
    }
    if (!slides) return;
    // No friction is one end of what can be; a firm grip is the other.
    LieSolver solver(64);
    Lie gripped;
    solver.cold(rod_, held, gripped);
    if (gripped.settled == Settled::stable)
      out_.tightest_if_gripped = Length{1 / tightest(gripped).curvature};
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

  void list_points(const Lie& lie) {
    const auto wanted = static_cast<std::size_t>(in_.points);
    for (std::size_t i = 0; i < wanted; ++i) {
      const double at = lie.length * static_cast<double>(i) / static_cast<double>(wanted - 1);
      const auto p = point_at(lie, at);
      const double bend = curvature_at(lie, at);
      const auto spot = spot_of(p);
      HosePoint out{{at}, spot.x, spot.y, spot.z, std::nullopt};
      // Beyond a thousand lengths it is a straight line to anybody.
      if (bend * lie.length > 1e-3) out.radius = Length{1 / bend};
      out_.points.push_back(out);
    }
  }

  void others(const Lie& lie) {
    if (in_.fineness == Fineness::moving) return;
    RodSolver solver(64);
    const Vector shown = point_at(lie, rod_.length / 2);
    for (const auto& shape : solver.every(rod_)) {
      const auto middle = point_at(shape, rod_.length / 2);
      if (std::abs(shape.energy - lie.energy) < 0.01 * lie.energy &&
          (middle - shown).norm() < 0.01 * rod_.length) {
        continue;
      }
      out_.other_shapes.push_back({{1 / tightest(shape).curvature},
                                   {middle.x()},
                                   {middle.y()},
                                   {middle.z()},
                                   shape.energy / lie.energy});
    }
    if (!out_.other_shapes.empty())
      out_.notes.push_back("it can also lie in another way: a clamp between decides which");
  }

  const HoseShapeInput& in_;
  const Reach& ends_;
  std::vector<Support> supports_;
  const describe::Context& context_;
  const quantity::Unit& unit_;
  Rod rod_;
  double extra_{};  // rigid length in the length that was given
  HoseShapeAnswer out_;
};

}  // namespace

Checked<HoseShapeAnswer> hose_shape(const HoseShapeInput& in, const describe::Context& context) {
  const auto ends = reach(in.near_end, in.far_end);
  if (!ends) return Fail(ends.error());
  Problems problems;
  if (auto collide = ends_collide(*ends, in.outside_diameter.value.si,
                                  quantity::typed_unit(in.outside_diameter, context.units)))
    problems.push_back(std::move(*collide));
  auto supports = supports_of(in.clamps, problems);
  const auto alone = [&](bool given, const char* path, const char* what) {
    if (!given || in.clamps.empty()) return;
    problems.push_back({Kind::conflict,
                        path,
                        fmt::format("{} is not worked out together with clamps", what),
                        "one of the two",
                        {},
                        {},
                        {}});
  };
  alone(in.set.has_value(), "set", "a set");
  alone(!in.leans_on.empty(), "leans_on", "leaning");
  if (!problems.empty()) return Fail(std::move(problems));
  return Work(in, *ends, std::move(supports), context).run();
}

}  // namespace wm::hose
