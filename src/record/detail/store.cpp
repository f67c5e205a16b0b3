#include "record/detail/store.hpp"

#include <memory>

#include <fmt/format.h>

#include "record/broken.hpp"
#include "record/detail/folder.hpp"
#include "record/detail/schema.hpp"
#include "record/detail/trouble.hpp"

namespace wm::record::detail {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view k_select =
    "SELECT sequence, id, kind, version, happened, recorded, author, device, refers_to, body, "
    "previous_hash, hash FROM journal ";

void prepare_statements(Store& store) {
  const std::string select(k_select);
  store.last =
      store.database.prepare("SELECT sequence, hash FROM journal ORDER BY sequence DESC LIMIT 1");
  store.by_id = store.database.prepare(select + "WHERE id = ?1");
  store.page = store.database.prepare(select + "WHERE sequence > ?1 ORDER BY sequence LIMIT ?2");
  store.insert = store.database.prepare(
      "INSERT INTO journal (sequence, id, kind, version, happened, recorded, author, device, "
      "refers_to, body, previous_hash, hash, marks) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)");
}

std::optional<Problem> wrong_with_contents(const Database& database, const fs::path& path) {
  const std::string name = path.filename().string();
  const auto say = [&](Kind kind, std::string what, std::string do_next) {
    return Problem{kind,
                   {},
                   fmt::format("{}: {}", name, what),
                   "a binder file of this program",
                   {},
                   std::move(do_next),
                   {}};
  };
  const std::int64_t pages = database.integer("PRAGMA page_count");
  if (pages == 0) {
    return say(Kind::damaged, "the file is empty; its making was perhaps cut off",
               "delete the empty file and make the binder again, or take the latest copy");
  }
  if (database.integer("PRAGMA application_id") != k_application_id) {
    return say(Kind::bad_text, "not a binder; the file belongs to another program",
               "check the name; to make a new binder choose a name that is not in use");
  }
  const std::int64_t version = database.integer("PRAGMA user_version");
  if (version > current_schema()) {
    return say(Kind::not_applicable,
               fmt::format("written by a newer version of this program (file schema {}, known up "
                           "to {})",
                           version, current_schema()),
               "open it with the newer version; nothing was changed");
  }
  const std::int64_t size = database.file_size();
  const std::int64_t needed = pages * database.integer("PRAGMA page_size");
  if (size < needed) {
    return say(Kind::damaged, fmt::format("truncated: {} bytes of {} are there", size, needed),
               "keep this file as it is and go on with the latest copy");
  }
  if (version < 1 || database.integer("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND "
                                      "name = 'journal'") != 1) {
    return say(Kind::damaged, "the table of entries is missing",
               "keep this file as it is and go on with the latest copy");
  }
  return std::nullopt;
}

std::unique_ptr<Store> make_store(const fs::path& path, Access access, const Tuning& tuning,
                                  Database database) {
  auto store = std::make_unique<Store>();
  store->path = path;
  store->access = access;
  store->tuning = tuning;
  store->database = std::move(database);
  store->schema = static_cast<int>(store->database.integer("PRAGMA user_version"));
  prepare_statements(*store);
  return store;
}

}  // namespace

bool Store::has_attachments() const { return schema >= k_schema_with_attachments; }

Database connect(const fs::path& path, Access access, const Tuning& tuning) {
  if (!syncs_folders()) {
    throw Broken(Fault::other,
                 "this SQLite library was built without the syncing of folders; a power cut could "
                 "lose entries",
                 "use a SQLite library that syncs folders, as Debian's does");
  }
  Database database(path, access == Access::read_write, tuning.vfs);
  database.wait_at_most(tuning.patience_ms);
  database.execute("PRAGMA mmap_size = 0");
  database.execute("PRAGMA cell_size_check = ON");
  switch (tuning.sync) {
    case Sync::off:
      database.execute("PRAGMA synchronous = OFF");
      break;
    case Sync::full:
      database.execute("PRAGMA synchronous = FULL");
      break;
    // In DELETE mode only EXTRA syncs the folder after the safety file was removed; without that a
    // power cut can bring the file back, and with it the state before the commit.
    case Sync::extra:
      database.execute("PRAGMA synchronous = EXTRA");
      break;
  }
  return database;
}

