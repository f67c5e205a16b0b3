#pragma once
/// The answers of the API as text, for every door that gives them: one answer, one form.

#include <span>
#include <string>

#include "binder/binder.hpp"

namespace wm::service {

/// The OpenAPI description of what may be sent and what comes back.
[[nodiscard]] std::string openapi_text();

/// {sequence, head, answer, cautions, recorded, was_there_already}.
[[nodiscard]] std::string act_json(const binder::Reply& reply, quantity::UnitSet units);
/// {sequence, head, answer, cautions}.
[[nodiscard]] std::string view_json(const binder::Reply& reply,
                                    std::span<const describe::Caution> cautions,
                                    quantity::UnitSet units);

}  // namespace wm::service
