// The words of "cable-drop": fields, labels, bounds, examples.
#include "electrics/cable_drop.hpp"

namespace wm::electrics {

using quantity::amperes;
using quantity::celsius;
using quantity::feet;
using quantity::volts;

std::string_view describe(describe::Choices<NominalVoltage>& c) {
  c.has(NominalVoltage::v14, "14-V", "14 V system (12 V battery)")
      .has(NominalVoltage::v28, "28-V", "28 V system (24 V battery)")
      .has(NominalVoltage::v115, "115-V", "115 V")
      .has(NominalVoltage::v200, "200-V", "200 V");
  return "nominal-voltage";
}

std::string_view describe(describe::Choices<Duty>& c) {
  c.has(Duty::continuous, "continuous", "continuous")
      .has(Duty::intermittent, "intermittent", "intermittent");
  return "duty";
}

std::string_view describe(describe::Choices<CircuitRole>& c) {
  c.has(CircuitRole::equipment, "equipment", "from the bus to the equipment")
      .has(CircuitRole::feeder, "feeder", "from generator or battery to the bus");
  return "circuit-role";
}

std::string_view describe(describe::Choices<Against>& c) {
  c.has(Against::within, "within", "within the limit")
      .has(Against::over, "over", "over the limit")
      .has(Against::advice_within, "advice-within", "within a figure that is advice")
      .has(Against::advice_over, "advice-over", "over a figure that is advice")
      .has(Against::no_limit, "no-limit", "no limit to compare with");
  return "against";
}

std::string_view describe(describe::Fields<CableDropInput>& f) {
  using In = CableDropInput;
  f.has<&In::name>("name", "Which cable").example("landing light feed");
  f.has<&In::conductor>("conductor", "Conductor").needed(R"({"size": "10"})");
  f.has<&In::length>("length", "Length of the wire, one way")
      .needed("19.5 ft")
      .above(feet(0))
      .at_most(feet(1000));
  f.has<&In::return_length>("return_length", "Length of its ground wire")
      .example("3 ft")
      .between(feet(0), feet(1000))
      .help("Left empty where the return goes through bonded structure.");
  f.has<&In::current>("current", "Current").needed("20 A").above(amperes(0)).at_most(amperes(5000));
  f.has<&In::temperature>("temperature", "Temperature of the conductor")
      .example("60 degC")
      .between(celsius(-60), celsius(260))
      .help("Of the conductor, not of the air around it; 20 degC when left empty.");
  f.has<&In::nominal>("nominal", "System");
  f.has<&In::duty>("duty", "Duty");
  f.has<&In::role>("role", "Part of the circuit");
  f.has<&In::regulated>("regulated", "Regulated voltage")
      .between(volts(1), volts(400))
      .shown_when("role=feeder");
  f.has<&In::limit>("limit", "Your own or the maker's limit on the drop")
      .above(volts(0))
      .at_most(volts(100))
      .help("Wins over the table.");
  f.has<&In::limit_source>("limit_source", "Where that limit is written");
  return "cable-drop-input";
}

std::string_view describe(describe::Fields<CableDropAnswer>& f) {
  using A = CableDropAnswer;
  f.has<&A::drop>("drop", "Voltage drop");
  f.has<&A::resistance>("resistance", "Resistance out and back");
  f.has<&A::of_nominal>("of_nominal", "Share of the nominal voltage");
  f.has<&A::limit>("limit", "Compared with");
  f.has<&A::standing>("standing", "Against it");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::longest_run>("longest_run", "Longest run, out and back");
  f.has<&A::lost>("lost", "Turned into heat");
  f.has<&A::conductor>("conductor", "Conductor");
  f.has<&A::limit_from>("limit_from", "Where the limit comes from");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "cable-drop-answer";
}

}  // namespace wm::electrics
