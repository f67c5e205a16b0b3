// The fields of coil-check, as every face shows them.
#include "ignition/coil.hpp"

namespace wm::ignition {

using quantity::celsius;
using quantity::ohms;

namespace {
constexpr auto k_most_ohms = ohms(1e12);
}

std::string_view describe(describe::Choices<CoilKind>& c) {
  c.has(CoilKind::single_ended, "single-ended", "one tower")
      .has(CoilKind::double_ended, "double-ended", "two towers, one secondary between them");
  return "coil-kind";
}

std::string_view describe(describe::Fields<CoilReading>& f) {
  using C = CoilReading;
  f.has<&C::name>("name", "Which coil").needed("left").unique();
  f.has<&C::primary>("primary", "Primary read").example("1.1 ohm").between(ohms(-1), k_most_ohms);
  f.has<&C::primary_over_range>("primary_over_range", "Primary: over-range");
  f.has<&C::primary_range>("primary_range", "Primary: range of the meter");
  f.has<&C::secondary>("secondary", "Secondary read, tower to case or tower to tower")
      .example("15.60 kohm")
      .between(ohms(-1), k_most_ohms);
  f.has<&C::secondary_over_range>("secondary_over_range", "Secondary: over-range");
  f.has<&C::secondary_range>("secondary_range", "Secondary: range of the meter");
  f.has<&C::to_case>("to_case", "To the case, where there should be no path")
      .between(ohms(-1), k_most_ohms);
  f.has<&C::to_case_over_range>("to_case_over_range", "To the case: over-range");
  f.has<&C::to_case_range>("to_case_range", "To the case: range of the meter");
  f.has<&C::temperature>("temperature", "Temperature of the coil")
      .example("20 degC")
      .between(celsius(-40), celsius(180));
  return "coil-reading";
}

std::string_view describe(describe::Fields<CoilCheckInput>& f) {
  using In = CoilCheckInput;
  f.has<&In::kind>("kind", "Kind of coil").example("double-ended");
  f.has<&In::coils>("coils", "The coils")
      .needed(R"([{"name": "left", "primary": "1.1 ohm", "secondary": "15.60 kohm",
 "temperature": "20 degC"}])")
      .between(1, 24);
  f.has<&In::primary_lowest>("primary_lowest", "Primary, lowest").between(ohms(0), k_most_ohms);
  f.has<&In::primary_highest>("primary_highest", "Primary, highest").between(ohms(0), k_most_ohms);
  f.has<&In::secondary_lowest>("secondary_lowest", "Secondary, lowest")
      .example("15 kohm")
      .between(ohms(0), k_most_ohms)
      .help("The maker's figure; no table gives a limit.");
  f.has<&In::secondary_highest>("secondary_highest", "Secondary, highest")
      .example("16 kohm")
      .between(ohms(0), k_most_ohms);
  f.has<&In::to_case_least>("to_case_least", "To the case, least").between(ohms(0), k_most_ohms);
  f.has<&In::limit_source>("limit_source", "Where the limits are written")
      .example("installation manual of the ignition's maker");
  f.has<&In::limits_at>("limits_at", "Temperature at which the limits hold")
      .between(celsius(-40), celsius(180));
  f.has<&In::ranges>("ranges", "Ranges of the meter and their accuracy")
      .example(R"([{"name": "200 ohm", "full_scale": "200 ohm", "resolution": "0.1 ohm",
 "of_reading": "0.8 %", "counts": 3}, {"name": "20 kohm", "full_scale": "20 kohm",
 "resolution": "0.01 kohm", "of_reading": "0.8 %", "counts": 3}])")
      .at_most(16);
  f.has<&In::test_leads>("test_leads", "Test leads").example("nulled");
  f.has<&In::test_lead_resistance>("test_lead_resistance", "Resistance of the test leads")
      .between(ohms(0), ohms(100));
  f.has<&In::guard_from>("guard_from", "Guard band from");
  return "coil-check-input";
}

std::string_view describe(describe::Fields<CoilAnswer>& f) {
  using A = CoilAnswer;
  f.has<&A::name>("name", "Coil");
  f.has<&A::primary>("primary", "Primary");
  f.has<&A::secondary>("secondary", "Secondary");
  f.has<&A::to_case>("to_case", "To the case");
  f.has<&A::primary_at_20>("primary_at_20", "Primary at 20 degC");
  f.has<&A::secondary_at_20>("secondary_at_20", "Secondary at 20 degC");
  f.has<&A::primary_among_coils>("primary_among_coils", "Primary among the coils");
  f.has<&A::secondary_among_coils>("secondary_among_coils", "Secondary among the coils");
  f.has<&A::figures>("figures", "Figures of the trade: advice");
  f.has<&A::working>("working", "The sum, step by step");
  return "coil-answer";
}

std::string_view describe(describe::Fields<CoilCheckAnswer>& f) {
  using A = CoilCheckAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::coils>("coils", "Each coil");
  f.has<&A::not_covered>("not_covered", "Not covered by this check");
  f.has<&A::notes>("notes", "Notes");
  return "coil-check-answer";
}

}  // namespace wm::ignition
