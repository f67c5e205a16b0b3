// The calculation "reading-trend": uneven hours, crossing of a limit, a step at a change of part.
// TS: R 4.2.2, computed (Theil-Sen and exact Mann-Kendall of uneven hours). The series of a battery
// is invented (it is the demo's): one slow drift, one step at the change of part, nothing else; the
// expected figures are sorted out by hand or by brute force beside each.
#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "evidence/reading_trend.hpp"
#include "support/reference_case.hpp"

namespace wm::evidence {
namespace {

using test::check;
const std::string k_calc = "reading-trend";

describe::AnyQuantity any(double value, const std::string& unit, double factor,
                          quantity::KindOf kind) {
  describe::AnyQuantity out;
  out.kind = kind;
  out.si = value * factor;
  out.text = std::to_string(value) + " " + unit;
  return out;
}
describe::AnyQuantity kohm(double v) { return any(v, "kohm", 1e3, quantity::KindOf::resistance); }
describe::AnyQuantity volts(double v) { return any(v, "V", 1, quantity::KindOf::voltage); }

describe::Context context() {
  describe::Context out;
  out.today = *quantity::parse_date("2026-11-25");
  return out;
}

TEST(ReadingTrend, UnevenHoursMeetTheirLimitWhereTheLineDoes) {
  const std::vector<double> hours{0, 6.5, 11, 18.2, 25, 31.4, 40};
  const std::vector<double> values{72, 71, 71.5, 70, 69, 69.5, 67};
  ReadingTrendInput in;
  for (std::size_t i = 0; i < hours.size(); ++i) {
    TrendReading r;
    r.hours = {quantity::hours(hours[i]), 0, {}};
    r.value = kohm(values[i]);
    in.readings.push_back(std::move(r));
  }
  in.lowest = kohm(65);
  const auto told = reading_trend(in, context());
  ASSERT_TRUE(told);
  const std::string r = "R 4.2.2, computed";
  ASSERT_EQ(told->parts.size(), 1U);
  const auto& part = told->parts[0];
  EXPECT_TRUE(part.drifts);
  check({k_calc, "TS slope for 100 h", r, "-11.940299 kohm", -11940.299, part.drift->si, 5,
         "two digits are printed; 5 ohm of the third"});
  check({k_calc, "TS exact p", r, "0.01071429", 0.01071429, *part.p, 5e-9,
         "half a unit of the last digit given"});
  ASSERT_TRUE(told->line);
  check({k_calc, "TS intercept", r, "72 kohm", 72, told->line->from_value, 1e-9, "exact"});
  ASSERT_TRUE(told->limit_met);
  EXPECT_EQ(told->limit_met->when, "58.6 h") << "R: 58.625 h";
  EXPECT_EQ(told->over, "hours");
}

struct Read {
  const char* day;
  double volts;
  const char* part;
};
const std::vector<Read> k_battery{
    {"2023-12-09", 9.85, "old"},  {"2024-02-17", 9.79, "old"},  {"2024-04-06", 9.81, "old"},
    {"2024-07-13", 9.73, "old"},  {"2024-10-05", 9.68, "old"},  {"2025-02-08", 9.61, "old"},
    {"2025-05-17", 9.57, "old"},  {"2025-08-30", 9.49, "old"},  {"2025-11-08", 9.38, "old"},
    {"2025-11-22", 10.41, "new"}, {"2025-12-13", 10.36, "new"}, {"2026-02-14", 10.39, "new"},
    {"2026-03-14", 10.42, "new"}, {"2026-06-20", 10.38, "new"}, {"2026-09-26", 10.40, "new"},
    {"2026-11-14", 10.37, "new"}};

ReadingTrendInput battery(bool with_parts) {
  ReadingTrendInput in;
  for (const auto& r : k_battery) {
    TrendReading one;
    one.day = *quantity::parse_date(r.day);
    one.value = volts(r.volts);
    if (with_parts) one.part = r.part;
    in.readings.push_back(std::move(one));
  }
  in.lowest = volts(9.0);
  return in;
}

/// Slope by sorting all pairs, days.
double brute_slope(std::size_t from, std::size_t to) {
  std::vector<double> slopes;
  const auto day = [](std::size_t i) { return *quantity::parse_date(k_battery[i].day); };
  for (std::size_t i = from; i < to; ++i)
    for (std::size_t j = i + 1; j < to; ++j)
      slopes.push_back((k_battery[j].volts - k_battery[i].volts) /
                       quantity::days_between(day(i), day(j)));
  std::ranges::sort(slopes);
  const auto n = slopes.size();
  return n % 2 == 1 ? slopes[n / 2] : (slopes[n / 2 - 1] + slopes[n / 2]) / 2;
}

TEST(ReadingTrend, ThreeYearsOfABatteryOneDriftOneStepAndNothingElse) {
  const auto told = reading_trend(battery(true), context());
  ASSERT_TRUE(told);
  ASSERT_EQ(told->parts.size(), 2U);
  EXPECT_TRUE(told->parts[0].drifts);
  EXPECT_FALSE(told->parts[1].drifts);
  check({k_calc, "battery, drift of the old one", "brute force over all pairs", "V a year",
         brute_slope(0, 9) * 365.25, told->parts[0].drift->si, 0.005, "two digits are printed"});
  ASSERT_EQ(told->steps.size(), 1U) << "one true step, no false one";
  EXPECT_TRUE(told->steps[0].change_of_part);
  EXPECT_EQ(told->steps[0].at, "2025-11-22");
  EXPECT_GT(told->steps[0].by.si, 0.9);
  EXPECT_LT(told->steps[0].by.si, 1.1);
  EXPECT_FALSE(told->limit_met) << "the part that is fitted does not drift";
  ASSERT_EQ(told->lines.size(), 2U);
  EXPECT_NE(told->lines[0].find("step at the change of part"), std::string::npos);
  EXPECT_NE(told->lines[1].find("old drifts"), std::string::npos);
}

TEST(ReadingTrend, AStepThatNobodyWroteDownIsFoundAtItsPlace) {
  // Flat before and after: nothing but the step.
  auto in = battery(false);
  for (std::size_t i = 0; i < 9; ++i)
    in.readings[i].value = volts(9.60 + 0.01 * static_cast<double>((i * 7) % 5));
  const auto told = reading_trend(in, context());
  ASSERT_TRUE(told);
  const auto step =
      std::ranges::find_if(told->steps, [](const auto& s) { return !s.change_of_part; });
  EXPECT_FALSE(told->parts[0].drifts) << "a line through two levels is no drift";
  ASSERT_NE(step, told->steps.end());
  EXPECT_EQ(step->at, "2025-11-22");
  EXPECT_NE(step->words.find("without a change of part"), std::string::npos);
}

TEST(ReadingTrend, FewReadingsSaySo) {
  auto in = battery(true);
  in.readings.resize(4);
  const auto told = reading_trend(in, context());
  ASSERT_TRUE(told);
  EXPECT_NE(told->lines[0].find("too few to speak of a drift"), std::string::npos);
  EXPECT_TRUE(told->steps.empty());
}

TEST(ReadingTrend, WhatCannotBePutInOrderIsAskedFor) {
  auto in = battery(true);
  in.over = TrendOver::hours;
  auto told = reading_trend(in, context());
  ASSERT_FALSE(told);
  EXPECT_EQ(told.error()[0].path, "readings/0/hours");
  EXPECT_EQ(told.error().size(), k_battery.size()) << "every one at once";
  in = battery(true);
  in.readings[3].value = kohm(1);
  told = reading_trend(in, context());
  ASSERT_FALSE(told);
  EXPECT_EQ(told.error()[0].path, "readings/3/value");
  in = battery(true);
  in.highest = volts(8);
  EXPECT_FALSE(reading_trend(in, context()));
}

}  // namespace
}  // namespace wm::evidence
