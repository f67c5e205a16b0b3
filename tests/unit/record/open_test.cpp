#include <sys/resource.h>
#include <unistd.h>

#include <csignal>

#include "record/detail/store.hpp"
#include "record/journal.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

namespace fs = std::filesystem;

/// The tests may run as root, whom no permission stops: step down for a while.
class AsNobody {
 public:
  explicit AsNobody(const fs::path& folder) {
    if (was_root_ && ::chown(folder.c_str(), 65534, 65534) == 0) {
      for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        EXPECT_EQ(::chown(entry.path().c_str(), 65534, 65534), 0);
      }
      EXPECT_EQ(::seteuid(65534), 0);
    }
  }
  ~AsNobody() {
    if (was_root_) {
      EXPECT_EQ(::seteuid(0), 0);
    }
  }
  AsNobody(const AsNobody&) = delete;
  AsNobody& operator=(const AsNobody&) = delete;

 private:
  bool was_root_{::geteuid() == 0};
};

void expect_words(const Problem& problem, Kind kind, const std::string& part) {
  EXPECT_EQ(problem.kind, kind) << problem.what;
  EXPECT_NE(problem.what.find(part), std::string::npos) << problem.what;
  EXPECT_FALSE(problem.expected.empty());
  EXPECT_FALSE(problem.do_next.empty());
}

TEST(Create, RefusesWhatExistsAndLeavesItAlone) {
  TemporaryFolder folder;
  write_file(folder / "a.binder", "my notes");
  expect_words(problem_of(Journal::create(folder / "a.binder")), Kind::duplicate, "already");
  EXPECT_EQ(file_bytes(folder / "a.binder"), "my notes");
  expect_words(problem_of(Journal::create(folder.path())), Kind::duplicate, "already");
  fs::create_symlink(folder / "nowhere", folder / "link.binder");
  EXPECT_FALSE(Journal::create(folder / "link.binder"));
}

TEST(Create, NeedsTheFolder) {
  TemporaryFolder folder;
  expect_words(problem_of(Journal::create(folder / "no/a.binder")), Kind::not_found, "no folder");
  write_file(folder / "file", "x");
  EXPECT_EQ(problem_of(Journal::create(folder / "file/a.binder")).kind, Kind::not_found);
}

TEST(Create, RefusedInAReadOnlyFolder) {
  TemporaryFolder folder;
  const AsNobody nobody(folder.path());
  fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
  expect_words(problem_of(Journal::create(folder / "a.binder")), Kind::refused, "write-protected");
  fs::permissions(folder.path(), fs::perms::owner_all);
}

TEST(Create, RefusesANameThatTheDiskCannotHold) {
  TemporaryFolder folder;
  expect_words(problem_of(Journal::create(folder / std::string(300, 'n'))), Kind::refused,
               "can be made");
}

TEST(Open, NoSuchFile) {
  TemporaryFolder folder;
  expect_words(problem_of(Journal::open(folder / "a.binder")), Kind::not_found, "no such file");
  EXPECT_FALSE(fs::exists(folder / "a.binder")) << "opening never makes a file";
}

TEST(Open, AFolderIsNotABinder) {
  TemporaryFolder folder;
  expect_words(problem_of(Journal::open(folder.path())), Kind::bad_text, "folder");
}

TEST(Open, AForeignFile) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  write_file(path, "Dear diary, today I changed the oil. " + std::string(4000, '.'));
  expect_words(problem_of(Journal::open(path)), Kind::bad_text, "not a binder");
  write_file(path, "short");
  EXPECT_FALSE(Journal::open(path));
}

TEST(Open, AnotherProgramsDatabase) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  plain_sql(path, "CREATE TABLE journal (a)");
  const std::string before = file_bytes(path);
  expect_words(problem_of(Journal::open(path)), Kind::bad_text, "another program");
  EXPECT_EQ(file_bytes(path), before);
}

TEST(Open, AnEmptyFile) {
  TemporaryFolder folder;
  write_file(folder / "a.binder", "");
  expect_words(problem_of(Journal::open(folder / "a.binder")), Kind::damaged, "empty");
}

TEST(Open, ANewerSchema) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  plain_sql(path, "PRAGMA user_version = 99");
  for (const Access access : {Access::read_write, Access::read_only}) {
    expect_words(problem_of(Journal::open(path, access)), Kind::not_applicable, "newer version");
  }
}

TEST(Open, TheTableIsGone) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path);
  plain_sql(path, "DROP TABLE journal");
  expect_words(problem_of(Journal::open(path)), Kind::damaged, "missing");
}

