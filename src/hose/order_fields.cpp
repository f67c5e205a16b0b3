// The words of "hose-order": fields, labels, bounds, examples.
#include "hose/order.hpp"

namespace wm::hose {

using quantity::degrees;
using quantity::feet;
using quantity::inches;
using quantity::psi_gauge;

std::string_view describe(describe::Choices<FireSleeve>& c) {
  c.has(FireSleeve::not_said, "not-said", "not said")
      .has(FireSleeve::none, "none", "none")
      .has(FireSleeve::integral, "integral", "integral with the hose")
      .has(FireSleeve::over, "over", "slid over, ends sealed and banded");
  return "fire-sleeve";
}

std::string_view describe(describe::Choices<Liner>& c) {
  c.has(Liner::not_said, "not-said", "not said")
      .has(Liner::elastomer, "elastomer", "elastomer")
      .has(Liner::ptfe_conductive, "ptfe-conductive", "PTFE with a conductive inner layer")
      .has(Liner::ptfe_plain, "ptfe-plain", "PTFE, plain");
  return "liner";
}

std::string_view describe(describe::Fields<OrderEnd>& f) {
  f.has<&OrderEnd::form>("form", "Form").needed("straight");
  f.has<&OrderEnd::thread>("thread", "Thread and seat").example("3/4-16, 37 degree, swivel nut");
  f.has<&OrderEnd::metal>("metal", "Metal").example("steel");
  f.has<&OrderEnd::part_number>("part_number", "Part number, if known");
  return "order-end";
}

std::string_view describe(describe::Fields<HoseOrderInput>& f) {
  using I = HoseOrderInput;
  f.has<&I::specification>("specification", "Specification of the hose")
      .example("PTFE, steel braid, MIL-H-25579 assembly");
  f.has<&I::family>("family", "Its proof pressure from the table").example("ptfe-swivel");
  f.has<&I::size>("size", "Dash number").example("-8");
  f.has<&I::liner>("liner", "Liner").example("ptfe-conductive");
  f.has<&I::carries>("carries", "The line carries").example("oil");
  f.has<&I::position>("position", "For").example("oil cooler, supply");
  f.has<&I::quantity>("quantity", "How many").between(1, 1000);
  f.has<&I::near_end>("near_end", "Near end")
      .needed(
          R"({"form": "elbow-90", "thread": "3/4-16, 37 degree, swivel nut", "metal": "steel"})");
  f.has<&I::far_end>("far_end", "Far end")
      .needed(
          R"({"form": "elbow-45", "thread": "3/4-16, 37 degree, swivel nut", "metal": "steel"})");
  f.has<&I::overall>("overall", "Overall length")
      .needed("16 1/2 in")
      .above(inches(0))
      .at_most(feet(80));
  f.has<&I::length_tolerance>("length_tolerance", "Tolerance of the length, plus or minus")
      .example("0.188 in")
      .above(inches(0))
      .at_most(feet(2))
      .help("As agreed with the shop.");
  f.has<&I::clocking>("clocking", "Clocking")
      .example("50 deg")
      .between(degrees(0), degrees(359.99))
      .help(
          "Near elbow at six o'clock, counter-clockwise to the far elbow, seen from the near end.");
  f.has<&I::clocking_tolerance>("clocking_tolerance", "Tolerance of the clocking, plus or minus")
      .above(degrees(0))
      .at_most(degrees(90))
      .help("Left empty: 3 degrees up to 2 ft, 5 above.");
  f.has<&I::sleeve>("sleeve", "Fire sleeve").example("integral");
  f.has<&I::sleeve_past_socket>("sleeve_past_socket", "Sleeve past the socket, at least")
      .example("1/8 in")
      .between(inches(0), inches(6));
  f.has<&I::ahead_of_firewall>("ahead_of_firewall", "Ahead of the firewall");
  f.has<&I::working_pressure>("working_pressure", "Operating pressure, for the tag")
      .example("100 psi")
      .above(psi_gauge(0))
      .at_most(psi_gauge(10000));
  f.has<&I::proof_pressure>("proof_pressure", "Proof test asked for")
      .above(psi_gauge(0))
      .at_most(psi_gauge(30000))
      .help("Left empty: by the table or the maker.");
  f.has<&I::proof_source>("proof_source", "Where that comes from");
  f.has<&I::makers_proof>("makers_proof", "Proof pressure by its maker, if there is one")
      .above(psi_gauge(0))
      .at_most(psi_gauge(30000));
  f.has<&I::makers_source>("makers_source", "Where that stands");
  f.has<&I::tag_text>("tag_text", "Text of the tag").help("Left empty: made from the order.");
  f.has<&I::remarks>("remarks", "Remarks");
  return "hose-order-input";
}

std::string_view describe(describe::Fields<OrderLine>& f) {
  f.has<&OrderLine::label>("label", "Line");
  f.has<&OrderLine::text>("text", "Text");
  return "order-line";
}

std::string_view describe(describe::Fields<HoseOrderAnswer>& f) {
  using A = HoseOrderAnswer;
  f.has<&A::lines>("lines", "Order sheet");
  f.has<&A::length_code>("length_code", "Length code, inches and eighths");
  f.has<&A::clocking_code>("clocking_code", "Clocking code, steps of 5 degrees");
  f.has<&A::length_tolerance>("length_tolerance", "Tolerance of the length");
  f.has<&A::clocking_tolerance>("clocking_tolerance", "Tolerance of the clocking");
  f.has<&A::proof_pressure>("proof_pressure", "Proof test");
  f.has<&A::proof_source>("proof_source", "Where that comes from");
  f.has<&A::message>("message", "To paste into a letter");
  f.has<&A::warnings>("warnings", "Mind");
  return "hose-order-answer";
}

}  // namespace wm::hose
