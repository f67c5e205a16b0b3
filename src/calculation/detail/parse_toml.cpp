#include <fmt/core.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>

#include <sstream>

#include "calculation/detail/parse.hpp"
#include "calculation/json_face.hpp"

namespace wm::calculation::detail {
namespace {

/// The library follows dotted keys without a limit and takes apart what it built by recursion,
/// so a key of a million dots would exhaust the stack. No key of ours needs more than a few.
std::optional<std::size_t> overlong_key(std::string_view toml) {
  std::size_t dots = 0;
  std::size_t i = 0;
  const auto starts = [&](std::string_view what) { return toml.substr(i).starts_with(what); };
  while (i < toml.size()) {
    const char c = toml[i];
    if (c == '#') {
      while (i < toml.size() && toml[i] != '\n') ++i;
      continue;
    }
    if (c == '"' || c == '\'') {
      const std::string_view three = c == '"' ? "\"\"\"" : "'''";
      const bool many = starts(three);
      const auto end = many ? three : three.substr(0, 1);
      i += end.size();
      while (i < toml.size() && !starts(end)) {
        if (!many && toml[i] == '\n') break;
        i += c == '"' && toml[i] == '\\' ? 2 : 1;
      }
      i += end.size();
      continue;
    }
    if (c == '.') {
      if (++dots > k_deepest) return i;
    } else if (c == '\n' || c == '=' || c == ',' || c == '{' || c == '}') {
      dots = 0;
    }
    ++i;
  }
  return std::nullopt;
}

/// nullopt when all of it went in.
class Builder {
 public:
  Builder(Tree& tree, std::string_view source) : tree_(&tree), source_(source) {}

  std::optional<Problem> table(const toml::table& table, Node node, std::uint32_t above,
                               std::size_t depth) {
    node.is = Node::Is::object;
    if (auto p = room(node, depth)) return p;
    const auto at = tree_->add(above, node);
    // The library sorts keys; a person reads problems in the order of the sheet.
    std::vector<std::pair<toml::source_position, const toml::key*>> order;
    for (const auto& [key, value] : table) order.emplace_back(value.source().begin, &key);
    std::sort(order.begin(), order.end(),
              [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [position, key] : order) {
      Node inner;
      inner.key = tree_->keep(key->str());
      if (auto p = value(*table.get(key->str()), inner, at, depth + 1)) return p;
    }
    return std::nullopt;
  }

 private:
  std::optional<Problem> room(const Node& node, std::size_t depth) const {
    if (depth > k_deepest) return refuse(node, fmt::format("nested deeper than {}", k_deepest));
    if (tree_->size() >= k_most_nodes) {
      return refuse(node, fmt::format("more than {} values in one sheet", k_most_nodes));
    }
    return std::nullopt;
  }

  static Problem refuse(const Node& node, std::string_view why) {
    return {Kind::out_of_bounds,
            {},
            fmt::format("line {}, column {}: {}", node.line, node.column, why),
            "a smaller sheet",
            {},
            {},
            {}};
  }

  std::optional<Problem> array(const toml::array& array, Node node, std::uint32_t above,
                               std::size_t depth) {
    node.is = Node::Is::list;
    const auto at = tree_->add(above, node);
    for (const auto& item : array) {
      if (auto p = value(item, {}, at, depth + 1)) return p;
    }
    return std::nullopt;
  }

  std::optional<Problem> value(const toml::node& from, Node node, std::uint32_t above,
                               std::size_t depth) {
    node.line = from.source().begin.line;
    node.column = from.source().begin.column;
    if (auto p = room(node, depth)) return p;
    switch (from.type()) {
      case toml::node_type::table:
        return table(*from.as_table(), node, above, depth);
      case toml::node_type::array:
        return array(*from.as_array(), node, above, depth);
      case toml::node_type::string:
        node.is = Node::Is::text;
        node.text = tree_->keep(from.as_string()->get());
        break;
      case toml::node_type::integer:
        node.is = Node::Is::integer;
        node.integer = from.as_integer()->get();
        node.number = static_cast<double>(node.integer);
        break;
      case toml::node_type::floating_point:
        node.is = Node::Is::number;
        node.number = from.as_floating_point()->get();
        node.text = tree_->keep(fmt::format("{}", node.number));
        if (!std::isfinite(node.number)) {
          return refuse(node, "infinite and not-a-number are no values here");
        }
        break;
      case toml::node_type::boolean:
        node.is = Node::Is::yes_no;
        node.yes = from.as_boolean()->get();
        break;
      default:
        // Dates and times, as ISO 8601 writes them: the field decides what it takes.
        node.is = Node::Is::text;
        node.text = tree_->keep(iso(from));
        break;
    }
    tree_->add(above, node);
    return std::nullopt;
  }

  static std::string iso(const toml::node& from) {
    std::ostringstream out;
    if (const auto* date = from.as_date()) out << date->get();
    if (const auto* time = from.as_time()) out << time->get();
    if (const auto* both = from.as_date_time()) out << both->get();
    return out.str();
  }

  Tree* tree_;
  std::string_view source_;
};

}  // namespace

std::optional<Problem> parse_toml(std::string_view toml, Tree& tree) {
  tree.clear();
  if (toml.size() > k_largest_text) {
    return Problem{Kind::out_of_bounds,
                   {},
                   fmt::format("the sheet is {} bytes long", toml.size()),
                   fmt::format("at most {} bytes (4 MiB)", k_largest_text),
                   {},
                   {},
                   {}};
  }
  if (const auto at = overlong_key(toml)) {
    return Problem{Kind::out_of_bounds,
                   {},
                   place_in(toml, *at) + ": this key has too many dots",
                   fmt::format("at most {} parts", k_deepest),
                   {},
                   {},
                   {}};
  }
  tree.reserve_text(toml.size());
  try {
    const toml::table table = toml::parse(toml);
    Builder builder(tree, toml);
    Node root;
    root.line = 1;
    root.column = 1;
    return builder.table(table, root, Node::k_none, 0);
  } catch (const toml::parse_error& error) {
    const auto place = error.source().begin;
    return Problem{
        Kind::bad_text,
        {},
        fmt::format("line {}, column {}: {}", place.line, place.column, error.description()),
        "a sheet in TOML",
        "length = \"38 in\"",
        {},
        {}};
  }
}

}  // namespace wm::calculation::detail
