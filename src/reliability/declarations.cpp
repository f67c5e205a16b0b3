#include "reliability/declarations.hpp"

#include "reliability/life_estimate.hpp"
#include "reliability/policy.hpp"

namespace wm::reliability {

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  const auto handbook = secondary("NIST/SEMATECH e-Handbook of Statistical Methods",
                                  "chapter 8, through copies of its listings");
  catalogue.add(calculation<&life_estimate>(
      "life-estimate", "How long parts of a kind last, from few failures",
      {handbook, derived("Weibull law by maximum likelihood, censored and left-truncated lives, "
                         "limits by likelihood ratio (docs/method/reliability.md)")},
      {caution::defer}));
  catalogue.add(calculation<&survival_next>(
      "survival-next", "Chance that a part of a given age lasts the next hours",
      {derived("R(age + next) / R(age) of the Weibull law")}, {caution::defer}));
  catalogue.add(calculation<&zero_failure_bound>(
      "zero-failure-bound", "What no failures, or few, prove about life",
      {handbook, derived("chi-squared bound for a shape taken as known")}, {caution::defer}));
  catalogue.add(calculation<&renewal_age>(
      "renewal-age", "At which age renewing costs least, and whether it pays",
      {derived("age, block and minimal-repair renewal (docs/method/reliability.md)"),
       common_practice("a job can bring a fault in: its cost belongs to every renewal")},
      {caution::defer}));
  catalogue.add(calculation<&inspection_interval>(
      "inspection-interval", "How often to inspect",
      {secondary("NAVAIR 00-25-403", "slide copies: n = ln P / ln(1 - detection)"),
       secondary("delay-time model, Christer and Waller 1984", "a book chapter on it")},
      {caution::defer}));
  catalogue.add(calculation<&failure_trend>(
      "failure-trend", "Whether snags of one system become more or fewer",
      {secondary("MIL-HDBK-189 (1981)", "App. C, data and estimates; power-law process"), handbook},
      {caution::defer}));
}

}  // namespace wm::reliability
