// "hose-cut" and "cut-plan" in the catalogue.
#include "hose/cut.hpp"
#include "hose/declarations.hpp"
#include "hose/plan.hpp"

namespace wm::hose {

void declare_making(describe::Catalogue& catalogue) {
  using namespace describe;
  catalogue.add(calculation<&hose_cut>(
      "hose-cut", "Cut lengths, sleeves, parts and work cards of the hoses made for a change",
      {read("NAVEDTRA 14018", "table 5-2 and page 5-12: cut length; pages 5-4, 5-15"),
       read("TM 1-1500-204-23-2",
            "table 4-22: PTFE assemblies; fig. 4-50A, pages 4-44, 4-47, 4-60, 4-64: assembly"),
       read("NAVEDTRA 14315", "pages 10-11 and 10-12: assembly, gap, cleaning, proof test"),
       read("MIL-DTL-8789F", "4.9.2: bore ball"), read("MIL-DTL-8794F", "6.1: fire sleeve"),
       read("FAA-H-8083-30", "page 7-18: every hose is proof tested, with liquid"),
       secondary("a hose shop's page", "sleeve 1/8 in past the socket, sealed and banded"),
       secondary("IP-2 hose handbook (2003)",
                 "table 4-8: length and squareness of the cut, advice"),
       derived("sleeve length from its pieces"),
       common_practice("sleeve 1 to 2 % longer; deburring; no push-out with PTFE")},
      {caution::eye_protection, caution::proof_with_liquid, caution::look_again, caution::defer}));
  catalogue.add(calculation<&cut_plan>(
      "cut-plan", "Which piece to cut from which coil, so that the least hose is used up",
      {derived("branch and bound with a covering bound (docs/method/cut-plan.md); compared with an "
               "exact integer-programming library"),
       read("NAVEDTRA 14018", "pages 5-3 and 5-10: date codes"),
       read("TM 1-1500-204-23-2", "page 4-66: PTFE has no age limit in store"),
       common_practice("hose is not spliced; the longest piece is cut first; offcuts, then the "
                       "oldest")},
      {caution::eye_protection, caution::dates_are_yours, caution::defer}));
}

}  // namespace wm::hose
