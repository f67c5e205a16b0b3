#include "service/detail/envelope.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace wm::service::detail {
namespace {

TEST(Envelope, TheInputStaysTheTextThatWasSent) {
  const auto opened = open_envelope(
      R"( {"id":"a-1", "seen" : 12 ,"input": {"x": 1.10, "y":"a}\"]", "x": [1,{"z":2}]} ,"author":"J"} )");
  EXPECT_TRUE(opened.problems.empty());
  EXPECT_EQ(opened.envelope.id, "a-1");
  EXPECT_EQ(opened.envelope.seen, 12);
  EXPECT_EQ(opened.envelope.author, "J");
  EXPECT_EQ(opened.input, R"({"x": 1.10, "y":"a}\"]", "x": [1,{"z":2}]})");
}

TEST(Envelope, WithoutInputAnEmptyOneIsMeant) {
  const auto opened = open_envelope(R"({"id":"a"})");
  EXPECT_TRUE(opened.problems.empty());
  EXPECT_EQ(opened.input, "{}");
}

TEST(Envelope, EveryProblemHasItsPath) {
  const auto opened = open_envelope(R"({"seen":"x","colour":1,"input":{},"input":{}})");
  std::vector<std::string> paths;
  for (const auto& p : opened.problems) paths.push_back(p.path);
  for (const auto* path : {"id", "seen", "colour", "input"})
    EXPECT_NE(std::find(paths.begin(), paths.end(), path), paths.end()) << path;
}

TEST(Envelope, WhatIsNoObjectIsRefused) {
  for (const auto* body : {"", "[]", "{", "7", "{\"id\":\"a\",}", "{\"id\":\"a\"} {}", "\"id\"",
                           "{\"input\":\"\xff\"}"})
    EXPECT_FALSE(open_envelope(body).problems.empty()) << body;
}

TEST(Envelope, DepthIsNoDanger) {
  const std::string deep(200000, '[');
  EXPECT_FALSE(open_envelope(deep).problems.empty());
  const auto closed = "{\"id\":\"a\",\"input\":" + deep + std::string(200000, ']') + "}";
  EXPECT_TRUE(open_envelope(closed).problems.empty());  // the input's own reader refuses it
}

TEST(Envelope, MembersOfAnEmptyObject) {
  EXPECT_EQ(members_of("{ }")->size(), 0U);
  EXPECT_FALSE(members_of("[]"));
}

}  // namespace
}  // namespace wm::service::detail
