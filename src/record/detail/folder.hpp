#pragma once
/// Folders: may a new file go there, and is its name on the disk?

#include <filesystem>
#include <optional>

#include "outcome/result.hpp"

namespace wm::record::detail {

[[nodiscard]] std::filesystem::path folder_of(const std::filesystem::path& path);

/// Why no file can be written there; nothing when one can.
[[nodiscard]] std::optional<Problem> wrong_with_folder(const std::filesystem::path& path);

/// Why a file that SQLite could not open could not be opened, in words.
[[nodiscard]] Problem why_not_opened(const std::filesystem::path& path);

/// Something of that name is there, be it a link that leads nowhere.
[[nodiscard]] bool is_taken(const std::filesystem::path& path);

/// Why no new file of that name could be made.
[[nodiscard]] Problem why_not_made(const std::filesystem::path& path);

/// Make the names in a folder survive a power cut. Throws Broken when the disk cannot.
void sync_folder(const std::filesystem::path& folder);

}  // namespace wm::record::detail
