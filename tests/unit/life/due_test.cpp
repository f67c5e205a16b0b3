#include "life/due.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include "life/declarations.hpp"
#include "life/due_date.hpp"

namespace {

using namespace wm;
using namespace wm::life;

quantity::Date day(const char* text) { return *quantity::parse_date(text); }
quantity::Entered<quantity::Duration> h(double value) {
  return {quantity::hours(value), 360.0, fmt::format("{} h", value)};
}
Limit hours_or_months() {
  Limit limit;
  limit.uses.push_back({"engine hours", CountUnit::hours, h(100), {}, {}, {}});
  limit.months = MonthLimit{12, MonthRule::end_of_month};
  return limit;
}
Mark at(const char* on, double total) { return {day(on), {{"engine hours", total}}}; }

TEST(Due, WhicheverFirstIsPastWhenOneIsPast) {
  const auto s = judge(hours_or_months(), at("2026-01-10", 500), at("2026-02-01", 600.1));
  EXPECT_EQ(s.standing, Standing::past_limit);
  EXPECT_EQ(s.each[*s.governs].by, By::use);
  EXPECT_GT(*s.used, 1.0);
}

TEST(Due, TheLastHourIsStillWithinTheLimit) {
  EXPECT_EQ(judge(hours_or_months(), at("2026-01-10", 500.3), at("2026-02-01", 600.3)).standing,
            Standing::valid);
}

TEST(Due, WhicheverLaterIsPastOnlyWhenAllArePast) {
  Limit limit = hours_or_months();
  limit.combine = Combine::whichever_later;
  EXPECT_EQ(judge(limit, at("2026-01-10", 500), at("2026-02-01", 650)).standing, Standing::valid);
  EXPECT_EQ(judge(limit, at("2026-01-10", 500), at("2027-02-01", 550)).standing, Standing::valid);
  EXPECT_EQ(judge(limit, at("2026-01-10", 500), at("2027-02-01", 650)).standing,
            Standing::past_limit);
}

TEST(Due, AnUnknownStartIsNeverFine) {
  const Limit limit = hours_or_months();
  Mark start = at("2026-01-10", 500);
  start.on.reset();
  EXPECT_EQ(judge(limit, start, at("2026-02-01", 510)).standing, Standing::unknown);
  EXPECT_EQ(judge(limit, start, at("2026-02-01", 610)).standing, Standing::past_limit);
  EXPECT_EQ(judge(limit, {}, at("2026-02-01", 510)).standing, Standing::unknown);
  EXPECT_FALSE(judge(limit, {}, at("2026-02-01", 510)).used);
}

TEST(Due, ToleranceIsShownAsSuch) {
  Limit limit = hours_or_months();
  limit.uses[0].tolerance_hours = h(10);
  EXPECT_EQ(judge(limit, at("2026-01-10", 500), at("2026-02-01", 605)).standing,
            Standing::in_tolerance);
  EXPECT_EQ(judge(limit, at("2026-01-10", 500), at("2026-02-01", 610.5)).standing,
            Standing::past_limit);
}

TEST(Due, OnConditionHasNoEnd) {
  Limit limit;
  limit.on_condition = true;
  EXPECT_EQ(judge(limit, {}, {}).standing, Standing::on_condition);
  EXPECT_EQ(in_words(limit), "on condition (owner's choice)");
}

TEST(Due, DoneEarlyKeepsTheDateOnlyWithinItsWindow) {
  // Up to one month early keeping the old anniversary: the UK permit renewal, read in the
  // association's page (rules-records notes, section 2a).
  Limit limit;
  limit.months = MonthLimit{12, MonthRule::anniversary};
  limit.next = CarryForward::from_due;
  limit.early_days = 31;
  const Mark start{day("2025-06-10"), {}};
  EXPECT_EQ(next_start(limit, start, {day("2026-05-20"), {}}).on, day("2026-06-10"));
  EXPECT_EQ(next_start(limit, start, {day("2026-04-20"), {}}).on, day("2026-04-20"));
  EXPECT_EQ(next_start(limit, start, {day("2026-07-01"), {}}).on, day("2026-06-10"));
  limit.next = CarryForward::from_done;
  EXPECT_EQ(next_start(limit, start, {day("2026-05-20"), {}}).on, day("2026-05-20"));
}

TEST(Due, OverrunHoursComeOffTheNextInterval) {
  Limit limit = hours_or_months();
  limit.next = CarryForward::from_due;
  const auto next = next_start(limit, at("2026-01-10", 900), at("2026-05-01", 1006.3));
  EXPECT_DOUBLE_EQ(*next.total("engine hours"), 1000.0);
  const auto late = overruns(limit, at("2026-01-10", 900), at("2026-05-01", 1006.3));
  ASSERT_EQ(late.size(), 1U);
  EXPECT_NEAR(late[0].amount, 6.3, 1e-9);
  EXPECT_TRUE(late[0].beyond_tolerance);
}

TEST(Limit, SaysEveryContradictionAtOnce) {
  Limit limit;
  EXPECT_EQ(check(limit).error().at(0).kind, Kind::missing);
  limit.authority = Authority::law;
  limit.tolerance_days = 5;
  limit.days = 0;
  limit.months = MonthLimit{0, MonthRule::anniversary};
  limit.uses.push_back({"landings", CountUnit::landings, h(3), {}, {}, 4});
  const auto problems = check(limit).error();
  ASSERT_EQ(problems.size(), 5U);
  EXPECT_EQ(problems[0].path, "uses/0/count");
  EXPECT_EQ(problems[1].kind, Kind::refused);
  EXPECT_EQ(problems[2].path, "months/months");
}

TEST(Limit, IsToldInOneLine) {
  Limit limit = hours_or_months();
  limit.authority = Authority::maker_recommended;
  limit.document = "service letter 7";
  limit.revision = "B";
  EXPECT_EQ(in_words(limit),
            "100.0 h of engine hours or 12 calendar months, whichever comes first (maker, "
            "recommended: service letter 7 rev B)");
}

TEST(DueDate, NeverGuessesHowMonthsAreCounted) {
  DueDateInput in;
  in.done = day("2026-01-01");
  in.months = 12;
  in.today = day("2026-02-01");
  const auto got = due_date(in, {});
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 1U);
  EXPECT_EQ(got.error()[0].path, "month_rule");
}

