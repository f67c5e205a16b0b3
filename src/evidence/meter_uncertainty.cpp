#include "evidence/meter_uncertainty.hpp"

#include <fmt/format.h>

#include <cmath>

#include "evidence/detail/budget.hpp"
#include "evidence/detail/figures.hpp"
#include "quantity/text.hpp"

namespace wm::evidence {

using quantity::per_cent;

std::string_view describe(describe::Choices<CoverageRule>& c) {
  c.has(CoverageRule::k_two, "k-two", "k = 2");
  c.has(CoverageRule::t_as_computed, "t-as-computed",
        "Student's t, degrees of freedom as they come out");
  c.has(CoverageRule::t_truncated, "t-truncated",
        "Student's t, degrees of freedom cut to a whole number");
  return "coverage-rule";
}

std::string_view describe(describe::Fields<MeterUncertaintyInput>& f) {
  using In = MeterUncertaintyInput;
  f.has<&In::reading>("reading", "Reading, with its unit; `+- U` (k = 2) if that is stated")
      .needed("12.34 V");
  f.has<&In::repeats>("repeats", "Further readings, each taken afresh").example("12.36 V");
  f.has<&In::meter>("meter", "Range used and its accuracy")
      .example(R"({"name": "60 V", "full_scale": "60.00 V", "of_reading": "0.5 %", "counts": 2})");
  f.has<&In::leads>("leads", "Resistance of the test leads")
      .help("Matters for a resistance below about 20 ohm");
  f.has<&In::lead_resistance>("lead_resistance", "Resistance of the test leads, probes shorted")
      .example("0.3 ohm")
      .shown_when("leads=not-nulled");
  f.has<&In::coverage>("coverage", "How the coverage factor is found");
  f.has<&In::level>("level", "Coverage level for Student's t")
      .between(per_cent(50), per_cent(99.99));
  return "meter-uncertainty-input";
}

std::string_view describe(describe::Fields<BudgetRow>& f) {
  f.has<&BudgetRow::what>("what", "Source of doubt");
  f.has<&BudgetRow::how>("how", "Its sum");
  f.has<&BudgetRow::standard_uncertainty>("standard_uncertainty", "Standard uncertainty");
  f.has<&BudgetRow::share>("share", "Share of u squared");
  f.has<&BudgetRow::degrees_of_freedom>("degrees_of_freedom", "Degrees of freedom, if they end");
  return "budget-row";
}

std::string_view describe(describe::Fields<MeterUncertainty>& f) {
  using Out = MeterUncertainty;
  f.has<&Out::value>("value", "Value, corrected, with its expanded uncertainty");
  f.has<&Out::standard_uncertainty>("standard_uncertainty", "Combined standard uncertainty u");
  f.has<&Out::expanded_uncertainty>("expanded_uncertainty", "Expanded uncertainty U = k u");
  f.has<&Out::worst_case>("worst_case", "Half-width of the maker's bounds, worst case");
  f.has<&Out::coverage_factor>("coverage_factor", "Coverage factor k");
  f.has<&Out::degrees_of_freedom>("degrees_of_freedom",
                                  "Effective degrees of freedom, if they end");
  f.has<&Out::method>("method", "How k was found");
  f.has<&Out::accuracy_known>("accuracy_known", "The meter's accuracy was given");
  f.has<&Out::in_words>("in_words", "In words");
  f.has<&Out::budget>("budget", "Budget, a line for each source of doubt");
  f.has<&Out::working>("working", "The sum, step by step");
  return "meter-uncertainty";
}

namespace {

std::optional<double> if_it_ends(double dof) {
  if (std::isinf(dof)) return std::nullopt;
  return dof;
}

}  // namespace

Checked<MeterUncertainty> meter_uncertainty(const MeterUncertaintyInput& input,
                                            const describe::Context&) {
  auto budget =
      detail::budget_of({&input.reading, input.repeats, input.meter ? &*input.meter : nullptr,
                         input.leads, input.lead_resistance ? &*input.lead_resistance : nullptr});
  if (!budget) return Fail(budget.error());
  const auto& unit = *budget->unit;
  const auto& combined = budget->combined;
  const auto k = coverage(input.coverage, input.level.si, combined.dof);
  if (!k) {
    Problem problem = k.error();
    problem.path = problem.kind == Kind::out_of_bounds ? "level" : "coverage";
    return Fail(Problems{problem});
  }
  const double expanded = k->k * combined.u;
  MeterUncertainty out;
  out.value = detail::as_point(budget->value, expanded, unit);
  out.value.expanded_si = expanded * unit.factor;
  out.standard_uncertainty = detail::as_width(combined.u, unit);
  out.expanded_uncertainty = detail::as_width(expanded, unit);
  out.worst_case = detail::as_width(budget->worst_case, unit);
  out.coverage_factor = k->k;
  if (combined.dof) out.degrees_of_freedom = if_it_ends(*combined.dof);
  out.method = k->method;
  out.accuracy_known = budget->accuracy_known;
  out.in_words = quantity::print_with_uncertainty(out.value.si, *out.value.expanded_si, unit);
  for (const auto& line : combined.lines)
    out.budget.push_back({line.what, line.how, detail::as_width(line.contribution, unit),
                          quantity::ratio(line.share), if_it_ends(line.dof)});
  out.working = std::move(budget->working);
  out.working.push_back(k->method);
  out.working.push_back(fmt::format("U = {} x {} = {}", detail::figure(k->k),
                                    detail::figure(combined.u), detail::with_unit(expanded, unit)));
  return out;
}

}  // namespace wm::evidence
