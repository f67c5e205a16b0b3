#include "record/detail/schema.hpp"

#include "record/detail/row_hash.hpp"
#include "record/journal.hpp"
#include "record/verify.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

// A binder as version 1 wrote it, frozen: never change this text. Hashes and marks were computed
// with Python 3 (hashlib, zlib), not with this program.
constexpr auto k_version_1 = R"sql(
PRAGMA application_id = 1464693355;
CREATE TABLE journal (
  sequence INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  version INTEGER NOT NULL,
  happened TEXT NOT NULL,
  recorded TEXT NOT NULL,
  author TEXT NOT NULL,
  device TEXT NOT NULL,
  refers_to TEXT NOT NULL,
  body TEXT NOT NULL,
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL,
  marks TEXT NOT NULL
) STRICT;
CREATE TRIGGER journal_only_grows BEFORE INSERT ON journal
WHEN NEW.sequence IS NOT (SELECT coalesce(max(sequence), 0) + 1 FROM journal)
  OR NEW.previous_hash IS NOT coalesce(
       (SELECT hash FROM journal ORDER BY sequence DESC LIMIT 1),
       '0000000000000000000000000000000000000000000000000000000000000000')
  OR EXISTS (SELECT 1 FROM journal WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the record only grows at its end'); END;
CREATE TRIGGER journal_is_not_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'an entry is never changed; a correction is a new entry'); END;
CREATE TRIGGER journal_is_not_deleted BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;
INSERT INTO journal VALUES (1, 'ev-1', 'counter-read', 1, '2026-11-25', '2026-11-25T18:04:31Z',
  'M. Example', 'bench laptop', '', '{"hours":"1140.0"}',
  '0000000000000000000000000000000000000000000000000000000000000000',
  '7804773d827d443223dff98ecf2ba42591cef600312859a70413e3f1e6dac7d1',
  '34b1e4cb83dcefb70c34961a54c82baf83dcefb7495463329d90ef4c07b6a27ca98ff22a000000008b70a1c5');
INSERT INTO journal VALUES (2, 'ev-2', 'note', 2, '2026-11-25T10:00:00+01:00',
  '2026-11-25T18:05:00Z', 'M. Example', 'bench laptop', 'ev-1', '{"text":"' || char(181) || ' ' || char(8486) || '"}',
  '7804773d827d443223dff98ecf2ba42591cef600312859a70413e3f1e6dac7d1',
  '663a2146a42ee40fbf76d93d4053620db1b62333a9d061e58d4944db4cfa2046',
  '974bd5681ad5be0d953dc7a0cfbdfa141ad5be0d6e7abfe3bbad49e407b6a27ca98ff22a0c34961aef334a3a');
PRAGMA user_version = 1;
)sql";

std::filesystem::path version_1_file(const TemporaryFolder& folder) {
  const auto path = folder / "old.binder";
  EXPECT_EQ(plain_sql(path, k_version_1), "");
  return path;
}

std::string user_version(const std::filesystem::path& path) {
  sqlite3* database = nullptr;
  sqlite3_open(path.c_str(), &database);
  std::string version;
  sqlite3_exec(
      database, "PRAGMA user_version",
      [](void* into, int, char** values, char**) {
        *static_cast<std::string*>(into) = values[0];
        return 0;
      },
      &version, nullptr);
  sqlite3_close(database);
  return version;
}

TEST(Migration, AVersion1BinderIsBroughtUpToDateWithItsHistoryUntouched) {
  TemporaryFolder folder;
  const auto path = version_1_file(folder);
  Journal journal = need(Journal::open(path));
  EXPECT_EQ(user_version(path), "2");
  const auto events = need(journal.read_from(0));
  ASSERT_EQ(events.size(), 2U);
  EXPECT_EQ(events[1].hash, "663a2146a42ee40fbf76d93d4053620db1b62333a9d061e58d4944db4cfa2046");
  EXPECT_EQ(events[1].body, "{\"text\":\"\xc2\xb5 \xe2\x84\xa6\"}");
  const auto put = need(journal.put_attachment("a photograph"));
  EXPECT_EQ(need(journal.get_attachment(put.hash)), "a photograph");
  need(journal.append(an_event(3)));
  const auto verified = verify(journal);
  EXPECT_TRUE(verified.clean()) << verified.findings.front().what;
}

TEST(Migration, ReadOnlyReadsAVersion1BinderAsItIs) {
  TemporaryFolder folder;
  const auto path = version_1_file(folder);
  const std::string before = file_bytes(path);
  Journal journal = need(Journal::open(path, Access::read_only));
  EXPECT_EQ(need(journal.read_from(0)).size(), 2U);
  EXPECT_TRUE(need(journal.list_attachments()).empty());
  EXPECT_EQ(problem_of(journal.get_attachment(std::string(64, 'a'))).kind, Kind::not_found);
  EXPECT_TRUE(verify(journal).clean());
  EXPECT_EQ(file_bytes(path), before);
}

TEST(Migration, AStepThatFailsLeavesTheOldVersionWhole) {
  TemporaryFolder folder;
  const auto path = version_1_file(folder);
  // Something stands in the way of the second table of version 2.
  plain_sql(path, "CREATE TABLE attachment_chunk (mine)");
  EXPECT_EQ(problem_of(Journal::open(path)).kind, Kind::damaged);
  EXPECT_EQ(user_version(path), "1");
  Journal journal = need(Journal::open(path, Access::read_only));
  EXPECT_EQ(journal.last_sequence(), 2);
}

// The first step is frozen above; what a file gets today must be the same text.
TEST(Migration, TheFirstStepIsNeverChanged) {
  TemporaryFolder folder;
  const auto path = version_1_file(folder);
  const detail::Database old(path, false, {});
  EXPECT_EQ(detail::schema_found(old), detail::schema_expected(1));
  EXPECT_EQ(detail::current_schema(), 2);
}

}  // namespace
}  // namespace wm::record::test
