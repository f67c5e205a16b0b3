#include "quantity/detail/fold.hpp"

#include <fmt/core.h>

#include <array>
#include <cstdint>

namespace wm::quantity::detail {
namespace {

struct Sign {
  std::string_view typed;
  std::string_view plain;
};

constexpr std::array k_signs{
    Sign{"\u00a0", " "},    Sign{"\u2009", " "},    Sign{"\u202f", " "},    Sign{"\u2007", " "},
    Sign{"\u00b5", "u"},    Sign{"\u03bc", "u"},    Sign{"\u03a9", "ohm"},  Sign{"\u2126", "ohm"},
    Sign{"\u00b0", "deg"},  Sign{"\u00ba", "deg"},  Sign{"\u2103", "degC"}, Sign{"\u2109", "degF"},
    Sign{"\u00b1", "+-"},   Sign{"\u2212", "-"},    Sign{"\u2010", "-"},    Sign{"\u2011", "-"},
    Sign{"\u2013", "-"},    Sign{"\u00b7", "*"},    Sign{"\u22c5", "*"},    Sign{"\u00d7", "*"},
    Sign{"\u2032", "'"},    Sign{"\u2019", "'"},    Sign{"\u2033", "\""},   Sign{"\u201d", "\""},
    Sign{"\u201c", "\""},   Sign{"\u00b2", "2"},    Sign{"\u00b3", "3"},    Sign{"\u2044", "/"},
    Sign{"\u2215", "/"},    Sign{"\u2082", "2"},    Sign{"\u00bd", " 1/2"}, Sign{"\u00bc", " 1/4"},
    Sign{"\u00be", " 3/4"}, Sign{"\u215b", " 1/8"}, Sign{"\u215c", " 3/8"}, Sign{"\u215d", " 5/8"},
    Sign{"\u215e", " 7/8"},
};

/// Length of the well-formed UTF-8 sequence at the front, 0 when it is not one.
/// @source Unicode Standard, table 3-7 (well-formed UTF-8 byte sequences); from memory.
std::size_t sequence_length(std::string_view s) {
  const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(s[i]); };
  const auto follows = [&](std::size_t i, unsigned low = 0x80, unsigned high = 0xBF) {
    return i < s.size() && byte(i) >= low && byte(i) <= high;
  };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
    const unsigned high = first == 0xED ? 0x9F : 0xBF;
    return follows(1, low, high) && follows(2) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const unsigned low = first == 0xF0 ? 0x90 : 0x80;
    const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
    return follows(1, low, high) && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

bool is_control(std::string_view sequence) {
  const auto first = static_cast<std::uint8_t>(sequence[0]);
  if (sequence.size() == 1) return first < 0x20 || first == 0x7F;
  return sequence.size() == 2 && first == 0xC2 && static_cast<std::uint8_t>(sequence[1]) < 0xA0;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at)) {
    text.replace(at, from.size(), to);
    at += to.size();
  }
}

/// "gal/hour" and "gal/hr" as "gal/h": the table then lists one form only.
std::string with_short_time(std::string unit) {
  struct Ending {
    std::string_view typed;
    std::string_view plain;
  };
  static constexpr std::array k_endings{
      Ending{"/hour", "/h"},   Ending{"/hr", "/h"},    Ending{"/minute", "/min"},
      Ending{"/second", "/s"}, Ending{"/sec", "/s"},   Ending{"/foot", "/ft"},
      Ending{"/inch", "/in"},  Ending{"/metre", "/m"}, Ending{"/meter", "/m"}};
  for (const Ending& e : k_endings) {
    if (!unit.ends_with(e.typed)) continue;
    unit.replace(unit.size() - e.typed.size(), e.typed.size(), e.plain);
    break;
  }
  return unit;
}

}  // namespace

std::string_view trim(std::string_view text) {
  constexpr std::string_view k_blanks = " \t\r\n";
  const std::size_t first = text.find_first_not_of(k_blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(k_blanks) - first + 1);
}

Result<std::string_view> presentable(std::string_view text) {
  const std::string_view all = trim(text);
  if (all.empty()) return Fail(Kind::bad_text, "there is nothing here");
  std::size_t signs = 0;
  for (std::string_view rest = all; !rest.empty(); ++signs) {
    const std::size_t length = sequence_length(rest);
    if (length == 0) return Fail(Kind::bad_text, "this text is not UTF-8");
    if (is_control(rest.substr(0, length))) {
      return Fail(Kind::bad_text, "this text has a control character in it");
    }
    if (signs == k_longest_text) {
      return Fail(Kind::bad_text,
                  fmt::format("this text is longer than {} characters", k_longest_text));
    }
    rest.remove_prefix(length);
  }
  return all;
}

std::string fold(std::string_view text) {
  std::string out;
  out.reserve(text.size() + 8);
  while (!text.empty()) {
    const auto first = static_cast<std::uint8_t>(text[0]);
    std::string_view plain;
    std::size_t used = 1;
    if (first >= 0x80) {
      for (const Sign& sign : k_signs) {
        if (!text.starts_with(sign.typed)) continue;
        plain = sign.plain;
        used = sign.typed.size();
        break;
      }
    }
    out += plain.empty() ? text.substr(0, 1) : plain;
    text.remove_prefix(used);
  }
  return out;
}

std::string fold_unit(std::string_view folded) {
  std::string spaced(trim(folded));
  replace_all(spaced, " per ", "/");
  std::string out;
  for (std::size_t i = 0; i < spaced.size(); ++i) {
    char c = spaced[i];
    if (c == '^') continue;  // in^2
    if (c == '.') {
      // "in." is an abbreviation, "N.m" a product.
      const bool product =
          i > 0 && i + 1 < spaced.size() && is_letter(spaced[i - 1]) && is_letter(spaced[i + 1]);
      if (!product) continue;
    }
    if (c == ' ' || c == '*' || c == '.') c = '-';
    const bool after_join = !out.empty() && (out.back() == '-' || out.back() == '/');
    if (c == '-' && (after_join || out.empty())) continue;
    if (c == '/' && !out.empty() && out.back() == '-') out.pop_back();
    out += c;
  }
  return with_short_time(std::move(out));
}

}  // namespace wm::quantity::detail