TEST(DueDate, TellsAllProblemsWithTheirFields) {
  DueDateInput in;
  in.done = day("2026-03-01");
  in.today = day("2026-02-01");
  in.done_at = h(100);
  in.now_at = h(90);
  in.done_at_count = 5;
  in.now_at_count = 4;
  in.every = h(50);
  in.tolerance = h(5);
  in.authority = Authority::maker_mandatory;
  const auto got = due_date(in, {});
  ASSERT_FALSE(got);
  std::string paths;
  for (const Problem& p : got.error()) paths += p.path + " ";
  EXPECT_EQ(paths, "done now_at now_at_count tolerance ");
  EXPECT_EQ(due_date({}, {}).error().at(0).path, "today");
}

TEST(DueDate, AnUnknownDateStaysUnknown) {
  DueDateInput in;
  in.days = 90;
  in.today = day("2026-02-01");
  const auto got = due_date(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->standing, Standing::unknown);
  EXPECT_NE(got->in_words.find("does not count as fine"), std::string::npos);
}

TEST(DueDate, CountsLandings) {
  DueDateInput in;
  in.every_count = 500;
  in.done_at_count = 100;
  in.now_at_count = 580;
  in.today = day("2026-02-01");
  const auto got = due_date(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->count_left, 20);
  EXPECT_EQ(got->due_at_count, 600);
  EXPECT_EQ(got->governs, "the count");
}

TEST(DueDate, ForecastsFromFlights) {
  DueDateInput in;
  in.done_at = h(100);
  in.now_at = h(120);
  in.every = h(50);
  in.today = day("2026-08-01");
  for (int i = 0; i < 40; ++i) {
    in.flown.push_back({add_days(day("2026-01-01"), 5 * i), quantity::hours(1.0 + 0.1 * (i % 5))});
  }
  const auto got = due_date(in, {});
  ASSERT_TRUE(got);
  ASSERT_TRUE(got->expected);
  EXPECT_LT(*got->expected_early, *got->expected);
  EXPECT_LT(*got->expected, *got->expected_late);
  // 30 h at 1.2 h every 5 days: about 125 days.
  EXPECT_NEAR(quantity::days_between(*in.today, *got->expected), 130, 15);
  in.flown.resize(3);
  const auto few = due_date(in, {});
  ASSERT_TRUE(few);
  EXPECT_FALSE(few->expected);
}

TEST(DueDate, IsDeclaredWithoutAGap) {
  describe::Catalogue catalogue;
  declare(catalogue);
  ASSERT_NE(catalogue.find("due-date"), nullptr);
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<DueDateInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<DueDateAnswer>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<Limit>()), "");
}

}  // namespace
