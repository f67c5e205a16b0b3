#pragma once
/// Short ways to write what a person would type.

#include <string>
#include <vector>

#include "electrics/wire.hpp"

namespace wm::electrics::testing_support {

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}
template <class Q>
quantity::Measured<Q> measured(const std::string& text) {
  const auto p = *quantity::parse_measured(text, Q::kind);
  quantity::Measured<Q> m{{p.value.si}, {}, p.value.resolution_si, text};
  if (p.expanded) m.expanded_si = p.expanded->si;
  return m;
}
inline EnteredLength length(const std::string& text) { return typed<quantity::Length>(text); }
inline EnteredCurrent current(const std::string& text) { return typed<quantity::Current>(text); }
inline EnteredVoltage voltage(const std::string& text) { return typed<quantity::Voltage>(text); }
inline EnteredResistance resistance(const std::string& text) {
  return typed<quantity::Resistance>(text);
}
inline EnteredTemperature temperature(const std::string& text) {
  return typed<quantity::Temperature>(text);
}
inline Conductor wire(const std::string& size, CableKind kind = CableKind::aircraft_copper) {
  return {kind, size, {}};
}
inline bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}
/// Path and kind of one problem among several.
inline bool complains(const Problems& problems, const std::string& path, Kind kind) {
  for (const auto& p : problems) {
    if (p.path == path && p.kind == kind) return true;
  }
  return false;
}

}  // namespace wm::electrics::testing_support
