#pragma once
/// What the room ignition adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::ignition {
/// "lead-check".
void declare(describe::Catalogue& catalogue);
}  // namespace wm::ignition
