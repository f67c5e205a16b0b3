#pragma once
/// Which changes to put into the air together: the split into stages that costs least.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::staging {

using EnteredHours = quantity::Entered<quantity::Duration>;

/// Where the test hours of a stage come from.
enum class TestHours : std::uint8_t { longest_of_its_changes, the_same_for_all, cheapest };

struct PlannedChange {
  std::string name;
  quantity::Fraction fault_chance;           ///< chance that doing it brings a fault in
  double check_cost{};                       ///< one look for the fault, opening up again included
  std::optional<EnteredHours> hours;         ///< test hours it asks for
  std::optional<double> found_per_hour;      ///< rate at which its fault shows in the air
  std::optional<EnteredHours> ground_hours;  ///< a ground run this long shows its faults as well
  std::vector<std::string> symptoms;         ///< what its faults look like
  std::vector<std::string> areas;            ///< what must be opened for it
  double waiting_cost{};                     ///< for each test hour flown before it is done
  std::vector<std::string> after;            ///< changes proven in an earlier stage
  std::vector<std::string> not_later_than;   ///< in the stage of these or before
  std::vector<std::string> together;         ///< in the stage of these
};

struct Area {
  std::string name;
  double opening_cost{};
};

struct NeverTogether {
  std::string one;
  std::string other;
  std::string reason;
};

/// What it costs beyond the search when both are faulty in one stage.
struct HarmOfBoth {
  std::string one;
  std::string other;
  double harm{};
};

/// A fault that none of the changes brought in, but which looks the same.
struct OtherCause {
  std::string symptom;
  quantity::Fraction chance;
  double check_cost{};
};

struct StagePlanInput {
  std::vector<PlannedChange> changes;
  double stage_cost{};  ///< opening, closing, paperwork: once a stage
  double hour_cost{};   ///< one test hour
  double ground_hour_cost{};
  EnteredHours confirmation{quantity::hours(1), 0.0, {}};  ///< flown after each fault put right
  double escape_cost{};                                    ///< a fault that the test hours miss
  TestHours test_hours{TestHours::longest_of_its_changes};
  std::optional<EnteredHours> same_hours;
  std::optional<EnteredHours> hours_from;
  std::optional<EnteredHours> hours_to;
  std::optional<EnteredHours> hours_step;
  bool ground_stages{};
  std::vector<Area> areas;
  std::vector<NeverTogether> never;
  std::vector<HarmOfBoth> harms;
  std::vector<OtherCause> other_causes;
  std::optional<quantity::Fraction> risk_cap;
  std::optional<std::int64_t> size_cap;
};

/// Where to look first when one kind of symptom shows in a stage.
struct LookOrder {
  std::string symptom;
  std::vector<std::string> look_at;  ///< rising check_cost (1 - p) / p
};

struct PlannedStage {
  std::vector<std::string> changes;
  quantity::Duration hours;
  bool on_the_ground{};
  double cost{};
  quantity::Fraction risk;  ///< chance that at least one of its changes brought a fault in
  std::vector<LookOrder> look_first;
};

struct ConstraintPrice {
  std::string constraint;
  std::string reason;
  std::optional<double> price;  ///< what the plan would cost less without it
};

/// What becomes of the plan when every fault chance is another.
struct WhenGuessed {
  std::string guess;
  bool same_plan{};
  std::optional<double> best_cost;  ///< of the best plan then; nothing: no plan keeps the rules
  double this_plan_cost{};          ///< of the plan above then
  std::string in_words;
};

struct StagePlanAnswer {
  std::vector<PlannedStage> stages;
  double cost{};
  bool proven{};      ///< no plan can cost less
  double at_least{};  ///< no plan costs less than this
  quantity::Fraction gap;
  std::string in_words;
  bool order_matters{};
  std::optional<double> runner_up_cost;  ///< cheapest plan that groups otherwise
  std::vector<std::string> runner_up;
  bool tie{};
  std::optional<double> all_at_once_cost;
  std::string all_at_once;
  std::optional<double> one_by_one_cost;
  std::vector<ConstraintPrice> prices;
  std::vector<WhenGuessed> sensitivity;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// The cheapest split of changes into stages.
///
///   F(S) = c_o + areas + c_h H + sum over kinds of symptom W + c_esc sum p (1 - d) + harms
///   W    = c_v sum q + sum_k t_k pi(k..m),  q = p d,  pi(A) = 1 - product over A of (1 - q)
///
/// looked at in the order of rising t (1 - q) / q; H are the test hours, d the chance that they
/// show a fault (1 where no rate is given, else 1 - exp(-rate H)). The plan minimises the sum of
/// F, plus waiting costs H x (those not yet done), over all ordered splits that keep the order
/// wishes, the pairs that must not meet, the cap on risk and the cap on size.
///
/// Exact by dynamic programming over subsets where that is possible, else by branch and bound;
/// `proven` says whether the search came to its end, `at_least` what is proven if not.
///
/// @return missing (no changes; hours), not_found (a name that is no change), conflict (rules
///         that contradict each other: the smallest set found is named), duplicate, stopped.
/// @source Model, derivation and limits: docs/method/staging.md (derived).
[[nodiscard]] Checked<StagePlanAnswer> stage_plan(const StagePlanInput& input,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<TestHours>& c);
std::string_view describe(describe::Fields<PlannedChange>& f);
std::string_view describe(describe::Fields<Area>& f);
std::string_view describe(describe::Fields<NeverTogether>& f);
std::string_view describe(describe::Fields<HarmOfBoth>& f);
std::string_view describe(describe::Fields<OtherCause>& f);
std::string_view describe(describe::Fields<StagePlanInput>& f);
std::string_view describe(describe::Fields<LookOrder>& f);
std::string_view describe(describe::Fields<PlannedStage>& f);
std::string_view describe(describe::Fields<ConstraintPrice>& f);
std::string_view describe(describe::Fields<WhenGuessed>& f);
std::string_view describe(describe::Fields<StagePlanAnswer>& f);

}  // namespace wm::staging
