#include "record/verify.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

#include <fmt/format.h>

#include "record/detail/checks.hpp"
#include "record/detail/database.hpp"
#include "record/detail/row_hash.hpp"
#include "record/detail/schema.hpp"
#include "record/detail/store.hpp"
#include "record/detail/trouble.hpp"
#include "record/digest.hpp"

namespace wm::record {
namespace {

using detail::Statement;
using detail::Store;

constexpr std::size_t k_columns = detail::k_hashed_columns.size();
constexpr std::size_t k_previous = 0;
constexpr std::size_t k_sequence = 1;

/// A row as it lies in the file, damaged or not.
struct Row {
  std::array<std::string, k_columns> values;  ///< in the order of k_hashed_columns
  std::string hash, marks;
  std::int64_t sequence{};
  std::string wrong_type;  ///< a column that does not even hold the right sort of value

  [[nodiscard]] detail::HashedText text() const {
    detail::HashedText views;
    std::ranges::copy(values, views.begin());
    return views;
  }
};

Row row_at(const Statement& select) {
  Row row;
  for (std::size_t i = 0; i < k_columns; ++i) {
    const int column = static_cast<int>(i);
    const bool number =
        detail::k_hashed_columns[i] == "sequence" || detail::k_hashed_columns[i] == "version";
    row.values[i] =
        number ? std::to_string(select.integer(column)) : std::string(select.text(column));
    const bool right = number ? select.is_integer(column) : select.is_text(column);
    if (!right) row.wrong_type = detail::k_hashed_columns[i];
  }
  row.hash = select.text(k_columns);
  row.marks = select.text(k_columns + 1);
  row.sequence = select.integer(k_sequence);
  return row;
}

/// Walks the chain and remembers what the row before said.
class Walk {
 public:
  Walk(Verification& into, std::span<const Head> heads) : into_(into), heads_(heads) {}

  void visit(const Row& row) {
    ++into_.events;
    const std::string actual = detail::row_hash(row.text());
    const std::vector<std::string> altered = columns_off_their_marks(row);
    const std::int64_t number = place(row, altered);
    if (!row.wrong_type.empty()) {
      find(number, row.wrong_type, "holds a value of the wrong sort");
    }
    if (actual == row.hash) {
      agreeing(row, altered, number);
    } else {
      disagreeing(row, altered, number);
    }
    compare_heads(row, number);
    stored_hash_ = row.hash;
    actual_hash_ = actual;
    expected_ = number + 1;
    into_.head = row.hash;
  }

  [[nodiscard]] std::int64_t last() const { return expected_ - 1; }

 private:
  void find(std::int64_t sequence, std::string column, std::string what) {
    into_.findings.push_back({sequence, std::move(column), std::move(what)});
  }

  static std::vector<std::string> columns_off_their_marks(const Row& row) {
    std::vector<std::string> altered;
    if (row.marks.size() != 8 * k_columns) return altered;
    for (std::size_t i = 0; i < k_columns; ++i) {
      if (detail::column_mark(row.values[i]) != std::string_view(row.marks).substr(8 * i, 8)) {
        altered.emplace_back(detail::k_hashed_columns[i]);
      }
    }
    return altered;
  }

  /// The number that this row should have; a gap in the numbers is a finding.
  std::int64_t place(const Row& row, const std::vector<std::string>& altered) {
    if (row.sequence == expected_) return expected_;
    // Its own number was altered: it stands where it is expected, under another number.
    if (std::ranges::find(altered, "sequence") != altered.end()) return expected_;
    if (row.sequence > expected_) {
      find(expected_, "sequence",
           row.sequence == expected_ + 1
               ? fmt::format("entry {} is missing", expected_)
               : fmt::format("entries {} to {} are missing", expected_, row.sequence - 1));
    } else {
      find(row.sequence, "sequence",
           fmt::format("entry {} stands where {} was expected", row.sequence, expected_));
    }
    return row.sequence;
  }

