// The words of "contactor-check": fields, labels, bounds, examples.
#include "electrics/contactor.hpp"

namespace wm::electrics {

using quantity::celsius;
using quantity::ohms;
using quantity::volts;

std::string_view describe(describe::Choices<DiodeReading>& c) {
  c.has(DiodeReading::not_read, "not-read", "not read")
      .has(DiodeReading::over_range, "over-range", "over-range")
      .has(DiodeReading::drop, "drop", "a drop");
  return "diode-reading";
}

std::string_view describe(describe::Fields<ContactorInput>& f) {
  using In = ContactorInput;
  f.has<&In::name>("name", "Which contactor").example("starter contactor");
  f.has<&In::coil>("coil", "Coil resistance")
      .example("4.1 ohm +- 0.1 ohm")
      .between(ohms(0), ohms(1e6));
  f.has<&In::coil_open>("coil_open", "The display showed over-range");
  f.has<&In::coil_temperature>("coil_temperature", "Temperature of the coil when read")
      .between(celsius(-60), celsius(200));
  f.has<&In::coil_nominal>("coil_nominal", "The maker's coil resistance at 20 degC")
      .example("4.0 ohm")
      .above(ohms(0))
      .at_most(ohms(1e4));
  f.has<&In::coil_tolerance>("coil_tolerance", "Its tolerance")
      .example("10 %")
      .between(quantity::per_cent(0), quantity::per_cent(50));
  f.has<&In::pull_in>("pull_in", "Pull-in voltage at 20 degC")
      .example("7 V")
      .above(volts(0))
      .at_most(volts(60))
      .help("The maker's, or your own test. 9 V for 12 V contactors is from memory only.");
  f.has<&In::hot>("hot", "Coil when hot").example("100 degC").between(celsius(-60), celsius(200));
  f.has<&In::available>("available", "Voltage at the coil while cranking")
      .example("10.5 V")
      .between(volts(0), volts(60));
  f.has<&In::contact_drop>("contact_drop", "Drop across the closed contacts")
      .example("0.11 V +- 0.005 V")
      .between(volts(0), volts(60));
  f.has<&In::contact_current>("contact_current", "Current through them")
      .example("200 A +- 5 A")
      .between(quantity::amperes(0), quantity::amperes(5000));
  f.has<&In::contact_limit>("contact_limit", "The maker's limit on the contacts")
      .above(ohms(0))
      .at_most(ohms(1));
  f.has<&In::diode_forward>("diode_forward", "Diode range, forward");
  f.has<&In::diode_forward_drop>("diode_forward_drop", "It showed")
      .between(volts(0), volts(5))
      .shown_when("diode_forward=drop");
  f.has<&In::diode_reverse>("diode_reverse", "Diode range, reverse");
  f.has<&In::coil_lead_lifted>("coil_lead_lifted", "One coil lead was lifted for it");
  return "contactor-input";
}

std::string_view describe(describe::Fields<ContactorItem>& f) {
  f.has<&ContactorItem::what>("what", "What");
  f.has<&ContactorItem::verdict>("verdict", "Verdict");
  f.has<&ContactorItem::in_words>("in_words", "In words");
  return "contactor-item";
}

std::string_view describe(describe::Fields<ContactorAnswer>& f) {
  using A = ContactorAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::items>("items", "One by one");
  f.has<&A::coil_at_20>("coil_at_20", "Coil at 20 degC");
  f.has<&A::pull_in_hot>("pull_in_hot", "Pull-in when hot");
  f.has<&A::to_spare>("to_spare", "Voltage to spare");
  f.has<&A::contact>("contact", "Contacts");
  f.has<&A::contact_doubt>("contact_doubt", "Known to");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "contactor-answer";
}

}  // namespace wm::electrics
