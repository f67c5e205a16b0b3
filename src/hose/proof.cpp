#include "hose/proof.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "evidence/uncertainty.hpp"
#include "hose/detail/proof_plan.hpp"
#include "hose/detail/shown.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using evidence::Verdict;
using quantity::significant;

constexpr double k_degree = std::numbers::pi / 180.0;
constexpr double k_drops_per_ml = 20.0;  ///< common practice, no source
constexpr double k_heated_by_k = 10.0;   ///< what the caution about trapped liquid is worked for

constexpr std::string_view k_accept = "MIL-DTL-8790F 3.7.2";
constexpr std::string_view k_no_change = "TM 1-1500-204-23-2 page 4-47";

class Test {
 public:
  Test(const ProofTestInput& in, const detail::ProofPlan& plan, const describe::Context& context)
      : in_(in),
        plan_(plan),
        unit_(quantity::typed_unit(plan.test_pressure, context.units)),
        difference_(*quantity::find_unit(quantity::KindOf::pressure_difference, unit_.symbol)) {}

  Checked<ProofTestAnswer> run() {
    auto judged = judge_holds(in_.holds, in_.blank, rules(), difference_);
    if (!judged) return Fail(judged.error());
    planned();
    energy();
    seen();
    clocking();
    pressure_and_time();
    fall(*judged);
    length();
    advice();
    over();
    return std::move(out_);
  }

 private:
  std::string say(double pa) const { return quantity::pencil(pa, difference_); }
  std::string about(double pa) const {
    return fmt::format("{} {}", significant(quantity::in_unit(pa, difference_), 3),
                       difference_.symbol);
  }
  quantity::Entered<quantity::PressureDifference> shown(double pa) const {
    return detail::shown<quantity::PressureDifference>(pa, difference_.symbol);
  }
  static quantity::Entered<quantity::Duration> minutes(quantity::Duration d) {
    return detail::shown<quantity::Duration>(d.si, d.si < 60.0 ? "s" : "min");
  }
  static std::string millilitres(double m3) { return significant(m3 * 1e6, 3) + " mL"; }

  HoldRules rules() const {
    HoldRules r;
    r.liquid = plan_.medium.liquid;
    r.volume_m3 = plan_.volume_m3;
    if (in_.gauge_doubt) r.gauge_expanded_pa = in_.gauge_doubt->value.si;
    if (in_.fall_allowed) r.allowed_pa = in_.fall_allowed->value.si;
    r.steady_share = in_.steady_share.si;
    return r;
  }

  void planned() {
    out_.test_pressure = plan_.test_pressure;
    out_.pressure_from = plan_.pressure_from;
    out_.proof_limit = {plan_.limit.proof, 0.0, plan_.limit.text};
    out_.limit_from = plan_.limit.source;
    out_.hold_time = in_.hold_time ? *in_.hold_time : minutes(plan_.hold_time);
    out_.hold_from = plan_.hold_from;
    out_.working.push_back(
        fmt::format("proof pressure, a maximum: {} ({})", plan_.limit.text, plan_.limit.source));
    out_.working.push_back(fmt::format("test pressure: {} ({})",
                                       quantity::pencil(plan_.test_pressure.value.si, unit_),
                                       plan_.pressure_from));
    out_.working.push_back(plan_.medium.source);
  }

  void energy() {
    const double p = plan_.test_pressure.value.si;
    const Liquid& liquid = plan_.medium.liquid;
    const auto medium = words(in_.medium);
    out_.energy = detail::stored_energy(plan_.hose_volume_m3, p, liquid);
    const StoredEnergy& e = out_.energy;
    out_.working.push_back(fmt::format("inside = pi/4 x bore^2 x length = {}", e.volume.text));
    out_.working.push_back(
        fmt::format("{} holds V p^2 / (2 K) = {}; what the hose itself stores by "
                    "swelling comes on top and is not known",
                    medium, e.liquid.text));
    out_.working.push_back(
        fmt::format("air would hold {} (isentropic), {} (upper figure), {} (at most, slowly): {} "
                    "times as much",
                    e.gas_isentropic.text, e.gas_brode.text, e.gas_isothermal.text,
                    significant(e.gas_to_liquid, 2)));
    out_.notes.push_back(fmt::format(
        "bleed all air: 1 mL of it left in, as it is at this pressure, holds {}, all the liquid {}",
        e.bubble.text, e.liquid.text));
    out_.liquid_added = detail::shown<quantity::Volume>(
        liquid_added(plan_.volume_m3, p, liquid.bulk_modulus_pa), "mL");
    out_.working.push_back(fmt::format("liquid pumped in = V p / K = {}, and what the hose swells",
                                       out_.liquid_added.text));
    if (in_.pump_stroke && in_.pump_stroke->value.si > 0.0) {
      out_.strokes_at_least = static_cast<std::int64_t>(
          std::min(1e9, std::ceil(out_.liquid_added.value.si / in_.pump_stroke->value.si - 1e-9)));
      out_.working.push_back(fmt::format("strokes = {} / {} = {} at least", out_.liquid_added.text,
                                         millilitres(in_.pump_stroke->value.si),
                                         *out_.strokes_at_least));
    }
    trapped(liquid);
    air_left(liquid);
  }

