// The words of "starting-circuit": fields, labels, bounds, examples.
#include "electrics/starting.hpp"

namespace wm::electrics {

using quantity::amperes;
using quantity::celsius;
using quantity::ohms;
using quantity::volts;

std::string_view describe(describe::Choices<StartElementKind>& c) {
  c.has(StartElementKind::cable, "cable", "cable")
      .has(StartElementKind::contactor, "contactor", "contactor")
      .has(StartElementKind::joint, "joint", "joint")
      .has(StartElementKind::ground, "ground", "ground path");
  return "start-element-kind";
}

std::string_view describe(describe::Choices<ElementStanding>& c) {
  c.has(ElementStanding::not_measured, "not-measured", "not measured")
      .has(ElementStanding::as_expected, "as-expected", "has what it should have")
      .has(ElementStanding::undecided, "cannot-tell", "this meter cannot tell")
      .has(ElementStanding::high, "high", "more than it should have");
  return "element-standing";
}

std::string_view describe(describe::Fields<StartElement>& f) {
  using E = StartElement;
  f.has<&E::name>("name", "Which element").needed("battery cable").unique();
  f.has<&E::kind>("kind", "What it is");
  f.has<&E::conductor>("conductor", "Conductor").shown_when("kind=cable");
  f.has<&E::length>("length", "Length")
      .example("12 ft")
      .above(quantity::feet(0))
      .at_most(quantity::feet(200))
      .shown_when("kind=cable");
  f.has<&E::resistance>("resistance", "Resistance it should have")
      .example("0.5 mohm")
      .between(ohms(0), ohms(10))
      .help("Its maker's, or your own reading when it was new. Wins over the tables.");
  f.has<&E::beside>("beside", "Lies beside (in parallel with)")
      .help("Name of an earlier element, such as a second ground strap.");
  f.has<&E::in_return>("in_return", "On the ground side, after the starter");
  f.has<&E::drop>("drop", "Drop read across it while cranking")
      .example("0.43 V +- 0.01 V")
      .between(volts(-1), volts(30));
  return "start-element";
}

std::string_view describe(describe::Fields<StartBattery>& f) {
  using B = StartBattery;
  f.has<&B::open_circuit>("open_circuit", "Voltage at rest, no load")
      .needed("12.6 V")
      .above(volts(0))
      .at_most(volts(60));
  f.has<&B::internal>("internal", "Internal resistance at 25 degC")
      .needed("8 mohm")
      .between(ohms(0), ohms(1))
      .help("(V at rest - V cranking) / I. 5 to 15 mohm for 20 to 35 Ah lead-acid (from memory).");
  f.has<&B::temperature>("temperature", "Temperature of the battery")
      .example("-10 degC")
      .between(celsius(-20), celsius(50))
      .help("A model of lead-acid batteries, from memory. Leave empty for another chemistry.");
  return "start-battery";
}

std::string_view describe(describe::Fields<StartMotor>& f) {
  using M = StartMotor;
  f.has<&M::armature>("armature", "Armature resistance")
      .needed("15 mohm")
      .above(ohms(0))
      .at_most(ohms(10));
  f.has<&M::brushes>("brushes", "Voltage the brushes take")
      .needed("1 V")
      .between(volts(0), volts(10));
  f.has<&M::at_voltage>("at_voltage", "Read once while cranking: voltage at the starter")
      .needed("10 V")
      .above(volts(0))
      .at_most(volts(60));
  f.has<&M::at_current>("at_current", "its current")
      .needed("200 A")
      .above(amperes(0))
      .at_most(amperes(5000));
  f.has<&M::at_speed>("at_speed", "and the cranking speed")
      .needed("120 rpm")
      .above(quantity::rpm(0))
      .at_most(quantity::rpm(20000));
  return "start-motor";
}

std::string_view describe(describe::Fields<StartingInput>& f) {
  using In = StartingInput;
  f.has<&In::name>("name", "Which circuit").example("starting circuit");
  f.has<&In::battery>("battery", "Battery")
      .needed(R"({"open_circuit": "12.6 V", "internal": "8 mohm"})");
  f.has<&In::elements>("elements", "Elements, in order from the plus post to the minus post")
      .needed(R"([{"name": "battery contactor", "kind": "contactor", "resistance": "0.5 mohm",
 "drop": "0.11 V +- 0.01 V"},
 {"name": "cable", "conductor": {"size": "2"}, "length": "12 ft", "drop": "0.42 V +- 0.01 V"},
 {"name": "starter contactor", "kind": "contactor", "resistance": "0.5 mohm",
 "drop": "0.36 V +- 0.01 V"},
 {"name": "ground path", "kind": "ground", "resistance": "1 mohm", "in_return": true}])")
      .at_most(64);
  f.has<&In::current>("current", "Cranking current of the starter")
      .example("200 A")
      .above(amperes(0))
      .at_most(amperes(5000));
  f.has<&In::motor>("motor", "Starter as a motor")
      .example(R"({"armature": "15 mohm", "brushes": "1 V", "at_voltage": "10 V",
 "at_current": "200 A", "at_speed": "120 rpm"})");
  f.has<&In::temperature>("temperature", "Temperature of the cables")
      .between(celsius(-60), celsius(200));
  f.has<&In::measured_current>("measured_current", "Current read with a clamp meter")
      .example("200 A +- 5 A")
      .between(amperes(0), amperes(5000));
  return "starting-input";
}

std::string_view describe(describe::Fields<StartElementAnswer>& f) {
  using A = StartElementAnswer;
  f.has<&A::name>("name", "Element");
  f.has<&A::expected>("expected", "Should have at most");
  f.has<&A::computed>("computed", "Drop at the cranking current");
  f.has<&A::measured>("measured", "Read");
  f.has<&A::doubt>("doubt", "Known to");
  f.has<&A::excess>("excess", "More than it should have");
  f.has<&A::standing>("standing", "Standing");
  f.has<&A::basis>("basis", "What it should have comes from");
  return "start-element-answer";
}

std::string_view describe(describe::Fields<StartRule>& f) {
  using R = StartRule;
  f.has<&R::rule>("rule", "Rule");
  f.has<&R::scope>("scope", "Written for");
  f.has<&R::limit>("limit", "Figure");
  f.has<&R::value>("value", "Here");
  f.has<&R::against>("against", "Against it");
  f.has<&R::source>("source", "Source");
  return "start-rule";
}

std::string_view describe(describe::Fields<Renewal>& f) {
  using R = Renewal;
  f.has<&R::element>("element", "Element");
  f.has<&R::at_starter>("at_starter", "More at the starter, same current");
  f.has<&R::first_moment>("first_moment", "More current in the first moment");
  f.has<&R::speed>("speed", "More cranking speed, same torque");
  return "renewal";
}

std::string_view describe(describe::Fields<StartingAnswer>& f) {
  using A = StartingAnswer;
  f.has<&A::current>("current", "Cranking current");
  f.has<&A::at_battery>("at_battery", "At the battery");
  f.has<&A::at_starter>("at_starter", "At the starter");
  f.has<&A::outside>("outside", "The circuit without its battery");
  f.has<&A::first_moment>("first_moment", "Current in the first moment, rotor standing");
  f.has<&A::speed>("speed", "Cranking speed");
  f.has<&A::elements>("elements", "Element by element");
  f.has<&A::located>("located", "Stands out");
  f.has<&A::renewal>("renewal", "What renewing it would bring");
  f.has<&A::read_current>("read_current", "Current behind the readings");
  f.has<&A::rules>("rules", "Published rules, with their scope");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "starting-answer";
}

}  // namespace wm::electrics
