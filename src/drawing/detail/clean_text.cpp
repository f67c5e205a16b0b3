#include "drawing/detail/clean_text.hpp"

#include <cstddef>
#include <cstdint>

namespace wm::drawing::detail {
namespace {

constexpr std::string_view k_replacement = "\xEF\xBF\xBD";

struct Decoded {
  char32_t code{};
  std::size_t length{1};
  bool good{};
};

bool continues(unsigned char byte) { return (byte & 0xC0U) == 0x80U; }

/// One character at the start of `text`, refusing overlong forms and surrogates.
Decoded decode(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return {first, 1, true};
  std::size_t length = 0;
  char32_t code = 0;
  char32_t least = 0;
  if ((first & 0xE0U) == 0xC0U) {
    length = 2, code = first & 0x1FU, least = 0x80;
  } else if ((first & 0xF0U) == 0xE0U) {
    length = 3, code = first & 0x0FU, least = 0x800;
  } else if ((first & 0xF8U) == 0xF0U) {
    length = 4, code = first & 0x07U, least = 0x10000;
  } else {
    return {};
  }
  for (std::size_t i = 1; i < length; ++i) {
    if (i >= text.size() || !continues(byte(i))) return {0, i, false};
    code = (code << 6U) | (byte(i) & 0x3FU);
  }
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  return {code, length, code >= least && code <= 0x10FFFF && !surrogate};
}

bool disguises(char32_t c) {
  return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0x200E || c == 0x200F;
}
bool has_no_shape(char32_t c) { return c == 0xAD || c == 0x200B || c == 0x2060 || c == 0xFEFF; }
bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }
bool is_noncharacter(char32_t c) {
  return (c & 0xFFFEU) == 0xFFFEU || (c >= 0xFDD0 && c <= 0xFDEF);
}

}  // namespace

std::string clean_text(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const Decoded d = decode(text);
    const std::string_view bytes = text.substr(0, d.length);
    text.remove_prefix(d.length);
    if (!d.good || is_noncharacter(d.code) || disguises(d.code)) {
      out += k_replacement;
    } else if (d.code == '\t' || d.code == '\r' || d.code == 0x2028 || d.code == 0x2029) {
      out += ' ';
    } else if (d.code == '\n') {
      out += '\n';
    } else if (is_control(d.code)) {
      out += k_replacement;
    } else if (!has_no_shape(d.code)) {
      out += bytes;
    }
  }
  return out;
}

std::string xml_text(std::string_view text) {
  std::string out;
  for (char c : clean_text(text)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

}  // namespace wm::drawing::detail
