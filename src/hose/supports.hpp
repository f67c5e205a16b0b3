#pragma once
/// What was entered about clamps, keep-outs and weight, made ready for the solvers.

#include <string>
#include <vector>

#include "hose/between.hpp"
#include "hose/chain.hpp"
#include "hose/stl.hpp"

namespace wm::hose {

/// @param clamps  with their paths "clamps/0/..." in the problems
/// @return out_of_bounds (a direction of no length), conflict (stations that do not rise)
[[nodiscard]] std::vector<Support> supports_of(const std::vector<HoseClamp>& clamps,
                                               Problems& problems);

/// What a hose of this length lacks between its ends and clamps, in words; nothing: it has slack.
/// @param path   of the length
/// @param extra  rigid length to add in the words
[[nodiscard]] std::optional<Problem> too_short(const Rod& rod, const std::vector<Support>& supports,
                                               const std::vector<HoseClamp>& clamps,
                                               std::string path, double extra,
                                               const quantity::Unit& unit);

/// One pull of weight: its words, and weight per length over EI.
struct Pull {
  std::string words;
  Vector weight{0, 0, 0};
};
/// Every direction that was entered, each alone, and the corners of all of them together.
[[nodiscard]] std::vector<Pull> pulls_of(const HoseWeight& weight);

/// A thing to keep away from. @param path  of the keep-out
/// @return nothing with problems: out_of_bounds, missing (no file), bad_text (no STL, or not
///         closed), stopped
[[nodiscard]] std::optional<Solid> solid_of(const KeepOut& keep, const std::string& path,
                                            const describe::Context& context, Problems& problems);

/// Refuses a thing that lies around an end of the hose or around its rigid metal.
[[nodiscard]] std::optional<Problem> around_an_end(const KeepOut& keep, const Solid& solid,
                                                   const Reach& ends, double outside_diameter,
                                                   const std::string& path);

/// Refuses rigid ends that run through each other.
[[nodiscard]] std::optional<Problem> ends_collide(const Reach& ends, double outside_diameter,
                                                  const quantity::Unit& unit);

}  // namespace wm::hose
