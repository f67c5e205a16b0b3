#pragma once
/// Attachments: photographs and papers, named by the SHA-256 of their content.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <string>

namespace wm::record {

/// One stored attachment. What it shows, its name and media type stand in the event that names it.
struct Attachment {
  std::string hash;     ///< SHA-256 of the content, 64 lower-case hex digits
  std::int64_t size{};  ///< bytes

  friend bool operator==(const Attachment&, const Attachment&) = default;
};

/// Fills the buffer from its beginning and says how many bytes it put there; 0 is the end.
using ChunkSource = std::function<std::size_t(std::span<std::byte>)>;
/// Takes the next bytes; false stops the reading.
using ChunkSink = std::function<bool(std::span<const std::byte>)>;

/// Largest attachment unless the caller says otherwise: 64 MiB.
inline constexpr std::int64_t k_attachment_limit = std::int64_t{64} << 20U;
/// Content is stored in rows of this many bytes; the last may be shorter.
inline constexpr std::size_t k_chunk_size = std::size_t{256} << 10U;

}  // namespace wm::record
