#pragma once
/// What an event must look like before it is stored.

#include <optional>
#include <string>
#include <string_view>

#include "outcome/result.hpp"
#include "record/event.hpp"

namespace wm::record::detail {

/// The first thing wrong with an event, with `place` ("events/2") in front of its field.
[[nodiscard]] std::optional<Problem> wrong_with(const NewEvent& event, const std::string& place);

[[nodiscard]] bool is_hash(std::string_view text);
[[nodiscard]] bool is_date(std::string_view text);
/// RFC 3339 date-time, any offset.
[[nodiscard]] bool is_instant(std::string_view text);
/// Well-formed UTF-8 without NUL.
[[nodiscard]] bool is_clean_text(std::string_view text);

}  // namespace wm::record::detail
