#include "cli/arguments.hpp"

#include <array>
#include <cstdint>
#include <filesystem>

namespace wm::cli {
namespace {

/// How many bytes follow a first byte, and the range of the first of them.
struct Rest {
  std::size_t count{};
  std::uint8_t low{0x80}, high{0xBF};
  bool good{true};
};

Rest after(std::uint8_t first) {
  if (first < 0x80) return {0};
  if (first >= 0xC2 && first <= 0xDF) return {1};
  if (first == 0xE0) return {2, 0xA0, 0xBF};
  if (first == 0xED) return {2, 0x80, 0x9F};
  if (first >= 0xE1 && first <= 0xEF) return {2};
  if (first == 0xF0) return {3, 0x90, 0xBF};
  if (first >= 0xF1 && first <= 0xF3) return {3};
  if (first == 0xF4) return {3, 0x80, 0x8F};
  return {0, 0, 0, false};
}

}  // namespace

bool is_text(std::string_view bytes) {
  for (std::size_t i = 0; i < bytes.size();) {
    const auto byte = [&](std::size_t at) { return static_cast<std::uint8_t>(bytes[at]); };
    const Rest rest = after(byte(i));
    if (!rest.good || bytes.size() - i <= rest.count) return false;
    for (std::size_t k = 1; k <= rest.count; ++k) {
      const auto low = k == 1 ? rest.low : std::uint8_t{0x80};
      const auto high = k == 1 ? rest.high : std::uint8_t{0xBF};
      if (byte(i + k) < low || byte(i + k) > high) return false;
    }
    i += rest.count + 1;
  }
  return true;
}

std::optional<Problem> not_text(std::span<char* const> arguments) {
  for (std::size_t i = 1; i < arguments.size(); ++i) {
    const std::string word(arguments[i]);
    std::error_code ignored;
    if (is_text(word) || std::filesystem::exists(word, ignored)) continue;
    return Problem{Kind::bad_text,
                   "word " + std::to_string(i),
                   "it holds bytes that are no text",
                   "text in UTF-8; see `locale`",
                   {},
                   "set the terminal to UTF-8 and type it again",
                   {}};
  }
  return std::nullopt;
}

std::optional<Problem> no_binder(const std::string& path) {
  std::error_code ignored;
  const bool word = path.find('=') != std::string::npos && !std::filesystem::exists(path, ignored);
  if (!path.empty() && !word) return std::nullopt;
  return Problem{Kind::missing,
                 "BINDER",
                 word ? "`" + path + "` stands where the binder is needed" : "which binder?",
                 "a binder: one data file, named before everything else",
                 "pebblewing.binder",
                 "witnessmark demo DIR makes one to try out, witnessmark new BINDER an empty one",
                 {}};
}

std::optional<Problem> is_a_folder(const std::string& path) {
  std::error_code ignored;
  if (!std::filesystem::is_directory(path, ignored)) return std::nullopt;
  return Problem{Kind::not_found,
                 path,
                 "this is a folder",
                 "a binder: one file",
                 "pebblewing.binder",
                 "name the binder inside it",
                 {}};
}

}  // namespace wm::cli
