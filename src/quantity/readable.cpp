#include "quantity/readable.hpp"

#include <array>
#include <cmath>

namespace wm::quantity {
namespace {

using enum KindOf;

/// From `least` on (SI, by size) a value of this kind reads easily in `unit`. Ours: where people
/// change the unit by themselves.
struct Step {
  KindOf kind;
  std::string_view us, metric;
  double least;
};
constexpr double k_foot_in_metres = 0.3048;
constexpr std::array<Step, 11> k_steps{{
    {resistance, "Mohm", "Mohm", 1e6},
    {resistance, "kohm", "kohm", 1e4},
    {resistance, "ohm", "ohm", 0.1},
    {resistance, "mohm", "mohm", 0.0},
    {current, "A", "A", 0.1},
    {current, "mA", "mA", 1e-4},
    {current, "uA", "uA", 0.0},
    {length, "ft", "m", 20.0 * k_foot_in_metres},
    {length, "in", "mm", 0.0},
    {power, "hp", "kW", 100.0},
    {power, "W", "W", 0.0},
}};

}  // namespace

const Unit& readable_unit(KindOf kind, double si, UnitSet set) {
  const double size = std::abs(si);
  // Nought, and what is no number, stay in the unit that everybody expects.
  if (!(size > 0.0) || !std::isfinite(size)) return default_unit(kind, set);
  for (const Step& step : k_steps) {
    if (step.kind != kind || size < step.least) continue;
    const Unit* unit = find_unit(kind, set == UnitSet::us_customary ? step.us : step.metric);
    if (unit != nullptr) return *unit;
  }
  return default_unit(kind, set);
}

}  // namespace wm::quantity
