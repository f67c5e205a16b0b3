// Printing: no more digits than the entry earned.
#include <gtest/gtest.h>

#include <string>

#include "quantity/readable.hpp"
#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

using enum KindOf;

/// Typed, then shown in another unit.
std::string shown(const char* typed, KindOf kind, const char* unit) {
  const auto p = parse(typed, kind);
  const Unit* u = find_unit(kind, unit);
  if (!p || u == nullptr) return "?";
  return print(p->si, *u, p->resolution_si);
}

TEST(Print, ShowsNoMoreDecimalsThanWereTyped) {
  EXPECT_EQ(shown("38 in", length, "cm"), "97 cm");
  EXPECT_EQ(shown("38 in", length, "in"), "38 in");
  EXPECT_EQ(shown("38.0 in", length, "in"), "38.0 in");
  EXPECT_EQ(shown("38.00 in", length, "cm"), "96.52 cm");
  EXPECT_EQ(shown("38 in", length, "mm"), "970 mm");
  EXPECT_EQ(shown("15.6 kohm", resistance, "ohm"), "15600 ohm");
  EXPECT_EQ(shown("15.6 kohm", resistance, "kohm"), "15.6 kohm");
  EXPECT_EQ(shown("15 degF", temperature, "degC"), "-9.4 degC");
  EXPECT_EQ(shown("120 in-lb", torque, "Nm"), "13.6 N\u00b7m");
  EXPECT_EQ(shown("28 psi", pressure_gauge, "kPa"), "193 kPa");
  EXPECT_EQ(shown("2 h 30 min", time, "h"), "2.50 h");
  EXPECT_EQ(shown("70 %", fraction, "%"), "70 %");
}

TEST(Print, AComputedValueStandsInTheUnitThatPeopleSay) {
  const auto us = [](KindOf kind, double si) {
    return print(si, readable_unit(kind, si, UnitSet::us_customary), 0);
  };
  EXPECT_EQ(us(resistance, 0.0005), "0.5000 mohm");
  EXPECT_EQ(us(resistance, 85.2), "85.20 ohm");
  EXPECT_EQ(us(resistance, 15600), "15.60 kohm");
  EXPECT_EQ(us(resistance, 4.5e8), "450.0 Mohm");
  EXPECT_EQ(us(resistance, -0.0005), "-0.5000 mohm");
  EXPECT_EQ(us(current, 0.0001111), "0.1111 mA");
  EXPECT_EQ(us(current, 20), "20.00 A");
  EXPECT_EQ(us(length, 2377.7), "7801 ft");
  EXPECT_EQ(us(length, 0.5334), "21.00 in");
  EXPECT_EQ(us(power, 9.8), "9.800 W");
  EXPECT_EQ(print(2377.7, readable_unit(length, 2377.7, UnitSet::si), 0), "2378 m");
  EXPECT_EQ(&readable_unit(resistance, 0.0, UnitSet::si), &default_unit(resistance, UnitSet::si));
}

TEST(Print, FourDigitsWhenNothingIsKnownAboutTheResolution) {
  EXPECT_EQ(print(0.9652, *find_unit(length, "in"), 0), "38.00 in");
  EXPECT_EQ(print(101320.75, *find_unit(pressure_absolute, "hPa"), 0), "1013 hPa");
}

TEST(Print, UsesTheUnitSet) {
  EXPECT_EQ(print(0.9652, length, UnitSet::us_customary, 0.0254), "38 in");
  EXPECT_EQ(print(0.9652, length, UnitSet::si, 0.001), "965 mm");
}

TEST(Print, HasNoNegativeZero) {
  EXPECT_EQ(print(-0.0001, *find_unit(length, "m"), 0.1), "0.0 m");
  EXPECT_EQ(print(-0.0, *find_unit(length, "m"), 1), "0 m");
}

TEST(Print, RoundsATieToEvenInDecimals) {
  // 2.5 and 3.5 mm are ties in decimal, whatever the binary fraction of 0.0025 m says.
  EXPECT_EQ(print(0.0025, *find_unit(length, "mm"), 1e-3), "2 mm");
  EXPECT_EQ(print(0.0035, *find_unit(length, "mm"), 1e-3), "4 mm");
  EXPECT_EQ(print(2.675, *find_unit(length, "m"), 0.01), "2.68 m");
}

TEST(Significant, StaysPlainInTheMiddle) {
  EXPECT_EQ(significant(0, 3), "0");
  EXPECT_EQ(significant(99.99, 3), "100");
  EXPECT_EQ(significant(123456, 4), "123500");
  EXPECT_EQ(significant(0.00012345, 3), "0.000123");
  EXPECT_EQ(significant(1e-5, 2), "1.0e-05");
  EXPECT_EQ(significant(-12.345, 3), "-12.3");
  EXPECT_EQ(significant(999999999, 3), "1000000000");
  EXPECT_EQ(significant(2.5e9, 2), "2.5e+09");
}

TEST(PrintWithUncertainty, TwoDigitsOfUAndTheSameDecimalOfTheValue) {
  const Unit& ohm = *find_unit(resistance, "ohm");
  EXPECT_EQ(print_with_uncertainty(85.2, 0.7, ohm), "85.20 ohm +- 0.70 ohm");
  EXPECT_EQ(print_with_uncertainty(85.2, 0.0996, ohm), "85.20 ohm +- 0.10 ohm");
  EXPECT_EQ(print_with_uncertainty(85213.4, 1234, ohm), "85200 ohm +- 1200 ohm");
  EXPECT_EQ(print_with_uncertainty(288.15, 2, *find_unit(temperature, "degC")),
            "15.0 degC +- 2.0 degC");
  EXPECT_EQ(print_with_uncertainty(288.15, 2, *find_unit(temperature, "degF")),
            "59.0 degF +- 3.6 degF");
}

}  // namespace
}  // namespace wm::quantity
