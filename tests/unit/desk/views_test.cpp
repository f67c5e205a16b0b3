// Views: counts, what is due, what is unknown, and that nothing unknown looks fine.
#include <algorithm>

#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::says;

const desk::DueRow& row(const desk::DuePage& page, const std::string& id) {
  const auto found = std::find_if(page.rows.begin(), page.rows.end(),
                                  [&](const desk::DueRow& r) { return r.id == id; });
  EXPECT_NE(found, page.rows.end()) << id;
  return *found;
}

TEST(Views, EveryViewThatNeedsOnlyAnAircraftOpensOnAnEmptyOne) {
  desk::test::Bench bench;
  bench.done("describe-aircraft", R"("id":"bird","name":"Bird","registration":"Q-BRD")");
  EXPECT_EQ(bench.view<desk::AircraftList>("aircraft-list").aircraft.size(), 1U);
  EXPECT_EQ(bench.view<desk::FrontPage>("header").aircraft.size(), 1U);
  EXPECT_TRUE(bench.view<desk::BayPage>("bay").marks.empty());
  EXPECT_TRUE(bench.view<desk::DuePage>("due").rows.empty());
  EXPECT_TRUE(bench.view<desk::WorkPage>("work").changes.empty());
  EXPECT_TRUE(bench.view<desk::MeasurePage>("measure").groups.empty());
  EXPECT_TRUE(bench.view<desk::JointsPage>("joints").joints.empty());
  EXPECT_TRUE(bench.view<desk::RunsPage>("runs").stages.empty());
  EXPECT_TRUE(bench.view<desk::EntriesPage>("entries").entries.empty());
  EXPECT_EQ(bench.view<desk::HistoryPage>("history").lines.size(), 1U);
  EXPECT_TRUE(bench.view<desk::InstrumentsPage>("instruments").instruments.empty());
  EXPECT_EQ(bench.view<desk::AircraftSheet>("sheet").aircraft.id, "bird");
}

TEST(Views, UnknownIsNeverFine) {
  auto bench = bird_bench();
  const auto page = bench.view<desk::DuePage>("due");
  EXPECT_EQ(page.unknown, 2);
  for (const auto& r : page.rows) {
    EXPECT_EQ(r.standing, "unknown") << r.id;
    EXPECT_FALSE(r.why_unknown.empty()) << r.id;
    EXPECT_FALSE(r.used) << r.id;
  }
  const auto bay = bench.view<desk::BayPage>("bay");
  EXPECT_EQ(bay.within, 0);
  EXPECT_EQ(bay.past_limit, 0);
}

TEST(Views, HoursUsedAndLeft) {
  auto bench = bird_bench();
  bench.day = "2026-02-01";
  bench.done("task-done", R"("limit":"oil-change","text":"drained",)"
                          R"("at":[{"counter":"engine","hours":"1010.0 h"}])");
  bench.day = "2026-11-25";
  bench.done("read-counter", R"("at":[{"counter":"engine","hours":"1036.0 h"}])");
  const auto page = bench.view<desk::DuePage>("due");
  const auto& oil = row(page, "oil-change");
  EXPECT_EQ(oil.standing, "valid");
  EXPECT_EQ(oil.figure, "26.0 of 50.0 h");
  EXPECT_EQ(oil.left, "24.0 h");
  EXPECT_EQ(oil.due, "1060.0 h");
  EXPECT_NEAR(*oil.used, 26.0 / 50.0, 1e-9);
}

TEST(Views, PastIsPastOnTheDayAfter) {
  auto bench = bird_bench();
  bench.day = "2025-11-25";
  bench.done("task-done", R"("limit":"mount-look","text":"looked at")");
  bench.day = "2026-11-25";
  EXPECT_EQ(row(bench.view<desk::DuePage>("due"), "mount-look").standing, "valid");
  bench.day = "2026-11-26";
  const auto page = bench.view<desk::DuePage>("due");
  EXPECT_EQ(row(page, "mount-look").standing, "past-limit");
  EXPECT_EQ(page.past_limit, 1);
  EXPECT_EQ(page.rows.front().id, "mount-look") << "past ones first";
}

