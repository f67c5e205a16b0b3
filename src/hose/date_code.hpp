#pragma once
/// Dates as they stand on hoses and tags: 2Q2018, A2Q80, or a day.

#include <string>
#include <string_view>

#include "outcome/result.hpp"
#include "quantity/date.hpp"

namespace wm::hose {

/// From the first to the last day that a date code may mean.
struct DatedSpan {
  quantity::Date first{};
  quantity::Date last{};
  bool assembled{};  ///< the code begins with A
  std::string text;  ///< as typed
};

/// Read "2Q2018", "2Q80", "A2Q80" (assembled in that quarter) or "2018-05-14".
///
/// Jan-Mar is 1Q, Oct-Dec 4Q. A year of two digits: 50 to 99 is 1950 to 1999, 00 to 49 is 2000 to
/// 2049 (common practice, no source).
///
/// @return bad_text, out_of_bounds (a fifth quarter; a year outside 1900-2200)
/// @source NAVEDTRA 14018 pp. 5-3, 5-10: A2Q80 = assembled 2nd quarter 1980
[[nodiscard]] Result<DatedSpan> read_date_code(std::string_view text);

/// "2Q2018".
[[nodiscard]] std::string quarter_name(quantity::Date date);
/// Last day of the quarter that the day lies in.
[[nodiscard]] quantity::Date end_of_quarter(quantity::Date date);
/// So many months later: the last day of a month stays the last day of a month, any
/// other day stays the same day, or the month's last where it is missing.
[[nodiscard]] quantity::Date add_months(quantity::Date from, int count);
[[nodiscard]] quantity::Date add_quarters(quantity::Date from, int quarters);

/// Whole quarters of a year from one day to a later one.
[[nodiscard]] int quarters_between(quantity::Date from, quantity::Date to);

}  // namespace wm::hose
