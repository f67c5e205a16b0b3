// Renew, watch or leave: what leans where, what the record keeps, what is refused.
// Shares and days are ours (docs/decisions/0019); the bound on lives is checked against its closed
// form: nobody failed in T hours, so R(t) >= (1 - C)^(t / T) for a constant rate (statistics notes
// 2.3, from memory: any textbook on zero-failure tests).
#include <cmath>

#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using bay::PartDecision;
using desk::test::Bench;
using desk::test::bird_bench;
using desk::test::refused;
using desk::test::says;

desk::PartEvidence evidence(Bench& bench, const std::string& position) {
  return bench.view<desk::PartEvidence>("part-evidence",
                                        fmt::format(R"("position":"{}")", position));
}
bool has_line(const desk::PartEvidence& part, std::string_view topic, std::string_view words) {
  return std::ranges::any_of(part.lines, [&](const auto& line) {
    return line.topic == topic && line.words.find(words) != std::string::npos;
  });
}
void limit(Bench& bench, const std::string& more) {
  bench.done("set-limit",
             fmt::format(R"("id":"years","title":"Years of the hose","position":"oil-hose",)"
                         R"("start":"fitted",{})",
                         more));
}

TEST(Decide, NothingAskedForLeansToLeaving) {
  auto bench = bird_bench();
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.part, "hose-1");
  EXPECT_EQ(part.leans, PartDecision::leave);
  EXPECT_EQ(part.because, "nothing on record asks for more");
  EXPECT_TRUE(part.grave) << "oil";
  EXPECT_TRUE(has_line(part, "age", "fitted 2021-03-01"));
  EXPECT_TRUE(has_line(part, "consequence", "oil on the exhaust"));
}

TEST(Decide, APastLimitThatBindsLeansToRenewing) {
  auto bench = bird_bench();
  limit(bench, R"("every_months":60,"authority":"maker-mandatory","document":"sheet, invented")");
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.leans, PartDecision::renew);
  EXPECT_TRUE(says(part.because, "Years of the hose"));
  EXPECT_TRUE(says(part.because, "past a limit that binds"));
}

TEST(Decide, APastLimitThatDoesNotBindLeansToWatching) {
  auto bench = bird_bench();
  limit(bench, R"("every_months":60)");
  EXPECT_EQ(evidence(bench, "oil-hose").leans, PartDecision::watch);
}

TEST(Decide, WhatItsMakerRecommendsCountsWhereTheFailureIsGrave) {
  auto bench = bird_bench();
  limit(bench, R"("every_months":60,"authority":"maker-recommended","document":"sheet, invented")");
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.leans, PartDecision::renew);
  EXPECT_TRUE(says(part.because, "nothing stands in for it"));
}

TEST(Decide, ATaskThatIsPastAsksToBeDone) {
  auto bench = bird_bench();
  bench.done("set-limit", R"("id":"look","title":"Look for cracks","position":"oil-hose",)"
                          R"("since":"2020-01-01","every_months":12,"authority":"maker-mandatory",)"
                          R"("document":"sheet, invented")");
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.leans, PartDecision::watch);
  EXPECT_TRUE(says(part.because, "do what it asks")) << part.because;
}

// 57 months of 72 are 79 %: over the three quarters of a grave part without a stand-in.
TEST(Decide, AGravePartWithoutAStandInIsWatchedEarlier) {
  auto bench = bird_bench();
  limit(bench, R"("every_months":72)");
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.leans, PartDecision::watch);
  EXPECT_TRUE(says(part.because, "% used")) << part.because;
  bench.day = "2025-03-01";  // 48 of 72 months
  EXPECT_EQ(evidence(bench, "oil-hose").leans, PartDecision::leave);
}

TEST(Decide, AReadingThatDoesNotConformLeansToRenewing) {
  auto bench = bird_bench();
  bench.done("register-part", R"("id":"harness","type":"harness")");
  bench.done("install-part", R"("part":"harness","position":"left-magneto")");
  EXPECT_EQ(evidence(bench, "left-magneto").leans, PartDecision::watch) << "never read";
  for (const auto* check : {"lead-1", "lead-2"})
    ASSERT_TRUE(bench
                    .act("measure", fmt::format(R"("check":"{}","value":"5.5 kohm",)"
                                                R"("instrument":"meter","range":"20 kohm")",
                                                check))
                    .empty());
  EXPECT_EQ(evidence(bench, "left-magneto").leans, PartDecision::leave);
  ASSERT_TRUE(bench
                  .act("measure", R"("check":"lead-1","value":"12 kohm","instrument":"meter",)"
                                  R"("range":"20 kohm")")
                  .empty());
  const auto part = evidence(bench, "left-magneto");
  EXPECT_EQ(part.leans, PartDecision::renew);
  EXPECT_TRUE(says(part.because, "Left lead 1: 12"));
  EXPECT_TRUE(has_line(part, "consequence", "Right magneto can do its work"));
}

