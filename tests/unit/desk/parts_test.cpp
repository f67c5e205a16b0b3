// Parts: registered once, in one place at a time, never from the future.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::refused;
using desk::test::says;
using desk::test::told;

TEST(Parts, ASerialNumberIsTakenOnce) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("register-part", R"("id":"hose-9","type":"hose","serial":"S-1")"),
                      Kind::duplicate, "serial"));
  EXPECT_TRUE(bench.act("register-part", R"("id":"clamp-9","type":"clamp","serial":"S-1")").empty())
      << "another type may carry the same number";
  EXPECT_TRUE(
      refused(bench.act("register-part", R"("id":"hose-1","type":"hose")"), Kind::duplicate, "id"));
}

TEST(Parts, DatesMustFitEachOtherAndToday) {
  auto bench = bird_bench();
  const auto problems =
      bench.act("register-part",
                R"("id":"hose-9","type":"hose","cured":"2030-01-01","assembled":"2020-01-01")");
  EXPECT_TRUE(refused(problems, Kind::conflict, "assembled"));
  EXPECT_TRUE(refused(problems, Kind::out_of_bounds, "cured"));
  EXPECT_TRUE(
      refused(bench.act("register-part", R"("id":"hose-9","type":"hose","cured":"2021-02-30")"),
              Kind::out_of_bounds, "cured"));
}

TEST(Parts, TwoPartsDoNotShareAPosition) {
  auto bench = bird_bench();
  const auto problems = bench.act("install-part", R"("part":"hose-2","position":"oil-hose")");
  ASSERT_TRUE(refused(problems, Kind::conflict, "position"));
  EXPECT_TRUE(says(problems[0].what, "hose-1"));
  EXPECT_TRUE(says(problems[0].what, "2021-03-01")) << "it says since when";
}

TEST(Parts, OnePartIsNotInTwoPlaces) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("install-part", R"("part":"hose-1","position":"fuel-hose")"),
                      Kind::conflict, "position"));
}

TEST(Parts, TheOldOneGoesOutBeforeTheNewOneGoesIn) {
  auto bench = bird_bench();
  bench.done("remove-part", R"("part":"hose-1","reason":"five years old")");
  bench.done("install-part", R"("part":"hose-2","position":"oil-hose")");
  EXPECT_EQ(bench.bird().fitted.at("oil-hose"), "hose-2");
  EXPECT_EQ(bench.state.parts.at("hose-1").installations.at(0).why_removed, "five years old");
}

TEST(Parts, AnOldInstallationMustNotOverlapOneOnRecord) {
  auto bench = bird_bench();
  bench.day = "2022-06-01";
  EXPECT_TRUE(refused(bench.act("install-part", R"("part":"hose-2","position":"oil-hose")"),
                      Kind::conflict, "position"));
}

TEST(Parts, RemovalNeedsAnInstallationBefore) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("remove-part", R"("part":"hose-2","reason":"worn")"),
                      Kind::conflict, "part"));
  bench.day = "2020-01-01";
  EXPECT_TRUE(refused(bench.act("remove-part", R"("part":"hose-1","reason":"worn")"),
                      Kind::conflict, "part"));
}

TEST(Parts, WhatIsNotThereIsNamedWithWhatIs) {
  auto bench = bird_bench();
  const auto problems = bench.act("install-part", R"("part":"hose-7","position":"oil-house")");
  EXPECT_TRUE(refused(problems, Kind::not_found, "part"));
  ASSERT_TRUE(refused(problems, Kind::not_found, "position")) << "both at once";
  for (const auto& p : problems) EXPECT_FALSE(p.expected.empty()) << told({p});
}

}  // namespace
