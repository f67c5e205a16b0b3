// Journal's functions for attachments.
#include <algorithm>
#include <cstdio>
#include <memory>

#include <fmt/format.h>

#include "record/detail/checks.hpp"
#include "record/detail/database.hpp"
#include "record/detail/store.hpp"
#include "record/detail/trouble.hpp"
#include "record/digest.hpp"
#include "record/journal.hpp"

namespace wm::record {
namespace {

using detail::Store;

/// What comes in, kept aside until its hash is known, so that a slow source does not keep the
/// binder locked. A nameless temporary file: nothing is left behind by a crash.
class Spool {
 public:
  Spool() : file_(std::tmpfile(), &std::fclose) {
    if (!file_) fail("made");
  }

  void put(std::span<const std::byte> bytes) {
    if (std::fwrite(bytes.data(), 1, bytes.size(), file_.get()) != bytes.size()) fail("written");
  }

  void rewind() {
    if (std::fflush(file_.get()) != 0 || std::fseek(file_.get(), 0, SEEK_SET) != 0) fail("written");
  }

  std::size_t get(std::span<std::byte> bytes) {
    const std::size_t count = std::fread(bytes.data(), 1, bytes.size(), file_.get());
    if (std::ferror(file_.get()) != 0) fail("read");
    return count;
  }

