#include "hose/carries.hpp"

namespace wm::hose {

bool is_fuel(Carries fluid) {
  return fluid == Carries::fuel || fluid == Carries::fuel_with_alcohol;
}

std::string_view words(Carries fluid) {
  switch (fluid) {
    case Carries::not_said:
      return "not said";
    case Carries::fuel:
      return "fuel";
    case Carries::fuel_with_alcohol:
      return "fuel with alcohol";
    case Carries::oil:
      return "engine oil";
    case Carries::hydraulic_mineral:
      return "hydraulic fluid, mineral";
    case Carries::hydraulic_phosphate:
      return "hydraulic fluid, phosphate ester";
  }
  return "";
}

std::string_view describe(describe::Choices<Carries>& c) {
  c.has(Carries::not_said, "not-said", "not said")
      .has(Carries::fuel, "fuel", "avgas, or petrol without alcohol")
      .has(Carries::fuel_with_alcohol, "fuel-with-alcohol", "petrol with ethanol or methanol")
      .has(Carries::oil, "oil", "engine oil")
      .has(Carries::hydraulic_mineral, "hydraulic-mineral", "hydraulic fluid, mineral")
      .has(Carries::hydraulic_phosphate, "hydraulic-phosphate", "hydraulic fluid, phosphate ester");
  return "carries";
}

}  // namespace wm::hose
