#pragma once
/// Typed text brought to one plain form before it is read: the many code points for one sign
/// (two ohm signs, two mu signs, four dashes) become one ASCII spelling.

#include <string>
#include <string_view>

#include "outcome/result.hpp"

namespace wm::quantity::detail {

inline constexpr std::size_t k_longest_text = 120;

/// Blanks, tabs and line ends off both ends.
[[nodiscard]] std::string_view trim(std::string_view text);

/// @return the trimmed text; bad_text when empty, longer than 120 characters, not UTF-8 or with
///         control characters inside.
[[nodiscard]] Result<std::string_view> presentable(std::string_view text);

/// Known signs to ASCII; anything else stays as it is. Never longer than 5 bytes a sign.
[[nodiscard]] std::string fold(std::string_view text);

/// A folded unit text in the form of detail::Spelling: separators become '-', "per" becomes '/',
/// abbreviation points go.
[[nodiscard]] std::string fold_unit(std::string_view folded);

}  // namespace wm::quantity::detail
