#include "evidence/detail/budget.hpp"

#include <fmt/format.h>

#include <cmath>

#include "evidence/detail/figures.hpp"
#include "quantity/text.hpp"
#include "statistics/summary.hpp"

namespace wm::evidence::detail {

using describe::AnyQuantity;
using quantity::KindOf;
using quantity::Unit;

const Unit& unit_of(const AnyQuantity& value) {
  if (!value.text.empty()) {
    const auto parsed = quantity::parse_measured(value.text, value.kind);
    if (parsed)
      if (const Unit* unit = quantity::find_unit(value.kind, parsed->value.unit)) return *unit;
  }
  return quantity::default_unit(value.kind, quantity::UnitSet::us_customary);
}

double point_in(const AnyQuantity& value, const Unit& unit) {
  return (value.si - unit.offset) / unit.factor;
}

double width_in(const AnyQuantity& value, const Unit& unit) {
  // Typed on the same kind of scale ("0.5 degF" beside a temperature): its own zero goes off.
  const double own_zero = value.kind == unit.kind ? unit_of(value).offset : 0.0;
  return (value.si - own_zero) / unit.factor;
}

KindOf width_kind(KindOf kind) {
  if (kind == KindOf::temperature) return KindOf::temperature_difference;
  if (kind == KindOf::pressure_gauge || kind == KindOf::pressure_absolute)
    return KindOf::pressure_difference;
  return kind;
}

double second_digit(double width) {
  if (!(width > 0.0) || !std::isfinite(width)) return 0.0;
  return std::pow(10.0, std::floor(std::log10(width)) - 1.0);
}

namespace {

Problem at(std::string path, Problem problem) {
  problem.path = std::move(path);
  return problem;
}

std::string spec_in_words(const MeterRange& m, double value, double step, double full,
                          const Unit& unit) {
  std::string sum;
  const auto add = [&](const std::string& part) { sum += (sum.empty() ? "" : " + ") + part; };
  if (m.of_reading.si > 0.0)
    add(fmt::format("{} % of {}", figure(m.of_reading.si * 100.0), figure(std::abs(value))));
  if (m.counts > 0) add(fmt::format("{} x {}", m.counts, figure(step)));
  if (m.of_full_scale.si > 0.0)
    add(fmt::format("{} % of full scale {}", figure(m.of_full_scale.si * 100.0), figure(full)));
  return sum + " " + std::string(unit.symbol);
}

/// Builds the budget step by step; problems are collected, not thrown at the first.
class Maker {
 public:
  explicit Maker(const BudgetInput& input) : in_(input), unit_(unit_of(*input.reading)) {
    out_.unit = &unit_;
  }

  Checked<Budget> make() {
    check_kinds();
    if (!problems_.empty()) return Fail(problems_);
    readings();
    meter();
    leads();
    if (!problems_.empty()) return Fail(problems_);
    auto combined = combine(out_.components);
    if (!combined) return Fail(Problems{at("reading", combined.error())});
    out_.combined = std::move(*combined);
    for (const auto& c : out_.components)
      out_.working.push_back(fmt::format("{}: {}", c.what, c.how));
    out_.working.push_back(out_.combined.working + " " + std::string(unit_.symbol));
    return std::move(out_);
  }

 private:
  void check_kinds() {
    const KindOf kind = in_.reading->kind;
    for (std::size_t i = 0; i < in_.repeats.size(); ++i)
      need_kind(in_.repeats[i], kind, fmt::format("repeats/{}", i), false, problems_);
    if (in_.meter != nullptr) {
      if (in_.meter->full_scale)
        need_kind(*in_.meter->full_scale, kind, "meter/full_scale", false, problems_);
      if (in_.meter->resolution)
        need_kind(*in_.meter->resolution, kind, "meter/resolution", true, problems_);
      check_meter(*in_.meter);
    }
    if (in_.lead_resistance != nullptr) {
      need_kind(*in_.lead_resistance, KindOf::resistance, "lead_resistance", false, problems_);
      if (kind != KindOf::resistance || in_.leads != TestLeads::not_nulled)
        problems_.push_back(
            at("lead_resistance",
               Fail(Kind::conflict,
                    "the resistance of the leads counts only for a resistance whose leads are in "
                    "the reading",
                    "leads = not-nulled with a resistance reading, or no lead resistance")
                   .error));
    }
  }

  void check_meter(const MeterRange& m) {
    if (m.of_full_scale.si > 0.0 && !m.full_scale)
      problems_.push_back(
          at("meter/full_scale",
             Fail(Kind::missing, "an accuracy in per cent of full scale needs the full scale",
                  "the largest value of the range", "60 psi")
                 .error));
    if (m.counts < 0 || !(m.of_reading.si >= 0.0) || !(m.of_full_scale.si >= 0.0))
      problems_.push_back(at(
          "meter", Fail(Kind::out_of_bounds, "an accuracy is below zero", "zero or more").error));
    if (m.resolution && !(width_in(*m.resolution, unit_) > 0.0))
      problems_.push_back(
          at("meter/resolution", Fail(Kind::out_of_bounds, "one count cannot be zero or less",
                                      "more than zero", "0.01 kohm")
                                     .error));
    if (m.full_scale && std::abs(point_in(*in_.reading, unit_)) >
                            std::abs(point_in(*m.full_scale, unit_)) * (1.0 + 1e-12))
      problems_.push_back(
          at("reading", Fail(Kind::out_of_bounds,
                             fmt::format("{} lies beyond the range of {}",
                                         with_unit(point_in(*in_.reading, unit_), unit_),
                                         with_unit(point_in(*m.full_scale, unit_), unit_)),
                             "a reading within the range; if the display showed overload, mark "
                             "it over-range")
                            .error));
  }

