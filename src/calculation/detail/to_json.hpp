#pragma once
/// Values and descriptions as JSON trees, for the sources of this room only.

#include <nlohmann/json_fwd.hpp>
#include <span>

#include "calculation/json_face.hpp"

namespace wm::calculation::detail {

/// Keeps members in the order in which they were put in.
using Json = nlohmann::ordered_json;

[[nodiscard]] Json answer_tree(const describe::Type& type, const void* value,
                               const WriteOptions& options);
[[nodiscard]] Json payload_tree(const describe::Type& type, const void* value);
/// The same as a person would type it: what is computed is written with its unit.
[[nodiscard]] Json input_tree(const describe::Type& type, const void* value);
[[nodiscard]] Json type_tree(const describe::Type& type, bool inputs);
[[nodiscard]] Json example_tree(const describe::Type& type);
[[nodiscard]] Json example_tree(const describe::Calculation& calculation);
[[nodiscard]] Json sources_tree(const describe::Calculation& calculation);
[[nodiscard]] Json cautions_tree(std::span<const describe::Caution> cautions);

/// Bytes that are no UTF-8 are replaced, so that writing never fails.
[[nodiscard]] std::string dumped(const Json& json, bool pretty);

}  // namespace wm::calculation::detail
