#include "calculation/detail/tree.hpp"

namespace wm::calculation::detail {

void Tree::clear() {
  nodes_.clear();
  pool_.clear();
  more_.clear();
}

void Tree::reserve_text(std::size_t bytes) {
  // Only while empty: growing later would move the texts that views point to.
  if (pool_.empty()) pool_.reserve(bytes);
}

std::string_view Tree::keep(std::string_view text) {
  if (pool_.size() + text.size() > pool_.capacity()) return more_.emplace_back(text);
  const auto at = pool_.size();
  pool_.append(text);
  return std::string_view(pool_).substr(at, text.size());
}

std::uint32_t Tree::add(std::uint32_t parent, const Node& node) {
  const auto index = size();
  nodes_.push_back(node);
  if (parent == Node::k_none) return index;
  Node& above = nodes_[parent];
  if (above.last == Node::k_none) {
    above.first = index;
  } else {
    nodes_[above.last].next = index;
  }
  above.last = index;
  ++above.count;
  return index;
}

std::uint32_t Tree::member(std::uint32_t object, std::string_view key) const {
  for (auto i = nodes_[object].first; i != Node::k_none; i = nodes_[i].next) {
    if (nodes_[i].key == key) return i;
  }
  return Node::k_none;
}

void Tree::remove(std::uint32_t object, std::uint32_t member) {
  Node& above = nodes_[object];
  auto before = Node::k_none;
  for (auto i = above.first; i != Node::k_none; before = i, i = nodes_[i].next) {
    if (i != member) continue;
    (before == Node::k_none ? above.first : nodes_[before].next) = nodes_[i].next;
    if (above.last == member) above.last = before;
    --above.count;
    return;
  }
}

}  // namespace wm::calculation::detail
