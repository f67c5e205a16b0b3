#pragma once
/// The whole answer of a calculation as JSON, for the JSON face and the text face alike.

#include "calculation/json_face.hpp"

namespace wm::calculation::detail {

/// {"calculation", "version", "answer", "sources", "cautions"}.
[[nodiscard]] std::string answer_json(const describe::Calculation& calculation, const void* answer,
                                      const WriteOptions& options);

/// Run it, with the catalogue's tables where the caller brings none.
[[nodiscard]] Checked<std::shared_ptr<void>> answer_of(const describe::Calculation& calculation,
                                                       const void* input,
                                                       const describe::Context& context);

}  // namespace wm::calculation::detail
