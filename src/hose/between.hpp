#pragma once
/// What holds, pulls or hinders a hose between its two ends, as an owner enters it.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "hose/ends.hpp"

namespace wm::hose {

/// What a hose must keep away from. The distance that is needed depends on it.
enum class Beside : std::uint8_t { wiring, exhaust, moving_control, structure, other };

struct BallShape {
  Place centre;
  EnteredLength radius;
};
struct TubeShape {
  Place from, to;
  EnteredLength radius;
};
struct BoxShape {
  Place centre;
  EnteredLength size_x, size_y, size_z;
};
struct WallShape {
  Place point;
  Way free_side;  ///< towards the side where the hose may be
};
/// A closed surface of triangles from an STL file.
struct MeshShape {
  std::string file;             ///< its attachment, or its name on the command line
  EnteredLength one_unit;       ///< length of one unit of the file
  std::optional<Place> origin;  ///< where the file's origin is
};

struct KeepOut {
  std::string name;
  Beside beside{Beside::other};
  std::optional<EnteredLength> needed;
  std::variant<TubeShape, BallShape, BoxShape, WallShape, MeshShape> shape;
};

/// A clamp, guide or ring between the ends.
struct HoseClamp {
  std::string name;
  Place place;                           ///< of the hose's centreline in it
  std::optional<Way> way;                ///< of the hose through it; nothing: it may turn there
  std::optional<EnteredLength> at_hose;  ///< along the hose that can bend, from the near end;
                                         ///< nothing: the hose slides through
};

/// What the hose weighs, how stiff it is, and how hard the aeroplane pulls.
struct HoseWeight {
  quantity::Entered<quantity::MassPerLength> filled;
  quantity::Entered<quantity::BendingStiffness> stiffness;
  double down{1}, up{0}, sideways{0}, fore_and_aft{0};  ///< load factors, as multiples of g
};

/// A set that the coil left in the hose.
struct HoseSet {
  EnteredLength radius;       ///< of the curve in which it lies untouched
  double twist_stiffness{1};  ///< GJ as a share of EI
};

std::string_view describe(describe::Choices<Beside>& c);
std::string_view describe(describe::Fields<BallShape>& f);
std::string_view describe(describe::Fields<TubeShape>& f);
std::string_view describe(describe::Fields<BoxShape>& f);
std::string_view describe(describe::Fields<WallShape>& f);
std::string_view describe(describe::Fields<MeshShape>& f);
std::string_view describe(describe::Fields<KeepOut>& f);
std::string_view describe(describe::Fields<HoseClamp>& f);
std::string_view describe(describe::Fields<HoseWeight>& f);
std::string_view describe(describe::Fields<HoseSet>& f);

}  // namespace wm::hose
