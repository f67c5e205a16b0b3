#pragma once
/// What a search for one fault costs, and what a test is worth that does not end it.

#include <span>
#include <vector>

namespace wm::staging {

/// One place to look, of which exactly one holds the fault.
struct Place {
  double chance{};
  double cost{};
};

/// Order of least expected cost: falling chance / cost. Places without a chance come last.
/// @source Kadane and Simon (1977), read in abstract: independent actions, one fault.
[[nodiscard]] std::vector<std::size_t> best_order(std::span<const Place> places);
/// Expected cost until the fault is found, in the best order. Chances need not add up to one.
[[nodiscard]] double search_cost(std::span<const Place> places);

struct TestValue {
  double positive{};       ///< chance of a positive outcome
  double cost_after{};     ///< of the search, once the outcome is known
  double worth_at_most{};  ///< search cost now less that after
  double perfect{};        ///< what a test that names the place would be worth
};
/// @param positive_if  chance of a positive outcome if the fault is in that place, one a place
/// @pre positive_if.size() == places.size(); chances of the places add up to more than 0
[[nodiscard]] TestValue test_value(std::span<const Place> places,
                                   std::span<const double> positive_if);

}  // namespace wm::staging
