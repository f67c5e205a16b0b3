// Every kind of event is known by its word and described without a gap.
#include <gtest/gtest.h>

#include <set>

#include "bay/state.hpp"
#include "calculation/catalogue.hpp"

namespace {

using namespace wm;

TEST(EventKinds, EachHasItsOwnWordAndIsFoundByIt) {
  std::set<std::string_view> words;
  for (const auto& kind : bay::event_kinds()) {
    EXPECT_TRUE(words.insert(kind.word).second) << kind.word;
    EXPECT_EQ(bay::find_kind(kind.word), &kind);
    EXPECT_EQ(&bay::kind_of(kind.make()), &kind);
    EXPECT_GE(kind.version, 1);
  }
  EXPECT_EQ(words.size(), std::variant_size_v<bay::Payload>);
  EXPECT_EQ(bay::find_kind("engine-sold"), nullptr);
}

TEST(EventKinds, NoMemberIsLeftUndescribed) {
  for (const auto& kind : bay::event_kinds()) {
    EXPECT_EQ(describe::undescribed_gap(*kind.type), "") << kind.word;
    for (const auto& what : calculation::complaints(*kind.type))
      ADD_FAILURE() << kind.word << ": " << what;
  }
}

TEST(EventKinds, ABodyIsInsideItsPayload) {
  for (const auto& kind : bay::event_kinds()) {
    auto payload = kind.make();
    EXPECT_EQ(bay::body_of(payload), bay::body_of(std::as_const(payload))) << kind.word;
  }
}

TEST(EventKinds, TheAircraftIsFoundInEachThatHasOne) {
  EXPECT_EQ(bay::aircraft_of(bay::CowlMoved{"bird", true, {}}), "bird");
  bay::AircraftDescribed described;
  described.id = "bird";
  EXPECT_EQ(bay::aircraft_of(described), "bird");
  EXPECT_EQ(bay::aircraft_of(bay::PartRegistered{}), "") << "parts belong to the binder";
}

TEST(ShortNames, AreMadeFromWhatWasWritten) {
  EXPECT_EQ(bay::short_name("Oil film below cylinder 4!"), "oil-film-below-cylinder-4");
  EXPECT_EQ(bay::short_name("  "), "item");
  EXPECT_LE(bay::short_name(std::string(500, 'x')).size(), 40U);
}

}  // namespace
