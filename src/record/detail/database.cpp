#include "record/detail/database.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <new>
#include <utility>
#include <vector>

#include <sqlite3.h>

namespace wm::record::detail {
namespace {

[[noreturn]] void raise(sqlite3* database, int code) {
  if (database == nullptr) throw Trouble(code, sqlite3_errstr(code));
  const int extended = sqlite3_extended_errcode(database);
  const bool same = (extended & 0xff) == (code & 0xff);
  throw Trouble(same ? extended : code, same ? sqlite3_errmsg(database) : sqlite3_errstr(code));
}

void check(sqlite3* database, int code) {
  if (code != SQLITE_OK) raise(database, code);
}

const char* name_or_default(const std::string& vfs) { return vfs.empty() ? nullptr : vfs.c_str(); }

}  // namespace

Statement::Statement(sqlite3* database, std::string_view sql) {
  check(database, sqlite3_prepare_v3(database, sql.data(), static_cast<int>(sql.size()),
                                     SQLITE_PREPARE_PERSISTENT, &statement_, nullptr));
}

Statement::~Statement() { sqlite3_finalize(statement_); }

Statement::Statement(Statement&& other) noexcept
    : statement_(std::exchange(other.statement_, nullptr)) {}

Statement& Statement::operator=(Statement&& other) noexcept {
  std::swap(statement_, other.statement_);
  return *this;
}

Statement& Statement::bind(int place, std::int64_t value) {
  check(sqlite3_db_handle(statement_), sqlite3_bind_int64(statement_, place, value));
  return *this;
}

Statement& Statement::bind(int place, std::string_view text) {
  // An empty view may have no address, which SQLite would store as NULL.
  const char* bytes = text.empty() ? "" : text.data();
  check(sqlite3_db_handle(statement_),
        sqlite3_bind_text64(statement_, place, bytes, text.size(), SQLITE_STATIC, SQLITE_UTF8));
  return *this;
}

Statement& Statement::bind_blob(int place, std::span<const std::byte> bytes) {
  check(sqlite3_db_handle(statement_),
        sqlite3_bind_blob64(statement_, place, bytes.data(), bytes.size(), SQLITE_STATIC));
  return *this;
}

bool Statement::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) {
    sqlite3_reset(statement_);
    return false;
  }
  sqlite3* database = sqlite3_db_handle(statement_);
  const Trouble trouble(sqlite3_extended_errcode(database), sqlite3_errmsg(database));
  sqlite3_reset(statement_);
  throw trouble;
}

void Statement::run() {
  while (step()) {
  }
}

void Statement::reset() noexcept { sqlite3_reset(statement_); }

std::int64_t Statement::integer(int column) const {
  return sqlite3_column_int64(statement_, column);
}

std::string_view Statement::text(int column) const {
  const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement_, column));
  const int size = sqlite3_column_bytes(statement_, column);
  if (bytes == nullptr && size > 0) throw std::bad_alloc();
  return bytes == nullptr ? std::string_view()
                          : std::string_view(bytes, static_cast<std::size_t>(size));
}

bool Statement::is_text(int column) const {
  return sqlite3_column_type(statement_, column) == SQLITE_TEXT;
}

bool Statement::is_integer(int column) const {
  return sqlite3_column_type(statement_, column) == SQLITE_INTEGER;
}

