#pragma once
/// The calculations of this room, for the catalogue.

#include "describe/catalogue.hpp"

namespace wm::evidence {

/// Adds `meter-uncertainty` and `conformity`.
void declare(describe::Catalogue& catalogue);

}  // namespace wm::evidence
