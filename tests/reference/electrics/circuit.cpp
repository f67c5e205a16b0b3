// Source:    ngspice (Debian package ngspice), operating point of tests/reference/electrics/
//            netlists/*.cir; and circuits that a pencil solves.
// Tolerance: ngspice 1e-9 of the value: its linear solver and ours both leave rounding only, and
//            it prints 14 digits. Hand cases: exact up to rounding.
#include "electrics/circuit.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "reference/electrics/netlist.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

void compare(const std::filesystem::path& file) {
  const auto elements = read_netlist(file);
  const auto ours = solve(elements, "0");
  ASSERT_TRUE(ours) << file << ": " << ours.error().what;
  const auto theirs = simulate(file);
  ASSERT_FALSE(theirs.empty()) << file;
  double worst = 0;
  int compared = 0;
  const auto one = [&](const std::string& name, double got) {
    const auto found = theirs.find(lower(name));
    ASSERT_NE(found, theirs.end()) << file << ": " << name;
    worst =
        std::max(worst, std::abs(got - found->second) / std::max(1e-3, std::abs(found->second)));
    ++compared;
  };
  for (const auto& n : ours->nodes) {
    if (n.node != "0") one(n.node, n.volts);
  }
  for (std::size_t i = 0; i < elements.size(); ++i) {
    if (elements[i].kind == Branch::voltage_source) {
      one(elements[i].name + "#branch", ours->branches[i].amperes);
    }
  }
  test::check({"starting-circuit",
               fmt::format("circuit {}: worst of {} figures", file.stem().string(), compared),
               "ngspice, operating point of the same netlist", "0 (relative difference)", 0, worst,
               1e-9, "both solve the same linear equations: rounding only"});
}

TEST(CircuitCases, EveryNetlistAgainstNgspice) {
  const auto files = netlists();
  ASSERT_GE(files.size(), 10U);
  if (!simulator_there()) GTEST_SKIP() << "ngspice is not installed: no second opinion";
  for (const auto& file : files) compare(file);
}

// Internal resistance of a source is the same as a resistor of its own beside it.
TEST(CircuitCases, InternalResistanceIsASeriesResistor) {
  const auto own = solve(
      std::vector<CircuitElement>{{Branch::voltage_source, "battery", "plus", "0", 12.6, 0.008},
                                  {Branch::current_source, "starter", "plus", "0", 200, 0}},
      "0");
  ASSERT_TRUE(own);
  EXPECT_NEAR(*voltage_at(*own, "plus"), 12.6 - 200 * 0.008, 1e-12);
  EXPECT_NEAR(branch_of(*own, "battery")->amperes, -200, 1e-9);
}

TEST(CircuitCases, ByHand) {
  // The corner-to-corner resistance of a cube of equal resistors is 5/6 of one.
  std::vector<std::pair<const char*, const char*>> edges{
      {"g", "a"}, {"g", "b"}, {"g", "c"}, {"a", "d"}, {"a", "e"}, {"b", "d"},
      {"b", "f"}, {"c", "e"}, {"c", "f"}, {"d", "0"}, {"e", "0"}, {"f", "0"}};
  std::vector<CircuitElement> cube{{Branch::current_source, "i", "0", "g", 1, 0}};
  for (const auto& [from, to] : edges) {
    cube.push_back({Branch::resistor, std::string(from) + to, from, to, 1, 0});
  }
  test::check({"starting-circuit", "cube of resistors, corner to corner", "by symmetry: 5/6",
               "0.8333 ohm", 5.0 / 6.0, *voltage_at(*solve(cube, "0"), "g"), 1e-12, "exact"});
  // A balanced bridge carries nothing across.
  const std::vector<CircuitElement> bridge{
      {Branch::voltage_source, "v", "a", "0", 9, 0}, {Branch::resistor, "r1", "a", "b", 10, 0},
      {Branch::resistor, "r2", "a", "c", 20, 0},     {Branch::resistor, "r3", "b", "0", 30, 0},
      {Branch::resistor, "r4", "c", "0", 60, 0},     {Branch::resistor, "r5", "b", "c", 5, 0}};
  test::check({"starting-circuit", "balanced bridge", "by hand", "0 A", 0,
               branch_of(*solve(bridge, "0"), "r5")->amperes, 1e-12, "exact"});
}

}  // namespace
