// Readings and their verdicts.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::refused;
using desk::test::says;

std::string reading(const std::string& check, const std::string& more) {
  return fmt::format(R"("check":"{}","instrument":"meter","range":"20 kohm","leads":"nulled",{})",
                     check, more);
}
bay::Verdict verdict(desk::test::Bench& bench, const std::string& more) {
  bench.done("measure", reading("lead-1", more));
  return bench.answer<desk::Judged>().verdict;
}

TEST(Measure, OneOfEachVerdict) {
  auto bench = bird_bench();
  EXPECT_EQ(verdict(bench, R"("value":"5.00 kohm")"), bay::Verdict::conforms);
  EXPECT_EQ(verdict(bench, R"("value":"9.00 kohm")"), bay::Verdict::does_not_conform);
  EXPECT_EQ(verdict(bench, R"("value":"8.00 kohm")"), bay::Verdict::undecided)
      << "at the limit, 1 % and two digits away from it";
  EXPECT_EQ(verdict(bench, R"("over_range":true)"), bay::Verdict::does_not_conform);
}

// The Measure page shows at once which lead of a harness is not like the others.
TEST(Measure, WhatStandsOutAmongItsSiblingsIsTold) {
  auto bench = bird_bench();
  for (const auto* id : {"lead-3", "lead-4"})
    bench.done("describe-check",
               fmt::format(R"("id":"{}","title":"{}","position":"left-magneto",)"
                           R"("kind":"lead-resistance","group":"left-harness","unit":"kohm",)"
                           R"("lowest":"3.0 kohm","highest":"8.0 kohm","document":"invented")",
                           id, id));
  const auto lines = [&] {
    const auto page = bench.view<desk::MeasurePage>("measure");
    for (const auto& group : page.groups)
      if (group.id == "left-harness") return group.checks;
    return std::vector<desk::CheckLine>{};
  };
  bench.done("measure", reading("lead-1", R"("value":"5.10 kohm")"));
  bench.done("measure", reading("lead-2", R"("value":"5.20 kohm")"));
  EXPECT_EQ(lines()[0].among, "") << "two are too few";
  bench.done("measure", reading("lead-3", R"("value":"5.15 kohm")"));
  bench.done("measure", reading("lead-4", R"("value":"7.60 kohm")"));
  const auto all = lines();
  ASSERT_EQ(all.size(), 4U);
  for (const auto& line : all) EXPECT_EQ(line.stands_out, line.id == "lead-4") << line.id;
  EXPECT_EQ(all[0].among, "like its siblings");
  EXPECT_TRUE(says(all[3].among, "higher than their middle"));
}

// A kind of check says what its readings cannot show and which calculation goes further.
TEST(Measure, AKindOfCheckSaysWhatItLeavesOpen) {
  auto bench = bird_bench();
  const auto described = [](const std::string& kind, const std::string& unit) {
    return fmt::format(
        R"("id":"{}","title":"{}","position":"left-magneto","kind":"{}","unit":"{}",)"
        R"("document":"invented")",
        kind, kind, kind, unit);
  };
  bench.done("describe-check", described("condenser", "uF"));
  bench.done("describe-check", described("magneto-timing", "deg"));
  bench.done("describe-check", described("compression", "psi"));
  bench.done("describe-check", described("contactor-contacts", "mV"));
  const auto page = bench.view<desk::MeasurePage>("measure");
  int seen = 0;
  for (const auto& group : page.groups)
    for (const auto& line : group.checks) {
      if (line.kind == "condenser") {
        ++seen;
        EXPECT_EQ(line.calculation, "condenser-check");
        EXPECT_TRUE(says(line.not_tested, "Leakage"));
      }
      if (line.kind == "magneto-timing") {
        ++seen;
        EXPECT_EQ(line.calculation, "points-timing");
      }
      if (line.kind == "lead-resistance")
        EXPECT_TRUE(says(line.not_tested, "Insulation: not tested"));
    }
  EXPECT_EQ(seen, 2);
  const auto problems = bench.act("describe-check", described("plug-gap", "kohm"));
  EXPECT_TRUE(refused(problems, Kind::wrong_dimension, "unit")) << "a gap is no resistance";
}

