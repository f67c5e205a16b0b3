#include <Eigen/Geometry>
#include <cmath>
#include <limits>
#include <numbers>
#include <unsupported/Eigen/BVH>

#include "hose/detail/near.hpp"
#include "hose/solid.hpp"

namespace wm::hose {
namespace {

using Bounds = Eigen::AlignedBox3d;

Bounds around(const Triangle& t) {
  Bounds out(t[0]);
  out.extend(t[1]);
  out.extend(t[2]);
  return out;
}

/// What the tree asks on its way to the nearest triangle. Squared distances throughout.
struct Search {
  using Scalar = double;
  const std::vector<Triangle>* triangles;
  Vector a, b, on_piece{0, 0, 0}, on_surface{0, 0, 0};
  Bounds piece;
  double best{std::numeric_limits<double>::infinity()};

  [[nodiscard]] double minimumOnVolume(const Bounds& volume) const {
    return volume.squaredExteriorDistance(piece);
  }
  double minimumOnObject(int index) {
    const auto& t = (*triangles)[static_cast<std::size_t>(index)];
    const auto [mine, its] = detail::segment_and_triangle(a, b, t[0], t[1], t[2]);
    const double distance = (mine - its).squaredNorm();
    if (distance < best) {
      best = distance;
      on_piece = mine;
      on_surface = its;
    }
    return distance;
  }
};

}  // namespace

struct Mesh::Tree {
  std::vector<Triangle> triangles;
  Eigen::KdBVH<double, 3, int> boxes;
};

Mesh::Mesh(std::vector<Triangle> triangles) : tree_(std::make_unique<Tree>()) {
  tree_->triangles = std::move(triangles);
  std::vector<int> indices(tree_->triangles.size());
  std::vector<Bounds> bounds;
  bounds.reserve(indices.size());
  for (std::size_t i = 0; i < indices.size(); ++i) {
    indices[i] = static_cast<int>(i);
    bounds.push_back(around(tree_->triangles[i]));
  }
  tree_->boxes.init(indices.begin(), indices.end(), bounds.begin(), bounds.end());
}
Mesh::~Mesh() = default;

const std::vector<Triangle>& Mesh::triangles() const { return tree_->triangles; }

double Mesh::distance(const Vector& a, const Vector& b, Vector& on_piece,
                      Vector& on_surface) const {
  Search search{&tree_->triangles, a, b, {0, 0, 0}, {0, 0, 0}, Bounds(a), {}};
  search.best = std::numeric_limits<double>::infinity();
  search.piece.extend(b);
  Eigen::BVMinimize(tree_->boxes, search);
  on_piece = search.on_piece;
  on_surface = search.on_surface;
  return std::sqrt(search.best);
}

bool Mesh::holds(const Vector& point) const {
  // Solid angle of a triangle seen from the point (Van Oosterom and Strackee 1983, from memory);
  // all together they make 4 pi inside and nothing outside.
  double total = 0;
  for (const auto& t : tree_->triangles) {
    const Vector a = t[0] - point, b = t[1] - point, c = t[2] - point;
    const double la = a.norm(), lb = b.norm(), lc = c.norm();
    const double down = la * lb * lc + a.dot(b) * lc + a.dot(c) * lb + b.dot(c) * la;
    total += 2 * std::atan2(a.dot(b.cross(c)), down);
  }
  return std::abs(total) > 2 * std::numbers::pi;
}

}  // namespace wm::hose
