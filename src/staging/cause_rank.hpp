#pragma once
/// What is most likely at fault, and where to look next.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"
#include "staging/rules.hpp"

namespace wm::staging {

enum class SymptomState : std::uint8_t { seen, not_seen, not_looked_for };
enum class SuspectKind : std::uint8_t { change, unchanged };

struct ObservedSymptom {
  std::string name;
  SymptomState state{SymptomState::seen};
  /// Chance that something not listed brings it about.
  quantity::Fraction from_elsewhere{0.01};
};

struct CauseLink {
  std::string symptom;
  quantity::Fraction chance;  ///< that a fault brings the symptom about
};

struct CauseSuspect {
  std::string name;
  SuspectKind kind{SuspectKind::change};
  std::optional<quantity::Fraction> fault_chance;  ///< before anything was seen
  std::optional<Disturbance> disturbance;          ///< scales the owner's rate where no chance is
  std::optional<quantity::Entered<quantity::Duration>> quiet_hours;  ///< flown without trouble
  std::optional<double> found_per_hour;  ///< rate at which its fault would have shown
  std::vector<CauseLink> symptoms;
  std::optional<double> look_cost;
};

struct CheckDone {
  std::string suspect;
  bool fault_found{};
  quantity::Fraction finds{1.0};         ///< chance that it finds a fault that is there
  quantity::Fraction false_alarms{0.0};  ///< chance that it finds one that is not
};

struct TestOutcome {
  std::string suspect;
  quantity::Fraction positive;  ///< if the fault is there
};

/// A test that does not put the fault right, but tells where to look.
struct PossibleTest {
  std::string name;
  double cost{};
  std::vector<TestOutcome> positive_if;
  quantity::Fraction otherwise{0.0};  ///< if the fault is with any other suspect
};

struct CauseRankInput {
  std::vector<ObservedSymptom> symptoms;
  std::vector<CauseSuspect> suspects;
  std::vector<CheckDone> checks;
  std::vector<PossibleTest> tests;
  std::optional<std::int64_t> jobs_done;  ///< the owner's own record: jobs ...
  std::optional<std::int64_t> jobs_with_fault;
};

struct RankedCause {
  std::string name;
  SuspectKind kind{SuspectKind::change};
  quantity::Fraction before;  ///< grade and quiet hours counted
  quantity::Fraction now;
  std::string in_words;
};

struct TestWorth {
  std::string name;
  double worth_at_most{};
  double cost{};
  bool pays{};
  std::string in_words;
};

struct CauseRankAnswer {
  std::vector<RankedCause> ranking;
  quantity::Fraction something_else;  ///< something not listed has a part in it
  quantity::Fraction no_change;       ///< no change is at fault
  quantity::Fraction nothing_listed;  ///< nothing listed is at fault
  double evidence{};                  ///< chance of all that was found, beforehand
  std::string look_next;
  std::vector<std::string> look_order;
  std::optional<double> search_cost;
  std::vector<TestWorth> tests;
  std::optional<quantity::Fraction> own_rate;
  std::string own_rate_in_words;
  std::string in_words;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Chances of every suspect, given what was seen, not seen and checked.
///
///   P(symptom absent | faults) = (1 - elsewhere) x product over faults of (1 - link)
///   quiet hours h:   p' = p e^(-rate h) / (1 - p + p e^(-rate h))
///   a check:         odds' = odds x finds / false_alarms, or (1 - finds) / (1 - false_alarms)
///
/// Exact; several faults at once are allowed. Suspects are independent beforehand. The next look
/// is by rising cost (1 - p) / p; what a test is worth is counted as if one fault were there.
///
/// @return missing, not_found (names), duplicate, conflict (what was found cannot be), and
///         not_applicable for more than 16 symptoms seen.
/// @source Model and limits: docs/method/staging.md (derived).
[[nodiscard]] Checked<CauseRankAnswer> cause_rank(const CauseRankInput& input,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<SymptomState>& c);
std::string_view describe(describe::Choices<SuspectKind>& c);
std::string_view describe(describe::Choices<Disturbance>& c);
std::string_view describe(describe::Fields<ObservedSymptom>& f);
std::string_view describe(describe::Fields<CauseLink>& f);
std::string_view describe(describe::Fields<CauseSuspect>& f);
std::string_view describe(describe::Fields<CheckDone>& f);
std::string_view describe(describe::Fields<TestOutcome>& f);
std::string_view describe(describe::Fields<PossibleTest>& f);
std::string_view describe(describe::Fields<CauseRankInput>& f);
std::string_view describe(describe::Fields<RankedCause>& f);
std::string_view describe(describe::Fields<TestWorth>& f);
std::string_view describe(describe::Fields<CauseRankAnswer>& f);

}  // namespace wm::staging
