#include "hose/fit.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "hose/chance.hpp"
#include "hose/envelope.hpp"
#include "hose/rod_measure.hpp"
#include "hose/window.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Length;

constexpr double k_eighth_inch = 0.0254 / 8;
constexpr double k_wiring = 6 * 0.0254;        // AC 43.13-1B par. 11-96
constexpr double k_wiring_least = 2 * 0.0254;  // the same, where 6 in is impossible

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {}) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, {}, {}};
}

struct ToSolid {
  const std::string& path;
  Problems& problems;

  std::optional<Solid> operator()(const BallShape& s) const {
    return Solid(Sphere{vector_of(s.centre), s.radius.value.si});
  }
  std::optional<Solid> operator()(const TubeShape& s) const {
    return Solid(Capsule{vector_of(s.from), vector_of(s.to), s.radius.value.si});
  }
  std::optional<Solid> operator()(const BoxShape& s) const {
    return Solid(Box{vector_of(s.centre),
                     0.5 * Vector(s.size_x.value.si, s.size_y.value.si, s.size_z.value.si),
                     Eigen::Matrix3d::Identity()});
  }
  std::optional<Solid> operator()(const WallShape& s) const {
    const Vector normal(s.free_side.x, s.free_side.y, s.free_side.z);
    if (normal.norm() == 0) {
      problems.push_back(
          problem(path + "/shape/free_side", Kind::out_of_bounds, "a direction needs a length"));
      return std::nullopt;
    }
    return Solid(Wall{vector_of(s.point), normal.normalized()});
  }
  std::optional<Solid> operator()(const MeshShape& /*s*/) const { return std::nullopt; }
};

struct Thing {
  std::string name;
  Beside beside;
  Apart apart;
};

std::vector<Thing> things_of(const HoseLengthInput& in, const Rod& rod, Problems& problems) {
  std::vector<Thing> out;
  for (std::size_t i = 0; i < in.keep_outs.size(); ++i) {
    const auto& keep = in.keep_outs[i];
    const auto path = fmt::format("keep_outs/{}", i);
    if (!keep.needed && keep.beside != Beside::wiring) {
      problems.push_back(problem(path + "/needed", Kind::missing,
                                 fmt::format("no document gives the distance from {}", keep.name),
                                 "the distance that the maker's manual or you ask for"));
      continue;
    }
    auto solid = std::visit(ToSolid{path, problems}, keep.shape);
    if (!solid) continue;
    for (const Vector* end : {&rod.start, &rod.end}) {
      if (nearest(*solid, *end, *end).distance < 0.5 * in.outside_diameter.value.si) {
        problems.push_back(problem(path + "/shape", Kind::conflict,
                                   fmt::format("{} lies around an end of the hose", keep.name),
                                   "a thing beside the hose, not around its fitting"));
        break;
      }
    }
    out.push_back({keep.name,
                   keep.beside,
                   {std::move(*solid), keep.needed ? keep.needed->value.si : k_wiring}});
  }
  return out;
}

Motion motion_of(const HoseLengthInput& in, const Rod& rod) {
  Motion out;
  out.centre = rod.end;
  if (!in.motion) return out;
  const auto& m = *in.motion;
  const auto si = [](const auto& v) { return v ? v->value.si : 0.0; };
  out.shift = {si(m.shift_x), si(m.shift_y), si(m.shift_z)};
  out.turn = {si(m.turn_x), si(m.turn_y), si(m.turn_z)};
  if (m.centre) out.centre = vector_of(*m.centre);
  return out;
}

class Work {
 public:
  Work(const HoseLengthInput& in, const Reach& ends, std::vector<Thing> things,
       const describe::Context& context)
      : in_(in),
        ends_(ends),
        things_(std::move(things)),
        context_(context),
        unit_(quantity::typed_unit(in.outside_diameter, context.units)),
        rigid_(ends.rigid_near + ends.rigid_far),
        limit_(centreline_radius(in.least_radius.value.si, in.radius_to,
                                 in.outside_diameter.value.si)),
        motion_(motion_of(in, ends.rod)) {}

