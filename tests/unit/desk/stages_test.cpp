// A stage: planned, proved, signed open, flown, looked at again, signed closed; or held.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;
using desk::test::told;

std::vector<std::string> places(const std::vector<desk::Missing>& missing) {
  std::vector<std::string> out;
  for (const auto& m : missing) {
    if (out.empty() || out.back() != m.where) out.push_back(m.where);
  }
  return out;
}
const bay::Stage& one(const desk::test::Bench& bench) { return bench.bird().stages.at("one"); }

TEST(Stages, WhatIsMissingComesInTheOrderOfTheWork) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose", "renewed", R"("joints":["oil-nut"])");
  bench.plan("left", "left-magneto");
  bench.plan("right", "right-magneto");
  bench.stage("one", R"("hose","left","right")");
  bench.joint("oil-nut", "open");
  bench.done("count-bung", R"("id":"red cap 3")");
  bench.done("note-defect",
             R"("text":"smell of fuel","decision":"ground","reason":"not found yet")");
  EXPECT_EQ(
      places(desk::missing_to_open(bench.bird(), one(bench))),
      (std::vector<std::string>{"rules", "changes", "joints", "bungs", "mass", "leak-run-static",
                                "leak-run-engine", "ground-run", "defects", "cowl"}));
  EXPECT_EQ(bench.sign("open-stage", "one").size(),
            desk::missing_to_open(bench.bird(), one(bench)).size())
      << "signing is refused with all of them";
}

TEST(Stages, TheWholeWay) {
  auto bench = bird_bench();
  bench.ready_to_open();
  EXPECT_TRUE(desk::missing_to_open(bench.bird(), one(bench)).empty());
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  EXPECT_EQ(one(bench).state, bay::StageState::open);
  EXPECT_FALSE(bench.sign("close-stage", "one").empty()) << "not flown yet";
  bench.step("one", "check-flight");
  bench.step("one", "second-look");
  const auto problems = bench.sign("close-stage", "one");
  ASSERT_TRUE(problems.empty()) << told(problems);
  EXPECT_EQ(one(bench).state, bay::StageState::closed);
  EXPECT_EQ(one(bench).entries.size(), 2U);
  EXPECT_TRUE(bench.state.oddities.empty());
}

TEST(Stages, NoCheckFlightBeforeTheStageIsSignedOpen) {
  auto bench = bird_bench();
  bench.ready_to_open();
  EXPECT_TRUE(refused(bench.act("stage-step", R"("stage":"one","step":"check-flight",)"
                                              R"("result":"satisfactory")"),
                      Kind::refused, "step"));
}

// Symptom: a second look was accepted before the stage was open.
TEST(Stages, TheSecondLookComesAfterTheCheckFlight) {
  auto bench = bird_bench();
  bench.ready_to_open();
  const auto look = [&] {
    return bench.act("stage-step", R"("stage":"one","step":"second-look","result":"satisfactory")");
  };
  auto problems = look();
  ASSERT_TRUE(refused(problems, Kind::refused, "step"));
  EXPECT_TRUE(says(problems[0].do_next, "Sign the stage open"));
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  problems = look();
  ASSERT_TRUE(refused(problems, Kind::refused, "step"));
  EXPECT_TRUE(says(problems[0].do_next, "check flight first"));
  bench.step("one", "check-flight");
  EXPECT_TRUE(look().empty());
}

// Symptom: a held stage could be signed open without anybody resuming it.
TEST(Stages, AHeldStageIsResumedBeforeItIsSigned) {
  auto bench = bird_bench();
  bench.ready_to_open();
  bench.done("hold-stage", R"("stage":"one","reason":"waiting for the part")");
  const auto problems = bench.sign("open-stage", "one");
  ASSERT_EQ(problems.size(), 1U) << told(problems);
  EXPECT_TRUE(says(problems[0].what, "held: waiting for the part"));
  EXPECT_TRUE(says(problems[0].what, "resume-stage"));
  bench.done("resume-stage", R"("stage":"one","reason":"part is here")");
  EXPECT_TRUE(bench.sign("open-stage", "one").empty());
}

