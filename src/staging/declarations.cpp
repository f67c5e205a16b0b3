#include "staging/declarations.hpp"

#include "staging/cause_rank.hpp"
#include "staging/stage_plan.hpp"
#include "staging/trouble.hpp"
#include "tables/staging/all.hpp"

namespace wm::staging {

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  catalogue.add(calculation<&stage_plan>(
      "stage-plan", "Which changes to put into the air together",
      {derived("cost of untangling, order of looking, dynamic programming over subsets "
               "(docs/method/staging.md)"),
       derived("dual maintenance of 14 CFR 121.374(c)(2) and AC 120-42B carried over to one "
               "aircraft: which pairs not to put together is the owner's entry"),
       common_practice("change little at a time; chances and costs are the owner's guesses")},
      {caution::redundant_pair, caution::look_again, caution::defer}));
  catalogue.add(calculation<&cause_rank>(
      "cause-rank", "What is most likely at fault, and where to look next",
      {derived("noisy-OR with several faults at once, by sets of seen symptoms "
               "(docs/method/staging.md)"),
       secondary("Kadane and Simon", "abstract: look by falling chance over cost, one fault"),
       common_practice("chances and costs are the owner's guesses; what changed last comes first")},
      {caution::propeller, caution::hot_parts, caution::fuel_vapour, caution::defer}));
  catalogue.add(calculation<&trouble_causes>(
      "trouble-causes", "A symptom of starting, ignition or wiring, and the checks that tell",
      {secondary("FAA-H-8083-32", "starter trouble table and ignition text, in our own words"),
       secondary("AC 43.13-1B CHG 1", "ch. 8: look of the plugs"),
       common_practice("rows without a source are marked so; the order is the usual one")},
      {caution::cranking, caution::propeller, caution::high_tension, caution::defer}));
  for (const Table* table : tables::all_of_staging()) catalogue.add(*table);
}

}  // namespace wm::staging
