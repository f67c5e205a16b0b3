#pragma once
/// What the room electrics adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::electrics {
/// The cables, then the starting circuit and its parts, then the battery's reserve.
void declare(describe::Catalogue& catalogue);
}  // namespace wm::electrics
