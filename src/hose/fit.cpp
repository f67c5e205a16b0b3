#include "hose/fit.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/chance.hpp"
#include "hose/clearance.hpp"
#include "hose/detail/say.hpp"
#include "hose/detail/things.hpp"
#include "hose/envelope.hpp"
#include "hose/rod_measure.hpp"
#include "hose/supports.hpp"
#include "hose/window.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Length;

constexpr double k_between_supports = 24 * 0.0254;  // AC 43.13-1B par. 9-30d(3)
constexpr double k_eighth_inch = 0.0254 / 8;
constexpr double k_noted_turn = 10 * std::numbers::pi / 180;  // common practice, no source

class Work {
 public:
  Work(const HoseLengthInput& in, const Reach& ends, std::vector<Support> supports,
       std::vector<detail::Thing> things, const describe::Context& context)
      : in_(in),
        ends_(ends),
        supports_(std::move(supports)),
        things_(std::move(things)),
        context_(context),
        unit_(quantity::typed_unit(in.outside_diameter, context.units)),
        rigid_(ends.rigid_near + ends.rigid_far),
        limit_(centreline_radius(in.least_radius.value.si, in.radius_to,
                                 in.outside_diameter.value.si)),
        motion_(motion_of(in.motion, ends.rod)) {}

  Checked<HoseLengthAnswer> run() {
    ask_.positions = extremes(ends_.rod, motion_);
    for (const auto& position : in_doubt()) ask_.positions.push_back(position);
    ask_.supports = supports_;
    ask_.least_radius = limit_;
    ask_.straight = 2 * in_.outside_diameter.value.si;
    ask_.most_turn = in_.most_turn_at_ends ? in_.most_turn_at_ends->value.si : 0;
    ask_.stretches = {1 - in_.shortens.si, 1.0, 1 + in_.lengthens.si};
    clear_.emplace(clear_ask());
    const auto window = refined(ask_, length_window(ask_));
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
      if (auto stopped = say_window(window); !stopped.empty()) return Fail(std::move(stopped));
    } else {
      out_.binding = fmt::format(
          "no length keeps {}: the widest bend that this route allows without a loop is {}, with "
          "{} of hose",
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
    tightest_of_all(looked_at - rigid_);
    straight_part(looked_at - rigid_);
    slack_rules();
    routing_rules();
    out_.notes.push_back(
        in_.weight
            ? "taken: a round hose, made and stored straight, not twisted, without friction; "
              "its weight counts for what is near it, not for the window"
            : "taken: a round hose, made and stored straight, not twisted, without weight or "
              "friction");
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string say(double metres) const { return quantity::pencil(metres, unit_); }

  /// In a sentence: no more digits than a rule shows.
  [[nodiscard]] std::string words(double metres) const { return detail::say(metres, unit_); }

  /// Where the far end may be by how well it is known; a rigid end carries its tip round with it.
  [[nodiscard]] std::vector<Rod> in_doubt() const {
    const double angle = in_.directions_within ? in_.directions_within->value.si : 0;
    const double place = in_.place_within ? in_.place_within->value.si : 0;
    return doubtful(ends_.rod, std::hypot(place, angle * ends_.rigid_far), angle);
  }

  [[nodiscard]] ClearAsk clear_ask() const {
    ClearAsk out{ask_.positions, supports_, ask_.stretches, {}, in_.outside_diameter.value.si, {}};
    if (in_.weight) {
      for (const auto& pull : pulls_of(*in_.weight)) out.pulls.push_back(pull.weight);
    }
    for (const auto& thing : things_) out.things.push_back(thing.apart.solid);
    return out;
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

  Problems say_window(const Window& window) {
    double shortest = *window.shortest, longest = *window.longest;
    out_.working.push_back(
        fmt::format("window of the hose that can bend: {} to {}; widest bend {} "
                    "at {}",
                    say(shortest), say(longest), say(window.best_radius), say(window.best)));
    std::string short_side =
                    fmt::format("the bend is too tight beside the fittings{}", pressure_words()),
                long_side = "it is too tight in its bow";
    if (in_.most_turn_at_ends) {
      short_side += ", or not straight enough behind them";
      long_side += ", or not straight enough behind its ends";
    }
    if (window.open_above) long_side = "nothing was looked at";
    if (!things_.empty()) {
      const auto kept =
          detail::keeps_away(*clear_, things_, shortest, longest, window.best, context_);
      if (kept.stopped) return {{Kind::stopped, "", "stopped", {}, {}, {}, {}}};
      if (!kept.any) {
        out_.binding =
            fmt::format("no length keeps away from {}: by the bend alone {} to {} overall would do",
                        kept.binds_long, words(shortest + rigid_), words(longest + rigid_));
        out_.notes.push_back("move the route, clamp it, or turn a fitting");
        return {};
      }
      if (kept.shortest > shortest) {
        shortest = kept.shortest;
        short_side = fmt::format("it comes too near to {}", kept.binds_short);
      }
      if (kept.longest < longest) {
        longest = kept.longest;
        long_side = fmt::format("it comes too near to {}", kept.binds_long);
      }
      out_.working.push_back(
          fmt::format("of these, away from everything: {} to {}", say(shortest), say(longest)));
    }
    const double within = made_within();
    if (longest - shortest < 2 * within) {
      out_.binding = fmt::format(
          "the window, {} to {} overall, is narrower than what it is made within, {} each way",
          words(shortest + rigid_), words(longest + rigid_), words(within));
      return {};
    }
    if (within > 0)
      out_.working.push_back(fmt::format("made within {} each way: to order {} to {} of hose",
                                         say(within), say(shortest + within),
                                         say(longest - within)));
    const bool open = window.open_above && longest == *window.longest;
    shortest += within;
    longest -= within;
    out_.shortest = Length{shortest + rigid_};
    out_.longest = Length{longest + rigid_};
    out_.working.push_back(fmt::format("overall = hose + both rigid ends = {} to {}",
                                       say(out_.shortest->si), say(out_.longest->si)));
    if (open)
      out_.notes.push_back(
          "the longest length is where the search ended, not where the radius did");
    out_.binding = fmt::format("shorter than {}, {}; longer than {}, {}", words(out_.shortest->si),
                               short_side, words(out_.longest->si), long_side);
    if (within > 0)
      out_.binding += fmt::format(", each with the {} that it is made within", words(within));
    choose();
    return {};
  }

  [[nodiscard]] std::string pressure_words() const {
    return in_.shortens.si > 0 ? " once pressure has shortened it" : "";
  }

  [[nodiscard]] bool is_nearly_straight() const {
    const Vector across = ends_.rod.end - ends_.rod.start;
    const auto& ahead = ends_.rod.start_direction;
    return supports_.empty() && ahead.dot(ends_.rod.end_direction) > 0.94 &&
           ahead.dot(across) > 0.94 * across.norm();
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
    if (order < out_.shortest->si)
      out_.notes.push_back(fmt::format("too short: needs at least {} overall; you gave {}",
                                       words(out_.shortest->si), words(order)));
    if (order > out_.longest->si)
      out_.notes.push_back(fmt::format("too long: at most {} overall; you gave {}",
                                       words(out_.longest->si), words(order)));
  }

  [[nodiscard]] double made_within() const {
    return in_.length_tolerance ? in_.length_tolerance->value.si : 0;
  }

  /// The shortest and the longest that a hose of this length may turn out, where that is known.
  [[nodiscard]] std::vector<double> as_it_may_be_made(double length) const {
    if (made_within() == 0) return {};
    std::vector<double> out{length + made_within()};
    if (length > made_within()) out.push_back(length - made_within());
    return out;
  }

  /// What is near, at this length of hose.
  Problems surroundings(double length) {
    if (things_.empty()) return draw(length);
    auto found = clear_->at(length, true, true);
    for (const double made : as_it_may_be_made(length)) found.add(clear_->at(made, true, true));
    for (std::size_t i = 0; i < things_.size(); ++i)
      out_.near.push_back(detail::told(things_[i], found, i, unit_));
    if (found.any_side) {
      out_.notes.push_back(
          "its ends are in line: the hose may bow to any side, and the distances are the least of "
          "all sides; a clamp between holds it to one");
      if (in_.samples > 0)
        out_.notes.push_back("the share of drawn positions knows only the side that is drawn");
    } else if (found.other_shapes) {
      out_.notes.push_back(
          "it can also lie in another way, and the distances are the least of all: a clamp between "
          "decides which");
    }
    return draw(length);
  }

  /// Corners of motion and pressure together: each alone does not show the tightest bend.
  void tightest_of_all(double length) {
    WindowAsk bend = ask_;
    bend.most_turn = 0;
    double radius = worst_radius(bend, length);
    for (const double made : as_it_may_be_made(length))
      radius = std::min(radius, worst_radius(bend, made));
    if (radius > 0 && std::isfinite(radius)) out_.worst_radius = Length{radius};
  }

  /// A handbook asks for straight hose behind each end; what it turns there is told.
  void straight_part(double length) {
    Rod rod = ends_.rod;
    rod.length = length;
    Lie lie;
    if (taut_span(rod, supports_)) return;
    lies_.cold(rod, supports_, lie);
    if (lie.settled != Settled::stable) return;
    const double turn = turn_at_ends(lie, ask_.straight);
    out_.turn_at_ends = quantity::Angle{turn};
    out_.working.push_back(fmt::format(
        "straight behind each end: 2 x {} = {}; there the hose turns up to {:.1f} degrees",
        say(in_.outside_diameter.value.si), say(ask_.straight), turn * 180 / std::numbers::pi));
    if (!in_.most_turn_at_ends && turn > k_noted_turn)
      out_.notes.push_back(
          "the hose is not straight for two diameters behind its ends, as FAA-H-8083-30 p. 7-19 "
          "asks: a longer rigid end or another direction would help");
  }

  Problems draw(double length) {
    if (in_.samples == 0) return {};
    ChanceAsk ask;
    ask.rod = ends_.rod;
    ask.rod.length = length;
    ask.supports = supports_;
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

  /// What no sum of ours shows and the handbooks ask for all the same.
  void routing_rules() {
    if (!out_.to_order) return;
    const double hose = out_.to_order->value.si - rigid_;
    const auto spans = static_cast<double>(supports_.size() + 1);
    if (hose / spans > k_between_supports)
      out_.notes.push_back(
          fmt::format("more than 24 in of hose {}: AC 43.13-1B par. 9-30d(3) asks for a support at "
                      "least every 24 in",
                      supports_.empty() ? "without a support" : "between supports, on the mean"));
    if (!in_.motion) return;
    out_.notes.emplace_back(
        "to the engine or what is mounted on it: 1 1/2 in of slack, or a suitable bend, between "
        "the last "
        "support and the engine (NAVEDTRA 14018 p. 5-26); let it bend in the plane "
        "in which it moves, and clamp it where that plane changes (p. 5-27)");
    out_.notes.emplace_back(
        "a bend that flexes needs more than the static least radius, by a factor (NAVEDTRA 14018 "
        "fig. "
        "5-24) that is not known here: ask its maker");
  }

  const HoseLengthInput& in_;
  const Reach& ends_;
  std::vector<Support> supports_;
  std::vector<detail::Thing> things_;
  const describe::Context& context_;
  const quantity::Unit& unit_;
  double rigid_;
  double limit_;
  Motion motion_;
  WindowAsk ask_;
  std::optional<Clearances> clear_;
  LieSolver lies_{64};
  HoseLengthAnswer out_;
};

}  // namespace

Motion motion_of(const std::optional<EngineMotion>& entered, const Rod& rod) {
  Motion out;
  out.centre = rod.end;
  if (!entered) return out;
  const auto& m = *entered;
  const auto si = [](const auto& v) { return v ? v->value.si : 0.0; };
  out.shift = {si(m.shift_x), si(m.shift_y), si(m.shift_z)};
  out.turn = {si(m.turn_x), si(m.turn_y), si(m.turn_z)};
  if (m.centre) out.centre = vector_of(*m.centre);
  return out;
}

Checked<HoseLengthAnswer> hose_length(const HoseLengthInput& in, const describe::Context& context) {
  const auto ends = reach(in.near_end, in.far_end);
  if (!ends) return Fail(ends.error());
  Problems problems;
  if (auto collide = ends_collide(*ends, in.outside_diameter.value.si,
                                  quantity::typed_unit(in.outside_diameter, context.units)))
    problems.push_back(std::move(*collide));
  auto supports = supports_of(in.clamps, problems);
  auto things = detail::things_of(in, *ends, context, problems);
  if (!problems.empty()) return Fail(std::move(problems));
  return Work(in, *ends, std::move(supports), std::move(things), context).run();
}

}  // namespace wm::hose
