// Dates and time stamps.
#include "quantity/date.hpp"

#include <gtest/gtest.h>

namespace wm::quantity {
namespace {

using namespace std::chrono_literals;

TEST(ParseDate, TakesYearMonthDay) {
  const auto got = parse_date("2026-11-25");
  ASSERT_TRUE(got);
  EXPECT_EQ(*got, Date(2026y / 11 / 25));
  EXPECT_EQ(print_date(*got), "2026-11-25");
  EXPECT_TRUE(parse_date("2024-02-29"));
  EXPECT_TRUE(parse_date("2000-02-29"));
}

struct Bad {
  const char* text;
  Kind kind;
  const char* what;
};
class DateRefused : public testing::TestWithParam<Bad> {};
TEST_P(DateRefused, WithAReason) {
  const auto got = parse_date(GetParam().text);
  ASSERT_FALSE(got) << GetParam().text;
  EXPECT_EQ(got.error().kind, GetParam().kind);
  EXPECT_EQ(got.error().what, GetParam().what);
  EXPECT_EQ(got.error().example, "2026-11-25");
}
INSTANTIATE_TEST_SUITE_P(
    Dates, DateRefused,
    testing::Values(
        Bad{"2026-02-30", Kind::out_of_bounds,
            "30 February does not exist: February 2026 has 28 days"},
        Bad{"2100-02-29", Kind::out_of_bounds,
            "29 February does not exist: February 2100 has 28 days"},
        Bad{"2026-04-31", Kind::out_of_bounds, "31 April does not exist: April 2026 has 30 days"},
        Bad{"2026-01-00", Kind::out_of_bounds,
            "0 January does not exist: January 2026 has 31 days"},
        Bad{"2026-13-01", Kind::out_of_bounds, "`2026-13-01`: there is no month 13; a year has 12"},
        Bad{"1899-12-31", Kind::out_of_bounds, "`1899-12-31`: the year must be from 1900 to 2200"},
        Bad{"25.11.2026", Kind::bad_text, "`25.11.2026` is not a date"},
        Bad{"2026/11/25", Kind::bad_text, "`2026/11/25` is not a date"},
        Bad{"26-11-25", Kind::bad_text, "`26-11-25` is not a date"},
        Bad{"2026-1-5", Kind::bad_text, "`2026-1-5` is not a date"},
        Bad{"2026-11-25T00:00:00Z", Kind::bad_text, "`2026-11-25T00:00:00Z` is not a date"},
        Bad{"", Kind::bad_text, "there is nothing here"}));

TEST(DaysBetween, CountsOverMonthsAndLeapDays) {
  EXPECT_EQ(days_between(2024y / 2 / 28, 2024y / 3 / 1), 2);
  EXPECT_EQ(days_between(2026y / 2 / 28, 2026y / 3 / 1), 1);
  EXPECT_EQ(days_between(2026y / 3 / 1, 2026y / 2 / 28), -1);
  EXPECT_EQ(days_between(1970y / 1 / 1, 2000y / 1 / 1), 10957);
}

TEST(ParseInstant, TakesUtcAndOffsets) {
  EXPECT_EQ(*parse_instant("1970-01-01T00:00:00Z"), 0.0);
  EXPECT_EQ(*parse_instant("2026-11-25T09:12:00Z"), *parse_instant("2026-11-25T10:12:00+01:00"));
  EXPECT_EQ(*parse_instant("2026-11-25t09:12:00z"), *parse_instant("2026-11-25T03:42:00-05:30"));
  EXPECT_EQ(*parse_instant("1970-01-01T00:00:00.25Z"), 0.25);
  EXPECT_EQ(*parse_instant("1970-01-01T00:00:00.0004Z"), 0.0);
  EXPECT_EQ(*parse_instant("1970-01-01T00:00:00.0006Z"), 0.001);
  EXPECT_EQ(*parse_instant("1970-01-01T00:00:00.9999999Z"), 1.0);
}

TEST(ParseInstant, RefusesWhatIsNoTimeStamp) {
  for (const char* text :
       {"", "2026-11-25", "2026-11-25T09:12:00", "2026-11-25 09:12:00Z", "2026-11-25T09:12Z",
        "2026-11-25T24:00:00Z", "2026-11-25T09:60:00Z", "2026-11-25T09:12:61Z",
        "2026-11-25T12:00:60Z", "2026-02-30T09:12:00Z", "2026-11-25T09:12:00+0100",
        "2026-11-25T09:12:00+24:00", "2026-11-25T09:12:00.Z", "2026-11-25T09:12:00Zx"}) {
    const auto got = parse_instant(text);
    EXPECT_FALSE(got) << text;
    if (!got) {
      EXPECT_EQ(got.error().example, "2026-11-25T09:12:00Z") << text;
    }
  }
}

TEST(PrintInstant, IsReadBack) {
  for (const char* text : {"1970-01-01T00:00:00Z", "2026-11-25T09:12:00.250Z",
                           "1969-12-31T23:59:59.999Z", "2200-12-31T23:59:59Z"}) {
    EXPECT_EQ(print_instant(*parse_instant(text)), text);
  }
}

}  // namespace
}  // namespace wm::quantity
