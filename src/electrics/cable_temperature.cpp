#include "electrics/cable_temperature.hpp"

#include <fmt/core.h>

#include <cmath>

#include "electrics/detail/problem.hpp"
#include "quantity/as_typed.hpp"

namespace wm::electrics {
namespace {

using quantity::pencil;

std::optional<quantity::Current> amperes(const std::optional<double>& a) {
  if (!a) return std::nullopt;
  return quantity::Current{*a};
}

class Warmth {
 public:
  explicit Warmth(const CableTemperatureInput& in) : in_(in) {}

  Checked<CableTemperatureAnswer> run() {
    Problems problems;
    const auto wire = figures_of(in_.conductor, "conductor");
    if (!wire) problems.push_back(wire.error());
    if (auto p = check(in_.surroundings, "surroundings")) problems.push_back(std::move(*p));
    check_overload(problems);
    if (!problems.empty()) return Fail(std::move(problems));
    const auto allowed = current_allowed(*wire, in_.conductor.kind, in_.surroundings);
    tell_allowed(*wire, allowed);
    estimate(*wire, allowed);
    if (in_.short_current) overload(*wire);
    return std::move(out_);
  }

 private:
  void check_overload(Problems& problems) const {
    if (in_.short_current.has_value() == in_.short_time.has_value()) return;
    problems.push_back(detail::problem(in_.short_current ? "short_time" : "short_current",
                                       Kind::missing,
                                       "a short overload needs its current and its time",
                                       "both or neither", in_.short_current ? "30 s" : "300 A"));
  }

  double ambient() const { return in_.surroundings.ambient.value.si - k_zero_celsius; }
  double rating() const { return in_.surroundings.rating.value.si - k_zero_celsius; }

  void tell_allowed(const ConductorFigures& wire, const CurrentAllowed& allowed) {
    out_.allowed = amperes(allowed.curves);
    if (allowed.curves) out_.allowed_least = quantity::Current{*allowed.curves - allowed.doubt};
    out_.free_air = amperes(allowed.free_air);
    out_.table = amperes(allowed.table);
    out_.notes = allowed.notes;
    out_.working = allowed.working;
    out_.standing = stands(in_.current.value.si, allowed);
    out_.in_words = fmt::format("{} A in {}: {}", pencil(in_.current.value.si), wire.in_words,
                                words(out_.standing));
    if (out_.standing == CurrentStanding::over || out_.standing == CurrentStanding::too_close) {
      out_.do_next.emplace_back(
          "take a larger wire, fewer wires in the bundle, or a wire of higher rating");
    }
    out_.notes.emplace_back(
        "A contact, switch or breaker rated for less governs, whatever the wire carries.");
  }

  void estimate(const ConductorFigures& wire, const CurrentAllowed& allowed) {
    const double amps = in_.current.value.si;
    const auto celsius = estimated_celsius(in_.surroundings, amps, allowed);
    if (!celsius) return;
    out_.conductor = quantity::celsius(*celsius);
    out_.working.push_back(fmt::format("conductor: {} + ({} - {}) x sqrt({} / {}) = {} degC",
                                       pencil(ambient()), pencil(rating()), pencil(ambient()),
                                       pencil(amps), pencil(*allowed.figure()), pencil(*celsius)));
    const auto curve = free_air_curve(wire.size);
    if (!curve || !allowed.curves) return;
    const double share = std::pow(amps / *allowed.curves, 1.0 / curve->m);
    out_.by_curve = quantity::celsius(ambient() + (rating() - ambient()) * share);
    out_.working.push_back(fmt::format("along the curve: {} + {} x ({} / {})^(1/{}) = {} degC",
                                       pencil(ambient()), pencil(rating() - ambient()),
                                       pencil(amps), pencil(*allowed.curves), pencil(curve->m),
                                       pencil(out_.by_curve->si - k_zero_celsius)));
  }

