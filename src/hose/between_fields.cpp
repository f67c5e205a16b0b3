// The words of what lies between the ends: keep-outs, clamps, weight, set.
#include "hose/between.hpp"

namespace wm::hose {

using quantity::feet;
using quantity::inches;

std::string_view describe(describe::Choices<Beside>& c) {
  c.has(Beside::wiring, "wiring", "electric wiring")
      .has(Beside::exhaust, "exhaust", "exhaust")
      .has(Beside::moving_control, "moving-control", "a control that moves")
      .has(Beside::structure, "structure", "structure")
      .has(Beside::other, "other", "something else");
  return "beside";
}

std::string_view describe(describe::Fields<BallShape>& f) {
  f.has<&BallShape::centre>("centre", "Centre").needed();
  f.has<&BallShape::radius>("radius", "Radius").needed("2 in").above(inches(0)).at_most(feet(20));
  return "ball";
}
std::string_view describe(describe::Fields<TubeShape>& f) {
  f.has<&TubeShape::from>("from", "Axis from").needed();
  f.has<&TubeShape::to>("to", "Axis to").needed();
  f.has<&TubeShape::radius>("radius", "Radius").needed("1 in").above(inches(0)).at_most(feet(20));
  return "tube";
}
std::string_view describe(describe::Fields<BoxShape>& f) {
  f.has<&BoxShape::centre>("centre", "Centre").needed();
  f.has<&BoxShape::size_x>("size_x", "Size fore and aft")
      .needed("4 in")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&BoxShape::size_y>("size_y", "Size across")
      .needed("4 in")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&BoxShape::size_z>("size_z", "Height").needed("4 in").above(inches(0)).at_most(feet(100));
  return "box";
}
std::string_view describe(describe::Fields<WallShape>& f) {
  f.has<&WallShape::point>("point", "A point of it").needed();
  f.has<&WallShape::free_side>("free_side", "Towards the side of the hose").needed();
  return "wall";
}

std::string_view describe(describe::Fields<MeshShape>& f) {
  f.has<&MeshShape::file>("file", "STL file").needed("cowl.stl").refers_to("attachment");
  f.has<&MeshShape::one_unit>("one_unit", "One unit of the file is")
      .needed("1 mm")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&MeshShape::origin>("origin", "Where the file's origin is")
      .help("Nothing entered: at the datum.");
  return "mesh";
}

std::string_view describe(describe::Fields<KeepOut>& f) {
  f.has<&KeepOut::name>("name", "What it is").needed("exhaust stack 3").unique();
  f.has<&KeepOut::beside>("beside", "Kind");
  f.has<&KeepOut::needed>("needed", "Distance needed")
      .example("2 in")
      .between(inches(0), feet(10))
      .help("From the maker's manual. Wiring: 6 in where nothing is entered.");
  f.has<&KeepOut::shape>("shape", "Its form")
      .needed(
          R"({"is": "tube", "from": {"x": "10 in", "y": "0 in", "z": "-8 in"}, "to": {"x": "10 in", "y": "10 in", "z": "-8 in"}, "radius": "1 in"})");
  return "keep-out";
}

std::string_view describe(describe::Fields<HoseClamp>& f) {
  f.has<&HoseClamp::name>("name", "Clamp").needed("clamp on the engine mount").unique();
  f.has<&HoseClamp::place>("place", "Where it is")
      .needed(R"({"x": "10 in", "y": "2 in", "z": "1 in"})")
      .help("Centre of the hose in it.");
  f.has<&HoseClamp::way>("way", "The way the hose goes through it")
      .help("From the near end to the far one. Nothing entered: it may turn there.");
  f.has<&HoseClamp::at_hose>("at_hose", "Along the hose that can bend, from the near end")
      .above(inches(0))
      .at_most(feet(100))
      .help("Nothing entered: the hose slides through.");
  return "hose-clamp";
}

std::string_view describe(describe::Fields<HoseWeight>& f) {
  f.has<&HoseWeight::filled>("filled", "Mass of the hose, filled")
      .needed("0.25 lb/ft")
      .above(quantity::MassPerLength{0})
      .at_most(quantity::MassPerLength{100});
  f.has<&HoseWeight::stiffness>("stiffness", "Bending stiffness")
      .needed("120 lb-in2")
      .above(quantity::BendingStiffness{0})
      .at_most(quantity::BendingStiffness{1e6})
      .help("From the sag test; no document gives it.");
  f.has<&HoseWeight::down>("down", "Load factor down").between(0, 20);
  f.has<&HoseWeight::up>("up", "Load factor up").between(0, 20);
  f.has<&HoseWeight::sideways>("sideways", "Load factor sideways, each way").between(0, 20);
  f.has<&HoseWeight::fore_and_aft>("fore_and_aft", "Load factor fore and aft, each way")
      .between(0, 20);
  return "hose-weight";
}

std::string_view describe(describe::Fields<HoseSet>& f) {
  f.has<&HoseSet::radius>("radius", "Radius in which it lies untouched")
      .needed("30 in")
      .above(inches(0))
      .at_most(feet(1000));
  f.has<&HoseSet::twist_stiffness>("twist_stiffness", "Stiffness in twist against bending")
      .between(0.01, 100)
      .help("GJ / EI; of a braided hose it is not known: try a small and a large one.");
  return "hose-set";
}

}  // namespace wm::hose
