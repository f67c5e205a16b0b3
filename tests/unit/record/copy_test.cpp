#include "record/journal.hpp"
#include "record/verify.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

TEST(Copy, IsWholeAndVerifies) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 50);
  const auto put = need(journal.put_attachment(std::string(3000000, 'p')));
  need(journal.copy_to(folder / "b.binder"));
  Journal copy = need(Journal::open(folder / "b.binder"));
  EXPECT_EQ(copy.last(), journal.last());
  EXPECT_EQ(need(copy.get_attachment(put.hash)).size(), 3000000U);
  EXPECT_TRUE(verify(copy).clean());
  need(copy.append(an_event(100)));
  EXPECT_EQ(journal.last_sequence(), 50);
}

TEST(Copy, FromAReadOnlyBinderToo) {
  TemporaryFolder folder;
  a_journal(folder / "a.binder", 2);
  Journal journal = need(Journal::open(folder / "a.binder", Access::read_only));
  need(journal.copy_to(folder / "b.binder"));
  EXPECT_EQ(need(Journal::open(folder / "b.binder")).last_sequence(), 2);
}

TEST(Copy, OfAnEmptyBinder) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  need(journal.copy_to(folder / "b.binder"));
  EXPECT_EQ(need(Journal::open(folder / "b.binder")).last_sequence(), 0);
}

TEST(Copy, NeverWritesOverAnything) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 1);
  write_file(folder / "b.binder", "precious");
  EXPECT_EQ(problem_of(journal.copy_to(folder / "b.binder")).kind, Kind::duplicate);
  EXPECT_EQ(file_bytes(folder / "b.binder"), "precious");
  EXPECT_EQ(problem_of(journal.copy_to(folder / "a.binder")).kind, Kind::duplicate);
  EXPECT_EQ(problem_of(journal.copy_to(folder / "no/b.binder")).kind, Kind::not_found);
  EXPECT_EQ(journal.last_sequence(), 1);
}

}  // namespace
}  // namespace wm::record::test