Database::Database(const std::filesystem::path& path, bool writable, const std::string& vfs) {
  const int flags = (writable ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READONLY) |
                    SQLITE_OPEN_FULLMUTEX | SQLITE_OPEN_EXRESCODE;
  const int code = sqlite3_open_v2(path.c_str(), &database_, flags, name_or_default(vfs));
  if (code != SQLITE_OK) {
    const Trouble trouble(database_ != nullptr ? sqlite3_extended_errcode(database_) : code,
                          database_ != nullptr ? sqlite3_errmsg(database_) : "no memory left");
    sqlite3_close_v2(database_);
    database_ = nullptr;
    throw trouble;
  }
  // A binder may come from anywhere: nothing in its schema may act beyond plain tables.
  sqlite3_db_config(database_, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_db_config(database_, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  sqlite3_limit(database_, SQLITE_LIMIT_LENGTH, 64 << 20);
}

Database::~Database() { sqlite3_close_v2(database_); }

Database::Database(Database&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)) {}

Database& Database::operator=(Database&& other) noexcept {
  std::swap(database_, other.database_);
  return *this;
}

Statement Database::prepare(std::string_view sql) const { return {database_, sql}; }

void Database::execute(const std::string& sql) const {
  check(database_, sqlite3_exec(database_, sql.c_str(), nullptr, nullptr, nullptr));
}

std::int64_t Database::integer(std::string_view sql) const {
  Statement statement = prepare(sql);
  return statement.step() ? statement.integer(0) : 0;
}

std::string Database::text(std::string_view sql) const {
  Statement statement = prepare(sql);
  return statement.step() ? std::string(statement.text(0)) : std::string();
}

std::int64_t Database::file_size() const {
  sqlite3_file* file = nullptr;
  check(database_, sqlite3_file_control(database_, "main", SQLITE_FCNTL_FILE_POINTER, &file));
  sqlite3_int64 size = 0;
  check(nullptr, file->pMethods->xFileSize(file, &size));
  return size;
}

bool Database::is_write_protected() const { return sqlite3_db_readonly(database_, "main") == 1; }

bool Database::in_transaction() const { return sqlite3_get_autocommit(database_) == 0; }

void Database::wait_at_most(int milliseconds) const {
  sqlite3_busy_timeout(database_, milliseconds);
}

Transaction::Transaction(const Database& database) : database_(database) {
  database_.execute("BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
  // A full disk or a failed write may have rolled back already.
  if (open_ && database_.in_transaction()) {
    sqlite3_exec(database_.get(), "ROLLBACK", nullptr, nullptr, nullptr);
  }
}

void Transaction::commit() {
  database_.execute("COMMIT");
  open_ = false;
}

void copy_pages(const Database& from, const Database& into, int patience_milliseconds) {
  constexpr int k_pages_a_step = 1024;
  constexpr int k_pause_ms = 20;
  constexpr int k_restarts = 3;
  const std::unique_ptr<sqlite3_backup, decltype(&sqlite3_backup_finish)> backup(
      sqlite3_backup_init(into.get(), "main", from.get(), "main"), &sqlite3_backup_finish);
  if (!backup) raise(into.get(), sqlite3_extended_errcode(into.get()));
  int waited = 0;
  int restarts = 0;
  int remaining = -1;
  while (true) {
    // In small steps, so that others can write in between. Each of their writes makes SQLite begin
    // again; after a few of those they have to wait instead.
    const int code = sqlite3_backup_step(backup.get(), restarts > k_restarts ? -1 : k_pages_a_step);
    if (code == SQLITE_DONE) return;
    if (code == SQLITE_OK) {
      const int now = sqlite3_backup_remaining(backup.get());
      if (remaining >= 0 && now >= remaining) ++restarts;
      remaining = now;
      continue;
    }
    const int primary = code & 0xff;
    if ((primary != SQLITE_BUSY && primary != SQLITE_LOCKED) || waited >= patience_milliseconds) {
      throw Trouble(code, sqlite3_errstr(code));
    }
    waited += sqlite3_sleep(k_pause_ms);
  }
}

namespace {

/// A path in the form that a file layer wants: absolute, with SQLite's terminators behind it.
class FileName {
 public:
  FileName(sqlite3_vfs* vfs, const std::filesystem::path& path) {
    std::vector<char> full(static_cast<std::size_t>(vfs->mxPathname) + 1);
    if (vfs->xFullPathname(vfs, path.c_str(), static_cast<int>(full.size()), full.data()) & 0xff) {
      // SQLITE_OK_SYMLINK is not an error; anything with a primary code is.
      return;
    }
    name_ = sqlite3_create_filename(full.data(), "", "", 0, nullptr);
  }
  ~FileName() { sqlite3_free_filename(name_); }
  FileName(const FileName&) = delete;
  FileName& operator=(const FileName&) = delete;
  [[nodiscard]] const char* get() const { return name_; }

 private:
  // char* or const char*, as the version of SQLite has it.
  using Name = decltype(sqlite3_create_filename("", "", "", 0, nullptr));
  Name name_{};
};

}  // namespace

bool make_new_file(const std::filesystem::path& path, const std::string& vfs_name) {
  sqlite3_vfs* vfs = sqlite3_vfs_find(name_or_default(vfs_name));
  if (vfs == nullptr) throw Trouble(SQLITE_ERROR, "no such file layer: " + vfs_name);
  const FileName name(vfs, path);
  if (name.get() == nullptr) return false;
  const auto room = static_cast<std::size_t>(vfs->szOsFile);
  std::vector<std::max_align_t> memory(room / sizeof(std::max_align_t) + 1);
  auto* file = reinterpret_cast<sqlite3_file*>(memory.data());
  const int flags =
      SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_EXCLUSIVE | SQLITE_OPEN_MAIN_DB;
  int granted = 0;
  const int code = vfs->xOpen(vfs, name.get(), file, flags, &granted);
  if (file->pMethods != nullptr) file->pMethods->xClose(file);
  if ((code & 0xff) == SQLITE_FULL || (code & 0xff) == SQLITE_IOERR) {
    throw Trouble(code, sqlite3_errstr(code));
  }
  // Where the file exists already, the file layer of Unix falls back to opening it for reading.
  return code == SQLITE_OK && (granted & SQLITE_OPEN_READWRITE) != 0;
}

void remove_file(const std::filesystem::path& path, const std::string& vfs_name) noexcept {
  sqlite3_vfs* vfs = sqlite3_vfs_find(name_or_default(vfs_name));
  if (vfs == nullptr) return;
  for (const char* ending : {"", "-journal"}) {
    const FileName name(vfs, path.string() + ending);
    if (name.get() != nullptr) vfs->xDelete(vfs, name.get(), 1);
  }
}

bool syncs_folders() { return sqlite3_compileoption_used("DISABLE_DIRSYNC") == 0; }

}  // namespace wm::record::detail
