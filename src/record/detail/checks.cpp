#include "record/detail/checks.hpp"

#include <algorithm>
#include <chrono>

#include <fmt/format.h>

namespace wm::record::detail {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool all_digits(std::string_view text) { return std::ranges::all_of(text, is_digit); }

/// Value of a short run of digits; the caller has looked that they are digits.
int number(std::string_view digits) {
  int value = 0;
  for (const char c : digits) value = 10 * value + (c - '0');
  return value;
}

/// "hh:mm" within the day.
bool is_hour_minute(std::string_view text) {
  return text.size() == 5 && all_digits(text.substr(0, 2)) && text[2] == ':' &&
         all_digits(text.substr(3, 2)) && number(text.substr(0, 2)) < 24 &&
         number(text.substr(3, 2)) < 60;
}

bool is_offset(std::string_view text) {
  if (text == "Z" || text == "z") return true;
  return !text.empty() && (text[0] == '+' || text[0] == '-') && is_hour_minute(text.substr(1));
}

bool is_id(std::string_view text) {
  return !text.empty() && text.size() <= 64 && std::ranges::all_of(text, [](char c) {
    return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == '-';
  });
}

bool has_control(std::string_view text) {
  return std::ranges::any_of(text, [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7f;
  });
}

/// Length of the UTF-8 sequence at the start of `text`; 0 when it is not one.
/// @source RFC 3629, section 4 (the table of well-formed sequences).
std::size_t sequence_length(std::string_view text) {
  const auto at = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  const auto tail = [&](std::size_t i) { return at(i) >= 0x80 && at(i) <= 0xbf; };
  const unsigned first = at(0);
  if (first < 0x80) return 1;
  if (first >= 0xc2 && first <= 0xdf) return tail(1) ? 2 : 0;
  if (first >= 0xe0 && first <= 0xef) {
    const unsigned low = first == 0xe0 ? 0xa0 : 0x80;
    const unsigned high = first == 0xed ? 0x9f : 0xbf;
    return at(1) >= low && at(1) <= high && tail(2) ? 3 : 0;
  }
  if (first >= 0xf0 && first <= 0xf4) {
    const unsigned low = first == 0xf0 ? 0x90 : 0x80;
    const unsigned high = first == 0xf4 ? 0x8f : 0xbf;
    return at(1) >= low && at(1) <= high && tail(2) && tail(3) ? 4 : 0;
  }
  return 0;
}

Problem wrong(Kind kind, const std::string& place, std::string_view field, std::string what,
              std::string expected, std::string example = {}) {
  return {kind,
          fmt::format("{}/{}", place, field),
          std::move(what),
          std::move(expected),
          std::move(example),
          {},
          {}};
}

std::optional<Problem> wrong_text(std::string_view text, std::size_t most, const std::string& place,
                                  std::string_view field) {
  if (text.size() > most) {
    return wrong(Kind::out_of_bounds, place, field,
                 fmt::format("{} bytes are too long", text.size()),
                 fmt::format("at most {} bytes", most));
  }
  if (!is_clean_text(text)) {
    return wrong(Kind::bad_text, place, field, "not readable text",
                 "UTF-8 text without NUL characters");
  }
  return std::nullopt;
}

std::optional<Problem> wrong_times(const NewEvent& event, const std::string& place) {
  if (!is_date(event.happened) && !is_instant(event.happened)) {
    return wrong(Kind::bad_text, place, "happened",
                 fmt::format("'{}' is not a day of the calendar or an instant", event.happened),
                 "a date, or an instant as in RFC 3339", "2026-11-25");
  }
  if (!is_instant(event.recorded) || event.recorded.back() != 'Z') {
    return wrong(Kind::bad_text, place, "recorded",
                 fmt::format("'{}' is not an instant in UTC", event.recorded),
                 "an instant as in RFC 3339 that ends in Z", "2026-11-25T18:04:31Z");
  }
  return std::nullopt;
}

std::optional<Problem> wrong_identity(const NewEvent& event, const std::string& place) {
  constexpr auto k_id_form = "1 to 64 of the characters A-Z a-z 0-9 _ -";
  if (!is_id(event.id)) {
    return wrong(event.id.empty() ? Kind::missing : Kind::bad_text, place, "id",
                 event.id.empty() ? "the event has no id" : "the id cannot be used", k_id_form,
                 "k7Jw2-0001");
  }
  if (event.kind.empty() || event.kind.size() > 64 || has_control(event.kind) ||
      !is_clean_text(event.kind)) {
    return wrong(event.kind.empty() ? Kind::missing : Kind::bad_text, place, "kind",
                 event.kind.empty() ? "the event has no kind" : "the kind cannot be used",
                 "1 to 64 bytes of text without control characters", "reading-taken");
  }
  if (event.version < 1) {
    return wrong(Kind::out_of_bounds, place, "version",
                 fmt::format("version {} does not exist", event.version), "1 or more", "1");
  }
  if (!event.refers_to.empty() && !is_id(event.refers_to)) {
    return wrong(Kind::bad_text, place, "refers_to", "not the id of an event", k_id_form);
  }
  return std::nullopt;
}

}  // namespace

bool is_clean_text(std::string_view text) {
  while (!text.empty()) {
    if (text[0] == '\0') return false;
    const std::size_t length = sequence_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

bool is_hash(std::string_view text) {
  return text.size() == 64 &&
         std::ranges::all_of(text, [](char c) { return is_digit(c) || (c >= 'a' && c <= 'f'); });
}

bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const auto year = text.substr(0, 4);
  const auto month = text.substr(5, 2);
  const auto day = text.substr(8, 2);
  if (!all_digits(year) || !all_digits(month) || !all_digits(day)) return false;
  return std::chrono::year_month_day(std::chrono::year(number(year)),
                                     std::chrono::month(static_cast<unsigned>(number(month))),
                                     std::chrono::day(static_cast<unsigned>(number(day))))
      .ok();
}

bool is_instant(std::string_view text) {
  if (text.size() < 20 || text.size() > 40 || !is_date(text.substr(0, 10))) return false;
  if (text[10] != 'T' || !is_hour_minute(text.substr(11, 5)) || text[16] != ':') return false;
  // RFC 3339 allows second 60 for a leap second.
  if (!all_digits(text.substr(17, 2)) || number(text.substr(17, 2)) > 60) return false;
  std::string_view rest = text.substr(19);
  if (rest[0] == '.') {
    rest.remove_prefix(1);
    const std::size_t digits = std::min(rest.find_first_not_of("0123456789"), rest.size());
    if (digits == 0) return false;
    rest.remove_prefix(digits);
  }
  return is_offset(rest);
}

std::optional<Problem> wrong_with(const NewEvent& event, const std::string& place) {
  if (auto problem = wrong_identity(event, place)) return problem;
  if (auto problem = wrong_times(event, place)) return problem;
  if (auto problem = wrong_text(event.author, 200, place, "author")) return problem;
  if (auto problem = wrong_text(event.device, 200, place, "device")) return problem;
  if (event.body.empty()) {
    return wrong(Kind::missing, place, "body", "the event has no body", "JSON text", "{}");
  }
  return wrong_text(event.body, static_cast<std::size_t>(k_body_limit), place, "body");
}

}  // namespace wm::record::detail
