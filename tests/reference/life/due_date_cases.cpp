// Source:    rules-records notes, section 3, cases D1 to D18, and section 13, case R7: derived
//            there from FAA wording on calendar months (secondary) and 14 CFR 91.409(b);
//            D6 agrees with a published study text (Oct 2024 + 24 -> 2026-10-31).
// Tolerance: dates are exact; hours to a tenth, as a counter reads.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <chrono>

#include "life/due_date.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::life;
using quantity::print_date;

const std::string k_source = "rules-records notes, section 3 (derived from FAA wording)";

quantity::Date day(const char* text) { return *quantity::parse_date(text); }
quantity::Entered<quantity::Duration> h(double value) {
  return {quantity::hours(value), 360.0, fmt::format("{} h", value)};
}

struct MonthCase {
  const char* id;
  const char* done;
  int months;
  const char* end_of_month;
  const char* anniversary;
};

class Months : public testing::TestWithParam<MonthCase> {};

TEST_P(Months, FallOnTheDayOfEachRule) {
  const MonthCase& c = GetParam();
  test::check_text("due-date", std::string(c.id) + " end of month", k_source, c.end_of_month,
                   print_date(add_months(day(c.done), c.months, MonthRule::end_of_month)));
  test::check_text("due-date", std::string(c.id) + " anniversary", k_source, c.anniversary,
                   print_date(add_months(day(c.done), c.months, MonthRule::anniversary)));
}

INSTANTIATE_TEST_SUITE_P(
    Notes, Months,
    testing::Values(MonthCase{"D1", "2026-06-06", 12, "2027-06-30", "2027-06-06"},
                    MonthCase{"D2", "2026-06-01", 12, "2027-06-30", "2027-06-01"},
                    MonthCase{"D3", "2024-02-29", 12, "2025-02-28", "2025-02-28"},
                    MonthCase{"D4", "2027-02-03", 12, "2028-02-29", "2028-02-03"},
                    MonthCase{"D5", "2022-07-22", 24, "2024-07-31", "2024-07-22"},
                    MonthCase{"D6", "2024-10-09", 24, "2026-10-31", "2026-10-09"},
                    MonthCase{"D7", "2025-08-31", 6, "2026-02-28", "2026-02-28"},
                    MonthCase{"D8", "2027-10-31", 4, "2028-02-29", "2028-02-29"},
                    MonthCase{"D9", "2026-12-31", 2, "2027-02-28", "2027-02-28"},
                    MonthCase{"D10", "2024-01-31", 1, "2024-02-29", "2024-02-29"},
                    MonthCase{"D11", "2099-02-11", 12, "2100-02-28", "2100-02-11"},
                    MonthCase{"D12", "2026-03-15", 6, "2026-09-30", "2026-09-15"}));

TEST(DueDateCases, D1AndD2CountTheDaysOfValidity) {
  EXPECT_EQ(quantity::days_between(day("2026-06-06"), day("2027-06-30")), 389);
  EXPECT_EQ(quantity::days_between(day("2026-06-01"), day("2027-06-30")), 394);
}

DueDateInput hundred_hours(double done_at, CarryForward next) {
  DueDateInput in;
  in.done_at = h(done_at);
  in.now_at = h(done_at);
  in.every = h(100);
  in.was_due_at = h(1000);
  in.next = next;
  in.tolerance = h(10);
  in.today = day("2026-05-01");
  return in;
}

TEST(DueDateCases, D13AnOverrunComesOffTheNextInterval) {
  const auto from_due = due_date(hundred_hours(1006.3, CarryForward::from_due), {});
  ASSERT_TRUE(from_due);
  test::check({"due-date", "D13 next due, from due", k_source, "1100.0 h", 1100.0,
               from_due->due_at->value.si / 3600, 1e-6, "a sum"});
  test::check({"due-date", "D13 hours left, from due", k_source, "93.7 h", 93.7,
               from_due->hours_left->value.si / 3600, 1e-6, "a sum"});
  EXPECT_EQ(from_due->overrun, "done 6.3 h past its due point: within the tolerance");
  const auto from_done = due_date(hundred_hours(1006.3, CarryForward::from_done), {});
  ASSERT_TRUE(from_done);
  test::check({"due-date", "D13 next due, from done", k_source, "1106.3 h", 1106.3,
               from_done->due_at->value.si / 3600, 1e-6, "a sum"});
}

