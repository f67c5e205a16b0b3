#pragma once
/// What stands around the input of an act: {id, seen, happened, author, device, input}.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/fields.hpp"

namespace wm::service::detail {

struct ActEnvelope {
  std::string id;
  std::optional<std::int64_t> seen;
  std::string happened, author, device;
  bool try_only{};
};
std::string_view describe(describe::Fields<ActEnvelope>& f);

struct OpenedEnvelope {
  ActEnvelope envelope;
  std::string input;  ///< JSON as it was sent; "{}" when there is none
  Problems problems;  ///< with the envelope, not with the input
};

/// Take the envelope off. The input stays the text that was sent, so that its own reader sees
/// every digit, key and repetition of it.
[[nodiscard]] OpenedEnvelope open_envelope(std::string_view body);

struct Member {
  std::string_view key;    ///< between its quotes, escapes as they are
  std::string_view value;  ///< raw JSON
};
/// The members of a JSON object as raw text. @return nothing when it is no JSON object.
[[nodiscard]] std::optional<std::vector<Member>> members_of(std::string_view json);

}  // namespace wm::service::detail
