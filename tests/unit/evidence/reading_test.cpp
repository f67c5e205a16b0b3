#include "evidence/reading.hpp"

#include <gtest/gtest.h>

#include "evidence/conformity.hpp"
#include "evidence/declarations.hpp"
#include "evidence/meter_uncertainty.hpp"

namespace wm::evidence {
namespace {

using quantity::Date;
Date day(const char* text) { return *quantity::parse_date(text); }

TEST(InstrumentFoundBad, ListsAllSinceItWasLastGood) {
  const std::vector<TakenReading> readings{{"r1", "DMM-1", day("2026-02-28")},
                                           {"r2", "DMM-1", day("2026-03-01")},
                                           {"r3", "DMM-1", day("2026-03-02")},
                                           {"r4", "DMM-2", day("2026-03-02")},
                                           {"r5", "DMM-1", {}},
                                           {"r6", "DMM-1", day("2026-09-01")}};
  const auto bad = readings_in_doubt(readings, "DMM-1", day("2026-03-01"));
  ASSERT_EQ(bad.size(), 4u);
  EXPECT_EQ(bad[0].index, 1u);  // that very day: nobody knows which came first
  EXPECT_EQ(bad[1].index, 2u);
  EXPECT_EQ(bad[2].index, 4u);  // no date
  EXPECT_EQ(bad[3].index, 5u);
  EXPECT_NE(bad[1].why.find("2026-03-01"), std::string::npos);
  const auto until = readings_in_doubt(readings, "DMM-1", day("2026-03-01"), day("2026-06-01"));
  EXPECT_EQ(until.size(), 3u);
  EXPECT_EQ(readings_in_doubt(readings, "DMM-1", {}).size(), 5u);  // never shown good: all
  EXPECT_TRUE(readings_in_doubt(readings, "DMM-9", {}).empty());
}

TEST(Calibration, UnknownIsNotFine) {
  Instrument i;
  EXPECT_EQ(calibration_on(i, day("2026-05-01")), CalibrationState::unknown);
  i.calibrated = day("2026-03-01");
  EXPECT_EQ(calibration_on(i, day("2026-05-01")), CalibrationState::unknown);
  EXPECT_EQ(calibration_on(i, day("2026-02-01")), CalibrationState::not_yet);
  i.calibration_due = day("2027-03-01");
  EXPECT_EQ(calibration_on(i, day("2026-05-01")), CalibrationState::in_date);
  EXPECT_EQ(calibration_on(i, day("2027-03-01")), CalibrationState::in_date);
  EXPECT_EQ(calibration_on(i, day("2027-03-02")), CalibrationState::past_due);
}

TEST(Ranges, FoundByName) {
  Instrument i;
  i.id = "DMM-1";
  i.ranges.resize(2);
  i.ranges[0].name = "6 kohm";
  i.ranges[1].name = "60 kohm";
  EXPECT_EQ(range_of(i, "60 kohm")->name, "60 kohm");
  const auto none = range_of(i, "600 kohm");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().kind, Kind::not_found);
  EXPECT_NE(none.error().expected.find("6 kohm, 60 kohm"), std::string::npos);
  Reading r;
  r.range = "600 kohm";
  EXPECT_EQ(conformity_input(r, &i).error().path, "range");
  r.range = "60 kohm";
  EXPECT_EQ(conformity_input(r, &i)->meter->name, "60 kohm");
  EXPECT_FALSE(conformity_input(r, nullptr)->meter.has_value());
}

TEST(Declarations, EveryMemberIsDescribed) {
  for (const auto* type :
       {&describe::type_of<MeterRange>(), &describe::type_of<Instrument>(),
        &describe::type_of<Reading>(), &describe::type_of<MeterUncertaintyInput>(),
        &describe::type_of<MeterUncertainty>(), &describe::type_of<ConformityInput>(),
        &describe::type_of<Conformity>(), &describe::type_of<SuchParts>(),
        &describe::type_of<BudgetRow>()})
    EXPECT_EQ(describe::undescribed_gap(*type), "") << type->name;
  describe::Catalogue catalogue;
  declare(catalogue);
  ASSERT_NE(catalogue.find("meter-uncertainty"), nullptr);
  ASSERT_NE(catalogue.find("conformity"), nullptr);
  EXPECT_FALSE(catalogue.find("conformity")->sources.empty());
}

}  // namespace
}  // namespace wm::evidence
