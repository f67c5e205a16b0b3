#pragma once
/// The two ends of a hose as an owner measures them, and what they make of a rod.
///
/// Aircraft axes: x aft of the datum, y to the aircraft's right, z up.

#include <optional>
#include <string>

#include "hose/length.hpp"
#include "hose/rod.hpp"

namespace wm::hose {

struct Place {
  EnteredLength x, y, z;
};

/// In metres.
[[nodiscard]] Vector vector_of(const Place& place);

/// The same, worked out.
struct Spot {
  quantity::Length x, y, z;
};
[[nodiscard]] Spot spot_of(const Vector& v);

/// A direction; only the ratios of the three numbers count.
struct Way {
  double x{}, y{}, z{};
};

struct HoseEnd {
  Place seat;  ///< centre of the sealing seat of the port
  Way leaves;  ///< the way the hose leaves the fitting
  EndForm form{EndForm::straight};
  std::optional<EnteredLength> rigid;  ///< straight: seat to where the hose can bend; elbow: from
                                       ///< the port's axis to there, along the hose
  std::optional<Way> port;             ///< elbow: axis of the port, out of it
  std::optional<EnteredLength> drop;   ///< elbow: seat to the axis of the hose
};

/// The radius that a maker prints: to the inside of the bend or to the centreline.
enum class RadiusTo : std::uint8_t { inside, centreline };

struct Reach {
  Rod rod;  ///< without a length
  double rigid_near{}, rigid_far{};
  bool rigid_known{};
  /// Square to the hose, from its axis towards the port; only where both ends are elbows.
  std::optional<Vector> outlet_near, outlet_far;
};

/// @param near, far  with their paths "near_end", "far_end" in the problems
/// @return missing (rigid length, axis or drop of an elbow), out_of_bounds (a direction of no
///         length), conflict (an elbow whose two directions do not make its angle, both seats in
///         one place)
[[nodiscard]] Checked<Reach> reach(const HoseEnd& near, const HoseEnd& far);

/// Clocking: near elbow at six o'clock, counter-clockwise to the far one, seen from the near end,
/// 0 to 2 pi. The same from either end.
/// @source MIL-DTL-83796/5, fig. 3, notes 1 and 5
[[nodiscard]] double clocking(const Shape& shape, const Vector& outlet_near,
                              const Vector& outlet_far);

/// Centreline radius of a limit. @source derived: inside radius + half the outside diameter
[[nodiscard]] double centreline_radius(double radius, RadiusTo to, double outside_diameter);

std::string_view describe(describe::Fields<Place>& f);
std::string_view describe(describe::Fields<Spot>& f);
std::string_view describe(describe::Fields<Way>& f);
std::string_view describe(describe::Fields<HoseEnd>& f);
std::string_view describe(describe::Choices<RadiusTo>& c);

}  // namespace wm::hose
