// What the calculation `conformity` asks and answers, described once.
#include "evidence/conformity.hpp"

namespace wm::evidence {

using quantity::per_cent;

std::string_view describe(describe::Choices<GuardFrom>& c) {
  c.has(GuardFrom::expanded, "expanded", "expanded uncertainty U = 2 u");
  c.has(GuardFrom::worst_case, "worst-case", "worst case: the maker's bounds as they stand");
  return "guard-from";
}

std::string_view describe(describe::Fields<SuchParts>& f) {
  f.has<&SuchParts::mean>("mean", "How such parts usually measure").needed("20 kohm");
  f.has<&SuchParts::standard_deviation>("standard_deviation", "Their standard deviation")
      .needed("2.5 kohm");
  return "such-parts";
}

std::string_view describe(describe::Fields<ConformityInput>& f) {
  using In = ConformityInput;
  f.has<&In::reading>("reading", "Reading, with its unit; `+- U` (k = 2) if that is stated")
      .example("26.50 kohm")
      .help("Left empty: not tested, unless it is over-range");
  f.has<&In::over_range>("over_range", "The display showed overload or open");
  f.has<&In::repeats>("repeats", "Further readings, each taken afresh").example("26.48 kohm");
  f.has<&In::meter>("meter", "Range used and its accuracy")
      .example(
          R"({"name": "60 kohm", "full_scale": "60.00 kohm", "of_reading": "0.9 %", "counts": 2})");
  f.has<&In::leads>("leads", "Resistance of the test leads");
  f.has<&In::lead_resistance>("lead_resistance", "Resistance of the test leads, probes shorted")
      .example("0.3 ohm")
      .shown_when("leads=not-nulled");
  f.has<&In::lower>("lower", "Lower limit, itself allowed").example("12.00 kohm");
  f.has<&In::upper>("upper", "Upper limit, itself allowed").example("27.60 kohm");
  f.has<&In::limit_source>("limit_source", "Where the limit comes from")
      .example("lead maker's data sheet, entered by the owner");
  f.has<&In::rule>("rule", "Decision rule");
  f.has<&In::guard_from>("guard_from", "Guard band made from");
  f.has<&In::guard_factor>("guard_factor", "Guard band as a multiple of that").between(0, 10);
  f.has<&In::probability>("probability", "Probability that the rule by probability asks for")
      .between(per_cent(50.1), per_cent(99.99))
      .shown_when("rule=probability");
  f.has<&In::such_parts>("such_parts", "How such parts usually turn out, if known")
      .help("Only for the long-run risks of the rule");
  return "conformity-input";
}

std::string_view describe(describe::Fields<Conformity>& f) {
  using Out = Conformity;
  f.has<&Out::verdict>("verdict", "Verdict");
  f.has<&Out::open>("open", "Open circuit");
  f.has<&Out::in_words>("in_words", "In words");
  f.has<&Out::reason>("reason", "Why");
  f.has<&Out::risk>("risk", "How likely that is wrong");
  f.has<&Out::meter_good_enough>("meter_good_enough", "The meter is good enough for this limit");
  f.has<&Out::accuracy_known>("accuracy_known", "The meter's accuracy was given");
  f.has<&Out::do_next>("do_next", "What to do next");
  f.has<&Out::value>("value", "Value, corrected, with its expanded uncertainty");
  f.has<&Out::guard>("guard", "Guard band");
  f.has<&Out::accept_from>("accept_from", "Conforms from");
  f.has<&Out::accept_to>("accept_to", "Conforms up to");
  f.has<&Out::probability_of_conformity>("probability_of_conformity",
                                         "Probability of being inside the limits");
  f.has<&Out::false_accept>("false_accept", "Chance that it conforms here and yet lies outside");
  f.has<&Out::false_reject>("false_reject", "Chance that it fails here and yet lies inside");
  f.has<&Out::allowance_used>("allowance_used", "Allowance used");
  f.has<&Out::consumer_risk>("consumer_risk",
                             "Over many such parts: share accepted and yet outside");
  f.has<&Out::producer_risk>("producer_risk",
                             "Over many such parts: share inside and yet not accepted");
  f.has<&Out::limit_source>("limit_source", "Where the limit comes from");
  f.has<&Out::working>("working", "The sum, step by step");
  return "conformity";
}

}  // namespace wm::evidence
