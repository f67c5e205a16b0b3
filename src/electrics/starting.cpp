#include "electrics/starting.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "electrics/detail/milliohm.hpp"
#include "electrics/detail/problem.hpp"
#include "electrics/detail/start_model.hpp"

namespace wm::electrics {
namespace {

using detail::milliohm;
using detail::problem;
using detail::StartModel;
using detail::StartState;
using quantity::pencil;

class Start {
 public:
  explicit Start(const StartingInput& in) : in_(in) {}

  Checked<StartingAnswer> run() {
    Problems problems;
    check_inputs(problems);
    auto model = detail::model_of(in_, out_.working);
    if (!model) problems.insert(problems.end(), model.error().begin(), model.error().end());
    if (!problems.empty()) return Fail(std::move(problems));
    model_ = std::move(*model);
    list_elements();
    detail::judge_readings(in_, model_, out_);
    const auto current = cranking_current();
    if (!current) return Fail(Problems{no_current()});
    out_.current = *current;
    const auto state = detail::crank(in_, model_, out_.current.si);
    if (!state) return Fail(Problems{state.error()});
    tell(*state);
    if (in_.motor) turn();
    locate();
    detail::show_rules(in_, out_);
    notes();
    return std::move(out_);
  }

 private:
  void check_inputs(Problems& problems) const {
    const bool any_drop = std::any_of(in_.elements.begin(), in_.elements.end(),
                                      [](const StartElement& e) { return e.drop.has_value(); });
    if (!in_.current && !in_.motor && !in_.measured_current && !any_drop) {
      problems.push_back(no_current());
    }
    if (in_.measured_current && !(in_.measured_current->value.si > 0.0)) {
      problems.push_back(problem("measured_current", Kind::conflict,
                                 "drops without a current say nothing", "more than 0 A", "200 A"));
    }
    if (in_.motor && !(back_voltage() > 0.0)) {
      problems.push_back(problem("motor", Kind::conflict,
                                 "armature and brushes take all of the voltage at that point: "
                                 "nothing is left to turn with",
                                 "a smaller armature resistance, or a point while it turns"));
    }
  }

  static Problem no_current() {
    return problem("current", Kind::missing, "no cranking current is there",
                   "the starter's current, its motor data, a clamp reading, or the drop over a "
                   "cable of known size",
                   "200 A");
  }

  /// What reaches the rotor at the point that was read: V - V_brushes - I R_armature.
  double back_voltage() const {
    const StartMotor& m = *in_.motor;
    return m.at_voltage.value.si - m.brushes.value.si - m.at_current.value.si * m.armature.value.si;
  }

  std::optional<quantity::Current> cranking_current() const {
    if (out_.read_current) return out_.read_current;
    if (in_.measured_current) return in_.measured_current->value;
    if (in_.current) return in_.current->value;
    if (in_.motor) return in_.motor->at_current.value;
    return std::nullopt;
  }

  void list_elements() {
    for (std::size_t i = 0; i < in_.elements.size(); ++i) {
      StartElementAnswer a;
      a.name = in_.elements[i].name;
      a.expected = {model_.elements[i].expected};
      a.basis = model_.elements[i].basis;
      out_.working.push_back(fmt::format("{}: {} ({})", a.name, milliohm(a.expected.si), a.basis));
      out_.elements.push_back(std::move(a));
    }
  }

  void tell(const StartState& state) {
    out_.at_battery = {state.at_battery};
    out_.at_starter = {state.at_starter};
    out_.outside = {detail::outside(model_)};
    for (std::size_t i = 0; i < out_.elements.size(); ++i) {
      out_.elements[i].computed = {state.drops[i]};
    }
    out_.working.push_back(
        fmt::format("at the starter: {} V - {} A x ({} battery + {} circuit) = {} V",
                    pencil(model_.emf), pencil(out_.current.si), milliohm(model_.battery_ohm),
                    milliohm(out_.outside.si), pencil(state.at_starter)));
    out_.in_words = fmt::format("{} V at the starter at {} A; the circuit takes {} V",
                                quantity::significant(state.at_starter, 4),
                                quantity::significant(out_.current.si, 3),
                                quantity::significant(out_.outside.si * out_.current.si, 3));
    if (!(state.at_starter > 0.0)) {
      out_.notes.emplace_back("The battery cannot drive this current through this circuit.");
    }
  }

