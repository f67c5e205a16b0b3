// The words of "hose-shape" and "hose-length": fields, labels, bounds, examples.
#include "hose/fit.hpp"
#include "hose/shape.hpp"

namespace wm::hose {

using quantity::degrees;
using quantity::feet;
using quantity::inches;
using quantity::per_cent;

std::string_view describe(describe::Fields<Place>& f) {
  f.has<&Place::x>("x", "Aft of the datum")
      .needed("14 in")
      .between(feet(-100), feet(100))
      .help("Minus: forward of it.");
  f.has<&Place::y>("y", "To the aircraft's right").needed("13 in").between(feet(-100), feet(100));
  f.has<&Place::z>("z", "Up").needed("0 in").between(feet(-100), feet(100));
  return "place";
}

std::string_view describe(describe::Fields<Spot>& f) {
  f.has<&Spot::x>("x", "Aft");
  f.has<&Spot::y>("y", "To the right");
  f.has<&Spot::z>("z", "Up");
  return "spot";
}

std::string_view describe(describe::Fields<Way>& f) {
  f.has<&Way::x>("x", "Aft").example("1").between(-1000, 1000);
  f.has<&Way::y>("y", "To the right").example("0").between(-1000, 1000);
  f.has<&Way::z>("z", "Up").example("0").between(-1000, 1000);
  return "way";
}

std::string_view describe(describe::Choices<RadiusTo>& c) {
  c.has(RadiusTo::inside, "inside", "to the inside of the bend")
      .has(RadiusTo::centreline, "centreline", "to the centreline");
  return "radius-to";
}

std::string_view describe(describe::Choices<Fineness>& c) {
  c.has(Fineness::moving, "moving", "32 pieces, while an end is moved")
      .has(Fineness::usual, "usual", "64 pieces")
      .has(Fineness::printed, "printed", "64 and 128 pieces, extrapolated");
  return "fineness";
}

std::string_view describe(describe::Fields<HoseEnd>& f) {
  f.has<&HoseEnd::seat>("seat", "Where its seat is")
      .needed(R"({"x": "0 in", "y": "0 in", "z": "0 in"})")
      .help("Centre of the sealing seat of the port.");
  f.has<&HoseEnd::leaves>("leaves", "The way the hose leaves it").needed(R"({"x": 1})");
  f.has<&HoseEnd::form>("form", "Form");
  f.has<&HoseEnd::rigid>("rigid", "Its length that does not bend")
      .example("1.5 in")
      .between(inches(0), inches(24))
      .help("Straight: from the seat; elbow: from the port's axis, along the hose.");
  f.has<&HoseEnd::port>("port", "Elbow: axis of the port, out of it");
  f.has<&HoseEnd::drop>("drop", "Elbow: from the seat to the hose's axis")
      .between(inches(0), inches(24));
  return "hose-end";
}

namespace {
constexpr std::string_view k_near =
    R"({"seat": {"x": "0 in", "y": "0 in", "z": "0 in"}, "leaves": {"x": 1}, "rigid": "1.5 in"})";
constexpr std::string_view k_far =
    R"({"seat": {"x": "14 in", "y": "13 in", "z": "4 in"}, "leaves": {"y": -1}, "rigid": "1.5 in"})";
}  // namespace

std::string_view describe(describe::Fields<HoseShapeInput>& f) {
  using I = HoseShapeInput;
  f.has<&I::near_end>("near_end", "Near end").needed(k_near);
  f.has<&I::far_end>("far_end", "Far end").needed(k_far);
  f.has<&I::flexible>("flexible", "Hose that can bend").above(inches(0)).at_most(feet(100));
  f.has<&I::overall>("overall", "Overall length")
      .example("22.5 in")
      .above(inches(0))
      .at_most(feet(100))
      .help("The hose that can bend, and the rigid length of both ends.");
  f.has<&I::outside_diameter>("outside_diameter", "Outside diameter of the hose")
      .needed("0.77 in")
      .above(inches(0))
      .at_most(inches(12));
  f.has<&I::least_radius>("least_radius", "Least bend radius of this hose")
      .example("4.63 in")
      .above(inches(0))
      .at_most(feet(20));
  f.has<&I::radius_to>("radius_to", "That radius is meant")
      .help("If the document does not say: to the inside, which asks for more.");
  f.has<&I::clamps>("clamps", "Clamps and guides between the ends")
      .help("In the order in which the hose runs through them, from the near end.");
  f.has<&I::weight>("weight", "Its weight, where that is to count");
  f.has<&I::set>("set", "A set that the coil left in it");
  f.has<&I::leans_on>("leans_on", "What it may lean on");
  f.has<&I::fineness>("fineness", "How fine");
  f.has<&I::points>("points", "Points to list along the hose").between(2, 257);
  return "hose-shape-input";
}

std::string_view describe(describe::Fields<HosePoint>& f) {
  f.has<&HosePoint::station>("station", "Along the hose from the near end");
  f.has<&HosePoint::x>("x", "Aft");
  f.has<&HosePoint::y>("y", "To the right");
  f.has<&HosePoint::z>("z", "Up");
  f.has<&HosePoint::radius>("radius", "Radius there");
  return "hose-point";
}

std::string_view describe(describe::Fields<BendCircle>& f) {
  f.has<&BendCircle::at>("at", "Where the bend is tightest");
  f.has<&BendCircle::centre>("centre", "Centre of its circle");
  f.has<&BendCircle::square>("square", "Square to the circle");
  return "bend-circle";
}

std::string_view describe(describe::Fields<InClamp>& f) {
  f.has<&InClamp::name>("name", "Clamp");
  f.has<&InClamp::at_hose>("at_hose", "Along the hose that can bend, from the near end");
  f.has<&InClamp::if_gripped>("if_gripped", "If it grips after all: shared out by distance");
  return "in-clamp";
}

std::string_view describe(describe::Fields<UnderLoad>& f) {
  f.has<&UnderLoad::pull>("pull", "Pull");
  f.has<&UnderLoad::tightest_radius>("tightest_radius", "Tightest radius");
  f.has<&UnderLoad::moves>("moves", "Farthest that it moves");
  return "under-load";
}

std::string_view describe(describe::Fields<Touch>& f) {
  f.has<&Touch::name>("name", "What it leans on");
  f.has<&Touch::at_hose>("at_hose", "Along the hose that can bend, from the near end");
  f.has<&Touch::push>("push", "Push x hose length squared / stiffness");
  return "touch";
}

std::string_view describe(describe::Fields<WithSet>& f) {
  f.has<&WithSet::tightest_least>("tightest_least", "Tightest radius, turned the worst way");
  f.has<&WithSet::tightest_most>("tightest_most", "Tightest radius, turned the best way");
  f.has<&WithSet::moves>("moves", "Farthest from the shape shown");
  return "with-set";
}

std::string_view describe(describe::Fields<OtherShape>& f) {
  f.has<&OtherShape::tightest_radius>("tightest_radius", "Tightest radius");
  f.has<&OtherShape::middle_x>("middle_x", "Its middle: aft");
  f.has<&OtherShape::middle_y>("middle_y", "Its middle: to the right");
  f.has<&OtherShape::middle_z>("middle_z", "Its middle: up");
  f.has<&OtherShape::energy>("energy", "Bending work against the shape shown");
  return "other-shape";
}

std::string_view describe(describe::Fields<HoseShapeAnswer>& f) {
  using A = HoseShapeAnswer;
  f.has<&A::flexible>("flexible", "Hose that can bend");
  f.has<&A::overall>("overall", "Overall length");
  f.has<&A::tightest_radius>("tightest_radius", "Tightest bend, to the centreline");
  f.has<&A::tightest_inside>("tightest_inside", "Tightest bend, to the inside");
  f.has<&A::tightest_at>("tightest_at", "Where: along the hose from the near end");
  f.has<&A::least_radius>("least_radius", "Least radius, to the centreline");
  f.has<&A::in_hand>("in_hand", "In hand");
  f.has<&A::bend>("bend", "Circle in the tightest bend");
  f.has<&A::clocking>("clocking", "Clocking of the elbows");
  f.has<&A::clocking_tolerance>("clocking_tolerance", "Made within, each way");
  f.has<&A::clocking_read>("clocking_read", "How it is read");
  f.has<&A::in_clamps>("in_clamps", "In its clamps");
  f.has<&A::tightest_if_gripped>("tightest_if_gripped", "Tightest bend if its guides grip");
  f.has<&A::under_load>("under_load", "Under its weight");
  f.has<&A::touches>("touches", "Where it leans");
  f.has<&A::with_set>("with_set", "With the set of the coil");
  f.has<&A::other_shapes>("other_shapes", "It can also lie like this");
  f.has<&A::points>("points", "Centreline");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-shape-answer";
}

std::string_view describe(describe::Fields<EngineMotion>& f) {
  using M = EngineMotion;
  f.has<&M::shift_x>("shift_x", "Fore and aft, each way").between(inches(0), inches(12));
  f.has<&M::shift_y>("shift_y", "Sideways, each way").between(inches(0), inches(12));
  f.has<&M::shift_z>("shift_z", "Up and down, each way").between(inches(0), inches(12));
  f.has<&M::turn_x>("turn_x", "About the long axis, each way").between(degrees(0), degrees(30));
  f.has<&M::turn_y>("turn_y", "About the cross axis, each way").between(degrees(0), degrees(30));
  f.has<&M::turn_z>("turn_z", "About the upright axis, each way").between(degrees(0), degrees(30));
  f.has<&M::centre>("centre", "Centre of the mounts")
      .help("What it turns about; the far seat where nothing is entered.");
  return "engine-motion";
}

std::string_view describe(describe::Fields<HoseLengthInput>& f) {
  using I = HoseLengthInput;
  f.has<&I::near_end>("near_end", "Near end").needed(k_near);
  f.has<&I::far_end>("far_end", "Far end").needed(k_far).help("The end that moves, if one does.");
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
  f.has<&I::most_turn_at_ends>("most_turn_at_ends", "Turn within two diameters of an end, at most")
      .between(degrees(0.1), degrees(90))
      .help("A handbook asks for straight hose there; nothing entered: only told.");
  f.has<&I::chosen_overall>("chosen_overall", "Overall length, where it is settled")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&I::samples>("samples", "Positions to draw at random").between(0, 1000000);
  f.has<&I::length_tolerance>("length_tolerance", "Length made within, each way")
      .between(inches(0), inches(12))
      .help("Narrows the window by that on both sides; distances are those of all three lengths.");
  f.has<&I::direction_tolerance>("direction_tolerance", "Directions measured within, each way")
      .between(degrees(0), degrees(30));
  return "hose-length-input";
}

std::string_view describe(describe::Fields<LengthAndRadius>& f) {
  f.has<&LengthAndRadius::overall>("overall", "Overall length");
  f.has<&LengthAndRadius::tightest_radius>("tightest_radius", "Tightest radius at the worst");
  return "length-and-radius";
}

std::string_view describe(describe::Fields<NearThing>& f) {
  f.has<&NearThing::name>("name", "What");
  f.has<&NearThing::gap>("gap", "Least distance from the outside of the hose");
  f.has<&NearThing::needed>("needed", "Needed");
  f.has<&NearThing::at>("at", "Where: along the hose from the near end");
  f.has<&NearThing::words>("words", "In words");
  return "near-thing";
}

std::string_view describe(describe::Fields<HoseLengthAnswer>& f) {
  using A = HoseLengthAnswer;
  f.has<&A::shortest>("shortest", "Shortest overall length");
  f.has<&A::longest>("longest", "Longest overall length");
  f.has<&A::best>("best", "Overall length with the widest bend");
  f.has<&A::best_radius>("best_radius", "Radius there, at the worst, to the centreline");
  f.has<&A::least_radius>("least_radius", "Least radius, to the centreline");
  f.has<&A::worst_radius>("worst_radius",
                          "Tightest radius at the length looked at, over all motion and pressure, "
                          "to the centreline");
  f.has<&A::to_order>("to_order", "Overall length to order");
  f.has<&A::binding>("binding", "What binds");
  f.has<&A::rigid>("rigid", "Rigid length of both ends");
  f.has<&A::straight_at_ends>("straight_at_ends", "Straight behind each end, at least");
  f.has<&A::turn_at_ends>("turn_at_ends", "Turn of the hose within that");
  f.has<&A::near>("near", "What is near, at the worst");
  f.has<&A::probability>("probability", "Share of drawn positions that keep everything");
  f.has<&A::scan>("scan", "Radius along the lengths");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-length-answer";
}

}  // namespace wm::hose
