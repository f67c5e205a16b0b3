#pragma once
/// The OpenAPI 3.1 face: what other programs, and the types of the web page, are made from.

#include <span>
#include <string>
#include <string_view>

#include "describe/catalogue.hpp"

namespace wm::calculation {

/// What else than calculations the API offers.
struct Entry {
  enum class Is { act, view };
  Is kind{Is::act};
  std::string_view name;
  std::string_view purpose;
  const describe::Type* input{};
  const describe::Type* output{};
};

/// POST /api/calc/NAME, /api/act/NAME and /api/view/NAME, with a schema a described type. Inputs
/// are schemas of what may be sent, answers of what comes back (a quantity is text on the way in
/// and an object on the way out).
[[nodiscard]] std::string openapi_json(const describe::Catalogue& catalogue,
                                       std::span<const Entry> entries, std::string_view version);

}  // namespace wm::calculation
