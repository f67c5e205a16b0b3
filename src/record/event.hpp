#pragma once
/// One entry of the journal: what a caller hands in, and what is stored.

#include <cstdint>
#include <string>
#include <vector>

namespace wm::record {

/// An event as its maker hands it in. All text is UTF-8 without NUL.
struct NewEvent {
  std::string id;         ///< made by the client; 1 to 64 of [A-Za-z0-9_-]; never used twice
  std::string kind;       ///< 1 to 64 characters without control characters; no meaning here
  int version{1};         ///< version of the body's layout, 1 or more
  std::string happened;   ///< "2026-11-25" or an RFC 3339 instant; kept as given
  std::string recorded;   ///< RFC 3339 instant in UTC, ends in Z; from the caller's clock
  std::string author;     ///< who says so; at most 200 bytes
  std::string device;     ///< on what it was typed; at most 200 bytes
  std::string refers_to;  ///< id of an event already stored or earlier in the same batch; or empty
  std::string body;       ///< JSON text, 1 byte to 4 MiB; hashed as stored, never re-serialised

  friend bool operator==(const NewEvent&, const NewEvent&) = default;
};

/// An event with its place in the chain.
struct StoredEvent : NewEvent {
  std::int64_t sequence{};    ///< 1, 2, 3, ... without a gap
  std::string previous_hash;  ///< hash of the event before; 64 zeros for the first
  std::string hash;           ///< its own; 64 lower-case hex digits

  friend bool operator==(const StoredEvent&, const StoredEvent&) = default;
};

/// What append() did.
struct Appended {
  std::vector<StoredEvent> events;  ///< one per event handed in, in that order
  bool was_there_already{};         ///< true: all of them were; nothing was written
};

/// A place in the chain: what a printed or signed entry carries.
struct Head {
  std::int64_t sequence{};
  std::string hash;

  friend bool operator==(const Head&, const Head&) = default;
};

/// The hash "before" the first event: 64 zeros.
[[nodiscard]] inline const std::string& hash_before_first() {
  static const std::string zeros(64, '0');
  return zeros;
}

/// An event's body may have at most this many bytes; larger matter is an attachment.
inline constexpr std::int64_t k_body_limit = std::int64_t{4} << 20U;

}  // namespace wm::record
