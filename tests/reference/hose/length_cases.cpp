// Source:    hoses notes, section 11: case 2 (NAVEDTRA 14018 table 5-2), case 3 (TM 1-1500-204-23-2
//            table 4-22 against NAVEDTRA 14018), case 5 and 7 (FAA-H-8083-30), case 6
//            (AC 43.13-1B fig. 9-9); all derived there from the tables and rules named.
// Tolerance: half a unit of the last printed digit.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "hose/declarations.hpp"
#include "hose/length.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

EnteredLength typed(const std::string& text) { return *quantity::read<quantity::Length>(text); }
double inches_of(const std::optional<EnteredLength>& l) { return l->value / quantity::inches(1); }

class HoseCases : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  void expect(const char* id, const char* source, double expected, double got, double tolerance) {
    test::check({"length-allowance", id, source, fmt::format("{} in", expected), expected, got,
                 tolerance, "half a unit of the last printed digit"});
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(HoseCases, Case2CutLengthWithTwoEnds) {
  LengthAllowanceInput in;
  in.overall = typed("16.50 in");
  in.size = "-8";
  in.near_end.family = "MS24587";
  in.far_end.family = "MS24587";
  const auto got = length_allowance(in, context);
  ASSERT_TRUE(got);
  expect("case 2: -8, 16 4/8 in", "NAVEDTRA 14018 table 5-2", 14.62, inches_of(got->cut_length),
         0.005);
}

TEST_F(HoseCases, Case3BothTablesCutThePtfeHoseAlike) {
  LengthAllowanceInput in;
  in.overall = typed("18.00 in");
  in.size = "-6";
  in.pair_form = "straight";
  const auto pair = length_allowance(in, context);
  ASSERT_TRUE(pair);
  expect("case 3: -6 PTFE, per pair", "TM 1-1500-204-23-2 table 4-22", 16.38,
         inches_of(pair->cut_length), 0.005);
  in.pair_form.clear();
  in.near_end.family = "MS27616 straight flared (PTFE)";
  in.far_end.family = in.near_end.family;
  const auto single = length_allowance(in, context);
  ASSERT_TRUE(single);
  expect("case 3: -6 PTFE, each end", "NAVEDTRA 14018 table 5-2", 16.38,
         inches_of(single->cut_length), 0.005);
}

// Cross check of the two tables: every straight pair is twice the single end.
TEST_F(HoseCases, EveryStraightPairIsTwiceTheSingleEnd) {
  for (const char* size : {"-3", "-4", "-5", "-6", "-8", "-10", "-12"}) {
    const auto pair = cut_off_pair(context, size, "straight");
    const auto one = cut_off(context, "MS27616 straight flared (PTFE)", size);
    ASSERT_TRUE(pair && one) << size;
    EXPECT_NEAR(*pair / quantity::inches(1), 2.0 * (*one / quantity::inches(1)), 1e-9) << size;
  }
}

// Erratum kept in view: 3.58 in at -8, 45 degrees lies above the next larger size.
TEST_F(HoseCases, TheOddElbowRowIsStillThere) {
  const auto odd = cut_off_pair(context, "-8", "45 degree elbow");
  const auto next = cut_off_pair(context, "-10", "45 degree elbow");
  ASSERT_TRUE(odd && next);
  EXPECT_GT(odd->si, next->si) << "the odd row is gone: check the edition";
}

LengthAllowanceInput thirty_inches() {
  LengthAllowanceInput in;
  in.between_seats = typed("30.0 in");
  in.near_end.rigid = typed("0 in");
  in.far_end.rigid = typed("0 in");
  return in;
}

TEST_F(HoseCases, Case5SlackByBothReadings) {
  auto in = thirty_inches();
  const auto total = length_allowance(in, context);
  ASSERT_TRUE(total);
  expect("case 5: 5 % of total", "FAA-H-8083-30 p. 7-19", 31.58,
         inches_of(total->flexible_shortest), 0.005);
  expect("case 5: 8 % of total", "FAA-H-8083-30 p. 7-19", 32.61, inches_of(total->flexible_longest),
         0.005);
  in.slack_rule = SlackRule::of_gap;
  const auto gap = length_allowance(in, context);
  ASSERT_TRUE(gap);
  expect("case 5: 5 % longer than the gap", "FAA-H-8083-30 p. 7-19", 31.50,
         inches_of(gap->flexible_shortest), 0.005);
  expect("case 5: 8 % longer than the gap", "FAA-H-8083-30 p. 7-19", 32.40,
         inches_of(gap->flexible_longest), 0.005);
}

TEST_F(HoseCases, Case6ChangeUnderPressure) {
  auto in = thirty_inches();
  in.between_seats.reset();
  in.overall = typed("32 in");
  const auto got = length_allowance(in, context);
  ASSERT_TRUE(got);
  expect("case 6: longer by", "AC 43.13-1B fig. 9-9", 0.64, inches_of(got->lengthens), 0.005);
  expect("case 6: shorter by", "AC 43.13-1B fig. 9-9", 1.28, inches_of(got->shortens), 0.005);
}

TEST_F(HoseCases, Case7StraightBehindEachEnd) {
  auto in = thirty_inches();
  in.outside_diameter = typed("0.77 in");
  const auto got = length_allowance(in, context);
  ASSERT_TRUE(got);
  expect("case 7: -8, straight at each end", "FAA-H-8083-30", 1.54,
         inches_of(got->straight_at_ends), 0.005);
}

}  // namespace