  /// The row agrees with its own hash.
  void agreeing(const Row& row, const std::vector<std::string>& altered, std::int64_t number) {
    if (!altered.empty() || row.marks.size() != 8 * k_columns) {
      find(number, "marks",
           "the marks of the columns were altered; the entry itself agrees with its hash");
    }
    if (row.values[k_previous] != stored_hash_ && row.values[k_previous] != actual_hash_) {
      find(number, "previous_hash", "the entry does not follow the one before it");
    }
  }

  void disagreeing(const Row& row, const std::vector<std::string>& altered, std::int64_t number) {
    if (altered.empty()) {
      find(number, "hash",
           row.marks.size() == 8 * k_columns
               ? "the stored hash does not agree with the entry, whose columns agree with their "
                 "marks: the hash was altered, or an entry and its marks together"
               : "the stored hash does not agree with the entry");
    }
    for (const std::string& column : altered) {
      find(number, column,
           column == "sequence" ? fmt::format("altered: it says {}", row.sequence)
                                : std::string("altered since the entry was made"));
    }
  }

  void compare_heads(const Row& row, std::int64_t number) {
    for (const Head& head : heads_) {
      if (head.sequence != number) continue;
      if (head.hash.size() < 16 || !row.hash.starts_with(head.hash)) {
        find(number, "head",
             fmt::format("entry {} was printed or signed with the head {}, the record has {}: the "
                         "history up to this entry was altered",
                         number, head.hash, row.hash));
      }
    }
  }

