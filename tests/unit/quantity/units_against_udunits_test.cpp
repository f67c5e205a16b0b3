// Every factor of ours against UDUNITS-2, an independent library of unit conversions
// (Debian libudunits2-dev 2.2.28). The right-hand column is written in its own grammar.
// Tolerance: 4e-15 relative, a few roundings of double on either side.
// UDUNITS has the U.S. gallon and the ounce rounded to seven digits, so these are compared through
// their definitions (231 cubic inches, a sixteenth of a pound), and the rounded ones below.
#include <gtest/gtest.h>
#include <udunits2.h>

#include <cmath>
#include <map>
#include <memory>
#include <string>
#include <utility>

#include "quantity/kinds.hpp"

namespace wm::quantity {
namespace {

using enum KindOf;
using Key = std::pair<KindOf, std::string_view>;

/// Unit in SI of the value inside, in UDUNITS grammar.
const std::map<KindOf, std::string> k_inside{
    {length, "m"},
    {area, "m2"},
    {volume, "m3"},
    {mass, "kg"},
    {time, "s"},
    {temperature, "K"},
    {temperature_difference, "K"},
    {pressure_gauge, "Pa"},
    {pressure_absolute, "Pa"},
    {pressure_difference, "Pa"},
    {resistance, "ohm"},
    {voltage, "V"},
    {current, "A"},
    {charge, "C"},
    {capacitance, "F"},
    {power, "W"},
    {energy, "J"},
    {frequency, "s-1"},
    {rotation_speed, "2 pi rad s-1"},
    {speed, "m s-1"},
    {volume_flow, "m3 s-1"},
    {torque, "N m"},
    {force, "N"},
    {mass_moment, "kg m"},
    {angle, "rad"},
    {fraction, "1"},
    {resistance_per_length, "ohm m-1"},
    {density, "kg m-3"},
    {mass_per_length, "kg m-1"},
    {bending_stiffness, "N m2"},
};

const std::map<Key, std::string> k_theirs{
    {{length, "in"}, "international_inch"},
    {{length, "ft"}, "international_foot"},
    {{length, "mm"}, "mm"},
    {{length, "cm"}, "cm"},
    {{length, "m"}, "m"},
    {{length, "yd"}, "international_yard"},
    {{length, "thou"}, "0.001 international_inch"},
    {{length, "um"}, "micrometer"},
    {{length, "km"}, "km"},
    {{length, "NM"}, "nautical_mile"},
    {{length, "mi"}, "international_mile"},
    {{area, "in2"}, "international_inch2"},
    {{area, "ft2"}, "international_foot2"},
    {{area, "mm2"}, "mm2"},
    {{area, "cm2"}, "cm2"},
    {{area, "m2"}, "m2"},
    {{volume, "gal"}, "231 international_inch3"},
    {{volume, "qt"}, "57.75 international_inch3"},
    {{volume, "L"}, "liter"},
    {{volume, "pt"}, "28.875 international_inch3"},
    {{volume, "fl oz"}, "1.8046875 international_inch3"},
    {{volume, "cup"}, "14.4375 international_inch3"},
    {{volume, "mL"}, "milliliter"},
    {{volume, "cm3"}, "cm3"},
    {{volume, "m3"}, "m3"},
    {{volume, "in3"}, "international_inch3"},
    {{volume, "imp gal"}, "Canadian_liquid_gallon"},
    {{mass, "lb"}, "avoirdupois_pound"},
    {{mass, "oz"}, "0.0625 avoirdupois_pound"},
    {{mass, "kg"}, "kg"},
    {{mass, "g"}, "gram"},
    {{mass, "mg"}, "milligram"},
    {{time, "h"}, "hour"},
    {{time, "min"}, "minute"},
    {{time, "s"}, "s"},
    {{time, "day"}, "day"},
    {{time, "ms"}, "ms"},
    {{temperature, "degF"}, "degF"},
    {{temperature, "degC"}, "degC"},
    {{temperature, "K"}, "K"},
    {{temperature_difference, "degF"}, "degR"},
    {{temperature_difference, "degC"}, "K"},
    {{temperature_difference, "K"}, "K"},
    {{pressure_gauge, "psi"}, "psi"},
    {{pressure_gauge, "kPa"}, "kPa"},
    {{pressure_gauge, "bar"}, "bar"},
    {{pressure_gauge, "inHg"}, "25.4 conventional_mercury mm"},
    {{pressure_gauge, "hPa"}, "hPa"},
    {{pressure_gauge, "mbar"}, "mbar"},
    {{pressure_gauge, "Pa"}, "Pa"},
    {{pressure_gauge, "MPa"}, "MPa"},
    {{pressure_gauge, "mmHg"}, "conventional_mercury mm"},
    {{pressure_gauge, "inH2O"}, "conventional_water international_inch"},
    {{pressure_gauge, "kgf/cm2"}, "kilogram_force cm-2"},
    {{pressure_gauge, "atm"}, "atm"},
    {{resistance, "ohm"}, "ohm"},
    {{resistance, "kohm"}, "kiloohm"},
    {{resistance, "Mohm"}, "megaohm"},
    {{resistance, "mohm"}, "milliohm"},
    {{resistance, "uohm"}, "microohm"},
    {{resistance, "Gohm"}, "gigaohm"},
    {{voltage, "V"}, "V"},
    {{voltage, "mV"}, "mV"},
    {{voltage, "kV"}, "kV"},
    {{voltage, "uV"}, "microvolt"},
    {{current, "A"}, "A"},
    {{current, "mA"}, "mA"},
    {{current, "uA"}, "microampere"},
    {{charge, "Ah"}, "A hour"},
    {{charge, "mAh"}, "mA hour"},
    {{charge, "C"}, "C"},
    {{capacitance, "uF"}, "microfarad"},
    {{capacitance, "nF"}, "nF"},
    {{capacitance, "pF"}, "pF"},
    {{capacitance, "F"}, "F"},
    {{power, "hp"}, "550 international_foot force_pound s-1"},
    {{power, "kW"}, "kW"},
    {{power, "W"}, "W"},
    {{power, "mW"}, "mW"},
    {{energy, "J"}, "J"},
    {{energy, "ft-lbf"}, "international_foot force_pound"},
    {{energy, "kJ"}, "kJ"},
    {{energy, "mJ"}, "mJ"},
    {{energy, "Wh"}, "W hour"},
    {{energy, "kWh"}, "kW hour"},
    {{frequency, "Hz"}, "Hz"},
    {{frequency, "kHz"}, "kHz"},
    {{frequency, "MHz"}, "MHz"},
    {{rotation_speed, "rpm"}, "2 pi rad minute-1"},
    {{rotation_speed, "1/s"}, "2 pi rad s-1"},
    {{rotation_speed, "rad/s"}, "rad s-1"},
    {{speed, "kt"}, "knot_international"},
    {{speed, "mph"}, "international_mile hour-1"},
    {{speed, "km/h"}, "km hour-1"},
    {{speed, "m/s"}, "m s-1"},
    {{speed, "ft/min"}, "international_foot minute-1"},
    {{speed, "ft/s"}, "international_foot s-1"},
    {{volume_flow, "gal/h"}, "231 international_inch3 hour-1"},
    {{volume_flow, "L/h"}, "liter hour-1"},
    {{volume_flow, "L/min"}, "liter minute-1"},
    {{volume_flow, "gal/min"}, "231 international_inch3 minute-1"},
    {{volume_flow, "mL/min"}, "milliliter minute-1"},
    {{volume_flow, "qt/h"}, "57.75 international_inch3 hour-1"},
    {{volume_flow, "m3/s"}, "m3 s-1"},
    {{volume_flow, "m3/h"}, "m3 hour-1"},
    {{torque, "in-lb"}, "international_inch force_pound"},
    {{torque, "ft-lb"}, "international_foot force_pound"},
    {{torque, "N\u00b7m"}, "N m"},
    {{torque, "N\u00b7cm"}, "N cm"},
    {{torque, "kgf\u00b7m"}, "kilogram_force m"},
    {{torque, "kgf\u00b7cm"}, "kilogram_force cm"},
    {{force, "lbf"}, "force_pound"},
    {{force, "N"}, "N"},
    {{force, "kN"}, "kN"},
    {{force, "kgf"}, "kilogram_force"},
    {{mass_moment, "lb-in"}, "avoirdupois_pound international_inch"},
    {{mass_moment, "kg\u00b7m"}, "kg m"},
    {{mass_moment, "kg\u00b7cm"}, "kg cm"},
    {{mass_moment, "kg\u00b7mm"}, "kg mm"},
    {{mass_moment, "lb-ft"}, "avoirdupois_pound international_foot"},
    {{angle, "deg"}, "arc_degree"},
    {{angle, "rad"}, "rad"},
    {{fraction, "%"}, "percent"},
    {{resistance_per_length, "ohm/ft"}, "ohm international_foot-1"},
    {{resistance_per_length, "kohm/ft"}, "kiloohm international_foot-1"},
    {{resistance_per_length, "ohm/m"}, "ohm m-1"},
    {{resistance_per_length, "kohm/m"}, "kiloohm m-1"},
    {{resistance_per_length, "mohm/m"}, "milliohm m-1"},
    {{resistance_per_length, "ohm/km"}, "ohm km-1"},
    {{resistance_per_length, "ohm/in"}, "ohm international_inch-1"},
    {{resistance_per_length, "kohm/in"}, "kiloohm international_inch-1"},
    {{resistance_per_length, "mohm/ft"}, "milliohm international_foot-1"},
    {{resistance_per_length, "ohm/kft"}, "0.001 ohm international_foot-1"},
    {{density, "lb/gal"}, "avoirdupois_pound (231 international_inch3)-1"},
    {{density, "kg/L"}, "kg liter-1"},
    {{density, "kg/m3"}, "kg m-3"},
    {{density, "g/cm3"}, "gram cm-3"},
    {{density, "lb/ft3"}, "avoirdupois_pound international_foot-3"},
    {{mass_per_length, "lb/ft"}, "avoirdupois_pound international_foot-1"},
    {{mass_per_length, "kg/m"}, "kg m-1"},
    {{mass_per_length, "g/m"}, "gram m-1"},
    {{mass_per_length, "lb/in"}, "avoirdupois_pound international_inch-1"},
    {{mass_per_length, "oz/in"}, "0.0625 avoirdupois_pound international_inch-1"},
    {{bending_stiffness, "lb-in2"}, "force_pound international_inch2"},
    {{bending_stiffness, "N\u00b7m2"}, "N m2"},
};

struct Closer {
  void operator()(ut_system* s) const { ut_free_system(s); }
  void operator()(ut_unit* u) const { ut_free(u); }
  void operator()(cv_converter* c) const { cv_free(c); }
};
template <class T>
using Held = std::unique_ptr<T, Closer>;

class AgainstUdunits : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    ut_set_error_message_handler(ut_ignore);
    system_.reset(ut_read_xml(nullptr));
  }
  static void TearDownTestSuite() { system_.reset(); }

