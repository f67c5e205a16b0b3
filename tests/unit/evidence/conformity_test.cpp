#include "evidence/conformity.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace wm::evidence {
namespace {

using describe::AnyQuantity;
using quantity::per_cent;

AnyQuantity value(const char* text) {
  const auto v = describe::read_any(text);
  EXPECT_TRUE(v) << text;
  return *v;
}
/// A lead against 12 to 27.6 kohm, on a meter of 0.9 % + 2 counts.
ConformityInput lead(const char* reading, const char* range = "60.00 kohm") {
  ConformityInput in;
  if (reading != nullptr) in.reading = value(reading);
  in.lower = value("12.00 kohm");
  in.upper = value("27.60 kohm");
  in.limit_source = "entered by the owner";
  MeterRange m;
  m.name = range;
  m.full_scale = value(range);
  m.of_reading = per_cent(0.9);
  m.counts = 2;
  in.meter = m;
  return in;
}
Conformity judged(const ConformityInput& in) {
  const auto got = conformity(in, {});
  EXPECT_TRUE(got);
  return got ? *got : Conformity{};
}
bool has(const std::vector<NextStep>& steps, NextStep step) {
  return std::find(steps.begin(), steps.end(), step) != steps.end();
}
Problems problems(const ConformityInput& in) {
  const auto got = conformity(in, {});
  EXPECT_FALSE(got);
  return got ? Problems{} : got.error();
}

TEST(Conformity, TheFourLeadsOfTheWalk) {
  EXPECT_EQ(judged(lead("20.00 kohm")).verdict, Verdict::conforms);
  EXPECT_EQ(judged(lead("29.00 kohm")).verdict, Verdict::does_not_conform);
  EXPECT_EQ(judged(lead("27.50 kohm")).verdict, Verdict::undecided);
  auto open = lead(nullptr);
  open.over_range = true;
  const auto o = judged(open);
  EXPECT_EQ(o.verdict, Verdict::does_not_conform);
  EXPECT_TRUE(o.open);
  EXPECT_EQ(o.in_words, "does not conform (open)") << "a sentence, not the machine's word";
  EXPECT_NE(o.reason.find("even if the engine runs"), std::string::npos);
}

TEST(Conformity, NotTestedIsAnAnswer) {
  const auto n = judged(lead(nullptr));
  EXPECT_EQ(n.verdict, Verdict::not_tested);
  EXPECT_EQ(n.in_words, "not tested");
  EXPECT_FALSE(n.value.has_value());
  EXPECT_FALSE(n.reason.empty());
}

TEST(Conformity, UndecidedEndsInSomethingToDo) {
  const auto u = judged(lead("27.50 kohm"));
  EXPECT_TRUE(has(u.do_next, NextStep::reseat_and_repeat));
  EXPECT_TRUE(has(u.do_next, NextStep::swap_with_sibling));
  EXPECT_TRUE(has(u.do_next, NextStep::other_instrument));
  EXPECT_TRUE(has(u.do_next, NextStep::hold));
  EXPECT_FALSE(has(u.do_next, NextStep::use_lower_range));
  // Read on far too high a range, with 1 kohm to the count: a lower range first.
  auto coarse = lead("27 kohm", "600 kohm");
  const auto c = judged(coarse);
  EXPECT_EQ(c.verdict, Verdict::undecided);
  EXPECT_EQ(c.do_next.front(), NextStep::use_lower_range);
}

TEST(Conformity, MeterNotGoodEnough) {
  auto in = lead("20 kohm", "60 kohm");
  in.meter->of_reading = per_cent(50);
  const auto c = judged(in);
  EXPECT_EQ(c.verdict, Verdict::undecided);
  EXPECT_FALSE(c.meter_good_enough);
  EXPECT_EQ(c.reason.rfind("the meter is not good enough", 0), 0u) << c.reason;
  EXPECT_EQ(c.do_next.front(), NextStep::other_instrument);
  // An upper limit alone: a resistance cannot be below 0, so w above the limit leaves no room.
  ConformityInput bond;
  bond.reading = value("0.1 ohm");
  bond.upper = value("0.01 ohm");
  bond.meter = MeterRange{};
  bond.meter->counts = 5;
  EXPECT_FALSE(judged(bond).meter_good_enough);
}

// Symptom: verdicts in words showed six digits ("3.07756 to 7.92244 kohm").
TEST(Conformity, WordsShowNoMoreDigitsThanTheDoubtEarns) {
  const auto c = judged(lead("20.00 kohm"));
  // U = 2 sqrt(((0.9 % of 20 + 0.02) / sqrt 3)^2 + (0.01 / sqrt 12)^2) = 0.231 kohm: two digits
  // are 0.23, so the band ends at 0.01 kohm: 12 + 0.23 to 27.6 - 0.23 (own sum, by pencil).
  EXPECT_EQ(c.reason, "20.00 kohm lies where it conforms (12.23 to 27.37 kohm)");
  EXPECT_EQ(c.value->text, "20.00 kohm +- 0.23 kohm") << "in the unit of the input";
  EXPECT_EQ(c.accept_to->text, "27.37 kohm");
  EXPECT_EQ(c.guard->text, "0.23 kohm");
  EXPECT_NE(judged(lead("29.00 kohm")).reason.find("(12.00 to 27.60 kohm)"), std::string::npos)
      << "limits as their document printed them";
}

TEST(Conformity, OverRangeSaysOnlyWhatTheRangeAllows) {
  auto in = lead(nullptr, "6.000 kohm");  // the range ends below the limit
  in.over_range = true;
  const auto c = judged(in);
  EXPECT_EQ(c.verdict, Verdict::undecided);
  EXPECT_EQ(c.do_next.front(), NextStep::use_higher_range);
  // Range not given: treated as open, but a higher range is asked for first.
  in.meter.reset();
  const auto u = judged(in);
  EXPECT_EQ(u.in_words, "does not conform (open)");
  EXPECT_EQ(u.do_next.front(), NextStep::use_higher_range);
  // Not a resistance: outside, but not "open".
  ConformityInput volts;
  volts.over_range = true;
  volts.upper = value("15 V");
  volts.meter = MeterRange{};
  volts.meter->full_scale = value("60.0 V");
  const auto v = judged(volts);
  EXPECT_EQ(v.in_words, "does not conform");
  EXPECT_FALSE(v.open);
}

TEST(Conformity, InsulationAboveALowerLimit) {
  ConformityInput in;
  in.over_range = true;
  in.lower = value("5 Mohm");
  EXPECT_EQ(judged(in).verdict, Verdict::undecided);  // end of range unknown
  in.meter = MeterRange{};
  in.meter->full_scale = value("60.00 Mohm");
  EXPECT_EQ(judged(in).verdict, Verdict::conforms);
  in.meter->full_scale = value("2.000 Mohm");
  EXPECT_EQ(judged(in).verdict, Verdict::undecided);
}

TEST(Conformity, TheLimitIsInclusiveInAnyUnit) {
  ConformityInput in;
  in.rule = Rule::simple;
  for (const char* reading : {"27.6 kohm", "27600 ohm", "0.0276 Mohm"}) {
    in.reading = value(reading);
    for (const char* limit : {"27.6 kohm", "27600 ohm", "0.0276 Mohm"}) {
      in.upper = value(limit);
      EXPECT_EQ(judged(in).verdict, Verdict::conforms) << reading << " against " << limit;
    }
  }
}

TEST(Conformity, AccuracyNotGivenIsSaid) {
  auto in = lead("20.00 kohm");
  in.meter.reset();
  const auto c = judged(in);
  EXPECT_FALSE(c.accuracy_known);
  EXPECT_NE(c.reason.find("true doubt is larger"), std::string::npos);
  EXPECT_TRUE(has(c.do_next, NextStep::give_the_accuracy));
}

TEST(Conformity, LeadsNotNulledMatterForSmallResistances) {
  ConformityInput in;
  in.reading = value("0.60 ohm");
  in.upper = value("0.50 ohm");
  in.meter = MeterRange{};
  in.meter->counts = 2;
  EXPECT_EQ(judged(in).do_next.front(), NextStep::null_the_leads);
  in.leads = TestLeads::four_wire;
  EXPECT_FALSE(has(judged(in).do_next, NextStep::null_the_leads));
}

TEST(Conformity, FiguresAndWorking) {
  const auto c = judged(lead("26.50 kohm"));
  EXPECT_EQ(c.limit_source, "entered by the owner");
  ASSERT_TRUE(c.probability_of_conformity && c.false_accept && c.allowance_used);
  EXPECT_GT(c.probability_of_conformity->si, 0.99);
  EXPECT_NEAR(c.allowance_used->si, (26.5 - 19.8) / 7.8, 1e-12);
  EXPECT_FALSE(c.false_reject.has_value());
  const auto has_line = [&](const std::string& part) {
    return std::any_of(c.working.begin(), c.working.end(),
                       [&](const std::string& l) { return l.find(part) != std::string::npos; });
  };
  EXPECT_TRUE(has_line("limit: 12.00 to 27.60 kohm (entered by the owner)"));
  EXPECT_TRUE(has_line("0.9 % of 26.5 + 2 x 0.01 kohm = +-0.2585"));
  EXPECT_TRUE(has_line("guard band w = 1 x "));
}

TEST(Conformity, ShareOfATemperatureMeansNothing) {
  ConformityInput in;
  in.reading = value("210 degF");
  in.upper = value("245 degF");
  EXPECT_FALSE(judged(in).allowance_used.has_value());
  in.lower = value("75 degC");
  EXPECT_TRUE(judged(in).allowance_used.has_value());
}

TEST(Conformity, LongRunRisksWhenSuchPartsAreKnown) {
  auto in = lead("20.00 kohm");
  in.such_parts = SuchParts{value("20 kohm"), value("3 kohm")};
  const auto c = judged(in);
  ASSERT_TRUE(c.consumer_risk && c.producer_risk);
  EXPECT_LT(c.consumer_risk->si, c.producer_risk->si);  // guarded: the doubt falls on the part
  in.such_parts->standard_deviation = value("0 kohm");
  EXPECT_EQ(problems(in).front().path, "such_parts");
}

TEST(Conformity, EveryErrorAtOnceWithItsPath) {
  auto in = lead("20.00 kohm");
  in.lower = value("12 V");
  in.upper = value("27 psi");
  const auto p = problems(in);
  ASSERT_EQ(p.size(), 2u);
  EXPECT_EQ(p[0].path, "lower");
  EXPECT_EQ(p[1].path, "upper");
  EXPECT_EQ(p[0].kind, Kind::wrong_dimension);
}

TEST(Conformity, Refusals) {
  EXPECT_EQ(problems({}).front().kind, Kind::missing);
  ConformityInput no_limit;
  no_limit.reading = value("20 kohm");
  EXPECT_EQ(problems(no_limit).front().path, "upper");
  auto both = lead("20.00 kohm");
  both.over_range = true;
  EXPECT_EQ(problems(both).front().path, "over_range");
  auto crossed = lead("20.00 kohm");
  std::swap(crossed.lower, crossed.upper);
  EXPECT_EQ(problems(crossed).front().kind, Kind::conflict);
  auto beyond = lead("70.00 kohm");
  EXPECT_EQ(problems(beyond).front().path, "reading");
  auto factor = lead("20.00 kohm");
  factor.guard_factor = -1;
  EXPECT_EQ(problems(factor).front().path, "guard_factor");
  auto chance = lead("20.00 kohm");
  chance.rule = Rule::probability;
  chance.probability = per_cent(20);
  EXPECT_EQ(problems(chance).front().path, "probability");
  auto repeats = lead("20.00 kohm");
  repeats.repeats = {value("20 V")};
  EXPECT_EQ(problems(repeats).front().path, "repeats/0");
}

}  // namespace
}  // namespace wm::evidence
