#include "hose/date_code.hpp"

#include <fmt/core.h>

#include <optional>

#include "hose/detail/problem.hpp"

namespace wm::hose {
namespace {

using quantity::Date;
using std::chrono::day;
using std::chrono::month;
using std::chrono::months;
using std::chrono::year;

constexpr int k_first_year = 1900;
constexpr int k_last_year = 2200;
constexpr int k_century_turns = 50;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

Date last_of_month(year y, month m) { return Date{y / m / std::chrono::last}; }

bool is_last_of_month(Date d) { return d == last_of_month(d.year(), d.month()); }

Problem unreadable(std::string_view text) {
  return detail::problem(
      "", Kind::bad_text,
      fmt::format("\"{}\" is no date as it stands on a hose", text.substr(0, 40)),
      "quarter and year (2Q2018, A2Q80 for assembled) or a day (2018-05-14)", "2Q2018");
}

/// 80 or 1980, nothing else.
std::optional<int> year_of(std::string_view digits) {
  if (digits.size() != 2 && digits.size() != 4) return std::nullopt;
  int value = 0;
  for (const char c : digits) {
    if (!is_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  if (digits.size() == 4) return value;
  return value + (value >= k_century_turns ? 1900 : 2000);
}

}  // namespace

Result<DatedSpan> read_date_code(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  if (text.find('-') != std::string_view::npos) {
    const auto date = quantity::parse_date(text);
    if (!date) return Fail(date.error());
    return DatedSpan{*date, *date, false, std::string(text)};
  }
  DatedSpan span;
  span.text = std::string(text);
  std::string_view rest = text;
  if (!rest.empty() && (rest.front() == 'A' || rest.front() == 'a')) {
    span.assembled = true;
    rest.remove_prefix(1);
  }
  if (rest.size() < 3 || !is_digit(rest[0]) || (rest[1] != 'Q' && rest[1] != 'q')) {
    return Fail(unreadable(text));
  }
  const int quarter = rest[0] - '0';
  const auto y = year_of(rest.substr(2));
  if (!y) return Fail(unreadable(text));
  if (quarter < 1 || quarter > 4 || *y < k_first_year || *y > k_last_year) {
    return Fail(detail::problem(
        "", Kind::out_of_bounds,
        fmt::format("\"{}\": there is no such quarter", text.substr(0, 40)),
        fmt::format("1Q to 4Q of a year from {} to {}", k_first_year, k_last_year), "2Q2018"));
  }
  const auto last_month = month{static_cast<unsigned>(quarter) * 3U};
  span.first = Date{year{*y}, last_month - months{2}, day{1}};
  span.last = last_of_month(year{*y}, last_month);
  return span;
}

std::string quarter_name(Date date) {
  return fmt::format("{}Q{}", (static_cast<unsigned>(date.month()) + 2U) / 3U,
                     static_cast<int>(date.year()));
}

Date end_of_quarter(Date date) {
  const unsigned quarter = (static_cast<unsigned>(date.month()) + 2U) / 3U;
  return last_of_month(date.year(), month{quarter * 3U});
}

Date add_months(Date from, int count) {
  const auto to = from.year() / from.month() + months{count};
  const Date last = last_of_month(to.year(), to.month());
  if (is_last_of_month(from) || from.day() > last.day()) return last;
  return Date{to.year(), to.month(), from.day()};
}

Date add_quarters(Date from, int quarters) { return add_months(from, 3 * quarters); }

int quarters_between(Date from, Date to) {
  const int whole_months = 12 * (static_cast<int>(to.year()) - static_cast<int>(from.year())) +
                           static_cast<int>(static_cast<unsigned>(to.month())) -
                           static_cast<int>(static_cast<unsigned>(from.month()));
  int quarters = whole_months / 3;
  while (quarters > 0 && add_quarters(from, quarters) > to) --quarters;
  return quarters;
}

}  // namespace wm::hose
