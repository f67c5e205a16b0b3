#pragma once
/// What is known of a kind of check before anything is read: what it reads, what it cannot show,
/// and which calculation goes further.

#include <span>

#include "bay/payloads.hpp"
#include "bay/words.hpp"
#include "describe/catalogue.hpp"
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

/// What must be read before this check is begun; nullptr: nothing of its own. Cranking is told by
/// the check's own words too, so that an owner's check has it.
[[nodiscard]] const describe::Caution* caution_of(const bay::CheckDescribed& check);

/// Is this kind a drop over a joint, whose sign only says which way round the probes were?
[[nodiscard]] bool is_drop(bay::CheckKind kind);

/// Can this kind of check be read in `unit`? An empty unit can.
[[nodiscard]] bool reads_in(bay::CheckKind kind, std::string_view unit);

}  // namespace wm::desk
