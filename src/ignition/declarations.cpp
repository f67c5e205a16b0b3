#include "ignition/declarations.hpp"

#include "ignition/breakdown.hpp"
#include "ignition/coil.hpp"
#include "ignition/condenser.hpp"
#include "ignition/harness.hpp"
#include "ignition/lead.hpp"
#include "ignition/plug.hpp"
#include "ignition/points.hpp"
#include "ignition/rpm_drop.hpp"
#include "ignition/trigger.hpp"
#include "tables/ignition/all.hpp"

namespace wm::ignition {

using quantity::feet;
using quantity::inches;
using quantity::ohms;

std::string_view describe(describe::Choices<LimitBasis>& c) {
  c.has(LimitBasis::makers_limit, "makers-limit", "maker's limit")
      .has(LimitBasis::owners_limit, "owners-limit", "owner's own limit")
      .has(LimitBasis::typical_figure, "typical-figure", "typical figure: advice, no verdict");
  return "limit-basis";
}

std::string_view describe(describe::Fields<SiblingLead>& f) {
  f.has<&SiblingLead::name>("name", "Which lead").needed("2 top").unique();
  f.has<&SiblingLead::reading>("reading", "Its resistance").needed("12.1 kohm");
  f.has<&SiblingLead::length>("length", "Its length").between(inches(1), feet(50));
  return "sibling-lead";
}

std::string_view describe(describe::Fields<LeadCheckInput>& f) {
  using In = LeadCheckInput;
  const quantity::ResistancePerLength none{0};
  const quantity::ResistancePerLength most{1e8};
  const auto top = ohms(1e9);
  f.has<&In::name>("name", "Which lead").example("3 top");
  f.has<&In::length>("length", "Length, end to end of the conductor")
      .example("1.20 m")
      .between(inches(1), feet(50));
  f.has<&In::per_length_low>("per_length_low", "Lowest resistance for a length")
      .example("10 kohm/m")
      .between(none, most)
      .help("The lead maker's figure; there is no table.");
  f.has<&In::per_length_high>("per_length_high", "Highest resistance for a length")
      .example("23 kohm/m")
      .between(none, most);
  f.has<&In::terminals>("terminals", "Resistance of both terminals together").between(ohms(0), top);
  f.has<&In::lowest>("lowest", "Lowest for the whole lead").between(ohms(0), top);
  f.has<&In::highest>("highest", "Highest for the whole lead").between(ohms(0), top);
  f.has<&In::limit_basis>("limit_basis", "Whose limit");
  f.has<&In::limit_source>("limit_source", "Where the limit is written")
      .example("data sheet of the lead's maker");
  f.has<&In::temperature>("temperature", "Temperature of the lead")
      .between(quantity::celsius(-40), quantity::celsius(150));
  f.has<&In::temperature_coefficient>("temperature_coefficient",
                                      "Change of resistance for a kelvin, as a share")
      .between(-0.01, 0.01)
      .help("Copper: about 0.0039 (from memory). Resistive cores: ask the maker.");
  f.has<&In::reading>("reading", "Resistance read").example("26.50 kohm").between(ohms(-1), top);
  f.has<&In::over_range>("over_range", "The display showed over-range");
  f.has<&In::meter>("meter", "Range of the meter and its accuracy")
      .example(R"({"name": "60 kohm", "full_scale": "60 kohm", "resolution": "0.01 kohm",
 "of_reading": "0.9 %", "counts": 2})");
  f.has<&In::leads>("leads", "Test leads").example("nulled");
  f.has<&In::lead_resistance>("lead_resistance", "Resistance of the test leads")
      .between(ohms(0), ohms(100));
  f.has<&In::guard_from>("guard_from", "Guard band from");
  f.has<&In::siblings>("siblings", "The other leads").at_most(64);
  f.has<&In::baseline>("baseline", "Its own earlier reading");
  return "lead-check-input";
}

