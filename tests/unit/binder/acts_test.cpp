// Acts on a binder: recorded once, all or nothing, told what changed meanwhile.
#include <thread>

#include "record/journal.hpp"
#include "unit/binder/support.hpp"

namespace {

using namespace wm;
using namespace wm::binder::test;
using binder::ActCall;
using binder::Binder;

TEST(BinderActs, TheSameIdAgainIsHarmless) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  const auto first = act(*binder, "note-defect", "note-1", k_defect);
  ASSERT_TRUE(first) << told(first);
  EXPECT_FALSE(first->was_there_already);
  const auto again = act(*binder, "note-defect", "note-1", k_defect);
  ASSERT_TRUE(again) << told(again);
  EXPECT_TRUE(again->was_there_already);
  ASSERT_EQ(again->recorded.size(), 1U);
  EXPECT_EQ(again->recorded[0].sequence, first->recorded[0].sequence);
  EXPECT_EQ(again->head, first->head);
}

TEST(BinderActs, ARetryOfSeveralEventsGivesThemAll) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  ASSERT_TRUE(act(*binder, "describe-check", "check",
                  R"({"aircraft":"bird","id":"c","title":"C","position":"hose"})"));
  const auto* input = R"({"aircraft":"bird","check":"c","value":"5 psi"})";
  const auto first = act(*binder, "measure", "read-1", input);
  ASSERT_TRUE(first) << told(first);
  EXPECT_EQ(first->recorded.size(), 2U);
  const auto again = act(*binder, "measure", "read-1", input);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->recorded.size(), 2U);
}

TEST(BinderActs, AnActIsNotTakenForTheSecondEventOfAnother) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  ASSERT_TRUE(act(*binder, "describe-check", "check",
                  R"({"aircraft":"bird","id":"c","title":"C","position":"hose"})"));
  ASSERT_TRUE(
      act(*binder, "measure", "read", R"({"aircraft":"bird","check":"c","value":"5 psi"})"));
  const auto other = act(*binder, "note-defect", "read-2", k_defect);
  ASSERT_TRUE(other) << told(other);
  EXPECT_FALSE(other->was_there_already) << "acknowledged, but never recorded";
  binder->look([](const bay::State& state) {
    EXPECT_TRUE(state.aircraft.at("bird").defects.contains("film"));
  });
}

TEST(BinderActs, TryOnlyRecordsNothing) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  const auto before = binder->last();
  const auto reply = binder->act({"note-defect", "try", {}, {}, {}, {}, true}, json(k_defect),
                                 k_now, quantity::UnitSet::us_customary);
  ASSERT_TRUE(reply) << told(reply);
  EXPECT_TRUE(reply->recorded.empty());
  EXPECT_EQ(static_cast<const desk::Said*>(reply->value.get())->id, "film");
  EXPECT_EQ(binder->last().sequence, before.sequence);
  EXPECT_EQ(binder->last().hash, before.hash);
}

TEST(BinderActs, APlanMadeOnAnOldPageIsToldWhatChanged) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  const auto seen = binder->last().sequence;
  ASSERT_TRUE(act(*binder, "plan-change", "p1",
                  R"({"aircraft":"bird","title":"New hose","position":"hose","grade":"renewed"})"));
  const auto plan = [&](std::int64_t saw) {
    return binder->act(
        {"plan-change", "p2", {}, "ben", {}, saw, false},
        json(R"({"aircraft":"bird","title":"Other","position":"hose","grade":"adjusted"})"), k_now,
        quantity::UnitSet::us_customary);
  };
  const auto late = plan(seen);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error()[0].kind, Kind::conflict);
  EXPECT_EQ(late.error()[0].path, "seen");
  EXPECT_NE(late.error()[0].what.find("New hose"), std::string::npos) << told(late);
  EXPECT_NE(late.error()[0].what.find("anna"), std::string::npos) << "and by whom";
  EXPECT_TRUE(plan(binder->last().sequence));
}

TEST(BinderActs, ReadingsAndDefectsNeverConflict) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  ASSERT_TRUE(act(*binder, "plan-change", "p1",
                  R"({"aircraft":"bird","title":"New hose","position":"hose","grade":"renewed"})"));
  const auto reply = binder->act({"note-defect", "d", {}, {}, {}, 0, false}, json(k_defect), k_now,
                                 quantity::UnitSet::us_customary);
  EXPECT_TRUE(reply) << told(reply);
}

