#include <fmt/core.h>

#include "hose/detail/problem.hpp"
#include "hose/detail/proof_plan.hpp"
#include "hose/detail/shown.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {
namespace {

using quantity::PressureGauge;

constexpr double k_room_kelvin = 293.15;
constexpr double k_millilitre = 1e-6;
/// Equal pressures typed in two units.
constexpr double k_equal = 1.0 + 1e-9;

/// Water for the comparison, where the medium itself is refused.
constexpr double k_water_pa = 2.2e9;

quantity::Temperature medium_temperature(const ProofTestInput& in) {
  auto found = in.medium_temperature.value_or(quantity::Temperature{k_room_kelvin});
  for (const auto& hold : in.holds) {  // the last one that was measured
    if (hold.temperature_start && hold.temperature_end)
      found = {(hold.temperature_start->value.si + hold.temperature_end->value.si) / 2.0};
  }
  return found;
}

std::string typed(const EnteredPressure& p, const describe::Context& context) {
  return p.text.empty() ? quantity::pencil(p.value.si, quantity::typed_unit(p, context.units))
                        : p.text;
}

class Planner {
 public:
  Planner(const ProofTestInput& in, const describe::Context& context)
      : in_(in), context_(context) {}

  Checked<ProofPlan> run() {
    inside();
    out_.hose_volume_m3 = bore_volume(in_.bore.value, in_.length.value);
    out_.volume_m3 = out_.hose_volume_m3 + (in_.pump_volume ? in_.pump_volume->value.si : 0.0);
    auto limit = proof_limit(context_, {in_.family, in_.size, in_.makers_proof, in_.makers_source});
    if (limit) {
      out_.limit = *limit;
      choose_pressure();
    } else {
      problems_.push_back(limit.error());
    }
    hold();
    pairs();
    medium();
    if (!problems_.empty()) return Fail(std::move(problems_));
    return std::move(out_);
  }

 private:
  void inside() {
    if (!(in_.bore.value.si > 0.0)) {
      problems_.push_back(problem("bore", Kind::missing, "the bore is not there",
                                  "the inside diameter of the hose", "13/32 in"));
    }
    if (!(in_.length.value.si > 0.0)) {
      problems_.push_back(problem("length", Kind::missing, "the length is not there",
                                  "the length of the assembly", "24 in"));
    }
  }

  void refuse_above(const std::optional<EnteredPressure>& most, const char* whose) {
    if (!most || in_.test_pressure->value.si <= most->value.si * k_equal) return;
    problems_.push_back(
        problem("test_pressure", Kind::refused,
                fmt::format("{} is above the limit of the {}, {}",
                            typed(*in_.test_pressure, context_), whose, typed(*most, context_)),
                fmt::format("{} or less", typed(*most, context_)), typed(*most, context_)));
  }

  void choose_pressure() {
    if (in_.test_pressure) {
      out_.test_pressure = *in_.test_pressure;
      out_.pressure_from = "entered";
      if (in_.test_pressure->value.si > out_.limit.proof.si * k_equal) {
        problems_.push_back(problem(
            "test_pressure", Kind::refused,
            fmt::format("{} is above the proof pressure of this hose, {}: that is a maximum, and "
                        "beyond it the hose is damaged",
                        typed(*in_.test_pressure, context_), out_.limit.text),
            out_.limit.text + " or less", out_.limit.text, out_.limit.source));
      }
      refuse_above(in_.pump_limit, "pump");
      refuse_above(in_.gauge_limit, "gauge");
      return;
    }
    out_.test_pressure = {out_.limit.proof, 0.0, out_.limit.text};
    out_.pressure_from = "the proof pressure of the hose";
    const auto no_more = [&](const std::optional<EnteredPressure>& most, const char* whose) {
      if (!most || most->value.si >= out_.test_pressure.value.si) return;
      out_.test_pressure = *most;
      out_.pressure_from =
          fmt::format("the {}'s limit, below the proof pressure of the hose", whose);
    };
    no_more(in_.pump_limit, "pump");
    no_more(in_.gauge_limit, "gauge");
  }

