// Laws of the journal over drawn inputs. The seed is printed by RapidCheck and fixed by RC_PARAMS.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <random>

#include "../../unit/record/support.hpp"
#include "record/detail/row_hash.hpp"
#include "record/verify.hpp"

namespace wm::record::test {
namespace {

using Values = std::vector<std::string>;

detail::HashedText views_of(const Values& values) {
  detail::HashedText views;
  std::ranges::copy(values, views.begin());
  return views;
}

Values drawn_row() {
  return *rc::gen::container<Values>(
      detail::k_hashed_columns.size(),
      rc::gen::container<std::string>(rc::gen::element('a', '0', '\0')));
}

std::string encoded(const Values& values) {
  std::string bytes;
  detail::encode_row(views_of(values), bytes);
  return bytes;
}

/// Two rows are encoded alike only if they are alike: moving a letter from one column to the next
/// can never give the same hash.
TEST(Encoding, IsUnambiguous) {
  EXPECT_TRUE(rc::check([] {
    const Values one = drawn_row();
    Values two = one;
    const auto from = *rc::gen::inRange<std::size_t>(0, two.size() - 1);
    if (!two[from].empty()) {
      two[from + 1].insert(two[from + 1].begin(), two[from].back());
      two[from].pop_back();
    }
    RC_ASSERT((encoded(one) == encoded(two)) == (one == two));
    const Values other = drawn_row();
    RC_ASSERT((encoded(one) == encoded(other)) == (one == other));
  }));
}

/// A stranger's reader of the encoding gets the columns back.
TEST(Encoding, CanBeTakenApartAgain) {
  EXPECT_TRUE(rc::check([] {
    const Values row = drawn_row();
    const std::string bytes = encoded(row);
    std::size_t at = 0;
    for (const std::string& value : row) {
      std::size_t size = 0;
      for (int i = 0; i < 8; ++i) size = size * 256 + static_cast<unsigned char>(bytes[at++]);
      RC_ASSERT(bytes.substr(at, size) == value);
      at += size;
    }
    RC_ASSERT(at == bytes.size());
  }));
}

/// Any mixture of new events, retries, batches, wrong expectations and reopenings leaves what a
/// plain list leaves.
TEST(Model, TheJournalIsAListThatOnlyGrows) {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    std::mt19937_64 random(seed);
    const TemporaryFolder folder;
    const auto path = folder / "a.binder";
    auto journal = std::make_unique<Journal>(a_journal(path));
    std::vector<NewEvent> list;
    const auto known = [&](const NewEvent& e) {
      return std::ranges::find(list, e.id, &NewEvent::id) != list.end();
    };
    for (int step = 0; step < 60; ++step) {
      if (random() % 15 == 0) {
        journal.reset();
        journal = std::make_unique<Journal>(need(Journal::open(path)));
      }
      std::vector<NewEvent> batch;
      for (auto n = random() % 4; n > 0; --n) {
        const int number = static_cast<int>(random() % 60);
        // One in eight says something else under an id that may be taken.
        batch.push_back(an_event(number, random() % 8 == 0 ? "{}" : R"({"text":"seen"})"));
        if (random() % 5 == 0) batch.back().refers_to = "ev-" + std::to_string(random() % 60);
      }
      std::optional<std::int64_t> expected;
      if (random() % 3 == 0) expected = static_cast<std::int64_t>(list.size() - random() % 2);
      const auto appended = journal->append(batch, expected);
      const auto before = list.size();
      if (appended) {
        for (std::size_t i = 0; i < batch.size(); ++i) {
          if (!known(batch[i])) list.push_back(batch[i]);
          ASSERT_EQ(appended->events[i].body, batch[i].body) << "seed " << seed;
        }
        ASSERT_TRUE(!expected || list.size() == before ||
                    *expected == static_cast<std::int64_t>(before));
      }
      ASSERT_EQ(journal->last_sequence(), static_cast<std::int64_t>(list.size()))
          << "seed " << seed << " step " << step;
    }
    const auto events = need(journal->read_from(0));
    for (std::size_t i = 0; i < list.size(); ++i) {
      ASSERT_EQ(static_cast<const NewEvent&>(events[i]), list[i]) << "seed " << seed;
    }
    ASSERT_TRUE(verify(*journal).clean()) << "seed " << seed;
    // Every head that was ever printed still agrees.
    std::vector<Head> heads;
    for (const auto& event : events) heads.push_back({event.sequence, event.hash});
    ASSERT_TRUE(verify_against(*journal, heads).clean()) << "seed " << seed;
  }
}

}  // namespace
}  // namespace wm::record::test
