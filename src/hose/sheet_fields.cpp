// The words of "hose-sheet".
#include "hose/sheet.hpp"

namespace wm::hose {

using quantity::degrees;
using quantity::feet;
using quantity::inches;
using quantity::per_cent;

std::string_view describe(describe::Fields<HoseSheetInput>& f) {
  using I = HoseSheetInput;
  f.has<&I::title>("title", "Which hose").needed("oil cooler, pressure side");
  f.has<&I::near_end>("near_end", "Near end")
      .needed(
          R"({"seat": {"x": "0 in", "y": "0 in", "z": "0 in"}, "leaves": {"x": 1}, "rigid": "1.5 in"})");
  f.has<&I::far_end>("far_end", "Far end")
      .needed(
          R"({"seat": {"x": "14 in", "y": "13 in", "z": "4 in"}, "leaves": {"y": -1}, "rigid": "1.5 in"})")
      .help("The end that moves, if one does.");
  f.has<&I::near_at>("near_at", "Near end is screwed to").example("oil cooler, inlet");
  f.has<&I::far_at>("far_at", "Far end is screwed to").example("engine, oil outlet");
  f.has<&I::family>("family", "Hose family")
      .example("MIL-H-8794")
      .help(
          "Pressures above its table are refused, a smaller radius is told. Another: as entered.");
  f.has<&I::size>("size", "Dash number").example("-8");
  f.has<&I::outside_diameter>("outside_diameter", "Outside diameter of the hose")
      .needed("0.77 in")
      .above(inches(0))
      .at_most(inches(12));
  f.has<&I::least_radius>("least_radius", "Least bend radius of this hose")
      .needed("4.63 in")
      .above(inches(0))
      .at_most(feet(20));
  f.has<&I::radius_to>("radius_to", "That radius is meant")
      .help("If the document does not say: to the inside, which asks for more.");
  f.has<&I::radius_source>("radius_source", "Where that radius stands")
      .example("AC 43.13-1B table 9-3");
  f.has<&I::overall>("overall", "Overall length")
      .above(inches(0))
      .at_most(feet(100))
      .help("Nothing entered: the length that hose-length would order.");
  f.has<&I::lengthens>("lengthens", "Longer under pressure, at most")
      .between(per_cent(0), per_cent(20));
  f.has<&I::shortens>("shortens", "Shorter under pressure, at most")
      .between(per_cent(0), per_cent(20));
  f.has<&I::motion>("motion", "How the far end moves");
  f.has<&I::place_within>("place_within", "Far end known within")
      .between(inches(0), inches(12))
      .help("From hose-ends. The window then fits wherever in that the end is.");
  f.has<&I::directions_within>("directions_within", "Directions known within")
      .between(degrees(0), degrees(30));
  f.has<&I::keep_outs>("keep_outs", "What it must keep away from");
  f.has<&I::clamps>("clamps", "Clamps and guides between the ends")
      .help("In the order in which the hose runs through them, from the near end.");
  f.has<&I::weight>("weight", "Its weight, where that is to count");
  f.has<&I::working_pressure>("working_pressure", "Working pressure, surges included")
      .example("90 psi")
      .between(quantity::PressureGauge{0}, quantity::PressureGauge{1e9});
  f.has<&I::proof_pressure>("proof_pressure", "Proof pressure")
      .example("4000 psi")
      .between(quantity::PressureGauge{0}, quantity::PressureGauge{1e9});
  f.has<&I::proof_source>("proof_source", "Where the proof pressure stands")
      .example("AC 43.13-1B table 9-3");
  f.has<&I::drawn_by>("drawn_by", "Drawn by");
  f.has<&I::drawn_on>("drawn_on", "Drawn on");
  return "hose-sheet-input";
}

std::string_view describe(describe::Fields<HoseGhost>& f) {
  f.has<&HoseGhost::why>("why", "What moved it");
  f.has<&HoseGhost::tightest_radius>("tightest_radius", "Tightest radius then");
  f.has<&HoseGhost::points>("points", "Centreline");
  return "hose-ghost";
}

std::string_view describe(describe::Fields<HoseSheetAnswer>& f) {
  f.has<&HoseSheetAnswer::shape>("shape", "Shape");
  f.has<&HoseSheetAnswer::length>("length", "Length");
  f.has<&HoseSheetAnswer::ghosts>("ghosts", "Where motion takes it");
  f.has<&HoseSheetAnswer::lines>("lines", "In words");
  return "hose-sheet-answer";
}

}  // namespace wm::hose
