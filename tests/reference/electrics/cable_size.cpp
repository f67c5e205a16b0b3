// Source:    AC 43.13-1B CHG 1, tables 11-7 and 11-8 (page 11-22), page 11-26 example 1, page
//            11-23 (aluminium), table 11-3 (page 11-15).
// Tolerance: a size is exact.
#include "electrics/cable_size.hpp"

#include <gtest/gtest.h>

#include "support/reference_case.hpp"
#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

CableSizeInput run(const char* feet, const char* amps, NominalVoltage nominal) {
  CableSizeInput in;
  in.length = length(feet);
  in.current = current(amps);
  in.nominal = nominal;
  return in;
}

TEST(CableSizeCases, S1Table11_7) {
  const auto got = cable_size(run("107 ft", "20 A", NominalVoltage::v28), {});
  test::check_text("cable-size", "S1 107 ft, 20 A, 1 V", "AC 43.13-1B table 11-7", "6", got->size);
  EXPECT_EQ(got->binding, SizeRule::drop);
}

// S2: the page takes No. 4, whose own figure (0.504 V) is over the 0.5 V it is chosen for.
TEST(CableSizeCases, S2KnownDisagreement) {
  const auto got = cable_size(run("90 ft", "20 A", NominalVoltage::v14), {});
  EXPECT_EQ(got->size, "2");
  auto in = run("90 ft", "20 A", NominalVoltage::v14);
  in.limit = voltage("0.504 V");
  test::check_text("cable-size", "S2 90 ft, 20 A, by the page's own 0.504 V",
                   "AC 43.13-1B table 11-7", "4", cable_size(in, {})->size);
}

TEST(CableSizeCases, S3S4Table11_8) {
  test::check_text("cable-size", "S3 39 ft, 20 A, 1 V", "AC 43.13-1B table 11-8", "10",
                   cable_size(run("39 ft", "20 A", NominalVoltage::v28), {})->size);
  test::check_text("cable-size", "S4 19.5 ft, 20 A, 0.5 V", "AC 43.13-1B table 11-8", "10",
                   cable_size(run("19.5 ft", "20 A", NominalVoltage::v14), {})->size);
}

TEST(CableSizeCases, E7S5Page11_26) {
  auto in = run("25 ft", "20 A", NominalVoltage::v28);
  in.return_length = length("25 ft");
  const auto got = cable_size(in, {});
  test::check_text("cable-size", "E7 S5 50 ft with its ground wire, 20 A, 28 V continuous",
                   "AC 43.13-1B page 11-26, example 1", "8", got->size);
  EXPECT_FALSE(got->advice);
}

TEST(CableSizeCases, E26Protection) {
  test::check({"cable-size", "E26 breaker for No. 18", "AC 43.13-1B table 11-3, page 11-15", "10 A",
               10, *protection_of("18").breaker, 1e-12, "exact"});
  EXPECT_EQ(*protection_of("18").fuse, 10);
  EXPECT_EQ(*protection_of("10").breaker, 40);
  EXPECT_FALSE(protection_of("0").breaker);
  EXPECT_EQ(*protection_of("0").fuse, 150);
  EXPECT_FALSE(protection_of("24").breaker);
}

TEST(CableSizeCases, AluminiumTwoSizesLarger) {
  auto in = run("107 ft", "20 A", NominalVoltage::v28);
  in.metal = Metal::aluminium;
  test::check_text("cable-size", "aluminium for No. 6 copper",
                   "AC 43.13-1B page 11-23: two sizes "
                   "larger",
                   "2", cable_size(in, {})->size);
  in = run("10 ft", "5 A", NominalVoltage::v28);
  in.metal = Metal::aluminium;
  const auto least = cable_size(in, {});
  test::check_text("cable-size", "least aluminium", "AC 43.13-1B page 11-23: not below No. 8", "8",
                   least->size);
  EXPECT_EQ(least->binding, SizeRule::aluminium);
}

}  // namespace
