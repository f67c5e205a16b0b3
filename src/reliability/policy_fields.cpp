// The words of "renewal-age", "inspection-interval" and "failure-trend".
#include "reliability/policy.hpp"

namespace wm::reliability {

using quantity::hours;
using quantity::ratio;

namespace {
constexpr quantity::Duration k_most = hours(1e6);
constexpr double k_most_cost = 1e9;
constexpr std::string_view k_times =
    R"(["2.7 h", "10.3 h", "12.5 h", "30.6 h", "57 h", "61.3 h", "80 h", "109.5 h"])";
}  // namespace

std::string_view describe(describe::Choices<RenewalRule>& c) {
  c.has(RenewalRule::by_age, "by-age", "each part at its own age")
      .has(RenewalRule::all_at_a_time, "all-at-a-time",
           "all at fixed times, failures renewed in between")
      .has(RenewalRule::minimal_repair, "minimal-repair",
           "all at fixed times, failures only mended in between");
  return "renewal-rule";
}
std::string_view describe(describe::Choices<InspectionRule>& c) {
  c.has(InspectionRule::warning_time, "warning-time", "by the warning time and an accepted miss")
      .has(InspectionRule::delay_time, "delay-time", "by cost, with a mean delay");
  return "inspection-rule";
}

std::string_view describe(describe::Fields<RenewalAgeInput>& f) {
  using I = RenewalAgeInput;
  f.has<&I::rule>("rule", "How it is renewed");
  f.has<&I::shape>("shape", "Shape of its lives").needed("2.5").between(0.02, 100.0);
  f.has<&I::scale>("scale", "Scale of its lives").needed("1000 h").above(hours(0)).at_most(k_most);
  f.has<&I::planned_cost>("planned_cost", "Cost of a planned renewal")
      .needed("100")
      .between(0.0, k_most_cost);
  f.has<&I::failure_cost>("failure_cost", "Cost of a failure, renewal included")
      .needed("500")
      .between(0.0, k_most_cost);
  f.has<&I::job_fault_chance>("job_fault_chance", "Chance that the job itself brings a fault in")
      .between(ratio(0), ratio(1));
  f.has<&I::job_fault_cost>("job_fault_cost", "What that costs").between(0.0, k_most_cost);
  return "renewal-age-input";
}
std::string_view describe(describe::Fields<RenewalAgeAnswer>& f) {
  using A = RenewalAgeAnswer;
  f.has<&A::pays>("pays", "Renewing before failure pays");
  f.has<&A::renew_at>("renew_at", "Renew at");
  f.has<&A::cost_per_hour>("cost_per_hour", "Cost an hour");
  f.has<&A::never_renewed_per_hour>("never_renewed_per_hour", "Cost an hour, waiting for failure");
  f.has<&A::saving>("saving", "Saving");
  f.has<&A::survives_to_it>("survives_to_it", "Share that lives to it");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::working>("working", "The sum, step by step");
  return "renewal-age-answer";
}

std::string_view describe(describe::Fields<InspectionIntervalInput>& f) {
  using I = InspectionIntervalInput;
  f.has<&I::rule>("rule", "Rule");
  f.has<&I::detection>("detection", "Chance that one inspection finds it")
      .between(ratio(0.01), ratio(1));
  f.has<&I::warning>("warning", "Warning time: from first visible to failed")
      .example("100 h")
      .above(hours(0))
      .at_most(k_most);
  f.has<&I::accepted_miss>("accepted_miss", "Accepted chance of missing it")
      .between(ratio(1e-9), ratio(0.5));
  f.has<&I::defects_per_hour>("defects_per_hour", "New defects an hour").between(0.0, 1000.0);
  f.has<&I::mean_delay>("mean_delay", "Mean time from visible to failed")
      .above(hours(0))
      .at_most(k_most);
  f.has<&I::inspection_cost>("inspection_cost", "Cost of an inspection").between(0.0, k_most_cost);
  f.has<&I::repair_cost>("repair_cost", "Cost of a defect found in time").between(0.0, k_most_cost);
  f.has<&I::failure_cost>("failure_cost", "Cost of a failure").between(0.0, k_most_cost);
  return "inspection-interval-input";
}
std::string_view describe(describe::Fields<InspectionIntervalAnswer>& f) {
  using A = InspectionIntervalAnswer;
  f.has<&A::interval>("interval", "Inspect every");
  f.has<&A::inspections_in_warning>("inspections_in_warning", "Inspections in the warning time");
  f.has<&A::missed>("missed", "Share that fails before it is found");
  f.has<&A::cost_per_hour>("cost_per_hour", "Cost an hour");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "inspection-interval-answer";
}

std::string_view describe(describe::Fields<GroupedCount>& f) {
  f.has<&GroupedCount::until>("until", "Until").needed("20 h").above(hours(0)).at_most(k_most);
  f.has<&GroupedCount::failures>("failures", "Failures since the row above")
      .needed("3")
      .between(0.0, 1e6);
  return "grouped-count";
}
std::string_view describe(describe::Fields<FailureTrendInput>& f) {
  using I = FailureTrendInput;
  f.has<&I::times>("times", "Times of the failures, hours since the record began")
      .example(k_times)
      .at_most(5000);
  f.has<&I::until>("until", "End of the record")
      .above(hours(0))
      .at_most(k_most)
      .help("Left empty: the record ends with its last failure.");
  f.has<&I::grouped>("grouped", "Or counts in intervals").at_most(500);
  f.has<&I::confidence>("confidence", "Confidence").between(ratio(0.5), ratio(0.999));
  f.has<&I::next>("next", "Look ahead by").between(hours(0), k_most);
  return "failure-trend-input";
}
std::string_view describe(describe::Fields<FailureTrendAnswer>& f) {
  using A = FailureTrendAnswer;
  f.has<&A::shape>("shape", "Shape: below 1, fewer with time");
  f.has<&A::shape_low>("shape_low", "Shape, at least");
  f.has<&A::shape_high>("shape_high", "Shape, at most");
  f.has<&A::shape_unbiased>("shape_unbiased", "Shape, corrected for few failures");
  f.has<&A::rate_factor>("rate_factor", "Factor of the law, times in hours");
  f.has<&A::rate_now>("rate_now", "Failures an hour, now");
  f.has<&A::between_failures>("between_failures", "Between failures, now");
  f.has<&A::laplace>("laplace", "Laplace's figure");
  f.has<&A::trend_statistic>("trend_statistic", "Figure of the trend test");
  f.has<&A::fewer_p>("fewer_p", "Chance of so few late ones without a trend");
  f.has<&A::more_p>("more_p", "Chance of so many late ones without a trend");
  f.has<&A::misfit>("misfit", "Misfit of the law (Cramer-von Mises)");
  f.has<&A::expected_next>("expected_next", "Expected in the look ahead");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "failure-trend-answer";
}

}  // namespace wm::reliability
