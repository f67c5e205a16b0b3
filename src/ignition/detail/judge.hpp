#pragma once
/// What the checks of ignition parts share: pick the meter's range, judge one reading by a limit,
/// lay the figures of a table beside it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "evidence/conformity.hpp"
#include "evidence/limit.hpp"
#include "ignition/part.hpp"
#include "quantity/text.hpp"

namespace wm::ignition::detail {

template <class Q>
[[nodiscard]] describe::AnyQuantity any(const quantity::Entered<Q>& q) {
  return {Q::kind, q.value.si, q.resolution_si, {}, q.text};
}
template <class Q>
[[nodiscard]] describe::AnyQuantity any(const quantity::Measured<Q>& q) {
  return {Q::kind, q.value.si, q.resolution_si, q.expanded_si, q.text};
}
template <class T>
[[nodiscard]] std::optional<describe::AnyQuantity> any(const std::optional<T>& q) {
  if (!q) return std::nullopt;
  return any(*q);
}
template <class Q>
[[nodiscard]] evidence::Limit entered(const std::optional<quantity::Entered<Q>>& lowest,
                                      const std::optional<quantity::Entered<Q>>& highest,
                                      const std::string& source) {
  return evidence::Limit::entered(any(lowest), any(highest), source);
}

/// How something was read.
struct HowRead {
  std::optional<evidence::MeterRange> meter;
  evidence::TestLeads leads{evidence::TestLeads::not_stated};
  std::optional<describe::AnyQuantity> lead_resistance;
  evidence::GuardFrom guard_from{evidence::GuardFrom::worst_case};
};

/// What was read, and where its fields lie in the caller's input.
struct WhatRead {
  std::string what;
  std::optional<describe::AnyQuantity> reading;
  bool over_range{};
  std::string path;         ///< of the reading
  std::string limits_path;  ///< of its limits
};

/// The range a reading was taken on: the named one; else the only one; else the lowest one that
/// can show the figure.
/// @return not_found for a name that is no range; missing for over-range with several ranges and
///         no name; nothing where no meter was described or none of its ranges measures this.
[[nodiscard]] Result<std::optional<evidence::MeterRange>> range_for(
    const std::vector<evidence::MeterRange>& ranges, std::string_view named,
    const std::optional<describe::AnyQuantity>& reading);

/// Half-width within which the meter's maker, or the stated doubt, puts the reading; SI.
[[nodiscard]] double worst_case(const describe::AnyQuantity& reading,
                                const std::optional<evidence::MeterRange>& meter);

/// Judge one reading. Without any limit: not-tested, except that nothing is said of the part.
[[nodiscard]] Checked<PartVerdict> judge(const WhatRead& read, const evidence::Limit& limit,
                                         const HowRead& how, const describe::Context& context);

/// The rows of a table that speak about `about`, each with how the reading stands to it.
[[nodiscard]] std::vector<Figure> figures(const describe::Table* table, std::string_view about,
                                          const std::optional<describe::AnyQuantity>& reading,
                                          bool over_range = false);

}  // namespace wm::ignition::detail
