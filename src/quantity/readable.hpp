#pragma once
/// Which unit a computed value is shown in.

#include "quantity/kinds.hpp"

namespace wm::quantity {

/// The unit in which a computed value reads easily: the default one, unless its figure would be
/// very large or very small there ("0.5 mohm", not "0.0005 ohm"; "7801 ft", not "93610 in").
[[nodiscard]] const Unit& readable_unit(KindOf kind, double si, UnitSet set);

}  // namespace wm::quantity
