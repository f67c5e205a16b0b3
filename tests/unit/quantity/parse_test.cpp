// What people write, and what it means in SI. Expected values are worked by hand from the
// definitions of the units (NIST SP 811 (2008), App. B).
#include <gtest/gtest.h>

#include <string>

#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

constexpr double k_psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
constexpr double k_inch_pound = 0.0254 * 0.45359237 * 9.80665;
constexpr double k_gallon = 0.003785411784;

struct Case {
  const char* text;
  KindOf kind;
  double si;
  double resolution_si;
  const char* unit;
};

class Understood : public testing::TestWithParam<Case> {};

TEST_P(Understood, WithValueResolutionAndUnit) {
  const Case& c = GetParam();
  const auto got = parse(c.text, c.kind);
  ASSERT_TRUE(got) << c.text << ": " << got.error().what;
  // A few ulp: one multiplication by the factor, and the sum of the parts.
  EXPECT_NEAR(got->si, c.si, std::abs(c.si) * 4e-16 + 1e-30) << c.text;
  EXPECT_NEAR(got->resolution_si, c.resolution_si, c.resolution_si * 4e-16) << c.text;
  EXPECT_EQ(got->unit, c.unit) << c.text;
}

using enum KindOf;

INSTANTIATE_TEST_SUITE_P(
    Lengths, Understood,
    testing::Values(Case{"38 in", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"38in", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"  38 in\n", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"38 in.", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"38\u00a0in", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"38 IN", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"38\"", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"38\u2033", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"+38 in", length, 38 * 0.0254, 0.0254, "in"},
                    Case{"-5 in", length, -5 * 0.0254, 0.0254, "in"},
                    Case{"\u22125 in", length, -5 * 0.0254, 0.0254, "in"},
                    Case{"38.0 in", length, 38 * 0.0254, 0.00254, "in"},
                    Case{"38. in", length, 38 * 0.0254, 0.0254, "in"},
                    Case{".5 in", length, 0.5 * 0.0254, 0.00254, "in"},
                    Case{"3/8 in", length, 0.375 * 0.0254, 0.0254 / 8, "in"},
                    Case{"1 3/8 in", length, 1.375 * 0.0254, 0.0254 / 8, "in"},
                    Case{"1-3/8 in", length, 1.375 * 0.0254, 0.0254 / 8, "in"},
                    Case{"9/8 in", length, 1.125 * 0.0254, 0.0254 / 8, "in"},
                    Case{"4\u00bd in", length, 4.5 * 0.0254, 0.0254 / 2, "in"},
                    Case{"\u215c in", length, 0.375 * 0.0254, 0.0254 / 8, "in"},
                    Case{"3 ft 4 1/2 in", length, 40.5 * 0.0254, 0.0254 / 2, "ft"},
                    Case{"3' 4 1/2\"", length, 40.5 * 0.0254, 0.0254 / 2, "ft"},
                    Case{"3'-4 1/2\"", length, 40.5 * 0.0254, 0.0254 / 2, "ft"},
                    Case{"3\u2019 4\u201d", length, 40 * 0.0254, 0.0254, "ft"},
                    Case{"3ft4in", length, 40 * 0.0254, 0.0254, "ft"},
                    Case{"-3 ft 4 in", length, -40 * 0.0254, 0.0254, "ft"},
                    Case{"2 yd 1 ft 6 in", length, 90 * 0.0254, 0.0254, "yd"},
                    Case{"3 m 20 cm", length, 3.2, 0.01, "m"}, Case{"0.6 m", length, 0.6, 0.1, "m"},
                    Case{"965 mm", length, 0.965, 1e-3, "mm"},
                    Case{"1e3 mm", length, 1.0, 1e-3, "mm"},
                    Case{"1.25E-2 m", length, 0.0125, 1e-4, "m"},
                    Case{"5 thou", length, 5 * 0.0000254, 0.0000254, "thou"}));

INSTANTIATE_TEST_SUITE_P(
    Electrical, Understood,
    testing::Values(
        Case{"15.6 kohm", resistance, 15600, 100, "kohm"},
        Case{"15.6 k\u03a9", resistance, 15600, 100, "kohm"},
        Case{"85 \u03a9", resistance, 85, 1, "ohm"}, Case{"85 \u2126", resistance, 85, 1, "ohm"},
        Case{"85 Ohms", resistance, 85, 1, "ohm"}, Case{"2 M\u03a9", resistance, 2e6, 1e6, "Mohm"},
        Case{"2 m\u03a9", resistance, 2e-3, 1e-3, "mohm"},
        Case{"2 \u00b5\u03a9", resistance, 2e-6, 1e-6, "uohm"},
        Case{"1.2e3 ohm", resistance, 1200, 1, "ohm"}, Case{"13.8 V", voltage, 13.8, 0.1, "V"},
        Case{"50 mV", voltage, 0.05, 1e-3, "mV"}, Case{"20 amps", current, 20, 1, "A"},
        Case{"24 Ah", charge, 86400, 3600, "Ah"},
        Case{"0.35 \u03bcF", capacitance, 0.35e-6, 0.01e-6, "uF"},
        Case{"0.35 \u00b5F", capacitance, 0.35e-6, 0.01e-6, "uF"},
        Case{"0.35 mfd", capacitance, 0.35e-6, 0.01e-6, "uF"},
        Case{"6 kohm/ft", resistance_per_length, 6000 / 0.3048, 1000 / 0.3048, "kohm/ft"},
        Case{"180 ohms per foot", resistance_per_length, 180 / 0.3048, 1 / 0.3048, "ohm/ft"},
        Case{"1.26 ohm/1000 ft", resistance_per_length, 1.26e-3 / 0.3048, 0.01e-3 / 0.3048,
             "ohm/kft"}));

