#include "life/months.hpp"

namespace wm::life {

namespace ch = std::chrono;

quantity::Date add_months(quantity::Date from, int months, MonthRule rule) {
  const ch::year_month month = ch::year_month{from.year(), from.month()} + ch::months{months};
  const quantity::Date last{
      ch::year_month_day_last{month.year(), ch::month_day_last{month.month()}}};
  if (rule == MonthRule::end_of_month || from.day() > last.day()) return last;
  return {month.year(), month.month(), from.day()};
}

quantity::Date add_days(quantity::Date from, int days) {
  return quantity::Date{ch::sys_days{from} + ch::days{days}};
}

bool is_day(quantity::Date date) {
  return date.ok() && date.year() >= ch::year{1900} && date.year() <= ch::year{2200};
}

}  // namespace wm::life
