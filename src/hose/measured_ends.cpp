#include "hose/measured_ends.hpp"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/detail/say.hpp"
#include "hose/dummy_tube.hpp"
#include "hose/envelope.hpp"
#include "hose/tape.hpp"
#include "hose/window.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Length;

constexpr double k_degree = std::numbers::pi / 180;
constexpr double k_two_feet = 24 * 0.0254;
constexpr double k_contradicts = 3;  // standard uncertainties; beyond, a reading is a blunder

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {},
                std::string do_next = {}) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, std::move(do_next), {}};
}

/// Both ends in aircraft axes, with standard uncertainties.
struct Found {
  Vector near_way{1, 0, 0}, far_seat{0, 0, 0}, far_way{-1, 0, 0};
  double place_u{}, way_u{};
  std::vector<std::string> working;
};

Checked<Vector> near_way_of(const HoseEndsInput& in) {
  if (!in.near_leaves) return Vector(1, 0, 0);
  const Vector way(in.near_leaves->x, in.near_leaves->y, in.near_leaves->z);
  if (way.norm() == 0) {
    return Fail(Problems{problem("near_leaves", Kind::out_of_bounds, "a direction needs a length",
                                 "x, y and z of which one at least is not 0")});
  }
  return Vector(way.normalized());
}

class Work {
 public:
  Work(const Vector& near_way, const quantity::Unit& unit) : near_way_(near_way), unit_(unit) {}

  Checked<Found> operator()(const DummyTubeRoute& r) const {
    if (r.bends.empty()) {
      return Fail(Problems{problem("route/bends", Kind::missing, "a dummy tube has a bend or more",
                                   "its bends, in order from the near end",
                                   "A straight one: enter a bend of 0 deg.")});
    }
    DummyTube tube;
    for (const auto& b : r.bends)
      tube.steps.push_back({b.straight.value.si, b.bend.value.si, b.turn.value.si});
    tube.last_straight = r.last_straight.value.si;
    tube.bend_radius = r.bend_radius.value.si;
    tube.length_within = r.length_within.value.si;
    tube.bend_within = r.bend_within.value.si;
    tube.turn_within = r.turn_within.value.si;
    const auto end = far_end(tube);
    // The frame of the near end: along it, and as near to straight up as that allows.
    const Vector x = near_way_;
    const bool upright = std::abs(x.z()) > std::cos(10 * k_degree);
    const Vector pick = upright ? Vector::UnitX() : Vector::UnitZ();
    const Vector z = (pick - x * x.dot(pick)).normalized();
    Eigen::Matrix3d frame;
    frame << x, z.cross(x), z;
    Found out;
    out.near_way = x;
    out.far_seat = frame * end.place;
    out.far_way = -(frame * end.direction);
    out.place_u = end.place_u;
    out.way_u = end.direction_u;
    double along = tube.last_straight;
    for (const auto& s : tube.steps) along += s.straight + s.bend * tube.bend_radius;
    out.working.push_back(fmt::format("along the tube: {} straight and {} of bends = {}",
                                      say(along - bends(tube)), say(bends(tube)), say(along)));
    return out;
  }

  Checked<Found> operator()(const TapeRoute& r) const {
    TapeReadings t;
    t.near_rod = r.near_rod.value.si;
    t.far_rod = r.far_rod.value.si;
    t.seat_to_seat = r.seat_to_seat.value.si;
    t.near_seat_to_far_mark = r.near_seat_to_far_mark.value.si;
    t.near_mark_to_far_seat = r.near_mark_to_far_seat.value.si;
    t.mark_to_mark = r.mark_to_mark.value.si;
    t.near_rise = r.near_rise.value.si;
    t.far_rise = r.far_rise.value.si;
    t.line_rise = r.line_rise.value.si;
    t.to_the_left = r.to_the_left;
    t.tape_within = r.tape_within.value.si;
    t.rise_within = r.rise_within.value.si;
    const auto ends = tape_ends(t);
    const char* const worst = k_tape_readings[ends.worst];
    if (ends.found == TapeEnds::Found::no || ends.contradiction > k_contradicts) {
      return Fail(Problems{problem(
          fmt::format("route/{}", worst), Kind::refused,
          fmt::format("the readings contradict each other; this one is {} off where the others "
                      "meet",
                      ends.worst < 4
                          ? say(std::abs(ends.worst_by))
                          : fmt::format("{:.1f} degrees", std::abs(ends.worst_by) / k_degree)),
          "readings that fit within what tape and inclinometer give",
          "Take this one again, then the others; look at \"to the left\" as well.")});
    }
    if (ends.found == TapeEnds::Found::two_ways) {
      return Fail(Problems{problem(
          "route/mark_to_mark", Kind::refused, "these readings fit two different ways of the rods",
          "marks farther out, or another rod", "Take longer rods, or make a dummy tube.")});
    }
    // Only the plan of the near way is asked for; its rise was measured.
    const double heading = std::atan2(near_way_.y(), near_way_.x());
    const Eigen::AngleAxisd turn(heading, Vector::UnitZ());
    Found out;
    out.near_way = turn * ends.near_way;
    out.far_seat = turn * ends.far_seat;
    out.far_way = turn * ends.far_way;
    out.place_u = ends.place_u;
    out.way_u = std::hypot(ends.near_way_u, ends.far_way_u);
    out.working.push_back(
        fmt::format("seven readings for six unknowns; they contradict each other by {:.1f} times "
                    "their standard uncertainty",
                    ends.contradiction));
    return out;
  }

 private:
  static double bends(const DummyTube& tube) {
    double out = 0;
    for (const auto& s : tube.steps) out += s.bend * tube.bend_radius;
    return out;
  }
  [[nodiscard]] std::string say(double metres) const { return detail::say(metres, unit_); }

