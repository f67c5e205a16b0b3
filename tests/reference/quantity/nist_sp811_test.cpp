// Source:    NIST Special Publication 811 (2008), Guide for the Use of the SI, App. B.8 and B.9
//            (factors) and B.7.2 (rounding); NIST LC 1137, Metric Style Guide (rounding).
// Read:      factors in two transcriptions of the printed table that agree with each other;
//            B.7.2 and LC 1137 in quotations of the documents.
// Tolerance: half a unit of the last printed digit; exact (bold) factors to 2e-16 relative.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "quantity/text.hpp"
#include "support/reference_case.hpp"

namespace wm::quantity {
namespace {

using enum KindOf;

struct Factor {
  KindOf kind;
  const char* unit;
  const char* printed_name;
  double mantissa;  ///< as printed
  int decimals;     ///< printed decimals of the mantissa
  int exponent;
  bool exact;  ///< printed in bold
};

class NistFactor : public testing::TestWithParam<Factor> {};

TEST_P(NistFactor, Agrees) {
  const Factor& f = GetParam();
  const Unit* unit = find_unit(f.kind, f.unit);
  ASSERT_NE(unit, nullptr) << f.unit;
  const double scale = std::pow(10.0, f.exponent);
  const double expected = f.mantissa * scale;
  const double half_digit = 0.5 * std::pow(10.0, -f.decimals) * scale;
  test::check({"quantity", fmt::format("factor of {} ({})", f.printed_name, info(f.kind).name),
               "NIST SP 811 (2008), App. B.8",
               fmt::format("{:.{}f}E{:+03}", f.mantissa, f.decimals, f.exponent), expected,
               unit->factor, f.exact ? expected * 4e-16 : half_digit,
               f.exact ? "printed as exact" : "half a unit of the last printed digit"});
}

INSTANTIATE_TEST_SUITE_P(
    AppB8, NistFactor,
    testing::Values(
        Factor{length, "in", "inch", 2.54, 2, -2, true},
        Factor{length, "ft", "foot", 3.048, 3, -1, true},
        Factor{length, "yd", "yard", 9.144, 3, -1, true},
        Factor{length, "mi", "mile", 1.609344, 6, 3, true},
        Factor{length, "NM", "mile, nautical", 1.852, 3, 3, true},
        Factor{length, "thou", "mil (0.001 in)", 2.54, 2, -5, true},
        Factor{area, "in2", "square inch", 6.4516, 4, -4, true},
        Factor{area, "ft2", "square foot", 9.290304, 6, -2, true},
        Factor{volume, "in3", "cubic inch", 1.638706, 6, -5, false},
        Factor{volume, "gal", "gallon (U.S.)", 3.785412, 6, -3, false},
        Factor{volume, "imp gal", "gallon (Imperial)", 4.54609, 5, -3, true},
        Factor{volume, "qt", "quart (U.S. liquid)", 9.463529, 6, -4, false},
        Factor{volume, "pt", "pint (U.S. liquid)", 4.731765, 6, -4, false},
        Factor{volume, "cup", "cup (U.S.)", 2.365882, 6, -4, false},
        Factor{volume, "fl oz", "ounce (U.S. fluid)", 2.957353, 6, -5, false},
        Factor{mass, "lb", "pound (avoirdupois)", 4.535924, 6, -1, false},
        Factor{mass, "oz", "ounce (avoirdupois)", 2.834952, 6, -2, false},
        Factor{time, "day", "day", 8.64, 2, 4, true}, Factor{time, "h", "hour", 3.6, 1, 3, true},
        Factor{pressure_gauge, "psi", "psi", 6.894757, 6, 3, false},
        Factor{pressure_gauge, "bar", "bar", 1.0, 1, 5, true},
        Factor{pressure_absolute, "atm", "atmosphere, standard", 1.01325, 5, 5, true},
        Factor{pressure_absolute, "inHg", "inch of mercury, conventional", 3.386389, 6, 3, false},
        Factor{pressure_absolute, "mmHg", "millimeter of mercury, conventional", 1.333224, 6, 2,
               false},
        Factor{pressure_gauge, "inH2O", "inch of water, conventional", 2.490889, 6, 2, false},
        Factor{power, "hp", "horsepower (550 ft lbf/s)", 7.456999, 6, 2, false},
        Factor{energy, "Wh", "watt hour", 3.6, 1, 3, true},
        Factor{energy, "kWh", "kilowatt hour", 3.6, 1, 6, true},
        Factor{energy, "ft-lbf", "foot pound-force", 1.355818, 6, 0, false},
        Factor{speed, "kt", "knot", 5.144444, 6, -1, false},
        Factor{speed, "mph", "mile per hour", 4.4704, 4, -1, true},
        Factor{speed, "km/h", "kilometer per hour", 2.777778, 6, -1, false},
        Factor{speed, "ft/s", "foot per second", 3.048, 3, -1, true},
        Factor{volume_flow, "gal/min", "gallon (U.S.) per minute", 6.30902, 6, -5, false},
        Factor{torque, "in-lb", "pound-force inch", 1.129848, 6, -1, false},
        Factor{torque, "ft-lb", "pound-force foot", 1.355818, 6, 0, false},
        Factor{force, "lbf", "pound-force", 4.448222, 6, 0, false},
        Factor{force, "kgf", "kilogram-force", 9.80665, 5, 0, true},
        Factor{angle, "deg", "degree (angle)", 1.745329, 6, -2, false}));

TEST(NistTemperature, FollowsThePrintedFormulae) {
  // t/degC = (t/degF - 32)/1.8 and T/K = t/degC + 273.15, NIST SP 811 (2008), App. B.9.
  for (const double f : {-40.0, 0.0, 15.0, 32.0, 212.0}) {
    const Unit& unit = *find_unit(temperature, "degF");
    const double expected = (f - 32) / 1.8 + 273.15;
    test::check({"quantity", fmt::format("{} degF in kelvin", f), "NIST SP 811 (2008), App. B.9",
                 "T/K = (t/degF - 32)/1.8 + 273.15", expected, f * unit.factor + unit.offset,
                 expected * 1e-15, "rounding of double only"});
  }
}

struct Rounded {
  const char* source;
  const char* typed;
  KindOf kind;
  const char* unit;
  const char* expected;
};

class RoundedAsPublished : public testing::TestWithParam<Rounded> {};

TEST_P(RoundedAsPublished, Agrees) {
  const Rounded& r = GetParam();
  const auto typed = parse(r.typed, r.kind);
  ASSERT_TRUE(typed);
  test::check_text("quantity", fmt::format("{} shown in {}", r.typed, r.unit), r.source, r.expected,
                   print(typed->si, *find_unit(r.kind, r.unit), typed->resolution_si));
}

INSTANTIATE_TEST_SUITE_P(
    Nist, RoundedAsPublished,
    testing::Values(Rounded{"NIST SP 811 (2008), App. B.7.2", "36 ft", length, "m", "11.0 m"},
                    Rounded{"NIST LC 1137, Metric Style Guide", "36 in", length, "cm", "91 cm"},
                    Rounded{"NIST LC 1137, Metric Style Guide", "40.1 in", length, "cm",
                            "101.9 cm"}));

}  // namespace
}  // namespace wm::quantity
