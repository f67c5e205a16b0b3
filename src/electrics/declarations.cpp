#include "electrics/declarations.hpp"

#include "electrics/cable_drop.hpp"
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
}

}  // namespace wm::electrics
