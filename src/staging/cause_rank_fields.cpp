// The words of "cause-rank": fields, labels, bounds, examples.
#include "staging/cause_rank.hpp"

namespace wm::staging {

using quantity::hours;
using quantity::ratio;

namespace {

constexpr std::string_view k_symptoms =
    R"([{"name": "rough on the left ignition", "state": "seen", "from_elsewhere": "1 %"},
        {"name": "low oil pressure", "state": "not-seen", "from_elsewhere": "0.5 %"}])";
constexpr std::string_view k_suspects =
    R"([{"name": "left ignition renewed", "disturbance": "renewed", "look_cost": 80,
         "symptoms": [{"symptom": "rough on the left ignition", "chance": "60 %"}]},
        {"name": "oil hose renewed", "fault_chance": "4 %", "look_cost": 50,
         "symptoms": [{"symptom": "low oil pressure", "chance": "50 %"}]},
        {"name": "plug of cylinder 3", "kind": "unchanged", "fault_chance": "2 %", "look_cost": 20,
         "symptoms": [{"symptom": "rough on the left ignition", "chance": "90 %"}]}])";
constexpr std::string_view k_tests =
    R"([{"name": "read the analyser", "cost": 5, "otherwise": "5 %",
         "positive_if": [{"suspect": "plug of cylinder 3", "positive": "90 %"}]}])";

}  // namespace

std::string_view describe(describe::Choices<SymptomState>& c) {
  c.has(SymptomState::seen, "seen", "seen")
      .has(SymptomState::not_seen, "not-seen", "looked for, not seen")
      .has(SymptomState::not_looked_for, "not-looked-for", "not looked for");
  return "symptom-state";
}

std::string_view describe(describe::Choices<SuspectKind>& c) {
  c.has(SuspectKind::change, "change", "a change that was made")
      .has(SuspectKind::unchanged, "unchanged", "a part that was not touched");
  return "suspect-kind";
}

std::string_view describe(describe::Choices<Disturbance>& c) {
  c.has(Disturbance::looked_at, "looked-at", "looked at")
      .has(Disturbance::adjusted, "adjusted", "adjusted")
      .has(Disturbance::opened, "opened", "opened and refitted")
      .has(Disturbance::renewed, "renewed", "renewed, like for like")
      .has(Disturbance::redesigned, "redesigned", "redesigned");
  return "disturbance";
}

std::string_view describe(describe::Fields<ObservedSymptom>& f) {
  using O = ObservedSymptom;
  f.has<&O::name>("name", "Symptom").needed("rough on the left ignition").unique();
  f.has<&O::state>("state", "Seen or not");
  f.has<&O::from_elsewhere>("from_elsewhere", "Chance that something not listed brings it about")
      .between(ratio(0), ratio(1));
  return "observed-symptom";
}

std::string_view describe(describe::Fields<CauseLink>& f) {
  f.has<&CauseLink::symptom>("symptom", "Symptom").needed("rough on the left ignition");
  f.has<&CauseLink::chance>("chance", "Chance that the fault brings it about")
      .needed("60 %")
      .between(ratio(0), ratio(1));
  return "cause-link";
}

std::string_view describe(describe::Fields<CauseSuspect>& f) {
  using S = CauseSuspect;
  f.has<&S::name>("name", "Change or part").needed("left ignition renewed").unique();
  f.has<&S::kind>("kind", "Changed or not");
  f.has<&S::fault_chance>("fault_chance", "Chance of a fault, before anything was seen")
      .between(ratio(0), ratio(1))
      .help("For a change it may stay empty: then your own rate, scaled by the grade.");
  f.has<&S::disturbance>("disturbance", "How much it was disturbed");
  f.has<&S::quiet_hours>("quiet_hours", "Flown since then without trouble")
      .between(hours(0), hours(10000));
  f.has<&S::found_per_hour>("found_per_hour", "How often its fault would have shown, times an hour")
      .between(0.0, 1000.0);
  f.has<&S::symptoms>("symptoms", "What its fault brings about").at_most(60);
  f.has<&S::look_cost>("look_cost", "Cost of looking at it").between(0.0, 1e9);
  return "cause-suspect";
}