Result<Journal> create_journal(const fs::path& path, const Tuning& tuning) {
  return guarded(path, [&]() -> Result<Journal> {
    if (auto problem = wrong_with_folder(path)) return Fail(*std::move(problem));
    if (is_taken(path) || !make_new_file(path, tuning.vfs)) return Fail(why_not_made(path));
    try {
      Database database = connect(path, Access::read_write, tuning);
      bring_up_to_date(database);
      if (tuning.sync == Sync::extra) sync_folder(folder_of(path));
      return Journal(make_store(path, Access::read_write, tuning, std::move(database)));
    } catch (...) {
      remove_file(path, tuning.vfs);
      throw;
    }
  });
}

Result<Journal> open_journal(const fs::path& path, Access access, const Tuning& tuning) {
  return guarded(path, [&]() -> Result<Journal> {
    Database database;
    try {
      database = connect(path, access, tuning);
    } catch (const Trouble& trouble) {
      if (cannot_open(trouble)) return Fail(why_not_opened(path));
      throw;
    }
    const bool writing = access == Access::read_write;
    if (writing && database.is_write_protected()) {
      return Fail({Kind::refused,
                   {},
                   fmt::format("{}: the file is write-protected", path.string()),
                   "a file that may be written",
                   {},
                   "allow writing to the file, or open it read-only",
                   {}});
    }
    if (writing) {
      if (auto problem = wrong_with_folder(path)) return Fail(*std::move(problem));
    }
    // One read transaction for all questions: no writer can be half-way between two of them.
    database.execute("BEGIN");
    if (auto problem = wrong_with_contents(database, path)) return Fail(*std::move(problem));
    database.execute("COMMIT");
    if (writing) {
      // Another tool may have switched the file to another way of committing; ours is one file.
      const std::string mode = database.text("PRAGMA journal_mode = DELETE");
      if (mode != "delete") {
        return Fail(
            {Kind::conflict,
             {},
             fmt::format("{}: another program keeps it open in mode '{}'", path.string(), mode),
             "the binder closed by other tools",
             {},
             "close the other program and try again",
             {}});
      }
      if (database.integer("PRAGMA user_version") < current_schema()) bring_up_to_date(database);
    }
    return Journal(make_store(path, access, tuning, std::move(database)));
  });
}

StoredEvent event_at(const Statement& row) {
  StoredEvent event;
  event.sequence = row.integer(0);
  event.id = row.text(1);
  event.kind = row.text(2);
  event.version = static_cast<int>(row.integer(3));
  event.happened = row.text(4);
  event.recorded = row.text(5);
  event.author = row.text(6);
  event.device = row.text(7);
  event.refers_to = row.text(8);
  event.body = row.text(9);
  event.previous_hash = row.text(10);
  event.hash = row.text(11);
  return event;
}

Head last_of(Store& store) {
  const Reset reset(store.last);
  if (!store.last.step()) return {0, hash_before_first()};
  return {store.last.integer(0), std::string(store.last.text(1))};
}

std::optional<StoredEvent> stored_by_id(Store& store, std::string_view id) {
  const Reset reset(store.by_id);
  if (!store.by_id.bind(1, id).step()) return std::nullopt;
  return event_at(store.by_id);
}

Problem opened_read_only(const fs::path& path) {
  return {Kind::refused,
          {},
          fmt::format("{}: the binder was opened for reading only", path.string()),
          "a binder opened for writing",
          {},
          "open it for writing",
          {}};
}

}  // namespace wm::record::detail
