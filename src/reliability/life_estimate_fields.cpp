// The words of "life-estimate", "survival-next" and "zero-failure-bound".
#include "reliability/life_estimate.hpp"

namespace wm::reliability {

using quantity::hours;
using quantity::ratio;

namespace {
constexpr std::string_view k_parts =
    R"([{"name": "1", "ending": "failed", "age": "310 h"},
        {"name": "2", "ending": "failed", "age": "420 h", "entered": "200 h"},
        {"name": "3", "ending": "failed", "age": "275 h"},
        {"name": "4", "ending": "running", "age": "500 h"}])";
constexpr std::string_view k_running =
    R"([{"name": "1", "ending": "running", "age": "200 h"},
        {"name": "2", "ending": "running", "age": "350 h"}])";
constexpr Duration k_most = hours(1e6);
}  // namespace

std::string_view describe(describe::Choices<Ending>& c) {
  c.has(Ending::failed, "failed", "failed at that age")
      .has(Ending::running, "running", "still in order at that age, or renewed for another reason")
      .has(Ending::failed_before, "failed-before", "found failed: some time before that age")
      .has(Ending::failed_between, "failed-between", "found failed: between two ages");
  return "life-ending";
}
std::string_view describe(describe::Choices<TestEnd>& c) {
  c.has(TestEnd::at_a_time, "at-a-time", "counting stopped at a time")
      .has(TestEnd::at_a_failure, "at-a-failure", "counting stopped at a failure");
  return "test-end";
}

std::string_view describe(describe::Fields<PartLife>& f) {
  using P = PartLife;
  f.has<&P::name>("name", "Which part").example("1");
  f.has<&P::ending>("ending", "What became of it");
  f.has<&P::age>("age", "Its age then").needed("310 h").above(hours(0)).at_most(k_most);
  f.has<&P::until>("until", "The later of two ages").above(hours(0)).at_most(k_most);
  f.has<&P::entered>("entered", "Age it had when the record began").between(hours(0), k_most);
  return "part-life";
}

std::string_view describe(describe::Fields<CurveStep>& f) {
  using C = CurveStep;
  f.has<&C::age>("age", "Age");
  f.has<&C::at_risk>("at_risk", "In service");
  f.has<&C::failed>("failed", "Failed");
  f.has<&C::survival>("survival", "Share that lives longer");
  f.has<&C::deviation>("deviation", "Its standard deviation");
  f.has<&C::hazard_sum>("hazard_sum", "Sum of hazards");
  return "curve-step";
}

std::string_view describe(describe::Fields<LifeEstimateInput>& f) {
  using I = LifeEstimateInput;
  f.has<&I::parts>("parts", "Parts").needed(k_parts).at_most(2000);
  f.has<&I::confidence>("confidence", "Confidence of the limits").between(ratio(0.5), ratio(0.999));
  f.has<&I::share_failed>("share_failed", "Age at which this share has failed")
      .between(ratio(0.001), ratio(0.99));
  return "life-estimate-input";
}

std::string_view describe(describe::Fields<LifeEstimateAnswer>& f) {
  using A = LifeEstimateAnswer;
  f.has<&A::shape>("shape", "Shape");
  f.has<&A::shape_low>("shape_low", "Shape, at least");
  f.has<&A::shape_high>("shape_high", "Shape, at most");
  f.has<&A::scale>("scale", "Scale: 63 % have failed");
  f.has<&A::scale_low>("scale_low", "Scale, at least");
  f.has<&A::scale_high>("scale_high", "Scale, at most");
  f.has<&A::life>("life", "Age at which the share has failed");
  f.has<&A::life_low>("life_low", "At least");
  f.has<&A::life_high>("life_high", "At most");
  f.has<&A::mean>("mean", "Mean life");
  f.has<&A::log_likelihood>("log_likelihood", "Logarithm of the likelihood");
  f.has<&A::curvature_limits>("curvature_limits", "Limits by curvature, for comparison");
  f.has<&A::constant_rate_mean>("constant_rate_mean", "Mean life at a constant rate");
  f.has<&A::age_shown>("age_shown", "An effect of age is shown");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::curve>("curve", "Survival curve");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "life-estimate-answer";
}

std::string_view describe(describe::Fields<SurvivalNextInput>& f) {
  using I = SurvivalNextInput;
  f.has<&I::shape>("shape", "Shape").needed("1.72").between(0.02, 100.0);
  f.has<&I::scale>("scale", "Scale").needed("607 h").above(hours(0)).at_most(k_most);
  f.has<&I::age>("age", "Its age now").needed("300 h").between(hours(0), k_most);
  f.has<&I::next>("next", "The next").needed("100 h").between(hours(0), k_most);
  f.has<&I::shape_low>("shape_low", "Shape, at least").between(0.02, 100.0);
  f.has<&I::shape_high>("shape_high", "Shape, at most").between(0.02, 100.0);
  return "survival-next-input";
}
std::string_view describe(describe::Fields<SurvivalNextAnswer>& f) {
  using A = SurvivalNextAnswer;
  f.has<&A::survival>("survival", "Chance that it lasts");
  f.has<&A::failure>("failure", "Chance that it fails");
  f.has<&A::failure_low>("failure_low", "At the more favourable shape");
  f.has<&A::failure_high>("failure_high", "At the less favourable shape");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::working>("working", "The sum, step by step");
  return "survival-next-answer";
}

std::string_view describe(describe::Fields<ZeroFailureInput>& f) {
  using I = ZeroFailureInput;
  f.has<&I::parts>("parts", "Parts, failed or not").needed(k_running).at_most(2000);
  f.has<&I::failures>("failures", "Failures among them").between(0.0, 2000.0);
  f.has<&I::shape>("shape", "Shape taken as known").between(0.02, 100.0).help("1: constant rate.");
  f.has<&I::confidence>("confidence", "Confidence").between(ratio(0.5), ratio(0.999));
  f.has<&I::ended>("ended", "Counting stopped");
  return "zero-failure-bound-input";
}
std::string_view describe(describe::Fields<ZeroFailureAnswer>& f) {
  using A = ZeroFailureAnswer;
  f.has<&A::scale_low>("scale_low", "Scale, at least (one-sided)");
  f.has<&A::scale>("scale", "Scale, best estimate");
  f.has<&A::mean_low>("mean_low", "Mean life, at least (two-sided)");
  f.has<&A::mean_high>("mean_high", "Mean life, at most (two-sided)");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::working>("working", "The sum, step by step");
  return "zero-failure-bound-answer";
}

}  // namespace wm::reliability
