#include "record/detail/folder.hpp"

#include <cerrno>
#include <cstring>

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include "record/broken.hpp"

namespace wm::record::detail {
namespace {

namespace fs = std::filesystem;

Problem problem(Kind kind, std::string what, std::string expected, std::string do_next) {
  return {kind, {}, std::move(what), std::move(expected), {}, std::move(do_next), {}};
}

bool allowed(const fs::path& path, int how) {
  return ::faccessat(AT_FDCWD, path.c_str(), how, AT_EACCESS) == 0;
}

}  // namespace

fs::path folder_of(const fs::path& path) {
  const fs::path parent = path.parent_path();
  return parent.empty() ? fs::path(".") : parent;
}

std::optional<Problem> wrong_with_folder(const fs::path& path) {
  const fs::path folder = folder_of(path);
  std::error_code ignored;
  if (!fs::exists(folder, ignored)) {
    return problem(Kind::not_found,
                   fmt::format("{}: there is no folder {}", path.string(), folder.string()),
                   "an existing folder", "make the folder first, or check its name");
  }
  if (!fs::is_directory(folder, ignored)) {
    return problem(Kind::not_found, fmt::format("{} is not a folder", folder.string()),
                   "an existing folder", "choose another place");
  }
  if (!allowed(folder, W_OK | X_OK)) {
    return problem(Kind::refused,
                   fmt::format("the folder {} is write-protected; while an entry is written a "
                               "safety file must stand beside the binder",
                               folder.string()),
                   "a folder that may be written",
                   "allow writing to the folder, choose another, or open the binder read-only");
  }
  return std::nullopt;
}

Problem why_not_opened(const fs::path& path) {
  std::error_code ignored;
  const std::string name = path.string();
  if (fs::is_directory(path, ignored)) {
    return problem(Kind::bad_text, fmt::format("{}: this is a folder", name), "a binder file",
                   "name the file inside it");
  }
  if (!fs::exists(path, ignored)) {
    return problem(Kind::not_found, fmt::format("{}: there is no such file", name),
                   "an existing binder file", "check the name, or make a new binder");
  }
  return problem(Kind::refused, fmt::format("{}: the file may not be read", name),
                 "a file that may be read", "check the permissions of the file and of its folder");
}

bool is_taken(const fs::path& path) {
  std::error_code ignored;
  return fs::exists(fs::symlink_status(path, ignored));
}

Problem why_not_made(const fs::path& path) {
  const std::string name = path.string();
  if (is_taken(path)) {
    return problem(
        Kind::duplicate, fmt::format("{}: there is something of that name already", name),
        "a name that is not in use", "choose another name; the one there was left alone");
  }
  return problem(Kind::refused, fmt::format("{}: no file of that name can be made", name),
                 "a name that the disk accepts", "choose another name or folder");
}

void sync_folder(const fs::path& folder) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  const bool synced = handle >= 0 && ::fsync(handle) == 0;
  const int error = errno;
  if (handle >= 0) ::close(handle);
  // Some network file systems cannot sync a folder and say EINVAL; there is nothing to be done.
  if (!synced && error != EINVAL) {
    throw Broken(Fault::input_output,
                 fmt::format("{}: the disk could not confirm the folder ({})", folder.string(),
                             std::strerror(error)),
                 "check the disk; then look whether the new file is there");
  }
}

}  // namespace wm::record::detail