TEST(Stages, AHeldGroundOnlyStageIsResumedBeforeItIsSigned) {
  auto bench = bird_bench();
  bench.plan("play", "throttle", "adjusted");
  bench.stage("one", R"("play")", R"("ground_only":true)");
  EXPECT_TRUE(refused(bench.act("stage-step", R"("stage":"one","step":"second-look",)"
                                              R"("result":"satisfactory")"),
                      Kind::refused, "step"))
      << "the look comes after the run";
  bench.done("change-done", R"("change":"play","text":"play taken up","by":"anna")");
  bench.step("one", "ground-run");
  bench.step("one", "second-look");
  bench.done("hold-stage", R"("stage":"one","reason":"play is back")");
  EXPECT_TRUE(says(told(bench.sign("close-stage", "one")), "resume-stage"));
}

TEST(Stages, NothingIsProvedOverALooseJoint) {
  auto bench = bird_bench();
  bench.ready_to_open();
  bench.joint("oil-nut", "open");
  for (const auto* run : {"leak-run-static", "leak-run-engine", "ground-run"}) {
    const auto problems =
        bench.act("stage-step", fmt::format(R"("stage":"one","step":"{}","result":"satisfactory",)"
                                            R"("ambient_temperature":"41 degF",)"
                                            R"("ambient_pressure":"29.92 inHg")",
                                            run));
    ASSERT_TRUE(refused(problems, Kind::refused, "step"));
    EXPECT_TRUE(says(problems[0].what, "Oil hose at the engine"));
  }
  EXPECT_TRUE(bench
                  .act("stage-step", R"("stage":"one","step":"leak-run-static","text":"a drip",)"
                                     R"("result":"unsatisfactory")")
                  .empty())
      << "what was seen wrong is always written down";
}

TEST(Stages, WorkAfterTheSignatureKeepsItOnTheGround) {
  auto bench = bird_bench();
  bench.ready_to_open();
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  bench.joint("oil-nut", "open");
  const auto flight = [&] {
    return bench.act("stage-step",
                     R"("stage":"one","step":"check-flight","result":"satisfactory")");
  };
  EXPECT_TRUE(says(told(flight()), "Oil hose at the engine"));
  EXPECT_TRUE(says(told(flight()), "cowl"));
  bench.oil_nut_closed();
  bench.done("move-cowl", R"("closed":true)");
  EXPECT_TRUE(says(told(flight()), "after it was signed open"));
}

TEST(Stages, AnUnsatisfactoryFlightHoldsTheStageUntilItIsProvedAgain) {
  auto bench = bird_bench();
  bench.ready_to_open();
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  EXPECT_TRUE(refused(bench.act("stage-step", R"("stage":"one","step":"check-flight",)"
                                              R"("result":"unsatisfactory")"),
                      Kind::missing, "text"))
      << "what was wrong must be said";
  bench.done("stage-step", R"("stage":"one","step":"check-flight","result":"unsatisfactory",)"
                           R"("text":"oil pressure fell")");
  EXPECT_EQ(one(bench).state, bay::StageState::held);
  EXPECT_TRUE(says(one(bench).reason, "oil pressure fell"));
  EXPECT_FALSE(bench.sign("open-stage", "one").empty()) << "the runs from before do not count";
  bench.done("resume-stage", R"("stage":"one","reason":"found")");
  bench.done("move-cowl", R"("closed":false)");
  for (const auto* run : {"leak-run-static", "leak-run-engine", "ground-run"})
    bench.step("one", run);
  bench.done("move-cowl", R"("closed":true)");
  const auto problems = bench.sign("open-stage", "one");
  EXPECT_TRUE(problems.empty()) << told(problems);
  EXPECT_FALSE(bench.sign("close-stage", "one").empty()) << "the bad flight is still the last one";
}

