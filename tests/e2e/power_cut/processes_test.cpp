// Several processes on one binder: writers that take turns, and writers that are killed.
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <iostream>
#include <random>
#include <set>

#include "e2e/power_cut/scenario.hpp"
#include "record/verify.hpp"
#include "unit/record/support.hpp"

namespace wm::record::test {
namespace {

NewEvent event_of(const std::string& who, int number) {
  NewEvent event =
      an_event(number, '"' + std::string(static_cast<std::size_t>(number % 900), 'x') + '"');
  event.id = who + "-" + std::to_string(number);
  event.author = who;
  return event;
}

/// Start `work` in a child process; its exit status is what it returns.
template <class Work>
pid_t start(Work&& work) {
  const pid_t child = ::fork();
  if (child == 0) {
    int status = 99;
    try {
      status = work();
    } catch (...) {
      status = 98;
    }
    ::_exit(status);
  }
  return child;
}

TEST(Processes, WritersTakeTurnsAndNothingIsLostOrMixed) {
  constexpr int k_writers = 3;
  constexpr int k_each = 60;
  const TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path);
  std::vector<pid_t> writers;
  for (int w = 0; w < k_writers; ++w) {
    writers.push_back(start([&] {
      Journal journal = need(Journal::open(path));
      for (int i = 1; i <= k_each; ++i) {
        need(journal.append(event_of("writer" + std::to_string(w), i)));
      }
      return 0;
    }));
  }
  {
    // Meanwhile a reader never sees the record go back.
    Journal reader = need(Journal::open(path, Access::read_only));
    for (std::int64_t seen = 0; seen < k_writers * k_each;) {
      const auto now = reader.last_sequence();
      ASSERT_GE(now, seen);
      seen = now;
      ::usleep(2000);
      if (::waitpid(-1, nullptr, WNOHANG) < 0) break;  // all writers gone
    }
  }
  while (::waitpid(-1, nullptr, 0) > 0) {
  }
  Journal journal = need(Journal::open(path));
  EXPECT_EQ(journal.last_sequence(), k_writers * k_each);
  EXPECT_TRUE(verify(journal).clean());
  std::map<std::string, int> next;
  need(journal.read_each(0, [&](StoredEvent&& event) {
    EXPECT_EQ(event.id, event.author + "-" + std::to_string(++next[event.author]));
    return true;
  }));
  EXPECT_EQ(next.size(), static_cast<std::size_t>(k_writers));
}

/// Two planners who each look first: no plan is made on a record that has moved on.
TEST(Processes, OfTwoThatSawTheSameOnlyOneIsAccepted) {
  constexpr int k_each = 30;
  const TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path);
  for (int w = 0; w < 2; ++w) {
    start([&] {
      Journal journal = need(Journal::open(path));
      for (int i = 1; i <= k_each;) {
        const auto seen = journal.last_sequence();
        NewEvent event = event_of("planner" + std::to_string(w), i);
        event.body = std::to_string(seen);
        const auto appended = journal.append(event, seen);
        if (appended) ++i;
        if (!appended && appended.error().kind != Kind::conflict) return 1;
      }
      return 0;
    });
  }
  int status = 0;
  while (::waitpid(-1, &status, 0) > 0) EXPECT_EQ(status, 0);
  Journal journal = need(Journal::open(path));
  EXPECT_EQ(journal.last_sequence(), 2 * k_each);
  need(journal.read_each(0, [](StoredEvent&& event) {
    EXPECT_EQ(event.body, std::to_string(event.sequence - 1));
    return true;
  }));
}

/// Writes as fast as it can and reports each confirmed event through a pipe.
int write_and_report(const std::filesystem::path& path, int kill, int report) {
  Journal journal = need(Journal::open(path));
  for (int number = 1;; ++number) {
    need(journal.append(event_of("kill" + std::to_string(kill), number)));
    if (::write(report, &number, sizeof number) != sizeof number) return 1;
  }
}

TEST(Processes, KilledWritersLoseNothingThatWasConfirmed) {
  const int kills = count_from_environment("WM_KILLS", 20);
  const TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path);
  std::mt19937_64 random(11);
  std::int64_t confirmed_in_all = 0;
  std::int64_t before = 0;
  for (int kill = 0; kill < kills; ++kill) {
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    const pid_t child = start([&] { return write_and_report(path, kill, ends[1]); });
    ::close(ends[1]);
    int number = 0;
    int last = 0;
    // Let it confirm one event first, so that the kill comes in the middle of work.
    if (::read(ends[0], &number, sizeof number) == sizeof number) last = number;
    ::usleep(static_cast<useconds_t>(random() % 30000));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the writer stopped by itself";
    while (::read(ends[0], &number, sizeof number) == sizeof number) last = number;
    ::close(ends[0]);
    ASSERT_GT(last, 0);
    Journal journal = need(Journal::open(path));
    const auto now = journal.last_sequence();
    ASSERT_GE(now, before + last);
    ASSERT_LE(now, before + last + 1) << "one may have been on its way";
    ASSERT_TRUE(journal.find("kill" + std::to_string(kill) + "-" + std::to_string(last)));
    ASSERT_TRUE(verify(journal).clean()) << "kill " << kill;
    before = now;
    confirmed_in_all += last;
  }
  std::cout << kills << " kills, " << confirmed_in_all << " confirmed events, none lost\n";
}

/// Read-only access to a binder whose writer was killed in the middle: it says what to do.
TEST(Processes, ReadOnlyAfterAKillSaysThatTheRollBackWaits) {
  const TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 3);
  // A writer that dies between writing the file and the end of its commit leaves both files.
  const pid_t child = start([&] {
    sqlite3* database = nullptr;
    sqlite3_open(path.c_str(), &database);
    sqlite3_exec(database,
                 "PRAGMA cache_size = 1; PRAGMA cache_spill = 1; BEGIN IMMEDIATE;"
                 "CREATE TABLE big (a); INSERT INTO big SELECT zeroblob(100000) FROM journal;"
                 "INSERT INTO big SELECT zeroblob(100000) FROM journal;",
                 nullptr, nullptr, nullptr);
    ::kill(::getpid(), SIGKILL);
    return 0;
  });
  int status = 0;
  ::waitpid(child, &status, 0);
  ASSERT_TRUE(std::filesystem::exists(folder / "a.binder-journal"));
  const auto reader = Journal::open(path, Access::read_only);
  ASSERT_FALSE(reader);
  EXPECT_EQ(reader.error().kind, Kind::refused);
  EXPECT_NE(reader.error().do_next.find("once for writing"), std::string::npos);
  EXPECT_EQ(need(Journal::open(path)).last_sequence(), 3);
  Journal again = need(Journal::open(path, Access::read_only));
  EXPECT_TRUE(verify(again).clean());
}

}  // namespace
}  // namespace wm::record::test
