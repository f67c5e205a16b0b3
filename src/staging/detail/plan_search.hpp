#pragma once
/// The search for the cheapest plan: exact over subsets, or branch and bound with a proven gap.

#include <functional>

#include "staging/detail/plan_rules.hpp"

namespace wm::staging::detail {

struct Search {
  const StageCosts& costs;
  const Units& units;
  Set forbidden{};                   ///< changes that must not make up a stage by themselves
  bool all_orders{};                 ///< count each order of the same stages by itself
  std::uint64_t steps{600'000'000};  ///< beyond this many, no subsets: branch and bound
  std::uint64_t nodes{1'000'000};    ///< of branch and bound
  std::function<bool(double)> go_on{};
};

struct Plan {
  std::vector<Set> stages;  ///< changes, first stage first
  double cost{k_never};
  double at_least{k_never};
  double optima{};  ///< plans that cost the same; only of the exact search
  bool exact{};     ///< found over subsets
  bool stopped{};   ///< by the user
  [[nodiscard]] bool found() const { return !stages.empty(); }
  [[nodiscard]] bool proven() const { return found() && at_least >= cost; }
};

/// Whether the order of stages can change cost or permission.
[[nodiscard]] bool order_counts(const StageCosts& costs, const Units& units);
/// Sum of waiting costs of changes.
[[nodiscard]] double waiting_of(const StageCosts& costs, Set changes);
/// Cost of a plan as it stands, rules not looked at.
[[nodiscard]] double cost_of(const StageCosts& costs, const std::vector<Set>& stages);

/// Steps that the search over subsets would take; `limit` + 1 where it is more.
[[nodiscard]] std::uint64_t subset_steps(const Search& search, std::uint64_t limit);
/// Every plan weighed, by subsets of what is done. Memory 2^units.
[[nodiscard]] Plan over_subsets(const Search& search);
/// Depth first with a lower bound; ends early after `nodes` or when the user stops it.
[[nodiscard]] Plan by_bound(const Search& search);
/// The one of the two that fits.
[[nodiscard]] Plan cheapest(const Search& search);

}  // namespace wm::staging::detail