TEST(Stages, MoreWorkAsksForANewLeakRun) {
  auto bench = bird_bench();
  bench.ready_to_open();
  bench.joint("oil-nut", "open");
  bench.oil_nut_closed();
  bench.done("move-cowl", R"("closed":true)");
  EXPECT_EQ(places(desk::missing_to_open(bench.bird(), one(bench))),
            (std::vector<std::string>{"leak-run-static", "leak-run-engine", "ground-run"}));
}

TEST(Stages, LookingOnceMoreIsNoWork) {
  auto bench = bird_bench();
  bench.ready_to_open();
  bench.joint("oil-nut", "seen");
  EXPECT_TRUE(desk::missing_to_open(bench.bird(), one(bench)).empty());
}

TEST(Stages, TheLeakRunIsMadeUncowled) {
  auto bench = bird_bench();
  bench.ready_to_open();
  EXPECT_TRUE(refused(bench.act("stage-step", R"("stage":"one","step":"leak-run-engine",)"
                                              R"("result":"satisfactory")"),
                      Kind::refused, "step"));
}

TEST(Stages, AGroundRunHasItsAir) {
  auto bench = bird_bench();
  bench.plan("look", "mounts", "looked-at");
  bench.stage("one", R"("look")");
  const auto problems =
      bench.act("stage-step", R"("stage":"one","step":"ground-run","result":"satisfactory")");
  EXPECT_TRUE(refused(problems, Kind::missing, "ambient_temperature"));
  EXPECT_TRUE(refused(problems, Kind::missing, "ambient_pressure"));
}

TEST(Stages, AGroundOnlyStageEndsAfterItsRun) {
  auto bench = bird_bench();
  bench.plan("play", "throttle", "adjusted");
  bench.stage("one", R"("play")", R"("ground_only":true)");
  bench.done("change-done", R"("change":"play","text":"play taken up","by":"anna")");
  bench.step("one", "ground-run");
  EXPECT_TRUE(refused(bench.sign("open-stage", "one"), Kind::conflict, "stage"));
  EXPECT_TRUE(refused(bench.act("stage-step", R"("stage":"one","step":"check-flight",)"
                                              R"("result":"satisfactory")"),
                      Kind::conflict, "step"));
  EXPECT_FALSE(bench.sign("close-stage", "one").empty()) << "a second look is missing";
  bench.step("one", "second-look");
  const auto problems = bench.sign("close-stage", "one");
  EXPECT_TRUE(problems.empty()) << told(problems);
}

TEST(Stages, ASignedStageKeepsItsChanges) {
  auto bench = bird_bench();
  bench.ready_to_open();
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  EXPECT_TRUE(refused(bench.act("plan-stage", R"("id":"one","title":"one","changes":["hose"])"),
                      Kind::refused, "id"));
  EXPECT_TRUE(refused(bench.act("plan-stage", R"("id":"two","title":"two","changes":["hose"])"),
                      Kind::conflict, "changes/0"));
  EXPECT_TRUE(
      refused(bench.act("plan-change", R"("id":"hose","title":"hose","position":"oil-hose",)"
                                       R"("grade":"adjusted")"),
              Kind::refused, "id"));
  EXPECT_TRUE(refused(bench.act("withdraw-change", R"("change":"hose","reason":"later")"),
                      Kind::conflict, "change"));
  EXPECT_TRUE(refused(bench.sign("open-stage", "one"), Kind::conflict, "stage"));
}

TEST(Stages, AChangeSitsInOneStage) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  bench.plan("left", "left-magneto");
  bench.stage("one", R"("hose","left")");
  const auto said = bench.stage("two", R"("left")");
  EXPECT_TRUE(says(joined(said.notes), "one")) << "it says where the change was taken from";
  EXPECT_EQ(one(bench).about.changes, std::vector<std::string>{"hose"});
  EXPECT_EQ(bench.bird().changes.at("left").stage, "two");
}

TEST(Stages, TwiceTheSameChangeIsRefused) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  EXPECT_TRUE(refused(bench.act("plan-stage", R"("title":"one","changes":["hose","hose"])"),
                      Kind::duplicate, "changes/1"));
}

