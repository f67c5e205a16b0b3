#pragma once
/// The starting circuit of case E14: 12.6 V, 8 mohm, two contactors, 12 ft of No. 2, ground path.

#include "electrics/starting.hpp"
#include "unit/electrics/support.hpp"

namespace wm::electrics::testing_support {

inline StartElement element(const char* name, StartElementKind kind, const char* ohm) {
  StartElement e;
  e.name = name;
  e.kind = kind;
  e.resistance = resistance(ohm);
  return e;
}

inline StartingInput example() {
  StartingInput in;
  in.battery.open_circuit = voltage("12.6 V");
  in.battery.internal = resistance("8 mohm");
  StartElement cable;
  cable.name = "cable";
  cable.conductor = wire("2");
  cable.length = length("12 ft");
  StartElement ground = element("ground path", StartElementKind::ground, "1.0 mohm");
  ground.in_return = true;
  in.elements = {element("battery contactor", StartElementKind::contactor, "0.5 mohm"), cable,
                 element("starter contactor", StartElementKind::contactor, "0.5 mohm"), ground};
  in.current = current("200 A");
  return in;
}

}  // namespace wm::electrics::testing_support
