// The words of "stage-plan": fields, labels, bounds, examples.
#include "staging/stage_plan.hpp"

namespace wm::staging {

using quantity::hours;
using quantity::minutes;
using quantity::ratio;

namespace {

constexpr double k_most_cost = 1e9;
constexpr std::size_t k_most_listed = 30;

constexpr std::string_view k_changes =
    R"([{"name": "left ignition", "fault_chance": "8 %", "check_cost": 80, "hours": "2 h",
         "symptoms": ["rough running"], "areas": ["rear of the engine"]},
        {"name": "right ignition", "fault_chance": "8 %", "check_cost": 80, "hours": "2 h",
         "symptoms": ["rough running"], "areas": ["rear of the engine"]},
        {"name": "fuel hose", "fault_chance": "5 %", "check_cost": 60, "hours": "1.5 h",
         "ground_hours": "0.5 h", "symptoms": ["fuel smell"], "areas": ["rear of the engine"]},
        {"name": "alternator", "fault_chance": "12 %", "check_cost": 70, "hours": "5 h",
         "symptoms": ["low voltage"]}])";
constexpr std::string_view k_never =
    R"([{"one": "left ignition", "other": "right ignition",
         "reason": "one mistake made twice takes both"},
        {"one": "left ignition", "other": "fuel hose", "reason": "rough running from either"}])";

}  // namespace

std::string_view describe(describe::Choices<TestHours>& c) {
  c.has(TestHours::longest_of_its_changes, "longest-of-its-changes",
        "the longest that a change of the stage asks for")
      .has(TestHours::the_same_for_all, "the-same-for-all", "the same for every stage")
      .has(TestHours::cheapest, "cheapest", "the cheapest, between a least and a most");
  return "test-hours";
}

std::string_view describe(describe::Fields<PlannedChange>& f) {
  using C = PlannedChange;
  f.has<&C::name>("name", "Which change").needed("fuel hose").unique();
  f.has<&C::fault_chance>("fault_chance", "Chance that doing it brings a fault in")
      .needed("5 %")
      .between(ratio(0), ratio(1))
      .help("Your own guess: no table has it. The answer says how much hangs on it.");
  f.has<&C::check_cost>("check_cost", "Cost of one look for its fault, opening up included")
      .needed("60")
      .between(0.0, k_most_cost)
      .help("Any one unit for all costs: money, or hours of work.");
  f.has<&C::hours>("hours", "Test hours that it asks for")
      .example("1.5 h")
      .between(hours(0), hours(1000));
  f.has<&C::found_per_hour>("found_per_hour", "How often its fault shows, times an hour of flight")
      .between(0.0, 1000.0)
      .help("Left empty: the test hours show its fault for certain.");
  f.has<&C::ground_hours>("ground_hours", "Ground run that shows its faults as well")
      .between(hours(0), hours(100));
  f.has<&C::symptoms>("symptoms", "What its faults look like")
      .at_most(30)
      .help("Changes that share one cannot be told apart by it.");
  f.has<&C::areas>("areas", "What must be opened for it").at_most(30);
  f.has<&C::waiting_cost>("waiting_cost", "Cost of each test hour flown before it is done")
      .between(0.0, k_most_cost);
  f.has<&C::after>("after", "Comes in a later stage than").at_most(k_most_listed);
  f.has<&C::not_later_than>("not_later_than", "Comes in the stage of these, or before")
      .at_most(k_most_listed);
  f.has<&C::together>("together", "Comes in the stage of these").at_most(k_most_listed);
  return "planned-change";
}

std::string_view describe(describe::Fields<Area>& f) {
  f.has<&Area::name>("name", "What is opened").needed("rear of the engine").unique();
  f.has<&Area::opening_cost>("opening_cost", "Cost of opening and closing it, once a stage")
      .needed("20")
      .between(0.0, k_most_cost);
  return "stage-area";
}

std::string_view describe(describe::Fields<NeverTogether>& f) {
  using N = NeverTogether;
  f.has<&N::one>("one", "This change").needed("left ignition");
  f.has<&N::other>("other", "Never in one stage with").needed("right ignition");
  f.has<&N::reason>("reason", "Because").example("one mistake made twice takes both");
  return "never-together";
}

std::string_view describe(describe::Fields<HarmOfBoth>& f) {
  using H = HarmOfBoth;
  f.has<&H::one>("one", "This change").needed("left ignition");
  f.has<&H::other>("other", "And this one").needed("alternator");
  f.has<&H::harm>("harm", "What it costs when both are faulty in one stage")
      .needed("5000")
      .between(0.0, k_most_cost);
  return "harm-of-both";
}

std::string_view describe(describe::Fields<OtherCause>& f) {
  using O = OtherCause;
  f.has<&O::symptom>("symptom", "Symptom").needed("rough running");
  f.has<&O::chance>("chance", "Chance that something else causes it, in a stage")
      .needed("2 %")
      .between(ratio(0), ratio(1));
  f.has<&O::check_cost>("check_cost", "Cost of looking for that")
      .needed("200")
      .between(0.0, k_most_cost);
  return "other-cause";
}

