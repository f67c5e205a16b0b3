#pragma once
/// What the room mechanics adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::mechanics {
/// "torque-setting", "mass-balance", and the torque tables.
void declare(describe::Catalogue& catalogue);
}  // namespace wm::mechanics
