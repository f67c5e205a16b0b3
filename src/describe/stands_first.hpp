#pragma once
/// Cautions that must be so before anybody begins: they stand ahead of the form and the answer.

#include "describe/catalogue.hpp"

namespace wm::describe::caution {

/// Cranking and compression: the propeller turns while the check is made.
[[nodiscard]] bool stands_first(const Caution& caution);

}  // namespace wm::describe::caution
