#pragma once
/// Every calculation there is: the rooms' own declarations, called one after the other.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"

namespace wm::calculation {

/// The catalogue with all tables; built on first use, the same for the whole run.
[[nodiscard]] const describe::Catalogue& catalogue();

/// What is amiss in a catalogue; the meta-test wants none.
///
/// Each calculation needs a purpose, sources, cautions, an example that runs and is read, no
/// undescribed member in its input or answer, keys and labels for every field, bounds that
/// hold for the field's own example, a manual page and a reference case.
///
/// @param checked_outside  Names of calculations that have a reference case.
[[nodiscard]] std::vector<std::string> complaints(const describe::Catalogue& catalogue,
                                                  std::span<const std::string> checked_outside);

/// What is amiss in one described type, with everything inside it.
[[nodiscard]] std::vector<std::string> complaints(const describe::Type& type);

}  // namespace wm::calculation
