// Counters: judged in the order in which things happened, not in which they were typed in.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::refused;
using desk::test::says;

constexpr const char* k_1050 = R"("at":[{"counter":"engine","hours":"1050.0 h"}])";

TEST(Counters, DoNotRunBackwardsWithoutAnExchange) {
  auto bench = bird_bench();
  const auto problems =
      bench.act("read-counter", R"("at":[{"counter":"engine","hours":"990.0 h"}])");
  ASSERT_TRUE(refused(problems, Kind::conflict, "at/0/hours"));
  EXPECT_TRUE(says(problems[0].do_next + problems[0].what, "instrument was changed"));
}

TEST(Counters, AnOldReadingEnteredLateIsJudgedInItsPlace) {
  auto bench = bird_bench();
  bench.done("read-counter", k_1050);
  bench.day = "2026-06-01";
  EXPECT_TRUE(
      bench.act("read-counter", R"("at":[{"counter":"engine","hours":"1020.0 h"}])").empty());
  bench.day = "2026-03-01";
  EXPECT_TRUE(
      refused(bench.act("read-counter", R"("at":[{"counter":"engine","hours":"1030.0 h"}])"),
              Kind::conflict, "at/0/hours"))
      << "more than the 1020 h read three months later";
  EXPECT_NEAR(*bench.bird().engine_hours()->now(), 1050, 1e-9);
}

TEST(Counters, AnExchangedMeterGoesOnCounting) {
  auto bench = bird_bench();
  bench.done("read-counter", k_1050);
  bench.done("replace-counter", R"("counter":"engine","old_last_hours":"1052.0 h",)"
                                R"("new_first_hours":"0.0 h","reason":"display blank")");
  bench.done("read-counter", R"("at":[{"counter":"engine","hours":"10.0 h"}])");
  EXPECT_NEAR(*bench.bird().engine_hours()->now(), 1062, 1e-9);
}

TEST(Counters, AnExchangeSaysWhereTheNewOneStarts) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("replace-counter", R"("counter":"engine","reason":"blank")"),
                      Kind::missing, "new_first_hours"));
  EXPECT_TRUE(refused(bench.act("replace-counter", R"("counter":"starts","reason":"blank")"),
                      Kind::missing, "new_first_count"));
  EXPECT_TRUE(refused(bench.act("replace-counter", R"("counter":"engine","old_last_hours":"900 h",)"
                                                   R"("new_first_hours":"0 h","reason":"blank")"),
                      Kind::conflict, "old_last_hours"));
}

TEST(Counters, ALostLastReadingIsSaidToBeAtLeast) {
  auto bench = bird_bench();
  const auto said = bench.done("replace-counter",
                               R"("counter":"engine","new_first_hours":"0.0 h","reason":"blank")");
  ASSERT_EQ(said.notes.size(), 1U);
  EXPECT_TRUE(says(said.notes[0], "at least"));
}

TEST(Counters, HoursAndCountsAreNotMixed) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("read-counter", R"("at":[{"counter":"engine","count":1050}])"),
                      Kind::missing, "at/0/hours"));
  EXPECT_TRUE(refused(bench.act("read-counter", R"("at":[{"counter":"starts","hours":"900 h"}])"),
                      Kind::missing, "at/0/count"));
  EXPECT_TRUE(refused(bench.act("read-counter", R"("at":[{"counter":"landings","count":9}])"),
                      Kind::not_found, "at/0/counter"));
}

TEST(Counters, AQuickJobRestartsItsLimit) {
  auto bench = bird_bench();
  const auto said = bench.done(
      "quick-job", std::string(R"("what":"oil-change","limits":["oil-change"],)") + k_1050);
  EXPECT_EQ(said.id, "oil-change-2026-11-25");
  const auto& done = bench.bird().limits.at("oil-change").done;
  ASSERT_EQ(done.size(), 1U);
  EXPECT_NEAR(done[0].counters.at("engine"), 1050, 1e-9);
}

TEST(Counters, AQuickJobWithABackwardReadingIsNotHalfWritten) {
  auto bench = bird_bench();
  const auto before = bench.state.sequence;
  EXPECT_TRUE(refused(bench.act("quick-job", R"("what":"oil-change","limits":["oil-change"],)"
                                             R"("at":[{"counter":"engine","hours":"1 h"}])"),
                      Kind::conflict, "at/0/hours"));
  EXPECT_TRUE(refused(bench.act("task-done", R"("limit":"oil-change","text":"drained",)"
                                             R"("at":[{"counter":"engine","hours":"1 h"}])"),
                      Kind::conflict, "at/0/hours"));
  EXPECT_EQ(bench.state.sequence, before);
}

}  // namespace
