#pragma once
/// The demo binder: two invented aircraft and three years of their invented history.

#include <cstdint>
#include <filesystem>

#include "binder/binder.hpp"

namespace wm::cli {

/// What was made.
struct DemoMade {
  std::filesystem::path binder;
  std::int64_t acts{};    ///< lines of the script replayed
  std::int64_t events{};  ///< in the record afterwards
};

/// Make `folder`/pebblewing.binder by replaying the script of demo/ through the public acts, so
/// that the demo obeys every rule that an owner's own entries obey.
///
/// Each act sees the day on which it happened as today: a meter whose calibration has run out
/// since was good then.
///
/// @param folder  Is made where it does not exist.
/// @param now     Its instant is when everything was recorded; two demos with equal instants are
///                equal to the last hash.
/// @return `duplicate` when the binder exists (it is left alone), `refused` when the folder
///         cannot be made or written. A demo that could not be finished leaves no binder.
[[nodiscard]] Checked<DemoMade> make_demo(const std::filesystem::path& folder,
                                          const binder::Now& now);

}  // namespace wm::cli
