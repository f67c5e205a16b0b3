#include "record/detail/row_hash.hpp"

#include <zlib.h>

#include "record/digest.hpp"

namespace wm::record::detail {
namespace {

void add_mark(std::string_view value, std::string& into) {
  constexpr std::string_view digits = "0123456789abcdef";
  const auto crc = crc32_z(0, reinterpret_cast<const Bytef*>(value.data()), value.size());
  for (int shift = 28; shift >= 0; shift -= 4) {
    into.push_back(digits[(crc >> static_cast<unsigned>(shift)) & 15U]);
  }
}

}  // namespace

void encode_row(const HashedText& row, std::string& into) {
  into.clear();
  for (const std::string_view value : row) {
    const std::uint64_t size = value.size();
    for (int shift = 56; shift >= 0; shift -= 8) {
      into.push_back(static_cast<char>((size >> static_cast<unsigned>(shift)) & 0xffU));
    }
    into.append(value);
  }
}

std::string row_hash(const HashedText& row) {
  std::string bytes;
  encode_row(row, bytes);
  return sha256_hex(bytes);
}

std::string column_mark(std::string_view value) {
  std::string mark;
  add_mark(value, mark);
  return mark;
}

std::string row_marks(const HashedText& row) {
  std::string marks;
  marks.reserve(8 * row.size());
  for (const std::string_view value : row) add_mark(value, marks);
  return marks;
}

}  // namespace wm::record::detail
