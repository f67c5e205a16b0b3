#pragma once
/// Text at the edge: parsing what people write, and printing no more digits than
/// the inputs earn.

#include <optional>
#include <string>
#include <string_view>

#include "quantity/kinds.hpp"

namespace wm::quantity {

/// One value as somebody typed it.
struct Parsed {
  double si{};
  double resolution_si{};   ///< one unit of the last digit typed, in SI; for "3/8" the step 1/8
  std::string_view unit{};  ///< symbol of the (largest) unit used; static storage
};

/// A value that remembers how it was typed. `text` is empty for computed values.
template <class Q>
struct Entered {
  Q value{};
  double resolution_si{};
  std::string text;
  friend bool operator==(const Entered&, const Entered&) = default;
};

/// A value with the expanded uncertainty stated beside it: "85.2 ohm +- 0.7 ohm".
template <class Q>
struct Measured {
  Q value{};
  /// Expanded uncertainty U (coverage factor 2 unless said), SI; nothing when not stated.
  std::optional<double> expanded_si{};
  double resolution_si{};
  std::string text;
  friend bool operator==(const Measured&, const Measured&) = default;
};

struct ParsedMeasured {
  Parsed value;
  std::optional<Parsed> expanded;
};

/// Read "38 in", "3 ft 4 1/2 in", "3/8 in", "15.6 kohm", "2 h 30 min", "-5 degC".
///
/// @param text  What was typed. Leading and trailing blanks do not matter.
/// @param kind  What the field needs; "psia"/"psig" must agree with it.
/// @return      Problem kinds: bad_text (bare number, comma decimal with a hint, NaN,
///              infinity, over-long), wrong_dimension ("`38 psi` is a pressure, a length is
///              needed").
[[nodiscard]] Result<Parsed> parse(std::string_view text, KindOf kind);

/// The same with an optional "+- U" ("±" and "+/-" too); the unit may stand once at the end
/// ("85.2 +- 0.7 ohm") or twice. A temperature takes a temperature difference there.
[[nodiscard]] Result<ParsedMeasured> parse_measured(std::string_view text, KindOf kind);

template <class Q>
[[nodiscard]] Result<Entered<Q>> read(std::string_view text) {
  auto parsed = parse(text, Q::kind);
  if (!parsed) return Fail(parsed.error());
  return Entered<Q>{Q{parsed->si}, parsed->resolution_si, std::string(text)};
}

/// Decimal number, `.` only, no locale; refuses NaN, infinity, a comma, trailing text.
[[nodiscard]] Result<double> parse_number(std::string_view text);

/// Print with the unit; as many decimals as `resolution_si` earns in that unit (so 38 in
/// typed to the inch prints as 97 cm, not 96.52 cm). resolution_si = 0: 4 significant digits.
[[nodiscard]] std::string print(double si, const Unit& unit, double resolution_si);
/// The number alone, same rounding.
[[nodiscard]] std::string print_number(double si, const Unit& unit, double resolution_si);
/// In the default unit of a set.
[[nodiscard]] std::string print(double si, KindOf kind, UnitSet set, double resolution_si);
/// A number with `digits` significant digits, never in exponent form between 1e-4 and 1e9.
[[nodiscard]] std::string significant(double value, int digits);
/// An uncertainty is printed with two significant digits and the value to the same decimal
/// (JCGM 100:2008, 7.2.6): "85.20 ohm +- 0.70 ohm".
[[nodiscard]] std::string print_with_uncertainty(double si, double expanded_si, const Unit& unit);

}  // namespace wm::quantity
