#pragma once
/// What the owner entered, as numbered changes and rules.

#include "staging/detail/plan_rules.hpp"
#include "staging/stage_plan.hpp"

namespace wm::staging::detail {

struct PlanTask {
  CostModel model;
  std::vector<PlanRule> rules;
  std::vector<std::string> names;          ///< of suspects: changes, then other causes
  std::vector<std::string> symptom_names;  ///< a bit each
};

/// @return every problem of the fields; contradictions among the rules included.
[[nodiscard]] Checked<PlanTask> read_plan(const StagePlanInput& input);

}  // namespace wm::staging::detail
