// Source:    AC 43.13-1B CHG 1, par. 8-17 (what is rejected by its look); meter and gap by hand.
// Tolerance: verdicts are words.
#include <gtest/gtest.h>

#include "ignition/plug.hpp"
#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using quantity::Length;

PlugCheckInput plug(const char* gap, const char* resistor) {
  PlugReading p;
  p.name = "1 top";
  p.gaps = {measured<Length>(gap)};
  p.resistor = read_ohms(resistor);
  p.look = PlugLook::normal;
  PlugCheckInput in;
  in.plugs = {p};
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  return in;
}

TEST(PlugCases, TheLookOfPar8_17) {
  auto in = plug("0.018 in", "1.050 kohm");
  in.plugs[0].look = PlugLook::cracked_ceramic;
  check_text("plug-check", "cracked ceramic", "AC 43.13-1B CHG 1, par. 8-17", "does not conform",
             plug_check(in, {})->plugs[0].look.in_words);
}

// 1.990 kohm on the 2 kohm range: 15.92 + 3 = 18.92 ohm, so up to 2.009: undecided at 2 kohm.
// 1.980 kohm: 15.84 + 3 = 18.84 ohm, up to 1.99884: conforms.
TEST(PlugCases, ResistorByHand) {
  const std::string source = "hand calculation, +-(0.8 % + 3 digits) on the 2 kohm range";
  for (const auto& [reading, words] :
       {std::pair{"1.990 kohm", "undecided"}, std::pair{"1.980 kohm", "conforms"}}) {
    auto in = plug("0.018 in", reading);
    in.resistor_highest = some_ohms("2 kohm");
    check_text("plug-check", std::string(reading) + " at most 2 kohm", source, words,
               plug_check(in, {})->plugs[0].resistor.in_words);
  }
}

}  // namespace
