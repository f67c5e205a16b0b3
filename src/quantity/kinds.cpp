#include "quantity/kinds.hpp"

#include <array>
#include <cassert>
#include <cstddef>

#include "quantity/detail/fold.hpp"
#include "quantity/detail/table.hpp"

namespace wm::quantity {
namespace {

using enum KindOf;

/// In the order of KindOf.
constexpr std::array<KindInfo, k_kind_count> k_kinds{{
    {length, "length", "a length", "m", "in", "mm", "38 in"},
    {area, "area", "an area", "m2", "in2", "cm2", "2.4 in2"},
    {volume, "volume", "a volume", "m3", "gal", "L", "6 qt"},
    {mass, "mass", "a mass", "kg", "lb", "kg", "12 lb"},
    {time, "time", "a time", "s", "h", "h", "2 h 30 min"},
    {temperature, "temperature", "a temperature", "K", "degF", "degC", "15 degC"},
    {temperature_difference, "temperature_difference", "a temperature difference", "K", "degF",
     "degC", "40 degF"},
    {pressure_gauge, "pressure_gauge", "a gauge pressure", "Pa", "psi", "kPa", "28 psi"},
    {pressure_absolute, "pressure_absolute", "an absolute pressure", "Pa", "inHg", "hPa",
     "29.92 inHg"},
    {pressure_difference, "pressure_difference", "a pressure difference", "Pa", "psi", "kPa",
     "1.5 psi"},
    {resistance, "resistance", "a resistance", "ohm", "ohm", "ohm", "85.2 ohm"},
    {voltage, "voltage", "a voltage", "V", "V", "V", "13.8 V"},
    {current, "current", "a current", "A", "A", "A", "20 A"},
    {charge, "charge", "an electric charge", "C", "Ah", "Ah", "24 Ah"},
    {capacitance, "capacitance", "a capacitance", "F", "uF", "uF", "0.35 uF"},
    {power, "power", "a power", "W", "hp", "kW", "124 hp"},
    {energy, "energy", "an energy", "J", "ft-lbf", "J", "80 J"},
    {frequency, "frequency", "a frequency", "Hz", "Hz", "Hz", "400 Hz"},
    {rotation_speed, "rotation_speed", "a rotation speed", "1/s", "rpm", "rpm", "1700 rpm"},
    {speed, "speed", "a speed", "m/s", "kt", "km/h", "95 kt"},
    {volume_flow, "volume_flow", "a volume flow", "m3/s", "gal/h", "L/h", "9.4 gal/h"},
    {torque, "torque", "a torque", "N·m", "in-lb", "N·m", "120 in-lb"},
    {force, "force", "a force", "N", "lbf", "N", "25 lbf"},
    {mass_moment, "mass_moment", "a mass moment", "kg·m", "lb-in", "kg·m", "540 lb-in"},
    {angle, "angle", "an angle", "rad", "deg", "deg", "25 deg"},
    {fraction, "fraction", "a fraction", "1", "%", "%", "70 %"},
    {resistance_per_length, "resistance_per_length", "a resistance per length", "ohm/m", "ohm/ft",
     "ohm/m", "180 ohm/ft"},
    {density, "density", "a density", "kg/m3", "lb/gal", "kg/L", "6.01 lb/gal"},
    {mass_per_length, "mass_per_length", "a mass per length", "kg/m", "lb/ft", "kg/m",
     "0.25 lb/ft"},
    {bending_stiffness, "bending_stiffness", "a bending stiffness", "N·m2", "lb-in2", "N·m2",
     "120 lb-in2"},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < k_kinds.size(); ++i) {
    if (static_cast<std::size_t>(k_kinds[i].kind) != i) return false;
  }
  return true;
}
static_assert(in_order());

}  // namespace

const KindInfo& info(KindOf kind) {
  const auto index = static_cast<std::size_t>(kind);
  assert(index < k_kinds.size());
  return k_kinds[index];
}

std::span<const KindInfo> all_kinds() { return k_kinds; }

const KindInfo* kind_by_name(std::string_view name) {
  for (const KindInfo& k : k_kinds) {
    if (k.name == name) return &k;
  }
  return nullptr;
}

std::span<const Unit> units_of(KindOf kind) { return detail::table_of(kind).units; }

const Unit* find_unit(KindOf kind, std::string_view symbol) {
  if (symbol.size() > 4 * detail::k_longest_text) return nullptr;
  return detail::match(kind, detail::fold_unit(detail::fold(symbol)));
}

const Unit& default_unit(KindOf kind, UnitSet set) {
  const KindInfo& k = info(kind);
  const Unit* unit = find_unit(kind, set == UnitSet::us_customary ? k.us : k.metric);
  assert(unit != nullptr);
  return *unit;
}

}  // namespace wm::quantity
