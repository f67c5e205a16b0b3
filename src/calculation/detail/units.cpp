#include "calculation/detail/units.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>
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

/// Looks through an answer for the values that each wanted unit is meant for.
class UnitCheck {
 public:
  explicit UnitCheck(const std::map<std::string, std::string>& wanted) : wanted_(&wanted) {}

  void look(const Type& type, const void* at, const std::string& path, std::string_view key) {
    if (at == nullptr) return;
    if (type.shape == Shape::optional) return look(*type.of, type.operations.get(at), path, key);
    if (type.operations.get_number != nullptr) {
      return value(type.operations.get_number(at).kind, path, key);
    }
    if (type.shape == Shape::list) {
      for (std::size_t i = 0; i < type.operations.size(at); ++i) {
        look(*type.of, type.operations.at(at, i), path, key);
      }
    }
    if (type.shape == Shape::one_of) {
      look(*type.alternatives[type.operations.index(at)].type, type.operations.get(at), path, key);
    }
    for (const auto& field : type.fields) {
      look(*field.type, describe::value_of(field, at),
           path.empty() ? field.key : path + "/" + field.key, field.key);
    }
  }

  [[nodiscard]] Problems take() const {
    Problems out;
    for (const auto& [name, kind] : unfit_) {
      if (fit_.contains(name)) continue;
      const auto& info = quantity::info(kind);
      std::vector<std::string_view> symbols;
      for (const auto& u : quantity::units_of(kind)) symbols.push_back(u.symbol);
      out.push_back({Kind::wrong_dimension,
                     "units/" + shown(name),
                     fmt::format("`{}` is no unit for {}", shown(wanted_->at(name)), info.words),
                     "one of: " + join(symbols),
                     std::string(symbols.empty() ? "" : symbols.front()),
                     {},
                     {}});
    }
    return out;
  }

 private:
  void value(quantity::KindOf kind, const std::string& path, std::string_view key) {
    for (const auto& [name, unit] : *wanted_) {
      if (name != path && name != key) continue;
      if (quantity::find_unit(kind, unit) != nullptr) {
        fit_.insert(name);
      } else {
        unfit_.emplace(name, kind);
      }
    }
  }

  const std::map<std::string, std::string>* wanted_;
  std::set<std::string> fit_;
  std::map<std::string, quantity::KindOf> unfit_;
};

}  // namespace

Problems unfit_units(const Type& type, const void* answer,
                     const std::map<std::string, std::string>& wanted) {
  if (wanted.empty()) return {};
  UnitCheck check(wanted);
  check.look(type, answer, {}, {});
  return check.take();
}

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
