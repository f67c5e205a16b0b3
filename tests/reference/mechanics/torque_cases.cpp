// Source:    T1 navy text, T2 and T3 a maintenance manual's standard practices, T4 a torque-wrench
//            leaflet, T5 and T6 derived (rules-records notes, section 6); hoses.md case 1 is the
//            worked example of TM 1-1500-204-23-9.
// Tolerance: half a unit of the last printed digit.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "mechanics/declarations.hpp"
#include "mechanics/torque.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::mechanics;

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}

struct Row {
  const char* id;
  const char* source;
  const char* wanted;
  const char* drag;
  const char* lever;
  const char* extension;
  const char* angle;
  bool shortens;
  const char* unit;
  double expected;
  double tolerance;
};

class Wrench : public testing::TestWithParam<Row> {};

TEST_P(Wrench, IsSetAsTheSourceSays) {
  const Row& row = GetParam();
  TorqueSettingInput in;
  in.wanted = typed<quantity::Torque>(row.wanted);
  if (*row.drag) in.drag = typed<quantity::Torque>(row.drag);
  in.lever = typed<quantity::Length>(row.lever);
  in.extension = typed<quantity::Length>(row.extension);
  if (*row.angle) in.angle = typed<quantity::Angle>(row.angle);
  in.shortens = row.shortens;
  const auto got = torque_setting(in, {});
  ASSERT_TRUE(got);
  const auto* unit = quantity::find_unit(quantity::KindOf::torque, row.unit);
  ASSERT_NE(unit, nullptr);
  test::check({"torque-setting", row.id, row.source, fmt::format("{} {}", row.expected, row.unit),
               row.expected, got->setting.value.si / unit->factor, row.tolerance,
               "half a unit of the last printed digit"});
}

const char* const k_derived = "derived in the rules-records notes, section 6";
INSTANTIATE_TEST_SUITE_P(
    Published, Wrench,
    testing::Values(Row{"T1 in line", "NAVEDTRA text on torque wrenches", "100 in-lb", "", "12 in",
                        "6 in", "", false, "in-lb", 66.7, 0.05},
                    Row{"T2 longer", "a maintenance manual's standard practices", "135 in-lb", "",
                        "10 in", "1.5 in", "", false, "in-lb", 117.4, 0.05},
                    Row{"T3 shorter", "a maintenance manual's standard practices", "135 in-lb", "",
                        "10 in", "1.5 in", "", true, "in-lb", 158.8, 0.05},
                    Row{"T4 foot-pounds", "torque-wrench leaflet", "50 ft-lb", "", "16 in", "2 in",
                        "", false, "ft-lb", 44.4, 0.05},
                    Row{"T5 at 0 degrees", k_derived, "60 in-lb", "", "10 in", "2 in", "0 deg",
                        false, "in-lb", 50.0, 0.05},
                    Row{"T5 at 45 degrees", k_derived, "60 in-lb", "", "10 in", "2 in", "45 deg",
                        false, "in-lb", 52.57, 0.005},
                    Row{"T5 at 90 degrees", k_derived, "60 in-lb", "", "10 in", "2 in", "90 deg",
                        false, "in-lb", 60.0, 0.05},
                    Row{"T6 with drag", k_derived, "60 in-lb", "7 in-lb", "10 in", "2 in", "",
                        false, "in-lb", 55.8, 0.05},
                    Row{"attachment in line",
                        "TM 1-1500-204-23-9, worked example (hoses notes, case 1)", "300 in-lb", "",
                        "10 in", "4 in", "", false, "in-lb", 214.0, 0.5}));

// T6 again, with the torque taken from the table: AN4 is 1/4-28.
TEST(TorqueTable, T6FromTheTableItself) {
  describe::Catalogue catalogue;
  declare(catalogue);
  describe::Context context;
  context.tables = catalogue.tables();
  TorqueSettingInput in;
  in.table = "torque-bolts";
  in.size = "1/4-28";
  in.which = "tension nut";
  in.drag = typed<quantity::Torque>("7 in-lb");
  in.lever = typed<quantity::Length>("10 in");
  in.extension = typed<quantity::Length>("2 in");
  const auto got = torque_setting(in, context);
  ASSERT_TRUE(got);
  test::check({"torque-setting", "T6 from table 7-1", "AC 43.13-1B table 7-1, 1/4-28: 50 to 70",
               "55.8 in-lb", 55.8, got->setting.value / quantity::inch_pounds(1), 0.05,
               "half a unit of the last printed digit"});
  EXPECT_NE(got->torque_source.find("torque-bolts, 1/4-28, tension nut: 50 to 70 in-lb"),
            std::string::npos);
}

TEST(TorqueTable, NewtonMetresAsDerivedBesideTable7_1) {
  describe::Catalogue catalogue;
  declare(catalogue);
  describe::Context context;
  context.tables = catalogue.tables();
  struct Nm {
    const char* size;
    double low, high, tolerance;
  };
  for (const Nm& row : {Nm{"8-36", 1.36, 1.69, .006}, Nm{"10-32", 2.26, 2.82, .006},
                        Nm{"1/4-28", 5.65, 7.91, .006}, Nm{"5/16-24", 11.30, 15.82, .006},
                        Nm{"3/8-24", 18.08, 21.47, .006}, Nm{"7/16-20", 50.84, 56.49, .006},
                        Nm{"1/2-20", 54.23, 77.96, .006}, Nm{"9/16-18", 90.4, 113.0, .06},
                        Nm{"5/8-18", 124.3, 146.9, .06}, Nm{"3/4-16", 259.9, 282.5, .06}}) {
    const auto band = torque_band(context, "torque-bolts", row.size, "tension nut");
    ASSERT_TRUE(band) << row.size;
    EXPECT_NEAR(band->lowest.si, row.low, row.tolerance) << row.size;
    EXPECT_NEAR(band->highest.si, row.high, row.tolerance) << row.size;
    EXPECT_TRUE(band->may_be_limit);
  }
}

// The two published tables for hose nuts disagree; both stay, and the disagreement is watched.
TEST(TorqueTable, TheTwoHoseNutTablesDisagree) {
  describe::Catalogue catalogue;
  declare(catalogue);
  describe::Context context;
  context.tables = catalogue.tables();
  const auto one = torque_band(context, "torque-hose-nuts", "-8", "steel");
  const auto other = torque_band(context, "torque-hose-nuts-lubricated", "-8", "");
  ASSERT_TRUE(one && other);
  EXPECT_NEAR(one->lowest / quantity::inch_pounds(1), 430, 1e-9);
  EXPECT_NEAR(other->highest / quantity::inch_pounds(1), 420, 1e-9);
}

}  // namespace
