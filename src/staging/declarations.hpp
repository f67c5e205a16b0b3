#pragma once
/// What the room staging adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::staging {
/// "stage-plan", "cause-rank".
void declare(describe::Catalogue& catalogue);
}  // namespace wm::staging
