#pragma once
/// The manual face: a page in Markdown for each calculation, act and view, made from its
/// description.

#include <string>

#include "calculation/entry.hpp"

namespace wm::calculation {

/// Purpose, inputs, outputs, an example with its answer computed, sources, cautions.
[[nodiscard]] std::string manual_page(const describe::Calculation& calculation,
                                      const describe::Catalogue& catalogue);

/// Purpose, cautions, fields, answer, and how to call it by command line and HTTP.
///
/// @param short_command  A shorter way on the command line where there is one: "measure BINDER".
[[nodiscard]] std::string manual_page(const Entry& entry, std::string_view short_command = {});

/// The file of an entry's page: "act-measure.md". Calculations have their bare name.
[[nodiscard]] std::string manual_file(const Entry& entry);

/// The list of all calculations, acts and views, with links to their pages.
[[nodiscard]] std::string manual_index(const describe::Catalogue& catalogue,
                                       std::span<const Entry> entries);

}  // namespace wm::calculation
