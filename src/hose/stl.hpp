#pragma once
/// A closed surface of triangles from the bytes of an STL file, text or binary.
///
/// Binary: 80 bytes of anything, a count (32 bits, little-endian), then 50 bytes a triangle: normal
/// and three corners as 32-bit floats, and two bytes that are not looked at. Text: "facet", "outer
/// loop", three times "vertex x y z", "endloop", "endfacet". A file whose length is that of a
/// binary one is taken as binary, whatever its first word. @source the format as published in 1989,
/// from memory

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "hose/solid.hpp"
#include "outcome/result.hpp"

namespace wm::hose {

/// Told how far it has come (0 to 1); false means: stop.
using GoOn = std::function<bool(double)>;

/// @param unit    metres of one unit of the file
/// @param origin  where the file's origin is (m)
/// @return bad_text (neither form, with the line or the triangle), out_of_bounds (a corner that is
///         no number or beyond 1 km), stopped. The path is left empty.
[[nodiscard]] Result<std::vector<Triangle>> read_stl(std::string_view bytes, double unit,
                                                     const Vector& origin, const GoOn& go_on);

/// Where a surface is open, or folded onto itself: an edge that is not used once each way.
struct OpenEdge {
  std::size_t edges{};                ///< of that kind, in all
  Vector from{0, 0, 0}, to{0, 0, 0};  ///< the first of them
};
/// Corners are one where their coordinates are equal; triangles without area are left out.
/// @return nothing: closed; stopped
[[nodiscard]] Result<std::optional<OpenEdge>> open_edge(const std::vector<Triangle>& triangles,
                                                        const GoOn& go_on);

}  // namespace wm::hose