  double speed_at(double volts) const {
    const StartMotor& m = *in_.motor;
    const double k = back_voltage() / m.at_speed.value.si;
    return (volts - m.brushes.value.si - out_.current.si * m.armature.value.si) / k;
  }

  void turn() {
    const auto first = detail::first_moment(in_, model_);
    if (first) out_.first_moment = quantity::Current{*first};
    out_.speed = quantity::RotationSpeed{std::max(0.0, speed_at(out_.at_starter.si))};
    out_.working.push_back(fmt::format("speed = {} rpm x ({} - {} - {} A x {}) / {} V = {} rpm",
                                       pencil(in_.motor->at_speed.value.si * 60),
                                       pencil(out_.at_starter.si),
                                       pencil(in_.motor->brushes.value.si), pencil(out_.current.si),
                                       milliohm(in_.motor->armature.value.si),
                                       pencil(back_voltage()), pencil(out_.speed->si * 60)));
  }

  void locate() {
    std::optional<std::size_t> worst;
    bool open = false;
    for (std::size_t i = 0; i < out_.elements.size(); ++i) {
      const auto& e = out_.elements[i];
      open |= e.standing == ElementStanding::undecided;
      if (e.standing != ElementStanding::high) continue;
      if (!worst || *e.excess > *out_.elements[*worst].excess) worst = i;
    }
    if (worst) return renew(*worst);
    if (!out_.read_current) return;
    out_.located = open ? "no element stands out beyond the doubt of the meters"
                        : "every element that was read has what it should have";
    if (open) {
      out_.do_next.emplace_back(
          "repeat the undecided elements with a lower range and a clamp meter "
          "of better accuracy, probes on the metal of the studs");
    }
  }

  void renew(std::size_t i) {
    const auto& e = out_.elements[i];
    out_.located =
        fmt::format("{}: {} +-{}, {} more than it should have", e.name, milliohm(e.measured->si),
                    milliohm(e.doubt->si), milliohm(e.excess->si));
    Renewal gain;
    gain.element = e.name;
    gain.at_starter = {e.excess->si * out_.current.si};
    StartModel better = model_;
    better.ohms[i] = e.measured->si - e.excess->si;
    if (in_.motor) {
      gain.speed = quantity::RotationSpeed{speed_at(out_.at_starter.si + gain.at_starter.si) -
                                           speed_at(out_.at_starter.si)};
      const auto after = detail::first_moment(in_, better);
      if (after && out_.first_moment) {
        gain.first_moment = quantity::Current{*after - out_.first_moment->si};
      }
    }
    out_.working.push_back(fmt::format("renewed: {} A x {} = {} V more at the starter",
                                       pencil(out_.current.si), milliohm(e.excess->si),
                                       pencil(gain.at_starter.si)));
    out_.do_next.push_back(
        fmt::format("open, clean and remake or renew `{}`, then read it again at "
                    "the same current",
                    e.name));
    out_.renewal = std::move(gain);
  }

  void notes() {
    out_.notes.emplace_back(
        "Crank 15 s at most for a reading; a vehicle text allows 30 s, then 2 min of rest. Your "
        "starter's maker has its own duty limit: that one counts.");
    out_.notes.emplace_back(
        "The rules below were written for ground vehicles. A light aircraft with its battery aft "
        "often cannot meet them: watch the milliohms over time instead.");
    if (in_.battery.temperature) {
      out_.notes.emplace_back(
          "The cold battery is a model from memory; cold oil, which asks for "
          "more current, is not in it. Measure: (V at rest - V cranking) / I.");
    }
    out_.notes.emplace_back(
        "A shorted starter pulls the battery down and looks like a bad battery.");
  }

  const StartingInput& in_;
  StartModel model_;
  StartingAnswer out_;
};

}  // namespace

Checked<StartingAnswer> starting_circuit(const StartingInput& input,
                                         const describe::Context& /*context*/) {
  return Start(input).run();
}

}  // namespace wm::electrics
