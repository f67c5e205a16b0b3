#pragma once
/// A nameless file on the disk that takes a large body as it arrives.

#include <cstdio>
#include <memory>

#include "record/attachment.hpp"

namespace wm::service::detail {

class Spool {
 public:
  /// Throws record::Broken where no such file can be made.
  Spool();
  /// @return false once there is no room; source() then says so.
  [[nodiscard]] bool add(const char* bytes, std::size_t count);
  [[nodiscard]] std::int64_t size() const { return size_; }
  /// Read it from its beginning. Throws record::Broken when what was written could not be kept.
  [[nodiscard]] record::ChunkSource source();

 private:
  struct Close {
    void operator()(std::FILE* file) const { (void)std::fclose(file); }
  };
  std::unique_ptr<std::FILE, Close> file_;
  std::int64_t size_{};
  bool full_{};
};

}  // namespace wm::service::detail