  void readings() {
    std::vector<double> values{point_in(*in_.reading, unit_)};
    for (const auto& r : in_.repeats) values.push_back(point_in(r, unit_));
    out_.value = statistics::mean(values);
    if (values.size() == 1) return;
    out_.working.push_back(
        fmt::format("mean of {} readings = {}", values.size(), with_unit(out_.value, unit_)));
    if (auto scatter = type_a("scatter of the repeats", values))
      out_.components.push_back(std::move(*scatter));
  }

  double step() const {
    if (in_.meter != nullptr && in_.meter->resolution)
      return width_in(*in_.meter->resolution, unit_);
    return in_.reading->resolution_si / unit_.factor;
  }

  void meter() {
    if (in_.reading->expanded_si) {
      const double stated = *in_.reading->expanded_si / unit_.factor;
      if (!(stated >= 0.0) || !std::isfinite(stated)) {
        problems_.push_back(
            at("reading", Fail(Kind::out_of_bounds, "the stated uncertainty is not a usable number",
                               "zero or more")
                              .error));
        return;
      }
      out_.worst_case = stated;
      out_.accuracy_known = true;
      out_.components.push_back(type_b_stated("stated uncertainty", stated, 2.0));
      if (in_.meter != nullptr && accuracy_given(*in_.meter))
        out_.working.emplace_back(
            "the uncertainty stated with the reading counts, not the meter's accuracy");
      return;
    }
    const double digit = step();
    if (in_.meter != nullptr && accuracy_given(*in_.meter)) {
      const auto& m = *in_.meter;
      const double full = m.full_scale ? std::abs(point_in(*m.full_scale, unit_)) : 0.0;
      const double a = m.of_reading.si * std::abs(out_.value) +
                       static_cast<double>(m.counts) * digit + m.of_full_scale.si * full;
      auto c = type_b("meter accuracy", a, Distribution::rectangular);
      c.how = fmt::format("{} = +-{}, rectangular: {} / sqrt(3) = {}",
                          spec_in_words(m, out_.value, digit, full, unit_), figure(a), figure(a),
                          figure(c.u));
      out_.components.push_back(std::move(c));
      out_.worst_case = a;
      out_.accuracy_known = true;
    }
    out_.components.push_back(last_digit("last digit", digit));
    if (!out_.accuracy_known) {
      out_.worst_case = digit / 2.0;
      out_.working.emplace_back(
          "the meter's accuracy was not given: only its last digit is counted, and the true doubt "
          "is larger");
    }
  }

  void leads() {
    if (in_.reading->kind != KindOf::resistance) return;
    if (in_.leads == TestLeads::nulled && !in_.reading->expanded_si)
      out_.components.push_back(last_digit("the null", step()));
    if (in_.leads != TestLeads::not_nulled || in_.lead_resistance == nullptr) return;
    const double r = point_in(*in_.lead_resistance, unit_);
    out_.working.push_back(fmt::format("less the test leads: {} - {} = {}", figure(out_.value),
                                       figure(r), with_unit(out_.value - r, unit_)));
    out_.value -= r;
    if (in_.lead_resistance->expanded_si) {
      const double stated = *in_.lead_resistance->expanded_si / unit_.factor;
      out_.components.push_back(type_b_stated("resistance of the test leads", stated, 2.0));
      out_.worst_case += stated;
    } else {
      const double digit = in_.lead_resistance->resolution_si / unit_.factor;
      out_.components.push_back(
          type_b("resistance of the test leads", digit, Distribution::rectangular));
      out_.worst_case += digit;
    }
  }

  const BudgetInput& in_;
  const Unit& unit_;
  Budget out_;
  Problems problems_;
};

}  // namespace

namespace {
/// The text carries the unit, so that kohm stays kohm wherever the value is shown.
AnyQuantity in_unit(KindOf kind, double si, double resolution_si, const Unit* unit) {
  AnyQuantity out{kind, si, resolution_si, {}, {}};
  if (unit != nullptr) out.text = quantity::print(si, *unit, resolution_si);
  return out;
}
}  // namespace

AnyQuantity as_width(double width, const Unit& unit) {
  const auto kind = width_kind(unit.kind);
  const auto* own = kind == unit.kind ? &unit : quantity::find_unit(kind, unit.symbol);
  return in_unit(kind, width * unit.factor, second_digit(width) * unit.factor, own);
}

AnyQuantity as_point(double value, double doubt, const Unit& unit) {
  return in_unit(unit.kind, value * unit.factor + unit.offset, second_digit(doubt) * unit.factor,
                 &unit);
}

std::string with_unit(double value, const Unit& unit) {
  return fmt::format("{} {}", figure(value), unit.symbol);
}

void need_kind(const AnyQuantity& value, KindOf kind, std::string path, bool width,
               Problems& problems) {
  if (value.kind != kind && !(width && value.kind == width_kind(kind))) {
    Problem p;
    p.kind = Kind::wrong_dimension;
    p.path = std::move(path);
    p.what = fmt::format("`{}` is {}, but the reading is {}", value.text,
                         quantity::info(value.kind).words, quantity::info(kind).words);
    p.expected = std::string(quantity::info(kind).words);
    p.example = std::string(quantity::info(kind).example);
    problems.push_back(std::move(p));
  } else if (!std::isfinite(value.si)) {
    problems.push_back(
        at(std::move(path), Fail(Kind::out_of_bounds, "not a number", "a number").error));
  }
}

Checked<Budget> budget_of(const BudgetInput& input) { return Maker(input).make(); }

}  // namespace wm::evidence::detail
