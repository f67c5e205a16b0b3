#include "hose/pressure_hold.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "evidence/uncertainty.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using evidence::Component;
using evidence::Verdict;

constexpr double k_root_3 = std::numbers::sqrt3;

Problem problem(std::string path, Kind kind, std::string what, std::string expected) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

void check(const PressureHold& hold, const HoldRules& rules, const std::string& path, bool blank,
           Problems& problems) {
  if (!(hold.lasted.value.si > 0.0)) {
    problems.push_back(problem(path + "/lasted", Kind::out_of_bounds, "a hold of no time",
                               "more than nothing, such as 5 min"));
  }
  if (hold.temperature_start.has_value() != hold.temperature_end.has_value()) {
    problems.push_back(
        problem(path + (hold.temperature_start ? "/temperature_end" : "/temperature_start"),
                Kind::missing, "only one of the two temperatures of the liquid is there",
                "the temperature at the start and at the end, or neither"));
  }
  if (blank || !hold.pumped_in) return;
  const double least =
      liquid_added(rules.volume_m3, hold.start.value.si, rules.liquid.bulk_modulus_pa);
  if (hold.pumped_in->value.si < 0.9 * least) {
    problems.push_back(problem(
        path + "/pumped_in", Kind::conflict,
        fmt::format("{} mL pumped in is less than the liquid alone takes up, {} mL",
                    quantity::pencil(hold.pumped_in->value.si * 1e6),
                    quantity::pencil(least * 1e6)),
        "all that went in from when the air was out and the gauge began to rise; or a smaller bore "
        "or length"));
  }
}

/// A pressure with the doubt of its gauge.
BenchReading pressure(const quantity::Measured<quantity::PressureGauge>& m,
                      const HoldRules& rules) {
  BenchReading r = reading_of(m);
  if (!r.stated && rules.gauge_expanded_pa) {
    r.u = std::hypot(r.u, *rules.gauge_expanded_pa / 2.0);
    r.stated = true;
  }
  return r;
}

/// Volume taken up for each Pa: measured where the liquid pumped in was.
struct Compliance {
  double m3_per_pa{};
  double relative_u{};
  bool measured{};
};
Compliance compliance(const PressureHold& hold, const HoldRules& rules) {
  if (hold.pumped_in && hold.pumped_in->value.si > 0.0 && hold.start.value.si > 0.0) {
    const BenchReading v = reading_of(*hold.pumped_in);
    const BenchReading p = pressure(hold.start, rules);
    return {v.value / p.value, std::hypot(v.u / v.value, p.u / p.value), true};
  }
  return {rules.volume_m3 / rules.liquid.bulk_modulus_pa, 0.0, false};
}

/// A part of the fall with a share between nothing and all of it: mean, and the components of
/// its doubt. E[c^2] = 1/3, so a doubt u of the whole counts with 1/sqrt 3 (second order in it).
struct Share {
  double whole{};
  double mean{};
  std::vector<Component> parts;
};

Share any_share(const std::string& what, double whole, double u_whole) {
  Share s{whole, whole / 2.0, {}};
  s.parts.push_back(evidence::type_b(what + ", none to all of it", std::abs(whole) / 2.0,
                                     evidence::Distribution::rectangular));
  Component of_whole = evidence::type_b_stated(what + " itself", u_whole, 1.0);
  of_whole.sensitivity = 1.0 / k_root_3;
  s.parts.push_back(of_whole);
  return s;
}

/// Cooling makes the pressure fall: dp = c M (T0 - T1), 0 <= c <= 1.
Share cooling(const PressureHold& hold, double pa_per_k, double relative_u) {
  if (!hold.temperature_start || !hold.temperature_end) return {};
  const BenchReading t0 = reading_of(*hold.temperature_start);
  const BenchReading t1 = reading_of(*hold.temperature_end);
  const double whole = pa_per_k * (t0.value - t1.value);
  const double u = std::hypot(pa_per_k * std::hypot(t0.u, t1.u), whole * relative_u);
  return any_share("temperature", whole, u);
}

class Holds {
 public:
  Holds(const std::vector<PressureHold>& holds, const std::optional<PressureHold>& blank,
        const HoldRules& rules, const quantity::Unit& unit)
      : in_(holds), blank_(blank), rules_(rules), unit_(unit) {}

  JudgedHolds run() {
    for (const PressureHold& hold : in_) out_.holds.push_back(one(hold));
    decide();
    return std::move(out_);
  }

 private:
  std::string say(double pa) const {
    // A computed difference: three digits say more than a gauge does.
    return fmt::format("{} {}", quantity::significant(quantity::in_unit(pa, unit_), 3),
                       unit_.symbol);
  }

