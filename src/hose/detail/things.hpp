#pragma once
/// The things that a hose must keep away from, and what hose-length says of each.

#include <string>
#include <utility>
#include <vector>

#include "hose/chance.hpp"
#include "hose/clearance.hpp"
#include "hose/fit.hpp"

namespace wm::hose::detail {

struct Thing {
  std::string name;
  Beside beside;
  Apart apart;
};

/// @return with problems where a distance is missing or a thing lies around an end
[[nodiscard]] std::vector<Thing> things_of(const HoseLengthInput& in, const Reach& ends,
                                           const describe::Context& context, Problems& problems);

/// In words, at the worst that was found of it.
[[nodiscard]] NearThing told(const Thing& thing, const Clearance& found, std::size_t which,
                             const quantity::Unit& unit);

/// The part of a window that keeps away from everything.
struct Kept {
  bool stopped{}, any{};
  double shortest{}, longest{};
  std::string binds_short, binds_long;  ///< the things beyond; without any: all that bind
};
/// The part that holds the widest bend, or the one nearest to it.
[[nodiscard]] Kept keeps_away(Clearances& clear, const std::vector<Thing>& things, double from,
                              double to, double best, const describe::Context& context);

}  // namespace wm::hose::detail
