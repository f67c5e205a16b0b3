#pragma once
/// The journal of a binder: an append-only chain of events in one SQLite file, power-cut safe.
///
/// This room stores bytes and knows no event kinds. How a row is hashed, byte for byte, and how a
/// stranger checks it with another tool: docs/method/journal.md.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "outcome/result.hpp"
#include "record/attachment.hpp"
#include "record/broken.hpp"
#include "record/event.hpp"

namespace wm::record {

namespace detail {
struct Store;
}

enum class Access { read_write, read_only };

/// One open binder file. Move-only; for one thread at a time (give each thread its own, or guard
/// it). Any number of processes may have the same file open; writers take turns and wait up to ten
/// seconds for each other.
///
/// Every function that returns a Result may give `Kind::conflict` when another program holds the
/// file locked longer than that (nothing was written, try again), `Kind::refused` when the file or
/// its folder turns out to be write-protected, and `Kind::damaged` when SQLite finds the stored
/// bytes in disorder. A full disk, a disk that fails and lack of memory throw Broken.
class Journal {
 public:
  /// Make a new, empty binder. The file and its name in the folder are on the disk on return.
  ///
  /// @return `Kind::duplicate` when something of that name exists (it is left alone),
  ///         `Kind::not_found` when the folder does not, `Kind::refused` when the folder is
  ///         write-protected.
  [[nodiscard]] static Result<Journal> create(const std::filesystem::path& path);

  /// Open an existing binder. A file of an older schema is brought up to date in one transaction
  /// when opened read-write, and read as it is when opened read-only.
  ///
  /// @return `Kind::not_found`: no such file. `Kind::bad_text`: not a binder (another program's
  ///         file). `Kind::not_applicable`: written by a newer version. `Kind::damaged`: empty,
  ///         truncated or garbled. `Kind::refused`: the file or its folder may not be written (or
  ///         read), or it waits for a roll-back that read-only access cannot do.
  [[nodiscard]] static Result<Journal> open(const std::filesystem::path& path,
                                            Access access = Access::read_write);

  /// Append events in one transaction: all or none. Returns only when they are on the disk.
  ///
  /// An event whose id is stored already with the same content (`recorded` apart, since a retry is
  /// stamped anew) is not written again; the stored one is returned. This is looked at before
  /// `expected_last`, so a retry never conflicts with itself.
  ///
  /// @param events         in order; an empty run is no work and no error
  /// @param expected_last  the last sequence number that the caller knew of
  /// @return `Kind::conflict` when an id is stored with other content, or when the record has
  ///         moved on past `expected_last` (the text names where it is now);
  ///         `Kind::duplicate` when an id stands twice in `events`; `Kind::not_found` when
  ///         `refers_to` names no event; `Kind::bad_text`, `Kind::missing`, `Kind::out_of_bounds`
  ///         for a field, with its path ("events/2/happened").
  [[nodiscard]] Result<Appended> append(std::span<const NewEvent> events,
                                        std::optional<std::int64_t> expected_last = {});
  [[nodiscard]] Result<Appended> append(const NewEvent& event,
                                        std::optional<std::int64_t> expected_last = {}) {
    return append(std::span(&event, 1), expected_last);
  }

  /// Where the chain ends now; sees what other processes wrote. Cheap enough to ask every second.
  /// Sequence 0 and 64 zeros while nothing is stored. Throws Broken only.
  [[nodiscard]] Head last();
  [[nodiscard]] std::int64_t last_sequence() { return last().sequence; }
  [[nodiscard]] std::string head() { return last().hash; }

  /// Events after a sequence number, oldest first, at most `limit`.
  [[nodiscard]] Result<std::vector<StoredEvent>> read_from(std::int64_t after,
                                                           std::int64_t limit = 1000);

  /// The same one by one, up to the end. The file is not locked while `take` runs, so it may take
  /// its time. `take` returns false to stop.
  [[nodiscard]] Result<Done> read_each(std::int64_t after,
                                       const std::function<bool(StoredEvent&&)>& take);

  /// One event by its id. @return `Kind::not_found`.
  [[nodiscard]] Result<StoredEvent> find(std::string_view id);

  /// Store an attachment; on the disk on return, so that the event naming it can follow. Content
  /// that is there already is not stored twice.
  ///
  /// @param source  asked for chunks until it gives 0 bytes; read to its end before the file is
  ///                locked, so it may be slow
  /// @param limit   most bytes accepted
  /// @return `Kind::out_of_bounds` above the limit, `Kind::missing` when empty,
  ///         `Kind::refused` when the file was opened read-only.
  [[nodiscard]] Result<Attachment> put_attachment(const ChunkSource& source,
                                                  std::int64_t limit = k_attachment_limit);
  [[nodiscard]] Result<Attachment> put_attachment(std::string_view bytes,
                                                  std::int64_t limit = k_attachment_limit);

  /// Size of a stored attachment. @return `Kind::not_found`.
  [[nodiscard]] Result<Attachment> find_attachment(std::string_view hash);

  /// Hand an attachment's content on, chunk by chunk.
  ///
  /// @return `Kind::not_found`, `Kind::stopped` when the sink gave false, or `Kind::damaged` when
  ///         the bytes do not have that hash any more (known only at the end).
  [[nodiscard]] Result<Done> get_attachment(std::string_view hash, const ChunkSink& sink);

  /// All of it at once. @return as above.
  [[nodiscard]] Result<std::string> get_attachment(std::string_view hash);

  /// All stored attachments, by hash.
  [[nodiscard]] Result<std::vector<Attachment>> list_attachments();

  /// Make a copy that is whole, also while other programs write. On the disk on return.
  ///
  /// @return `Kind::duplicate` when something of that name exists (it is left alone),
  ///         `Kind::not_found`, `Kind::refused` for the folder as in create().
  [[nodiscard]] Result<Done> copy_to(const std::filesystem::path& path);

  [[nodiscard]] const std::filesystem::path& path() const;
  [[nodiscard]] Access access() const;

  /// For the sources of this room only.
  explicit Journal(std::unique_ptr<detail::Store> store);
  [[nodiscard]] detail::Store& inside() { return *store_; }

  ~Journal();
  Journal(Journal&&) noexcept;
  Journal& operator=(Journal&&) noexcept;
  Journal(const Journal&) = delete;
  Journal& operator=(const Journal&) = delete;

 private:
  std::unique_ptr<detail::Store> store_;
};

}  // namespace wm::record
