// Laws of the calendar and of forecasts, over seeded inputs.
#include <gtest/gtest.h>

#include <cmath>

#include "life/forecast.hpp"
#include "life/limits.hpp"
#include "life/months.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::life;
namespace ch = std::chrono;

quantity::Date random_day(statistics::Draws& draws) {
  return quantity::Date{ch::sys_days{ch::year{1950} / 1 / 1} +
                        ch::days{static_cast<int>(draws.index(70000))}};
}

// Second way: step day by day and watch the month change; no month arithmetic at all.
TEST(Months, SteppingDayByDayGivesTheSame) {
  statistics::Draws draws(1);
  for (int i = 0; i < 300; ++i) {
    const quantity::Date from = random_day(draws);
    const int months = 1 + static_cast<int>(draws.index(36));
    auto step = ch::sys_days{from};
    int changes = 0;
    quantity::Date anniversary{};
    while (true) {
      const quantity::Date here{step};
      const quantity::Date next{step + ch::days{1}};
      if (changes == months && (here.day() == from.day() || next.month() != here.month()) &&
          !anniversary.ok()) {
        anniversary = here;
      }
      if (next.month() != here.month() && ++changes > months) {
        ASSERT_EQ(add_months(from, months, MonthRule::end_of_month), here);
        ASSERT_EQ(add_months(from, months, MonthRule::anniversary), anniversary);
        break;
      }
      step += ch::days{1};
    }
  }
}

TEST(Months, CalendarMonthsAreNeverShorterThanAnniversaries) {
  statistics::Draws draws(2);
  for (int i = 0; i < 3000; ++i) {
    const quantity::Date from = random_day(draws);
    const int months = static_cast<int>(draws.index(200));
    const auto end = add_months(from, months, MonthRule::end_of_month);
    const auto same = add_months(from, months, MonthRule::anniversary);
    ASSERT_LE(same, end);
    ASSERT_EQ(same.month(), end.month());
    ASSERT_LE(same, add_months(from, months + 1, MonthRule::anniversary));
  }
}

Flying random_flying(statistics::Draws& draws) {
  Flying f;
  f.flights = 5 + std::floor(draws.uniform(0, 200));
  f.busy_days = draws.uniform(30, 1000);
  f.shape = draws.uniform(0.5, 20);
  f.scale = draws.uniform(0.2, 2) / f.shape;
  f.rate_known = draws.uniform() < 0.3;
  return f;
}

TEST(Forecast, MoreHoursNeverComeSooner) {
  statistics::Draws draws(3);
  for (int i = 0; i < 60; ++i) {
    const Flying f = random_flying(draws);
    const double hours = draws.uniform(0.5, 100);
    const DaysUntil few(f, hours);
    const DaysUntil more(f, hours * 1.3);
    for (const double p : {0.1, 0.5, 0.9}) {
      ASSERT_LE(few.quantile(p), more.quantile(p) * (1 + 1e-9));
      ASSERT_NEAR(few.by(few.quantile(p)), p, 1e-9);
    }
    ASSERT_LE(few.quantile(0.1), few.quantile(0.5));
    ASSERT_LE(few.quantile(0.5), few.quantile(0.9));
  }
}

TEST(Forecast, AnUnsureRateIsWiderThanAKnownOne) {
  statistics::Draws draws(4);
  for (int i = 0; i < 60; ++i) {
    Flying f = random_flying(draws);
    const double hours = draws.uniform(5, 100);
    f.rate_known = true;
    const DaysUntil sure(f, hours);
    f.rate_known = false;
    const DaysUntil unsure(f, hours);
    ASSERT_GT(unsure.quantile(0.9) - unsure.quantile(0.1), sure.quantile(0.9) - sure.quantile(0.1));
  }
}

TEST(Forecast, BusyDaysGoThereAndBack) {
  statistics::Draws draws(5);
  for (int i = 0; i < 1000; ++i) {
    MonthProfile profile;
    for (double& share : profile.of_month) share = draws.uniform(0.1, 3);
    const quantity::Date from = random_day(draws);
    const quantity::Date to = add_days(from, 1 + static_cast<int>(draws.index(2000)));
    // A hair less, so that rounding cannot push it into the next day.
    const double busy = profile.busy_days(from, to) - 1e-6;
    ASSERT_EQ(profile.after(from, busy), to);
  }
}

TEST(Forecast, AWinterWithoutFlyingPutsTheDayOff) {
  std::vector<Flown> flown;
  for (int year = 2023; year <= 2025; ++year) {
    for (unsigned month = 4; month <= 10; ++month) {
      for (unsigned d = 3; d <= 27; d += 6) {
        flown.push_back({quantity::Date{ch::year{year}, ch::month{month}, ch::day{d}}, 1.2});
      }
    }
  }
  const quantity::Date today{ch::year{2025}, ch::November, ch::day{1}};
  const auto flying = learn(flown, today);
  ASSERT_TRUE(flying);
  EXPECT_TRUE(flying->seasonal);
  EXPECT_LT(flying->months.of_month[0], 0.4);
  EXPECT_GT(flying->months.of_month[6], 1.2);
  Flying even = *flying;
  even.months = {};
  even.busy_days = even.months.busy_days(flown.front().on, today);
  EXPECT_GT(forecast(*flying, 6, today).middle, forecast(even, 6, today).middle);
}

}  // namespace
