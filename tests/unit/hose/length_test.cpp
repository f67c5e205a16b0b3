#include "hose/length.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "hose/declarations.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

EnteredLength typed(const std::string& text) { return *quantity::read<quantity::Length>(text); }
bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}

class HoseLength : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  std::string paths(const LengthAllowanceInput& in) {
    const auto got = length_allowance(in, context);
    std::string all;
    if (!got) {
      for (const Problem& p : got.error()) all += p.path + " ";
    }
    return all;
  }
  LengthAllowanceInput usual() {
    LengthAllowanceInput in;
    in.between_seats = typed("22.0 in");
    in.size = "-8";
    for (EndFitting* end : {&in.near_end, &in.far_end}) {
      end->rigid = typed("1.50 in");
      end->cut_off = typed("0.94 in");
    }
    return in;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(HoseLength, FromTheGapToTheCut) {
  const auto got = length_allowance(usual(), context);
  ASSERT_TRUE(got);
  // gap 19 in, hose 19 / 0.95 = 20 in, overall 23 in, cut 23 - 2 x 0.94 in
  EXPECT_NEAR(got->overall.value / quantity::inches(1), 23.0, 1e-9);
  EXPECT_NEAR(got->cut_length->value / quantity::inches(1), 21.12, 1e-9);
  EXPECT_NEAR(got->in_hand->value / quantity::inches(1), 0.2, 1e-9);
  EXPECT_NEAR(got->slack->si, 0.05, 1e-12);
  EXPECT_TRUE(says(got->working, "gap to bridge = 22 in - 1.5 in - 1.5 in = 19 in"));
  EXPECT_TRUE(says(got->working, "cut length = 23 in - 0.94 in - 0.94 in = 21.12 in"));
  EXPECT_TRUE(says(got->notes, "+-0.188 in"));
}

TEST_F(HoseLength, SaysHowEachEndIsMeasured) {
  auto in = usual();
  in.far_end.form = EndForm::elbow_90;
  const auto got = length_allowance(in, context);
  EXPECT_TRUE(says(got->measured, "near end: from the sealing seat"));
  EXPECT_TRUE(says(got->measured, "centre line of the 90 degree outlet"));
  for (const EndForm form : {EndForm::elbow_45, EndForm::male_thread}) {
    EXPECT_FALSE(measured_from(form).empty());
  }
}

TEST_F(HoseLength, AHoseThatIsTooShortPulls) {
  auto in = usual();
  in.overall = typed("22.5 in");
  EXPECT_TRUE(says(length_allowance(in, context)->notes, "pulls on its end fittings"));
  in.overall = typed("22.9 in");
  EXPECT_TRUE(says(length_allowance(in, context)->notes, "less slack"));
  in.overall = typed("25 in");
  EXPECT_TRUE(says(length_allowance(in, context)->notes, "more slack"));
}

TEST_F(HoseLength, WithoutARigidLengthTheCutOffStandsIn) {
  auto in = usual();
  in.near_end.rigid.reset();
  in.far_end.rigid.reset();
  const auto got = length_allowance(in, context);
  ASSERT_TRUE(got);
  EXPECT_GT(got->overall.value.si, length_allowance(usual(), context)->overall.value.si);
  EXPECT_TRUE(says(got->notes, "stands in"));
}

TEST_F(HoseLength, WithoutCutOffThereIsNoCutLength) {
  auto in = usual();
  in.far_end.cut_off.reset();
  const auto got = length_allowance(in, context);
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->cut_length);
  EXPECT_TRUE(says(got->notes, "no cut length"));
}

TEST_F(HoseLength, NamesWhatIsMissingOrContradicts) {
  EXPECT_EQ(paths({}), "between_seats ");
  auto in = usual();
  in.near_end = {};
  EXPECT_EQ(paths(in), "near_end/rigid ");
  in = usual();
  in.between_seats = typed("3 in");
  EXPECT_EQ(paths(in), "between_seats ");
  in = usual();
  in.slack_from = quantity::per_cent(9);
  EXPECT_EQ(paths(in), "slack_from ");
  in = usual();
  in.pair_form = "straight";
  EXPECT_EQ(paths(in), "pair_form ");
  in = usual();
  in.overall = typed("1.5 in");
  EXPECT_EQ(paths(in), "overall ");
}

TEST_F(HoseLength, NamesTheRowsThereAre) {
  auto in = usual();
  in.near_end.cut_off.reset();
  in.near_end.family = "MS1";
  auto got = length_allowance(in, context);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "near_end/family");
  EXPECT_NE(got.error()[0].expected.find("MS24587"), std::string::npos);
  in.near_end.family = "MS24587";
  in.size = "-7";
  got = length_allowance(in, context);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "size");
  EXPECT_NE(got.error()[0].expected.find("-8"), std::string::npos);
  EXPECT_EQ(cut_off({}, "MS24587", "-8").error().kind, Kind::not_found);
}

TEST_F(HoseLength, WarnsOfTheOddRow) {
  LengthAllowanceInput in;
  in.overall = typed("18 in");
  in.size = "-8";
  in.pair_form = "45 degree elbow";
  EXPECT_TRUE(says(length_allowance(in, context)->notes, "3.58 in looks out of line"));
}

TEST_F(HoseLength, MetricLengthsAreRoundedToTheMillimetre) {
  auto in = usual();
  in.between_seats = typed("560 mm");
  const auto got = length_allowance(in, context);
  const double mm = got->overall.value.si * 1000;
  EXPECT_NEAR(mm, std::round(mm), 1e-6);
  EXPECT_TRUE(says(got->working, "the millimetre"));
}

TEST_F(HoseLength, IsDeclaredWithoutAGap) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<LengthAllowanceInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<LengthAllowanceAnswer>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<EndFitting>()), "");
}

}  // namespace
