#pragma once
/// Reading "3 ft 4 1/2 in": numbers, each with its unit, of one kind.

#include <string_view>

#include "outcome/result.hpp"
#include "quantity/text.hpp"

namespace wm::quantity::detail {

/// @param folded  Text after fold(), trimmed, not empty.
/// @param quoted  The same as typed, for messages.
[[nodiscard]] Result<Parsed> read_terms(std::string_view folded, KindOf kind,
                                        std::string_view quoted);

/// The problem with a unit text that is no unit of `kind`.
[[nodiscard]] Problem foreign_unit(std::string_view unit_text, KindOf kind,
                                   std::string_view quoted);

/// "`38` has no unit; a length is needed, e.g. `38 in`"
[[nodiscard]] Problem bare_number(std::string_view number, KindOf kind);

/// Fills in what was expected and an example, where the problem does not say yet.
[[nodiscard]] Problem with_example(Problem problem, KindOf kind);

}  // namespace wm::quantity::detail
