#include "service/detail/spool.hpp"

#include "record/broken.hpp"

namespace wm::service::detail {
namespace {

[[noreturn]] void no_room() {
  throw record::Broken(record::Fault::disk_full,
                       "there is no room on this machine to take the attachment in",
                       "Make room in the folder for temporary files, then send it again.");
}

}  // namespace

Spool::Spool() : file_(std::tmpfile()) {
  if (!file_) no_room();
}

bool Spool::add(const char* bytes, std::size_t count) {
  if (full_) return false;
  full_ = std::fwrite(bytes, 1, count, file_.get()) != count;
  size_ += static_cast<std::int64_t>(count);
  return !full_;
}

record::ChunkSource Spool::source() {
  if (full_ || std::fflush(file_.get()) != 0 || std::fseek(file_.get(), 0, SEEK_SET) != 0)
    no_room();
  return [file = file_.get()](std::span<std::byte> room) {
    const auto got = std::fread(room.data(), 1, room.size(), file);
    if (got == 0 && std::ferror(file) != 0) {
      throw record::Broken(record::Fault::input_output, "a temporary file cannot be read back",
                           "Send the attachment again.");
    }
    return got;
  };
}

}  // namespace wm::service::detail