// Cut at every length that matters: nothing but the whole file may open as if it were well.
TEST(Open, ATruncatedFileNeverPassesForWhole) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 60);
  const std::string whole = file_bytes(path);
  for (std::size_t size = 0; size < whole.size(); size += size < 4096 ? 64 : 509) {
    write_file(path, whole.substr(0, size));
    const auto opened = Journal::open(path);
    ASSERT_FALSE(opened) << size << " of " << whole.size();
    EXPECT_TRUE(opened.error().kind == Kind::damaged || opened.error().kind == Kind::bad_text)
        << size << ": " << opened.error().what;
    EXPECT_EQ(file_bytes(path).size(), size) << "left as it was";
  }
  write_file(path, whole.substr(0, whole.size() - 1));
  EXPECT_EQ(problem_of(Journal::open(path)).kind, Kind::damaged);
}

TEST(Open, AWriteProtectedFile) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  const AsNobody nobody(folder.path());
  fs::permissions(path, fs::perms::owner_read);
  expect_words(problem_of(Journal::open(path)), Kind::refused, "write-protected");
  Journal reader = need(Journal::open(path, Access::read_only));
  EXPECT_EQ(reader.last_sequence(), 1);
}

TEST(Open, AFileThatMayNotBeRead) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  const AsNobody nobody(folder.path());
  fs::permissions(path, fs::perms::none);
  expect_words(problem_of(Journal::open(path)), Kind::refused, "may not be read");
}

TEST(Open, AReadOnlyFolder) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  const AsNobody nobody(folder.path());
  fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
  expect_words(problem_of(Journal::open(path)), Kind::refused, "write-protected");
  Journal reader = need(Journal::open(path, Access::read_only));
  EXPECT_TRUE(need(reader.read_from(0)).size() == 1);
  fs::permissions(folder.path(), fs::perms::owner_all);
}

TEST(Open, AFolderThatBecomesReadOnlyWhileOpen) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  Journal journal = a_journal(path, 1);
  const AsNobody nobody(folder.path());
  fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
  EXPECT_EQ(problem_of(journal.append(an_event(2))).kind, Kind::refused);
  fs::permissions(folder.path(), fs::perms::owner_all);
  EXPECT_EQ(need(journal.append(an_event(2))).events[0].sequence, 2);
}

TEST(Open, AFileThatAnotherToolSwitchedToAWriteAheadLogIsSwitchedBack) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  plain_sql(path, "PRAGMA journal_mode = WAL");
  Journal journal = need(Journal::open(path));
  need(journal.append(an_event(2)));
  EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), {}), 1);
}

TEST(Locked, AnotherProgramThatNeverLetsGoIsAConflict) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  Journal journal =
      need(detail::open_journal(path, Access::read_write, {detail::Sync::extra, 50, {}}));
  sqlite3* other = nullptr;
  sqlite3_open(path.c_str(), &other);
  sqlite3_exec(other, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr);
  EXPECT_EQ(problem_of(journal.append(an_event(2))).kind, Kind::conflict);
  EXPECT_EQ(problem_of(journal.read_from(0)).kind, Kind::conflict);
  EXPECT_EQ(
      problem_of(detail::open_journal(path, Access::read_only, {detail::Sync::extra, 50, {}})).kind,
      Kind::conflict);
  try {
    static_cast<void>(journal.last());
    ADD_FAILURE() << "expected Broken";
  } catch (const Broken& broken) {
    EXPECT_EQ(broken.fault(), Fault::locked);
  }
  sqlite3_exec(other, "ROLLBACK", nullptr, nullptr, nullptr);
  sqlite3_close(other);
  EXPECT_EQ(need(journal.append(an_event(2))).events[0].sequence, 2);
}

/// A real limit on the size of files stands in for a full disk.
TEST(FullDisk, ThrowsBrokenKeepsWhatWasConfirmedAndRecovers) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  Journal journal = a_journal(path, 5);
  rlimit before{};
  ::getrlimit(RLIMIT_FSIZE, &before);
  auto* old_handler = std::signal(SIGXFSZ, SIG_IGN);
  const rlimit tight{fs::file_size(path) + 8192, before.rlim_max};
  ::setrlimit(RLIMIT_FSIZE, &tight);
  bool threw = false;
  try {
    need(journal.append(an_event(6, '"' + std::string(100000, 'x') + '"')));
  } catch (const Broken& broken) {
    threw = true;
    EXPECT_FALSE(broken.do_next().empty());
    EXPECT_TRUE(broken.fault() == Fault::disk_full || broken.fault() == Fault::input_output);
  }
  ::setrlimit(RLIMIT_FSIZE, &before);
  static_cast<void>(std::signal(SIGXFSZ, old_handler));
  EXPECT_TRUE(threw);
  EXPECT_EQ(journal.last_sequence(), 5);
  EXPECT_EQ(need(journal.append(an_event(6))).events[0].sequence, 6);
}

TEST(Moving, AJournalKeepsItsFile) {
  TemporaryFolder folder;
  Journal one = a_journal(folder / "a.binder", 1);
  Journal two = std::move(one);
  EXPECT_EQ(two.last_sequence(), 1);
  EXPECT_EQ(two.path(), folder / "a.binder");
  EXPECT_EQ(two.access(), Access::read_write);
}

}  // namespace
}  // namespace wm::record::test
