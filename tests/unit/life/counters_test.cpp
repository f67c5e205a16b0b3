#include "life/counters.hpp"

#include <gtest/gtest.h>

namespace {

using namespace wm;
using namespace wm::life;

quantity::Date day(const char* text) { return *quantity::parse_date(text); }

TEST(Counter, KeepsTheOrderInWhichThingsHappened) {
  CounterSeries c;
  ASSERT_TRUE(c.add({day("2026-05-01"), 0, 1140.0, false, {}}));
  ASSERT_TRUE(c.add({day("2020-05-01"), 0, 700.0, false, {}}));  // an old logbook, typed later
  EXPECT_EQ(c.total(), 1140.0);
  EXPECT_EQ(c.points().front().event.shown, 700.0);
}

TEST(Counter, RefusesToRunBackwardsAndSaysWhatToDo) {
  CounterSeries c;
  ASSERT_TRUE(c.add({day("2026-05-01"), 0, 1140.0, false, {}}));
  const auto later = c.add({day("2026-06-01"), 0, 1139.0, false, {}});
  ASSERT_FALSE(later);
  EXPECT_EQ(later.error().kind, Kind::conflict);
  EXPECT_EQ(later.error().what,
            "the counter would run backwards: 1139.0 h on 2026-06-01, but 1140.0 h on 2026-05-01, "
            "before it");
  EXPECT_EQ(later.error().expected, "1140.0 h or more");
  EXPECT_NE(later.error().do_next.find("old one"), std::string::npos);
  const auto earlier = c.add({day("2026-04-01"), 0, 1141.0, false, {}});
  ASSERT_FALSE(earlier);
  EXPECT_EQ(earlier.error().expected, "1140.0 h or less");
  EXPECT_EQ(c.points().size(), 1U);  // nothing was half done
}

TEST(Counter, AReplacedInstrumentCarriesItsOffset) {
  CounterSeries c;
  ASSERT_TRUE(c.add({day("2025-01-01"), 0, 900.0, false, {}}));
  ASSERT_TRUE(c.add({day("2025-03-01"), 0, 12.0, true, 920.5}));
  ASSERT_TRUE(c.add({day("2025-06-01"), 0, 40.0, false, {}}));
  EXPECT_DOUBLE_EQ(*c.total(), 948.5);
  EXPECT_DOUBLE_EQ(c.offset(), 908.5);
}

TEST(Counter, AReplacementEnteredLaterMovesWhatFollows) {
  CounterSeries c;
  ASSERT_TRUE(c.add({day("2025-06-01"), 0, 40.0, false, {}}));
  ASSERT_TRUE(c.add({day("2025-03-01"), 0, 0.0, true, 920.0}));
  EXPECT_DOUBLE_EQ(*c.total(), 960.0);
  ASSERT_TRUE(c.add({day("2025-01-01"), 0, 900.0, false, {}}));
  EXPECT_FALSE(c.check({day("2025-02-01"), 0, 921.0, false, {}}));  // the old one never got there
}

TEST(Counter, AnUnknownLastReadingGivesALowerBound) {
  CounterSeries c;
  ASSERT_TRUE(c.add({day("2025-01-01"), 0, 900.0, false, {}}));
  ASSERT_TRUE(c.add({day("2025-03-01"), 0, 0.0, true, std::nullopt}));
  ASSERT_TRUE(c.add({day("2025-06-01"), 0, 40.0, false, {}}));
  const auto at = c.total_at(day("2025-07-01"));
  ASSERT_TRUE(at);
  EXPECT_DOUBLE_EQ(at->lowest, 940.0);
  EXPECT_TRUE(at->at_least);
}

TEST(Counter, BoundsTheTotalBetweenTwoReadings) {
  CounterSeries c;
  EXPECT_FALSE(c.total_at(day("2025-01-01")));
  ASSERT_TRUE(c.add({day("2025-01-01"), 0, 900.0, false, {}}));
  ASSERT_TRUE(c.add({day("2025-01-11"), 0, 910.0, false, {}}));
  const auto between = c.total_at(day("2025-01-05"));
  ASSERT_TRUE(between);
  EXPECT_DOUBLE_EQ(between->lowest, 900.0);
  EXPECT_DOUBLE_EQ(*between->highest, 910.0);
  EXPECT_DOUBLE_EQ(*between->straight, 904.0);
  const auto after = c.total_at(day("2025-02-01"));
  EXPECT_DOUBLE_EQ(after->lowest, 910.0);
  EXPECT_FALSE(after->highest);
  EXPECT_FALSE(c.total_at(day("2024-12-31")));
  EXPECT_TRUE(c.total_at(day("2025-01-11"))->exact);
}

TEST(Counter, OrdersEventsOfOneDay) {
  CounterSeries c;
  ASSERT_TRUE(c.add({day("2025-01-01"), 2, 901.5, false, {}}));
  ASSERT_TRUE(c.add({day("2025-01-01"), 1, 900.2, false, {}}));
  EXPECT_FALSE(c.add({day("2025-01-01"), 3, 900.9, false, {}}));
  EXPECT_DOUBLE_EQ(*c.total(), 901.5);
}

TEST(Counter, RefusesWhatIsNoReading) {
  CounterSeries c(CountUnit::landings);
  EXPECT_EQ(c.add({day("2025-01-01"), 0, -1.0, false, {}}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(c.add({{}, 0, 1.0, false, {}}).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(say(212, CountUnit::landings), "212 landings");
  EXPECT_EQ(say(3, CountUnit::starts), "3 starts");
  EXPECT_EQ(say(1.25, CountUnit::hours), "1.25 h");
}

}  // namespace
