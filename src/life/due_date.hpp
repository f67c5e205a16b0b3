#pragma once
/// The calculation "due-date": one interval by hours, landings, months or days, and when it is
/// due next.

#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "life/due.hpp"
#include "life/forecast.hpp"

namespace wm::life {

struct FlownHours {
  quantity::Date on{};
  quantity::Duration hours{};
};

struct DueDateInput {
  std::optional<quantity::Date> done;  ///< not known: the answer is unknown, never fine
  std::optional<quantity::Entered<quantity::Duration>> done_at;
  std::optional<std::int64_t> done_at_count;
  std::optional<quantity::Entered<quantity::Duration>> every;
  std::optional<std::int64_t> every_count;
  std::optional<std::int64_t> months;
  std::optional<MonthRule> month_rule;
  std::optional<std::int64_t> days;
  Combine combine{Combine::whichever_first};
  CarryForward next{CarryForward::from_done};
  std::optional<quantity::Date> was_due;
  std::optional<quantity::Entered<quantity::Duration>> was_due_at;
  std::int64_t early_days{0};
  Authority authority{Authority::owners_choice};
  std::string document;
  std::string revision;
  std::optional<quantity::Entered<quantity::Duration>> tolerance;
  std::int64_t tolerance_days{0};
  std::optional<quantity::Date> today;
  std::optional<quantity::Entered<quantity::Duration>> now_at;
  std::optional<std::int64_t> now_at_count;
  std::optional<quantity::Entered<quantity::Duration>> hours_a_month;
  std::vector<FlownHours> flown;
};

struct DueDateAnswer {
  Standing standing{Standing::unknown};
  std::string in_words;
  std::string governs;
  std::optional<quantity::Date> due_on;  ///< by the calendar
  std::optional<quantity::Entered<quantity::Duration>> due_at;
  std::optional<std::int64_t> due_at_count;
  std::optional<std::int64_t> days_left;
  std::optional<quantity::Entered<quantity::Duration>> hours_left;
  std::optional<std::int64_t> count_left;
  std::optional<quantity::Fraction> allowance_used;
  std::optional<quantity::Date> expected;  ///< hours and calendar together
  std::optional<quantity::Date> expected_early;
  std::optional<quantity::Date> expected_late;
  std::string overrun;
  std::vector<std::string> working;
};

/// @return missing: nothing limited, no month rule, no day for today; refused: a tolerance on a
///         binding limit; conflict: done after today, a counter below what it was when done.
[[nodiscard]] Checked<DueDateAnswer> due_date(const DueDateInput& input,
                                              const describe::Context& context);

std::string_view describe(describe::Choices<Standing>& c);
std::string_view describe(describe::Fields<FlownHours>& f);
std::string_view describe(describe::Fields<DueDateInput>& f);
std::string_view describe(describe::Fields<DueDateAnswer>& f);

}  // namespace wm::life
