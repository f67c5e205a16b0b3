#pragma once
/// Stored bytes to events of the bay, and back.

#include "bay/event.hpp"
#include "desk/act.hpp"
#include "record/event.hpp"

namespace wm::binder {

/// Decode a stored event, lifting an older version of its payload.
/// @return not_applicable for a kind or version that this program does not know (a newer program
///         wrote it: the binder is then read-only); damaged when the body cannot be read.
[[nodiscard]] Result<bay::Event> decode(const record::StoredEvent& stored);

/// A payload from its stored form. @return as above, with the paths of its fields.
[[nodiscard]] Checked<bay::Payload> decode_payload(std::string_view kind, int version,
                                                   std::string_view body);
/// The same with every rule of the fields: for what a person typed anew.
[[nodiscard]] Checked<bay::Payload> read_payload_strictly(std::string_view kind, int version,
                                                          std::string_view body);

[[nodiscard]] std::string encode(const bay::Payload& payload);

}  // namespace wm::binder