// Symptom: a lead read three times stood on the Measure page with its first figure.
TEST(Measure, ReadSeveralTimesTheMeanIsShown) {
  auto bench = bird_bench();
  bench.done("measure",
             reading("lead-1", R"("value":"5.00 kohm","repeats":["5.20 kohm","5.40 kohm"])"));
  const auto page = bench.view<desk::MeasurePage>("measure");
  bool seen = false;
  for (const auto& group : page.groups)
    for (const auto& line : group.checks) {
      if (line.id != "lead-1") continue;
      seen = true;
      EXPECT_EQ(line.last, "5.20 kohm");
      ASSERT_TRUE(line.last_number);
      EXPECT_NEAR(*line.last_number, 5.2, 1e-12);
    }
  EXPECT_TRUE(seen);
}

TEST(Measure, TheVerdictIsAFactBesideItsReading) {
  auto bench = bird_bench();
  bench.done("measure", reading("lead-1", R"("value":"5.00 kohm")"));
  const auto& last = *bench.bird().checks.at("lead-1").latest();
  ASSERT_TRUE(last.verdict);
  EXPECT_EQ(last.verdict->verdict, bay::Verdict::conforms);
  EXPECT_EQ(last.verdict->calculation, "conformity");
  EXPECT_TRUE(says(last.verdict->limit_source, "maker's sheet, invented"));
  EXPECT_EQ(bench.state.events.back()->meta.refers_to, last.event);
}

TEST(Measure, ALiveVerdictIsTheRecordedOne) {
  auto bench = bird_bench();
  const auto in = reading("lead-1", R"("value":"7.95 kohm")");
  const auto before = bench.state.sequence;
  const auto live = bench.view<desk::Judged>("judge-reading", in);
  EXPECT_EQ(bench.state.sequence, before);
  bench.done("measure", in);
  EXPECT_EQ(live.words, bench.answer<desk::Judged>().words);
  EXPECT_EQ(live.reason, bench.answer<desk::Judged>().reason);
}

// Symptom: a pressure where the check is a resistance was blamed on the limit.
TEST(Measure, AReadingOfAnotherKindIsBlamedAndNotTheLimit) {
  auto bench = bird_bench();
  auto problems = bench.act("measure", reading("lead-1", R"("value":"38 psi")"));
  ASSERT_EQ(problems.size(), 1U) << desk::test::told(problems);
  EXPECT_EQ(problems[0].path, "value");
  EXPECT_TRUE(says(problems[0].what, "`38 psi` is a gauge pressure, a resistance is needed"));
  problems = bench.act("measure", reading("lead-1", R"("value":"5.00 kohm","repeats":["2 in"])"));
  EXPECT_TRUE(refused(problems, Kind::wrong_dimension, "repeats/0"));
  bench.done("describe-check", R"("id":"oil-pressure","title":"Oil pressure","unit":"psi")");
  EXPECT_TRUE(refused(bench.act("measure", R"("check":"oil-pressure","value":"2 ohm")"),
                      Kind::wrong_dimension, "value"))
      << "where there is no limit, the unit says what is read";
}

TEST(Measure, ALeadTellsThatInsulationIsNotTested) {
  auto bench = bird_bench();
  bench.done("measure", reading("lead-1", R"("value":"5.00 kohm")"));
  EXPECT_TRUE(says(bench.answer<desk::Judged>().not_tested, "Insulation: not tested"));
}

TEST(Measure, WithoutALimitNothingIsJudged) {
  auto bench = bird_bench();
  bench.done("measure", R"("check":"looseness","value":"0.02 in")");
  EXPECT_EQ(bench.answer<desk::Judged>().verdict, bay::Verdict::not_tested);
  EXPECT_TRUE(says(bench.answer<desk::Judged>().reason, "not judged"));
}

