// Entries: drafted with all their content, signed by a person, never judged by us.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;

// 14 CFR 43.9(a): (1) description of the work or reference to data, (2) date of completion,
// (3) name of the person doing it, (4) signature and certificate number of who approves it.
TEST(Entries, TheDraftHoldsWhatAnEntryMustContain) {
  auto bench = bird_bench();
  bench.ready_to_open();
  const auto draft = bench.view<desk::Draft>("entry-draft", R"("about":"one")");
  EXPECT_TRUE(draft.missing.empty());
  EXPECT_TRUE(says(draft.text, "new hose fitted"));
  EXPECT_TRUE(says(draft.text, "Data used: manual, invented"));
  EXPECT_TRUE(says(draft.text, "Date completed: 2026-11-25"));
  EXPECT_TRUE(says(draft.text, "Done by anna"));
  EXPECT_TRUE(says(draft.text, "Q-BRD Bird, serial 007"));
  EXPECT_TRUE(says(draft.text, "Engine hours: 1000.0 h"));
  EXPECT_TRUE(says(draft.text, "torque 245 in-lb"));
  EXPECT_TRUE(says(draft.text, "Mass and balance: empty mass 1000 lb"));
  EXPECT_TRUE(says(draft.text, "Check flight due"));
  ASSERT_TRUE(bench
                  .act("open-stage", R"("stage":"one","name":"Anna Example","signer":"repairman",)"
                                     R"("certificate":"R-1, invented")")
                  .empty());
  const auto& entry = bench.bird().entries.begin()->second;
  EXPECT_EQ(entry.about.text, draft.text) << "an empty text signs the draft";
  EXPECT_EQ(entry.about.name, "Anna Example");
  EXPECT_EQ(entry.about.certificate, "R-1, invented");
  EXPECT_FALSE(entry.about.covers.empty());
}

TEST(Entries, TheDraftNeverJudgesTheAircraft) {
  auto bench = bird_bench();
  bench.ready_to_open();
  for (const auto* purpose : {"opens-stage", "closes-stage"}) {
    const auto wanted = fmt::format(R"("about":"one","purpose":"{}")", purpose);
    const auto text = bench.view<desk::Draft>("entry-draft", wanted).text;
    for (const auto* word : {"airworthy", "safe", "legal"})
      EXPECT_EQ(text.find(word), std::string::npos) << word << " in: " << text;
  }
}

TEST(Entries, AQuickJobHasADraftToo) {
  auto bench = bird_bench();
  bench.done("quick-job", R"("id":"oil","what":"oil-change","quantity":"6 qt","by":"anna",)"
                          R"("text":"drained warm, filter renewed")");
  const auto draft = bench.view<desk::Draft>("entry-draft", R"("about":"oil")");
  EXPECT_TRUE(says(draft.text, "drained warm, filter renewed"));
  EXPECT_TRUE(says(draft.text, "6 qt"));
}

TEST(Entries, AStageIsSignedByItsOwnAct) {
  auto bench = bird_bench();
  EXPECT_TRUE(
      refused(bench.act("sign-entry", R"("text":"x","name":"Anna Example","signer":"owner",)"
                                      R"("purpose":"opens-stage")"),
              Kind::refused, "purpose"));
}

TEST(Entries, AnInspectionNeedsACertificateAndTheTotalTime) {
  desk::test::Bench bench;
  bench.done("describe-aircraft", R"("id":"bird","name":"Bird","registration":"Q-BRD")");
  const auto problems =
      bench.act("sign-entry", R"("text":"inspected","name":"Anna Example","signer":"owner",)"
                              R"("purpose":"condition-inspection")");
  EXPECT_TRUE(refused(problems, Kind::missing, "certificate"));
  EXPECT_TRUE(refused(problems, Kind::missing, "text"));
}

TEST(Entries, WithoutACertificateTheEntryStandsAndSaysSo) {
  auto bench = bird_bench();
  const auto said =
      bench.done("sign-entry", R"("text":"oil changed","name":"Anna Example","signer":"owner")");
  EXPECT_TRUE(says(joined(said.notes), "No certificate number"));
}

}  // namespace
