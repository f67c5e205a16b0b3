#include <algorithm>

#include "record/digest.hpp"
#include "record/journal.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

std::string picture(std::size_t size) {
  std::string bytes(size, '\0');
  std::uint32_t state = 7;
  for (char& byte : bytes) {
    state = state * 1664525U + 1013904223U;
    byte = static_cast<char>(state >> 24U);
  }
  return bytes;
}

TEST(Attachments, ComeBackByteForByte) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  for (const std::size_t size :
       {std::size_t{1}, k_chunk_size - 1, k_chunk_size, k_chunk_size + 1, 3 * k_chunk_size + 17}) {
    const std::string bytes = picture(size);
    const Attachment put = need(journal.put_attachment(bytes));
    EXPECT_EQ(put.hash, sha256_hex(bytes));
    EXPECT_EQ(put.size, static_cast<std::int64_t>(size));
    EXPECT_EQ(need(journal.get_attachment(put.hash)), bytes);
    EXPECT_EQ(need(journal.find_attachment(put.hash)), put);
  }
  EXPECT_EQ(need(journal.list_attachments()).size(), 5U);
}

TEST(Attachments, ASourceMayGiveSmallPieces) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  const std::string bytes = picture(1000);
  std::size_t at = 0;
  const auto put = need(journal.put_attachment([&](std::span<std::byte> into) {
    const std::size_t count = std::min<std::size_t>({7, into.size(), bytes.size() - at});
    std::ranges::copy(std::as_bytes(std::span(bytes)).subspan(at, count), into.begin());
    at += count;
    return count;
  }));
  EXPECT_EQ(need(journal.get_attachment(put.hash)), bytes);
}

TEST(Attachments, TheSameContentIsStoredOnce) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  const std::string bytes = picture(600000);
  need(journal.put_attachment(bytes));
  const auto size = std::filesystem::file_size(folder / "a.binder");
  need(journal.put_attachment(bytes));
  EXPECT_EQ(std::filesystem::file_size(folder / "a.binder"), size);
  EXPECT_EQ(need(journal.list_attachments()).size(), 1U);
}

TEST(Attachments, ProblemsAreNamed) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  EXPECT_EQ(problem_of(journal.put_attachment("")).kind, Kind::missing);
  EXPECT_EQ(problem_of(journal.put_attachment(picture(101), 100)).kind, Kind::out_of_bounds);
  EXPECT_TRUE(journal.put_attachment(picture(100), 100));
  const std::string nothing(64, 'a');
  EXPECT_EQ(problem_of(journal.get_attachment(nothing)).kind, Kind::not_found);
  EXPECT_EQ(problem_of(journal.find_attachment(nothing)).kind, Kind::not_found);
  const auto put = need(journal.put_attachment(picture(2 * k_chunk_size)));
  int chunks = 0;
  EXPECT_EQ(problem_of(journal.get_attachment(put.hash,
                                              [&](std::span<const std::byte>) {
                                                ++chunks;
                                                return false;
                                              }))
                .kind,
            Kind::stopped);
  EXPECT_EQ(chunks, 1);
}

TEST(Attachments, NobodyIsLockedOutWhileTheSourceIsSlow) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  Journal other = need(Journal::open(folder / "a.binder"));
  int asked = 0;
  need(journal.put_attachment([&](std::span<std::byte> into) {
    if (asked++ == 3) return std::size_t{0};
    need(other.append(an_event(asked)));
    into[0] = std::byte{42};
    return std::size_t{1};
  }));
  EXPECT_EQ(other.last_sequence(), 3);
}

TEST(Attachments, AlteredContentIsNotPassedOff) {
  TemporaryFolder folder;
  const auto path = folder / "a.binder";
  std::string hash;
  {
    Journal journal = a_journal(path);
    hash = need(journal.put_attachment(picture(1000))).hash;
  }
  EXPECT_NE(plain_sql(path, "UPDATE attachment_chunk SET bytes = x'00'"), "");
  EXPECT_NE(plain_sql(path, "DELETE FROM attachment"), "");
  EXPECT_NE(plain_sql(path, "DELETE FROM attachment_chunk"), "");
  EXPECT_NE(plain_sql(path, "REPLACE INTO attachment SELECT hash, 1, 1 FROM attachment"), "");
  EXPECT_NE(plain_sql(path, "REPLACE INTO attachment_chunk SELECT hash, 0, x'00' FROM attachment"),
            "");
  tamper(path, "UPDATE attachment_chunk SET bytes = zeroblob(1000)");
  Journal journal = need(Journal::open(path));
  EXPECT_EQ(problem_of(journal.get_attachment(hash)).kind, Kind::damaged);
}

}  // namespace
}  // namespace wm::record::test
