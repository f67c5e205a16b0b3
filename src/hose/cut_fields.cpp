// The words of "hose-cut": fields, labels, bounds, examples.
#include "hose/cut.hpp"

namespace wm::hose {

using quantity::degrees;
using quantity::feet;
using quantity::inches;
using quantity::per_cent;
using quantity::psi_gauge;

std::string_view describe(describe::Choices<Making>& c) {
  c.has(Making::not_said, "not-said", "not said")
      .has(Making::elastomer_screwed, "elastomer-screwed", "elastomer hose, screwed socket")
      .has(Making::ptfe_sleeved, "ptfe-sleeved", "PTFE hose, sleeve on the tube");
  return "making";
}

std::string_view describe(describe::Fields<EndToMake>& f) {
  using E = EndToMake;
  f.has<&E::form>("form", "Form");
  f.has<&E::fitting>("fitting", "Name in the parts list").example("-8 straight swivel, steel");
  f.has<&E::rigid>("rigid", "Its length that does not bend")
      .between(inches(0), inches(24))
      .help("From the sealing seat to where the hose can bend; only with a flexible length.");
  f.has<&E::cut_off>("cut_off", "Its cut-off")
      .between(inches(0), inches(12))
      .help("Overall length less hose length for this end; the maker's figure, or measured.");
  f.has<&E::family>("family", "Its cut-off from the table")
      .example("MS24587")
      .help("Row of the table hose-cut-off.");
  f.has<&E::socket>("socket", "Visible length of its socket")
      .example("1.1 in")
      .between(inches(0), inches(12))
      .help("What the fire sleeve shall cover.");
  f.has<&E::widest>("widest", "Widest across")
      .example("0.88 in")
      .between(inches(0), inches(24))
      .help("Over the corners of the nut; of an elbow, as it would have to go through the sleeve.");
  return "end-to-make";
}

std::string_view describe(describe::Fields<SleeveToMake>& f) {
  using S = SleeveToMake;
  f.has<&S::name>("name", "Name in the parts list").example("fire sleeve 7/8 in");
  f.has<&S::inside>("inside", "Inside diameter")
      .example("0.88 in")
      .above(inches(0))
      .at_most(inches(12));
  f.has<&S::outside>("outside", "Outside diameter")
      .example("1.12 in")
      .above(inches(0))
      .at_most(inches(12));
  return "sleeve-to-make";
}

std::string_view describe(describe::Fields<AssemblyToMake>& f) {
  using A = AssemblyToMake;
  f.has<&A::name>("name", "Which hose").needed("oil cooler, supply").unique();
  f.has<&A::making>("making", "How the ends are put on").example("elastomer-screwed");
  f.has<&A::family>("family", "Hose family").example("MIL-H-8794");
  f.has<&A::size>("size", "Dash number").example("-8");
  f.has<&A::count>("count", "How many").between(1, 100);
  f.has<&A::overall>("overall", "Overall length")
      .example("16.50 in")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&A::flexible>("flexible", "Hose that can bend, instead of the overall length")
      .above(inches(0))
      .at_most(feet(100))
      .help("As hose-length gives it; the rigid length of each end is then needed.");
  f.has<&A::near_end>("near_end", "Near end")
      .example(R"({"form": "straight", "family": "MS24587", "socket": "1.1 in"})");
  f.has<&A::far_end>("far_end", "Far end")
      .example(R"({"form": "straight", "family": "MS24587", "socket": "1.1 in"})");
  f.has<&A::pair_form>("pair_form", "PTFE assembly, both ends alike")
      .help("Form as the table hose-cut-off-pair words it: straight, 45 degree elbow, ...");
  f.has<&A::clocking>("clocking", "Clocking")
      .between(degrees(0), degrees(359.99))
      .help(
          "Near elbow at six o'clock, counter-clockwise to the far elbow, seen from the near end.");
  f.has<&A::bends>("bends", "Bends that the hose makes");
  f.has<&A::sleeve>("sleeve", "Fire sleeve");
  f.has<&A::proof_family>("proof_family", "Its proof pressure from the table")
      .example("medium-elastomer");
  f.has<&A::makers_proof>("makers_proof", "Proof pressure by its maker, if there is one")
      .above(psi_gauge(0))
      .at_most(psi_gauge(30000));
  f.has<&A::makers_source>("makers_source", "Where that stands");
  f.has<&A::least_bore>("least_bore", "Least bore of its end fittings")
      .above(inches(0))
      .at_most(inches(6))
      .help("From the maker's sheet; sets the ball of the bore check.");
  return "assembly-to-make";
}

std::string_view describe(describe::Fields<HoseCutInput>& f) {
  using I = HoseCutInput;
  f.has<&I::assemblies>("assemblies", "Hoses to make")
      .needed(
          R"([{"name": "oil cooler, supply", "making": "elastomer-screwed", "family": "MIL-H-8794", "size": "-8", "overall": "16.50 in", "near_end": {"family": "MS24587", "socket": "1.1 in", "widest": "1.02 in"}, "far_end": {"family": "MS24587", "socket": "1.1 in", "widest": "1.02 in"}, "bends": ["90 deg"], "sleeve": {"name": "fire sleeve 7/8 in", "inside": "0.88 in", "outside": "1.12 in"}, "proof_family": "medium-elastomer"}])");
  f.has<&I::sleeve_past_socket>("sleeve_past_socket", "Sleeve past the socket, at each end")
      .between(inches(0), inches(6))
      .help("About 1/8 in by a hose shop's page (secondary), without touching the nut.");
  f.has<&I::sleeve_extra>("sleeve_extra", "Sleeve cut longer by")
      .between(per_cent(0), per_cent(20))
      .help("1 to 2 %: common practice, no source.");
  f.has<&I::ahead_of_firewall>("ahead_of_firewall", "Ahead of the firewall");
  return "hose-cut-input";
}

std::string_view describe(describe::Fields<WorkStep>& f) {
  f.has<&WorkStep::text>("text", "Step");
  f.has<&WorkStep::limit>("limit", "Limit");
  f.has<&WorkStep::source>("source", "Source");
  f.has<&WorkStep::box>("box", "To write down");
  return "work-step";
}

std::string_view describe(describe::Fields<AssemblyCut>& f) {
  using A = AssemblyCut;
  f.has<&A::name>("name", "Which hose");
  f.has<&A::overall>("overall", "Overall length");
  f.has<&A::cut_length>("cut_length", "Cut the hose to");
  f.has<&A::measured>("measured", "How the length is measured");
  f.has<&A::sleeve_length>("sleeve_length", "Cut the fire sleeve to");
  f.has<&A::sleeve_over_ends>("sleeve_over_ends", "Does an end pass through the sleeve");
  f.has<&A::card>("card", "Work card");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "assembly-cut";
}

std::string_view describe(describe::Fields<PartNeeded>& f) {
  f.has<&PartNeeded::what>("what", "Part");
  f.has<&PartNeeded::count>("count", "How many");
  f.has<&PartNeeded::length>("length", "Length");
  f.has<&PartNeeded::used_for>("used_for", "For");
  return "part-needed";
}

std::string_view describe(describe::Fields<HoseCutAnswer>& f) {
  using A = HoseCutAnswer;
  f.has<&A::assemblies>("assemblies", "Hose by hose");
  f.has<&A::parts>("parts", "Parts list");
  f.has<&A::pieces>("pieces", "Pieces for the cut plan");
  f.has<&A::notes>("notes", "Mind");
  return "hose-cut-answer";
}

}  // namespace wm::hose