  Checked<HoseLengthAnswer> run() {
    ask_.positions = extremes(ends_.rod, motion_);
    ask_.least_radius = limit_;
    ask_.stretches = {1 - in_.shortens.si, 1.0, 1 + in_.lengthens.si};
    const auto window = length_window(ask_);
    out_.rigid = {rigid_};
    out_.least_radius = {limit_};
    out_.best = {window.best + rigid_};
    out_.best_radius = {window.best_radius};
    out_.straight_at_ends = {2 * in_.outside_diameter.value.si};
    for (const auto& point : window.scan) {
      if (point.radius > 0 && std::isfinite(point.radius))
        out_.scan.push_back({{point.length + rigid_}, {point.radius}});
    }
    say_limit();
    if (window.shortest) {
      say_window(window);
    } else {
      out_.binding = fmt::format(
          "no length keeps {}: the widest bend that this route allows is {}, with {} of hose",
          words(limit_), words(window.best_radius), words(window.best));
      out_.notes.push_back(
          window.another ? "a much longer hose in a loop would keep it; turn or move a fitting, or "
                           "take elbows, before that"
                         : "turn or move a fitting, take elbows, or a hose of smaller size");
    }
    // Where no length will do, the chosen or the best one is looked at all the same.
    const double looked_at = out_.to_order        ? out_.to_order->value.si
                             : in_.chosen_overall ? in_.chosen_overall->value.si
                                                  : out_.best.si;
    if (const auto stopped = surroundings(looked_at - rigid_); !stopped.empty())
      return Fail(stopped);
    slack_rules();
    out_.notes.push_back(
        "taken: a round hose, made and stored straight, not twisted, without weight or friction");
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string say(double metres) const { return quantity::pencil(metres, unit_); }

  /// In a sentence: no more digits than a rule shows.
  [[nodiscard]] std::string words(double metres) const {
    return quantity::print(metres, unit_, 0.0);
  }

  void say_limit() {
    if (in_.radius_to == RadiusTo::inside) {
      out_.working.push_back(fmt::format("least radius to the centreline = {} + {} / 2 = {}",
                                         say(in_.least_radius.value.si),
                                         say(in_.outside_diameter.value.si), say(limit_)));
    }
    out_.working.push_back(fmt::format(
        "looked at {} position{} of the ends, each with the hose as made, {:.0f} % longer and "
        "{:.0f} % shorter",
        ask_.positions.size(), ask_.positions.size() == 1 ? "" : "s", 100 * in_.lengthens.si,
        100 * in_.shortens.si));
  }

  void say_window(const Window& window) {
    out_.shortest = Length{*window.shortest + rigid_};
    out_.longest = Length{*window.longest + rigid_};
    out_.working.push_back(fmt::format(
        "window of the hose that can bend: {} to {}; widest bend {} "
        "at {}",
        say(*window.shortest), say(*window.longest), say(window.best_radius), say(window.best)));
    out_.working.push_back(fmt::format("overall = hose + both rigid ends = {} to {}",
                                       say(out_.shortest->si), say(out_.longest->si)));
    if (window.open_above)
      out_.notes.push_back(
          "the longest length is where the search ended, not where the radius did");
    out_.binding = fmt::format(
        "shorter than {}, the bend is too tight beside the fittings{}; longer "
        "than {}, it is too tight in its bow",
        words(out_.shortest->si), pressure_words(), words(out_.longest->si));
    choose();
  }

  [[nodiscard]] std::string pressure_words() const {
    return in_.shortens.si > 0 ? " once pressure has shortened it" : "";
  }

  [[nodiscard]] bool is_nearly_straight() const {
    const Vector across = ends_.rod.end - ends_.rod.start;
    const auto& ahead = ends_.rod.start_direction;
    return ahead.dot(ends_.rod.end_direction) > 0.94 && ahead.dot(across) > 0.94 * across.norm();
  }
  /// Overall length with 5 % of slack on a nearly straight run, else 0.
  /// @source FAA-H-8083-30 p. 7-19: 5 to 8 % of the hose's total length
  [[nodiscard]] double slack_overall() const {
    if (!is_nearly_straight()) return 0;
    return (ends_.rod.end - ends_.rod.start).norm() / 0.95 + rigid_;
  }

  void choose() {
    const bool inches = unit_.symbol == "in" || unit_.symbol == "ft";
    const double step = inches ? k_eighth_inch : 0.001;
    double order =
        in_.chosen_overall ? in_.chosen_overall->value.si : std::round(out_.best.si / step) * step;
    if (const double slack = slack_overall();
        !in_.chosen_overall && order < slack && slack <= out_.longest->si) {
      order = std::ceil(slack / step - 1e-6) * step;
      out_.notes.push_back(
          "nearly straight run: ordered with 5 % of slack, not with the widest bend");
    }
    if (!in_.chosen_overall && (order < out_.shortest->si || order > out_.longest->si)) {
      order = out_.best.si;
      out_.notes.push_back("the window holds no whole step of a rule: order the length as it is");
    }
    out_.to_order = EnteredLength{{order}, 0.001 * unit_.factor, {}};
    if (order < out_.shortest->si || order > out_.longest->si) {
      out_.notes.push_back(fmt::format("the chosen {} lies outside the window", words(order)));
    }
  }

  /// What is near, at this length of hose, over all positions and pressures.
  Problems surroundings(double length) {
    std::vector<Gap> worst(things_.size());
    for (auto& g : worst) g.clear = 1e9;
    RodSolver solver(ask_.segments);
    Shape before, shape;
    for (const auto& position : ask_.positions) {
      for (const double stretch : ask_.stretches) {
        Rod rod = position;
        rod.length = length * stretch;
        if (rod.length <= (rod.end - rod.start).norm() * (1 + 1e-6)) continue;
        solver.warm(rod, before, shape);
        if (shape.settled != Settled::stable) continue;
        for (std::size_t i = 0; i < things_.size(); ++i) {
          const auto g = gap(shape, in_.outside_diameter.value.si, things_[i].apart.solid);
          if (g.clear < worst[i].clear) worst[i] = g;
        }
        std::swap(before, shape);
      }
    }
    for (std::size_t i = 0; i < things_.size(); ++i) tell(things_[i], worst[i]);
    return draw(length);
  }

  void tell(const Thing& thing, const Gap& worst) {
    NearThing near;
    near.name = thing.name;
    near.gap = {worst.clear};
    near.needed = Length{thing.apart.needed};
    near.at = {worst.station};
    const bool keeps = worst.clear >= thing.apart.needed;
    near.words = worst.clear < 0
                     ? fmt::format("runs through {}", thing.name)
                     : fmt::format("{} from {}, {} needed: {}", words(worst.clear), thing.name,
                                   words(thing.apart.needed), keeps ? "kept" : "too near");
    if (!keeps && thing.beside == Beside::wiring && worst.clear >= k_wiring_least)
      near.words +=
          "; under 6 in only where it is not possible otherwise, closely clamped (AC 43.13-1B par. "
          "11-96)";
    out_.near.push_back(std::move(near));
  }

  Problems draw(double length) {
    if (in_.samples == 0) return {};
    ChanceAsk ask;
    ask.rod = ends_.rod;
    ask.rod.length = length;
    ask.motion = motion_;
    ask.least_radius = limit_;
    ask.outside_diameter = in_.outside_diameter.value.si;
    ask.length_tolerance = in_.length_tolerance ? in_.length_tolerance->value.si : 0;
    ask.direction_tolerance = in_.direction_tolerance ? in_.direction_tolerance->value.si : 0;
    ask.lengthens = in_.lengthens.si;
    ask.shortens = in_.shortens.si;
    for (const auto& thing : things_) ask.keep_outs.push_back(thing.apart);
    ask.samples = in_.samples;
    ask.seed = context_.seed;
    const auto got = chance(ask, context_.progress);
    if (got.samples < in_.samples) return {{Kind::stopped, "", "stopped", {}, {}, {}, {}}};
    out_.probability =
        quantity::ratio(static_cast<double>(got.kept) / static_cast<double>(got.samples));
    out_.working.push_back(
        fmt::format("{} of {} drawn positions keep everything; too tight {}, too near {}, taut {}",
                    got.kept, got.samples, got.too_tight, got.too_near, got.taut));
    if (got.jumped > 0)
      out_.notes.push_back(
          fmt::format("in {} of {} drawn positions the hose snaps into another shape", got.jumped,
                      got.samples));
    return {};
  }

  void slack_rules() {
    if (!out_.to_order) return;
    const double chord = (ends_.rod.end - ends_.rod.start).norm();
    const double hose = out_.to_order->value.si - rigid_;
    out_.working.push_back(fmt::format("slack at {} overall = 1 - {} / {} = {:.1f} % of the hose",
                                       say(out_.to_order->value.si), say(chord), say(hose),
                                       100 * (1 - chord / hose)));
    if (is_nearly_straight() && 1 - chord / hose < 0.05)
      out_.notes.push_back(
          "less than the 5 to 8 % of slack that FAA-H-8083-30 p. 7-19 asks for on "
          "a nearly straight run");
  }

  const HoseLengthInput& in_;
  const Reach& ends_;
  std::vector<Thing> things_;
  const describe::Context& context_;
  const quantity::Unit& unit_;
  double rigid_;
  double limit_;
  Motion motion_;
  WindowAsk ask_;
  HoseLengthAnswer out_;
};

}  // namespace

Checked<HoseLengthAnswer> hose_length(const HoseLengthInput& in, const describe::Context& context) {
  const auto ends = reach(in.near_end, in.far_end);
  if (!ends) return Fail(ends.error());
  Problems problems;
  auto things = things_of(in, ends->rod, problems);
  if (!problems.empty()) return Fail(std::move(problems));
  return Work(in, *ends, std::move(things), context).run();
}

}  // namespace wm::hose
