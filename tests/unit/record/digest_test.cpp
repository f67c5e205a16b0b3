#include "record/digest.hpp"

#include <gtest/gtest.h>

#include <string>

#include "record/detail/row_hash.hpp"
#include "support/reference_case.hpp"

namespace wm::record {
namespace {

using wm::test::check_text;

std::string raw_of_hex(const std::string& hex) {
  std::string bytes;
  for (std::size_t i = 0; i < hex.size(); i += 2) {
    bytes.push_back(static_cast<char>(std::stoi(hex.substr(i, 2), nullptr, 16)));
  }
  return bytes;
}

// Source: FIPS 180-2 (2002-08-01), appendix B.1, B.2 and B.3: "abc", the two-block message and one
// million letters a; the empty message from the CAVP short-message vectors (SHA256ShortMsg, Len =
// 0). All from memory, and agreeing with Python's hashlib. Tolerance: none, every digit counts.
TEST(Sha256Digest, PublishedVectors) {
  const std::string source = "FIPS 180-2 appendix B; CAVP SHA256ShortMsg (from memory)";
  check_text("record", "SHA-256 of 'abc'", source,
             "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", sha256_hex("abc"));
  check_text("record", "SHA-256 of nothing", source,
             "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", sha256_hex(""));
  check_text("record", "SHA-256 of two blocks", source,
             "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
             sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"));
  check_text("record", "SHA-256 of one million a", source,
             "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
             sha256_hex(std::string(1000000, 'a')));
}

// Source: reference notes of the project, rules and records, section 12 (derived there by
// computation): a simple chain h0 = 32 zero bytes, h(i) = SHA-256(h(i-1) followed by the bytes),
// and the leaf and node hashes of RFC 6962 section 2.1 for the same function.
TEST(Sha256Digest, ChainValuesOfTheReferenceNotes) {
  const std::string source = "reference notes, rules-records section 12 (computed)";
  const std::string h1 = sha256_hex(std::string(32, '\0') + "entry-1");
  const std::string h2 = sha256_hex(raw_of_hex(h1) + "entry-2");
  check_text("record", "simple chain, first", source,
             "98d713bc4f854d52f4509656520f6d6505c73b76d08cca557431573d7803a4a7", h1);
  check_text("record", "simple chain, second", source,
             "cecff1ca89897afdbd82b637d451d099655c6dade29fc593042cfe40044813f6", h2);
  const std::string zero(1, '\0');
  const auto leaf = [&](const std::string& bytes) { return sha256_hex(zero + bytes); };
  const auto node = [](const std::string& left, const std::string& right) {
    return sha256_hex("\x01" + raw_of_hex(left) + raw_of_hex(right));
  };
  check_text("record", "RFC 6962 leaf of nothing", source,
             "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d", leaf(""));
  check_text("record", "RFC 6962 tree of A, B", source,
             "ed692f01f7f6c46930d7ad8f9adad3f9f38b7379cf6a8d2f399a0ba1e914fe25",
             node(leaf("A"), leaf("B")));
  check_text("record", "RFC 6962 tree of A, B, C", source,
             "961d2e2be20f538ffdf56962a86d1bd165498f222684ee4c5e02c1e9f852adc5",
             node(node(leaf("A"), leaf("B")), leaf("C")));
}

TEST(Sha256Digest, PiecesGiveTheSameAsTheWhole) {
  Sha256 digest;
  digest.add("a");
  digest.add("");
  digest.add("bc");
  EXPECT_EQ(digest.finish_hex(), sha256_hex("abc"));
  digest.add("abc");
  EXPECT_EQ(digest.finish_hex(), sha256_hex("abc")) << "it starts afresh";
}

// Source: CRC-32 check value of the nine digits, cbf43926 (ISO/IEC 13239 polynomial as in zlib;
// from memory).
TEST(RowHash, ColumnMarkIsTheUsualCrc32) {
  check_text("record", "CRC-32 of '123456789'", "CRC-32 check value (from memory)", "cbf43926",
             detail::column_mark("123456789"));
  EXPECT_EQ(detail::column_mark(""), "00000000");
}

// Expected values computed with Python 3: hashlib, zlib and struct.pack('>Q', len(x)) + x.
TEST(RowHash, TwoLinksOfAChainAsAnotherToolComputesThem) {
  const std::string zeros(64, '0');
  const detail::HashedText first{zeros,
                                 "1",
                                 "ev-1",
                                 "counter-read",
                                 "1",
                                 "2026-11-25",
                                 "2026-11-25T18:04:31Z",
                                 "M. Example",
                                 "bench laptop",
                                 "",
                                 R"({"hours":"1140.0"})"};
  const std::string h1 = detail::row_hash(first);
  check_text("record", "journal row 1", "Python 3 hashlib",
             "7804773d827d443223dff98ecf2ba42591cef600312859a70413e3f1e6dac7d1", h1);
  EXPECT_EQ(detail::row_marks(first),
            "34b1e4cb83dcefb70c34961a54c82baf83dcefb7495463329d90ef4c07b6a27ca98ff22a00000000"
            "8b70a1c5");
  const detail::HashedText second{h1,
                                  "2",
                                  "ev-2",
                                  "note",
                                  "2",
                                  "2026-11-25T10:00:00+01:00",
                                  "2026-11-25T18:05:00Z",
                                  "M. Example",
                                  "bench laptop",
                                  "ev-1",
                                  "{\"text\":\"\xc2\xb5 \xe2\x84\xa6\"}"};
  check_text("record", "journal row 2", "Python 3 hashlib",
             "663a2146a42ee40fbf76d93d4053620db1b62333a9d061e58d4944db4cfa2046",
             detail::row_hash(second));
}

TEST(RowHash, EncodingBeginsWithTheLengthHighestByteFirst) {
  std::string bytes;
  detail::encode_row({"ab", "1", "", "", "", "", "", "", "", "", std::string(258, 'x')}, bytes);
  EXPECT_EQ(bytes.substr(0, 10), std::string("\0\0\0\0\0\0\0\x02"
                                             "ab",
                                             10));
  EXPECT_EQ(bytes.size(), 11U * 8 + 2 + 1 + 258);
  EXPECT_EQ(bytes.substr(bytes.size() - 266, 8), std::string("\0\0\0\0\0\0\x01\x02", 8));
}

}  // namespace
}  // namespace wm::record
