#pragma once
/// The centreline of a hose as files for other programs: a table and a drawing exchange file.

#include <string>

#include "hose/sheet.hpp"

namespace wm::drawing {

/// Comma-separated: station, x, y, z, radius of each point of the hose that can bend, near end
/// first; the unit stands in the header. The radius is empty where the hose is straight.
/// @source RFC 4180: one header line, CRLF, no quotes needed
[[nodiscard]] std::string centreline_csv(const hose::HoseSheetInput& in,
                                         const hose::HoseSheetAnswer& answer,
                                         quantity::UnitSet units);

/// The drawing interchange format in its plain text form (release 12): the hose that can bend as
/// a 3-D polyline on the layer HOSE, the axes of both end fittings as lines on FITTINGS, seat
/// first. The unit stands in a comment and in the header.
/// @source the format as published (group codes 0, 2, 8, 9, 10, 20, 30, 11, 21, 31, 66, 70, 999),
///         from memory
[[nodiscard]] std::string centreline_dxf(const hose::HoseSheetInput& in,
                                         const hose::HoseSheetAnswer& answer,
                                         quantity::UnitSet units);

}  // namespace wm::drawing
