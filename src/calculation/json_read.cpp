#include "calculation/detail/parse.hpp"
#include "calculation/detail/reader.hpp"
#include "calculation/json_face.hpp"

namespace wm::calculation {

Problems read_json(std::string_view json, const describe::Type& type, void* out) {
  detail::Tree tree;
  if (auto problem = detail::parse_json(json, tree)) return {std::move(*problem)};
  return detail::read_tree(tree, type, out, detail::Source::json);
}

Problems read_payload(std::string_view payload, const describe::Type& type, void* out) {
  // Kept from call to call: a fold reads hundreds of thousands of small payloads.
  static thread_local detail::Tree tree;
  if (auto problem = detail::parse_json(payload, tree)) return {std::move(*problem)};
  return detail::read_tree(tree, type, out, detail::Source::payload);
}

}  // namespace wm::calculation
