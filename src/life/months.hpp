#pragma once
/// Calendar arithmetic for limits: months by the two rules that documents use, and days.

#include "quantity/date.hpp"

namespace wm::life {

/// How a limit counts months. Which one holds stands in the limit's own document; it is
/// never assumed.
enum class MonthRule {
  end_of_month,  ///< "calendar months": valid through the last day of the month it falls in
  anniversary    ///< "months": the same day of the month, or the month's last where it is missing
};

/// The last day that is still within the limit.
///
/// @param from    When it was done (or made, or fitted).
/// @param months  0 or more.
/// @source        Calendar months: FAA wording as quoted in the trade (secondary); anniversary:
///                from memory, unconfirmed. Cases D1 to D12 of the project's reference notes.
[[nodiscard]] quantity::Date add_months(quantity::Date from, int months, MonthRule rule);

[[nodiscard]] quantity::Date add_days(quantity::Date from, int days);

/// A real day between the years 1900 and 2200; an unset date is none.
[[nodiscard]] bool is_day(quantity::Date date);

}  // namespace wm::life
