// The fold: what a record tells, in the order in which things happened.
#include <gtest/gtest.h>

#include "unit/bay/events.hpp"

namespace {

using namespace wm::bay;
using namespace wm::bay::test;
using wm::quantity::parse_date;

const Aircraft& bird_of(const State& state) { return state.aircraft.at("bird"); }

TEST(Fold, AnExchangedMeterGoesOnCounting) {
  auto story = begun();
  story.on("2026-02-01").tell(read_hours(930));
  CounterReplaced exchange{"bird", "engine", {}, {}, {}, {}, "display blank"};
  exchange.old_last_hours = hours(942.4).hours;
  exchange.new_first_hours = hours(0).hours;
  story.on("2026-03-01").tell(exchange);
  story.on("2026-04-01").tell(read_hours(103.7));
  const auto state = story.folded();
  EXPECT_NEAR(*bird_of(state).engine_hours()->now(), 942.4 + 103.7, 1e-9);
  EXPECT_TRUE(state.oddities.empty());
}

TEST(Fold, AnOldLogbookMayBeEnteredLate) {
  auto story = begun();
  story.on("2026-04-01").tell(read_hours(1000));
  story.on("2024-04-01").tell(read_hours(900));
  story.on("2025-04-01").tell(read_hours(960));
  const auto state = story.folded();
  EXPECT_TRUE(state.oddities.empty());
  EXPECT_NEAR(*bird_of(state).engine_hours()->now(), 1000, 1e-9);
  EXPECT_NEAR(*bird_of(state).engine_hours()->on(*parse_date("2025-04-01")), 960, 1e-9);
}

TEST(Fold, AnOldInstallationEnteredLateDoesNotTakeThePlace) {
  auto story = begun();
  story.on("2025-01-01").tell(PartInstalled{"bird", "hose-2", "hose", {}, {}, true, {}});
  story.on("2020-01-01").tell(PartInstalled{"bird", "hose-1", "hose", {}, {}, true, {}});
  story.on("2024-12-31").tell(PartRemoved{"bird", "hose-1", "old", {}, {}});
  const auto state = story.folded();
  EXPECT_EQ(bird_of(state).fitted.at("hose"), "hose-2");
  EXPECT_EQ(state.parts.at("hose-1").current(), nullptr);
  EXPECT_TRUE(state.oddities.empty());
}

TEST(Fold, APartThatMovedKeepsItsOwnTime) {
  auto story = begun();
  story.on("2026-01-10").tell(PartInstalled{"bird", "hose-1", "hose", {hours(100)}, {}, true, {}});
  story.on("2026-02-10").tell(PartRemoved{"bird", "hose-1", "moved", {hours(130)}, {}});
  story.on("2026-03-10").tell(PartInstalled{"bird", "hose-1", "shelf", {hours(150)}, {}, true, {}});
  const auto state = story.folded();
  const auto& places = state.parts.at("hose-1").installations;
  ASSERT_EQ(places.size(), 2U);
  EXPECT_NEAR(places[0].to_counters.at("engine") - places[0].from_counters.at("engine"), 30, 1e-9);
  EXPECT_NEAR(places[1].from_counters.at("engine"), 150, 1e-9);
  EXPECT_EQ(places[1].position, "shelf");
  EXPECT_FALSE(bird_of(state).fitted.contains("hose"));
}

TEST(Fold, AnUnreadCounterIsTakenBetweenItsNeighbours) {
  auto story = begun();
  story.on("2026-01-01").tell(read_hours(100));
  story.on("2026-01-31").tell(read_hours(160));
  story.on("2026-01-16").tell(PartInstalled{"bird", "hose-1", "hose", {}, {}, true, {}});
  const auto state = story.folded();
  EXPECT_NEAR(state.parts.at("hose-1").current()->from_counters.at("engine"), 130, 1e-9);
}

TEST(Fold, ReadingsStandInTheOrderInWhichTheyWereTaken) {
  auto story = begun();
  story.on("2026-03-01").tell(reading("look", "second"));
  story.on("2026-02-01").tell(reading("look", "first"));
  const auto state = story.folded();
  EXPECT_EQ(bird_of(state).checks.at("look").latest()->reading.note, "second");
}

TEST(Fold, ACorrectionReplacesAndTheOriginalStays) {
  auto story = begun();
  const auto id = story.tell(reading("look", "wrong"));
  story.correct(id, reading("look", "right"));
  const auto state = story.folded();
  const auto& record = bird_of(state).checks.at("look");
  ASSERT_EQ(record.readings.size(), 1U);
  EXPECT_EQ(record.readings[0].reading.note, "right");
  EXPECT_TRUE(record.readings[0].corrected);
  const auto& original = state.events[state.by_id.at(id)]->payload;
  EXPECT_EQ(std::get<ReadingTaken>(original).note, "wrong");
}

TEST(Fold, AnEntryIsAmendedOnlyByWhatWasCorrectedAfterIt) {
  auto story = begun();
  const auto before = story.tell(reading("look", "a"));
  story.correct(before, reading("look", "b"));
  const auto after = story.tell(reading("look", "c"));
  EntrySigned first{"bird",        "first", {},      EntryPurpose::record_only, "text", "name",
                    Signer::owner, {},      {before}};
  auto second = first;
  second.id = "second";
  second.covers = {after};
  story.tell(first);
  story.tell(second);
  story.correct(after, reading("look", "d"));
  const auto state = story.applied();
  EXPECT_FALSE(bird_of(state).entries.at("first").amended_after_signature);
  EXPECT_TRUE(bird_of(state).entries.at("second").amended_after_signature);
}

TEST(Fold, AStageTakesItsChangesOutOfAnother) {
  auto story = begun();
  ChangePlanned change;
  change.aircraft = "bird";
  change.id = "left";
  story.tell(change);
  story.tell(StagePlanned{"bird", "one", "One", {"left"}, false, {}, {}});
  story.tell(StagePlanned{"bird", "two", "Two", {"left"}, false, {}, {}});
  const auto state = story.folded();
  EXPECT_TRUE(bird_of(state).stages.at("one").about.changes.empty());
  EXPECT_EQ(bird_of(state).changes.at("left").stage, "two");
}

TEST(Fold, ABungLeavesTheListWhenItIsTakenOut) {
  auto story = begun();
  story.tell(BungCounted{"bird", "red cap", "outlet", true});
  story.tell(BungCounted{"bird", "rag", {}, true});
  story.tell(BungCounted{"bird", "rag", {}, false});
  EXPECT_EQ(bird_of(story.folded()).bungs.size(), 1U);
}

TEST(Fold, AnInstrumentRegisteredAnewIsGoodAgain) {
  auto story = begun();
  InstrumentRegistered meter;
  meter.id = "meter";
  story.tell(meter);
  story.tell(InstrumentFoundBad{"meter", {}, "reads low"});
  EXPECT_TRUE(story.folded().instruments.at("meter").bad);
  story.tell(meter);
  EXPECT_FALSE(story.folded().instruments.at("meter").bad);
}

TEST(Fold, WhatGoesBackwardsIsAnOddityNotACrash) {
  auto story = begun();
  story.on("2026-02-01").tell(read_hours(930));
  story.on("2026-03-01").tell(read_hours(900));
  const auto state = story.folded();
  ASSERT_EQ(state.oddities.size(), 1U);
  EXPECT_EQ(state.oddities[0].sequence, state.sequence);
  EXPECT_NEAR(*bird_of(state).engine_hours()->now(), 930, 1e-9);
}

}  // namespace