TEST(Views, APartThatMovedKeepsItsOwnTime) {
  auto bench = bird_bench();
  bench.done("set-limit", R"("id":"hose-life","title":"Hose life","position":"fuel-hose",)"
                          R"("counter":"engine","every_hours":"100 h","start":"fitted")");
  const auto at = [](int hours) {
    return fmt::format(R"("at":[{{"counter":"engine","hours":"{}.0 h"}}])", hours);
  };
  bench.day = "2026-02-01";
  bench.done("install-part", R"("part":"hose-2","position":"throttle",)" + at(1010));
  bench.day = "2026-03-01";
  bench.done("remove-part", R"("part":"hose-2","reason":"moved",)" + at(1040));
  bench.day = "2026-04-01";
  bench.done("install-part", R"("part":"hose-2","position":"fuel-hose",)" + at(1060));
  bench.day = "2026-05-01";
  bench.done("read-counter", at(1070));
  const auto page = bench.view<desk::DuePage>("due");
  EXPECT_EQ(row(page, "hose-life").figure, "40.0 of 100.0 h")
      << "30 h in the first place and 10 h in the second";
}

TEST(Views, TheBayCountsDoubtfulReadings) {
  auto bench = bird_bench();
  bench.done("measure", R"("check":"lead-1","value":"8.00 kohm","instrument":"meter",)"
                        R"("range":"20 kohm","leads":"nulled")");
  const auto page = bench.view<desk::BayPage>("bay");
  EXPECT_EQ(page.doubtful, 1);
  EXPECT_EQ(page.header.registration, "Q-BRD");
}

TEST(Views, OpenJointsBungsAndDefectsStandOnTheBay) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  bench.done("count-bung", R"("id":"red cap 3","where":"cooler outlet")");
  bench.done("note-defect", R"("text":"oil film","decision":"ground","reason":"not found")");
  const auto page = bench.view<desk::BayPage>("bay");
  ASSERT_EQ(page.open_joints.size(), 1U);
  EXPECT_EQ(page.open_joints[0].number, 1);
  EXPECT_TRUE(says(page.open_joints[0].needs, "torqued"));
  EXPECT_EQ(page.bungs.size(), 1U);
  EXPECT_EQ(page.defects.size(), 1U);
  EXPECT_EQ(page.header.grounding_defects, 1);
  EXPECT_FALSE(page.header.cowl_closed);
}

TEST(Views, TheWorkPageSaysTheNextThing) {
  auto bench = bird_bench();
  bench.ready_to_open();
  EXPECT_TRUE(says(bench.view<desk::WorkPage>("work").stages.at(0).next, "Sign it open"));
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  EXPECT_TRUE(says(bench.view<desk::WorkPage>("work").stages.at(0).next, "check flight"));
  EXPECT_EQ(bench.view<desk::BayPage>("bay").header.flight_due, std::vector<std::string>{"one"});
}

TEST(Views, HistoryGoesBackPageByPage) {
  auto bench = bird_bench();
  const auto whole = bench.view<desk::HistoryPage>("history", R"("most":500)");
  EXPECT_FALSE(whole.more);
  EXPECT_EQ(whole.lines.size(), bench.state.events.size());
  const auto first = bench.view<desk::HistoryPage>("history", R"("most":5)");
  ASSERT_EQ(first.lines.size(), 5U);
  EXPECT_TRUE(first.more);
  const auto next = bench.view<desk::HistoryPage>(
      "history", fmt::format(R"("most":5,"before":{})", first.lines.back().sequence));
  EXPECT_EQ(next.lines.front().sequence, first.lines.back().sequence - 1);
}

TEST(Views, APositionTellsItsWholeStory) {
  auto bench = bird_bench();
  const auto page = bench.view<desk::PositionPage>("position", R"("position":"oil-hose")");
  ASSERT_EQ(page.installations.size(), 1U);
  EXPECT_EQ(page.installations[0].part, "hose-1");
  EXPECT_EQ(page.joints.size(), 1U);
}

TEST(Views, ACheckShowsItsReadingsInOrder) {
  auto bench = bird_bench();
  const auto read = [&](const char* day, const char* value) {
    bench.day = day;
    bench.done("measure", fmt::format(R"("check":"lead-1","value":"{}","instrument":"meter",)"
                                      R"("range":"20 kohm","leads":"nulled")",
                                      value));
  };
  read("2026-10-01", "5.20 kohm");
  read("2026-02-01", "5.00 kohm");
  bench.day = "2026-11-25";
  const auto page = bench.view<desk::CheckHistory>("check-history", R"("check":"lead-1")");
  ASSERT_EQ(page.points.size(), 2U);
  EXPECT_EQ(page.points[0].day, "2026-02-01") << "as it happened, not as it was typed in";
  EXPECT_NEAR(*page.points[0].number, 5.0, 1e-9);
}

TEST(Views, ChoicesNameWhatThereIs) {
  auto bench = bird_bench();
  const auto page = bench.view<desk::NamedChoices>("choices", R"("of":"position")");
  EXPECT_EQ(page.choices.size(), 6U);
}

}  // namespace
