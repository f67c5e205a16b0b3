#pragma once
/// What a line carries, as far as its proof test and its order care.

#include <cstdint>
#include <string_view>

#include "describe/fields.hpp"

namespace wm::hose {

enum class Carries : std::uint8_t {
  not_said,
  fuel,               ///< avgas or petrol without alcohol
  fuel_with_alcohol,  ///< petrol with ethanol or methanol
  oil,
  hydraulic_mineral,   ///< red mineral oil and its like
  hydraulic_phosphate  ///< phosphate ester
};
[[nodiscard]] bool is_fuel(Carries fluid);
[[nodiscard]] std::string_view words(Carries fluid);
std::string_view describe(describe::Choices<Carries>& c);

}  // namespace wm::hose
