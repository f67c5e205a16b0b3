#include <fmt/core.h>

#include <charconv>

#include "calculation/detail/parse.hpp"
#include "calculation/detail/words.hpp"

namespace wm::calculation::detail {
namespace {

class WordParser {
 public:
  explicit WordParser(Tree& tree, bool replacing = false) : tree_(&tree), replacing_(replacing) {
    Node root;
    root.is = Node::Is::object;
    tree_->add(Node::k_none, root);
  }

  void pair(std::string_view pair) {
    if (trimmed(pair).starts_with('{')) return whole(pair);
    const auto equals = pair.find('=');
    if (equals == std::string_view::npos || equals == 0) {
      return add({}, fmt::format("`{}` has no key and value", shown(pair)), "key=value",
                 "length=38 in");
    }
    const auto path = trimmed(pair.substr(0, equals));
    const auto at = place(path);
    if (at == Node::k_none) return;
    const auto text = trimmed(pair.substr(equals + 1));
    if (text.starts_with('{') || text.starts_with('[')) return part(path, at, text);
    (*tree_)[at].is = Node::Is::text;
    (*tree_)[at].text = tree_->keep(text);
  }

  [[nodiscard]] Problems take() { return std::move(problems_); }

 private:
  void add(std::string path, std::string what, std::string expected, std::string example,
           Kind kind = Kind::bad_text) {
    problems_.push_back(
        {kind, std::move(path), std::move(what), std::move(expected), std::move(example), {}, {}});
  }

  /// The node for "items/0/mass", made on the way where it is not there yet.
  std::uint32_t place(std::string_view path) {
    std::uint32_t at = 0;
    std::size_t depth = 0;
    for (std::string_view rest = path;; ++depth) {
      const auto slash = rest.find('/');
      const auto step = rest.substr(0, slash);
      const bool last = slash == std::string_view::npos;
      if (step.empty() || depth > k_deepest || tree_->size() >= k_most_nodes) {
        add(shown(path), "this path cannot be followed", "keys with / between them",
            "items/0/mass");
        return Node::k_none;
      }
      at = descend(at, step, path, last);
      if (at == Node::k_none || last) return at;
      rest.remove_prefix(slash + 1);
    }
  }

  std::uint32_t descend(std::uint32_t at, std::string_view step, std::string_view path, bool last) {
    const bool index = step.find_first_not_of("0123456789") == std::string_view::npos;
    Node& node = (*tree_)[at];
    if (node.is == Node::Is::null && at != 0) node.is = index ? Node::Is::list : Node::Is::object;
    std::uint32_t found = Node::k_none;
    if (node.is == Node::Is::list && index) {
      std::size_t number = 0;
      const auto read = std::from_chars(step.data(), step.data() + step.size(), number);
      if (read.ec != std::errc{} || number > node.count) {
        add(shown(path), fmt::format("entry {} comes before entry {}", step, node.count),
            "entries counted 0, 1, 2 in their order", {});
        return Node::k_none;
      }
      found = node.first;
      for (std::size_t i = 0; i < number; ++i) found = (*tree_)[found].next;
    } else if (node.is == Node::Is::object) {
      found = tree_->member(at, step);
    } else {
      add(shown(path), "a value was already given above this path", "one or the other", {},
          Kind::duplicate);
      return Node::k_none;
    }
    if (found != Node::k_none) {
      if (!last) return found;
      if (replacing_) {
        emptied(found);
        return found;
      }
      add(shown(path), "this is given twice", "each field once", {}, Kind::duplicate);
      return Node::k_none;
    }
    Node made;
    if (node.is == Node::Is::object) made.key = tree_->keep(step);
    return tree_->add(at, made);
  }

  /// A value that gives way to a new one: its place and key stay.
  void emptied(std::uint32_t at) {
    Node& node = (*tree_)[at];
    Node fresh;
    fresh.key = node.key;
    fresh.next = node.next;
    node = fresh;
  }

  void whole(std::string_view json) {
    Tree parsed;
    if (auto problem = parse_json(json, parsed)) {
      problems_.push_back(std::move(*problem));
      return;
    }
    for (auto i = parsed[0].first; i != Node::k_none; i = parsed[i].next) {
      if (tree_->member(0, parsed[i].key) != Node::k_none) {
        add(shown(parsed[i].key), "this is given twice", "each field once", {}, Kind::duplicate);
        continue;
      }
      Node made;
      made.key = tree_->keep(parsed[i].key);
      fill(tree_->add(0, made), parsed, i);
    }
  }

  void part(std::string_view path, std::uint32_t at, std::string_view json) {
    Tree parsed;
    if (auto problem = parse_json(json, parsed)) {
      problem->path = shown(path);
      problems_.push_back(std::move(*problem));
      return;
    }
    fill(at, parsed, 0);
  }

  /// Copy a value with all that is in it; as deep as parse_json lets it be.
  void fill(std::uint32_t at, const Tree& from, std::uint32_t source) {
    Node made = from[source];
    made.key = (*tree_)[at].key;
    made.next = (*tree_)[at].next;
    made.first = made.last = Node::k_none;
    made.count = 0;
    made.text = tree_->keep(made.text);
    (*tree_)[at] = made;
    for (auto i = from[source].first; i != Node::k_none; i = from[i].next) {
      Node inner;
      inner.key = tree_->keep(from[i].key);
      fill(tree_->add(at, inner), from, i);
    }
  }

  Tree* tree_;
  bool replacing_;
  Problems problems_;
};

}  // namespace

Problems parse_key_values(std::span<const std::string_view> pairs, Tree& tree) {
  tree.clear();
  WordParser parser(tree);
  for (const auto pair : pairs) parser.pair(pair);
  return parser.take();
}

Problems parse_replacing(std::string_view body, std::span<const std::string_view> pairs,
                         Tree& tree) {
  tree.clear();
  WordParser parser(tree, true);
  parser.pair(body);
  for (const auto pair : pairs) parser.pair(pair);
  return parser.take();
}

}  // namespace wm::calculation::detail