 private:
  [[noreturn]] static void fail(std::string_view what) {
    throw Broken(Fault::disk_full,
                 fmt::format("the temporary file for the attachment could not be {}", what),
                 "make room on the disk that holds temporary files, then attach it again");
  }
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> file_;
};

struct Spooled {
  Spool spool;
  Attachment attachment;
};

Result<Spooled> take_in(const ChunkSource& source, std::int64_t limit) {
  Spooled in;
  Sha256 digest;
  std::vector<std::byte> buffer(k_chunk_size);
  while (const std::size_t count = source(buffer)) {
    const auto bytes = std::span<const std::byte>(buffer).first(std::min(count, buffer.size()));
    in.attachment.size += static_cast<std::int64_t>(bytes.size());
    if (in.attachment.size > limit) {
      return Fail({Kind::out_of_bounds,
                   "attachment",
                   fmt::format("the attachment is larger than {} bytes", limit),
                   fmt::format("at most {} bytes", limit),
                   {},
                   "make the picture smaller, or split the document",
                   {}});
    }
    digest.add(bytes);
    in.spool.put(bytes);
  }
  if (in.attachment.size == 0) {
    return Fail({Kind::missing,
                 "attachment",
                 "the attachment is empty",
                 "at least one byte",
                 {},
                 "check that the file was read",
                 {}});
  }
  in.attachment.hash = digest.finish_hex();
  in.spool.rewind();
  return in;
}

void write_attachment(Store& store, Spooled& in) {
  auto chunk = store.database.prepare(
      "INSERT INTO attachment_chunk (hash, number, bytes) VALUES (?1, ?2, ?3)");
  std::vector<std::byte> buffer(k_chunk_size);
  std::int64_t number = 0;
  std::int64_t written = 0;
  while (const std::size_t count = in.spool.get(buffer)) {
    chunk.bind(1, in.attachment.hash)
        .bind(2, number++)
        .bind_blob(3, std::span<const std::byte>(buffer).first(count))
        .run();
    written += static_cast<std::int64_t>(count);
  }
  if (written != in.attachment.size) {
    throw Broken(Fault::input_output, "the temporary file for the attachment came back shorter",
                 "check the disk that holds temporary files, then attach it again");
  }
  store.database.prepare("INSERT INTO attachment (hash, size, chunks) VALUES (?1, ?2, ?3)")
      .bind(1, in.attachment.hash)
      .bind(2, in.attachment.size)
      .bind(3, number)
      .run();
}

struct Row {
  std::int64_t size{}, chunks{};
};

std::optional<Row> row_of(const Store& store, std::string_view hash) {
  if (!store.has_attachments()) return std::nullopt;
  auto select = store.database.prepare("SELECT size, chunks FROM attachment WHERE hash = ?1");
  if (!select.bind(1, hash).step()) return std::nullopt;
  return Row{select.integer(0), select.integer(1)};
}

Problem no_such(std::string_view hash) {
  return {Kind::not_found,
          "attachment",
          fmt::format("there is no attachment '{}'", hash),
          "the SHA-256 of a stored attachment, 64 hex digits",
          {},
          {},
          {}};
}

Problem altered(std::string_view hash) {
  return {Kind::damaged,
          "attachment",
          fmt::format("the attachment {} is not what was stored", hash),
          "content that has the hash by which it is named",
          {},
          "take the picture or paper from a copy of the binder; run verify",
          {}};
}

}  // namespace

Result<Attachment> Journal::put_attachment(const ChunkSource& source, std::int64_t limit) {
  if (store_->access == Access::read_only) return Fail(detail::opened_read_only(path()));
  auto in = take_in(source, limit);
  if (!in) return Fail(in.error());
  return detail::guarded(path(), [&]() -> Result<Attachment> {
    detail::Transaction transaction(store_->database);
    if (!row_of(*store_, in->attachment.hash)) {
      write_attachment(*store_, *in);
      transaction.commit();
    }
    return in->attachment;
  });
}

Result<Attachment> Journal::put_attachment(std::string_view bytes, std::int64_t limit) {
  return put_attachment(
      [rest = std::as_bytes(std::span(bytes))](std::span<std::byte> into) mutable {
        const std::size_t count = std::min(rest.size(), into.size());
        std::ranges::copy(rest.first(count), into.begin());
        rest = rest.subspan(count);
        return count;
      },
      limit);
}

Result<Attachment> Journal::find_attachment(std::string_view hash) {
  return detail::guarded(path(), [&]() -> Result<Attachment> {
    const auto row = row_of(*store_, hash);
    if (!row) return Fail(no_such(hash));
    return Attachment{std::string(hash), row->size};
  });
}

Result<Done> Journal::get_attachment(std::string_view hash, const ChunkSink& sink) {
  return detail::guarded(path(), [&]() -> Result<Done> {
    const auto row = row_of(*store_, hash);
    if (!row) return Fail(no_such(hash));
    auto select = store_->database.prepare(
        "SELECT bytes FROM attachment_chunk WHERE hash = ?1 AND number = ?2");
    Sha256 digest;
    std::string chunk;
    for (std::int64_t number = 0; number < row->chunks; ++number) {
      if (!select.bind(1, hash).bind(2, number).step()) return Fail(altered(hash));
      // Copied, so that the file is not locked while the sink takes its time.
      chunk = select.text(0);
      select.reset();
      digest.add(chunk);
      if (!sink(std::as_bytes(std::span(chunk)))) {
        return Fail(Kind::stopped, "the reading of the attachment was stopped");
      }
    }
    if (digest.finish_hex() != hash) return Fail(altered(hash));
    return Done{};
  });
}

Result<std::string> Journal::get_attachment(std::string_view hash) {
  std::string bytes;
  auto done = get_attachment(hash, [&](std::span<const std::byte> chunk) {
    bytes.append(reinterpret_cast<const char*>(chunk.data()), chunk.size());
    return true;
  });
  if (!done) return Fail(done.error());
  return bytes;
}

Result<std::vector<Attachment>> Journal::list_attachments() {
  return detail::guarded(path(), [&]() -> Result<std::vector<Attachment>> {
    std::vector<Attachment> all;
    if (!store_->has_attachments()) return all;
    auto select = store_->database.prepare("SELECT hash, size FROM attachment ORDER BY hash");
    while (select.step()) all.push_back({std::string(select.text(0)), select.integer(1)});
    return all;
  });
}

}  // namespace wm::record
