// Power cuts at random moments: nothing that was confirmed may be lost, and the test must be able
// to see a loss where the syncs are missing.
#include <gtest/gtest.h>

#include <iostream>

#include "e2e/power_cut/scenario.hpp"
#include "unit/record/support.hpp"

namespace wm::record::test {
namespace {

Habits habits_of(std::uint64_t seed) {
  return {seed % 2 == 0 ? std::size_t{512} : std::size_t{4096}, (seed / 2) % 2 == 0,
          (seed / 4) % 3 == 0};
}

/// How many operations that work takes on a disk that is never cut.
std::int64_t operations_of(const Work& work) {
  ForgetfulDisk disk(work.seed, habits_of(work.seed));
  Truth truth;
  const TemporaryFolder folder;
  do_work(disk, folder.path(), work, truth);
  return disk.operations();
}

/// One cut at a random operation. @return what was lost.
std::string cut_once(std::uint64_t seed, detail::Sync sync, std::size_t* confirmed = nullptr) {
  const Work work{seed, 20, sync};
  std::mt19937_64 random(seed ^ 0x9e3779b97f4a7c15U);
  ForgetfulDisk disk(random(), habits_of(seed));
  const auto operations = static_cast<std::uint64_t>(operations_of(work));
  disk.cut_at(static_cast<std::int64_t>(random() % operations));
  Truth truth;
  const TemporaryFolder folder;
  do_work(disk, folder.path(), work, truth);
  disk.leave_behind(folder.path());
  if (confirmed != nullptr) *confirmed += truth.confirmed.size();
  return what_was_lost(folder.path(), truth);
}

TEST(PowerCut, LosesNothingThatWasConfirmed) {
  const int cuts = count_from_environment("WM_POWER_CUTS", 60);
  std::size_t confirmed = 0;
  for (int cut = 0; cut < cuts; ++cut) {
    const auto seed = static_cast<std::uint64_t>(cut) + 1;
    const std::string lost = cut_once(seed, detail::Sync::extra, &confirmed);
    ASSERT_EQ(lost, "") << "seed " << seed;
  }
  std::cout << cuts << " power cuts, " << confirmed << " confirmed events, none lost\n";
  EXPECT_GT(confirmed, static_cast<std::size_t>(cuts)) << "the cuts came too early to say anything";
}

/// Every single operation of one short piece of work, so that no moment is left out.
TEST(PowerCut, AtEachOperationOfAShortWork) {
  const Work work{3, 4, detail::Sync::extra};
  const auto operations = operations_of(work);
  for (std::int64_t at = 0; at < operations; ++at) {
    ForgetfulDisk disk(static_cast<std::uint64_t>(at), habits_of(static_cast<std::uint64_t>(at)));
    disk.cut_at(at);
    Truth truth;
    const TemporaryFolder folder;
    do_work(disk, folder.path(), work, truth);
    disk.leave_behind(folder.path());
    ASSERT_EQ(what_was_lost(folder.path(), truth), "") << "operation " << at;
  }
}

int losses(detail::Sync sync, int cuts) {
  int lost = 0;
  for (int cut = 0; cut < cuts; ++cut) {
    if (!cut_once(static_cast<std::uint64_t>(cut) + 1, sync).empty()) ++lost;
  }
  return lost;
}

/// The control: were the disk too kind, the tests above would prove nothing.
TEST(PowerCut, WithoutSyncsEventsAreLostSoTheTestCanSee) {
  const int cuts = count_from_environment("WM_POWER_CUTS", 60);
  const int lost = losses(detail::Sync::off, cuts);
  std::cout << lost << " of " << cuts << " cuts lost something with synchronous = OFF\n";
  EXPECT_GT(lost, cuts / 4);
}

/// Why FULL is not enough beside a safety file that is deleted: its name may come back.
TEST(PowerCut, WithoutTheSyncOfTheFolderEventsAreLostToo) {
  const int cuts = count_from_environment("WM_POWER_CUTS", 60);
  const int lost = losses(detail::Sync::full, cuts);
  std::cout << lost << " of " << cuts << " cuts lost something with synchronous = FULL\n";
  EXPECT_GT(lost, 0);
}

}  // namespace
}  // namespace wm::record::test
