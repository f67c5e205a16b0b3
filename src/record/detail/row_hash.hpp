#pragma once
/// What is hashed of a row, byte for byte (docs/method/journal.md).

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace wm::record::detail {

/// The hashed columns, in the order in which they are hashed.
inline constexpr std::array<std::string_view, 11> k_hashed_columns{
    "previous_hash", "sequence", "id",     "kind",      "version", "happened",
    "recorded",      "author",   "device", "refers_to", "body"};

/// Their values as text (numbers in decimal).
using HashedText = std::array<std::string_view, k_hashed_columns.size()>;

/// For each value its length in bytes as 8 bytes, highest first, and then its bytes.
void encode_row(const HashedText& row, std::string& into);

/// SHA-256 of encode_row, lower-case hex.
[[nodiscard]] std::string row_hash(const HashedText& row);

/// CRC-32 of one value as 8 lower-case hex digits. It proves nothing; it only tells in which column
/// of a damaged row to look.
/// @source ISO/IEC 13239 CRC-32 as in zlib; check value of "123456789" is cbf43926.
[[nodiscard]] std::string column_mark(std::string_view value);

/// The marks of all hashed columns, one behind the other: 88 digits.
[[nodiscard]] std::string row_marks(const HashedText& row);

}  // namespace wm::record::detail
