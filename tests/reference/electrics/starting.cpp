// Source:    electrical notes, section 9 cases E13 and E14 (computed there from AC 43.13-1B table
//            11-9 and TM 10-3930-671-24 page F-303).
// Tolerance: half a unit of the last printed digit, or as stated with the case.
#include "electrics/starting.hpp"

#include <gtest/gtest.h>

#include "support/reference_case.hpp"
#include "unit/electrics/starting_sample.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

TEST(StartingCases, E13RuleOfThumb) {
  test::check({"starting-circuit", "E13 250 A", "TM 10-3930-671-24 page F-303: 0.20 V per 100 A",
               "0.50 V", 0.50, rule_of_thumb({250}).si, 1e-12, "exact"});
}

TEST(StartingCases, E14AtTheStarter) {
  const auto got = starting_circuit(example(), {});
  ASSERT_TRUE(got);
  test::check({"starting-circuit", "E14 at the starter, 200 A",
               "computed from AC 43.13-1B table 11-9 (12 ft of No. 2)", "10.17 V", 10.17,
               got->at_starter.si, 0.01, "stated with the case"});
  test::check({"starting-circuit", "E14 drop outside the battery", "as above", "0.832 V", 0.832,
               got->outside.si * 200, 0.0005, "half a unit of the last printed digit"});
  test::check({"starting-circuit", "E14 drop of the cable", "as above", "0.432 V", 0.432,
               got->elements[1].computed.si, 0.0005, "half a unit of the last printed digit"});
  EXPECT_EQ(got->rules[0].against, "over");  // 0.832 V against 0.40 V
  EXPECT_NEAR(got->rules[0].limit->si, 0.40, 1e-12);
}

}  // namespace
