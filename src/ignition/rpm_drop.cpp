#include "ignition/rpm_drop.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ignition/breakdown.hpp"
#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"

namespace wm::ignition {
namespace {

using describe::AnyQuantity;
using detail::problem;
using evidence::Verdict;
using quantity::RotationSpeed;

/// From here a sudden drop points to one dead plug or lead (secondary source).
constexpr double k_one_plug_dead_rpm = 250.0;

double in_rpm(RotationSpeed speed) { return speed.si * 60.0; }
std::string rpm_text(double rpm) { return fmt::format("{:.0f} rpm", rpm); }

/// Altitude of the standard atmosphere with this density.
quantity::Length density_altitude(quantity::Length pressure_altitude,
                                  quantity::Temperature outside) {
  const double pressure_ratio = standard_pressure(pressure_altitude).si / 101325.0;
  const double ratio = pressure_ratio * 288.15 / outside.si;
  return {288.15 / 0.0065 * (1.0 - std::pow(ratio, 1.0 / 4.2559))};
}

class Drop {
 public:
  Drop(const RpmDropInput& in, const describe::Context& context) : in_(in), context_(context) {}

  Checked<RpmDropAnswer> run() {
    if (in_.pressure_altitude.has_value() != in_.outside.has_value()) {
      problems_.push_back(problem("outside", Kind::missing,
                                  "density altitude needs altitude and temperature",
                                  "both, or neither", "25 degC"));
    }
    out_.left_drop = in_.both.value - in_.left.value;
    out_.right_drop = in_.both.value - in_.right.value;
    out_.difference = RotationSpeed{std::abs(out_.left_drop.si - out_.right_drop.si)};
    side("left", "right", out_.left_drop, in_.left_rough);
    side("right", "left", out_.right_drop, in_.right_rough);
    put("difference", any(out_.difference), in_.highest_difference, "highest_difference");
    show("difference", out_.difference);
    grounding();
    if (!problems_.empty()) return Fail(std::move(problems_));
    notes();
    out_.verdict = worst(out_.parts);
    out_.in_words = fmt::format("{}: left {}, right {}, apart {}", words(out_.verdict),
                                rpm_text(in_rpm(out_.left_drop)), rpm_text(in_rpm(out_.right_drop)),
                                rpm_text(in_rpm(out_.difference)));
    return std::move(out_);
  }

 private:
  double step() const {
    if (in_.step) return in_.step->value.si;
    return std::max({in_.both.resolution_si, in_.left.resolution_si, in_.right.resolution_si});
  }
  double doubt() const { return 2.0 * std::numbers::sqrt2 * step() / std::sqrt(12.0); }

  AnyQuantity any(RotationSpeed speed) const {
    return {quantity::KindOf::rotation_speed, speed.si, 0.0, doubt(), rpm_text(in_rpm(speed))};
  }

  PartVerdict* put(const std::string& what, const AnyQuantity& reading,
                   const std::optional<EnteredRpm>& highest, const char* path) {
    detail::HowRead how;
    how.guard_from = evidence::GuardFrom::expanded;
    auto got =
        detail::judge({what, reading, false, path, path},
                      detail::entered<RotationSpeed>({}, highest, in_.limit_source), how, context_);
    if (!got) {
      problems_.insert(problems_.end(), got.error().begin(), got.error().end());
      return nullptr;
    }
    out_.parts.push_back(std::move(*got));
    return &out_.parts.back();
  }

  void show(std::string_view about, RotationSpeed speed) {
    const auto more = detail::figures(context_.table("rpm-drop-figures"), about, any(speed));
    out_.figures.insert(out_.figures.end(), more.begin(), more.end());
  }

  void side(const std::string& name, const std::string& other, RotationSpeed drop, bool rough) {
    PartVerdict* v = put("drop on " + name, any(drop), in_.highest_drop, "highest_drop");
    show("drop", drop);
    if (v == nullptr) return;
    if (drop.si <= doubt()) {
      v->verdict = Verdict::undecided;
      v->in_words = "undecided (no drop)";
      v->reason = fmt::format(
          "no drop that can be seen on {}: the {} magneto may not be grounded, or the timing is "
          "too far advanced. Treat the propeller as live",
          name, other);
      v->do_next = {
          fmt::format("look at the grounding lead and the switch of the {} magneto", other)};
      return;
    }
    if (rough && in_rpm(drop) >= k_one_plug_dead_rpm) {
      v->do_next.emplace_back(
          "sudden, large and rough: one plug or lead of that magneto dead; find the cold cylinder");
    } else if (rough) {
      v->do_next.emplace_back("rough: one plug or lead of that magneto; find the cold cylinder");
    } else if (v->verdict == Verdict::does_not_conform) {
      v->do_next.emplace_back(
          "smooth: timing, mixture, or plugs worn alike (common practice, no source)");
    }
  }

