#pragma once
/// The table of kinds and units: names, symbols, factors, unit sets.

#include <span>
#include <string_view>

#include "outcome/result.hpp"
#include "quantity/quantity.hpp"

namespace wm::quantity {

/// Which units an owner wants to see.
enum class UnitSet { us_customary, si };

struct Unit {
  std::string_view symbol;  ///< as printed: "in", "psi", "degF", "kohm"
  KindOf kind;
  double factor;  ///< si = value * factor + offset
  double offset;
  std::string_view source;  ///< where the factor comes from
};

struct KindInfo {
  KindOf kind;
  std::string_view name;     ///< stable identifier: "pressure_gauge"
  std::string_view words;    ///< "a gauge pressure", with article, for messages
  std::string_view si_unit;  ///< unit of the value inside: "Pa"
  std::string_view us;       ///< default unit of the US customary set: "psi"
  std::string_view metric;   ///< default unit of the SI set: "kPa"
  std::string_view example;  ///< "28 psi"
};

[[nodiscard]] const KindInfo& info(KindOf kind);
/// All kinds, in the order of KindOf.
[[nodiscard]] std::span<const KindInfo> all_kinds();
/// nullptr when the name is not a kind.
[[nodiscard]] const KindInfo* kind_by_name(std::string_view name);
/// All units that may be typed for a kind, the common ones first.
[[nodiscard]] std::span<const Unit> units_of(KindOf kind);
/// nullptr when `symbol` (or one of its spellings) is no unit of this kind.
[[nodiscard]] const Unit* find_unit(KindOf kind, std::string_view symbol);
[[nodiscard]] const Unit& default_unit(KindOf kind, UnitSet set);

}  // namespace wm::quantity