  /// `value` of a unit in their grammar, in the unit inside; NaN when they do not know it.
  static double converted(double value, const std::string& theirs, const std::string& inside) {
    const Held<ut_unit> from(ut_parse(system_.get(), theirs.c_str(), UT_UTF8));
    const Held<ut_unit> to(ut_parse(system_.get(), inside.c_str(), UT_UTF8));
    if (!from || !to) return std::nan("");
    const Held<cv_converter> way(ut_get_converter(from.get(), to.get()));
    return way ? cv_convert_double(way.get(), value) : std::nan("");
  }

  static inline Held<ut_system> system_;
};

TEST_F(AgainstUdunits, EveryUnitOfOurs) {
  ASSERT_TRUE(system_) << "UDUNITS cannot read its own table";
  int compared = 0;
  for (const KindInfo& k : all_kinds()) {
    // The three pressures share one list.
    const bool pressure = k.kind == pressure_absolute || k.kind == pressure_difference;
    for (const Unit& u : units_of(k.kind)) {
      const auto theirs = k_theirs.find({pressure ? pressure_gauge : k.kind, u.symbol});
      ASSERT_NE(theirs, k_theirs.end()) << k.name << ' ' << u.symbol << " is not compared";
      for (const double value : {1.0, 37.5}) {
        const double expected = converted(value, theirs->second, k_inside.at(k.kind));
        const double got = value * u.factor + u.offset;
        EXPECT_NEAR(got, expected, std::abs(expected) * 4e-15)
            << k.name << ' ' << u.symbol << " against " << theirs->second;
      }
      ++compared;
    }
  }
  EXPECT_GE(compared, 150);
}

TEST_F(AgainstUdunits, TheirRoundedUnitsAgreeToTheDigitsTheyHave) {
  struct Coarse {
    KindOf kind;
    const char* unit;
    const char* theirs;
  };
  for (const Coarse& c :
       {Coarse{volume, "gal", "US_liquid_gallon"}, Coarse{volume, "qt", "US_liquid_quart"},
        Coarse{volume, "pt", "US_liquid_pint"}, Coarse{volume, "fl oz", "US_fluid_ounce"},
        Coarse{volume, "cup", "US_liquid_cup"}, Coarse{mass, "oz", "avoirdupois_ounce"}}) {
    const double expected = converted(1, c.theirs, k_inside.at(c.kind));
    const double got = find_unit(c.kind, c.unit)->factor;
    EXPECT_NEAR(got, expected, expected * 2e-7) << c.unit;
    EXPECT_GT(std::abs(got - expected), expected * 1e-12)
        << c.unit << ": UDUNITS has the exact value now; compare it with the others";
  }
}

}  // namespace
}  // namespace wm::quantity
