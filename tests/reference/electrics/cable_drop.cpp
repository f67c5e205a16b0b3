// Source:    AC 43.13-1B CHG 1 (27 Sep 2001), page 11-22 tables 11-7 and 11-8, page 11-26
//            example 1, table 11-9; gauge formula of ASTM B258-02 (public extract); IEC 60228 in
//            three public extracts; FAA-H-8083-31, text of fig. 9-121.
// Tolerance: half a unit of the last printed digit, or as stated with the case.
// Errata:    table 11-8 prints 0.366 V for No. 10, 19.5 ft, 20 A; its own factors give 0.491 V.
//            Table 11-7 gives No. 4 for 90 ft, 20 A, 0.5 V although its own figure is 0.504 V.
//            Both stay in view: if either ever agrees, someone has changed the data.
#include "electrics/cable_drop.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include "support/reference_case.hpp"
#include "tables/electrics/wire_aircraft_copper.hpp"
#include "tables/electrics/wire_metric.hpp"
#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

CableDropAnswer drop(const char* size, const char* run, const char* amps,
                     NominalVoltage nominal = NominalVoltage::v28,
                     CableKind kind = CableKind::aircraft_copper) {
  CableDropInput in;
  in.conductor = wire(size, kind);
  in.length = length(run);
  in.current = current(amps);
  in.nominal = nominal;
  return *cable_drop(in, {});
}

TEST(CableDropCases, E3S1Table11_7) {
  const auto got = drop("6", "107 ft", "20 A");
  test::check({"cable-drop", "E3 No. 6, 107 ft, 20 A", "AC 43.13-1B table 11-7, page 11-22",
               "0.942 V", 0.942, got.drop.si, 0.0005, "half a unit of the last printed digit"});
  EXPECT_EQ(got.standing, Against::within);
}

TEST(CableDropCases, E4S2Table11_7WithItsOwnMiss) {
  const auto got = drop("4", "90 ft", "20 A", NominalVoltage::v14);
  test::check({"cable-drop", "E4 No. 4, 90 ft, 20 A", "AC 43.13-1B table 11-7, page 11-22",
               "0.504 V", 0.504, got.drop.si, 0.0005, "half a unit of the last printed digit"});
  EXPECT_EQ(got.standing, Against::over) << "the page accepts 0.504 V for a limit of 0.5 V";
}

TEST(CableDropCases, E5S3LongestRunAtOneVolt) {
  const auto got = drop("10", "30 ft", "20 A");
  test::check({"cable-drop", "E5 No. 10, 20 A, 1 V",
               "AC 43.13-1B table 11-8 (the chart reads 39 ft)", "39.7 ft", 39.7,
               got.longest_run->si / 0.3048, 0.2, "stated with the case"});
  const auto at_39 = drop("10", "39 ft", "20 A");
  test::check({"cable-drop", "S3 No. 10, 39 ft, 20 A", "AC 43.13-1B table 11-8", "0.98 V", 0.98,
               at_39.drop.si, 0.005, "half a unit of the last printed digit"});
}

TEST(CableDropCases, E6S4Table11_8WithItsMisprint) {
  const auto got = drop("10", "19.5 ft", "20 A", NominalVoltage::v14);
  test::check({"cable-drop", "E6 No. 10, 19.5 ft, 20 A (the page prints .366: misprint)",
               "AC 43.13-1B table 11-8, its own factors", "0.491 V", 0.491, got.drop.si, 0.0005,
               "half a unit of the last printed digit"});
  EXPECT_GT(std::abs(got.drop.si - 0.366), 0.1) << "the misprint is gone: check the edition";
  EXPECT_NEAR(got.longest_run->si / 0.3048, 19.5, 0.5);
}

TEST(CableDropCases, E12FeederTwoPerCent) {
  DropLimitQuestion question;
  question.role = CircuitRole::feeder;
  question.regulated = voltage("14.2 V");
  const auto limit = drop_limit(question);
  ASSERT_TRUE(limit);
  EXPECT_FALSE(limit->advice);
  test::check({"cable-drop", "E12 2 % of 14.2 V", "FAA-H-8083-31, text of fig. 9-121", "0.284 V",
               0.284, limit->volts, 1e-12, "exact"});
}

TEST(CableDropCases, E25MetricFlexibleTinned) {
  const auto got = drop("1.5 mm2", "10 m", "1 A", NominalVoltage::v28, CableKind::class_5_tinned);
  test::check({"cable-drop", "E25 1.5 mm2 class 5 tinned, 10 m", "IEC 60228 (public extracts)",
               "0.137 ohm", 0.137, got.resistance.si, 1e-12, "exact"});
  EXPECT_EQ(got.standing, Against::advice_within);
}

// Table 11-6 itself: limits as given, the intermittent ones as advice.
TEST(CableDropCases, Table11_6) {
  struct Row {
    NominalVoltage nominal;
    const char* name;
    double continuous, intermittent;
  };
  for (const Row& row :
       {Row{NominalVoltage::v14, "14 V", 0.5, 1}, Row{NominalVoltage::v28, "28 V", 1, 2},
        Row{NominalVoltage::v115, "115 V", 4, 8}, Row{NominalVoltage::v200, "200 V", 7, 14}}) {
    DropLimitQuestion q;
    q.nominal = row.nominal;
    const auto steady = *drop_limit(q);
    q.duty = Duty::intermittent;
    const auto short_time = *drop_limit(q);
    test::check({"cable-drop", fmt::format("table 11-6, {} continuous", row.name),
                 "AC 43.13-1B table 11-6 as repeated in tables 11-7 and 11-8",
                 fmt::format("{} V", row.continuous), row.continuous, steady.volts, 1e-12,
                 "exact"});
    test::check({"cable-drop", fmt::format("table 11-6, {} intermittent", row.name),
                 "AC 43.13-1B table 11-6, public transcription (advice)",
                 fmt::format("{} V", row.intermittent), row.intermittent, short_time.volts, 1e-12,
                 "exact"});
    EXPECT_FALSE(steady.advice);
    EXPECT_TRUE(short_time.advice);
  }
}

