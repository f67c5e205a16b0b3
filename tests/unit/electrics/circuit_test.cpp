#include "electrics/circuit.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace {

using namespace wm;
using namespace wm::electrics;
using Elements = std::vector<CircuitElement>;
using enum Branch;

bool says(const Problem& p, const char* words) { return p.what.find(words) != std::string::npos; }

TEST(Circuit, WiresOfNoResistanceCarryCurrent) {
  const auto got = solve(Elements{{voltage_source, "v", "a", "0", 12, 0},
                                  {resistor, "wire", "a", "b", 0, 0},
                                  {resistor, "load", "b", "0", 6, 0}},
                         "0");
  ASSERT_TRUE(got);
  EXPECT_NEAR(branch_of(*got, "wire")->amperes, 2, 1e-12);
  EXPECT_NEAR(*voltage_at(*got, "b"), 12, 1e-12);
  EXPECT_LT(got->residual, 1e-12);
}

TEST(Circuit, NamesTheFloatingNodes) {
  const auto got = solve(Elements{{voltage_source, "v", "a", "0", 12, 0},
                                  {resistor, "load", "a", "0", 6, 0},
                                  {resistor, "lost", "x", "y", 6, 0}},
                         "0");
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().kind, Kind::not_applicable);
  EXPECT_TRUE(says(got.error(), "ties x, y to the ground"));
}

TEST(Circuit, ACurrentSourceAloneTiesNothing) {
  const auto got = solve(
      Elements{{voltage_source, "v", "a", "0", 12, 0}, {current_source, "i", "a", "b", 1, 0}}, "0");
  ASSERT_FALSE(got);
  EXPECT_TRUE(says(got.error(), "ties b to the ground"));
}

TEST(Circuit, NamesTheLoopOfIdealSources) {
  const auto got = solve(Elements{{voltage_source, "v1", "a", "0", 12, 0},
                                  {resistor, "load", "a", "0", 6, 0},
                                  {voltage_source, "elsewhere", "z", "0", 5, 0},
                                  {resistor, "jumper", "a", "b", 0, 0},
                                  {voltage_source, "v2", "b", "0", 24, 0}},
                         "0");
  ASSERT_FALSE(got);
  EXPECT_TRUE(says(got.error(), "v1, jumper, v2")) << got.error().what;
  const auto shorted =
      solve(Elements{{voltage_source, "v", "a", "a", 12, 0}, {resistor, "r", "a", "0", 1, 0}}, "0");
  EXPECT_TRUE(says(shorted.error(), "0 ohm: v"));
  // With some internal resistance the same pair is an ordinary circuit.
  EXPECT_TRUE(solve(
      Elements{{voltage_source, "v1", "a", "0", 12, 0.01}, {voltage_source, "v2", "a", "0", 24, 0}},
      "0"));
}

TEST(Circuit, RefusesBadElements) {
  const auto kind_of = [](Elements e) { return solve(e, "0").error().kind; };
  EXPECT_EQ(kind_of({}), Kind::missing);
  EXPECT_EQ(kind_of({{resistor, "", "a", "0", 1, 0}}), Kind::missing);
  EXPECT_EQ(kind_of({{resistor, "r", "", "0", 1, 0}}), Kind::missing);
  EXPECT_EQ(kind_of({{resistor, "r", "a", "", 1, 0}}), Kind::missing);
  EXPECT_EQ(kind_of({{resistor, "r", "a", "0", -1, 0}}), Kind::out_of_bounds);
  EXPECT_EQ(kind_of({{voltage_source, "v", "a", "0", 1, -1}}), Kind::out_of_bounds);
  EXPECT_EQ(kind_of({{resistor, "r", "a", "0", std::numeric_limits<double>::quiet_NaN(), 0}}),
            Kind::out_of_bounds);
  EXPECT_EQ(kind_of({{resistor, "r", "a", "0", 1, 0}, {resistor, "r", "a", "0", 2, 0}}),
            Kind::duplicate);
  EXPECT_EQ(kind_of({{resistor, "r", "a", "b", 1, 0}}), Kind::not_found);
}

TEST(Circuit, SaysWhenTheEquationsCannotBeSolved) {
  // The reciprocal of so small a resistance is no number any more.
  const auto got = solve(
      Elements{{voltage_source, "v", "a", "0", 1, 1}, {resistor, "r", "a", "0", 1e-310, 0}}, "0");
  ASSERT_FALSE(got);
  EXPECT_TRUE(says(got.error(), "cannot be solved"));
}

TEST(Circuit, UnknownNamesAreToldWithThoseThereAre) {
  const auto got = solve(Elements{{voltage_source, "v", "a", "0", 12, 1}}, "0");
  ASSERT_TRUE(got);
  EXPECT_EQ(voltage_at(*got, "nowhere").error().expected, "one of: a, 0");
  EXPECT_EQ(branch_of(*got, "w").error().expected, "one of: v");
}

TEST(Circuit, NothingButTheGroundIsACircuitToo) {
  const auto got = solve(Elements{{resistor, "r", "0", "0", 5, 0}}, "0");
  ASSERT_TRUE(got);
  EXPECT_EQ(got->branches[0].amperes, 0);
}

}  // namespace
