#include "record/verify.hpp"

#include <algorithm>

#include "record/detail/row_hash.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

std::string words(const Verification& v) {
  std::string all;
  for (const auto& f : v.findings) {
    all += std::to_string(f.sequence) + "/" + f.column + ": " + f.what + "\n";
  }
  return all;
}

bool names(const Verification& v, std::int64_t sequence, const std::string& column) {
  return std::ranges::any_of(v.findings, [&](const Finding& f) {
    return f.sequence == sequence && f.column == column && !f.what.empty();
  });
}

TEST(Verify, ACleanRecordHasNoFindings) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 600);
  need(journal.put_attachment("photo"));
  const auto v = verify(journal);
  EXPECT_TRUE(v.clean()) << words(v);
  EXPECT_EQ(v.events, 600);
  EXPECT_EQ(v.attachments, 1);
  EXPECT_EQ(v.head, journal.head());
}

TEST(Verify, AnEmptyRecordIsClean) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  const auto v = verify(journal);
  EXPECT_TRUE(v.clean()) << words(v);
  EXPECT_EQ(v.head, std::string(64, '0'));
}

struct Column {
  const char* name;
  const char* altered;  ///< SQL expression that changes one byte of it
};

class EachColumn : public testing::TestWithParam<std::tuple<Column, int>> {};

/// Changed by SQL, behind the guards: exactly one finding, which names entry and column.
TEST_P(EachColumn, AlteredBySqlIsFoundAndNamed) {
  const auto& [column, sequence] = GetParam();
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 7);
  tamper(path, std::string("UPDATE journal SET ") + column.name + " = " + column.altered +
                   " WHERE sequence = " + std::to_string(sequence));
  Journal journal = need(Journal::open(path));
  const auto v = verify(journal);
  // A number that was altered by SQL moves the row: it is then missed at its old place as well.
  const bool moved = std::string(column.name) == "sequence";
  EXPECT_TRUE(names(v, sequence, column.name)) << words(v);
  if (!moved) {
    EXPECT_EQ(v.findings.size(), 1U) << words(v);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Columns, EachColumn,
    testing::Combine(testing::Values(Column{"sequence", "100"}, Column{"id", "'ev-x'"},
                                     Column{"kind", "'nota'"}, Column{"version", "2"},
                                     Column{"happened", "'2026-11-24'"},
                                     Column{"recorded", "'2026-11-25T18:04:32Z'"},
                                     Column{"author", "'N. Example'"},
                                     Column{"device", "'bench laptoq'"},
                                     Column{"refers_to", "refers_to || '0'"},
                                     Column{"body", "'{\"text\":\"seem\"}'"},
                                     Column{"previous_hash", "'f' || substr(previous_hash, 2)"},
                                     Column{"hash", "'f' || substr(hash, 2)"},
                                     Column{"marks", "'g' || substr(marks, 2)"}),
                     testing::Values(1, 4, 7)),
    [](const auto& row) {
      return std::string(std::get<0>(row.param).name) + std::to_string(std::get<1>(row.param));
    });

/// One byte flipped in the file itself, as a bad disk does it. Each column holds a text that
/// stands nowhere else, so that the byte can be found.
class EachByte : public testing::TestWithParam<const char*> {};

