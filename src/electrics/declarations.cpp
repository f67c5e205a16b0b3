#include "electrics/declarations.hpp"

#include "electrics/cable_drop.hpp"
#include "electrics/cable_size.hpp"
#include "electrics/cable_temperature.hpp"
#include "electrics/contactor.hpp"
#include "electrics/joint.hpp"
#include "electrics/reserve.hpp"
#include "electrics/starting.hpp"
#include "tables/electrics/all.hpp"

namespace wm::electrics {

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  for (const Table* table : tables::all_of_electrics()) catalogue.add(*table);
  catalogue.add(calculation<&cable_drop>(
      "cable-drop", "What a cable loses, against the limit of its circuit",
      {read("AC 43.13-1B CHG 1",
            "page 11-22: VD = ohm/ft x ft x A; table 11-9: ohm/1000 ft; "
            "page 11-26: a ground wire counts"),
       read("AC 43.13-1B CHG 1",
            "table 11-6 as repeated in tables 11-7 and 11-8; its intermittent "
            "figures second hand: advice"),
       read("FAA-H-8083-31", "text of fig. 9-121: feeders, 2 % of the regulated voltage"),
       secondary("IEC 60228", "public extracts: metric conductors, advice"),
       secondary("IEC 60287-1-1", "temperature of copper and aluminium, quoted constants")},
      {caution::battery, caution::defer}));
  catalogue.add(calculation<&cable_temperature>(
      "cable-temperature", "What current a wire may carry where it lies, and how warm it gets",
      {read("AC 43.13-1B CHG 1",
            "table 11-9: bundles, 70 degC, 60,000 ft; page 11-27: order of the "
            "factors; page 11-23: estimate of the conductor"),
       secondary("MIL-W-5088L", "fig. 3 and bundle curves as read by third parties: advice"),
       secondary("AC 43.13-1B CHG 1", "altitude figure as read by a third party: advice"),
       from_memory("AC 43.13-1B CHG 1", "page 11-23: the square root of the estimate"),
       secondary("IEC 60949", "adiabatic heating, quoted constants")},
      {caution::battery, caution::defer}));
  catalogue.add(calculation<&cable_size>(
      "cable-size", "The smallest cable that meets drop and current, and the rule that binds",
      {read("AC 43.13-1B CHG 1",
            "pages 11-22 to 11-27, tables 11-6 to 11-9; page 11-23: aluminium"),
       read("AC 43.13-1B CHG 1", "table 11-3, page 11-15: breaker and fuse; par. 11-47 and 11-48"),
       secondary("MIL-W-5088L", "fig. 3 and bundle curves as read by third parties: advice"),
       secondary("IEC 60228", "public extracts: metric conductors, advice")},
      {caution::battery, caution::defer}));
  catalogue.add(calculation<&starting_circuit>(
      "starting-circuit", "What reaches the starter, and which joint is the bad one",
      {read("AC 43.13-1B CHG 1", "table 11-9, page 11-23: resistance of cables"),
       read("TM 10-3930-671-24", "page F-303: drops while cranking, ground vehicle"),
       read("TM 9-2320-211-20", "starter circuit tests, 24 V truck"),
       read("FAA-H-8083-31", "voltage drop text: 5 mohm of a ground path"),
       derived("cranking model of a motor at fixed torque; the circuit by modified nodal analysis"),
       common_practice("what joints and contactors usually have"),
       from_memory("lead-acid batteries", "internal resistance when cold")},
      {caution::cranking, caution::propeller, caution::battery, caution::hot_parts,
       caution::defer}));
  catalogue.add(calculation<&joint_drop>(
      "joint-drop", "Milliohms of a joint from its drop and the current",
      {read("MIL-PRF-39012E", "par. 4.6.13.1: known current, millivolts across"),
       derived("r = V / I with the doubt of both meters"),
       common_practice("what a good lug joint has; both polarities averaged")},
      {caution::cranking, caution::propeller, caution::battery, caution::defer}));
  catalogue.add(calculation<&contactor_check>(
      "contactor-check", "Coil, hot pull-in, contacts and suppression of a contactor",
      {derived("pull-in follows the resistance of copper: (234.5 + T) / 254.5"),
       secondary("aircraft contactor question-and-answer page", "0.2 V in to out: advice"),
       common_practice("coil resistances; forward drop of a diode")},
      {caution::cranking, caution::propeller, caution::battery, caution::defer}));
  catalogue.add(calculation<&bonding_check>(
      "bonding-check", "A bond or a ground path against its limit",
      {read("AC 43.13-1B CHG 1",
            "par. 11-188 f: below 2.5 mohm; i, j: instrument; par. 11-189: 3 "
            "mohm each connection"),
       read("FAA-H-8083-31", "voltage drop text: 5 mohm of a ground path is satisfactory"),
       common_practice("1 A or more, both polarities averaged")},
      {caution::battery, caution::fuel_vapour, caution::defer}));
  catalogue.add(calculation<&battery_reserve>(
      "battery-reserve", "Loads against the generator, and how long the battery carries on alone",
      {read("AC 43.13-1B CHG 1", "par. 11-35: 80 % of the generator; warnings at 13 V and 26 V"),
       derived("ampere-hours, phase by phase"),
       from_memory("Peukert's law", "exponent entered by the owner"),
       common_practice("straight line of voltage down to the cut-out")},
      {caution::battery, caution::defer}));
}

}  // namespace wm::electrics
