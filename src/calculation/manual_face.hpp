#pragma once
/// The manual face: a page in Markdown for each calculation, made from its description.

#include <string>

#include "describe/catalogue.hpp"

namespace wm::calculation {

/// Purpose, inputs, outputs, an example with its answer computed, sources, cautions.
[[nodiscard]] std::string manual_page(const describe::Calculation& calculation,
                                      const describe::Catalogue& catalogue);

/// The list of all calculations, with links to their pages ("torque-setting.md").
[[nodiscard]] std::string manual_index(const describe::Catalogue& catalogue);

}  // namespace wm::calculation