  const Vector& near_way_;
  const quantity::Unit& unit_;
};

class Judge {
 public:
  Judge(const HoseWanted& hose, const Found& found, const Vector& near_seat,
        const quantity::Unit& unit, HoseEndsAnswer& out)
      : hose_(hose), found_(found), near_seat_(near_seat), unit_(unit), out_(out) {}

  void run() {
    const double rigid = hose_.rigid_near.value.si + hose_.rigid_far.value.si;
    Rod rod;
    rod.start = near_seat_ + found_.near_way * hose_.rigid_near.value.si;
    rod.start_direction = found_.near_way;
    rod.end = near_seat_ + found_.far_seat + found_.far_way * hose_.rigid_far.value.si;
    rod.end_direction = -found_.far_way;
    // A rigid end turns its tip with its direction.
    const double place =
        std::hypot(2 * found_.place_u, 2 * found_.way_u * hose_.rigid_far.value.si);
    const double least = centreline_radius(hose_.least_radius.value.si, hose_.radius_to,
                                           hose_.outside_diameter.value.si);
    WindowAsk ask;
    ask.least_radius = least;
    ask.stretches = {1 - hose_.shortens.si, 1.0, 1 + hose_.lengthens.si};
    ask.positions = {rod};
    const auto exact = length_window(ask);
    if (!exact.shortest) {
      out_.to_order = out_.to_cut = Enough::no;
      out_.words = fmt::format(
          "no length keeps {} on this route, however well it is measured; the widest bend is {}",
          say(least), say(exact.best_radius));
      return;
    }
    ask.positions = doubtful(rod, place, 2 * found_.way_u);
    ask.positions.insert(ask.positions.begin(), rod);
    const auto sure = length_window(ask);
    const double room = 2 * hose_.made_within.value.si;
    const bool fits = sure.shortest && *sure.longest - *sure.shortest >= room;
    const double tolerance = (exact.best + rigid <= k_two_feet ? 3 : 5) * k_degree;
    const bool clocked = !hose_.elbows || 2 * found_.way_u <= tolerance;
    out_.to_cut = fits ? Enough::yes : Enough::no;
    out_.to_order = fits && clocked ? Enough::yes : Enough::no;
    if (sure.shortest) {
      out_.shortest = Length{*sure.shortest + rigid};
      out_.longest = Length{*sure.longest + rigid};
    }
    out_.working.push_back(fmt::format("window if the ends were exact: {} to {} overall",
                                       say(*exact.shortest + rigid), say(*exact.longest + rigid)));
    out_.working.push_back(
        sure.shortest
            ? fmt::format("wherever the far end is within what is known of it: {} to {}; made "
                          "within {} each way, {} are needed",
                          say(*sure.shortest + rigid), say(*sure.longest + rigid), say(0.5 * room),
                          say(room))
            : std::string("no length fits wherever the far end is within what is known of it"));
    if (!fits) {
      out_.words =
          "not good enough: what is not known of the ends is more than the window of lengths "
          "leaves; measure again, or make the hose with reusable ends and try it on";
    } else if (!clocked) {
      out_.words = fmt::format(
          "good enough to cut, not to order: directions are known within {:.1f} degrees, and the "
          "elbows are clocked within {:.0f}",
          2 * found_.way_u / k_degree, tolerance / k_degree);
    } else {
      out_.words = "good enough: every length in the window fits wherever the ends are";
    }
  }

 private:
  [[nodiscard]] std::string say(double metres) const { return detail::say(metres, unit_); }

  const HoseWanted& hose_;
  const Found& found_;
  const Vector& near_seat_;
  const quantity::Unit& unit_;
  HoseEndsAnswer& out_;
};

}  // namespace

Checked<HoseEndsAnswer> hose_ends(const HoseEndsInput& in, const describe::Context& context) {
  const auto way = near_way_of(in);
  if (!way) return Fail(way.error());
  const auto* tube = std::get_if<DummyTubeRoute>(&in.route);
  const auto& unit = quantity::typed_unit(
      tube != nullptr ? tube->last_straight : std::get<TapeRoute>(in.route).seat_to_seat,
      context.units);
  auto found = std::visit(Work(*way, unit), in.route);
  if (!found) return Fail(found.error());
  const Vector near_seat = in.near_seat ? vector_of(*in.near_seat) : Vector(0, 0, 0);
  HoseEndsAnswer out;
  const auto way_of = [](const Vector& v) {
    const auto tidy = [](double x) { return std::abs(x) < 1e-12 ? 0.0 : x; };
    return Way{tidy(v.x()), tidy(v.y()), tidy(v.z())};
  };
  out.near_seat = spot_of(near_seat);
  out.near_leaves = way_of(found->near_way);
  out.far_seat = spot_of(near_seat + found->far_seat);
  out.far_leaves = way_of(found->far_way);
  out.apart = {found->far_seat.norm()};
  out.place_within = {2 * found->place_u};
  out.direction_within = {2 * found->way_u};
  out.working = std::move(found->working);
  out.working.push_back(fmt::format(
      "far seat known within {} and the directions within {:.2f} degrees (k = 2, along the least "
      "known axis)",
      detail::say(out.place_within.si, unit), out.direction_within.si / k_degree));
  if (in.hose) {
    Judge(*in.hose, *found, near_seat, unit, out).run();
  } else {
    out.words = "whether that is good enough depends on the hose: enter it";
  }
  out.notes.emplace_back(
      "measure with the engine where it sits at rest; what the mounts let it move is entered in "
      "hose-length");
  return out;
}

}  // namespace wm::hose