TEST(WireCases, E1E2GaugeGeometry) {
  const auto solid_per_1000_ft = [](int gauge) {
    const double d = gauge_diameter(gauge).si;
    return resistivity(Metal::copper) * 304.8 / (3.14159265358979 * d * d / 4);
  };
  const auto mils = [](int gauge) { return gauge_diameter(gauge).si / 25.4e-6; };
  const std::string gauge = "gauge formula as published for ASTM B258-02; IEC 60287-1-1";
  test::check({"electrics", "E1 AWG 20 diameter", gauge, "0.0320 in", 0.0320, mils(20) / 1000,
               0.00005, "half a unit of the last printed digit"});
  test::check({"electrics", "E1 AWG 20 solid copper", gauge, "10.15 ohm/1000 ft", 10.15,
               solid_per_1000_ft(20), 0.0203, "0.2 %, stated with the case"});
  test::check({"electrics", "E2 AWG 0000 diameter", gauge, "0.4600 in", 0.46, mils(-3) / 1000,
               0.000046, "0.01 %, stated with the case"});
  test::check({"electrics", "E2 AWG 0000 area", gauge, "211600 circ mil", 211600,
               mils(-3) * mils(-3), 21.16, "0.01 %, stated with the case"});
  struct Solid {
    int gauge;
    double inches, ohms;
  };
  for (const Solid& s : {Solid{24, .0201, 25.67}, Solid{22, .0253, 16.14}, Solid{18, .0403, 6.385},
                         Solid{16, .0508, 4.015}, Solid{14, .0641, 2.525}, Solid{12, .0808, 1.588},
                         Solid{10, .1019, .999}, Solid{8, .1285, .628}, Solid{6, .1620, .395},
                         Solid{4, .2043, .2485}, Solid{2, .2576, .1563}, Solid{1, .2893, .1239},
                         Solid{0, .3249, .0983}, Solid{-1, .3648, .0779}, Solid{-2, .4096, .0618},
                         Solid{-3, .4600, .0490}}) {
    EXPECT_NEAR(mils(s.gauge) / 1000, s.inches, 0.00005 * 1.001) << s.gauge;
    EXPECT_NEAR(solid_per_1000_ft(s.gauge) / s.ohms, 1, 0.002) << s.gauge;
  }
}

// A good stranded wire reads below its maximum: 1.12 to 1.30 times rho L / A of its own area.
TEST(WireCases, TableMaximaAgainstTheirOwnAreas) {
  for (const auto& row : tables::wire_aircraft_copper.rows) {
    const auto wire_there = *figures_of(wire(std::string(row[0])), "");
    const double solid = resistivity(Metal::copper) / (*wire_there.area_mm2 * 1e-6);
    EXPECT_GT(wire_there.ohm_per_metre / solid, 1.11) << row[0];
    EXPECT_LT(wire_there.ohm_per_metre / solid, 1.31) << row[0];
  }
}

// IEC 60228: every size and class there is, and its own temperature factors.
TEST(WireCases, MetricTableAndItsTemperatureFactors) {
  EXPECT_EQ(tables::wire_metric.rows.size(), 13U);
  struct Row {
    const char* size;
    CableKind kind;
    double ohm_per_km;
  };
  for (const Row& row :
       {Row{"0.5", CableKind::class_2_plain, 36.0}, Row{"0.75", CableKind::class_2_tinned, 24.8},
        Row{"2.5", CableKind::class_5_plain, 7.98}, Row{"16", CableKind::class_5_tinned, 1.24},
        Row{"70", CableKind::class_5_tinned, 0.277}, Row{"10", CableKind::class_2_aluminium, 3.08},
        Row{"70", CableKind::class_2_aluminium, 0.443}}) {
    const auto got = *figures_of(wire(row.size, row.kind), "");
    test::check({"cable-drop", fmt::format("{} mm2, {} ohm/km", row.size, row.ohm_per_km),
                 "IEC 60228 (public extracts)", fmt::format("{} ohm/km", row.ohm_per_km),
                 row.ohm_per_km, got.ohm_per_metre * 1000, 1e-9, "exact"});
    EXPECT_FALSE(got.read);
  }
  // The standard prints Kt = 1 / (1 + 0.004 (T - 20)): 0.781 at 90 degC where exact copper gives
  // 0.784. The known difference of 0.4 % is watched.
  const auto kt = [](double t) { return 1.0 / warm_factor(Metal::copper, t); };
  EXPECT_NEAR(kt(40), 0.926, 0.002);
  EXPECT_NEAR(kt(90), 0.784, 0.0005);
  EXPECT_GT(kt(90) - 0.781, 0.002);
}

TEST(WireCases, AluminiumTwoPublishedOffsets) {
  test::check({"electrics", "aluminium at 100 degC, to 20", "IEC 60287-1-1 offset 228", "0.756",
               0.756, 1 / warm_factor(Metal::aluminium, 100), 0.0005,
               "half a unit of the last printed digit"});
  test::check({"electrics", "aluminium at 100 degC, as the page has it",
               "AC 43.13-1B page 11-22: 258.1 / (238.1 + T)", "0.763", 0.763,
               1 / warm_factor_of_page(Metal::aluminium, 100), 0.0005,
               "half a unit of the last printed digit"});
}

}  // namespace
