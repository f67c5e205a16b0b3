#pragma once
/// "hose-shape": how a hose of a given length lies between two fittings.

#include <optional>
#include <string>
#include <vector>

#include "hose/ends.hpp"

namespace wm::hose {

using EnteredAngle = quantity::Entered<quantity::Angle>;

/// How finely the hose is cut into straight pieces for the sum.
enum class Fineness : std::uint8_t {
  moving,  ///< 32: while an end is being moved
  usual,   ///< 64: within 0.1 % of the radius
  printed  ///< 64 and 128, extrapolated
};

struct HoseShapeInput {
  HoseEnd near_end, far_end;
  std::optional<EnteredLength> flexible;  ///< hose that can bend
  std::optional<EnteredLength> overall;   ///< flexible and both rigid lengths
  EnteredLength outside_diameter;
  std::optional<EnteredLength> least_radius;
  RadiusTo radius_to{RadiusTo::inside};
  Fineness fineness{Fineness::usual};
  std::int64_t points{9};  ///< along the hose, both ends counted
};

struct HosePoint {
  quantity::Length station;  ///< along the hose from where it can bend at the near end
  quantity::Length x, y, z;
  std::optional<quantity::Length> radius;  ///< nothing: straight there
};

struct OtherShape {
  quantity::Length tightest_radius;
  quantity::Length middle_x, middle_y, middle_z;
  double energy{};  ///< of bending, as a share of the shape shown: the larger, the less likely
};

struct HoseShapeAnswer {
  quantity::Length flexible, overall;
  quantity::Length tightest_radius;              ///< to the centreline
  quantity::Length tightest_inside;              ///< to the inside of the bend
  quantity::Length tightest_at;                  ///< along the hose from the near end
  std::optional<quantity::Length> least_radius;  ///< limit, to the centreline
  std::optional<quantity::Length> in_hand;       ///< tightest less limit; negative: too tight
  std::optional<quantity::Angle> clocking;
  std::optional<quantity::Angle> clocking_tolerance;
  std::string clocking_read;  ///< how the angle is read, in words
  std::vector<OtherShape> other_shapes;
  std::vector<HosePoint> points;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// @return what `reach` refuses; missing or conflict (flexible, overall), not_applicable (taut,
///         loops, no stable shape found), each with what would do
[[nodiscard]] Checked<HoseShapeAnswer> hose_shape(const HoseShapeInput& in,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<Fineness>& c);
std::string_view describe(describe::Fields<HoseShapeInput>& f);
std::string_view describe(describe::Fields<HosePoint>& f);
std::string_view describe(describe::Fields<OtherShape>& f);
std::string_view describe(describe::Fields<HoseShapeAnswer>& f);

}  // namespace wm::hose
