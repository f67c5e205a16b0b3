#pragma once
/// "hose-shape": how a hose of a given length lies between two fittings.

#include <optional>
#include <string>
#include <vector>

#include "hose/between.hpp"

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
  std::vector<HoseClamp> clamps;
  std::optional<HoseWeight> weight;
  std::optional<HoseSet> set;
  std::vector<KeepOut> leans_on;  ///< solid things that the hose may touch and lean on
  Fineness fineness{Fineness::usual};
  std::int64_t points{9};  ///< along the hose, both ends counted
};

struct HosePoint {
  quantity::Length station;  ///< along the hose from where it can bend at the near end
  quantity::Length x, y, z;
  std::optional<quantity::Length> radius;  ///< nothing: straight there
};

/// The circle that touches the tightest bend from inside.
struct BendCircle {
  Spot at;      ///< where the bend is tightest, on the centreline
  Spot centre;  ///< of the circle
  Way square;   ///< square to the circle; unit length
};

struct OtherShape {
  quantity::Length tightest_radius;
  quantity::Length middle_x, middle_y, middle_z;
  double energy{};  ///< of bending, as a share of the shape shown: the larger, the less likely
};

/// Where the hose sits in one of its clamps.
struct InClamp {
  std::string name;
  quantity::Length at_hose;                    ///< along the hose that can bend, from the near end
  std::optional<quantity::Length> if_gripped;  ///< a guide: where it sits if it grips, shared out
};

/// The hose under its weight in one direction of pull.
struct UnderLoad {
  std::string pull;
  quantity::Length tightest_radius;
  quantity::Length moves;  ///< the farthest that any place of it moves
};

/// One place where the hose leans on something.
struct Touch {
  std::string name;
  quantity::Length at_hose;
  double push{};  ///< force x length^2 / EI of the whole hose
};

/// What a set from the coil does, whichever way it is turned when it is fitted.
struct WithSet {
  quantity::Length tightest_least, tightest_most;  ///< radius, over all ways round
  quantity::Length moves;                          ///< the farthest from the shape shown
};

struct HoseShapeAnswer {
  quantity::Length flexible, overall;
  quantity::Length tightest_radius;              ///< to the centreline
  quantity::Length tightest_inside;              ///< to the inside of the bend
  quantity::Length tightest_at;                  ///< along the hose from the near end
  std::optional<quantity::Length> least_radius;  ///< limit, to the centreline
  std::optional<quantity::Length> in_hand;       ///< tightest less limit; negative: too tight
  std::optional<BendCircle> bend;
  std::optional<quantity::Angle> clocking;
  std::optional<quantity::Angle> clocking_tolerance;
  std::string clocking_read;  ///< how the angle is read, in words
  std::vector<InClamp> in_clamps;
  std::optional<quantity::Length> tightest_if_gripped;  ///< radius, if the guides grip after all
  std::vector<UnderLoad> under_load;
  std::vector<Touch> touches;
  std::optional<WithSet> with_set;
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
std::string_view describe(describe::Fields<BendCircle>& f);
std::string_view describe(describe::Fields<InClamp>& f);
std::string_view describe(describe::Fields<UnderLoad>& f);
std::string_view describe(describe::Fields<Touch>& f);
std::string_view describe(describe::Fields<WithSet>& f);
std::string_view describe(describe::Fields<OtherShape>& f);
std::string_view describe(describe::Fields<HoseShapeAnswer>& f);

}  // namespace wm::hose