  Share cooling_of(const PressureHold& hold) const {
    const Compliance c = compliance(hold, rules_);
    return cooling(hold, rules_.volume_m3 * rules_.liquid.expansion_per_k / c.m3_per_pa,
                   c.relative_u);
  }

  /// Without its temperatures a blank run may have fallen or been held up by anything.
  bool blank_counts() const { return blank_ && blank_->temperature_start; }

  /// The blank run's own cooling: its volume is not known, so the liquid alone.
  Share pump_of(const PressureHold& hold) const {
    if (!blank_counts()) return {};
    const BenchReading b0 = pressure(blank_->start, rules_);
    const BenchReading b1 = pressure(blank_->end, rules_);
    const Share cool = cooling(*blank_, trapped_rise(rules_.liquid, 1.0), 0.0);
    double u2 = b0.u * b0.u + b1.u * b1.u;
    for (const Component& part : cool.parts) u2 += std::pow(part.sensitivity * part.u, 2);
    const double scale = hold.lasted.value / blank_->lasted.value;
    const double valve = (b0.value - b1.value - cool.mean) * scale;
    const double u = std::sqrt(u2) * scale;
    const Compliance c_hold = compliance(hold, rules_);
    const Compliance c_blank = compliance(*blank_, rules_);
    if (c_hold.measured && c_blank.measured) {
      const double f = c_blank.m3_per_pa / c_hold.m3_per_pa;
      const double relative = std::hypot(c_hold.relative_u, c_blank.relative_u);
      Share s{valve * f, valve * f, {}};
      s.parts.push_back(
          evidence::type_b_stated("blank run", std::hypot(u * f, valve * f * relative), 1.0));
      return s;
    }
    return any_share("blank run", std::max(valve, 0.0), u);
  }

  JudgedHold one(const PressureHold& hold) {
    JudgedHold h;
    const BenchReading p0 = pressure(hold.start, rules_);
    const BenchReading p1 = pressure(hold.end, rules_);
    h.gauge_known = p0.stated && p1.stated;
    h.fall = {p0.value - p1.value, std::hypot(p0.u, p1.u), h.gauge_known};
    const Share cool = cooling_of(hold);
    const Share pump = pump_of(hold);
    h.temperature_known = hold.temperature_start.has_value();
    h.cooling_low = std::min(0.0, cool.whole);
    h.cooling_high = std::max(0.0, cool.whole);
    h.pump_known = pump.parts.size() == 1;
    h.pump_low = h.pump_known ? pump.whole : 0.0;
    h.pump_high = pump.whole;
    std::vector<Component> budget{evidence::type_b_stated("gauge at the start", p0.u, 1.0),
                                  evidence::type_b_stated("gauge at the end", p1.u, 1.0)};
    budget.insert(budget.end(), cool.parts.begin(), cool.parts.end());
    budget.insert(budget.end(), pump.parts.begin(), pump.parts.end());
    h.unexplained = {h.fall.value - cool.mean - pump.mean, combined(budget), h.gauge_known};
    h.budget = budget_words(budget, h.unexplained.u);
    const Compliance c = compliance(hold, rules_);
    h.compliance_measured = c.measured;
    h.leak_m3_per_s = std::max(0.0, h.unexplained.value) * c.m3_per_pa / hold.lasted.value.si;
    return h;
  }

  static double combined(const std::vector<Component>& parts) {
    const auto sum = evidence::combine(parts);
    return sum ? sum->u : 0.0;  // components of ours are always in bounds
  }

  std::string budget_words(const std::vector<Component>& parts, double u) const {
    std::string text;
    for (const Component& part : parts) {
      const double contribution = part.sensitivity * part.u;
      if (!(contribution > 0.0)) continue;
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", part.what, say(contribution));
    }
    if (text.empty()) return "no doubt was stated";
    return fmt::format("u: {}; together {} (root of the squares), U = 2 u = {}", text, say(u),
                       say(2.0 * u));
  }

  // ------------------------------------------------------------------ what may be said

  void say_next(std::string text) { out_.do_next.push_back(std::move(text)); }

  void set(Verdict verdict, std::string reason) {
    out_.verdict = verdict;
    out_.reason = std::move(reason);
  }

