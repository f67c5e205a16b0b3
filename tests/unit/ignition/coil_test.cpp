#include "ignition/coil.hpp"

#include <gtest/gtest.h>

#include "support/ignition_input.hpp"
#include "tables/ignition/all.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using namespace wm::test;
using evidence::Verdict;

describe::Context with_tables() {
  describe::Context c;
  c.tables = tables::all_of_ignition();
  return c;
}

CoilCheckInput pair(const std::string& left, const std::string& right) {
  CoilCheckInput in;
  in.kind = CoilKind::double_ended;
  for (const auto& reading : {left, right}) {
    CoilReading c;
    c.name = in.coils.empty() ? "left" : "right";
    c.primary = read_ohms("1.1 ohm");
    c.secondary = read_ohms(reading);
    in.coils.push_back(c);
  }
  in.ranges = hand_meter();
  in.test_leads = evidence::TestLeads::nulled;
  return in;
}

TEST(Coil, TheMakersBandJudges) {
  auto in = pair("15.60 kohm", "8.45 kohm");
  in.secondary_lowest = some_ohms("15 kohm");
  in.secondary_highest = some_ohms("16 kohm");
  in.limit_source = "installation manual";
  const auto got = coil_check(in, with_tables());
  ASSERT_TRUE(got) << got.error()[0].path << got.error()[0].what;
  EXPECT_EQ(got->coils[0].secondary.verdict, Verdict::conforms);
  EXPECT_EQ(got->coils[1].secondary.verdict, Verdict::does_not_conform);
  EXPECT_TRUE(says(got->coils[1].secondary.do_next, "shorted"));
  EXPECT_EQ(got->coils[0].primary.verdict, Verdict::not_tested);
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
  EXPECT_NE(got->not_covered.find("an ohmmeter cannot prove a coil good"), std::string::npos);
}

// 15 to 16 kohm on one pattern, 8 to 9 kohm on another: common practice, no source.
TEST(Coil, BothPatternsStandSideBySideAndDecideNothing) {
  const auto got = coil_check(pair("15.60 kohm", "8.45 kohm"), with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  const auto stands = [&](std::size_t coil) {
    std::string all;
    for (const Figure& f : got->coils[coil].figures) {
      if (f.what.starts_with("double-ended")) all += f.figure + " " + f.stands + "; ";
    }
    return all;
  };
  EXPECT_EQ(stands(0), "15 to 16 kohm inside; 8 to 9 kohm above; ");
  EXPECT_EQ(stands(1), "15 to 16 kohm below; 8 to 9 kohm inside; ");
}

TEST(Coil, AdviceNeverJudges) {
  for (const char* far : {"0.01 kohm", "19.0 kohm", "2.0 kohm"}) {
    const auto got = coil_check(pair(far, far), with_tables());
    EXPECT_EQ(got->verdict, Verdict::not_tested) << far;
  }
}

TEST(Coil, OverRangeIsOpen) {
  auto in = pair("15.60 kohm", "15.60 kohm");
  in.coils[1].secondary.reset();
  in.coils[1].secondary_over_range = true;
  EXPECT_EQ(coil_check(in, with_tables()).error()[0].path, "coils/1/secondary_range");
  in.coils[1].secondary_range = "20 kohm";
  EXPECT_EQ(coil_check(in, with_tables())->coils[1].secondary.in_words, "does not conform (open)");
  in.secondary_highest = some_ohms("16 kohm");
  EXPECT_EQ(coil_check(in, with_tables())->coils[1].secondary.in_words, "does not conform (open)");
}

TEST(Coil, OverRangeToTheCaseIsExpected) {
  auto in = pair("15.60 kohm", "15.60 kohm");
  in.coils[0].to_case_over_range = true;
  in.coils[0].to_case_range = "20 kohm";
  in.coils[1].to_case = read_ohms("3.20 kohm");
  auto got = coil_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_NE(got->coils[0].to_case.reason.find("as is expected"), std::string::npos);
  EXPECT_EQ(got->coils[1].to_case.verdict, Verdict::not_tested);
  EXPECT_NE(got->coils[1].to_case.reason.find("may leak"), std::string::npos);
  in.to_case_least = some_ohms("10 Mohm");
  got = coil_check(in, with_tables());
  EXPECT_EQ(got->coils[0].to_case.verdict, Verdict::undecided);  // the range ends too low
  EXPECT_EQ(got->coils[1].to_case.verdict, Verdict::does_not_conform);
}

TEST(Coil, AWarmCoilIsJudgedByWarmLimits) {
  auto in = pair("18.0 kohm", "18.0 kohm");
  in.secondary_lowest = some_ohms("15 kohm");
  in.secondary_highest = some_ohms("16 kohm");
  EXPECT_EQ(coil_check(in, with_tables())->coils[0].secondary.verdict, Verdict::does_not_conform);
  in.coils[0].temperature = quantity::celsius(65);
  const auto got = coil_check(in, with_tables());
  EXPECT_EQ(got->coils[0].secondary.verdict, Verdict::conforms);
  EXPECT_TRUE(says(got->coils[0].working, "254.5"));
  EXPECT_LT(got->coils[0].secondary_at_20->si, 16000);
}

TEST(Coil, ComparesTheCoils) {
  auto in = pair("15.60 kohm", "15.62 kohm");
  in.coils.push_back(in.coils[0]);
  in.coils[2].name = "third";
  in.coils.push_back(in.coils[0]);
  in.coils[3].name = "fourth";
  in.coils[3].secondary = read_ohms("13.10 kohm");
  const auto got = coil_check(in, with_tables());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->coils[0].secondary_among_coils, "like the other coils");
  EXPECT_NE(got->coils[3].secondary_among_coils.find("lower"), std::string::npos);
}

TEST(Coil, NamesWhatIsWrong) {
  EXPECT_EQ(coil_check({}, with_tables()).error()[0].path, "coils");
  auto in = pair("15.60 kohm", "15.60 kohm");
  in.secondary_lowest = some_ohms("16 kohm");
  in.secondary_highest = some_ohms("15 kohm");
  const auto got = coil_check(in, with_tables());
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().size(), 1U);
  EXPECT_EQ(got.error()[0].path, "secondary_lowest");
  in = pair("15.60 kohm", "15.60 kohm");
  in.coils[0].primary_over_range = true;
  EXPECT_EQ(coil_check(in, with_tables()).error()[0].path, "coils/0/primary");
}

}  // namespace