  void overload(const ConductorFigures& wire) {
    if (!wire.area_mm2) {
      out_.notes.emplace_back(
          "A short overload needs the area of the conductor, which a maker's "
          "resistance does not give.");
      return;
    }
    const double from =
        in_.start ? in_.start->value.si - k_zero_celsius
                  : out_.conductor.value_or(in_.surroundings.ambient.value).si - k_zero_celsius;
    const auto amps = in_.short_current->value;
    const auto time = in_.short_time->value;
    const double after = adiabatic_celsius(wire, amps, time, from);
    out_.working.push_back(fmt::format(
        "overload from {} degC: {} A for {} s in {} mm2, no heat lost: {} degC", pencil(from),
        pencil(amps.si), pencil(time.si), pencil(*wire.area_mm2), pencil(after)));
    constexpr double k_melts = 600.0;  // past any insulation; the law has lost its sense there
    if (after < k_melts) out_.after_overload = quantity::celsius(after);
    if (after > rating()) {
      out_.do_next.push_back(
          fmt::format("the overload could pass the rating of the wire ({} degC): protect it "
                      "faster, or take a larger wire",
                      pencil(rating())));
    }
    if (from < rating()) {
      out_.time_to_rating = quantity::seconds(adiabatic_seconds(wire, amps, from, rating()));
    }
    out_.notes.emplace_back(
        "The overload is counted without any heat lost: an upper bound, close "
        "for some seconds only.");
  }

  const CableTemperatureInput& in_;
  CableTemperatureAnswer out_;
};

}  // namespace

std::optional<double> estimated_celsius(const Surroundings& where, double amperes,
                                        const CurrentAllowed& allowed) {
  const auto most = allowed.figure();
  if (!most || amperes > *most) return std::nullopt;
  const double ambient = where.ambient.value.si - k_zero_celsius;
  const double rating = where.rating.value.si - k_zero_celsius;
  return ambient + (rating - ambient) * std::sqrt(amperes / *most);
}

Checked<CableTemperatureAnswer> cable_temperature(const CableTemperatureInput& input,
                                                  const describe::Context& /*context*/) {
  return Warmth(input).run();
}

std::string_view describe(describe::Fields<CableTemperatureInput>& f) {
  using In = CableTemperatureInput;
  f.has<&In::name>("name", "Which cable").example("pitot heat feed");
  f.has<&In::conductor>("conductor", "Conductor").needed(R"({"size": "14"})");
  f.has<&In::current>("current", "Steady current")
      .needed("16 A")
      .between(quantity::amperes(0), quantity::amperes(5000));
  f.has<&In::surroundings>("surroundings", "Where the wire lies")
      .needed(R"({"ambient": "50 degC", "rating": "200 degC", "wires": 8, "loading": "60 %",
 "altitude": "20000 ft"})");
  f.has<&In::short_current>("short_current", "Current of a short overload")
      .example("100 A")
      .above(quantity::amperes(0))
      .at_most(quantity::amperes(20000));
  f.has<&In::short_time>("short_time", "Its time")
      .example("5 s")
      .above(quantity::seconds(0))
      .at_most(quantity::minutes(10));
  f.has<&In::start>("start", "Conductor when the overload begins")
      .between(quantity::celsius(-60), quantity::celsius(300))
      .help("Left empty: as warm as the steady current makes it.");
  return "cable-temperature-input";
}

std::string_view describe(describe::Fields<CableTemperatureAnswer>& f) {
  using A = CableTemperatureAnswer;
  f.has<&A::standing>("standing", "Current against the wire");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::allowed>("allowed", "Allowed here by the curves (advice)");
  f.has<&A::allowed_least>("allowed_least", "With the doubt of the curves taken off");
  f.has<&A::free_air>("free_air", "One wire in free air");
  f.has<&A::table>("table", "By table 11-9, in bundles");
  f.has<&A::conductor>("conductor", "Conductor, cautious estimate");
  f.has<&A::by_curve>("by_curve", "Conductor, along the free-air curve");
  f.has<&A::after_overload>("after_overload", "After the overload, at most");
  f.has<&A::time_to_rating>("time_to_rating", "Overload reaches the rating after");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "cable-temperature-answer";
}

}  // namespace wm::electrics
