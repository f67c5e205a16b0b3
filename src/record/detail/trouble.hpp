#pragma once
/// From SQLite's codes to words: a Problem for what a person can put right, Broken for the rest.

#include <exception>
#include <filesystem>
#include <new>
#include <optional>

#include "outcome/result.hpp"
#include "record/broken.hpp"
#include "record/detail/database.hpp"

namespace wm::record::detail {

/// Locked, write-protected, not a binder, damaged; nothing for a broken machine.
[[nodiscard]] std::optional<Problem> as_problem(const Trouble& trouble,
                                                const std::filesystem::path& path);
/// The file itself could not be opened; folder.hpp finds out why.
[[nodiscard]] bool cannot_open(const Trouble& trouble);
[[nodiscard]] Broken as_broken(const Trouble& trouble, const std::filesystem::path& path);
[[nodiscard]] Broken out_of_memory();

/// Run `work`, which returns some Result, and put its Trouble into words.
template <class Work>
auto guarded(const std::filesystem::path& path, const Work& work) -> decltype(work()) {
  try {
    return work();
  } catch (const Trouble& trouble) {
    if (auto problem = as_problem(trouble, path)) return Fail(*std::move(problem));
    throw as_broken(trouble, path);
  } catch (const std::bad_alloc&) {
    throw out_of_memory();
  }
}

}  // namespace wm::record::detail