  void hold() {
    if (in_.hold_time) {
      out_.hold_time = in_.hold_time->value;
      out_.hold_from = "entered";
      return;
    }
    switch (in_.hold) {
      case HoldTime::thirty_seconds:
        out_.hold_time = quantity::seconds(30);
        out_.hold_from = "MIL-PRF-11588H 4.5.3, a ground fuel hose";
        return;
      case HoldTime::as_entered:
        problems_.push_back(problem("hold_time", Kind::missing, "how long to hold is not said",
                                    "the maker's hold time", "5 min"));
        return;
      case HoldTime::five_minutes:
        break;
    }
    out_.hold_time = quantity::minutes(5);
    out_.hold_from =
        "common practice, no source: no figure for aircraft hose in the field was found";
  }

  void both_or_neither(bool first, bool second, const char* first_path, const char* second_path) {
    if (first == second) return;
    problems_.push_back(problem(first ? second_path : first_path, Kind::missing,
                                "only one of two readings is there",
                                "the reading before and the one after, or neither"));
  }

  void pairs() {
    both_or_neither(in_.clocking_before.has_value(), in_.clocking_after.has_value(),
                    "clocking_before", "clocking_after");
    both_or_neither(in_.marks_low.has_value(), in_.marks_high.has_value(), "marks_low",
                    "marks_high");
    if (in_.lengthens_to.has_value() != in_.shortens_to.has_value()) {
      both_or_neither(in_.lengthens_to.has_value(), in_.shortens_to.has_value(), "lengthens_to",
                      "shortens_to");
    }
    if (!in_.two_elbows && in_.clocking_before) {
      problems_.push_back(problem("clocking_before", Kind::conflict,
                                  "a clocking without two elbows", "two_elbows: yes"));
    }
  }

  void medium() {
    if (is_gas(in_.medium)) return refuse_gas();
    auto figures = figures_of(
        in_.medium, in_.bulk_modulus ? std::optional(in_.bulk_modulus->value) : std::nullopt,
        in_.expansion, medium_temperature(in_));
    if (figures) {
      out_.medium = *std::move(figures);
      return;
    }
    for (const Problem& p : figures.error()) problems_.push_back(p);
  }

  void refuse_gas() {
    std::string what = std::string(words(in_.medium)) + " is no medium for a proof test";
    if (const double p = out_.test_pressure.value.si; p > 0.0) {
      const auto e = stored_energy(out_.hose_volume_m3, p, {k_water_pa, 0.0});
      what += fmt::format(
          ": at {} this hose would hold {} (isentropic; {} by the upper figure), with water {}, {} "
          "times less",
          typed(out_.test_pressure, context_), e.gas_isentropic.text, e.gas_brode.text,
          e.liquid.text, quantity::significant(e.gas_to_liquid, 2));
    }
    problems_.push_back(problem("medium", Kind::refused, std::move(what),
                                "water, hydraulic oil or light oil, all air bled out", "water",
                                "FAA-H-8083-30 page 7-18; AL0907 page 58"));
  }

  const ProofTestInput& in_;
  const describe::Context& context_;
  Problems problems_;
  ProofPlan out_;
};

}  // namespace

StoredEnergy stored_energy(double volume_m3, double pressure_pa, const Liquid& liquid) {
  const double with_liquid = liquid_energy(volume_m3, pressure_pa, liquid.bulk_modulus_pa);
  const GasEnergy gas = gas_energy(volume_m3, pressure_pa);
  const auto joules = [](double si) { return shown<quantity::Energy>(si, "J"); };
  StoredEnergy e;
  e.volume = shown<quantity::Volume>(volume_m3, "mL");
  e.liquid = joules(with_liquid);
  e.gas_isentropic = joules(gas.isentropic);
  e.gas_brode = joules(gas.brode);
  e.gas_isothermal = joules(gas.isothermal);
  e.gas_to_liquid = with_liquid > 0.0 ? gas.isentropic / with_liquid : 0.0;
  e.bubble = joules(gas_energy(k_millilitre, pressure_pa).isentropic);
  return e;
}

Checked<ProofPlan> plan(const ProofTestInput& in, const describe::Context& context) {
  return Planner(in, context).run();
}

}  // namespace wm::hose::detail