INSTANTIATE_TEST_SUITE_P(
    Pressures, Understood,
    testing::Values(Case{"28 psi", pressure_gauge, 28 * k_psi, k_psi, "psi"},
                    Case{"28 psig", pressure_gauge, 28 * k_psi, k_psi, "psi"},
                    Case{"28 psi", pressure_absolute, 28 * k_psi, k_psi, "psi"},
                    Case{"28 psia", pressure_absolute, 28 * k_psi, k_psi, "psi"},
                    Case{"28 PSI abs", pressure_absolute, 28 * k_psi, k_psi, "psi"},
                    Case{"28 psi", pressure_difference, 28 * k_psi, k_psi, "psi"},
                    Case{"28 psid", pressure_difference, 28 * k_psi, k_psi, "psi"},
                    Case{"28 lbf/in\u00b2", pressure_gauge, 28 * k_psi, k_psi, "psi"},
                    Case{"-3 psi", pressure_gauge, -3 * k_psi, k_psi, "psi"},
                    Case{"1.9 bar", pressure_gauge, 190000, 10000, "bar"},
                    Case{"1.9 bar(g)", pressure_gauge, 190000, 10000, "bar"},
                    Case{"1.9 barg", pressure_gauge, 190000, 10000, "bar"},
                    Case{"1.9 bara", pressure_absolute, 190000, 10000, "bar"},
                    Case{"200 kPa abs", pressure_absolute, 200000, 1000, "kPa"},
                    Case{"200 kPa (g)", pressure_gauge, 200000, 1000, "kPa"},
                    Case{"0 kPa", pressure_absolute, 0, 1000, "kPa"},
                    Case{"1013 hPa", pressure_absolute, 101300, 100, "hPa"},
                    Case{"29.92 inHg", pressure_absolute, 29.92 * 25.4 * 13.5951 * 9.80665,
                         0.01 * 25.4 * 13.5951 * 9.80665, "inHg"}));

INSTANTIATE_TEST_SUITE_P(
    Temperatures, Understood,
    testing::Values(Case{"15 degC", temperature, 288.15, 1, "degC"},
                    Case{"15\u00b0C", temperature, 288.15, 1, "degC"},
                    Case{"15 \u2103", temperature, 288.15, 1, "degC"},
                    Case{"15 C", temperature, 288.15, 1, "degC"},
                    Case{"-5 degC", temperature, 268.15, 1, "degC"},
                    Case{"32 degF", temperature, 273.15, 5.0 / 9, "degF"},
                    Case{"15 degF", temperature, (15 + 459.67) * 5 / 9, 5.0 / 9, "degF"},
                    Case{"-40 \u00b0F", temperature, 233.15, 5.0 / 9, "degF"},
                    Case{"-459.67 degF", temperature, 0, 0.05 / 9, "degF"},
                    Case{"0 K", temperature, 0, 1, "K"},
                    Case{"18 degF", temperature_difference, 10, 5.0 / 9, "degF"},
                    Case{"-18 degF", temperature_difference, -10, 5.0 / 9, "degF"},
                    Case{"10 degC", temperature_difference, 10, 1, "degC"}));

