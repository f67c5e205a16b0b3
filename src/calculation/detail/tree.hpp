#pragma once
/// What a JSON text, an aircraft sheet or `key=value` words say, before anyone knows what it
/// means: one neutral tree, so that the reading rules are written once.

#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

namespace wm::calculation::detail {

struct Node {
  enum class Is : std::uint8_t { null, yes_no, integer, number, text, list, object };
  static constexpr std::uint32_t k_none = 0xFFFFFFFFU;

  Is is{Is::null};
  bool yes{};
  bool too_large{};  ///< an integer beyond 64 bits
  std::uint32_t line{};
  std::uint32_t column{};
  std::uint32_t first{k_none};
  std::uint32_t last{k_none};
  std::uint32_t next{k_none};
  std::uint32_t count{};
  std::int64_t integer{};
  double number{};
  std::string_view key{};   ///< in an object
  std::string_view text{};  ///< text, or a number as it was written
};

/// Nodes in one run of memory, linked by index; node 0 is the root.
class Tree {
 public:
  void clear();
  /// Room for the texts of a source of this size: views into it stay good.
  void reserve_text(std::size_t bytes);
  /// A copy that lives as long as the tree.
  std::string_view keep(std::string_view text);
  std::uint32_t add(std::uint32_t parent, const Node& node);
  [[nodiscard]] const Node& operator[](std::uint32_t index) const { return nodes_[index]; }
  [[nodiscard]] Node& operator[](std::uint32_t index) { return nodes_[index]; }
  [[nodiscard]] std::uint32_t size() const { return static_cast<std::uint32_t>(nodes_.size()); }
  /// The member of an object, or k_none.
  [[nodiscard]] std::uint32_t member(std::uint32_t object, std::string_view key) const;
  /// Take a member out of an object.
  void remove(std::uint32_t object, std::uint32_t member);

 private:
  std::vector<Node> nodes_;
  std::string pool_;
  std::deque<std::string> more_;
};

inline constexpr std::size_t k_deepest = 32;
inline constexpr std::uint32_t k_most_nodes = 500'000;

}  // namespace wm::calculation::detail
