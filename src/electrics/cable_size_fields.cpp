// The words of "cable-size": fields, labels, bounds, examples.
#include "electrics/cable_size.hpp"

namespace wm::electrics {

using quantity::feet;
using quantity::volts;

std::string_view describe(describe::Choices<SizeRule>& c) {
  c.has(SizeRule::none, "none", "no rule: the smallest size is enough")
      .has(SizeRule::drop, "drop", "voltage drop")
      .has(SizeRule::current, "current", "current")
      .has(SizeRule::aluminium, "aluminium", "least size of aluminium");
  return "size-rule";
}

std::string_view describe(describe::Fields<CableSizeInput>& f) {
  using In = CableSizeInput;
  f.has<&In::name>("name", "Which cable").example("alternator field feed");
  f.has<&In::kind>("kind", "Kind of cable");
  f.has<&In::metal>("metal", "Metal, of aircraft sizes").shown_when("kind=aircraft-copper");
  f.has<&In::length>("length", "Length of the wire, one way")
      .needed("25 ft")
      .above(feet(0))
      .at_most(feet(1000));
  f.has<&In::return_length>("return_length", "Length of its ground wire")
      .example("3 ft")
      .example("25 ft")
      .between(feet(0), feet(1000))
      .help("Left empty where the return goes through bonded structure.");
  f.has<&In::current>("current", "Current")
      .needed("20 A")
      .above(quantity::amperes(0))
      .at_most(quantity::amperes(5000));
  f.has<&In::duty>("duty", "Duty");
  f.has<&In::nominal>("nominal", "System").example("28-V");
  f.has<&In::role>("role", "Part of the circuit");
  f.has<&In::regulated>("regulated", "Regulated voltage")
      .between(volts(1), volts(400))
      .shown_when("role=feeder");
  f.has<&In::limit>("limit", "Your own or the maker's limit on the drop")
      .above(volts(0))
      .at_most(volts(100))
      .help("Wins over the table.");
  f.has<&In::limit_source>("limit_source", "Where that limit is written");
  f.has<&In::surroundings>("surroundings", "Where the wire lies")
      .example(R"({"ambient": "50 degC", "rating": "150 degC", "wires": 3, "loading": "60 %",
 "altitude": "15000 ft"})")
      .help("Left empty: only the drop is judged.");
  f.has<&In::temperature>("temperature", "Temperature of the conductor")
      .between(quantity::celsius(-60), quantity::celsius(260))
      .help("Left empty: estimated from the current and the surroundings, or 20 degC.");
  return "cable-size-input";
}

std::string_view describe(describe::Fields<SizeTried>& f) {
  using T = SizeTried;
  f.has<&T::size>("size", "Size");
  f.has<&T::drop>("drop", "Drop");
  f.has<&T::drop_met>("drop_met", "Drop within the limit");
  f.has<&T::allowed>("allowed", "Current allowed");
  f.has<&T::current_met>("current_met", "Carries the current");
  f.has<&T::why>("why", "In words");
  return "size-tried";
}

std::string_view describe(describe::Fields<CableSizeAnswer>& f) {
  using A = CableSizeAnswer;
  f.has<&A::size>("size", "Size");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::binding>("binding", "The rule that binds");
  f.has<&A::advice>("advice", "Rests on advice");
  f.has<&A::drop>("drop", "Voltage drop");
  f.has<&A::limit>("limit", "Compared with");
  f.has<&A::limit_from>("limit_from", "Where the limit comes from");
  f.has<&A::breaker>("breaker", "Largest breaker for this wire");
  f.has<&A::fuse>("fuse", "Largest fuse for this wire");
  f.has<&A::tried>("tried", "Sizes looked at");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "cable-size-answer";
}

}  // namespace wm::electrics
