// Events about things that the record does not know: shown as oddities, never a crash.
#include <gtest/gtest.h>

#include <set>

#include "unit/bay/events.hpp"

namespace {

using namespace wm::bay;
using namespace wm::bay::test;

/// An event of the bird that names something that is not there.
template <class Body>
Payload about(std::string Body::* name) {
  Body body;
  body.aircraft = "bird";
  body.*name = "none";
  return body;
}

TEST(Oddities, EveryKindOfEventOnAnEmptyRecordIsTakenIn) {
  for (const auto& kind : event_kinds()) {
    Story story;
    story.tell(kind.make());
    const auto state = story.folded();
    EXPECT_EQ(state.events.size(), 1U) << kind.word;
    EXPECT_EQ(state.sequence, 1) << kind.word;
  }
}

TEST(Oddities, WhatNamesNothingThereIsToldOnce) {
  const std::vector<Payload> lost{CounterReplaced{"bird", "none", {}, {}, {}, {}, {}},
                                  CounterRead{"bird", {{"none", hours(1).hours, {}}}, {}},
                                  PartRemoved{"bird", "none", {}, {}, {}},
                                  PartRemoved{"bird", "hose-1", {}, {}, {}},
                                  PartInstalled{"bird", "none", "hose", {}, {}, true, {}},
                                  TaskDone{"bird", "none", {}, {}, {}},
                                  reading("none"),
                                  about<VerdictGiven>(&VerdictGiven::check),
                                  DefectDecided{"bird", "none", FlyDecision::fly, {}, {}},
                                  DefectClosed{"bird", "none", {}, {}},
                                  ChangeDone{"bird", "none", {}, {}, {}, {}, {}},
                                  ChangeWithdrawn{"bird", "none", {}},
                                  about<StageRuleAnswered>(&StageRuleAnswered::stage),
                                  about<StageStepDone>(&StageStepDone::stage),
                                  about<StageMoved>(&StageMoved::stage),
                                  about<JointWorked>(&JointWorked::joint)};
  for (const auto& payload : lost) {
    auto story = begun();
    story.tell(payload);
    const auto state = story.folded();
    ASSERT_EQ(state.oddities.size(), 1U) << kind_of(payload).word;
    EXPECT_FALSE(state.oddities[0].words.empty());
    EXPECT_EQ(state.oddities[0].sequence, state.sequence);
  }
}

TEST(Oddities, AnAircraftThatNobodyDescribedIsNamed) {
  Story story;
  story.tell(read_hours(10));
  const auto state = story.folded();
  ASSERT_FALSE(state.oddities.empty());
  EXPECT_NE(state.oddities[0].words.find("`bird`"), std::string::npos);
}

}  // namespace
