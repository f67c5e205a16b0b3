// The words of "joint-drop" and "bonding-check": fields, labels, bounds, examples.
#include "electrics/joint.hpp"

namespace wm::electrics {

using quantity::amperes;
using quantity::ohms;
using quantity::volts;

std::string_view describe(describe::Choices<Bond>& c) {
  c.has(Bond::equipment_frame, "equipment-frame", "exposed frame of equipment to structure")
      .has(Bond::jumper_connection, "jumper-connection", "each connection of a bonding jumper")
      .has(Bond::ground_path, "ground-path", "generator or battery ground to equipment ground")
      .has(Bond::own_limit, "own-limit", "another, with a limit of your own");
  return "bond";
}

std::string_view describe(describe::Choices<BondInstrument>& c) {
  c.has(BondInstrument::millivolt_method, "millivolt-method", "known current, millivolts across")
      .has(BondInstrument::bonding_meter, "bonding-meter", "bonding meter, four wires")
      .has(BondInstrument::hand_multimeter, "hand-multimeter", "hand multimeter on ohms");
  return "bond-instrument";
}

std::string_view describe(describe::Fields<JointDropInput>& f) {
  using In = JointDropInput;
  f.has<&In::name>("name", "Which joint").example("starter contactor, input stud");
  f.has<&In::drop>("drop", "Drop across it")
      .needed("25 mV +- 0.5 mV")
      .between(volts(-30), volts(30));
  f.has<&In::reversed>("reversed", "Drop with the current reversed").between(volts(-30), volts(30));
  f.has<&In::current>("current", "Current through it")
      .needed("200 A +- 5 A")
      .between(amperes(0), amperes(5000));
  f.has<&In::limit>("limit", "The maker's or your own limit")
      .example("0.3 mohm")
      .above(ohms(0))
      .at_most(ohms(10));
  f.has<&In::limit_source>("limit_source", "Where it is written").example("own limit");
  f.has<&In::baseline>("baseline", "Its own earlier resistance").between(ohms(0), ohms(10));
  f.has<&In::at_current>("at_current", "Tell the drop at this current")
      .between(amperes(0), amperes(5000));
  return "joint-drop-input";
}

std::string_view describe(describe::Fields<JointDropAnswer>& f) {
  using A = JointDropAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::resistance>("resistance", "Resistance");
  f.has<&A::doubt>("doubt", "Known to");
  f.has<&A::drop_at>("drop_at", "Drop at that current");
  f.has<&A::advice>("advice", "By common practice");
  f.has<&A::against_baseline>("against_baseline", "Against its own baseline");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "joint-drop-answer";
}

std::string_view describe(describe::Fields<BondingInput>& f) {
  using In = BondingInput;
  f.has<&In::name>("name", "Which bond").example("engine to firewall strap");
  f.has<&In::bond>("bond", "What is bonded");
  f.has<&In::limit>("limit", "Your own or the maker's limit").above(ohms(0)).at_most(ohms(10));
  f.has<&In::limit_source>("limit_source", "Where it is written");
  f.has<&In::instrument>("instrument", "How it was read");
  f.has<&In::reading>("reading", "Resistance read").between(ohms(-1), ohms(1e6));
  f.has<&In::drop>("drop", "Millivolts across the bond")
      .example("18.0 mV +- 0.2 mV")
      .between(volts(-10), volts(10));
  f.has<&In::reversed>("reversed", "The same with the current reversed")
      .example("18.2 mV +- 0.2 mV")
      .between(volts(-10), volts(10));
  f.has<&In::current>("current", "Current through the bond")
      .example("10.0 A +- 0.1 A")
      .between(amperes(0), amperes(1000));
  return "bonding-input";
}

std::string_view describe(describe::Fields<BondingAnswer>& f) {
  using A = BondingAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::reason>("reason", "Why");
  f.has<&A::resistance>("resistance", "Resistance");
  f.has<&A::doubt>("doubt", "Known to");
  f.has<&A::limit>("limit", "Limit");
  f.has<&A::strict>("strict", "At the limit itself it does not conform");
  f.has<&A::limit_from>("limit_from", "Where the limit comes from");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "bonding-answer";
}

}  // namespace wm::electrics
