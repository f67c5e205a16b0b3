// Source:    electrical notes, section 7 (Paschen's law for air with the constants of a public
//            physics text, C rounded to 1.18; linear form of the same text; sphere-gap factors of a
//            public table; flashover by altitude) and section 9, E20 and E21.
// Tolerance: half a unit of the last printed digit, or as the notes state.
// Erratum:   .025 in at x8 is printed 19.8 kV; the law with these constants gives 19.7475
//            (x = 386.08 torr cm, 365 x / (1.18 + ln x)). 19.7 is kept here.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "ignition/breakdown.hpp"
#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using quantity::Length;

const std::string k_why = "half a unit of the last printed digit";

TEST(Breakdown, GapsAtOneAtmosphere) {
  struct Row {
    double mm, townsend, t_tol, linear;
  };
  constexpr std::array<Row, 7> rows{{{0.1, 865, .5, 1650},
                                     {0.2, 1422, .5, 1950},
                                     {0.4, 2415, .5, 2550},
                                     {0.5, 2879, .5, 2850},
                                     {1, 5034, .5, 4350},
                                     {2, 8943, .5, 7350},
                                     {5, 19480, 5, 16350}}};
  for (const Row& r : rows) {
    const Length gap{r.mm * 1e-3};
    check({"spark-reserve", fmt::format("Townsend's form, {} mm", r.mm),
           "electrical notes, section 7", fmt::format("{} V", r.townsend), r.townsend,
           breakdown_townsend(gap, 1.0)->si, r.t_tol, k_why});
    check({"spark-reserve", fmt::format("linear form, {} mm", r.mm), "electrical notes, section 7",
           fmt::format("{} V", r.linear), r.linear, breakdown_linear(gap, 1.0).si, 0.5, k_why});
  }
}

TEST(Breakdown, E20AndE21) {
  check({"spark-reserve", "E20 0.5 mm", "electrical notes, E20", "2 879 V", 2879,
         breakdown_townsend(Length{0.5e-3}, 1.0)->si, 2.9, "0.1 %, as stated"});
  // x = e^(1 - 1.18) = 0.835 torr cm: the law holds from there on.
  const double x = std::exp(1.0 - 1.18);
  const Length gap{x / 760.0 / 100.0};
  check({"spark-reserve", "E21 minimum", "electrical notes, E21", "304.9 V", 304.9,
         breakdown_townsend(gap * 1.000001, 1.0)->si, 0.3, "0.1 %, as stated"});
  check({"spark-reserve", "E21 place of the minimum", "electrical notes, E21", ".835 torr cm", .835,
         x, 0.0005, k_why});
  EXPECT_FALSE(breakdown_townsend(gap * 0.99, 1.0));
}

TEST(Breakdown, PlugGapsUnderPressure) {
  constexpr std::array<double, 6> ratios{1, 2, 4, 5, 6, 8};
  struct Row {
    double inch;
    std::array<const char*, 6> kv;
  };
  constexpr std::array<Row, 4> rows{{{.016, {"2.45", "4.25", "7.52", "9.06", "10.6", "13.5"}},
                                     {.018, {"2.68", "4.68", "8.30", "10.0", "11.7", "14.9"}},
                                     {.021, {"3.03", "5.31", "9.44", "11.4", "13.3", "17.0"}},
                                     {.025, {"3.48", "6.13", "10.9", "13.2", "15.4", "19.7"}}}};
  for (const Row& r : rows) {
    for (std::size_t i = 0; i < ratios.size(); ++i) {
      SparkReserveInput in;
      in.gap = entered<Length>(fmt::format("{} in", r.inch));
      in.chamber_pressure = quantity::PressureAbsolute{ratios.at(i) * 101325.0};
      const std::string printed = r.kv.at(i);
      const double tolerance = printed.size() - printed.find('.') == 3 ? 0.005 : 0.05;
      const auto got = spark_reserve(in, {});
      ASSERT_TRUE(got);
      check({"spark-reserve", fmt::format("{} in at x{}", r.inch, ratios.at(i)),
             "electrical notes, section 7", printed + " kV", std::stod(printed),
             got->asked->si / 1000, tolerance + 1e-9, k_why});
    }
  }
}

