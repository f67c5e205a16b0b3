#include "record/detail/schema.hpp"

#include <array>

#include <fmt/format.h>

namespace wm::record::detail {
namespace {

// Version 1: the journal. REPLACE would delete a row without asking the delete trigger, so the
// insert trigger refuses anything but the next link of the chain.
constexpr std::string_view k_journal = R"sql(
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
)sql";

// Version 2: attachments, named by their content. Chunks come first; the row in `attachment` makes
// them whole, and from then on no chunk can be added.
constexpr std::string_view k_attachments = R"sql(
CREATE TABLE attachment (
  hash TEXT PRIMARY KEY NOT NULL,
  size INTEGER NOT NULL,
  chunks INTEGER NOT NULL
) STRICT;
CREATE TABLE attachment_chunk (
  hash TEXT NOT NULL,
  number INTEGER NOT NULL,
  bytes BLOB NOT NULL,
  PRIMARY KEY (hash, number)
) STRICT;
CREATE TRIGGER attachment_is_not_replaced BEFORE INSERT ON attachment
WHEN EXISTS (SELECT 1 FROM attachment WHERE hash = NEW.hash)
BEGIN SELECT RAISE(ABORT, 'an attachment is never replaced'); END;
CREATE TRIGGER attachment_is_not_changed BEFORE UPDATE ON attachment
BEGIN SELECT RAISE(ABORT, 'an attachment is never changed'); END;
CREATE TRIGGER attachment_is_not_deleted BEFORE DELETE ON attachment
BEGIN SELECT RAISE(ABORT, 'an attachment is never deleted'); END;
CREATE TRIGGER attachment_chunk_is_not_replaced BEFORE INSERT ON attachment_chunk
WHEN EXISTS (SELECT 1 FROM attachment WHERE hash = NEW.hash)
  OR EXISTS (SELECT 1 FROM attachment_chunk WHERE hash = NEW.hash AND number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'an attachment is never replaced'); END;
CREATE TRIGGER attachment_chunk_is_not_changed BEFORE UPDATE ON attachment_chunk
BEGIN SELECT RAISE(ABORT, 'an attachment is never changed'); END;
CREATE TRIGGER attachment_chunk_is_not_deleted BEFORE DELETE ON attachment_chunk
BEGIN SELECT RAISE(ABORT, 'an attachment is never deleted'); END;
)sql";

constexpr std::array k_steps{k_journal, k_attachments};

}  // namespace

std::span<const std::string_view> schema_steps() { return k_steps; }

int current_schema() { return static_cast<int>(k_steps.size()); }

void bring_up_to_date(const Database& database) {
  Transaction transaction(database);
  // Asked inside the transaction: another process may just have done it.
  const auto version = static_cast<std::size_t>(database.integer("PRAGMA user_version"));
  if (version >= k_steps.size()) return;
  for (std::size_t step = version; step < k_steps.size(); ++step) {
    database.execute(std::string(k_steps.at(step)));
  }
  database.execute(fmt::format("PRAGMA application_id = {}", k_application_id));
  database.execute(fmt::format("PRAGMA user_version = {}", k_steps.size()));
  transaction.commit();
}

std::vector<SchemaObject> schema_found(const Database& database) {
  Statement select = database.prepare(
      "SELECT type, name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name");
  std::vector<SchemaObject> objects;
  while (select.step()) {
    objects.push_back(
        {std::string(select.text(0)), std::string(select.text(1)), std::string(select.text(2))});
  }
  return objects;
}

std::vector<SchemaObject> schema_expected(int version) {
  const Database scratch(":memory:", true, {});
  for (int step = 0; step < version; ++step) {
    scratch.execute(std::string(k_steps.at(static_cast<std::size_t>(step))));
  }
  return schema_found(scratch);
}

}  // namespace wm::record::detail
