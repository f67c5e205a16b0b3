// Writes, syncs, truncations and deletions that fail: the journal stays whole, goes on when the
// disk does, and a power cut at the end still loses nothing.
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <iostream>

#include "e2e/power_cut/scenario.hpp"
#include "unit/record/support.hpp"

namespace wm::record::test {
namespace {

TEST(WriteErrors, LeaveTheJournalWholeAndItGoesOn) {
  const int runs = count_from_environment("WM_POWER_CUTS", 60);
  int failures = 0;
  for (int run = 0; run < runs; ++run) {
    const auto seed = static_cast<std::uint64_t>(run) + 1;
    std::mt19937_64 random(seed);
    ForgetfulDisk disk(seed, {512, run % 2 == 0, false});
    const int codes[] = {SQLITE_FULL, SQLITE_IOERR_WRITE};
    disk.refuse({static_cast<std::int64_t>(random() % 250), 1 + static_cast<int>(random() % 3),
                 codes[random() % 2]});
    Truth truth;
    const TemporaryFolder folder;
    do_work(disk, folder.path(), {seed, 20}, truth);
    ASSERT_FALSE(testing::Test::HasFailure()) << "seed " << seed;
    disk.leave_behind(folder.path());
    ASSERT_EQ(what_was_lost(folder.path(), truth), "") << "seed " << seed;
    failures += truth.failures;
  }
  std::cout << runs << " runs, " << failures << " failed acts, each done on a later try\n";
  EXPECT_GT(failures, runs / 3) << "hardly any error was met";
}

/// One error at each operation of a short piece of work.
TEST(WriteErrors, AtEachOperationOfAShortWork) {
  for (const int code : {SQLITE_FULL, SQLITE_IOERR_WRITE}) {
    bool met = true;
    for (std::int64_t at = 0; met; ++at) {
      ForgetfulDisk disk(static_cast<std::uint64_t>(at));
      disk.refuse({at, 1, code});
      Truth truth;
      const TemporaryFolder folder;
      do_work(disk, folder.path(), {3, 4}, truth);
      met = disk.has_refused();
      ASSERT_FALSE(testing::Test::HasFailure()) << "operation " << at;
      disk.leave_behind(folder.path());
      ASSERT_EQ(what_was_lost(folder.path(), truth), "") << "operation " << at;
    }
  }
}

TEST(WriteErrors, AFullDiskSaysSo) {
  ForgetfulDisk disk(1);
  const TemporaryFolder folder;
  auto journal =
      need(detail::create_journal(folder / "a.binder", {detail::Sync::extra, 100, disk.name()}));
  need(journal.append(an_event(1)));
  disk.refuse({disk.operations() + 1, 1, SQLITE_FULL});
  try {
    static_cast<void>(journal.append(an_event(2)));
    ADD_FAILURE() << "expected Broken";
  } catch (const Broken& broken) {
    EXPECT_EQ(broken.fault(), Fault::disk_full);
    EXPECT_NE(std::string(broken.what()).find("disk is full"), std::string::npos);
    EXPECT_FALSE(broken.do_next().empty());
  }
  EXPECT_EQ(journal.last_sequence(), 1);
  EXPECT_EQ(need(journal.append(an_event(2))).events[0].sequence, 2);
}

}  // namespace
}  // namespace wm::record::test