  void trapped(const Liquid& liquid) {
    out_.trapped_rise = shown(trapped_rise(liquid, k_heated_by_k));
    if (!in_.closed_off || out_.trapped_rise.value.si <= 0.0) return;
    out_.notes.push_back(
        fmt::format("both ends closed and full of {}: each 10 degC of heating raises the pressure "
                    "by up to {} (K beta dT); let it off before the sun or a lamp gets to it",
                    words(in_.medium), out_.trapped_rise.text));
  }

  /// All that went in beyond what the liquid takes up may be the hose swelling, or air.
  void air_left(const Liquid& liquid) {
    if (in_.holds.empty() || !in_.holds.back().pumped_in) return;
    const PressureHold& last = in_.holds.back();
    const double start = last.start.value.si;
    const double beyond =
        last.pumped_in->value.si - liquid_added(plan_.volume_m3, start, liquid.bulk_modulus_pa);
    if (!(beyond > 0.0) || !(start > 0.0)) return;
    out_.air_at_most = detail::shown<quantity::Volume>(
        beyond / (1.0 - k_atmosphere_pa / (start + k_atmosphere_pa)), "mL");
    out_.notes.push_back(fmt::format(
        "{} went in beyond what the liquid takes up: the hose swells, or as much as {} of air (as "
        "it is in the room) is left in it; if it takes less the second time, it was air",
        millilitres(beyond), out_.air_at_most->text));
  }

  // ------------------------------------------------------------------ criteria

  Criterion& add(Criterion c) {
    out_.criteria.push_back(std::move(c));
    return out_.criteria.back();
  }

  void seen() {
    const ProofFindings& f = in_.findings;
    add(must_not_be("leak during or after the test", f.leak, std::string(k_accept)));
    add(must_not_be("push-off mark moved", f.push_off_moved, std::string(k_no_change)));
    add(must_not_be("gap at the socket changed", f.gap_changed, std::string(k_no_change)));
    add(must_not_be("lasting deformation", f.deformed, std::string(k_accept)));
    add(must_not_be("bulge or kink", f.bulge_or_kink, "AL0907 page 54"));
  }

  void clocking() {
    if (!in_.two_elbows) return;
    Criterion c;
    c.what = "clocking of the elbows changed";
    const auto limit = clocking_tolerance(in_.length.value, in_.made_in);
    c.source = in_.made_in == MadeIn::factory ? "MIL-DTL-83796/5 fig. 3 note 3"
                                              : "TM 1-1500-204-23-2 fig. 4-50A step 11(c)";
    if (!in_.clocking_before) {
      c.reason = "the angle was not read before and after";
      add(std::move(c));
      return;
    }
    const BenchReading a = reading_of(*in_.clocking_before);
    const BenchReading b = reading_of(*in_.clocking_after);
    const BenchReading change{turned(a.value, b.value), std::hypot(a.u, b.u), a.stated && b.stated};
    out_.clocking_change = detail::shown<quantity::Angle>(change.value, change.expanded(), "deg");
    c.verdict = guarded(change, {-limit.si, limit.si});
    c.reason = fmt::format("{} +- {} degrees, {} allowed", significant(change.value / k_degree, 3),
                           significant(change.expanded() / k_degree, 2),
                           significant(limit.si / k_degree, 2));
    add(std::move(c));
  }

  void pressure_and_time() {
    Criterion p;
    p.what = "test pressure reached";
    p.source = plan_.pressure_from;
    Criterion t;
    t.what = "held long enough";
    t.source = plan_.hold_from;
    if (in_.holds.empty()) {
      p.reason = t.reason = "no hold was read";
    } else {
      pressure(p);
      time(t);
    }
    add(std::move(p));
    add(std::move(t));
  }

