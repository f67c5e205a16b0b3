// "proof-test", "hose-order" and "hose-incoming" in the catalogue.
#include "hose/declarations.hpp"
#include "hose/incoming.hpp"
#include "hose/order.hpp"
#include "hose/proof.hpp"

namespace wm::hose {

void declare_proof(describe::Catalogue& catalogue) {
  using namespace describe;
  catalogue.add(calculation<&proof_test>(
      "proof-test", "Plan the proof test of a hose, and judge it",
      {read("AC 43.13-1B CHG 1", "table 9-3, page 9-22: proof pressure, a maximum"),
       read("TM 1-1500-204-23-2", "tables 4-15 and 4-23: proof pressure; page 4-47: procedure"),
       read("FAA-H-8083-30", "page 7-18: every hose, with liquid, all air bled out"),
       read("AL0907", "pages 54 and 58: again before fitting; liquids; what to reject"),
       read("MIL-DTL-8790F", "3.7.2: no leak, no damage, no lasting deformation"),
       read("MIL-PRF-11588H", "4.5.3 and 4.5.4: 30 s hold; how the change of length is measured"),
       read("AC 43.13-1B CHG 1", "fig. 9-9, page 9-23: +2 % to -4 % under pressure"),
       derived("stored energy of a liquid and of an ideal gas; the fall of pressure as a budget "
               "(docs/method/proof-test.md)"),
       common_practice("hold 5 min; not under twice the system pressure")},
      {caution::proof_with_liquid, caution::eye_protection, caution::fuel_vapour, caution::defer}));
  catalogue.add(calculation<&hose_order>(
      "hose-order", "The order sheet of a crimped hose assembly",
      {read("MIL-DTL-8790F", "1.2: length in inches and eighths"),
       read("MIL-DTL-83796/5", "figs. 2 and 3: how length and clocking are measured, tolerance"),
       read("AC 43.13-1B CHG 1", "table 9-3: proof pressure, a maximum"),
       read("TM 1-1500-204-23-2", "tables 4-15 and 4-23: proof pressure; tag"),
       secondary("IP-2 hose handbook (2003)", "table 4-8: usual tolerance of cut lengths, advice")},
      {caution::proof_with_liquid, caution::fuel_vapour, caution::defer}));
  catalogue.add(calculation<&hose_incoming>(
      "hose-incoming", "A hose assembly as it came, against its order",
      {from_memory("JCGM 106:2012", "guarded acceptance, unconfirmed"),
       read("MIL-DTL-83796/5", "fig. 3, notes 1, 3 and 5: clocking and its tolerance"),
       read("MIL-DTL-8789F", "4.9.2: bore ball"),
       read("AL0907", "pages 54 and 58: what to reject; test again before fitting"),
       read("TM 1-1500-204-23-2", "page 4-47: caps; tag"),
       secondary("a page that quotes a military specification",
                 "6 uA at 1000 V d.c. on 18 in: unconfirmed, advice only")},
      {caution::eye_protection, caution::high_tension, caution::fuel_vapour, caution::defer}));
}

}  // namespace wm::hose
