// The words of "reading-trend".
#include "evidence/reading_trend.hpp"

namespace wm::evidence {

std::string_view describe(describe::Choices<TrendOver>& c) {
  c.has(TrendOver::hours_if_known, "hours-if-known", "hours where every reading has them")
      .has(TrendOver::hours, "hours", "hours")
      .has(TrendOver::calendar, "calendar", "the calendar");
  return "trend-over";
}

std::string_view describe(describe::Fields<TrendReading>& f) {
  using R = TrendReading;
  f.has<&R::day>("day", "Day").example("2026-11-25");
  f.has<&R::hours>("hours", "Engine hours")
      .example("1040.5 h")
      .between(quantity::hours(0), quantity::hours(200000));
  f.has<&R::value>("value", "Reading").needed("5.2 kohm");
  f.has<&R::part>("part", "Part that was fitted").example("harness-1");
  return "trend-reading";
}

std::string_view describe(describe::Fields<ReadingTrendInput>& f) {
  using In = ReadingTrendInput;
  f.has<&In::readings>("readings", "Readings")
      .needed(
          R"([{"hours": "0 h", "value": "72 kohm"}, {"hours": "6.5 h", "value": "71 kohm"},
 {"hours": "11 h", "value": "71.5 kohm"}, {"hours": "18.2 h", "value": "70 kohm"},
 {"hours": "25 h", "value": "69 kohm"}, {"hours": "31.4 h", "value": "69.5 kohm"},
 {"hours": "40 h", "value": "67 kohm"}])")
      .at_least(1)
      .at_most(400);
  f.has<&In::over>("over", "Over");
  f.has<&In::lowest>("lowest", "Lowest allowed").example("65 kohm");
  f.has<&In::highest>("highest", "Highest allowed").example("80 kohm");
  f.has<&In::limit_source>("limit_source", "Where the limit is written")
      .example("data sheet of the maker");
  f.has<&In::confidence>("confidence", "Confidence of the intervals")
      .between(quantity::per_cent(50), quantity::per_cent(99.9));
  return "reading-trend-input";
}

std::string_view describe(describe::Fields<PartTrend>& f) {
  using P = PartTrend;
  f.has<&P::part>("part", "Part");
  f.has<&P::readings>("readings", "Readings");
  f.has<&P::from>("from", "From");
  f.has<&P::to>("to", "To");
  f.has<&P::middle>("middle", "Median");
  f.has<&P::drifts>("drifts", "It drifts");
  f.has<&P::drift>("drift", "Drift");
  f.has<&P::drift_low>("drift_low", "Drift, lowest");
  f.has<&P::drift_high>("drift_high", "Drift, highest");
  f.has<&P::per>("per", "In");
  f.has<&P::p>("p", "Chance of so much order by chance alone");
  f.has<&P::words>("words", "In words");
  return "part-trend";
}

std::string_view describe(describe::Fields<StepFound>& f) {
  using S = StepFound;
  f.has<&S::at>("at", "At");
  f.has<&S::change_of_part>("change_of_part", "A part was changed there");
  f.has<&S::by>("by", "By");
  f.has<&S::by_low>("by_low", "By, lowest");
  f.has<&S::by_high>("by_high", "By, highest");
  f.has<&S::p>("p", "Chance of so large a step by chance alone");
  f.has<&S::words>("words", "In words");
  return "step-found";
}

std::string_view describe(describe::Fields<LimitMet>& f) {
  using L = LimitMet;
  f.has<&L::limit>("limit", "Limit");
  f.has<&L::when>("when", "Met at");
  f.has<&L::earliest>("earliest", "At the earliest");
  f.has<&L::ahead>("ahead", "Ahead of the last reading at the earliest, in hours or days");
  f.has<&L::latest>("latest", "At the latest");
  f.has<&L::words>("words", "In words");
  return "limit-met";
}

std::string_view describe(describe::Fields<TrendLine>& f) {
  using L = TrendLine;
  f.has<&L::from_at>("from_at", "From");
  f.has<&L::to_at>("to_at", "To");
  f.has<&L::from_value>("from_value", "Value there");
  f.has<&L::to_value>("to_value", "Value at the end");
  return "trend-line";
}

std::string_view describe(describe::Fields<ReadingTrendAnswer>& f) {
  using A = ReadingTrendAnswer;
  f.has<&A::lines>("lines", "In words");
  f.has<&A::limit_met>("limit_met", "When the drift meets its limit");
  f.has<&A::steps>("steps", "Steps");
  f.has<&A::parts>("parts", "Part by part");
  f.has<&A::over>("over", "Over");
  f.has<&A::line>("line", "Line through the readings of the last part");
  f.has<&A::notes>("notes", "Besides");
  f.has<&A::working>("working", "The sum, step by step");
  return "reading-trend-answer";
}

}  // namespace wm::evidence
