// Source:    hand calculation: 0.39 +- 0.02 uF reaches 0.41, 0.36 +- 0.02 lies inside 0.30 to 0.40;
//            500 V through 500 Mohm is 1 uA (Ohm's law).
// Tolerance: words; the current is exact.
#include "ignition/condenser.hpp"

#include <gtest/gtest.h>

#include "support/ignition_input.hpp"
#include "support/reference_case.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using quantity::Capacitance;

TEST(CondenserCases, ByHand) {
  for (const auto& [read, words] :
       {std::pair{"0.36 uF +- 0.02 uF", "conforms"}, std::pair{"0.39 uF +- 0.02 uF", "undecided"},
        std::pair{"0.45 uF +- 0.02 uF", "does not conform"}}) {
    CondenserCheckInput in;
    in.capacitance = measured<Capacitance>(read);
    in.lowest = entered<Capacitance>("0.30 uF");
    in.highest = entered<Capacitance>("0.40 uF");
    check_text("condenser-check", std::string(read) + " within 0.30 to 0.40 uF", "hand calculation",
               words, condenser_check(in, {})->capacitance.in_words);
  }
}

TEST(CondenserCases, LeakageAndAdvice) {
  describe::Context context;
  context.tables = tables::all_of_ignition();
  CondenserCheckInput in;
  EXPECT_EQ(condenser_check(in, context).error()[0].path, "capacitance");
  in.capacitance = measured<Capacitance>("5.00 uF +- 0.01 uF");
  InsulationReading r;
  r.part = "condenser";
  r.test_voltage = entered<quantity::Voltage>("500 V");
  r.reading = read_ohms("500 Mohm");
  in.leakage = r;
  in.ohmmeter = OhmmeterShows::stays_low;
  const auto got = condenser_check(in, context);
  ASSERT_TRUE(got);
  check({"condenser-check", "500 V through 500 Mohm", "Ohm's law", "1 uA", 1.0,
         got->leakage->leaks->si * 1e6, 1e-9, "exact"});
  // Far outside all advice: shown so, and no verdict.
  EXPECT_EQ(got->verdict, evidence::Verdict::not_tested);
  EXPECT_EQ(got->figures.at(0).stands, "above");
  EXPECT_EQ(got->leakage->figures.at(0).stands, "below");
  EXPECT_NE(got->ohmmeter.find("shorted"), std::string::npos);
}

}  // namespace