  void pressure(Criterion& c) const {
    const double wanted = plan_.test_pressure.value.si;
    for (const PressureHold& hold : in_.holds) {
      BenchReading r = reading_of(hold.start);
      if (!r.stated && in_.gauge_doubt) r.u = in_.gauge_doubt->value.si / 2.0;
      if (r.value - r.expanded() > plan_.limit.proof.si * (1.0 + 1e-9)) {
        c.verdict = Verdict::does_not_conform;
        c.reason = fmt::format(
            "{} is above the proof pressure, {}: the hose was strained beyond "
            "its maximum",
            quantity::pencil(r.value, unit_), plan_.limit.text);
        c.source = plan_.limit.source;
        return;
      }
    }
    const auto& last = in_.holds.back().start;
    const double half_digit = last.resolution_si / 2.0;
    const bool reached = last.value.si >= wanted - half_digit - 1e-9 * wanted;
    c.verdict = reached ? Verdict::conforms : Verdict::not_tested;
    c.reason = fmt::format("{} at the start of the last hold, {} asked for",
                           quantity::pencil(last.value.si, unit_), quantity::pencil(wanted, unit_));
  }

  void time(Criterion& c) const {
    const double lasted = in_.holds.back().lasted.value.si;
    const double wanted = plan_.hold_time.si;
    c.verdict = lasted >= wanted * (1.0 - 1e-9) ? Verdict::conforms : Verdict::not_tested;
    c.reason =
        fmt::format("{} s, {} s asked for", quantity::pencil(lasted), quantity::pencil(wanted));
  }

  void fall(const JudgedHolds& judged) {
    Criterion c;
    c.what = "pressure held";
    c.verdict = judged.verdict;
    c.reason = judged.reason;
    c.source = !in_.fall_allowed         ? "no limit entered"
               : in_.fall_source.empty() ? "fall allowed: entered, source not given"
                                         : in_.fall_source;
    add(std::move(c));
    out_.do_next = judged.do_next;
    std::size_t n = 0;
    for (const JudgedHold& h : judged.holds) show(h, ++n);
    if (in_.blank && !in_.blank->temperature_start) {
      out_.notes.emplace_back(
          "the blank run does not count: the temperature of its liquid was not read");
    }
    if (in_.blank && !in_.holds.empty() &&
        in_.blank->start.value.si < 0.95 * in_.holds.back().start.value.si) {
      out_.notes.emplace_back(
          "the blank run was at a lower pressure than the hold: the pump leaks less there");
    }
    for (const JudgedHold& h : judged.holds) {
      if (h.gauge_known) continue;
      out_.notes.emplace_back(
          "the gauge's uncertainty was not given: only its last digit is counted, and the true "
          "doubt is larger");
      break;
    }
  }

  void show(const JudgedHold& h, std::size_t n) {
    HoldAnswer a;
    const auto measured = [&](const BenchReading& r) {
      return detail::shown<quantity::PressureDifference>(r.value, r.expanded(), difference_.symbol);
    };
    a.fall = measured(h.fall);
    a.unexplained = measured(h.unexplained);
    if (in_.blank) a.pump_at_most = shown(h.pump_high);
    if (h.temperature_known) {
      a.temperature_at_most =
          shown(h.cooling_high > -h.cooling_low ? h.cooling_high : h.cooling_low);
    }
    const double ml_per_hour = h.leak_m3_per_s * 1e6 * 3600.0;
    a.leak_would_be =
        fmt::format("{}{} mL an hour, about {} drops", h.compliance_measured ? "" : "at least ",
                    significant(ml_per_hour, 2), significant(ml_per_hour * k_drops_per_ml, 2));
    out_.working.push_back(fmt::format(
        "hold {}: fall {}; pump {} to {}; temperature {} to {}; the middle of both taken off: {}",
        n, say(h.fall.value), about(h.pump_low), about(h.pump_high), about(h.cooling_low),
        about(h.cooling_high), about(h.unexplained.value)));
    out_.working.push_back(fmt::format("hold {}: {}", n, h.budget));
    out_.holds.push_back(std::move(a));
  }