  void decide() {
    if (in_.empty()) {
      set(Verdict::not_tested, "no hold was read");
      return;
    }
    const JudgedHold& last = out_.holds.back();
    const std::string y =
        fmt::format("{} +- {}", say(last.unexplained.value), say(last.unexplained.expanded()));
    if (!last.temperature_known) {
      set(Verdict::undecided,
          fmt::format("the temperature of the liquid was not read: one degC alone can make {}",
                      say(trapped_rise(rules_.liquid, 1.0))));
      say_next("read the temperature of the liquid at the start and at the end, and hold again");
      return;
    }
    if (!rules_.allowed_pa) {
      set(Verdict::undecided,
          fmt::format("{} of the fall is explained by neither pump nor temperature, and there is "
                      "no limit to judge it against",
                      y));
      say_next(
          fmt::format("enter the fall that would still be accepted; with these readings "
                      "nothing below {} can be told",
                      say(last.unexplained.expanded())));
      return;
    }
    const Verdict within = guarded(last.unexplained, {std::nullopt, rules_.allowed_pa});
    if (within == Verdict::conforms) {
      set(within, fmt::format("{} of the fall is explained by neither pump nor temperature, and "
                              "{} is allowed{}",
                              y, say(*rules_.allowed_pa),
                              in_.size() > 1 ? "; earlier holds fell while the hose settled" : ""));
      return;
    }
    if (within == Verdict::undecided) {
      too_close(last, y);
      return;
    }
    if (in_.size() < 2) {
      set(Verdict::undecided,
          fmt::format("{} of the fall is explained by neither pump nor temperature, more than the "
                      "{} allowed; a hose that settles does this too",
                      y, say(*rules_.allowed_pa)));
      say_next(
          "take the pressure off, pump up again and hold again for the same time: a hose that "
          "settles falls less, a leak falls as much");
      ask_for_blank();
      return;
    }
    trend(y);
  }

  void too_close(const JudgedHold& last, const std::string& y) {
    set(Verdict::undecided,
        fmt::format("{} of the fall is explained by neither pump nor temperature: too close to the "
                    "{} allowed to tell",
                    y, say(*rules_.allowed_pa)));
    if (!last.compliance_measured) {
      say_next(
          "count the strokes (or measure the liquid pumped in) from when the air is out: it tells "
          "how much the temperature can do, and the pump");
    }
    ask_for_blank();
    say_next("wait until the liquid has the temperature of the room, or use a finer gauge");
  }

  void ask_for_blank() {
    if (blank_counts()) return;
    say_next(blank_ ? "read the temperature of the liquid in the blank run too: without it the run "
                      "does not count"
                    : "make a blank run: the same pump with its end capped, the same time");
  }

  /// r = y_last - share k y_before, k the ratio of the times: firmly above 0, nothing settled.
  void trend(const std::string& y) {
    const std::size_t n = in_.size();
    const double k = in_[n - 1].lasted.value / in_[n - 2].lasted.value;
    const BenchReading steady = against(n, rules_.steady_share * k);
    const BenchReading same = against(n, k);
    out_.falls_off = same.value + same.expanded() < 0.0;
    const std::string both = fmt::format("{} fell unexplained in the hold before, {} in the last",
                                         say(out_.holds[n - 2].unexplained.value * k), y);
    if (!blank_counts()) {
      set(Verdict::undecided, both + "; without a blank run it may be the pump");
      ask_for_blank();
      return;
    }
    if (out_.holds[n - 2].temperature_known && steady.value - steady.expanded() >= 0.0) {
      set(Verdict::does_not_conform,
          both + fmt::format(": the same again, and more than the {} allowed. A hose that settles "
                             "would have fallen less",
                             say(*rules_.allowed_pa)));
      say_next("look for the leak: ends, braid, the pump's own connection; then hold again");
      return;
    }
    set(Verdict::undecided,
        both + (out_.falls_off ? ": it falls off, as a hose that settles does"
                               : ": too close together to tell settling from a leak"));
    say_next("hold again for the same time");
  }

  BenchReading against(std::size_t n, double factor) const {
    const JudgedHold& last = out_.holds[n - 1];
    const JudgedHold& before = out_.holds[n - 2];
    // The pump's share is common to both; counted as if it were not, which only adds doubt.
    return {last.unexplained.value - factor * before.unexplained.value,
            std::hypot(last.unexplained.u, factor * before.unexplained.u), true};
  }

  const std::vector<PressureHold>& in_;
  const std::optional<PressureHold>& blank_;
  const HoldRules& rules_;
  const quantity::Unit& unit_;
  JudgedHolds out_;
};

}  // namespace

Checked<JudgedHolds> judge_holds(const std::vector<PressureHold>& holds,
                                 const std::optional<PressureHold>& blank, const HoldRules& rules,
                                 const quantity::Unit& pressure_unit) {
  Problems problems;
  for (std::size_t i = 0; i < holds.size(); ++i) {
    check(holds[i], rules, fmt::format("holds/{}", i), false, problems);
  }
  if (blank) check(*blank, rules, "blank", true, problems);
  if (!problems.empty()) return Fail(std::move(problems));
  return Holds(holds, blank, rules, pressure_unit).run();
}

}  // namespace wm::hose
