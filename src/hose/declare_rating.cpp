// "hose-rating", "hose-age" and "hose-condition" in the catalogue.
#include "hose/age.hpp"
#include "hose/condition.hpp"
#include "hose/declarations.hpp"
#include "hose/rating.hpp"

namespace wm::hose {

void declare_rating(describe::Catalogue& catalogue) {
  using namespace describe;
  catalogue.add(calculation<&hose_rating>(
      "hose-rating", "Which hoses may do a job: accepted, refused or to be asked about, and why",
      {read("AC 43.13-1B CHG 1",
            "table 9-3, page 9-22: pressures, temperatures, never both maxima"),
       read("MIL-DTL-8794F", "6.1: temperature range, fire sleeve"),
       read("AS1946F", "1.1, 1.2, 1.2.1: smooth PTFE; aluminium ends to 275 degF"),
       read("AS620G, AS1339H, AS604E, AS4468F", "scopes of other PTFE families"),
       read("FAA-H-8083-30", "page 7-17: liners against fluids"),
       read("NAVEDTRA 14018", "page 5-2: PTFE; page 5-15: a sleeve does not raise the temperature"),
       read("MIL-DTL-6000D", "6.1: push-on hose longer than 18 in"),
       read("TM 1-1500-204-23-2", "page 4-56 region: test again after one year; table 4-23"),
       read("MIL-DTL-83797C", "3.8: 12 years for chlorinated polyethylene"),
       derived("hot burst over cold burst of convoluted PTFE, MA620 table 1: 0.70"),
       common_practice("27 degC as room temperature; 90 % and 25 degF as near both maxima")},
      {caution::proof_with_liquid, caution::fuel_vapour, caution::hot_parts, caution::look_again,
       caution::defer}));
  catalogue.add(calculation<&hose_age>(
      "hose-age", "Age of a hose on the shelf and in service, against every published figure",
      {read("NAVEDTRA 14018", "pages 5-3 and 5-10: date codes"),
       read("MIL-DTL-83797C", "3.8: 12 years for chlorinated polyethylene, bulk hose"),
       read("TM 1-1500-204-23-2", "page 4-66: no age limit of stored PTFE hose; page 4-56 region"),
       secondary("hoses notes", "sections 7.1 and 7.2: acceptance, service lives, store rules"),
       secondary("ARP5316, as seal makers report it", "cure counts from the end of its quarter"),
       common_practice("5 years, or at engine overhaul, for engine-side elastomer hose")},
      {caution::dates_are_yours, caution::defer}));
  catalogue.add(calculation<&hose_condition>(
      "hose-condition", "A fitted hose looked at on condition, and what rejects it",
      {read("AL0907", "page 54: leaks, broken wires, cover, weather check, abrasion"),
       read("FAA-H-8083-30", "page 7-18: inspect at each inspection period; swaged ends"),
       read("NAVEDTRA 14018", "page 5-26: blisters, frayed braid, rust"),
       read("NAVEDTRA 14315", "page 10-19 region: fire sleeve, twist, swivel-nut leak"),
       common_practice("a look again after the first run and the first flights of a new hose")},
      {caution::fuel_vapour, caution::hot_parts, caution::eye_protection, caution::look_again,
       caution::defer}));
}

}  // namespace wm::hose
