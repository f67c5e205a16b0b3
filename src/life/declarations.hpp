#pragma once
/// What the room life adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::life {
/// "due-date".
void declare(describe::Catalogue& catalogue);
}  // namespace wm::life