TEST(Decide, AnOpenDefectLeansToWatching) {
  auto bench = bird_bench();
  bench.done("note-defect", R"("text":"oil film on the hose","position":"oil-hose")");
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.leans, PartDecision::watch);
  EXPECT_TRUE(says(part.because, "oil film on the hose"));
}

TEST(Decide, HoursOfItsTypeGiveABoundOnTheNextHundred) {
  auto bench = bird_bench();
  bench.done("register-part", R"("id":"hose-3","type":"hose")");
  bench.done(
      "install-part",
      R"("part":"hose-3","position":"fuel-hose","at":[{"counter":"engine","hours":"1000 h"}])");
  bench.day = "2026-12-24";
  bench.done("read-counter", R"("at":[{"counter":"engine","hours":"1250 h"}])");
  const double least = 100.0 * std::pow(0.1, 100.0 / 250.0);  // 39.8 %
  const auto part = evidence(bench, "fuel-hose");
  EXPECT_TRUE(has_line(part, "service", fmt::format("at least {:.0f} %", least)));
  EXPECT_TRUE(has_line(part, "service", "none taken out"));
}

TEST(Decide, TheDecisionIsKeptWithTheEvidenceAsItStood) {
  auto bench = bird_bench();
  limit(bench, R"("every_months":60,"authority":"maker-mandatory","document":"sheet, invented")");
  const auto said = bench.done("decide-part",
                               R"("position":"oil-hose","decision":"leave","reason":"not flying")");
  EXPECT_TRUE(says(desk::test::joined(said.notes), "The record leans to renewing it"));
  const auto& kept = bench.bird().decisions.at("oil-hose").back().about;
  EXPECT_EQ(kept.part, "hose-1");
  EXPECT_TRUE(says(desk::test::joined(kept.evidence), "limit: Years of the hose"));
  EXPECT_TRUE(
      says(desk::in_words(bench.state.events.back()->payload), "Decided for oil-hose: leave"));
  const auto part = evidence(bench, "oil-hose");
  EXPECT_EQ(part.decided, "leave");
  EXPECT_EQ(part.decided_why, "not flying");
}

TEST(Decide, WhatIsWatchedIsCalledUpOnItsDay) {
  auto bench = bird_bench();
  const auto said = bench.done(
      "decide-part", R"("position":"oil-hose","decision":"watch","reason":"sweats at the collar")");
  EXPECT_TRUE(says(desk::test::joined(said.notes), "Watched without a day"));
  bench.done("decide-part", R"("position":"oil-hose","decision":"watch","reason":"sweats",)"
                            R"("look_again":"2027-02-01")");
  EXPECT_FALSE(evidence(bench, "oil-hose").look_again_due);
  bench.day = "2027-02-01";
  const auto part = evidence(bench, "oil-hose");
  EXPECT_TRUE(part.look_again_due);
  EXPECT_EQ(part.leans, PartDecision::watch);
}

TEST(Decide, ADecisionIsAboutThePartThatWasThere) {
  auto bench = bird_bench();
  bench.done("decide-part", R"("position":"oil-hose","decision":"renew","reason":"old")");
  bench.done("remove-part", R"("part":"hose-1","reason":"renewed")");
  bench.done("install-part", R"("part":"hose-2","position":"oil-hose")");
  EXPECT_EQ(evidence(bench, "oil-hose").decided, "");
}

TEST(Decide, RefusesAnEmptyPlaceAndADayThatIsPast) {
  auto bench = bird_bench();
  EXPECT_TRUE(
      refused(bench.act("decide-part", R"("position":"fuel-hose","decision":"leave","reason":"x")"),
              Kind::missing, "position"));
  EXPECT_TRUE(refused(bench.act("decide-part", R"("position":"oil-hose","decision":"watch",)"
                                               R"("reason":"x","look_again":"2026-01-01")"),
                      Kind::out_of_bounds, "look_again"));
  EXPECT_FALSE(bench.bird().decisions.contains("oil-hose"));
}

TEST(Decide, ThePageHasWhatAsksMostFirst) {
  auto bench = bird_bench();
  bench.done("register-part", R"("id":"cable","type":"cable")");
  bench.done("install-part", R"("part":"cable","position":"throttle")");
  bench.done("set-limit", R"("id":"cable-years","title":"Cable","position":"throttle",)"
                          R"("start":"fitted","since":"2020-01-01","every_months":12,)"
                          R"("authority":"maker-mandatory","document":"sheet, invented")");
  const auto page = bench.view<desk::DecidePage>("decide");
  ASSERT_EQ(page.parts.size(), 2U);
  EXPECT_EQ(page.renew + page.watch + page.leave, 2);
  for (std::size_t i = 1; i < page.parts.size(); ++i)
    EXPECT_LE(page.parts[i - 1].leans, page.parts[i].leans);
}

}  // namespace
