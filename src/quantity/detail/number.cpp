#include "quantity/detail/number.hpp"

#include <fast_float/fast_float.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "quantity/detail/fold.hpp"
#include "quantity/text.hpp"

namespace wm::quantity::detail {
namespace {

/// Powers of ten beyond this measure nothing in an engine bay (or anywhere).
constexpr int k_largest_exponent = 30;
constexpr std::size_t k_most_fraction_digits = 4;

bool starts_with_word(std::string_view text, std::string_view word) {
  if (text.size() < word.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i) {
    if ((text[i] | 0x20) != word[i]) return false;
  }
  return true;
}

/// "3/8" at the front; used = 0 when there is none. The numerator may exceed the denominator.
struct Fraction {
  int over{};
  int under{};
  std::size_t used{};
};
Fraction scan_fraction(std::string_view text) {
  const std::size_t over = count_digits(text, 0);
  if (over == 0 || over > k_most_fraction_digits) return {};
  if (over >= text.size() || text[over] != '/') return {};
  const std::size_t under = count_digits(text, over + 1);
  if (under == 0 || under > k_most_fraction_digits) return {};
  const auto number = [&](std::size_t from, std::size_t count) {
    int n = 0;
    for (std::size_t i = from; i < from + count; ++i) n = n * 10 + (text[i] - '0');
    return n;
  };
  return {number(0, over), number(over + 1, under), over + 1 + under};
}

/// The fraction of a mixed number: " 3/8" or "-3/8" after the whole part.
Fraction scan_mixed(std::string_view text, std::size_t from) {
  std::size_t at = from;
  if (at < text.size() && text[at] == '-') {
    ++at;
  } else {
    while (at < text.size() && text[at] == ' ') ++at;
  }
  if (at == from) return {};
  Fraction f = scan_fraction(text.substr(at));
  if (f.used != 0) f.used += at;
  return f;
}

Result<Number> from_fraction(double whole, const Fraction& f, bool mixed, std::string_view quoted) {
  if (f.under == 0) {
    return Fail(Kind::bad_text, fmt::format("`{}` divides by zero", quoted));
  }
  if (mixed && f.over >= f.under) {
    return Fail(Kind::bad_text,
                fmt::format("`{}`: {}/{} beside a whole number must be less than one", quoted,
                            f.over, f.under));
  }
  return Number{whole + static_cast<double>(f.over) / f.under, 1.0 / f.under, false, f.used};
}

struct Span {
  std::size_t end{};
  int decimals{};
  int exponent{};
  bool whole{};
};
/// Extent of a decimal number; end = 0 when there is none.
Span decimal_span(std::string_view text) {
  const std::size_t before = count_digits(text, 0);
  Span span{before, 0, 0, true};
  std::size_t after = 0;
  if (before < text.size() && text[before] == '.') {
    after = count_digits(text, before + 1);
    // "38. in" has a point for a full stop; leave it to the unit only when digits stand before.
    if (after != 0 || before != 0) span.end = before + 1 + after;
    span.whole = false;
  }
  if (before + after == 0) return {};
  span.decimals = static_cast<int>(after);
  if (span.end < text.size() && (text[span.end] | 0x20) == 'e') {
    std::size_t at = span.end + 1;
    const bool minus = at < text.size() && text[at] == '-';
    if (at < text.size() && (text[at] == '-' || text[at] == '+')) ++at;
    const std::size_t digits = count_digits(text, at);
    if (digits != 0) {
      for (std::size_t i = at; i < at + digits; ++i) {
        span.exponent = std::min(span.exponent * 10 + (text[i] - '0'), 10000);
      }
      if (minus) span.exponent = -span.exponent;
      span.end = at + digits;
      span.whole = false;
    }
  }
  return span;
}

}  // namespace

std::size_t count_digits(std::string_view text, std::size_t from) {
  std::size_t n = 0;
  while (from + n < text.size() && is_digit(text[from + n])) ++n;
  return n;
}

Result<Number> scan_number(std::string_view text, std::string_view quoted) {
  if (starts_with_word(text, "nan") || starts_with_word(text, "inf")) {
    return Fail(Kind::bad_text, fmt::format("`{}` is not a number that can be measured", quoted));
  }
  if (const Fraction f = scan_fraction(text); f.used != 0) {
    return from_fraction(0.0, f, false, quoted);
  }
  const Span span = decimal_span(text);
  if (span.end == 0) {
    return Fail(Kind::bad_text, fmt::format("`{}` does not start with a number", quoted));
  }
  double value = 0;
  const auto read = fast_float::from_chars(text.data(), text.data() + span.end, value);
  // "5." ends in a point that the library may leave.
  const bool all = read.ptr == text.data() + span.end ||
                   (read.ptr + 1 == text.data() + span.end && *read.ptr == '.');
  if (read.ec != std::errc() || !all) {
    return Fail(Kind::bad_text, fmt::format("`{}` does not start with a number", quoted));
  }
  if (!std::isfinite(value) || std::abs(span.exponent) > k_largest_exponent) {
    return Fail(Kind::out_of_bounds,
                fmt::format("`{}` is beyond any measured number (powers of ten go to {})", quoted,
                            k_largest_exponent));
  }
  if (span.whole) {
    const Fraction f = scan_mixed(text, span.end);
    if (f.used != 0) return from_fraction(value, f, true, quoted);
  }
  const double resolution = std::pow(10.0, std::min(0, span.exponent - span.decimals));
  return Number{value, resolution, span.whole, span.end};
}

namespace {

/// Digit, separator, exactly three digits: a thousands separator, most likely.
bool thousands_at(std::string_view text, std::size_t at) {
  return at > 0 && is_digit(text[at - 1]) && count_digits(text, at + 1) == 3;
}

/// The digits, points and `sep` around position `at`: "1,200.5" out of "about 1,200.5 mm".
std::string_view token_around(std::string_view text, std::size_t at, char sep) {
  const auto part = [&](char c) { return is_digit(c) || c == sep || c == '.'; };
  std::size_t from = at;
  while (from > 0 && part(text[from - 1])) --from;
  std::size_t to = at;
  while (to < text.size() && part(text[to])) ++to;
  return text.substr(from, to - from);
}

std::string with(std::string_view token, char sep, std::string_view by) {
  std::string out;
  for (const char c : token) {
    if (c == sep) {
      out += by;
    } else {
      out += c;
    }
  }
  return out;
}

/// "1,200" or "1,200,000.5": every comma stands before three digits and before the point.
bool all_thousands(std::string_view token) {
  const std::size_t point = token.find('.');
  for (std::size_t at = token.find(','); at != std::string_view::npos;
       at = token.find(',', at + 1)) {
    if (!thousands_at(token, at) || point < at) return false;
  }
  return true;
}

Problem comma_problem(std::string_view folded, std::size_t at, std::string_view quoted) {
  Problem p{Kind::bad_text, {}, {}, "a decimal point, and no thousands separator", {}, {}, {}};
  const std::string_view typed = token_around(folded, at, ',');
  const std::size_t comma = typed.find(',');
  const bool alone = typed.find_first_of(",.", comma + 1) == std::string_view::npos &&
                     typed.find('.') == std::string_view::npos;
  const bool between_digits =
      comma > 0 && is_digit(typed[comma - 1]) && count_digits(typed, comma + 1) != 0;
  if (alone && between_digits && thousands_at(typed, comma)) {
    p.what = fmt::format("`{}` has a comma: write {} if a decimal is meant, {} if thousands are",
                         quoted, with(typed, ',', "."), with(typed, ',', ""));
  } else if (alone && between_digits) {
    p.what =
        fmt::format("`{}` has a comma: write {}, not {}", quoted, with(typed, ',', "."), typed);
  } else if (all_thousands(typed)) {
    p.what = fmt::format("`{}` has a thousands separator: write {}, not {}", quoted,
                         with(typed, ',', ""), typed);
  } else {
    p.what = fmt::format("`{}` has a comma that does not belong there", quoted);
  }
  return p;
}

}  // namespace

Problem separator_problem(std::string_view folded, std::string_view quoted) {
  if (const std::size_t comma = folded.find(','); comma != std::string_view::npos) {
    return comma_problem(folded, comma, quoted);
  }
  for (const char mark : {'_', '\''}) {
    const std::size_t at = folded.find(mark);
    if (at == std::string_view::npos || !thousands_at(folded, at)) continue;
    return {Kind::bad_text,
            {},
            fmt::format("`{}` has a thousands separator: write {}", quoted,
                        with(token_around(folded, at, mark), mark, "")),
            "digits without a separator",
            {},
            {},
            {}};
  }
  return {};
}

}  // namespace wm::quantity::detail

