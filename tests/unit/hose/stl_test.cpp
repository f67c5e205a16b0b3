// STL files, text and binary: what is read, what is refused, and whether a surface is closed.
#include <gtest/gtest.h>

#include <cstring>
#include <string>

#include "hose/stl.hpp"

namespace {

using namespace wm::hose;
using wm::Kind;

const char* const k_pyramid = R"(solid invented
facet normal 0 0 -1
 outer loop
  vertex 0 0 0
  vertex 0 1 0
  vertex 1 0 0
 endloop
endfacet
facet normal 0 -1 0
 outer loop
  vertex 0 0 0
  vertex 1 0 0
  vertex 0 0 1
 endloop
endfacet
facet normal -1 0 0
 outer loop
  vertex 0 0 0
  vertex 0 0 1
  vertex 0 1 0
 endloop
endfacet
facet normal 1 1 1
 outer loop
  vertex 1 0 0
  vertex 0 1 0
  vertex 0 0 1
 endloop
endfacet
endsolid invented
)";

std::string binary(const std::vector<Triangle>& triangles) {
  std::string out(80, 's');
  const auto count = static_cast<std::uint32_t>(triangles.size());
  out.append(reinterpret_cast<const char*>(&count), 4);
  for (const auto& t : triangles) {
    float values[12]{};
    for (std::size_t corner = 0; corner < 3; ++corner)
      for (int k = 0; k < 3; ++k)
        values[3 + 3 * corner + static_cast<std::size_t>(k)] = static_cast<float>(t[corner][k]);
    out.append(reinterpret_cast<const char*>(values), sizeof values);
    out.append(2, '\0');
  }
  return out;
}

TEST(Stl, TextAndBinaryGiveTheSame) {
  const auto text = read_stl(k_pyramid, 1, {0, 0, 0}, {});
  ASSERT_TRUE(text);
  ASSERT_EQ(text->size(), 4U);
  const auto bytes = read_stl(binary(*text), 1, {0, 0, 0}, {});
  ASSERT_TRUE(bytes);
  ASSERT_EQ(bytes->size(), 4U);
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t c = 0; c < 3; ++c) EXPECT_EQ((*text)[i][c], (*bytes)[i][c]);
}

TEST(Stl, UnitAndOriginAreTaken) {
  const auto got = read_stl(k_pyramid, 0.0254, {1, 2, 3}, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(((*got)[0][1] - Vector(1, 2.0254, 3)).norm(), 0, 1e-12);
}

TEST(Stl, ABinaryFileMayBeginWithTheWordOfATextOne) {
  const auto text = read_stl(k_pyramid, 1, {0, 0, 0}, {});
  auto bytes = binary(*text);
  std::memcpy(bytes.data(), "solid", 5);
  EXPECT_TRUE(read_stl(bytes, 1, {0, 0, 0}, {}));
}

TEST(Stl, WhatIsNoneIsRefusedInWords) {
  const auto what = [](std::string_view bytes) {
    const auto got = read_stl(bytes, 1, {0, 0, 0}, {});
    EXPECT_FALSE(got);
    return got ? std::string() : got.error().what;
  };
  EXPECT_NE(what("").find("no STL file"), std::string::npos);
  EXPECT_NE(what("hello").find("no STL file"), std::string::npos);
  EXPECT_NE(what("solid x\nendsolid x").find("no triangle"), std::string::npos);
  EXPECT_NE(what("solid x\nfacet normal 0 0 1\nouter loop\nvertex 1 2 east").find("line 4"),
            std::string::npos);
  EXPECT_NE(what("solid x\nfacet normal 0 0 1\nouter loop\nvertex 1 2").find("too early"),
            std::string::npos);
  const auto text = read_stl(k_pyramid, 1, {0, 0, 0}, {});
  auto cut = binary(*text);
  cut.resize(cut.size() - 7);
  EXPECT_NE(what(cut).find("284 bytes"), std::string::npos) << what(cut);
}

TEST(Stl, CornersThatAreNoPlaceAreRefused) {
  auto triangles = *read_stl(k_pyramid, 1, {0, 0, 0}, {});
  auto bytes = binary(triangles);
  const float none = std::numeric_limits<float>::quiet_NaN();
  std::memcpy(bytes.data() + 84 + 12, &none, 4);
  auto got = read_stl(bytes, 1, {0, 0, 0}, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().kind, Kind::out_of_bounds);
  EXPECT_FALSE(read_stl(binary(triangles), 1e6, {0, 0, 0}, {}));
}

TEST(Stl, AClosedSurfaceIsToldFromAnOpenOne) {
  auto triangles = *read_stl(k_pyramid, 1, {0, 0, 0}, {});
  EXPECT_FALSE(open_edge(triangles, {})->has_value());
  auto turned = triangles;
  std::swap(turned[2][0], turned[2][1]);
  EXPECT_EQ((*open_edge(turned, {}))->edges, 3U);  // folded onto itself: one face inside out
  triangles.pop_back();
  EXPECT_EQ((*open_edge(triangles, {}))->edges, 3U);
}

TEST(Stl, CanBeStopped) {
  const auto triangles = *read_stl(k_pyramid, 1, {0, 0, 0}, {});
  const auto stop = [](double) { return false; };
  EXPECT_EQ(read_stl(binary(triangles), 1, {0, 0, 0}, stop).error().kind, Kind::stopped);
  EXPECT_EQ(open_edge(triangles, stop).error().kind, Kind::stopped);
}

}  // namespace