// The notes print 19.8 kV for .025 in at x8, which their own constants do not give: kept in view,
// so that nobody "mends" the constants to meet a misprint.
TEST(Breakdown, TheMisprintStaysAMisprint) {
  SparkReserveInput in;
  in.gap = entered<Length>("0.025 in");
  in.chamber_pressure = quantity::PressureAbsolute{8 * 101325.0};
  EXPECT_GT(std::abs(spark_reserve(in, {})->asked->si / 1000 - 19.8), 0.04);
}

TEST(Breakdown, FlashoverByAltitude) {
  constexpr std::array<const char*, 4> paths{"0.5 mm", "1 mm", "2 mm", "3 mm"};
  struct Row {
    int feet;
    double torr;
    std::array<const char*, 4> kv;
  };
  constexpr std::array<Row, 6> rows{{{0, 760, {"2.88", "5.03", "8.94", "12.6"}},
                                     {5000, 632, {"2.49", "4.33", "7.67", "10.8"}},
                                     {10000, 523, {"2.15", "3.71", "6.54", "9.18"}},
                                     {15000, 429, {"1.84", "3.17", "5.56", "7.78"}},
                                     {20000, 349, {"1.58", "2.69", "4.70", "6.56"}},
                                     {30000, 226, {"1.14", "1.92", "3.30", "4.58"}}}};
  for (const Row& r : rows) {
    check({"spark-reserve", fmt::format("standard pressure at {} ft", r.feet),
           "electrical notes, section 7", fmt::format("{} torr", r.torr), r.torr,
           standard_pressure(quantity::feet(r.feet)).si / 101325.0 * 760.0, 0.5, k_why});
    for (std::size_t i = 0; i < paths.size(); ++i) {
      SparkReserveInput in;
      in.gap = entered<Length>("0.018 in");
      in.chamber_pressure = quantity::PressureAbsolute{101325.0};
      in.air_path = entered<Length>(paths.at(i));
      in.altitude = entered<Length>(fmt::format("{} ft", r.feet));
      const std::string printed = r.kv.at(i);
      const double tolerance = printed.size() - printed.find('.') == 3 ? 0.005 : 0.05;
      const auto got = spark_reserve(in, {});
      ASSERT_TRUE(got);
      check({"spark-reserve", fmt::format("flashover of {} at {} ft", paths.at(i), r.feet),
             "electrical notes, section 7", printed + " kV", std::stod(printed),
             got->path_townsend->si / 1000, tolerance + 1e-9, k_why});
    }
  }
}

// The lower of the two forms is what a path is said to hold; a mate's gap comes on top.
TEST(Breakdown, PathHoldsTheLowerAndAPairAsksForTheSum) {
  SparkReserveInput in;
  in.gap = entered<Length>("0.018 in");
  in.chamber_pressure = quantity::PressureAbsolute{6 * 101325.0};
  in.mate_gap = entered<Length>("0.018 in");
  in.available = entered<quantity::Voltage>("20 kV");
  in.air_path = entered<Length>("3 mm");
  const auto got = spark_reserve(in, {});
  ASSERT_TRUE(got);
  check({"spark-reserve", "two gaps in series, x6 and x1", "electrical notes 4.7 and section 7",
         "11.7 + 2.68 kV", 14.38, got->sum->si / 1000, 0.055, k_why});
  EXPECT_NEAR(got->reserve->si, 20000 - got->sum->si, 1e-6);
  EXPECT_EQ(*got->path_holds, *got->path_linear);
}

TEST(Breakdown, SphereGapFactor) {
  describe::Context context;
  context.tables = tables::all_of_ignition();
  const auto* table = context.table("sphere-gap-factor");
  for (const auto& [density, factor] :
       {std::pair{0.70, 0.72}, std::pair{0.75, 0.77}, std::pair{0.80, 0.82}, std::pair{0.85, 0.86},
        std::pair{0.90, 0.91}, std::pair{0.95, 0.95}, std::pair{1.0, 1.0}, std::pair{1.05, 1.05},
        std::pair{1.10, 1.09}, std::pair{1.15, 1.12}}) {
    check({"spark-reserve", fmt::format("sphere gap at density {:.2f}", density),
           "a public table of sphere-gap corrections", fmt::format("{:.2f}", factor), factor,
           *sphere_gap_factor(table, density), 1e-9, "a row of the table"});
  }
  EXPECT_NEAR(*sphere_gap_factor(table, 0.725), 0.745, 1e-9);
  EXPECT_FALSE(sphere_gap_factor(table, 0.6));
  EXPECT_FALSE(sphere_gap_factor(table, 1.2));
}

}  // namespace
