#include "ignition/coil.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <numbers>

#include "evidence/siblings.hpp"
#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"
#include "quantity/as_typed.hpp"
#include "statistics/robust.hpp"

namespace wm::ignition {
namespace {

using describe::AnyQuantity;
using detail::problem;
using evidence::Standing;
using evidence::Verdict;
using quantity::pencil;

constexpr double k_copper_zero = 234.5;  ///< AC 43.13-1B CHG 1, page 11-22
constexpr quantity::Temperature k_reference{293.15};

/// One of the three readings of a coil.
struct Winding {
  std::string_view key;
  const std::optional<MeasuredResistance>* reading{};
  bool over_range{};
  const std::string* range{};
  const std::optional<EnteredResistance>* lowest{};
  const std::optional<EnteredResistance>* highest{};
};

const std::optional<EnteredResistance> k_no_limit;

/// An open winding does not conform, whatever the limits.
void call_open(PartVerdict& v) {
  v.verdict = Verdict::does_not_conform;
  v.in_words = "does not conform (open)";
  v.reason =
      "over-range: the winding is open. An open secondary may still spark by jumping the break and "
      "start badly";
  v.do_next = {"repeat on the highest range with the probes held firmly"};
}

class Coils {
 public:
  Coils(const CoilCheckInput& in, const describe::Context& context) : in_(in), context_(context) {}

  Checked<CoilCheckAnswer> run() {
    if (in_.coils.empty()) {
      problems_.push_back(problem("coils", Kind::missing, "no coil", "at least one coil"));
    }
    for (std::size_t i = 0; i < in_.coils.size(); ++i) coil(i);
    if (!problems_.empty()) return Fail(std::move(problems_));
    among_coils(&CoilReading::primary, &CoilAnswer::primary_at_20,
                &CoilAnswer::primary_among_coils);
    among_coils(&CoilReading::secondary, &CoilAnswer::secondary_at_20,
                &CoilAnswer::secondary_among_coils);
    conclude();
    return std::move(out_);
  }

 private:
  bool double_ended() const { return in_.kind == CoilKind::double_ended; }
  quantity::Temperature limits_at() const { return in_.limits_at.value_or(k_reference); }

  void coil(std::size_t i) {
    const CoilReading& c = in_.coils[i];
    CoilAnswer a;
    a.name = c.name;
    a.primary = winding(i, {"primary", &c.primary, c.primary_over_range, &c.primary_range,
                            &in_.primary_lowest, &in_.primary_highest});
    a.secondary = winding(i, {"secondary", &c.secondary, c.secondary_over_range, &c.secondary_range,
                              &in_.secondary_lowest, &in_.secondary_highest});
    a.to_case = to_case(i);
    a.primary_at_20 = at_20(c, c.primary, "primary", a);
    a.secondary_at_20 = at_20(c, c.secondary, "secondary", a);
    figures(c, a);
    out_.coils.push_back(std::move(a));
  }

  std::string path(std::size_t i, std::string_view field) const {
    return fmt::format("coils/{}/{}", i, field);
  }

  /// A limit at the temperature of the coil, in the unit in which it was typed.
  std::optional<AnyQuantity> warmed(const std::optional<EnteredResistance>& limit,
                                    const CoilReading& c) const {
    auto q = detail::any(limit);
    if (!q || !c.temperature) return q;
    const double factor = copper_factor(limits_at(), *c.temperature);
    if (factor == 1.0) return q;
    const auto& unit = quantity::typed_unit(*limit, context_.units);
    q->si *= factor;
    q->text = pencil(q->si, unit);
    return q;
  }

  std::optional<detail::HowRead> how(std::size_t i, const Winding& w) {
    detail::HowRead h;
    h.leads = in_.test_leads;
    h.lead_resistance = detail::any(in_.test_lead_resistance);
    h.guard_from = in_.guard_from;
    if (!*w.reading && !w.over_range) return h;
    auto meter = detail::range_for(in_.ranges, *w.range, detail::any(*w.reading));
    if (meter) {
      h.meter = *meter;
      return h;
    }
    Problem p = meter.error();
    p.path = path(i, std::string(w.key) + "_range");
    problems_.push_back(std::move(p));
    return std::nullopt;
  }

  PartVerdict judged(std::size_t i, const Winding& w, const evidence::Limit& limit) {
    const auto h = how(i, w);
    if (!h) return {};
    detail::WhatRead read;
    read.what = fmt::format("{}, {}", in_.coils[i].name, w.key);
    read.reading = detail::any(*w.reading);
    read.over_range = w.over_range;
    read.path = path(i, w.key);
    read.limits_path = std::string(w.key) + (w.key == "to_case" ? "_least" : "_lowest");
    auto got = detail::judge(read, limit, *h, context_);
    if (got) return std::move(*got);
    for (const Problem& p : got.error()) {
      if (std::find(problems_.begin(), problems_.end(), p) == problems_.end()) {
        problems_.push_back(p);
      }
    }
    return {};
  }

  PartVerdict winding(std::size_t i, const Winding& w) {
    const CoilReading& c = in_.coils[i];
    auto v = judged(
        i, w,
        evidence::Limit::entered(warmed(*w.lowest, c), warmed(*w.highest, c), in_.limit_source));
    const bool no_limit = !*w.lowest && !*w.highest;
    if (w.over_range && no_limit) call_open(v);
    if (v.verdict == Verdict::does_not_conform && !w.over_range && *w.reading) {
      const auto low = warmed(*w.lowest, c);
      const bool below = low && (*w.reading)->value.si < low->si;
      v.do_next.emplace_back(below ? "below its band: turns shorted, or another pattern of coil"
                                   : "above its band: a poor joint, or another pattern of coil");
    }
    return v;
  }