TEST_P(EachByte, FlippedInTheFileIsFoundAndNamed) {
  const std::string column = GetParam();
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  std::vector<StoredEvent> stored;
  {
    Journal journal = a_journal(path, 3);
    NewEvent event{
        "marker-id",     "marker-kind",   1234567, "1987-06-05",          "1988-07-06T05:04:03Z",
        "marker-author", "marker-device", "ev-3",  R"({"marker":"body"})"};
    need(journal.append(event));
    stored = need(journal.append(an_event(5))).events;
  }
  std::string bytes = file_bytes(path);
  const std::string fourth_hash = stored[0].previous_hash;
  const std::string marks_of_fourth = detail::column_mark("marker-id");
  const std::string needle = column == "id"              ? "marker-idmarker-kind"
                             : column == "kind"          ? "marker-kind"
                             : column == "version"       ? std::string("\x12\xd6\x87", 3)
                             : column == "happened"      ? "1987-06-05"
                             : column == "recorded"      ? "1988-07-06T05:04:03Z"
                             : column == "author"        ? "marker-author"
                             : column == "device"        ? "marker-device"
                             : column == "refers_to"     ? R"(ev-3{"marker")"
                             : column == "body"          ? R"({"marker":"body"})"
                             : column == "previous_hash" ? "body\"}"
                             : column == "hash"          ? fourth_hash + "34b1e4cb"
                                                         : marks_of_fourth;
  std::size_t at = bytes.find(needle);
  if (column == "previous_hash") at += 6;
  if (column == "hash") {
    // The marks that follow begin with the mark of previous_hash.
    at = bytes.find(fourth_hash + detail::column_mark(""));
    for (at = bytes.find(fourth_hash); at != std::string::npos;
         at = bytes.find(fourth_hash, at + 1)) {
      if (at + 72 < bytes.size() && bytes.compare(at + 64 + 8, 8, detail::column_mark("4")) == 0) {
        break;
      }
    }
  }
  ASSERT_NE(at, std::string::npos);
  for (const int bit : {0, 1, 3}) {
    std::string flipped = bytes;
    flipped[at + 1] = static_cast<char>(flipped[at + 1] ^ (1 << bit));
    write_file(path, flipped);
    Journal journal = need(Journal::open(path));
    const auto v = verify(journal);
    EXPECT_TRUE(names(v, 4, column)) << column << " bit " << bit << "\n" << words(v);
  }
  write_file(path, bytes);
  Journal journal = need(Journal::open(path));
  EXPECT_TRUE(verify(journal).clean());
}

INSTANTIATE_TEST_SUITE_P(Columns, EachByte,
                         testing::Values("id", "kind", "version", "happened", "recorded", "author",
                                         "device", "refers_to", "body", "previous_hash", "hash",
                                         "marks"),
                         [](const auto& row) { return std::string(row.param); });

/// Bits all over a small file, one at a time: verify or open must notice, and nothing may crash.
/// Only bytes that carry nothing may pass: free space, and header fields SQLite does not use.
TEST(Verify, ABitFlippedAnywhereNeverChangesTheHistoryUnseen) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  std::vector<StoredEvent> truth;
  {
    Journal journal = a_journal(path, 3);
    truth = need(journal.read_from(0));
  }
  const std::string whole = file_bytes(path);
  int unseen_changes = 0;
  for (std::size_t at = 0; at < whole.size(); at += 37) {
    std::string flipped = whole;
    flipped[at] = static_cast<char>(flipped[at] ^ (1 << (at % 8)));
    write_file(path, flipped);
    auto journal = Journal::open(path, Access::read_only);
    if (!journal) continue;
    const auto v = verify(*journal);
    if (!v.clean()) continue;
    auto events = journal->read_from(0);
    if (!events || *events != truth) ++unseen_changes;
  }
  EXPECT_EQ(unseen_changes, 0);
}

TEST(Verify, AMissingEntryIsNamed) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 9);
  tamper(path, "DELETE FROM journal WHERE sequence IN (4, 5)");
  Journal journal = need(Journal::open(path));
  const auto v = verify(journal);
  EXPECT_TRUE(names(v, 4, "sequence")) << words(v);
  EXPECT_NE(words(v).find("entries 4 to 5 are missing"), std::string::npos);
  EXPECT_TRUE(names(v, 6, "previous_hash")) << words(v);
}

TEST(Verify, AMissingGuardIsNamed) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  a_journal(path, 1);
  plain_sql(path, "DROP TRIGGER journal_is_not_deleted; CREATE TABLE extra (a)");
  Journal journal = need(Journal::open(path));
  const auto v = verify(journal);
  EXPECT_NE(words(v).find("journal_is_not_deleted"), std::string::npos);
  EXPECT_NE(words(v).find("'extra' that does not belong here"), std::string::npos);
}

