// A binder that a newer program wrote in is shown and not written to; a damaged one is refused.
#include "record/journal.hpp"
#include "unit/binder/support.hpp"

namespace {

using namespace wm;
using namespace wm::binder::test;
using binder::Binder;

record::NewEvent foreign(const std::string& kind, int version, const std::string& body) {
  return {"foreign-1", kind, version, "2026-11-25", "2026-11-25T10:00:00Z", "", "", "", body};
}
void write_behind(const std::filesystem::path& path, const record::NewEvent& event) {
  auto journal = record::Journal::open(path);
  ASSERT_TRUE(journal);
  ASSERT_TRUE(journal->append(event));
}

TEST(BinderOfANewerProgram, AnUnknownKindMakesItReadOnlyWithAMessage) {
  const Folder folder;
  ASSERT_TRUE(act(*with_bird(folder / "a.binder"), "note-defect", "d", k_defect));
  write_behind(folder / "a.binder", foreign("wings-painted", 1, "{}"));
  auto binder = Binder::open(folder / "a.binder");
  ASSERT_TRUE(binder) << binder.error().what;
  EXPECT_NE((*binder)->read_only_because().find("wings-painted"), std::string::npos);
  EXPECT_EQ(look<desk::BayPage>(**binder, "bay", R"({"aircraft":"bird"})").defects.size(), 1U)
      << "what is known is shown";
  const auto refused = act(**binder, "note-defect", "d2", k_defect);
  ASSERT_FALSE(refused);
  EXPECT_NE(refused.error()[0].what.find("wings-painted"), std::string::npos);
}

TEST(BinderOfANewerProgram, ANewerVersionOfAKnownKindToo) {
  const Folder folder;
  (void)with_bird(folder / "a.binder");
  write_behind(folder / "a.binder", foreign("defect-noted", 99, "{}"));
  auto binder = Binder::open(folder / "a.binder");
  ASSERT_TRUE(binder);
  EXPECT_NE((*binder)->read_only_because().find("99"), std::string::npos);
}

TEST(BinderOfANewerProgram, AlsoWhenItIsWrittenWhileThisOneIsOpen) {
  const Folder folder;
  auto binder = with_bird(folder / "a.binder");
  write_behind(folder / "a.binder", foreign("wings-painted", 1, "{}"));
  EXPECT_FALSE(act(*binder, "note-defect", "d", k_defect));
  EXPECT_NE(binder->read_only_because().find("wings-painted"), std::string::npos);
}

TEST(DamagedBinder, ABodyThatCannotBeReadNamesItsEvent) {
  const Folder folder;
  (void)with_bird(folder / "a.binder");
  write_behind(folder / "a.binder", foreign("defect-noted", 1, R"({"text":5})"));
  auto binder = Binder::open(folder / "a.binder");
  ASSERT_FALSE(binder);
  EXPECT_EQ(binder.error().kind, Kind::damaged);
  EXPECT_NE(binder.error().what.find("event 3"), std::string::npos) << binder.error().what;
}

TEST(DamagedBinder, ACorrectionThatCannotBeReadIsDamageToo) {
  const Folder folder;
  (void)with_bird(folder / "a.binder");
  auto event = foreign("event-corrected", 1,
                       R"({"kind":"position-added","version":1,"body":"{","reason":"x"})");
  event.refers_to = "place";
  write_behind(folder / "a.binder", event);
  auto binder = Binder::open(folder / "a.binder");
  ASSERT_FALSE(binder);
  EXPECT_EQ(binder.error().kind, Kind::damaged) << binder.error().what;
}

TEST(DamagedBinder, AnotherProgramsFileIsNotABinder) {
  const Folder folder;
  EXPECT_FALSE(Binder::open(folder / "none.binder"));
}

}  // namespace
