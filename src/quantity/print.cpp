#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

constexpr int k_digits_without_resolution = 4;
constexpr int k_most_decimals = 17;
constexpr double k_plain_from = 1e-4;
constexpr double k_plain_to = 1e15;

/// Power of ten of the first digit: 0 for 3.8, 1 for 38, -1 for 0.38.
int leading_power(double value) {
  // The decimal form decides, so that 0.1 and 1000 are not a hair off.
  const std::string text = fmt::format("{:.14e}", std::abs(value));
  return std::stoi(text.substr(text.find('e') + 1));
}

/// Decimals so that one step of the last digit printed is not coarser than `step`.
int decimals_for(double step) { return static_cast<int>(std::ceil(-std::log10(step) - 1e-9)); }

/// Round to a multiple of 10^-decimals, ties to even. A tie is judged after the noise of the
/// conversion to SI and back is taken off.
double rounded(double value, int decimals) {
  const double power = std::pow(10.0, std::abs(decimals));
  const double scaled = decimals >= 0 ? value * power : value / power;
  if (!std::isfinite(scaled) || std::abs(scaled) >= 1e15) return value;
  const double below = std::floor(scaled);
  const double rest = scaled - below;
  const double noise = std::max(1e-9, std::abs(scaled) * 1e-15);
  double whole = below;
  if (std::abs(rest - 0.5) <= noise) {
    whole = std::fmod(below, 2.0) == 0.0 ? below : below + 1;
  } else if (rest > 0.5) {
    whole = below + 1;
  }
  return decimals >= 0 ? whole / power : whole * power;
}

std::string without_negative_zero(std::string text) {
  if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) {
    text.erase(0, 1);
  }
  return text;
}

std::string with_decimals(double value, int decimals) {
  decimals = std::clamp(decimals, -30, 30);
  const double r = rounded(value, decimals);
  if (std::abs(r) >= k_plain_to || decimals > k_most_decimals) {
    const int digits = r == 0 ? 0 : std::clamp(leading_power(r) + decimals, 0, 16);
    return without_negative_zero(fmt::format("{:.{}e}", r, digits));
  }
  return without_negative_zero(fmt::format("{:.{}f}", r, std::max(decimals, 0)));
}

double in_unit(double si, const Unit& unit) { return (si - unit.offset) / unit.factor; }

}  // namespace

std::string significant(double value, int digits) {
  digits = std::clamp(digits, 1, 17);
  if (!std::isfinite(value)) return "not a number";
  if (value == 0) return "0";
  const double size = std::abs(value);
  if (size < k_plain_from || size >= 1e9) return fmt::format("{:.{}e}", value, digits - 1);
  const double r = rounded(value, digits - 1 - leading_power(value));
  // Rounding may have carried into a new digit: 99.99 to three is 100, not 100.0.
  return with_decimals(r, digits - 1 - leading_power(r));
}

std::string print_number(double si, const Unit& unit, double resolution_si) {
  const double value = in_unit(si, unit);
  if (!(resolution_si > 0) || !std::isfinite(resolution_si) || !std::isfinite(value)) {
    return significant(value, k_digits_without_resolution);
  }
  return with_decimals(value, decimals_for(resolution_si / unit.factor));
}

std::string print(double si, const Unit& unit, double resolution_si) {
  return fmt::format("{} {}", print_number(si, unit, resolution_si), unit.symbol);
}

std::string print(double si, KindOf kind, UnitSet set, double resolution_si) {
  return print(si, default_unit(kind, set), resolution_si);
}

std::string print_with_uncertainty(double si, double expanded_si, const Unit& unit) {
  const double expanded = std::abs(expanded_si) / unit.factor;
  if (!(expanded > 0) || !std::isfinite(expanded)) return print(si, unit, 0);
  const int first = 1 - leading_power(expanded);
  const double r = rounded(expanded, first);
  const int decimals = 1 - leading_power(r);  // 0.0996 becomes 0.10, not 0.100
  return fmt::format("{} {} +- {} {}", with_decimals(in_unit(si, unit), decimals), unit.symbol,
                     with_decimals(r, decimals), unit.symbol);
}

}  // namespace wm::quantity
