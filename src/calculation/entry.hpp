#pragma once
/// Acts and views as the faces see them: what stands in their declarations at the desk.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"

namespace wm::calculation {

/// An act or a view: what else than calculations there is to call.
struct Entry {
  enum class Is : std::uint8_t { act, view };
  Is kind{Is::act};
  std::string_view name;
  std::string_view purpose;
  const describe::Type* input{};
  const describe::Type* output{};
  std::span<const describe::Caution> cautions{};
  bool changes_plans{};  ///< carries the last sequence seen, and is told what changed meanwhile
};

/// "act" or "view".
[[nodiscard]] std::string_view word(Entry::Is kind);

/// Every act, then every view, in the order of the manual.
[[nodiscard]] const std::vector<Entry>& entries();
[[nodiscard]] const Entry* find_entry(Entry::Is kind, std::string_view name);

/// `shown` for a name that is not there: the nearest one, and what there is.
///
/// @param what   "act", "view", "calculation", "command": in words
/// @param path   where the name stood
/// @return       Kind::not_found with "did you mean" where one is near
[[nodiscard]] Problem no_such_name(std::string_view what, std::string_view path,
                                   std::string_view name, std::span<const std::string_view> names);

}  // namespace wm::calculation
