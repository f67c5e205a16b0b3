#pragma once
/// What a plan must keep, and which of it cannot be kept together.

#include <string>
#include <vector>

#include "staging/detail/stage_cost.hpp"

namespace wm::staging::detail {

enum class Wish : std::uint8_t { before, not_later, together, never, risk_cap, size_cap };

/// One rule. `first` comes before (or not later than, with, not with) `second`.
struct PlanRule {
  Wish wish{};
  int first{-1};
  int second{-1};
  double limit{};     ///< of a cap
  std::string words;  ///< as the owner said it
  std::string reason;
};

/// Changes that must share a stage are one unit; rules between units as bits.
struct Units {
  std::vector<Set> members;  ///< changes of each unit; units that ask for most hours come first
  std::vector<Set> strictly_before;
  std::vector<Set> not_after;  ///< units that must be done by then or be in the same stage
  std::vector<Set> never;
  double risk_limit{k_never};  ///< on the sum of -ln(1 - p)
  int size_limit{64};
  std::vector<double> risk;  ///< -ln(1 - p), summed over a unit
  std::vector<int> size;
  bool ordered{};

  [[nodiscard]] int count() const { return static_cast<int>(members.size()); }
  [[nodiscard]] Set changes(Set units) const;
};

/// Whether any plan at all keeps these rules.
///
/// Exact: changes that bind each other to one stage are merged; a plan exists if and only if no
/// "earlier stage" wish runs inside a merged group and each group alone keeps pairs and caps,
/// because the groups one by one, in order, are then a plan.
[[nodiscard]] bool can_be_kept(const std::vector<Suspect>& suspects, int changes,
                               const std::vector<PlanRule>& rules);

/// The smallest set of rules found that contradict each other; any left out, the rest can be kept.
/// @pre not can_be_kept
[[nodiscard]] std::vector<PlanRule> contradiction(const std::vector<Suspect>& suspects, int changes,
                                                  const std::vector<PlanRule>& rules);

/// @pre can_be_kept
[[nodiscard]] Units units_of(const std::vector<Suspect>& suspects, int changes,
                             const std::vector<PlanRule>& rules);

/// Whether units in one stage keep the pairs and the caps.
[[nodiscard]] bool may_meet(const Units& units, Set stage);

}  // namespace wm::staging::detail