TEST(Measure, SiblingsAndTheLastTimeAreShown) {
  auto bench = bird_bench();
  bench.done("measure", reading("lead-1", R"("value":"5.00 kohm")"));
  bench.done("measure", reading("lead-2", R"("value":"5.20 kohm")"));
  const auto& second = bench.answer<desk::Judged>();
  EXPECT_TRUE(says(second.siblings, "5.00 kohm"));
  bench.done("measure", reading("lead-2", R"("value":"5.30 kohm")"));
  EXPECT_TRUE(says(bench.answer<desk::Judged>().last_time, "5.20 kohm"));
}

TEST(Measure, AReadingIsAValueOrOverRange) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("measure", R"("check":"lead-1")"), Kind::missing, "value"));
  EXPECT_TRUE(
      refused(bench.act("measure", reading("lead-1", R"("value":"5 kohm","over_range":true)")),
              Kind::conflict, "value"));
  EXPECT_FALSE(bench.act("measure", reading("lead-1", R"("value":"5 psi")")).empty())
      << "a pressure is no resistance";
}

TEST(Measure, ABadInstrumentListsWhatWasReadWithIt) {
  auto bench = bird_bench();
  bench.done("measure", reading("lead-1", R"("value":"5.00 kohm")"));
  bench.done("measure", R"("check":"lead-2","value":"5.00 kohm +- 0.05 kohm")");
  const auto said =
      bench.done("instrument-found-bad", R"("instrument":"meter","why":"reads 8 % low")");
  ASSERT_EQ(said.notes.size(), 1U) << "the other reading was not taken with it";
  EXPECT_TRUE(says(said.notes[0], "Left lead 1"));
  bench.done("measure", reading("lead-1", R"("value":"5.00 kohm")"));
  EXPECT_TRUE(says(bench.answer<desk::Judged>().next, "found bad"));
}

TEST(Measure, ADropIsJudgedByItsSizeWhicheverWayTheProbesWere) {
  auto bench = bird_bench();
  bench.done("describe-check",
             R"("id":"drop","title":"Drop over the contactor","unit":"V",)"
             R"("position":"mounts","kind":"contactor-contacts","highest":"0.30 V",)"
             R"("document":"sheet, invented")");
  bench.done("measure", R"("check":"drop","value":"-0.45 V +- 0.01 V")");
  EXPECT_EQ(bench.answer<desk::Judged>().verdict, bay::Verdict::does_not_conform);
  EXPECT_TRUE(says(bench.answer<desk::Judged>().reason, "the other way round"));
  bench.done("measure", R"("check":"drop","value":"-0.11 V +- 0.01 V")");
  EXPECT_EQ(bench.answer<desk::Judged>().verdict, bay::Verdict::conforms);
}

TEST(Measure, AResistanceBelowNoughtIsRefused) {
  auto bench = bird_bench();
  bench.done("describe-check",
             R"("id":"bond","title":"Bond","unit":"mohm","position":"mounts",)"
             R"("kind":"bond","highest":"2.5 mohm","document":"sheet, invented")");
  EXPECT_TRUE(refused(bench.act("measure", R"("check":"bond","value":"-3.0 mohm +- 0.1 mohm")"),
                      Kind::out_of_bounds, "value"));
  EXPECT_TRUE(bench.act("measure", R"("check":"bond","value":"-0.1 mohm +- 0.2 mohm")").empty())
      << "a few digits below nought are the meter's";
}

TEST(Measure, WhatCranksSaysFirstWhatMustBeSo) {
  auto bench = bird_bench();
  bench.done("describe-check", R"("id":"volts","title":"Volts while cranking","unit":"V",)"
                               R"("position":"mounts","kind":"voltage","lowest":"9 V",)"
                               R"("document":"sheet, invented")");
  bench.done("describe-check", R"("id":"strap","title":"Strap","unit":"V","position":"mounts",)"
                               R"("probes":"crankcase and firewall","kind":"voltage-drop")");
  const auto page = bench.view<desk::MeasurePage>("measure");
  for (const auto& group : page.groups)
    for (const auto& check : group.checks)
      EXPECT_EQ(check.caution.starts_with("Cranking test: fuel off"), check.id == "volts")
          << check.id;
}

}  // namespace