INSTANTIATE_TEST_SUITE_P(
    TheRest, Understood,
    testing::Values(
        Case{"2.4 sq in", area, 2.4 * 0.00064516, 0.1 * 0.00064516, "in2"},
        Case{"2.4 in^2", area, 2.4 * 0.00064516, 0.1 * 0.00064516, "in2"},
        Case{"6 qt", volume, 6 * k_gallon / 4, k_gallon / 4, "qt"},
        Case{"1 gal 2 qt", volume, 1.5 * k_gallon, k_gallon / 4, "gal"},
        Case{"8 fl oz", volume, k_gallon / 16, k_gallon / 128, "fl oz"},
        Case{"5 l", volume, 0.005, 0.001, "L"}, Case{"30 cc", volume, 30e-6, 1e-6, "mL"},
        Case{"12 lb", mass, 12 * 0.45359237, 0.45359237, "lb"},
        Case{"12 lb 4 oz", mass, 12.25 * 0.45359237, 0.45359237 / 16, "lb"},
        Case{"12lbs4oz", mass, 12.25 * 0.45359237, 0.45359237 / 16, "lb"},
        Case{"2 h 30 min", time, 9000, 60, "h"}, Case{"2 hr 30 mins 15 s", time, 9015, 1, "h"},
        Case{"1 day 2 h", time, 93600, 3600, "day"}, Case{"1140.2 hours", time, 4104720, 360, "h"},
        Case{"124 hp", power, 124 * 550 * 0.3048 * 0.45359237 * 9.80665,
             550 * 0.3048 * 0.45359237 * 9.80665, "hp"},
        Case{"400 Hz", frequency, 400, 1, "Hz"},
        Case{"1700 rpm", rotation_speed, 1700 / 60.0, 1 / 60.0, "rpm"},
        Case{"40 1/s", rotation_speed, 40, 1, "1/s"}, Case{"36 km/h", speed, 10, 1 / 3.6, "km/h"},
        Case{"9.4 gal/h", volume_flow, 9.4 * k_gallon / 3600, 0.1 * k_gallon / 3600, "gal/h"},
        Case{"9.4 gph", volume_flow, 9.4 * k_gallon / 3600, 0.1 * k_gallon / 3600, "gal/h"},
        Case{"9.4 gal per hour", volume_flow, 9.4 * k_gallon / 3600, 0.1 * k_gallon / 3600,
             "gal/h"},
        Case{"32 L/h", volume_flow, 0.032 / 3600, 0.001 / 3600, "L/h"},
        Case{"120 in-lb", torque, 120 * k_inch_pound, k_inch_pound, "in-lb"},
        Case{"120 in\u00b7lb", torque, 120 * k_inch_pound, k_inch_pound, "in-lb"},
        Case{"120 lbf in", torque, 120 * k_inch_pound, k_inch_pound, "in-lb"},
        Case{"120 in.-lb", torque, 120 * k_inch_pound, k_inch_pound, "in-lb"},
        Case{"10 ft-lb", torque, 120 * k_inch_pound, 12 * k_inch_pound, "ft-lb"},
        Case{"12 Nm", torque, 12, 1, "N\u00b7m"}, Case{"12 N-m", torque, 12, 1, "N\u00b7m"},
        Case{"12 N.m", torque, 12, 1, "N\u00b7m"}, Case{"12 N m", torque, 12, 1, "N\u00b7m"},
        Case{"12 N\u00b7m", torque, 12, 1, "N\u00b7m"},
        Case{"12 N\u22c5m", torque, 12, 1, "N\u00b7m"},
        Case{"10 ft-lbf", energy, 120 * k_inch_pound, 12 * k_inch_pound, "ft-lbf"},
        Case{"540 lb-in", mass_moment, 540 * 0.45359237 * 0.0254, 0.45359237 * 0.0254, "lb-in"},
        Case{"540 in-lb", mass_moment, 540 * 0.45359237 * 0.0254, 0.45359237 * 0.0254, "lb-in"},
        Case{"6.2 kg m", mass_moment, 6.2, 0.1, "kg\u00b7m"},
        Case{"180 deg", angle, 3.14159265358979323846, 3.14159265358979323846 / 180, "deg"},
        Case{"180\u00b0", angle, 3.14159265358979323846, 3.14159265358979323846 / 180, "deg"},
        Case{"70 %", fraction, 0.7, 0.01, "%"}, Case{"70%", fraction, 0.7, 0.01, "%"},
        Case{"6.01 lb/gal", density, 6.01 * 0.45359237 / k_gallon, 0.01 * 0.45359237 / k_gallon,
             "lb/gal"},
        Case{"0.72 kg/L", density, 720, 10, "kg/L"}));

TEST(Parse, UnitCaseMattersWherePrefixesDo) {
  EXPECT_EQ(parse("2 Mohm", resistance)->si, 2e6);
  EXPECT_EQ(parse("2 mohm", resistance)->si, 2e-3);
  EXPECT_FALSE(parse("2 MV", voltage));
  EXPECT_FALSE(parse("2 MA", current));
}

TEST(Parse, ReadKeepsWhatWasTyped) {
  const auto got = read<Length>("3 ft 4 1/2 in");
  ASSERT_TRUE(got);
  EXPECT_EQ(got->text, "3 ft 4 1/2 in");
  EXPECT_DOUBLE_EQ(got->value.si, 1.0287);
  EXPECT_DOUBLE_EQ(got->resolution_si, 0.0127);
}

TEST(ParseNumber, TakesPlainDecimals) {
  EXPECT_EQ(*parse_number("3.5"), 3.5);
  EXPECT_EQ(*parse_number(" -1e-3 "), -1e-3);
  EXPECT_EQ(*parse_number("+.5"), 0.5);
  EXPECT_EQ(*parse_number("\u22122"), -2);
}

}  // namespace
}  // namespace wm::quantity
