#pragma once
/// What was typed, before anything is made of it: is it text at all, is the file a file?

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "outcome/result.hpp"

namespace wm::cli {

/// Whether the bytes are text in UTF-8.
///
/// @source RFC 3629, section 4: no overlong form, no surrogate, nothing past U+10FFFF.
[[nodiscard]] bool is_text(std::string_view bytes);

/// The first argument that is neither text nor the name of a file that is there: such bytes would
/// be replaced on their way into the record, silently.
[[nodiscard]] std::optional<Problem> not_text(std::span<char* const> arguments);

/// No word at all, or a `key=value` word, where a binder is needed.
[[nodiscard]] std::optional<Problem> no_binder(const std::string& path);

/// A folder where a binder is needed.
[[nodiscard]] std::optional<Problem> is_a_folder(const std::string& path);

}  // namespace wm::cli
