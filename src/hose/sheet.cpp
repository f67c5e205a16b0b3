#include "hose/sheet.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "hose/detail/say.hpp"
#include "hose/envelope.hpp"
#include "hose/sheet_tables.hpp"
#include "hose/supports.hpp"
#include "hose/window.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Length;

constexpr std::size_t k_ghost_points = 25;
constexpr double k_same = 1e-9;  // metres: a rounding

HoseLengthInput length_of(const HoseSheetInput& in) {
  HoseLengthInput out;
  out.near_end = in.near_end;
  out.far_end = in.far_end;
  out.outside_diameter = in.outside_diameter;
  out.least_radius = in.least_radius;
  out.radius_to = in.radius_to;
  out.lengthens = in.lengthens;
  out.shortens = in.shortens;
  out.motion = in.motion;
  out.place_within = in.place_within;
  out.directions_within = in.directions_within;
  out.keep_outs = in.keep_outs;
  out.clamps = in.clamps;
  out.weight = in.weight;
  out.chosen_overall = in.overall;
  return out;
}

HoseShapeInput shape_of(const HoseSheetInput& in, const EnteredLength& overall) {
  HoseShapeInput out;
  out.near_end = in.near_end;
  out.far_end = in.far_end;
  out.overall = overall;
  out.outside_diameter = in.outside_diameter;
  out.least_radius = in.least_radius;
  out.radius_to = in.radius_to;
  out.clamps = in.clamps;
  out.weight = in.weight;
  out.fineness = Fineness::printed;
  out.points = 65;
  return out;
}

class Sheet {
 public:
  Sheet(const HoseSheetInput& in, const describe::Context& context)
      : in_(in), unit_(quantity::typed_unit(in.outside_diameter, context.units)) {}