TEST(Stages, AWithdrawnChangeIsNotPlanned) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  bench.done("withdraw-change", R"("change":"hose","reason":"later")");
  EXPECT_TRUE(refused(bench.act("plan-stage", R"("title":"one","changes":["hose"])"),
                      Kind::conflict, "changes/0"));
  EXPECT_TRUE(refused(bench.act("change-done", R"("change":"hose","text":"done")"), Kind::conflict,
                      "change"));
}

TEST(Stages, AnObjectionIsSettledOnlyByWhatItAccepts) {
  auto bench = bird_bench();
  bench.plan("left", "left-magneto");
  bench.plan("right", "right-magneto");
  const auto said = bench.stage("one", R"("left","right")");
  EXPECT_TRUE(says(joined(said.notes), "pair-renewed"));
  const auto answer = [&](const char* rule, const char* how) {
    return bench.act("answer-objection",
                     fmt::format(R"("stage":"one","rule":"{}","answer":"{}","by":"ben",)"
                                 R"("text":"looked at both")",
                                 rule, how));
  };
  EXPECT_TRUE(refused(answer("order", "override-in-writing"), Kind::not_found, "rule"));
  EXPECT_TRUE(refused(answer("pair-renewed", "separate-proof"), Kind::refused, "answer"));
  EXPECT_TRUE(answer("pair-renewed", "independent-inspection").empty());
  const auto raised = desk::objections(bench.bird(), one(bench));
  ASSERT_EQ(raised.size(), 1U);
  EXPECT_TRUE(raised[0].settled);
  EXPECT_TRUE(says(raised[0].settled_by, "ben"));
}

TEST(Stages, NobodyInspectsTheirOwnWorkIndependently) {
  auto bench = bird_bench();
  bench.plan("left", "left-magneto");
  bench.plan("right", "right-magneto");
  bench.stage("one", R"("left","right")");
  bench.done("change-done", R"("change":"left","text":"fitted","by":"anna")");
  EXPECT_TRUE(refused(bench.act("answer-objection",
                                R"("stage":"one","rule":"pair-renewed","by":"anna","text":"both",)"
                                R"("answer":"independent-inspection")"),
                      Kind::refused, "by"));
}

TEST(Stages, AnAnswerDoesNotCoverChangesPlannedLater) {
  auto bench = bird_bench();
  bench.plan("left", "left-magneto");
  bench.plan("right", "right-magneto");
  bench.plan("other", "left-magneto", "redesigned");
  bench.stage("one", R"("left","right")");
  bench.done("answer-objection", R"("stage":"one","rule":"pair-renewed","by":"ben","text":"both",)"
                                 R"("answer":"independent-inspection")");
  bench.stage("one", R"("left","right","other")");
  for (const auto& o : desk::objections(bench.bird(), one(bench))) EXPECT_FALSE(o.settled);
}

TEST(Stages, HeldAndResumed) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  bench.stage("one", R"("hose")");
  EXPECT_TRUE(refused(bench.act("resume-stage", R"("stage":"one","reason":"go on")"),
                      Kind::conflict, "stage"));
  bench.done("hold-stage", R"("stage":"one","reason":"waiting for the part")");
  EXPECT_TRUE(refused(bench.act("hold-stage", R"("stage":"one","reason":"again")"), Kind::conflict,
                      "stage"));
  bench.done("resume-stage", R"("stage":"one","reason":"part is here")");
  EXPECT_EQ(one(bench).state, bay::StageState::planned);
}

TEST(Stages, ChangesArePlannedWithSense) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  EXPECT_TRUE(
      refused(bench.act("plan-change", R"("id":"hose","title":"hose","position":"oil-hose",)"
                                       R"("grade":"renewed","after":["hose"])"),
              Kind::conflict, "after/0"));
  EXPECT_TRUE(refused(bench.act("plan-change", R"("title":"x","position":"oil-hose",)"
                                               R"("grade":"renewed","mass_in":"1 lb")"),
                      Kind::missing, "arm"));
}

}  // namespace
