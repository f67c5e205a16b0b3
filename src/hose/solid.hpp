#pragma once
/// Things that a hose must keep away from, and how far away it is.

#include <array>
#include <memory>
#include <variant>
#include <vector>

#include "hose/rod.hpp"

namespace wm::hose {

struct Sphere {
  Vector centre{0, 0, 0};
  double radius{};
};
/// A tube with round ends: an exhaust pipe, a cable, a strut.
struct Capsule {
  Vector from{0, 0, 0};
  Vector to{0, 0, 0};
  double radius{};
};
struct Box {
  Vector centre{0, 0, 0};
  Vector half{0, 0, 0};  ///< half its size along each of its axes
  Eigen::Matrix3d axes{Eigen::Matrix3d::Identity()};
};
/// All of space behind a plane: a firewall, a cowl.
struct Wall {
  Vector point{0, 0, 0};
  Vector normal{0, 0, 1};  ///< towards the side where the hose may be; unit length
};

using Triangle = std::array<Vector, 3>;

/// A closed surface of triangles, with what makes asking it fast.
class Mesh {
 public:
  explicit Mesh(std::vector<Triangle> triangles);
  ~Mesh();
  Mesh(const Mesh&) = delete;
  Mesh& operator=(const Mesh&) = delete;
  [[nodiscard]] const std::vector<Triangle>& triangles() const;
  /// Distance of a straight piece from the surface, with the nearest points. 0 where it cuts it.
  [[nodiscard]] double distance(const Vector& a, const Vector& b, Vector& on_piece,
                                Vector& on_surface) const;
  /// Whether a point is inside, by the solid angle of all triangles (any shape of mesh).
  [[nodiscard]] bool holds(const Vector& point) const;

 private:
  struct Tree;
  std::unique_ptr<Tree> tree_;
};

using Solid = std::variant<Sphere, Capsule, Box, Wall, std::shared_ptr<const Mesh>>;

struct Nearest {
  double distance{};  ///< negative: inside by that much; a mesh: 0 on its surface or inside
  Vector on_piece{0, 0, 0};
  Vector on_solid{0, 0, 0};
};
/// From the straight piece a-b to the solid.
[[nodiscard]] Nearest nearest(const Solid& solid, const Vector& a, const Vector& b);

struct Gap {
  double clear{};           ///< between the outside of the hose and the solid; negative: through it
  double station{};         ///< along the hose, from the start
  Vector on_hose{0, 0, 0};  ///< on the centreline
  Vector on_solid{0, 0, 0};
};
/// Least gap along the whole flexible part, nodes and pieces between them. A hose that lies inside
/// a mesh and does not cut it is not noticed: ask `Mesh::holds` of its start.
[[nodiscard]] Gap gap(const Shape& shape, double outside_diameter, const Solid& solid);

}  // namespace wm::hose
