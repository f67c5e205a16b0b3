#pragma once
/// Reading one number from the front of a folded text.

#include <string>
#include <string_view>

#include "outcome/result.hpp"

namespace wm::quantity::detail {

struct Number {
  double value{};
  double resolution{};  ///< one unit of the last digit, never above 1; 1/8 for "3/8"
  bool whole{};         ///< typed with digits only
  std::size_t used{};   ///< bytes read
};

/// "38", "15.6", ".5", "1.2e3", "3/8", "1 3/8", "4-1/2"; no sign.
/// @param quoted  The whole entry, for the message.
/// @return bad_text when no number starts here or a fraction makes no sense, out_of_bounds when
///         the exponent is beyond anything that is measured here.
[[nodiscard]] Result<Number> scan_number(std::string_view text, std::string_view quoted);

/// What is wrong with commas and gaps in numbers; empty `what` when nothing is.
[[nodiscard]] Problem separator_problem(std::string_view folded, std::string_view quoted);

[[nodiscard]] inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
[[nodiscard]] std::size_t count_digits(std::string_view text, std::size_t from);

}  // namespace wm::quantity::detail