TEST(DueDateCases, D14TenHoursAndMoreAreTooMuch) {
  const auto got = due_date(hundred_hours(1010.4, CarryForward::from_due), {});
  ASSERT_TRUE(got);
  test::check_text("due-date", "D14 violation", k_source,
                   "done 10.4 h past its due point: more than the tolerance allows", got->overrun);
}

DueDateInput oil(double hours_a_month) {
  DueDateInput in;
  in.done = day("2026-03-14");
  in.done_at = h(812.4);
  in.now_at = h(812.4);
  in.every = h(50);
  in.months = 4;
  in.month_rule = MonthRule::anniversary;
  in.hours_a_month = h(hours_a_month);
  in.today = day("2026-03-14");
  return in;
}

TEST(DueDateCases, D15LittleFlyingLetsTheCalendarGovern) {
  const auto got = due_date(oil(6.5), {});
  ASSERT_TRUE(got);
  test::check_text("due-date", "D15 governs", k_source, "the calendar", got->governs);
  test::check_text("due-date", "D15 due", k_source, "2026-07-14", print_date(*got->due_on));
  EXPECT_EQ(print_date(*got->expected), "2026-07-14");
}

TEST(DueDateCases, D16MuchFlyingLetsTheHoursGovern) {
  const auto got = due_date(oil(15), {});
  ASSERT_TRUE(got);
  test::check_text("due-date", "D16 governs", k_source, "the hours", got->governs);
  test::check({"due-date", "D16 due at", k_source, "862.4 h", 862.4, got->due_at->value.si / 3600,
               1e-6, "a sum"});
  const double months = quantity::days_between(*oil(15).today, *got->expected) / 30.436875;
  test::check({"due-date", "D16 months until then", k_source, "3.33 months", 3.33, months, 0.03,
               "whole days"});
}

TEST(DueDateCases, D17TheLastDayIsStillValid) {
  DueDateInput in;
  in.done = day("2025-11-06");
  in.months = 12;
  in.month_rule = MonthRule::end_of_month;
  in.today = day("2026-11-30");
  test::check_text("due-date", "D17 last day", k_source, "within the limit",
                   std::string(in_words(due_date(in, {})->standing)));
  in.today = day("2026-12-01");
  test::check_text("due-date", "D17 day after", k_source, "past the limit",
                   std::string(in_words(due_date(in, {})->standing)));
}

TEST(DueDateCases, D18NoMonthEndIsLeftOut) {
  // The trap: "the 30th of each month" silently has none in February. The rule here is counted
  // from the standard library's last days of months. (Calendar files are not written yet.)
  using namespace std::chrono;
  int agree = 0;
  for (int i = 1; i <= 48; ++i) {
    const year_month_day last = (year{2026} / January + months{i}) / std::chrono::last;
    const auto due = add_months(day("2026-01-30"), i, MonthRule::end_of_month);
    if (print_date(due) == fmt::format("{:04}-{:02}-{:02}", static_cast<int>(last.year()),
                                       static_cast<unsigned>(last.month()),
                                       static_cast<unsigned>(last.day())))
      ++agree;
  }
  test::check({"due-date", "D18 month ends of 48 months",
               "rules-records notes, section 3, D18 (RFC 5545: BYMONTHDAY=-1); std::chrono",
               "48 of 48", 48, static_cast<double>(agree), 0, "a count"});
}

TEST(DueDateCases, R7HoursOrTwelveMonthsWhicheverFirst) {
  DueDateInput in;
  in.done = day("2026-05-10");
  in.done_at = h(1520.0);
  in.every = h(100);
  in.months = 12;
  in.month_rule = MonthRule::anniversary;
  in.authority = Authority::law;
  in.document = "invented directive";
  in.revision = "2";
  in.today = day("2026-06-01");
  in.now_at = h(1530.0);
  const auto got = due_date(in, {});
  ASSERT_TRUE(got);
  test::check({"due-date", "R7 hours", k_source, "1620.0 h", 1620.0, got->due_at->value.si / 3600,
               1e-6, "a sum"});
  test::check_text("due-date", "R7 date", k_source, "2027-05-10", print_date(*got->due_on));
  EXPECT_NE(got->working.front().find("rev 2"), std::string::npos);
}

}  // namespace
