// Journal::copy_to: a whole copy of a binder that others may be writing to.
#include <fmt/format.h>

#include "record/detail/database.hpp"
#include "record/detail/folder.hpp"
#include "record/detail/store.hpp"
#include "record/detail/trouble.hpp"
#include "record/journal.hpp"

namespace wm::record {
namespace {

using detail::Store;

/// The copy must end at an entry that the original has, with the same hash.
std::optional<Problem> wrong_with_copy(Store& store, const detail::Database& copy,
                                       const std::filesystem::path& path) {
  auto end = copy.prepare("SELECT sequence, hash FROM journal ORDER BY sequence DESC LIMIT 1");
  if (!end.step()) return std::nullopt;
  auto same = store.database.prepare("SELECT 1 FROM journal WHERE sequence = ?1 AND hash = ?2");
  if (same.bind(1, end.integer(0)).bind(2, end.text(1)).step()) return std::nullopt;
  return Problem{Kind::damaged,
                 {},
                 fmt::format("{}: the copy does not end like the original", path.string()),
                 "a copy that ends at an entry of the original",
                 {},
                 "check both disks and copy again",
                 {}};
}

}  // namespace

Result<Done> Journal::copy_to(const std::filesystem::path& target) {
  return detail::guarded(target, [&]() -> Result<Done> {
    if (auto problem = detail::wrong_with_folder(target)) return Fail(*std::move(problem));
    const std::string& vfs = store_->tuning.vfs;
    if (detail::is_taken(target) || !detail::make_new_file(target, vfs)) {
      return Fail(detail::why_not_made(target));
    }
    std::optional<Problem> problem;
    try {
      const detail::Database copy = detail::connect(target, Access::read_write, store_->tuning);
      detail::copy_pages(store_->database, copy, store_->tuning.patience_ms);
      problem = wrong_with_copy(*store_, copy, target);
      detail::sync_folder(detail::folder_of(target));
    } catch (...) {
      detail::remove_file(target, vfs);
      throw;
    }
    if (problem) {
      detail::remove_file(target, vfs);
      return Fail(*std::move(problem));
    }
    return Done{};
  });
}

}  // namespace wm::record
