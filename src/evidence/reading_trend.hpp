#pragma once
/// "reading-trend": one reading over hours or calendar. What drifts, what jumped at a change of
/// part, what jumped for no reason on record, and when a drift would meet its limit.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::evidence {

enum class TrendOver : std::uint8_t {
  hours_if_known,  ///< hours where every reading has them, else the calendar
  hours,
  calendar
};

struct TrendReading {
  std::optional<quantity::Date> day;
  std::optional<quantity::Entered<quantity::Duration>> hours;
  describe::AnyQuantity value;
  std::string part;  ///< that was fitted when it was read
};

struct ReadingTrendInput {
  std::vector<TrendReading> readings;
  TrendOver over{TrendOver::hours_if_known};
  std::optional<describe::AnyQuantity> lowest, highest;
  std::string limit_source;
  quantity::Fraction confidence{0.95};
};

/// The readings of one part.
struct PartTrend {
  std::string part;
  std::int64_t readings{};
  std::string from, to;
  describe::AnyQuantity middle;
  bool drifts{};
  std::optional<describe::AnyQuantity> drift, drift_low, drift_high;  ///< for `per`
  std::string per;                                                    ///< "100 h", "a year"
  std::optional<double> p;
  std::string words;
};

struct StepFound {
  std::string at;
  bool change_of_part{};
  describe::AnyQuantity by, by_low, by_high;
  double p{};
  std::string words;
};

/// When the drift of the last part meets a limit.
struct LimitMet {
  std::string limit;
  std::string when, earliest, latest;  ///< latest empty: perhaps never
  double ahead{};  ///< of the last reading, earliest: hours or days, as the trend counts
  std::string words;
};

/// Both ends of the line through the readings of the last part, for the plot.
struct TrendLine {
  double from_at{}, to_at{};  ///< hours, or days since the first reading
  double from_value{}, to_value{};
};

struct ReadingTrendAnswer {
  std::vector<std::string> lines;  ///< in words, most important first
  std::vector<PartTrend> parts;
  std::vector<StepFound> steps;  ///< that show; others are in the working
  std::optional<LimitMet> limit_met;
  std::string over;  ///< "hours" or "calendar"
  std::optional<TrendLine> line;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Each part by itself: Theil and Sen's slope, Mann and Kendall's test (5 readings at least; a
/// drift shows where p <= 0.05). Between two parts: Hodges and Lehmann's shift with the rank-sum
/// test, each side carried to the change along its own drift where that shows. Inside one part,
/// around its own slope: the largest jump of ranks, p by shuffling (8 readings at least; shows
/// where p <= 0.01). The crossing takes the slope and both ends of its interval.
///
/// @return missing (readings, a day, hours), wrong_dimension (a reading or limit of another kind),
///         conflict (limits the wrong way round)
/// @source Sen (1968), Mann (1945), Hodges and Lehmann (1963), Pettitt (1979), from memory; checked
///         against R 4.2.2 and scipy
[[nodiscard]] Checked<ReadingTrendAnswer> reading_trend(const ReadingTrendInput& in,
                                                        const describe::Context& context);

std::string_view describe(describe::Choices<TrendOver>& c);
std::string_view describe(describe::Fields<TrendReading>& f);
std::string_view describe(describe::Fields<ReadingTrendInput>& f);
std::string_view describe(describe::Fields<PartTrend>& f);
std::string_view describe(describe::Fields<StepFound>& f);
std::string_view describe(describe::Fields<LimitMet>& f);
std::string_view describe(describe::Fields<TrendLine>& f);
std::string_view describe(describe::Fields<ReadingTrendAnswer>& f);

}  // namespace wm::evidence
