#include "record/detail/trouble.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

namespace wm::record::detail {
namespace {

Problem problem(Kind kind, std::string what, std::string expected, std::string do_next) {
  return {kind, {}, std::move(what), std::move(expected), {}, std::move(do_next), {}};
}

std::string name_of(const std::filesystem::path& path) { return path.filename().string(); }

}  // namespace

std::optional<Problem> as_problem(const Trouble& trouble, const std::filesystem::path& path) {
  const std::string name = name_of(path);
  if (trouble.code == SQLITE_READONLY_ROLLBACK || trouble.code == SQLITE_READONLY_RECOVERY) {
    return problem(Kind::refused,
                   fmt::format("{}: the last write was cut off and has to be taken back first, "
                               "which cannot be done with read-only access",
                               name),
                   "a binder that was closed in order, or access that may write",
                   "open it once for writing; that puts it right by itself");
  }
  switch (trouble.code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return problem(Kind::conflict, fmt::format("{}: another program keeps it locked", name),
                     "the binder free for a moment within ten seconds",
                     "nothing was written; wait for the other program or close it, then try again");
    case SQLITE_READONLY:
      return problem(Kind::refused, fmt::format("{}: the file is write-protected", name),
                     "a file that may be written",
                     "allow writing to the file and its folder, or open it read-only");
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return problem(
          Kind::refused,
          fmt::format("{}: the file, or the safety file beside it, cannot be opened", name),
          "a file and a folder that may be read and written",
          "check the permissions of the file and of its folder");
    case SQLITE_NOTADB:
      return problem(Kind::bad_text, fmt::format("{}: not a binder", name),
                     "a binder file of this program",
                     "check the name; to make a new binder choose a name that is not in use");
    // Our statements never change: when SQLite cannot make sense of one, or a guard forbids the
    // next link of the chain, the tables are not those that were made.
    case SQLITE_ERROR:
    case SQLITE_CONSTRAINT:
    case SQLITE_MISMATCH:
    case SQLITE_CORRUPT:
      return problem(Kind::damaged,
                     fmt::format("{}: the stored bytes are in disorder ({})", name, trouble.what()),
                     "a whole binder file",
                     "keep this file as it is and go on with the latest copy; compare both with "
                     "verify");
    default:
      return std::nullopt;
  }
}

bool cannot_open(const Trouble& trouble) {
  const int primary = trouble.code & 0xff;
  return primary == SQLITE_CANTOPEN || primary == SQLITE_PERM || primary == SQLITE_AUTH;
}

Broken as_broken(const Trouble& trouble, const std::filesystem::path& path) {
  const std::string name = name_of(path);
  switch (trouble.code & 0xff) {
    case SQLITE_FULL:
      return {Fault::disk_full, fmt::format("{}: the disk is full", name),
              "make room on the disk, then send the entry again; what was confirmed is kept"};
    case SQLITE_IOERR:
      return {Fault::input_output,
              fmt::format("{}: the disk could not read, write or confirm ({}, code {})", name,
                          trouble.what(), trouble.code),
              "check the disk and its cable or the network, then send the entry again; what was "
              "confirmed is kept"};
    case SQLITE_NOMEM:
      return out_of_memory();
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {Fault::locked, fmt::format("{}: another program keeps it locked", name),
              "wait for the other program or close it, then try again"};
    case SQLITE_CORRUPT:
    case SQLITE_ERROR:
    case SQLITE_NOTADB:
      return {Fault::damaged, fmt::format("{}: the stored bytes are in disorder", name),
              "keep this file as it is and go on with the latest copy"};
    default:
      return {Fault::other, fmt::format("{}: {} (code {})", name, trouble.what(), trouble.code),
              "close other programs that use the binder and try again"};
  }
}

Broken out_of_memory() {
  return {Fault::memory, "the machine has no memory left", "close other programs and try again"};
}

}  // namespace wm::record::detail
