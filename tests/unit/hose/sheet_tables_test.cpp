// A sheet does not print figures that its own tables contradict.
#include "hose/sheet_tables.hpp"

#include <gtest/gtest.h>

#include "hose/declarations.hpp"
#include "hose/proof_pressure.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

EnteredPressure psi(const char* text) { return *quantity::read<quantity::PressureGauge>(text); }
EnteredLength length(const char* text) { return *quantity::read<quantity::Length>(text); }

class SheetTables : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
    in.title = "invented";
    in.near_end.seat = {length("0 in"), length("0 in"), length("0 in")};
    in.near_end.leaves = {1, 0, 0};
    in.near_end.rigid = length("1.5 in");
    in.far_end.seat = {length("14 in"), length("13 in"), length("4 in")};
    in.far_end.leaves = {0, -1, 0};
    in.far_end.rigid = length("1.5 in");
    in.outside_diameter = length("0.77 in");
    in.least_radius = length("4.63 in");
    in.family = "MIL-H-8794";
    in.size = "-8";
  }
  [[nodiscard]] std::string all() const {
    std::string out;
    for (const auto& line : compared_with_tables(in, context).lines) out += line + "\n";
    return out;
  }
  describe::Catalogue catalogue;
  describe::Context context;
  HoseSheetInput in;
};

// Symptom: 9000 psi proof (table 4000), 5000 psi working (table 2000), radius 2 in (table 4.63):
// not a word. AC 43.13-1B CHG 1, table 9-3, page 9-22, row -8.
TEST_F(SheetTables, PressuresAboveTheTableAreRefusedAtTheirPath) {
  in.proof_pressure = psi("9000 psi");
  in.working_pressure = psi("5000 psi");
  const auto got = hose_sheet(in, context);
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 2U);
  EXPECT_EQ(got.error()[0].path, "working_pressure");
  EXPECT_NE(got.error()[0].what.find("5000 psi is above the 2000 psi of MIL-H-8794 -8"),
            std::string::npos)
      << got.error()[0].what;
  EXPECT_EQ(got.error()[1].path, "proof_pressure");
  EXPECT_NE(got.error()[1].expected.find("at most 4000 psi (AC 43.13-1B"), std::string::npos)
      << got.error()[1].expected;
  in.proof_pressure = psi("4000 psi");
  in.working_pressure = psi("2000 psi");
  EXPECT_TRUE(hose_sheet(in, context));
}

TEST_F(SheetTables, ASmallerRadiusIsToldNotRefused) {
  EXPECT_EQ(all().find("Least radius"), std::string::npos);
  in.least_radius = length("2 in");
  EXPECT_NE(all().find("Least radius 2.000 in to the inside is smaller than the table's for "
                       "MIL-H-8794 -8: 4.63 in to the inside (AC 43.13-1B"),
            std::string::npos)
      << all();
  // To the centreline the same hose has half its diameter more.
  in.radius_to = RadiusTo::centreline;
  in.least_radius = length("5.015 in");
  EXPECT_EQ(all().find("Least radius"), std::string::npos);
  in.least_radius = length("5 in");
  EXPECT_NE(all().find("Least radius"), std::string::npos);
  EXPECT_TRUE(hose_sheet(in, context));
}

TEST_F(SheetTables, TheProofPressureOfTheTableIsOffered) {
  EXPECT_NE(all().find("for MIL-H-8794 -8 it is 4000 psi at most (AC 43.13-1B"), std::string::npos)
      << all();
  const auto got = hose_sheet(in, context);
  ASSERT_TRUE(got);
  int lines = 0;
  for (const auto& line : got->lines) lines += line.find("Proof pressure") == 0 ? 1 : 0;
  EXPECT_EQ(lines, 1);
  in.family = "MIL-H-25579";
  EXPECT_NE(all().find("3000 psi at most with swivel nuts"), std::string::npos) << all();
}

TEST_F(SheetTables, AnUnknownFamilyIsComparedWithNothing) {
  in.family = "invented";
  in.proof_pressure = psi("9000 psi");
  in.working_pressure = psi("5000 psi");
  in.least_radius = length("2 in");
  EXPECT_TRUE(hose_sheet(in, context));
  EXPECT_EQ(all(), "");
  in.family = "MIL-H-8794";
  in.size = "-9";
  EXPECT_NE(all().find("has no size \"-9\""), std::string::npos) << all();
  EXPECT_TRUE(hose_sheet(in, context));
}

}  // namespace