TEST(Verify, AnAlteredAttachmentIsNamed) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  std::string hash;
  {
    Journal journal = a_journal(path, 1);
    hash = need(journal.put_attachment(std::string(600000, 'p'))).hash;
  }
  const std::string whole = file_bytes(path);
  tamper(path, "UPDATE attachment_chunk SET bytes = zeroblob(262144) WHERE number = 1");
  {
    Journal journal = need(Journal::open(path));
    EXPECT_NE(words(verify(journal)).find(hash + ": its content was altered"), std::string::npos);
  }
  write_file(path, whole);
  tamper(path, "DELETE FROM attachment_chunk WHERE number = 1");
  {
    Journal journal = need(Journal::open(path));
    EXPECT_NE(words(verify(journal)).find("part 1 is missing"), std::string::npos);
  }
  write_file(path, whole);
  tamper(path, "UPDATE attachment SET size = size + 1");
  Journal journal = need(Journal::open(path));
  EXPECT_NE(words(verify(journal)).find("size was altered"), std::string::npos);
}

TEST(VerifyAgainst, ATailCutOffIsFoundOnlyByTheHeadThatWasPrinted) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  Head printed;
  Head early;
  {
    Journal journal = a_journal(path, 9);
    printed = journal.last();
    early = {5, need(journal.find("ev-5")).hash};
    EXPECT_TRUE(verify_against(journal, std::vector{early, printed}).clean());
  }
  tamper(path, "DELETE FROM journal WHERE sequence > 7");
  Journal journal = need(Journal::open(path));
  EXPECT_TRUE(verify(journal).clean()) << "the chain alone cannot show it";
  const auto v = verify_against(journal, std::vector{early, printed});
  ASSERT_EQ(v.findings.size(), 1U) << words(v);
  EXPECT_TRUE(names(v, 9, "head"));
  EXPECT_NE(words(v).find("tail was cut off"), std::string::npos);
  EXPECT_EQ(v.heads, 2);
}

TEST(VerifyAgainst, AHistoryRewrittenAsAWholeIsFoundByTheHeadThatWasPrinted) {
  TemporaryFolder folder;
  Head printed;
  {
    Journal journal = a_journal(folder / "a.binder", 5);
    printed = journal.last();
  }
  // The forger makes a fresh and perfectly linked chain in which entry 2 says something else.
  Journal forged = need(Journal::create(folder / "b.binder"));
  for (int i = 1; i <= 5; ++i)
    need(forged.append(an_event(i, i == 2 ? "{}" : R"({"text":"seen"})")));
  EXPECT_TRUE(verify(forged).clean());
  const auto v = verify_against(forged, std::vector{printed});
  EXPECT_TRUE(names(v, 5, "head")) << words(v);
  EXPECT_NE(words(v).find("altered"), std::string::npos);
}

TEST(VerifyAgainst, AShortenedHashIsEnoughButNotAStub) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder", 3);
  EXPECT_TRUE(verify_against(journal, std::vector{Head{3, journal.head().substr(0, 16)}}).clean());
  EXPECT_FALSE(verify_against(journal, std::vector{Head{3, journal.head().substr(0, 4)}}).clean());
  EXPECT_FALSE(verify_against(journal, std::vector{Head{0, journal.head()}}).clean());
}

TEST(ParseHead, ReadsWhatIsPrinted) {
  const Head head{128, std::string(60, 'a') + "01f9"};
  EXPECT_EQ(need(parse_head(format_head(head))), head);
  EXPECT_EQ(need(parse_head("7:00FFAA0011223344")), (Head{7, "00ffaa0011223344"}));
  for (const auto* text : {"", "7", "7:", ":00ffaa0011223344", "0:00ffaa0011223344", "7:00ff",
                           "7:00ffaa001122334g", "-1:00ffaa0011223344", "7 :00ffaa0011223344"}) {
    EXPECT_EQ(problem_of(parse_head(text)).kind, Kind::bad_text) << text;
  }
  EXPECT_FALSE(parse_head("7:" + std::string(65, 'a')));
}

}  // namespace
}  // namespace wm::record::test