  HoseSheetAnswer run(HoseShapeAnswer shape, HoseLengthAnswer length, const TableWords& tables) {
    out_.shape = std::move(shape);
    out_.length = std::move(length);
    bend();
    window();
    ghosts();
    for (const auto& near : out_.length.near) out_.lines.push_back(near.words + ".");
    clocking();
    for (const auto& line : tables.lines) out_.lines.push_back(line);
    if (!in_.proof_pressure && !tables.has_proof)
      out_.lines.emplace_back("Proof pressure not entered: proof-test gives it, with its source.");
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string say(Length l) const { return detail::say(l.si, unit_); }

  void bend() {
    const auto& s = out_.shape;
    std::string limit;
    if (s.least_radius) {
      limit = in_.radius_to == RadiusTo::inside
                  ? fmt::format("; limit {} ({} to the inside + half the hose)",
                                say(*s.least_radius), say(in_.least_radius.value))
                  : fmt::format("; limit {}", say(*s.least_radius));
      if (!in_.radius_source.empty()) limit += ", " + in_.radius_source;
    }
    out_.lines.push_back(fmt::format("Tightest radius {} at {} from the near end{}.",
                                     say(s.tightest_radius), say(s.tightest_at), limit));
    for (const auto& load : s.under_load)
      out_.lines.push_back(fmt::format("Pulled {}: tightest radius {}, moves up to {}.", load.pull,
                                       say(load.tightest_radius), say(load.moves)));
  }

  void window() {
    const auto& l = out_.length;
    std::string binding = l.binding;
    if (!binding.empty()) binding[0] = static_cast<char>(std::toupper(binding[0]));
    if (l.shortest && l.longest) {
      out_.lines.push_back(fmt::format("Overall length {}; permitted {} to {}.",
                                       say(out_.shape.overall), say(*l.shortest), say(*l.longest)));
    } else {
      out_.lines.push_back(
          fmt::format("Drawn at {} overall; no length is permitted.", say(out_.shape.overall)));
    }
    if (l.shortest && out_.shape.overall.si < l.shortest->si - k_same) {
      out_.lines.push_back(fmt::format("Too short: needs at least {}, and {} was entered.",
                                       say(*l.shortest), say(out_.shape.overall)));
    }
    if (l.longest && out_.shape.overall.si > l.longest->si + k_same) {
      out_.lines.push_back(fmt::format("Too long: at most {}, and {} was entered.", say(*l.longest),
                                       say(out_.shape.overall)));
    }
    if (!binding.empty()) out_.lines.push_back(binding + ".");
  }

  /// Where motion and pressure take the hose: the extreme positions along each way it moves, and
  /// both ends of what pressure does to its length.
  void ghosts() {
    const auto ends = reach(in_.near_end, in_.far_end);
    Problems none;
    const auto supports = supports_of(in_.clamps, none);
    if (!ends || !none.empty()) return;
    const double made = out_.shape.flexible.si;
    const auto add = [&](std::string why, Rod rod, double stretch) {
      rod.length = made * stretch;
      const auto held = stretched(supports, stretch);
      if (taut_span(rod, held)) {
        out_.lines.push_back(fmt::format("Taut: {}.", why));
        return;
      }
      lies_.cold(rod, held, lie_);
      if (lie_.settled != Settled::stable) return;
      HoseGhost ghost;
      ghost.why = std::move(why);
      ghost.tightest_radius = {1 / tightest(lie_).curvature};
      for (std::size_t i = 0; i < k_ghost_points; ++i) {
        const double at =
            lie_.length * static_cast<double>(i) / static_cast<double>(k_ghost_points - 1);
        const auto p = point_at(lie_, at);
        const auto spot = spot_of(p);
        ghost.points.push_back({{at}, spot.x, spot.y, spot.z, std::nullopt});
      }
      out_.ghosts.push_back(std::move(ghost));
    };
    if (in_.lengthens.si > 0)
      add(fmt::format("under pressure, {:.0f} % longer", 100 * in_.lengthens.si), ends->rod,
          1 + in_.lengthens.si);
    if (in_.shortens.si > 0)
      add(fmt::format("under pressure, {:.0f} % shorter", 100 * in_.shortens.si), ends->rod,
          1 - in_.shortens.si);
    const auto motion = motion_of(in_.motion, ends->rod);
    const char* const ways[3][2] = {{"aft", "forward"}, {"right", "left"}, {"up", "down"}};
    for (int k = 0; k < 3; ++k) {
      for (int side = 0; side < 2; ++side) {
        const double sign = side == 0 ? 1 : -1;
        if (motion.shift[k] > 0)
          add(fmt::format("far end moved {}", ways[k][side]),
              moved(ends->rod, motion, Vector::Unit(k) * (sign * motion.shift[k]), {0, 0, 0}), 1);
        if (motion.turn[k] > 0)
          add(fmt::format("far end turned about {}, {}",
                          k == 0   ? "the long axis"
                          : k == 1 ? "the cross axis"
                                   : "the upright axis",
                          side == 0 ? "right hand" : "left hand"),
              moved(ends->rod, motion, {0, 0, 0}, Vector::Unit(k) * (sign * motion.turn[k])), 1);
      }
    }
    worst_of_all();
  }

  /// The ghosts move one way at a time; the worst is a corner of all of it together.
  void worst_of_all() {
    const auto& l = out_.length;
    const char* what = !in_.motion ? "pressure" : "pressure and motion";
    if (!l.worst_radius) {
      out_.lines.push_back(
          fmt::format("Under {} it is somewhere taut, or finds no rest: no radius there.", what));
    } else if (l.worst_radius->si < out_.shape.tightest_radius.si) {
      out_.lines.push_back(fmt::format(
          "Tightest under {}: radius {}, limit {}: {}.", what, say(*l.worst_radius),
          say(l.least_radius), l.worst_radius->si < l.least_radius.si ? "too tight" : "kept"));
    }
  }

  void clocking() {
    const auto& s = out_.shape;
    if (!s.clocking || !s.clocking_tolerance) return;
    const double degree = std::numbers::pi / 180;
    out_.lines.push_back(fmt::format("Clocking {:.0f} degrees +-{:.0f}. {}",
                                     s.clocking->si / degree, s.clocking_tolerance->si / degree,
                                     s.clocking_read));
  }

  const HoseSheetInput& in_;
  const quantity::Unit& unit_;
  LieSolver lies_{64};
  Lie lie_;
  HoseSheetAnswer out_;
};

}  // namespace

Checked<HoseSheetAnswer> hose_sheet(const HoseSheetInput& in, const describe::Context& context) {
  auto tables = compared_with_tables(in, context);
  auto length = hose_length(length_of(in), context);
  if (!length) {
    Problems problems = length.error();
    problems.insert(problems.end(), tables.refused.begin(), tables.refused.end());
    return Fail(std::move(problems));
  }
  if (!tables.refused.empty()) return Fail(std::move(tables.refused));
  const EnteredLength overall = in.overall         ? *in.overall
                                : length->to_order ? *length->to_order
                                                   : EnteredLength{length->best, 0.0, {}};
  auto shape = hose_shape(shape_of(in, overall), context);
  if (!shape) return Fail(shape.error());
  return Sheet(in, context).run(std::move(*shape), std::move(*length), tables);
}

}  // namespace wm::hose
