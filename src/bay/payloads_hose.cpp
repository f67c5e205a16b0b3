// The words of the hose events: drawn, proved.
#include "bay/payloads.hpp"

namespace wm::bay {

using quantity::degrees;
using quantity::feet;
using quantity::hours;
using quantity::inches;
using quantity::psi_gauge;
using quantity::seconds;

std::string_view describe(describe::Fields<HoseDrawn>& f) {
  using E = HoseDrawn;
  f.has<&E::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&E::id>("id", "Short name").help("Made for you when left empty");
  f.has<&E::title>("title", "Which hose").needed("oil cooler, pressure side");
  f.has<&E::position>("position", "Position").example("oil-hose-upper").refers_to("position");
  f.has<&E::change>("change", "For this change").example("change-1").refers_to("change");
  f.has<&E::family>("family", "Hose family").example("MIL-H-8794");
  f.has<&E::size>("size", "Dash number").example("-8");
  f.has<&E::near_at>("near_at", "Near end is screwed to").example("oil cooler, inlet");
  f.has<&E::far_at>("far_at", "Far end is screwed to").example("engine, oil outlet");
  f.has<&E::overall>("overall", "Overall length")
      .needed("23.125 in")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&E::tightest_radius>("tightest_radius", "Tightest radius, to the centreline")
      .needed("9.44 in")
      .above(inches(0));
  f.has<&E::least_radius>("least_radius", "Least radius permitted, to the centreline")
      .needed("5.02 in")
      .above(inches(0));
  f.has<&E::clocking>("clocking", "Clocking of the elbows")
      .example("35 deg")
      .between(degrees(-360), degrees(360));
  f.has<&E::clocking_read>("clocking_read", "How the clocking is read")
      .example("seen along the hose from the far end, counterclockwise");
  f.has<&E::binding>("binding", "What bounds its length").example("slack rule");
  f.has<&E::lines>("lines", "The verdict in words, as shown").example("the bend has room");
  f.has<&E::working_pressure>("working_pressure", "Working pressure, surges included")
      .example("90 psi")
      .between(psi_gauge(0), psi_gauge(150000));
  f.has<&E::proof_pressure>("proof_pressure", "Proof pressure")
      .example("4000 psi")
      .between(psi_gauge(0), psi_gauge(150000));
  f.has<&E::sheet>("sheet", "What it was drawn from, as JSON").needed("{}");
  f.has<&E::calculation>("calculation", "Calculation").needed("hose-sheet");
  f.has<&E::version>("version", "Its version").between(1, 1000);
  f.has<&E::note>("note", "Note");
  return "hose-drawn";
}

std::string_view describe(describe::Fields<HoseProved>& f) {
  using E = HoseProved;
  f.has<&E::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&E::hose>("hose", "Hose").needed("hose-1").refers_to("hose");
  f.has<&E::part>("part", "Registered as").example("hose-part-1").refers_to("part");
  f.has<&E::assembled>("assembled", "Assembled on").example("2026-11-20");
  f.has<&E::verdict>("verdict", "Verdict").needed("conforms");
  f.has<&E::words>("words", "In words").example("conforms: no leak, nothing moved");
  f.has<&E::test_pressure>("test_pressure", "Test pressure")
      .needed("4000 psi")
      .between(psi_gauge(0), psi_gauge(150000));
  f.has<&E::pressure_from>("pressure_from", "What set it").example("AC 43.13-1B table 9-3");
  f.has<&E::held>("held", "Held for").needed("5 min").between(seconds(0), hours(48));
  f.has<&E::medium>("medium", "Tested with").example("water");
  f.has<&E::criteria>("criteria", "What was judged").example("leak: none");
  f.has<&E::test>("test", "What was entered, as JSON").needed("{}");
  f.has<&E::calculation>("calculation", "Calculation").needed("proof-test");
  f.has<&E::version>("version", "Its version").between(1, 1000);
  f.has<&E::by>("by", "By").example("owner");
  f.has<&E::note>("note", "Note");
  return "hose-proved";
}

}  // namespace wm::bay
