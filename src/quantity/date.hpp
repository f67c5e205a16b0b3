#pragma once
/// Calendar days as text: ISO 8601 dates only ("2026-11-25").

#include <chrono>
#include <string>
#include <string_view>

#include "outcome/result.hpp"

namespace wm::quantity {

using Date = std::chrono::year_month_day;

/// @return bad_text for anything but YYYY-MM-DD, out_of_bounds for a day that does not exist
///         ("30 February does not exist: February 2026 has 28 days") or a year outside 1900-2200.
[[nodiscard]] Result<Date> parse_date(std::string_view text);
[[nodiscard]] std::string print_date(Date date);
/// Days from a to b, negative when b is earlier.
[[nodiscard]] int days_between(Date a, Date b);

/// Seconds since 1970-01-01T00:00:00Z of an RFC 3339 time stamp ("2026-11-25T09:12:00Z" or
/// with an offset), to the millisecond.
[[nodiscard]] Result<double> parse_instant(std::string_view text);
/// The same in UTC, "2026-11-25T09:12:00Z", with milliseconds only where there are any.
/// @pre a year that parse_date takes.
[[nodiscard]] std::string print_instant(double seconds_since_1970);

}  // namespace wm::quantity