TEST(BinderActs, TwoBindersOnOneFileSeeEachOther) {
  const Folder folder;
  auto first = with_bird(folder / "a.binder");
  auto second = Binder::open(folder / "a.binder");
  ASSERT_TRUE(second);
  ASSERT_TRUE(act(*first, "note-defect", "d1", k_defect));
  EXPECT_EQ(look<desk::BayPage>(**second, "bay", R"({"aircraft":"bird"})").defects.size(), 1U);
  ASSERT_TRUE(act(**second, "note-defect", "d2", R"({"aircraft":"bird","text":"smell of fuel"})"));
  EXPECT_EQ(look<desk::BayPage>(*first, "bay", R"({"aircraft":"bird"})").defects.size(), 2U);
  EXPECT_EQ(first->last().hash, (*second)->last().hash);
}

TEST(BinderActs, AReaderSeesWhatAWriterWrites) {
  const Folder folder;
  auto writer = with_bird(folder / "a.binder");
  auto reader = Binder::open(folder / "a.binder", record::Access::read_only);
  ASSERT_TRUE(reader);
  ASSERT_TRUE(act(*writer, "note-defect", "d1", k_defect));
  EXPECT_EQ(look<desk::BayPage>(**reader, "bay", R"({"aircraft":"bird"})").defects.size(), 1U);
  const auto refused = act(**reader, "note-defect", "d2", k_defect);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].kind, Kind::refused);
}

TEST(BinderActs, TwoWritersAtOnceLoseNothing) {
  const Folder folder;
  auto first = with_bird(folder / "a.binder");
  auto second = Binder::open(folder / "a.binder");
  ASSERT_TRUE(second);
  const auto write = [](Binder& binder, const std::string& who) {
    for (int i = 0; i < 20; ++i) {
      const auto reply = act(binder, "note-defect", fmt::format("{}-{}", who, i),
                             R"({"aircraft":"bird","text":"oil film"})");
      EXPECT_TRUE(reply) << told(reply);
    }
  };
  std::thread other([&] { write(**second, "ben"); });
  write(*first, "anna");
  other.join();
  first->look([](const bay::State& state) {
    EXPECT_EQ(state.aircraft.at("bird").defects.size(), 40U);
    EXPECT_TRUE(state.oddities.empty());
  });
  EXPECT_TRUE(first->verify({}).clean());
}

TEST(BinderActs, WhatIsWrongIsToldAndNothingIsWritten) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  const auto before = binder->last().sequence;
  EXPECT_FALSE(act(*binder, "fly", "x", "{}"));
  EXPECT_FALSE(act(*binder, "note-defect", "not an id!", k_defect));
  EXPECT_FALSE(act(*binder, "note-defect", "d", R"({"aircraft":"ghost","text":"x"})"));
  EXPECT_FALSE(act(*binder, "note-defect", "d", "not JSON"));
  const auto impossible = binder->act({"note-defect", "d", "2026-02-30", {}, {}, {}, false},
                                      json(k_defect), k_now, quantity::UnitSet::us_customary);
  ASSERT_FALSE(impossible);
  EXPECT_EQ(impossible.error()[0].path, "happened");
  EXPECT_EQ(binder->last().sequence, before);
}

TEST(BinderActs, AnAttachmentIsStoredBeforeItIsNamed) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  const auto attach = [&](const std::string& hash) {
    return act(*binder, "attach", "photo",
               fmt::format(R"({{"aircraft":"bird","hash":"{}","name":"a.png",)"
                           R"("media_type":"image/png"}})",
                           hash));
  };
  const auto missing = attach(std::string(64, 'a'));
  ASSERT_FALSE(missing);
  EXPECT_EQ(missing.error()[0].path, "hash");
  EXPECT_EQ(missing.error()[0].kind, Kind::not_found);
  const auto photo =
      act(*binder, "note-defect", "d",
          fmt::format(R"({{"aircraft":"bird","text":"x","photos":["{}"]}})", std::string(64, 'b')));
  ASSERT_FALSE(photo);
  EXPECT_EQ(photo.error()[0].path, "photos/0");
  bool given = false;
  const auto stored = binder->put_attachment([&](std::span<std::byte> to) -> std::size_t {
    if (given) return 0;
    given = true;
    to[0] = std::byte{42};
    return 1;
  });
  ASSERT_TRUE(stored);
  EXPECT_TRUE(attach(stored->hash));
}

TEST(BinderActs, ReopenedItTellsTheSame) {
  const Folder folder;
  std::string head;
  {
    auto binder = with_bird(folder / "a.binder");
    ASSERT_TRUE(act(*binder, "note-defect", "d", k_defect));
    head = binder->last().hash;
  }
  auto again = Binder::open(folder / "a.binder");
  ASSERT_TRUE(again);
  EXPECT_EQ((*again)->last().hash, head);
  EXPECT_EQ(look<desk::BayPage>(**again, "bay", R"({"aircraft":"bird"})").defects.size(), 1U);
}

}  // namespace