namespace wm::quantity {

Result<double> parse_number(std::string_view text) {
  const auto shown = detail::presentable(text);
  if (!shown) return Fail(shown.error());
  const std::string_view quoted = *shown;
  const auto expected = [&](Problem p) {
    if (p.expected.empty()) p.expected = "a decimal number";
    p.example = "3.5";
    return p;
  };
  const std::string folded = detail::fold(quoted);
  if (Problem p = detail::separator_problem(folded, quoted); !p.what.empty()) {
    return Fail(expected(p));
  }
  std::string_view rest = folded;
  const bool minus = rest.front() == '-';
  if (minus || rest.front() == '+') rest.remove_prefix(1);
  double value = 0;
  // fast_float alone would take a second sign and the words for infinity.
  const bool starts = !rest.empty() && (detail::is_digit(rest[0]) || rest[0] == '.');
  if (!starts) {
    return Fail(expected(
        {Kind::bad_text, {}, fmt::format("`{}` is not a number", quoted), {}, {}, {}, {}}));
  }
  const auto read = fast_float::from_chars(rest.data(), rest.data() + rest.size(), value);
  // Whichever way the library says it: too large is infinite, too small is nought.
  const bool vanished =
      value == 0 &&
      rest.substr(0, rest.find_first_of("eE")).find_first_of("123456789") != std::string_view::npos;
  if (read.ec == std::errc::result_out_of_range || !std::isfinite(value) || vanished) {
    return Fail(expected({Kind::out_of_bounds,
                          {},
                          fmt::format("`{}` is too large or too small a number", quoted),
                          {},
                          {},
                          {},
                          {}}));
  }
  if (read.ec != std::errc() || read.ptr != rest.data() + rest.size()) {
    return Fail(expected(
        {Kind::bad_text, {}, fmt::format("`{}` is not a number", quoted), {}, {}, {}, {}}));
  }
  return minus ? -value : value;
}

}  // namespace wm::quantity