  void grounding() {
    PartVerdict v;
    v.what = "OFF for an instant at idle";
    v.limit_source = "FAA-H-8083-32, magneto check: the engine must falter";
    switch (in_.grounding) {
      case GroundingCheck::not_done:
        v.reason = "not done: whether OFF grounds both magnetos is not known. Treat as live";
        v.do_next.emplace_back("at idle, before shutting down: OFF for an instant");
        break;
      case GroundingCheck::faltered:
        v.verdict = Verdict::conforms;
        v.reason = "the engine faltered";
        break;
      case GroundingCheck::did_not_falter:
        v.verdict = Verdict::does_not_conform;
        v.reason =
            "the engine ran on: a grounding lead is open or the switch is bad, a magneto is hot. "
            "Treat as live";
        v.do_next.emplace_back("keep clear of the propeller; find the open grounding lead first");
        break;
    }
    v.in_words = std::string(words(v.verdict));
    out_.parts.push_back(std::move(v));
  }

  void notes() {
    out_.notes.emplace_back(
        "treat every propeller as live, also after a good check: a lead can break afterwards");
    out_.notes.emplace_back("let the speed settle on BOTH between the sides");
    if (!in_.pressure_altitude || !in_.outside) return;
    out_.density_altitude = density_altitude(in_.pressure_altitude->value, *in_.outside);
    out_.notes.push_back(
        fmt::format("density altitude about {:.0f} ft: compare drops taken at a like one, and at "
                    "the same speed and mixture",
                    out_.density_altitude->si / 0.3048));
  }

  const RpmDropInput& in_;
  const describe::Context& context_;
  Problems problems_;
  RpmDropAnswer out_;
};

}  // namespace

Checked<RpmDropAnswer> rpm_drop(const RpmDropInput& in, const describe::Context& context) {
  return Drop(in, context).run();
}

std::string_view describe(describe::Choices<GroundingCheck>& c) {
  c.has(GroundingCheck::not_done, "not-done", "not done")
      .has(GroundingCheck::faltered, "faltered", "the engine faltered")
      .has(GroundingCheck::did_not_falter, "did-not-falter", "the engine ran on");
  return "grounding-check";
}

std::string_view describe(describe::Fields<RpmDropInput>& f) {
  using In = RpmDropInput;
  const auto none = quantity::rpm(0);
  const auto most = quantity::rpm(6000);
  f.has<&In::both>("both", "Speed on BOTH").needed("1700 rpm").above(none).at_most(most);
  f.has<&In::left>("left", "Speed on LEFT").needed("1640 rpm").between(none, most);
  f.has<&In::right>("right", "Speed on RIGHT").needed("1620 rpm").between(none, most);
  f.has<&In::step>("step", "To what the tachometer can be read")
      .example("10 rpm")
      .between(none, quantity::rpm(200));
  f.has<&In::highest_drop>("highest_drop", "Greatest drop of one side")
      .example("150 rpm")
      .between(none, most)
      .help("From the aircraft's manual.");
  f.has<&In::highest_difference>("highest_difference", "Greatest difference of both sides")
      .example("50 rpm")
      .between(none, most);
  f.has<&In::limit_source>("limit_source", "Where the limits are written")
      .example("aircraft's manual");
  f.has<&In::left_rough>("left_rough", "Rough on LEFT");
  f.has<&In::right_rough>("right_rough", "Rough on RIGHT");
  f.has<&In::grounding>("grounding", "OFF for an instant at idle").example("faltered");
  f.has<&In::pressure_altitude>("pressure_altitude", "Pressure altitude")
      .example("2400 ft")
      .between(quantity::feet(-2000), quantity::feet(30000));
  f.has<&In::outside>("outside", "Outside temperature")
      .between(quantity::celsius(-60), quantity::celsius(60));
  return "rpm-drop-input";
}

std::string_view describe(describe::Fields<RpmDropAnswer>& f) {
  using A = RpmDropAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::left_drop>("left_drop", "Drop on LEFT");
  f.has<&A::right_drop>("right_drop", "Drop on RIGHT");
  f.has<&A::difference>("difference", "Difference");
  f.has<&A::parts>("parts", "Each check");
  f.has<&A::figures>("figures", "Figures of the trade");
  f.has<&A::density_altitude>("density_altitude", "Density altitude");
  f.has<&A::notes>("notes", "Notes");
  return "rpm-drop-answer";
}

}  // namespace wm::ignition