  Verification& into_;
  std::span<const Head> heads_;
  std::int64_t expected_{1};
  std::string stored_hash_{hash_before_first()};
  std::string actual_hash_{hash_before_first()};
};

void verify_chain(Store& store, Verification& into, std::span<const Head> heads) {
  constexpr int k_page = 512;
  into.head = hash_before_first();
  into.heads = static_cast<std::int64_t>(heads.size());
  Walk walk(into, heads);
  auto select = store.database.prepare(
      "SELECT previous_hash, sequence, id, kind, version, happened, recorded, author, device, "
      "refers_to, body, hash, marks FROM journal WHERE sequence > ?1 ORDER BY sequence LIMIT ?2");
  // Page by page, so that nobody who wants to write has to wait for the whole of it.
  std::optional<std::int64_t> after;
  for (bool more = true; more;) {
    int count = 0;
    const detail::Reset reset(select);
    select.bind(1, after.value_or(INT64_MIN)).bind(2, std::int64_t{k_page});
    while (select.step()) {
      const Row row = row_at(select);
      walk.visit(row);
      ++count;
      // In a damaged file the numbers may not rise; never go back, or this would not end.
      after = std::max(row.sequence, after.value_or(INT64_MIN));
    }
    more = count == k_page;
  }
  for (const Head& head : heads) {
    if (head.sequence > walk.last()) {
      into.findings.push_back(
          {head.sequence, "head",
           fmt::format("entry {} was printed or signed, but the record ends at {}: its tail was "
                       "cut off",
                       head.sequence, walk.last())});
    } else if (head.sequence < 1) {
      into.findings.push_back({head.sequence, "head", "there is no such entry number"});
    }
  }
}

void verify_attachment(Store& store, const std::string& hash, std::int64_t size,
                       std::int64_t chunks, Verification& into) {
  auto select = store.database.prepare(
      "SELECT number, bytes FROM attachment_chunk WHERE hash = ?1 AND number >= ?2 "
      "ORDER BY number LIMIT 1");
  Sha256 digest;
  std::int64_t bytes = 0;
  std::int64_t number = 0;
  for (; number < chunks; ++number) {
    const detail::Reset reset(select);
    if (!select.bind(1, hash).bind(2, number).step() || select.integer(0) != number) {
      into.findings.push_back(
          {0, "attachment", fmt::format("attachment {}: part {} is missing", hash, number)});
      return;
    }
    bytes += static_cast<std::int64_t>(select.text(1).size());
    digest.add(select.text(1));
  }
  if (digest.finish_hex() != hash) {
    into.findings.push_back(
        {0, "attachment", fmt::format("attachment {}: its content was altered", hash)});
  } else if (bytes != size) {
    into.findings.push_back(
        {0, "attachment", fmt::format("attachment {}: its stored size was altered", hash)});
  }
}

void verify_attachments(Store& store, Verification& into) {
  if (!store.has_attachments()) return;
  std::string after;
  auto next = store.database.prepare(
      "SELECT hash, size, chunks FROM attachment WHERE hash > ?1 ORDER BY hash LIMIT 1");
  while (true) {
    std::int64_t size = 0;
    std::int64_t chunks = 0;
    {
      const detail::Reset reset(next);
      std::string key = after;
      if (!next.bind(1, key).step()) break;
      after = next.text(0);
      size = next.integer(1);
      chunks = next.integer(2);
      // An index in disorder could lead back; the integrity check reports it.
      if (after <= key) break;
    }
    ++into.attachments;
    verify_attachment(store, after, size, chunks, into);
  }
}

void verify_schema(Store& store, Verification& into) {
  const auto expected = detail::schema_expected(store.schema);
  const auto found = detail::schema_found(store.database);
  for (const auto& object : expected) {
    if (std::ranges::find(found, object) == found.end()) {
      into.findings.push_back(
          {0, "", fmt::format("the {} '{}' is missing or was altered", object.type, object.name)});
    }
  }
  for (const auto& object : found) {
    const bool known = std::ranges::any_of(
        expected, [&](const auto& e) { return e.type == object.type && e.name == object.name; });
    // Statistics tables that SQLite's own tools leave behind do no harm.
    if (!known && !object.name.starts_with("sqlite_stat")) {
      into.findings.push_back(
          {0, "",
           fmt::format("there is a {} '{}' that does not belong here", object.type, object.name)});
    }
  }
}

void verify_file(Store& store, Verification& into) {
  auto check = store.database.prepare("PRAGMA integrity_check(50)");
  while (check.step()) {
    if (check.text(0) != "ok") {
      into.findings.push_back({0, "", fmt::format("SQLite: {}", check.text(0))});
    }
  }
}

/// Damage is what we look for, so SQLite's complaint about it is a finding too.
template <class Look>
void look(Store& store, Verification& into, std::string_view at, const Look& part) {
  try {
    part();
  } catch (const detail::Trouble& trouble) {
    const auto problem = detail::as_problem(trouble, store.path);
    if (!problem || problem->kind != Kind::damaged) throw detail::as_broken(trouble, store.path);
    into.findings.push_back(
        {0, "", fmt::format("{} cannot be read to the end: {}", at, trouble.what())});
  }
}

}  // namespace

Verification verify(Journal& journal) { return verify_against(journal, {}); }

Verification verify_against(Journal& journal, std::span<const Head> heads) {
  Store& store = journal.inside();
  Verification result;
  look(store, result, "the entries", [&] { verify_chain(store, result, heads); });
  look(store, result, "the attachments", [&] { verify_attachments(store, result); });
  look(store, result, "the schema", [&] { verify_schema(store, result); });
  look(store, result, "the file", [&] { verify_file(store, result); });
  return result;
}

Result<Head> parse_head(std::string_view text) {
  const auto wrong = [&] {
    return Fail(Kind::bad_text, fmt::format("'{}' is not a printed head", text),
                "entry number, colon, 16 to 64 hex digits", "128:9f3c5a1e00b27d46");
  };
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) return wrong();
  Head head;
  const auto [end, error] = std::from_chars(text.data(), text.data() + colon, head.sequence);
  if (error != std::errc() || end != text.data() + colon || head.sequence < 1) return wrong();
  head.hash = text.substr(colon + 1);
  if (head.hash.size() < 16 || head.hash.size() > 64) return wrong();
  for (char& c : head.hash) {
    if (c >= 'A' && c <= 'F') c = static_cast<char>(c - 'A' + 'a');
    if ((c < '0' || c > '9') && (c < 'a' || c > 'f')) return wrong();
  }
  return head;
}

std::string format_head(const Head& head) { return fmt::format("{}:{}", head.sequence, head.hash); }

}  // namespace wm::record