std::string_view describe(describe::Fields<LeadCheckAnswer>& f) {
  using A = LeadCheckAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::open>("open", "Open circuit");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::reason>("reason", "Why");
  f.has<&A::lowest>("lowest", "Lowest for this lead");
  f.has<&A::highest>("highest", "Highest for this lead");
  f.has<&A::accept_from>("accept_from", "Conforms from");
  f.has<&A::accept_to>("accept_to", "Conforms up to");
  f.has<&A::guard>("guard", "Guard band");
  f.has<&A::per_length>("per_length", "Read, for a length");
  f.has<&A::allowance_used>("allowance_used", "Allowance used");
  f.has<&A::siblings>("siblings", "Among its siblings");
  f.has<&A::baseline>("baseline", "Against its own earlier reading");
  f.has<&A::not_covered>("not_covered", "Not covered by this check");
  f.has<&A::do_next>("do_next", "What to do next");
  f.has<&A::working>("working", "The sum, step by step");
  return "lead-check-answer";
}

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  catalogue.add(calculation<&lead_check>(
      "lead-check", "Judge an ignition lead by its resistance for its length",
      {secondary("ILAC-G8:09/2019", "par. 4.2.3, read in extract: guard band beside each limit"),
       secondary("ignition maintenance texts", "an open inside a lead may still spark"),
       common_practice("meter accuracy as per cent of reading plus counts of the last digit")},
      {caution::insulation_not_tested, caution::propeller, caution::high_tension, caution::defer}));
  catalogue.add(calculation<&harness_check>(
      "harness-check", "Judge every lead of a harness, alone and against its siblings",
      {secondary("ILAC-G8:09/2019", "par. 4.2.3, read in extract: guard band beside each limit"),
       secondary("ignition maintenance texts",
                 "open, short and intermittent leads; 10 000 V and 100 megohm, shown as advice"),
       from_memory("FAA-H-8083-32", "distributor towers are numbered in the order of firing"),
       derived("line through the leads by the median of slopes (docs/method/ignition.md)"),
       common_practice("spiral lead of 50 ohm for a foot, about 85 ohm over a little more than one "
                       "foot with its ends")},
      {caution::insulation_not_tested, caution::propeller, caution::high_tension, caution::defer}));
  catalogue.add(calculation<&coil_check>(
      "coil-check", "Judge ignition coils by the resistance of their windings",
      {read("AC 43.13-1B CHG 1", "page 11-22: resistance of copper by its temperature"),
       secondary("ILAC-G8:09/2019", "par. 4.2.3, read in extract: guard band beside each limit"),
       from_memory("ignition texts", "usual resistances of windings, advice"),
       common_practice("double-ended coils: secondary of 15 to 16 kohm on one pattern, 8 to 9 kohm "
                       "on another; over-range from tower to case")},
      {caution::high_tension, caution::propeller, caution::defer}));
  catalogue.add(calculation<&plug_check>(
      "plug-check", "Judge spark plugs on the bench, and plan where each goes back",
      {read("AC 43.13-1B CHG 1", "par. 8-17, figs. 8-6 and 8-7: what is rejected by its look"),
       read("TM 9-4910-422-12", "gap above which a bench tester gives no valid result"),
       secondary("light aircraft maintenance data", "gap, torque, resistor, shown as advice"),
       common_practice("rotation to the next cylinder in the firing order, top and bottom "
                       "changed")},
      {caution::propeller, caution::high_tension, caution::hot_parts, caution::defer}));
  catalogue.add(calculation<&condenser_check>(
      "condenser-check", "Judge the condenser across the breaker points",
      {secondary("ILAC-G8:09/2019", "par. 4.2.3, read in extract: guard band beside each limit"),
       secondary("data for a vintage replacement part", "leakage at 500 V, shown as advice"),
       from_memory("ignition texts", "usual capacitance, advice"),
       common_practice("what an ohmmeter shows of a condenser")},
      {caution::high_tension, caution::propeller, caution::defer}));
  catalogue.add(calculation<&points_timing>(
      "points-timing", "Judge breaker points and timing, and find the spark while starting",
      {read("FAA-H-8083-32", "magneto overhaul: point clearance of its worked model"),
       read("AC 43.13-1B CHG 1", "par. 8-19: never open the points further than needed"),
       secondary("light aircraft maintenance data", "lag in crankshaft degrees; tolerance, advice"),
       from_memory("handbook formula", "magneto speed = cylinders / (2 x poles)")},
      {caution::propeller, caution::defer}));
  catalogue.add(calculation<&rpm_drop>(
      "rpm-drop", "Judge the magneto check of the run-up, and whether OFF grounds both",
      {read("FAA-H-8083-32", "magneto check: drop in general; OFF at idle must make it falter"),
       secondary("handbooks of sample types", "greatest drop and difference, shown as advice"),
       from_memory("international standard atmosphere", "density altitude")},
      {caution::propeller, caution::defer}));
  catalogue.add(calculation<&spark_reserve>(
      "spark-reserve", "What a gap asks of the ignition, and what an air path holds at altitude",
      {secondary("a public physics text", "Paschen's law for air: A 15, B 365, gamma 0.01"),
       secondary("a public table of sphere-gap corrections", "factor by density"),
       from_memory("international standard atmosphere", "pressure by altitude")},
      {caution::high_tension, caution::propeller, caution::defer}));
  catalogue.add(calculation<&trigger_supply>(
      "trigger-supply",
      "What reaches the modules of an electronic ignition, and its standby supply",
      {secondary("ILAC-G8:09/2019", "par. 4.2.3, read in extract: guard band beside each limit"),
       read("14 CFR 23.1165 (a)-(d), text before 2017",
            "battery ignition: a generator behind it, capacity, warning of a drained battery"),
       derived("time = capacity x share / current")},
      {caution::propeller, caution::cranking, caution::battery, caution::defer}));
  for (const Table* table : tables::all_of_ignition()) catalogue.add(*table);
}

}  // namespace wm::ignition
