#pragma once
/// What is known of a kind of check before anything is read: what it reads, what it cannot show,
/// and which calculation goes further.

#include <span>

#include "bay/words.hpp"
#include "quantity/quantity.hpp"

namespace wm::desk {

struct CheckKindNote {
  bay::CheckKind kind{bay::CheckKind::other};
  std::span<const quantity::KindOf> reads;  ///< kinds of quantity it can read; empty: any
  std::string_view not_tested;              ///< what a conforming reading leaves open; may be empty
  std::string_view calculation;             ///< name in the catalogue; may be empty
};

/// @return the note of `kind`; for kinds with nothing to say one that reads anything.
[[nodiscard]] const CheckKindNote& note_of(bay::CheckKind kind);

/// Can this kind of check be read in `unit`? An empty unit can.
[[nodiscard]] bool reads_in(bay::CheckKind kind, std::string_view unit);

}  // namespace wm::desk