  PartVerdict to_case(std::size_t i) {
    const CoilReading& c = in_.coils[i];
    auto v = judged(
        i,
        {"to_case", &c.to_case, c.to_case_over_range, &c.to_case_range, &k_no_limit, &k_no_limit},
        detail::entered<quantity::Resistance>(in_.to_case_least, std::nullopt, in_.limit_source));
    v.what = fmt::format("{}, {} to case", c.name, double_ended() ? "tower" : "primary");
    if (in_.to_case_least) return v;
    if (c.to_case_over_range) {
      v.reason =
          "over-range, as is expected (common practice, no source): no verdict without the "
          "maker's figure";
    } else if (c.to_case) {
      v.reason =
          "a finite reading where over-range is expected (common practice, no source): it "
          "may leak, be wet, or join inside; dry it, look at its diagram and repeat";
      v.do_next.emplace_back("swap it with a sibling and repeat");
    }
    return v;
  }

  std::optional<quantity::Resistance> at_20(const CoilReading& c,
                                            const std::optional<MeasuredResistance>& reading,
                                            std::string_view what, CoilAnswer& a) const {
    if (!reading) return std::nullopt;
    if (!c.temperature) return reading->value;
    const double factor = copper_factor(*c.temperature, k_reference);
    const auto& unit = quantity::typed_unit(*reading, context_.units);
    const double celsius = c.temperature->si - 273.15;
    a.working.push_back(fmt::format("{} at 20 degC = {} x 254.5 / (234.5 + {}) = {}", what,
                                    pencil(reading->value.si, unit), pencil(celsius),
                                    pencil(reading->value.si * factor, unit)));
    return reading->value * factor;
  }

  static std::optional<AnyQuantity> computed(const std::optional<quantity::Resistance>& ohm) {
    if (!ohm) return std::nullopt;
    return AnyQuantity{quantity::KindOf::resistance, ohm->si, 0, {}, {}};
  }

  void figures(const CoilReading& c, CoilAnswer& a) const {
    const auto* table = context_.table("coil-figures");
    a.figures = detail::figures(table, "primary", computed(a.primary_at_20), c.primary_over_range);
    const auto more =
        detail::figures(table, double_ended() ? "double-ended secondary" : "secondary",
                        computed(a.secondary_at_20), c.secondary_over_range);
    a.figures.insert(a.figures.end(), more.begin(), more.end());
  }

  double standard(const MeasuredResistance& reading, const std::string& range) const {
    const auto any = detail::any(reading);
    const auto meter = detail::range_for(in_.ranges, range, any);
    return detail::worst_case(any, meter ? *meter : std::optional<evidence::MeterRange>{}) /
           std::numbers::sqrt3;
  }

  template <class Reading, class At20, class Words>
  void among_coils(Reading reading, At20 at_20, Words words) {
    std::vector<double> values;
    std::vector<double> doubts;
    for (std::size_t i = 0; i < in_.coils.size(); ++i) {
      if (!(out_.coils[i].*at_20)) continue;
      values.push_back((out_.coils[i].*at_20)->si);
      doubts.push_back(standard(*(in_.coils[i].*reading), {}));
    }
    if (values.size() < 2) return;
    const auto found = evidence::compare_siblings(values, statistics::median(doubts));
    if (!found) return;
    std::size_t n = 0;
    for (CoilAnswer& a : out_.coils) {
      if (!(a.*at_20)) continue;
      const auto& s = found->each[n++];
      a.*words = s.standing == Standing::too_few ? "too few coils to compare with"
                 : s.standing == Standing::like_others
                     ? "like the other coils"
                     : fmt::format("stands out: {} than the middle of the coils",
                                   s.from_median > 0 ? "higher" : "lower");
    }
  }

  void conclude() {
    std::vector<PartVerdict> all;
    for (const CoilAnswer& a : out_.coils) {
      all.push_back(a.primary);
      all.push_back(a.secondary);
      // No path to the case is not asked of a coil until its maker's figure is entered.
      if (in_.to_case_least) all.push_back(a.to_case);
    }
    out_.verdict = worst(all);
    out_.in_words = fmt::format("{}: {}", words(out_.verdict), "resistance of the windings only");
    out_.not_covered = std::string(k_coil_not_covered);
    if (double_ended()) {
      out_.notes.emplace_back(
          "tower to tower: both plugs hang on one secondary, so one open lead, plug or coil "
          "disturbs both cylinders of the pair");
      out_.notes.emplace_back("tower to case: over-range is expected (common practice, no source)");
    }
    out_.notes.emplace_back(
        "lift the wires first: closed points, a condenser or a trigger across the coil are read "
        "as the coil");
    const bool cold = std::any_of(in_.coils.begin(), in_.coils.end(),
                                  [](const CoilReading& c) { return !c.temperature; });
    if (cold) {
      out_.notes.emplace_back(
          "without the temperature of a coil its limits are taken as at 20 degC; copper changes by "
          "0.39 % for a kelvin");
    }
  }

  const CoilCheckInput& in_;
  const describe::Context& context_;
  Problems problems_;
  CoilCheckAnswer out_;
};

}  // namespace

double copper_factor(quantity::Temperature from, quantity::Temperature to) {
  return (k_copper_zero + to.si - 273.15) / (k_copper_zero + from.si - 273.15);
}

Checked<CoilCheckAnswer> coil_check(const CoilCheckInput& in, const describe::Context& context) {
  return Coils(in, context).run();
}

}  // namespace wm::ignition