std::string_view describe(describe::Fields<CheckDone>& f) {
  using C = CheckDone;
  f.has<&C::suspect>("suspect", "Checked").needed("plug of cylinder 3");
  f.has<&C::fault_found>("fault_found", "A fault was found");
  f.has<&C::finds>("finds", "Chance that it finds a fault that is there")
      .between(ratio(0), ratio(1));
  f.has<&C::false_alarms>("false_alarms", "Chance that it finds one that is not there")
      .between(ratio(0), ratio(1));
  return "check-done";
}

std::string_view describe(describe::Fields<TestOutcome>& f) {
  f.has<&TestOutcome::suspect>("suspect", "If the fault is with").needed("plug of cylinder 3");
  f.has<&TestOutcome::positive>("positive", "Chance of a positive outcome")
      .needed("90 %")
      .between(ratio(0), ratio(1));
  return "test-outcome";
}

std::string_view describe(describe::Fields<PossibleTest>& f) {
  using T = PossibleTest;
  f.has<&T::name>("name", "Test").needed("read the analyser").unique();
  f.has<&T::cost>("cost", "Its cost").needed("5").between(0.0, 1e9);
  f.has<&T::positive_if>("positive_if", "When it is positive").at_most(200);
  f.has<&T::otherwise>("otherwise", "Chance of a positive outcome if it is anything else")
      .between(ratio(0), ratio(1));
  return "possible-test";
}

std::string_view describe(describe::Fields<CauseRankInput>& f) {
  using I = CauseRankInput;
  f.has<&I::symptoms>("symptoms", "Symptoms").needed(k_symptoms).at_most(60);
  f.has<&I::suspects>("suspects", "What may be at fault").needed(k_suspects).at_most(200);
  f.has<&I::checks>("checks", "Checks already done")
      .example(R"([{"suspect": "plug of cylinder 3", "fault_found": false, "finds": "80 %"}])")
      .at_most(200);
  f.has<&I::tests>("tests", "Tests that could be done").example(k_tests).at_most(50);
  f.has<&I::jobs_done>("jobs_done", "Jobs in your own record").example("20").between(0.0, 1e6);
  f.has<&I::jobs_with_fault>("jobs_with_fault", "Of them brought a fault in")
      .example("3")
      .between(0.0, 1e6);
  return "cause-rank-input";
}

std::string_view describe(describe::Fields<RankedCause>& f) {
  using R = RankedCause;
  f.has<&R::name>("name", "Change or part");
  f.has<&R::kind>("kind", "Changed or not");
  f.has<&R::before>("before", "Chance before");
  f.has<&R::now>("now", "Chance now");
  f.has<&R::in_words>("in_words", "In words");
  return "ranked-cause";
}

std::string_view describe(describe::Fields<TestWorth>& f) {
  using T = TestWorth;
  f.has<&T::name>("name", "Test");
  f.has<&T::worth_at_most>("worth_at_most", "Worth at most");
  f.has<&T::cost>("cost", "Costs");
  f.has<&T::pays>("pays", "Pays");
  f.has<&T::in_words>("in_words", "In words");
  return "test-worth";
}

std::string_view describe(describe::Fields<CauseRankAnswer>& f) {
  using A = CauseRankAnswer;
  f.has<&A::ranking>("ranking", "Possible causes");
  f.has<&A::something_else>("something_else", "Something not listed has a part in it");
  f.has<&A::no_change>("no_change", "No change is at fault");
  f.has<&A::nothing_listed>("nothing_listed", "Nothing listed is at fault");
  f.has<&A::evidence>("evidence", "Chance of all that was found");
  f.has<&A::look_next>("look_next", "Look next at");
  f.has<&A::look_order>("look_order", "And so on");
  f.has<&A::search_cost>("search_cost", "Expected cost of the search");
  f.has<&A::tests>("tests", "What tests are worth");
  f.has<&A::own_rate>("own_rate", "Your own rate of faults");
  f.has<&A::own_rate_in_words>("own_rate_in_words", "In words");
  f.has<&A::in_words>("in_words", "Summary");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "cause-rank-answer";
}

}  // namespace wm::staging
