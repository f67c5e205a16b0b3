#include "calculation/detail/units.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "calculation/detail/words.hpp"

namespace wm::calculation::detail {
namespace {

using describe::Shape;
using describe::Type;

struct Place {
  std::string path;
  std::string_view key;
  const Type* type;
};

/// Every field of an answer that carries a unit.
void gather(const Type& outer, const std::string& above, std::vector<Place>& out) {
  const Type& type = inside(outer);
  if (type.shape == Shape::list) return gather(*type.of, above, out);
  for (const auto& a : type.alternatives) gather(*a.type, above, out);
  for (const auto& field : type.fields) {
    const auto path = above.empty() ? field.key : above + "/" + field.key;
    const Type* inner = &inside(*field.type);
    while (inner->shape == Shape::list) inner = &inside(*inner->of);
    if (inner->kind || inner->shape == Shape::any_quantity) {
      out.push_back({path, field.key, inner});
    } else {
      gather(*inner, path, out);
    }
  }
}

bool fits(const Type& type, std::string_view symbol) {
  if (type.kind) return quantity::find_unit(*type.kind, symbol) != nullptr;
  for (int k = 0; k < quantity::k_kind_count; ++k) {
    if (quantity::find_unit(static_cast<quantity::KindOf>(k), symbol) != nullptr) return true;
  }
  return false;
}

std::string units_in_words(const Type& type) {
  if (!type.kind) return "a unit that this program knows";
  std::vector<std::string_view> symbols;
  for (const auto& u : quantity::units_of(*type.kind)) symbols.push_back(u.symbol);
  return "one of: " + join(symbols);
}

/// An answer of whatever kind takes any unit; resistance is what is read most.
std::string example_unit(const Type& type) {
  return type.kind ? std::string(unit_of(type, nullptr).symbol) : "kohm";
}

void ask(const Node& node, const std::vector<Place>& places,
         std::map<std::string, std::string>& wanted, Problems& problems) {
  const std::string path = "units/" + shown(node.key);
  // One key may stand in several parts of an answer: it is enough that the unit fits one of them.
  const Place* named = nullptr;
  for (const auto& place : places) {
    if (place.path != node.key && place.key != node.key) continue;
    if (node.is == Node::Is::text && fits(*place.type, node.text)) {
      wanted[std::string(node.key)] = node.text;
      return;
    }
    if (named == nullptr) named = &place;
  }
  if (named != nullptr) {
    problems.push_back({Kind::wrong_dimension,
                        path,
                        fmt::format("`{}` is no unit for this field", shown(node.text)),
                        units_in_words(*named->type),
                        example_unit(*named->type),
                        {},
                        {}});
    return;
  }
  std::vector<std::string_view> keys;
  for (const auto& place : places) keys.emplace_back(place.path);
  const auto near = nearest(node.key, keys);
  problems.push_back({Kind::unknown_field,
                      path,
                      "the answer has no such field with a unit",
                      "one of: " + join(keys),
                      std::string(near),
                      near.empty() ? "" : fmt::format("did you mean `{}`?", near),
                      {}});
}

}  // namespace

Problems take_units(Tree& tree, const Type& answer, std::map<std::string, std::string>& wanted) {
  if (tree.size() == 0 || tree[0].is != Node::Is::object) return {};
  const auto units = tree.member(0, "units");
  if (units == Node::k_none) return {};
  tree.remove(0, units);
  if (tree[units].is == Node::Is::null) return {};
  if (tree[units].is != Node::Is::object) {
    return {{Kind::bad_text,
             "units",
             "this is not a set of units",
             "an object: field and unit",
             R"({"reading": "kohm"})",
             {},
             {}}};
  }
  std::vector<Place> places;
  gather(answer, {}, places);
  Problems problems;
  for (auto i = tree[units].first; i != Node::k_none; i = tree[i].next) {
    ask(tree[i], places, wanted, problems);
  }
  return problems;
}

}  // namespace wm::calculation::detail
