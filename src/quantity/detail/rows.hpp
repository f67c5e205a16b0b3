#pragma once
/// Rows of the unit table. Factors are products of defined constants, so that nothing has
/// been rounded; tests/unit/quantity/units_against_udunits_test.cpp checks each of them.

#include <array>
#include <numbers>
#include <string_view>

#include "quantity/quantity.hpp"

namespace wm::quantity::detail {

struct Row {
  KindOf kind;
  std::string_view symbol;
  std::string_view spellings;  ///< beside the symbol, separated by '|'
  bool any_case;
  double factor;
  double offset;
  std::string_view source;
};

inline constexpr double k_inch = 0.0254;
inline constexpr double k_foot = 0.3048;
inline constexpr double k_mile = 1609.344;
inline constexpr double k_nautical_mile = 1852.0;
inline constexpr double k_pound = 0.45359237;
inline constexpr double k_standard_gravity = 9.80665;
inline constexpr double k_pound_force = k_pound * k_standard_gravity;
inline constexpr double k_gallon = 3.785411784e-3;  // 231 in3
inline constexpr double k_pi = std::numbers::pi;
inline constexpr double k_fahrenheit_step = 5.0 / 9.0;
/// Conventional millimetre of mercury: density 13.5951 g/cm3 at standard gravity.
inline constexpr double k_mm_mercury = 13.5951 * k_standard_gravity;

inline constexpr std::string_view k_si = "SI unit or decimal multiple";
inline constexpr std::string_view k_sp811 = "NIST SP 811 (2008), App. B, exact by definition";
inline constexpr std::string_view k_sp811_derived =
    "derived from exact factors of NIST SP 811 (2008), App. B";
inline constexpr std::string_view k_sp811_conventional =
    "NIST SP 811 (2008), App. B, conventional mercury or water column";

/// Pressure units: each serves gauge, absolute and difference.
struct PressureRow {
  std::string_view symbol;
  std::string_view spellings;
  bool any_case;
  double factor;
  std::string_view source;
};

inline constexpr std::array k_pressure_rows{
    PressureRow{"psi", "lb/in2|lbf/in2|lb/sq-in|lbs/sq-in", true, k_pound_force / (k_inch * k_inch),
                k_sp811_derived},
    PressureRow{"kPa", "KPa|kpa", false, 1e3, k_si},
    PressureRow{"bar", "bars", true, 1e5, k_sp811},
    PressureRow{"inHg", "in-Hg|inches-Hg|\"-Hg", true, 25.4 * k_mm_mercury, k_sp811_conventional},
    PressureRow{"hPa", "hpa", false, 1e2, k_si},
    PressureRow{"mbar", "millibar|mb", false, 1e2, k_sp811},
    PressureRow{"Pa", "pascal", false, 1.0, k_si},
    PressureRow{"MPa", "", false, 1e6, k_si},
    PressureRow{"mmHg", "mm-Hg", false, k_mm_mercury, k_sp811_conventional},
    PressureRow{"inH2O", "in-H2O|inches-H2O|\"-H2O", true, 1000.0 * k_standard_gravity* k_inch,
                k_sp811_conventional},
    PressureRow{"kgf/cm2", "kg/cm2|kp/cm2", false, k_standard_gravity * 1e4, k_sp811},
    PressureRow{"atm", "", true, 101325.0, k_sp811},
};

using enum KindOf;

inline constexpr std::array k_rows{
    Row{length, "in", "inch|inches|\"", true, k_inch, 0, k_sp811},
    Row{length, "ft", "foot|feet|'", true, k_foot, 0, k_sp811},
    Row{length, "mm", "millimetre|millimetres|millimeter|millimeters", false, 1e-3, 0, k_si},
    Row{length, "cm", "centimetre|centimetres|centimeter|centimeters", false, 1e-2, 0, k_si},
    Row{length, "m", "metre|metres|meter|meters", false, 1.0, 0, k_si},
    Row{length, "yd", "yard|yards", true, 3.0 * k_foot, 0, k_sp811},
    Row{length, "thou", "mil|mils", true, 1e-3 * k_inch, 0, k_sp811},
    Row{length, "um", "micron|microns", false, 1e-6, 0, k_si},
    Row{length, "km", "", false, 1e3, 0, k_si},
    Row{length, "NM", "nmi|nautical-mile|nautical-miles", false, k_nautical_mile, 0, k_sp811},
    Row{length, "mi", "mile|miles", true, k_mile, 0, k_sp811},

    Row{area, "in2", "sq-in|sq-inch|sq-inches|square-inch|square-inches", true, 6.4516e-4, 0,
        k_sp811},
    Row{area, "ft2", "sq-ft|square-foot|square-feet", true, 9.290304e-2, 0, k_sp811},
    Row{area, "mm2", "sq-mm", false, 1e-6, 0, k_si},
    Row{area, "cm2", "sq-cm", false, 1e-4, 0, k_si},
    Row{area, "m2", "sq-m", false, 1.0, 0, k_si},

    Row{volume, "gal", "gals|gallon|gallons|US-gal|US-gallon|US-gallons", true, k_gallon, 0,
        k_sp811},
    Row{volume, "qt", "qts|quart|quarts|US-qt", true, k_gallon / 4, 0, k_sp811},
    Row{volume, "L", "l|litre|litres|liter|liters|Litre|Litres|Liter|Liters", false, 1e-3, 0,
        k_sp811},
    Row{volume, "pt", "pint|pints|US-pt", true, k_gallon / 8, 0, k_sp811},
    Row{volume, "fl oz", "fl-oz|fluid-ounce|fluid-ounces|US-fl-oz", true, k_gallon / 128, 0,
        k_sp811},
    Row{volume, "cup", "cups", true, k_gallon / 16, 0, k_sp811},
    Row{volume, "mL", "ml|cc|CC|millilitre|millilitres|milliliter|milliliters", false, 1e-6, 0,
        k_sp811},
    Row{volume, "cm3", "cu-cm", false, 1e-6, 0, k_si},
    Row{volume, "m3", "cu-m", false, 1.0, 0, k_si},
    Row{volume, "in3", "cu-in|cubic-inch|cubic-inches", true, 1.6387064e-5, 0, k_sp811},
    Row{volume, "imp gal", "imp-gal|UK-gal|imperial-gallon|imperial-gallons", true, 4.54609e-3, 0,
        k_sp811},

    Row{mass, "lb", "lbs|lbm|pound|pounds", true, k_pound, 0, k_sp811},
    Row{mass, "oz", "ounce|ounces", true, k_pound / 16, 0, k_sp811},
    Row{mass, "kg", "kgs|kilo|kilos|kilogram|kilograms|Kg|KG", false, 1.0, 0, k_si},
    Row{mass, "g", "gram|grams", false, 1e-3, 0, k_si},
    Row{mass, "mg", "", false, 1e-6, 0, k_si},

    Row{time, "h", "hr|hrs|hour|hours", true, 3600.0, 0, k_sp811},
    Row{time, "min", "mins|minute|minutes", true, 60.0, 0, k_sp811},
    Row{time, "s", "sec|secs|second|seconds", true, 1.0, 0, k_si},
    Row{time, "day", "days|d", true, 86400.0, 0, k_sp811},
    Row{time, "ms", "", false, 1e-3, 0, k_si},

    Row{temperature, "degF", "deg-F|F|degrees-F|fahrenheit|Fahrenheit", false, k_fahrenheit_step,
        459.67 * k_fahrenheit_step, k_sp811},
    Row{temperature, "degC", "deg-C|C|degrees-C|celsius|Celsius", false, 1.0, 273.15, k_sp811},
    Row{temperature, "K", "kelvin", false, 1.0, 0, k_si},

    Row{temperature_difference, "degF", "deg-F|F|degrees-F|fahrenheit|Fahrenheit", false,
        k_fahrenheit_step, 0, k_sp811},
    Row{temperature_difference, "degC", "deg-C|C|degrees-C|celsius|Celsius", false, 1.0, 0,
        k_sp811},
    Row{temperature_difference, "K", "kelvin", false, 1.0, 0, k_si},

    Row{resistance, "ohm", "ohms", true, 1.0, 0, k_si},
    Row{resistance, "kohm", "kohms|kOhm|kOhms|Kohm|KOhm|KOHM|kilohm|kilohms", false, 1e3, 0, k_si},
    Row{resistance, "Mohm", "Mohms|MOhm|MOhms|MOHM|megohm|megohms|Megohm", false, 1e6, 0, k_si},
    Row{resistance, "mohm", "mohms|mOhm|mOhms|milliohm|milliohms", false, 1e-3, 0, k_si},
    Row{resistance, "uohm", "uohms|uOhm|microhm|microhms", false, 1e-6, 0, k_si},
    Row{resistance, "Gohm", "Gohms|GOhm", false, 1e9, 0, k_si},

    Row{voltage, "V", "v|volt|volts|Volt|Volts", false, 1.0, 0, k_si},
    Row{voltage, "mV", "millivolt|millivolts", false, 1e-3, 0, k_si},
    Row{voltage, "kV", "KV|kilovolt|kilovolts", false, 1e3, 0, k_si},
    Row{voltage, "uV", "", false, 1e-6, 0, k_si},

    Row{current, "A", "amp|amps|ampere|amperes|Amp|Amps", false, 1.0, 0, k_si},
    Row{current, "mA", "milliamp|milliamps", false, 1e-3, 0, k_si},
    Row{current, "uA", "microamp|microamps", false, 1e-6, 0, k_si},

    Row{charge, "Ah", "A-h|amp-hour|amp-hours", false, 3600.0, 0, k_sp811},
    Row{charge, "mAh", "mA-h", false, 3.6, 0, k_sp811},
    Row{charge, "C", "coulomb|coulombs", false, 1.0, 0, k_si},

    Row{capacitance, "uF", "microfarad|microfarads|mfd", false, 1e-6, 0, k_si},
    Row{capacitance, "nF", "", false, 1e-9, 0, k_si},
    Row{capacitance, "pF", "", false, 1e-12, 0, k_si},
    Row{capacitance, "F", "farad|farads", false, 1.0, 0, k_si},

    Row{power, "hp", "horsepower|bhp", true, 550.0 * k_foot* k_pound_force, 0, k_sp811_derived},
    Row{power, "kW", "KW|kw", false, 1e3, 0, k_si},
    Row{power, "W", "w|watt|watts", false, 1.0, 0, k_si},
    Row{power, "mW", "", false, 1e-3, 0, k_si},

    Row{energy, "J", "joule|joules", false, 1.0, 0, k_si},
    Row{energy, "ft-lbf", "ft-lb|ft-lbs|lbf-ft|foot-pound|foot-pounds", true, k_foot* k_pound_force,
        0, k_sp811_derived},
    Row{energy, "kJ", "", false, 1e3, 0, k_si},
    Row{energy, "mJ", "", false, 1e-3, 0, k_si},
    Row{energy, "Wh", "W-h", false, 3600.0, 0, k_sp811},
    Row{energy, "kWh", "kW-h", false, 3.6e6, 0, k_sp811},

    Row{frequency, "Hz", "hz|hertz|1/s", false, 1.0, 0, k_si},
    Row{frequency, "kHz", "khz", false, 1e3, 0, k_si},
    Row{frequency, "MHz", "", false, 1e6, 0, k_si},

    Row{rotation_speed, "rpm", "r/min|rev/min|1/min", true, 1.0 / 60.0, 0, k_sp811},
    Row{rotation_speed, "1/s", "rev/s|r/s|rps", true, 1.0, 0, k_si},
    Row{rotation_speed, "rad/s", "", false, 1.0 / (2.0 * k_pi), 0, k_si},

    Row{speed, "kt", "kts|kn|knot|knots", true, k_nautical_mile / 3600.0, 0, k_sp811},
    Row{speed, "mph", "mi/h", true, k_mile / 3600.0, 0, k_sp811},
    Row{speed, "km/h", "kmh|kph", true, 1.0 / 3.6, 0, k_sp811},
    Row{speed, "m/s", "", false, 1.0, 0, k_si},
    Row{speed, "ft/min", "fpm|feet/min", true, k_foot / 60.0, 0, k_sp811},
    Row{speed, "ft/s", "fps|feet/s", true, k_foot, 0, k_sp811},

    Row{volume_flow, "gal/h", "gph|gals/h|gallons/h|gallon/h|US-gal/h", true, k_gallon / 3600.0, 0,
        k_sp811_derived},
    Row{volume_flow, "L/h", "l/h|lph|litres/h|liters/h|litre/h|liter/h", false, 1e-3 / 3600.0, 0,
        k_sp811_derived},
    Row{volume_flow, "L/min", "l/min|lpm|litres/min|liters/min", false, 1e-3 / 60.0, 0,
        k_sp811_derived},
    Row{volume_flow, "gal/min", "gpm|gallons/min", true, k_gallon / 60.0, 0, k_sp811_derived},
    Row{volume_flow, "mL/min", "ml/min|cc/min", false, 1e-6 / 60.0, 0, k_sp811_derived},
    Row{volume_flow, "qt/h", "qts/h|quarts/h", true, k_gallon / 4 / 3600.0, 0, k_sp811_derived},
    Row{volume_flow, "m3/s", "", false, 1.0, 0, k_si},
    Row{volume_flow, "m3/h", "", false, 1.0 / 3600.0, 0, k_si},

    Row{torque, "in-lb", "in-lbs|in-lbf|lb-in|lbs-in|lbf-in|inch-pound|inch-pounds", true,
        k_inch* k_pound_force, 0, k_sp811_derived},
    Row{torque, "ft-lb", "ft-lbs|ft-lbf|lb-ft|lbs-ft|lbf-ft|foot-pound|foot-pounds", true,
        k_foot* k_pound_force, 0, k_sp811_derived},
    Row{torque, "N·m", "N-m|newton-metre|newton-metres|newton-meter|newton-meters", false, 1.0, 0,
        k_si},
    Row{torque, "N·cm", "N-cm", false, 1e-2, 0, k_si},
    Row{torque, "kgf·m", "kgf-m|kp-m", false, k_standard_gravity, 0, k_sp811},
    Row{torque, "kgf·cm", "kgf-cm|kp-cm", false, k_standard_gravity * 1e-2, 0, k_sp811_derived},

    Row{force, "lbf", "lb|lbs|pound|pounds|pound-force|pounds-force", true, k_pound_force, 0,
        k_sp811_derived},
    Row{force, "N", "newton|newtons", false, 1.0, 0, k_si},
    Row{force, "kN", "", false, 1e3, 0, k_si},
    Row{force, "kgf", "kp", false, k_standard_gravity, 0, k_sp811},

    Row{mass_moment, "lb-in", "in-lb|in-lbs|lbs-in|pound-inch|pound-inches|inch-pound|inch-pounds",
        true, k_pound* k_inch, 0, k_sp811_derived},
    Row{mass_moment, "kg·m", "kg-m", false, 1.0, 0, k_si},
    Row{mass_moment, "kg·cm", "kg-cm", false, 1e-2, 0, k_si},
    Row{mass_moment, "kg·mm", "kg-mm", false, 1e-3, 0, k_si},
    Row{mass_moment, "lb-ft", "ft-lb|ft-lbs|lbs-ft", true, k_pound* k_foot, 0, k_sp811_derived},

    Row{angle, "deg", "degree|degrees", true, k_pi / 180.0, 0, k_sp811},
    Row{angle, "rad", "radian|radians", false, 1.0, 0, k_si},

    Row{fraction, "%", "percent|per-cent|pct", true, 0.01, 0, "NIST SP 811 (2008), 7.10.2"},

    Row{resistance_per_length, "ohm/ft", "ohms/ft", true, 1.0 / k_foot, 0, k_sp811_derived},
    Row{resistance_per_length, "kohm/ft", "kohms/ft|kOhm/ft|Kohm/ft", false, 1e3 / k_foot, 0,
        k_sp811_derived},
    Row{resistance_per_length, "ohm/m", "ohms/m|Ohm/m", false, 1.0, 0, k_si},
    Row{resistance_per_length, "kohm/m", "kohms/m|kOhm/m|Kohm/m", false, 1e3, 0, k_si},
    Row{resistance_per_length, "mohm/m", "mohms/m|mOhm/m", false, 1e-3, 0, k_si},
    Row{resistance_per_length, "ohm/km", "ohms/km|Ohm/km", false, 1e-3, 0, k_si},
    Row{resistance_per_length, "ohm/in", "ohms/in", true, 1.0 / k_inch, 0, k_sp811_derived},
    Row{resistance_per_length, "kohm/in", "kohms/in|kOhm/in", false, 1e3 / k_inch, 0,
        k_sp811_derived},
    Row{resistance_per_length, "mohm/ft", "mohms/ft|mOhm/ft", false, 1e-3 / k_foot, 0,
        k_sp811_derived},
    Row{resistance_per_length, "ohm/kft", "ohms/kft|ohm/1000-ft|ohms/1000-ft", true, 1e-3 / k_foot,
        0, k_sp811_derived},

    Row{density, "lb/gal", "lbs/gal|lb/US-gal|lb/gallon|lbs/gallon", true, k_pound / k_gallon, 0,
        k_sp811_derived},
    Row{density, "kg/L", "kg/l|kg/litre|kg/liter", false, 1e3, 0, k_sp811},
    Row{density, "kg/m3", "", false, 1.0, 0, k_si},
    Row{density, "g/cm3", "g/cc|g/mL|g/ml", false, 1e3, 0, k_si},
    Row{density, "lb/ft3", "lbs/ft3|lb/cu-ft", true, k_pound / (k_foot * k_foot * k_foot), 0,
        k_sp811_derived},

    Row{mass_per_length, "lb/ft", "lbs/ft", true, k_pound / k_foot, 0, k_sp811_derived},
    Row{mass_per_length, "kg/m", "", false, 1.0, 0, k_si},
    Row{mass_per_length, "g/m", "", false, 1e-3, 0, k_si},
    Row{mass_per_length, "lb/in", "lbs/in", true, k_pound / k_inch, 0, k_sp811_derived},
    Row{mass_per_length, "oz/in", "", true, k_pound / 16 / k_inch, 0, k_sp811_derived},

    Row{bending_stiffness, "lb-in2", "lbf-in2|lb-sq-in", true, k_pound_force* k_inch* k_inch, 0,
        k_sp811_derived},
    Row{bending_stiffness, "N·m2", "N-m2", false, 1.0, 0, k_si},
};

}  // namespace wm::quantity::detail