  void length() {
    Criterion c;
    c.what = "change of length under pressure";
    const bool makers = in_.lengthens_to && in_.shortens_to;
    const double most = makers ? in_.lengthens_to->si : k_lengthens;
    const double least = makers ? -in_.shortens_to->si : -k_shortens;
    c.source = makers ? "the maker's figures, entered" : "AC 43.13-1B CHG 1 fig. 9-9, page 9-23";
    if (!in_.marks_low) {
      c.counts = false;
      c.reason = "not measured; two marks on the cover tell, at 10 psi and after 30 s at pressure";
      add(std::move(c));
      return;
    }
    const BenchReading l0 = reading_of(*in_.marks_low);
    const BenchReading lp = reading_of(*in_.marks_high);
    const double change = lp.value / l0.value - 1.0;
    const BenchReading r{change,
                         std::hypot(lp.u / l0.value, lp.value * l0.u / (l0.value * l0.value)),
                         l0.stated && lp.stated};
    out_.length_change = detail::shown<quantity::Fraction>(change, r.expanded(), "%");
    c.verdict = guarded(r, {least, most});
    c.reason = fmt::format("{} +- {} %, expected {} to +{} %", significant(change * 100.0, 3),
                           significant(r.expanded() * 100.0, 2), quantity::pencil(least * 100.0),
                           quantity::pencil(most * 100.0));
    out_.working.push_back(fmt::format(
        "length change = 100 x ({} - {}) / {} = {} %", quantity::pencil(lp.value * 1e3) + " mm",
        quantity::pencil(l0.value * 1e3) + " mm", quantity::pencil(l0.value * 1e3) + " mm",
        significant(change * 100.0, 3)));
    add(std::move(c));
  }

  // ------------------------------------------------------------------ advice and the end

  void less_than(double factor, std::string_view why) {
    const double wanted = in_.system_pressure->value.si * factor;
    if (plan_.test_pressure.value.si >= wanted * (1.0 - 1e-9)) return;
    out_.notes.push_back(
        fmt::format("the test pressure is less than {} x the system pressure, {} ({})",
                    quantity::pencil(factor), quantity::pencil(wanted, unit_), why));
  }

  void advice() {
    if (in_.system_pressure) {
      less_than(2.0, "common practice, no source");
      if (in_.reused_ends) less_than(1.5, "reused ends with new hose; secondary source");
    } else if (in_.reused_ends) {
      out_.notes.emplace_back(
          "reused ends with new hose: at least 1.5 x the system pressure (secondary source); enter "
          "the system pressure to compare");
    }
    if (is_fuel(in_.carries)) {
      out_.notes.emplace_back(
          "a fuel line: leave nothing of the test liquid in it; after water dry it with filtered "
          "oil-free air and cap it at once");
    } else if (in_.medium == TestMedium::water) {
      out_.notes.emplace_back("dry it after the water, and cap both ends at once");
    }
    out_.notes.emplace_back(
        "tie the hose down against whipping, put it under a heavy clear cover, and hold the fire "
        "sleeve back so that every inch of it and both ends can be seen");
  }

  void over() {
    out_.verdict = over_all(out_.criteria);
    out_.in_words = std::string(evidence::words(out_.verdict));
    std::string open;
    bool failed = false;
    for (const Criterion& c : out_.criteria) {
      if (!c.counts) continue;
      failed = failed || c.verdict == Verdict::does_not_conform;
      if (c.verdict == Verdict::not_tested) open += (open.empty() ? "" : "; ") + c.what;
    }
    if (failed) {
      out_.do_next.insert(
          out_.do_next.begin(),
          "take the pressure off; do not fit this hose; find the cause, and make or "
          "order another");
    }
    if (!open.empty()) out_.do_next.push_back("still to be looked at: " + open);
  }

  const ProofTestInput& in_;
  const detail::ProofPlan& plan_;
  const quantity::Unit& unit_;
  const quantity::Unit& difference_;
  ProofTestAnswer out_;
};

}  // namespace

double turned(double from_rad, double to_rad) {
  return std::remainder(to_rad - from_rad, 2.0 * std::numbers::pi);
}

quantity::Angle clocking_tolerance(quantity::Length overall, MadeIn made_in) {
  constexpr double k_equal = 1.0 + 1e-9;
  const bool factory = made_in == MadeIn::factory;
  const auto limit = factory ? quantity::feet(2) : quantity::inches(36);
  const bool is_short = overall.si <= limit.si * k_equal;
  if (factory) return quantity::degrees(is_short ? 3 : 5);
  return quantity::degrees(is_short ? 5 : 10);
}

Checked<ProofTestAnswer> proof_test(const ProofTestInput& input, const describe::Context& context) {
  auto plan = detail::plan(input, context);
  if (!plan) return Fail(plan.error());
  return Test(input, *plan, context).run();
}

}  // namespace wm::hose
