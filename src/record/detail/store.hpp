#pragma once
/// An open binder file with its prepared statements: what stands behind Journal.

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "outcome/result.hpp"
#include "record/detail/database.hpp"
#include "record/event.hpp"
#include "record/journal.hpp"

namespace wm::record::detail {

/// How far SQLite goes to get a commit onto the disk.
enum class Sync {
  off,   ///< not at all: for the test that must be able to lose events
  full,  ///< all but the folder after the safety file went: likewise
  extra  ///< everything; the only one that binders use
};

/// Settings that only tests change.
struct Tuning {
  Sync sync{Sync::extra};
  int patience_ms{10000};
  std::string vfs;  ///< name of a SQLite file layer, empty for the system's own
};

struct Store {
  std::filesystem::path path;
  Access access{};
  Tuning tuning;
  Database database;
  int schema{};
  Statement last, by_id, insert, page;

  [[nodiscard]] bool has_attachments() const;
};

/// Open a database with the settings that make a commit last, without a look at what is in it.
[[nodiscard]] Database connect(const std::filesystem::path& path, Access access,
                               const Tuning& tuning);

[[nodiscard]] Result<Journal> create_journal(const std::filesystem::path& path,
                                             const Tuning& tuning);
[[nodiscard]] Result<Journal> open_journal(const std::filesystem::path& path, Access access,
                                           const Tuning& tuning);

/// The row on which a statement with k_event_columns stands.
[[nodiscard]] StoredEvent event_at(const Statement& row);
[[nodiscard]] Head last_of(Store& store);
[[nodiscard]] std::optional<StoredEvent> stored_by_id(Store& store, std::string_view id);

/// Write-protected journals say so in the same words everywhere.
[[nodiscard]] Problem opened_read_only(const std::filesystem::path& path);

}  // namespace wm::record::detail
