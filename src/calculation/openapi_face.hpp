#pragma once
/// The OpenAPI 3.1 face: what other programs, and the types of the web page, are made from.

#include <span>
#include <string>
#include <string_view>

#include "calculation/entry.hpp"

namespace wm::calculation {

/// POST /api/calc/NAME, /api/act/NAME and /api/view/NAME, with a schema a described type. Inputs
/// are schemas of what may be sent, answers of what comes back (a quantity is text on the way in
/// and an object on the way out).
///
/// @param envelope  What an act carries beside its `input`: id, seen, happened, author, ...
[[nodiscard]] std::string openapi_json(const describe::Catalogue& catalogue,
                                       std::span<const Entry> entries,
                                       const describe::Type& envelope, std::string_view version);

}  // namespace wm::calculation
