#pragma once
/// What the room reliability adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::reliability {
/// "life-estimate", "survival-next", "zero-failure-bound", "renewal-age", "inspection-interval",
/// "failure-trend".
void declare(describe::Catalogue& catalogue);
}  // namespace wm::reliability