std::string_view describe(describe::Fields<StagePlanInput>& f) {
  using I = StagePlanInput;
  f.has<&I::changes>("changes", "The changes").needed(k_changes).at_most(k_most_listed);
  f.has<&I::stage_cost>("stage_cost", "Cost once a stage: cowl off and on, paperwork")
      .example("35")
      .between(0.0, k_most_cost);
  f.has<&I::hour_cost>("hour_cost", "Cost of a test hour in the air")
      .example("60")
      .between(0.0, k_most_cost);
  f.has<&I::ground_hour_cost>("ground_hour_cost", "Cost of an hour of ground run")
      .example("30")
      .between(0.0, k_most_cost);
  f.has<&I::confirmation>("confirmation", "Flown after each fault put right")
      .between(minutes(0), hours(100));
  f.has<&I::escape_cost>("escape_cost", "Cost of a fault that the test hours miss")
      .between(0.0, k_most_cost);
  f.has<&I::test_hours>("test_hours", "Test hours of a stage");
  f.has<&I::same_hours>("same_hours", "Hours of every stage")
      .between(hours(0), hours(1000))
      .shown_when("test_hours=the-same-for-all");
  f.has<&I::hours_from>("hours_from", "Least hours of a stage")
      .between(hours(0), hours(1000))
      .shown_when("test_hours=cheapest")
      .help("Left empty: 15 min.");
  f.has<&I::hours_to>("hours_to", "Most hours of a stage")
      .between(hours(0), hours(1000))
      .shown_when("test_hours=cheapest")
      .help("Left empty: 10 h, or what a change asks for if that is more.");
  f.has<&I::hours_step>("hours_step", "Tried in steps of")
      .between(minutes(1), hours(100))
      .shown_when("test_hours=cheapest")
      .help("Left empty: 15 min.");
  f.has<&I::ground_stages>("ground_stages", "A stage may be proven on the ground")
      .help("Only where every change of it has a ground run that shows its faults.");
  f.has<&I::areas>("areas", "Areas that must be opened").at_most(30);
  f.has<&I::never>("never", "Never in one stage").example(k_never).at_most(200);
  f.has<&I::harms>("harms", "Worse when both are faulty").at_most(200);
  f.has<&I::other_causes>("other_causes", "The same symptom from something else").at_most(20);
  f.has<&I::risk_cap>("risk_cap", "Most chance of any fault in a stage")
      .example("25 %")
      .between(ratio(0), ratio(1));
  f.has<&I::size_cap>("size_cap", "Most changes in a stage").example("4").between(1.0, 30.0);
  return "stage-plan-input";
}

std::string_view describe(describe::Fields<LookOrder>& f) {
  f.has<&LookOrder::symptom>("symptom", "When this shows");
  f.has<&LookOrder::look_at>("look_at", "Look at, in this order");
  return "look-order";
}

std::string_view describe(describe::Fields<PlannedStage>& f) {
  using S = PlannedStage;
  f.has<&S::changes>("changes", "Changes");
  f.has<&S::hours>("hours", "Test hours");
  f.has<&S::on_the_ground>("on_the_ground", "Proven on the ground");
  f.has<&S::cost>("cost", "Expected cost");
  f.has<&S::risk>("risk", "Chance of at least one fault");
  f.has<&S::look_first>("look_first", "Where to look first");
  return "planned-stage";
}

std::string_view describe(describe::Fields<ConstraintPrice>& f) {
  using P = ConstraintPrice;
  f.has<&P::constraint>("constraint", "Rule");
  f.has<&P::reason>("reason", "Because");
  f.has<&P::price>("price", "The plan would cost less without it by");
  return "constraint-price";
}

std::string_view describe(describe::Fields<WhenGuessed>& f) {
  using W = WhenGuessed;
  f.has<&W::guess>("guess", "If");
  f.has<&W::same_plan>("same_plan", "The plan stays the best");
  f.has<&W::best_cost>("best_cost", "Best cost then");
  f.has<&W::this_plan_cost>("this_plan_cost", "Cost of this plan then");
  f.has<&W::in_words>("in_words", "In words");
  return "when-guessed";
}

std::string_view describe(describe::Fields<StagePlanAnswer>& f) {
  using A = StagePlanAnswer;
  f.has<&A::stages>("stages", "Stages");
  f.has<&A::cost>("cost", "Expected cost");
  f.has<&A::proven>("proven", "No plan costs less: proven");
  f.has<&A::at_least>("at_least", "Proven: no plan costs less than");
  f.has<&A::gap>("gap", "Gap between the two");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::order_matters>("order_matters", "The order of the stages matters");
  f.has<&A::runner_up_cost>("runner_up_cost", "Cheapest plan that groups otherwise");
  f.has<&A::runner_up>("runner_up", "Its stages");
  f.has<&A::tie>("tie", "A tie within the guesses");
  f.has<&A::all_at_once_cost>("all_at_once_cost", "All at once would cost");
  f.has<&A::all_at_once>("all_at_once", "All at once, by the rules");
  f.has<&A::one_by_one_cost>("one_by_one_cost", "One by one would cost");
  f.has<&A::prices>("prices", "Price of each rule");
  f.has<&A::sensitivity>("sensitivity", "If the guesses are wrong");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "stage-plan-answer";
}

}  // namespace wm::staging
