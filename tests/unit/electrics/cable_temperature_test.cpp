#include "electrics/cable_temperature.hpp"

#include <gtest/gtest.h>

#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

CableTemperatureInput in_a_bundle(const char* size, const char* amps) {
  CableTemperatureInput in;
  in.conductor = wire(size);
  in.current = current(amps);
  in.surroundings.ambient = temperature("50 degC");
  in.surroundings.rating = temperature("200 degC");
  in.surroundings.wires = 8;
  in.surroundings.loading = quantity::per_cent(60);
  return in;
}

TEST(CableTemperature, TellsFourStandings) {
  EXPECT_EQ(cable_temperature(in_a_bundle("14", "15 A"), {})->standing,
            CurrentStanding::within_curves);
  EXPECT_EQ(cable_temperature(in_a_bundle("14", "25 A"), {})->standing, CurrentStanding::too_close);
  EXPECT_EQ(cable_temperature(in_a_bundle("14", "40 A"), {})->standing, CurrentStanding::over);
  auto in = in_a_bundle("14", "15 A");
  in.surroundings.loading = quantity::per_cent(20);
  EXPECT_EQ(cable_temperature(in, {})->standing, CurrentStanding::within_table);
}

TEST(CableTemperature, LargeSizesUseTheBundleColumnAndNothingIsGuessed) {
  auto in = in_a_bundle("4", "100 A");
  const auto outside = cable_temperature(in, {});
  EXPECT_EQ(outside->standing, CurrentStanding::no_figure);
  EXPECT_TRUE(says(outside->notes, "No free-air points were obtained for No. 4"));
  EXPECT_FALSE(outside->allowed);
  in.surroundings.loading = quantity::per_cent(20);
  const auto inside = cable_temperature(in, {});
  EXPECT_EQ(inside->standing, CurrentStanding::within_table);
  EXPECT_NEAR(inside->table->si, 133, 1e-9);
  in.surroundings.rating = temperature("100 degC");
  EXPECT_EQ(cable_temperature(in, {})->standing, CurrentStanding::no_figure);
}

TEST(CableTemperature, TheRatingTakesTheColumnBelow) {
  EXPECT_EQ(*bundle_column("10", 149), 17);
  EXPECT_EQ(*bundle_column("10", 150), 26);
  EXPECT_EQ(*bundle_column("10", 260), 32);
  EXPECT_FALSE(bundle_column("10", 90));
  EXPECT_FALSE(bundle_column("11", 150));
}

TEST(CableTemperature, EstimateIsCautious) {
  const auto got = cable_temperature(in_a_bundle("14", "15 A"), {});
  ASSERT_TRUE(got->conductor && got->by_curve);
  EXPECT_GT(got->conductor->si, got->by_curve->si);
  EXPECT_GT(got->by_curve->si, 273.15 + 50);
  EXPECT_FALSE(cable_temperature(in_a_bundle("14", "40 A"), {})->conductor);
}

TEST(CableTemperature, FactorsEndWhereTheirPointsEnd) {
  EXPECT_FALSE(bundle_factor(20, {0.6}));
  EXPECT_TRUE(bundle_factor(20, {0.2}));
  EXPECT_FALSE(bundle_factor(34, {0.2}));
  EXPECT_NEAR(*bundle_factor(7, {0.2}), (0.850 + 0.795) / 2, 1e-12);
  EXPECT_NEAR(*bundle_factor(8, {0.1}), 0.795, 1e-12);
  EXPECT_NEAR(*altitude_factor(quantity::feet(2500)), 0.99, 1e-12);
  EXPECT_NEAR(*altitude_factor(quantity::feet(-500)), 1, 1e-12);
  EXPECT_FALSE(altitude_factor(quantity::feet(61000)));
}

TEST(CableTemperature, RefusesWhatDoesNotFit) {
  auto in = in_a_bundle("14", "15 A");
  in.surroundings.ambient = temperature("200 degC");
  in.short_current = current("100 A");
  const auto got = cable_temperature(in, {});
  ASSERT_FALSE(got);
  EXPECT_TRUE(complains(got.error(), "surroundings/rating", Kind::conflict));
  EXPECT_TRUE(complains(got.error(), "short_time", Kind::missing));
}

TEST(CableTemperature, OutsideTheCurvesItSaysSo) {
  auto in = in_a_bundle("14", "5 A");
  in.surroundings.ambient = temperature("180 degC");
  const auto got = cable_temperature(in, {});
  EXPECT_EQ(got->standing, CurrentStanding::no_figure);
  EXPECT_TRUE(says(got->notes, "from 30 to 250 K"));
}

TEST(CableTemperature, AnOverloadPastTheRatingIsTold) {
  auto in = in_a_bundle("20", "5 A");
  in.short_current = current("100 A");
  in.short_time = typed<quantity::Duration>("5 s");
  const auto got = cable_temperature(in, {});
  EXPECT_TRUE(says(got->do_next, "overload could pass the rating"));
  ASSERT_TRUE(got->time_to_rating);
  EXPECT_LT(got->time_to_rating->si, 5);
  auto makers = in;
  makers.conductor = wire("", CableKind::makers_copper);
  makers.conductor.resistance = typed<quantity::ResistancePerLength>("1 mohm/ft");
  EXPECT_TRUE(says(cable_temperature(makers, {})->notes, "needs the area"));
}

}  // namespace
