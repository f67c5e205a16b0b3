#include "service/detail/media.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace wm::service::detail {
namespace {

constexpr std::string_view k_unknown = "application/octet-stream";

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

bool is_type_character(char c) {
  return is_letter_or_digit(c) || std::string_view("!#$&-^_.+").find(c) != std::string_view::npos;
}

bool is_type_word(std::string_view word) {
  return !word.empty() && word.size() <= 64 &&
         std::all_of(word.begin(), word.end(), is_type_character);
}

}  // namespace

std::string clean_type(std::string_view type) {
  const auto slash = type.find('/');
  if (slash == std::string_view::npos || !is_type_word(type.substr(0, slash)) ||
      !is_type_word(type.substr(slash + 1)))
    return std::string(k_unknown);
  std::string out(type);
  for (auto& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

bool may_be_shown(std::string_view type) {
  if (type.starts_with("image/")) return type.find("svg") == std::string_view::npos;
  return type.starts_with("audio/") || type == "application/pdf";
}

std::string type_by_content(std::string_view content) {
  if (content.starts_with("\x89PNG\r\n\x1a\n")) return "image/png";
  if (content.starts_with("\xFF\xD8\xFF")) return "image/jpeg";
  if (content.starts_with("GIF87a") || content.starts_with("GIF89a")) return "image/gif";
  if (content.starts_with("RIFF") && content.substr(0, 12).ends_with("WEBP")) return "image/webp";
  if (content.starts_with("%PDF-")) return "application/pdf";
  return std::string(k_unknown);
}

Media media_of(const bay::State& state, std::string_view hash, std::string_view content) {
  Media out;
  const auto found = std::find_if(state.attachments.rbegin(), state.attachments.rend(),
                                  [&](const auto& a) { return a.about.hash == hash; });
  if (found != state.attachments.rend()) {
    out.type = clean_type(found->about.media_type);
    out.name = found->about.name;
  } else {
    out.type = type_by_content(content);
  }
  out.shown = may_be_shown(out.type);
  return out;
}

std::string disposition(bool shown, std::string_view name) {
  std::string out = shown ? "inline" : "attachment";
  if (name.empty()) return out;
  std::string plain;
  std::string encoded;
  for (const char c : name) {
    const bool simple = is_letter_or_digit(c) || c == '.' || c == '-' || c == '_';
    plain += simple || c == ' ' ? c : '_';
    if (simple) {
      encoded += c;
    } else {
      encoded += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
  }
  return fmt::format("{}; filename=\"{}\"; filename*=UTF-8''{}", out, plain, encoded);
}

}  // namespace wm::service::detail
