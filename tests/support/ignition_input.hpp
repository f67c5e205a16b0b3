#pragma once
/// Short ways to write what a person types, for the tests of the room ignition.
#include <algorithm>
#include <string>
#include <vector>

#include "evidence/reading.hpp"
#include "quantity/text.hpp"

namespace wm::test {

inline describe::AnyQuantity any(const char* text) { return *describe::read_any(text); }

template <class Q>
quantity::Measured<Q> measured(const std::string& text) {
  const auto p = *quantity::parse_measured(text, Q::kind);
  quantity::Measured<Q> m{Q{p.value.si}, {}, p.value.resolution_si, text};
  if (p.expanded) m.expanded_si = p.expanded->si;
  return m;
}
template <class Q>
quantity::Entered<Q> entered(const std::string& text) {
  return *quantity::read<Q>(text);
}
inline auto read_ohms(const std::string& text) { return measured<quantity::Resistance>(text); }
inline auto some_ohms(const std::string& text) { return entered<quantity::Resistance>(text); }

/// A range of a meter of +-(per cent of reading + counts of the last digit).
inline evidence::MeterRange range(const char* full_scale, const char* step, double of_reading,
                                  int counts) {
  evidence::MeterRange r;
  r.name = full_scale;
  r.full_scale = any(full_scale);
  r.resolution = any(step);
  r.of_reading = quantity::per_cent(of_reading);
  r.counts = counts;
  return r;
}

/// A hand multimeter of 1999 counts, +-(0.8 % + 3 digits).
inline std::vector<evidence::MeterRange> hand_meter() {
  return {range("200 ohm", "0.1 ohm", 0.8, 3), range("2 kohm", "0.001 kohm", 0.8, 3),
          range("20 kohm", "0.01 kohm", 0.8, 3)};
}

inline bool says(const std::vector<std::string>& lines, const std::string& words) {
  return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
    return line.find(words) != std::string::npos;
  });
}

}  // namespace wm::test
