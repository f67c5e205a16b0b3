#include "quantity/date.hpp"

#include <fmt/core.h>

#include <array>
#include <cmath>
#include <cstdint>

#include "quantity/detail/fold.hpp"
#include "quantity/detail/number.hpp"

namespace wm::quantity {
namespace {

constexpr int k_first_year = 1900;
constexpr int k_last_year = 2200;

constexpr std::array<std::string_view, 12> k_months{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

/// A number of exactly `count` digits at `at`; -1 when it is not there.
int digits_at(std::string_view text, std::size_t at, std::size_t count) {
  if (at + count > text.size() || detail::count_digits(text.substr(at, count), 0) != count) {
    return -1;
  }
  int n = 0;
  for (const char c : text.substr(at, count)) n = n * 10 + (c - '0');
  return n;
}

bool char_at(std::string_view text, std::size_t at, std::string_view any_of) {
  return at < text.size() && any_of.find(text[at]) != std::string_view::npos;
}

Problem problem(Kind kind, std::string what, std::string_view expected, std::string_view example) {
  return {kind, {}, std::move(what), std::string(expected), std::string(example), {}, {}};
}

Result<Date> date_from(std::string_view ten, std::string_view quoted) {
  const int year = digits_at(ten, 0, 4);
  const int month = digits_at(ten, 5, 2);
  const int day = digits_at(ten, 8, 2);
  const bool shaped =
      ten.size() == 10 && year >= 0 && month >= 0 && day >= 0 && ten[4] == '-' && ten[7] == '-';
  constexpr std::string_view k_expected = "a date as year-month-day";
  constexpr std::string_view k_example = "2026-11-25";
  if (!shaped) {
    return Fail(
        problem(Kind::bad_text, fmt::format("`{}` is not a date", quoted), k_expected, k_example));
  }
  if (year < k_first_year || year > k_last_year) {
    return Fail(problem(
        Kind::out_of_bounds,
        fmt::format("`{}`: the year must be from {} to {}", quoted, k_first_year, k_last_year),
        k_expected, k_example));
  }
  if (month < 1 || month > 12) {
    return Fail(problem(Kind::out_of_bounds,
                        fmt::format("`{}`: there is no month {}; a year has 12", quoted, month),
                        k_expected, k_example));
  }
  const std::chrono::year y{year};
  const std::chrono::month m{static_cast<unsigned>(month)};
  const auto last = static_cast<unsigned>((y / m / std::chrono::last).day());
  if (day < 1 || static_cast<unsigned>(day) > last) {
    const std::string_view name = k_months[static_cast<std::size_t>(month - 1)];
    return Fail(
        problem(Kind::out_of_bounds,
                fmt::format("{} {} does not exist: {} {} has {} days", day, name, name, year, last),
                k_expected, k_example));
  }
  return Date{y, m, std::chrono::day{static_cast<unsigned>(day)}};
}

/// Seconds of the fraction ".123456", rounded to the millisecond, and how much text it took.
struct Tail {
  double seconds{};
  std::size_t used{};
};
Tail second_fraction(std::string_view text) {
  if (!char_at(text, 0, ".")) return {};
  const std::size_t count = detail::count_digits(text, 1);
  if (count == 0) return {};
  double thousandths = 0;
  double weight = 100;
  for (const char c : text.substr(1, count)) {
    thousandths += (c - '0') * weight;
    weight /= 10;
  }
  return {std::round(thousandths) / 1000, count + 1};
}

/// Minutes east of UTC from "Z", "+01:00", "-05:30"; nothing else may follow.
struct Offset {
  bool good{};
  int minutes{};
};
Offset zone_offset(std::string_view text) {
  if (text == "Z" || text == "z") return {true, 0};
  if (text.size() != 6 || !char_at(text, 0, "+-") || text[3] != ':') return {};
  const int h = digits_at(text, 1, 2);
  const int min = digits_at(text, 4, 2);
  if (h < 0 || h > 23 || min < 0 || min > 59) return {};
  return {true, (text[0] == '-' ? -1 : 1) * (h * 60 + min)};
}

}  // namespace

Result<Date> parse_date(std::string_view text) {
  const auto shown = detail::presentable(text);
  if (!shown) {
    Problem p = shown.error();
    p.expected = "a date as year-month-day";
    p.example = "2026-11-25";
    return Fail(std::move(p));
  }
  return date_from(*shown, *shown);
}

std::string print_date(Date date) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

int days_between(Date a, Date b) {
  return static_cast<int>((std::chrono::sys_days{b} - std::chrono::sys_days{a}).count());
}

Result<double> parse_instant(std::string_view text) {
  constexpr std::string_view k_expected = "a time stamp with Z or an offset from UTC";
  constexpr std::string_view k_example = "2026-11-25T09:12:00Z";
  const auto shown = detail::presentable(text);
  if (!shown) {
    Problem p = shown.error();
    p.expected = k_expected;
    p.example = k_example;
    return Fail(std::move(p));
  }
  const std::string_view t = *shown;
  const auto refuse = [&](Kind kind, std::string_view why) {
    return Fail(problem(kind, fmt::format("`{}`{}", t, why), k_expected, k_example));
  };
  const bool shaped = t.size() >= 20 && char_at(t, 10, "Tt") && t[13] == ':' && t[16] == ':';
  const int h = digits_at(t, 11, 2);
  const int min = digits_at(t, 14, 2);
  const int s = digits_at(t, 17, 2);
  if (!shaped || h < 0 || min < 0 || s < 0) return refuse(Kind::bad_text, " is not a time stamp");
  const auto date = date_from(t.substr(0, 10), t);
  if (!date) {
    Problem p = date.error();
    p.expected = k_expected;
    p.example = k_example;
    return Fail(std::move(p));
  }
  if (h > 23 || min > 59 || s > 60) {
    return refuse(Kind::out_of_bounds, ": the time of day must be from 00:00:00 to 23:59:59");
  }
  const Tail fraction = second_fraction(t.substr(19));
  const Offset zone = zone_offset(t.substr(19 + fraction.used));
  if (!zone.good) return refuse(Kind::bad_text, " must end in Z or an offset such as +01:00");
  const std::int64_t days = std::chrono::sys_days{*date}.time_since_epoch().count();
  const std::int64_t of_day = std::int64_t{h} * 60 + min;
  const std::int64_t minutes = days * 1440 + of_day - zone.minutes;
  // A leap second can only be the last of a UTC day (RFC 3339, 5.7).
  if (s == 60 && ((minutes % 1440) + 1440) % 1440 != 1439) {
    return refuse(Kind::out_of_bounds, ": there is no second 60 in this minute");
  }
  return static_cast<double>(minutes * 60 + s) + fraction.seconds;
}

std::string print_instant(double seconds_since_1970) {
  const auto ms = static_cast<std::int64_t>(std::llround(seconds_since_1970 * 1000));
  constexpr std::int64_t k_day = 86'400'000;
  const std::int64_t day = ms >= 0 ? ms / k_day : (ms - k_day + 1) / k_day;
  const std::int64_t rest = ms - day * k_day;
  const Date date{std::chrono::sys_days{std::chrono::days{day}}};
  const std::int64_t thousandths = rest % 1000;
  const std::string fraction = thousandths == 0 ? "" : fmt::format(".{:03}", thousandths);
  return fmt::format("{}T{:02}:{:02}:{:02}{}Z", print_date(date), rest / 3'600'000,
                     rest / 60'000 % 60, rest / 1000 % 60, fraction);
}

}  // namespace wm::quantity
