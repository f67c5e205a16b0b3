#pragma once
/// A thin, owning layer over SQLite's C interface. Private to this room.

#include <cstdint>
#include <filesystem>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace wm::record::detail {

/// SQLite said no. Public functions turn it into a Problem or a Broken (trouble.hpp).
struct Trouble : std::runtime_error {
  Trouble(int extended_code, const std::string& what)
      : std::runtime_error(what), code(extended_code) {}
  int code;
};

/// A prepared statement, kept and used again. Bound text is not copied: it must outlive the run.
class Statement {
 public:
  Statement() = default;
  Statement(sqlite3* database, std::string_view sql);
  ~Statement();
  Statement(Statement&& other) noexcept;
  Statement& operator=(Statement&& other) noexcept;
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

  Statement& bind(int place, std::int64_t value);
  Statement& bind(int place, std::string_view text);
  Statement& bind_blob(int place, std::span<const std::byte> bytes);

  /// True: a row is there. False: done, and reset for the next run.
  bool step();
  /// Run one that gives no rows.
  void run();
  void reset() noexcept;

  [[nodiscard]] std::int64_t integer(int column) const;
  /// Valid until the next step or reset. Bytes as stored, whatever the type.
  [[nodiscard]] std::string_view text(int column) const;
  [[nodiscard]] bool is_text(int column) const;
  [[nodiscard]] bool is_integer(int column) const;

 private:
  sqlite3_stmt* statement_{};
};

/// Resets a statement when a function leaves, so that no lock is held behind our back.
class Reset {
 public:
  explicit Reset(Statement& statement) : statement_(statement) {}
  ~Reset() { statement_.reset(); }
  Reset(const Reset&) = delete;
  Reset& operator=(const Reset&) = delete;

 private:
  Statement& statement_;
};

class Database {
 public:
  Database() = default;
  /// @param vfs  name of a SQLite file layer, empty for the system's own
  Database(const std::filesystem::path& path, bool writable, const std::string& vfs);
  ~Database();
  Database(Database&& other) noexcept;
  Database& operator=(Database&& other) noexcept;
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  [[nodiscard]] Statement prepare(std::string_view sql) const;
  void execute(const std::string& sql) const;
  /// First column of the first row; 0 or "" when there is none.
  [[nodiscard]] std::int64_t integer(std::string_view sql) const;
  [[nodiscard]] std::string text(std::string_view sql) const;

  [[nodiscard]] sqlite3* get() const { return database_; }
  /// Bytes in the file as the file layer sees it.
  [[nodiscard]] std::int64_t file_size() const;
  [[nodiscard]] bool is_write_protected() const;
  [[nodiscard]] bool in_transaction() const;
  void wait_at_most(int milliseconds) const;

 private:
  sqlite3* database_{};
};

/// BEGIN IMMEDIATE ... COMMIT; rolls back unless committed.
class Transaction {
 public:
  explicit Transaction(const Database& database);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  const Database& database_;
  bool open_{true};
};

/// Copy every page of one database into another, empty one.
void copy_pages(const Database& from, const Database& into, int patience_milliseconds);

/// Make an empty file, only if there is none of that name. Returns false when it could not.
/// Goes through SQLite's file layer: opening and closing a database by other means would drop the
/// locks that this process holds on it (POSIX advisory locks).
[[nodiscard]] bool make_new_file(const std::filesystem::path& path, const std::string& vfs);
/// Take back a file that make_new_file made, and a safety file beside it.
void remove_file(const std::filesystem::path& path, const std::string& vfs) noexcept;

/// Whether this SQLite really syncs folders (some are built without).
[[nodiscard]] bool syncs_folders();

}  // namespace wm::record::detail
