#include "life/declarations.hpp"

#include "life/due_date.hpp"

namespace wm::life {

using quantity::hours;

std::string_view describe(describe::Choices<Standing>& c) {
  c.has(Standing::valid, "valid", "within the limit")
      .has(Standing::in_tolerance, "in-tolerance", "past the limit, within its tolerance")
      .has(Standing::past_limit, "past-limit", "past the limit")
      .has(Standing::unknown, "unknown", "unknown")
      .has(Standing::on_condition, "on-condition", "on condition");
  return "standing";
}

std::string_view describe(describe::Fields<FlownHours>& f) {
  f.has<&FlownHours::on>("on", "Day").needed("2026-08-14");
  f.has<&FlownHours::hours>("hours", "Hours flown").needed("1.2 h").between(hours(0), hours(24));
  return "flown-hours";
}

std::string_view describe(describe::Fields<DueDateInput>& f) {
  const auto most = hours(200000);
  f.has<&DueDateInput::done>("done", "Last done on")
      .example("2026-03-14")
      .help(
          "Or the day it was made, cured or fitted, where the limit counts from there. Leave "
          "it empty when it is not known.");
  f.has<&DueDateInput::done_at>("done_at", "At a counter reading of")
      .example("812.4 h")
      .between(hours(0), most);
  f.has<&DueDateInput::done_at_count>("done_at_count", "At a count of").between(0, 10000000);
  f.has<&DueDateInput::every>("every", "Every so many hours")
      .example("50 h")
      .above(hours(0))
      .at_most(hours(100000));
  f.has<&DueDateInput::every_count>("every_count", "Every so many landings or starts")
      .between(1, 1000000);
  f.has<&DueDateInput::months>("months", "Every so many months").example("4").between(1, 1200);
  f.has<&DueDateInput::month_rule>("month_rule", "How months are counted")
      .example("anniversary")
      .help("Needed with months. As the limit's own document says it; never guessed.");
  f.has<&DueDateInput::days>("days", "Every so many days").between(1, 36525);
  f.has<&DueDateInput::combine>("combine", "Together");
  f.has<&DueDateInput::next>("next", "Next interval");
  f.has<&DueDateInput::was_due>("was_due", "It was due on");
  f.has<&DueDateInput::was_due_at>("was_due_at", "It was due at a reading of")
      .between(hours(0), most);
  f.has<&DueDateInput::early_days>("early_days", "Done early by so many days, the due date is kept")
      .between(0, 366);
  f.has<&DueDateInput::authority>("authority", "Who says so");
  f.has<&DueDateInput::document>("document", "In which document");
  f.has<&DueDateInput::revision>("revision", "Its revision");
  f.has<&DueDateInput::tolerance>("tolerance", "May be overrun by so many hours")
      .between(hours(0), hours(1000));
  f.has<&DueDateInput::tolerance_days>("tolerance_days", "May be overrun by so many days")
      .between(0, 3660);
  f.has<&DueDateInput::today>("today", "Judged on").example("2026-05-01");
  f.has<&DueDateInput::now_at>("now_at", "Counter reading now")
      .example("830.0 h")
      .between(hours(0), most);
  f.has<&DueDateInput::now_at_count>("now_at_count", "Count now").between(0, 10000000);
  f.has<&DueDateInput::hours_a_month>("hours_a_month", "Hours flown in a month")
      .example("6.5 h")
      .between(hours(0), hours(744))
      .help("A steady rate, where no flights are entered.");
  f.has<&DueDateInput::flown>("flown", "Hours flown, day by day")
      .at_most(20000)
      .help("Flights of the last three years give the expected day with an interval.");
  return "due-date-input";
}

std::string_view describe(describe::Fields<DueDateAnswer>& f) {
  f.has<&DueDateAnswer::standing>("standing", "Stands");
  f.has<&DueDateAnswer::in_words>("in_words", "In words");
  f.has<&DueDateAnswer::governs>("governs", "What governs");
  f.has<&DueDateAnswer::due_on>("due_on", "Last day within the limit");
  f.has<&DueDateAnswer::due_at>("due_at", "Due at a counter reading of");
  f.has<&DueDateAnswer::due_at_count>("due_at_count", "Due at a count of");
  f.has<&DueDateAnswer::days_left>("days_left", "Days left");
  f.has<&DueDateAnswer::hours_left>("hours_left", "Hours left");
  f.has<&DueDateAnswer::count_left>("count_left", "Count left");
  f.has<&DueDateAnswer::allowance_used>("allowance_used", "Allowance used");
  f.has<&DueDateAnswer::expected>("expected", "Expected day, hours and calendar together");
  f.has<&DueDateAnswer::expected_early>("expected_early",
                                        "One chance in ten that it is earlier than");
  f.has<&DueDateAnswer::expected_late>("expected_late", "One chance in ten that it is later than");
  f.has<&DueDateAnswer::overrun>("overrun", "Done late");
  f.has<&DueDateAnswer::working>("working", "The sum, step by step");
  return "due-date-answer";
}

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  catalogue.add(calculation<&due_date>(
      "due-date", "When an interval by hours, landings, months or days is due next, and how sure",
      {secondary("FAA wording on calendar months, as quoted in the trade", "14 CFR 91.409, 91.411"),
       from_memory("anniversary months in maker's and authority's texts", "no clause"),
       secondary("14 CFR 91.409(b), FAA Chief Counsel letter",
                 "excess deducted from the next 100 h"),
       derived("flights at random, their rate known from those there were: days over days seen is "
               "beta-prime (flights needed, flights seen + 1/2)")},
      {caution::dates_are_yours, caution::defer}));
}

}  // namespace wm::life
