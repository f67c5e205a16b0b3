// Source:    AC 43.13-1B CHG 1, page 11-22: copper, 254.5 / (234.5 + T2); IEC 60228 temperature
//            factors as three public extracts print them (0.004 for a kelvin, against copper's
//            1/254.5): 0.926 at 40 degC, 0.833 at 70 degC; electrical notes 1.6: exact copper
//            0.784 at 90 degC. Coils: common practice, no source.
// Tolerance: half a unit of the last printed digit; for the IEC rows what its 0.004 differs.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <array>

#include "ignition/coil.hpp"
#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;

double factor_to_20(double celsius) {
  return copper_factor(quantity::celsius(celsius), quantity::celsius(20));
}

TEST(CoilCases, CopperToTwentyDegrees) {
  check({"coil-check", "copper from 90 degC to 20 degC", "electrical notes 1.6", "0.784", 0.784,
         factor_to_20(90), 0.0005, "half a unit of the last printed digit"});
  const std::string iec = "IEC 60228 temperature factor, public extracts";
  check({"coil-check", "copper from 40 degC to 20 degC", iec, "0.926", 0.926, factor_to_20(40),
         0.0012, "half a digit, and 0.004 against 1/254.5 over 20 kelvin"});
  check({"coil-check", "copper from 70 degC to 20 degC", iec, "0.833", 0.833, factor_to_20(70),
         0.0032, "half a digit, and 0.004 against 1/254.5 over 50 kelvin"});
}

// 15.60 kohm +- 0.1548 kohm inside 15 to 16 kohm; 15.90 kohm +- 0.1572 reaches 16.06: undecided.
TEST(CoilCases, DoubleEndedByHand) {
  CoilCheckInput in;
  in.kind = CoilKind::double_ended;
  for (const char* reading : {"15.60 kohm", "15.90 kohm", "16.20 kohm"}) {
    CoilReading c;
    c.name = reading;
    c.primary = read_ohms("1.1 ohm");
    c.secondary = read_ohms(reading);
    in.coils.push_back(c);
  }
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  in.secondary_lowest = some_ohms("15 kohm");
  in.secondary_highest = some_ohms("16 kohm");
  const auto got = coil_check(in, {});
  ASSERT_TRUE(got);
  const std::string source = "hand calculation, +-(0.8 % + 3 digits) on the 20 kohm range";
  const std::array<const char*, 3> expected{"conforms", "undecided", "does not conform"};
  for (std::size_t i = 0; i < expected.size(); ++i) {
    check_text("coil-check", fmt::format("{} within 15 to 16 kohm", in.coils[i].name), source,
               expected.at(i), got->coils[i].secondary.in_words);
  }
}

}  // namespace
