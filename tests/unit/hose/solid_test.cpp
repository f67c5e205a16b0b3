// Distances of hoses from things: closed forms, and brute force over sampled points.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/detail/near.hpp"
#include "hose/rod_measure.hpp"
#include "hose/solid.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm::hose;
using wm::statistics::Draws;

Vector any(Draws& draws) {
  return {draws.uniform(-1, 1), draws.uniform(-1, 1), draws.uniform(-1, 1)};
}

/// A box of twelve triangles, outside out.
std::vector<Triangle> crate(const Vector& centre, const Vector& half) {
  const auto corner = [&](int i) {
    return Vector(centre + Vector((i & 1) != 0 ? half.x() : -half.x(),
                                  (i & 2) != 0 ? half.y() : -half.y(),
                                  (i & 4) != 0 ? half.z() : -half.z()));
  };
  const int faces[6][4] = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4},
                           {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
  std::vector<Triangle> out;
  for (const auto& f : faces) {
    out.push_back({corner(f[0]), corner(f[1]), corner(f[2])});
    out.push_back({corner(f[0]), corner(f[2]), corner(f[3])});
  }
  return out;
}

double by_sampling(const Vector& a, const Vector& b, const auto& distance) {
  double best = 1e9;
  for (int i = 0; i <= 2000; ++i)
    best = std::min(best, distance(Vector(a + (b - a) * (i / 2000.0))));
  return best;
}

TEST(Solids, StraightPiecesAgainstSampling) {
  Draws draws(21);
  for (int i = 0; i < 200; ++i) {
    const Vector a = any(draws), b = any(draws);
    const Sphere sphere{any(draws), 0.2};
    EXPECT_NEAR(
        nearest(sphere, a, b).distance,
        by_sampling(a, b, [&](const Vector& p) { return (p - sphere.centre).norm() - 0.2; }), 1e-5);
    const Capsule tube{any(draws), any(draws), 0.1};
    EXPECT_NEAR(nearest(tube, a, b).distance,
                by_sampling(a, b,
                            [&](const Vector& p) {
                              return (p - detail::on_segment(p, tube.from, tube.to)).norm() - 0.1;
                            }),
                1e-4);
    Box box{any(draws), Vector(0.3, 0.2, 0.1), Eigen::Matrix3d::Identity()};
    box.axes = Eigen::AngleAxisd(draws.uniform(0, 3), any(draws).normalized()).toRotationMatrix();
    const auto near = nearest(box, a, b);
    EXPECT_NEAR(near.distance,
                by_sampling(a, b,
                            [&](const Vector& p) {
                              const Vector q =
                                  (box.axes.transpose() * (p - box.centre)).cwiseAbs() - box.half;
                              return q.cwiseMax(0).norm() + std::min(q.maxCoeff(), 0.0);
                            }),
                1e-3);
    EXPECT_NEAR((near.on_piece - near.on_solid).norm(), std::abs(near.distance), 1e-6);
  }
}

TEST(Solids, AMeshIsTheBoxThatItDraws) {
  Draws draws(22);
  const Box box{{0.1, 0.2, -0.1}, {0.3, 0.2, 0.4}, Eigen::Matrix3d::Identity()};
  const auto mesh = std::make_shared<const Mesh>(crate(box.centre, box.half));
  for (int i = 0; i < 500; ++i) {
    const Vector a = any(draws), b = any(draws);
    const double expected = nearest(box, a, b).distance;
    // The surface of a mesh is at nothing where it is cut; the box counts depth.
    if (expected > 0) {
      EXPECT_NEAR(nearest(Solid(mesh), a, b).distance, expected, 1e-6);
    }
    EXPECT_EQ(mesh->holds(a), nearest(box, a, a).distance < 0);
  }
}

TEST(Solids, ASurfaceOfManyTrianglesAgainstBruteForce) {
  Draws draws(23);
  std::vector<Triangle> triangles;
  for (int i = 0; i < 500; ++i) {
    const Vector at = any(draws);
    triangles.push_back({at, at + 0.1 * any(draws), at + 0.1 * any(draws)});
  }
  const Mesh mesh(triangles);
  for (int i = 0; i < 100; ++i) {
    const Vector a = any(draws), b = a + 0.1 * any(draws);
    double best = 1e9;
    for (const auto& t : triangles) {
      const auto [mine, its] = detail::segment_and_triangle(a, b, t[0], t[1], t[2]);
      best = std::min(best, (mine - its).norm());
    }
    Vector p, q;
    EXPECT_DOUBLE_EQ(mesh.distance(a, b, p, q), best);
    EXPECT_NEAR((p - q).norm(), best, 1e-12);
  }
}

TEST(Solids, GapOfABendFromAWallAndATube) {
  Rod rod;
  rod.end = {0.2, 0.2, 0};
  rod.end_direction = {0, 1, 0};
  rod.length = std::numbers::pi / 2 * 0.2;
  RodSolver solver(128);
  Shape shape;
  solver.cold(rod, shape);
  const auto wall = gap(shape, 0.02, Wall{{0.25, 0, 0}, {-1, 0, 0}});
  EXPECT_NEAR(wall.clear, 0.04, 1e-6);
  EXPECT_NEAR(wall.station, rod.length, 1e-3);
  // A tube along the axis of the bend: everywhere at the radius.
  const auto tube = gap(shape, 0.02, Capsule{{0, 0.2, -1}, {0, 0.2, 1}, 0.05});
  EXPECT_NEAR(tube.clear, 0.2 - 0.05 - 0.01, 1e-5);
  // Around the whole hose: the surface is far, and the mesh says that it holds the start.
  const auto around = std::make_shared<const Mesh>(crate({0, 0, 0}, {1, 1, 1}));
  EXPECT_TRUE(around->holds(shape.start));
  EXPECT_NEAR(gap(shape, 0.02, Solid(around)).clear, 0.79, 1e-3);
}

}  // namespace
