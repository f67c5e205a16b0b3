#include "staging/declarations.hpp"

#include "staging/stage_plan.hpp"

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
}

}  // namespace wm::staging
