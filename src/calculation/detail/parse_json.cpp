#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "calculation/detail/parse.hpp"
#include "calculation/json_face.hpp"

namespace wm::calculation::detail {
namespace {

/// nlohmann's events, put into the tree. Returning false stops the parser.
class TreeBuilder {
 public:
  using number_integer_t = std::int64_t;
  using number_unsigned_t = std::uint64_t;
  using number_float_t = double;
  using string_t = std::string;
  using binary_t = nlohmann::json::binary_t;

  TreeBuilder(Tree& tree, std::string_view source) : tree_(&tree), source_(source) {}
  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }

  bool null() { return put({}); }
  bool boolean(bool v) {
    Node node{.is = Node::Is::yes_no};
    node.yes = v;
    return put(node);
  }
  bool number_integer(std::int64_t v) {
    Node node{.is = Node::Is::integer};
    node.integer = v;
    node.number = static_cast<double>(v);
    return put(node);
  }
  bool number_unsigned(std::uint64_t v) {
    Node node{.is = Node::Is::integer};
    node.too_large = v > static_cast<std::uint64_t>(INT64_MAX);
    node.integer = node.too_large ? INT64_MAX : static_cast<std::int64_t>(v);
    node.number = static_cast<double>(v);
    return put(node);
  }
  bool number_float(double v, const std::string& as_written) {
    Node node{.is = Node::Is::number};
    node.number = v;
    node.text = tree_->keep(as_written);
    return put(node);
  }
  bool string(std::string& v) {
    Node node{.is = Node::Is::text};
    node.text = tree_->keep(v);
    return put(node);
  }
  bool binary(binary_t& /*unused*/) { return false; }
  bool start_object(std::size_t /*unused*/) { return open(Node::Is::object); }
  bool start_array(std::size_t /*unused*/) { return open(Node::Is::list); }
  bool key(std::string& v) {
    key_ = tree_->keep(v);
    return true;
  }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::json::exception& error) {
    // The library's own words, without its name and number: "... - invalid literal; last read".
    std::string why = error.what();
    if (const auto at = why.find(": "); at != std::string::npos) why = why.substr(at + 2);
    if (const auto at = why.find("; last read"); at != std::string::npos) why.resize(at);
    problem_ = Problem{Kind::bad_text,
                       {},
                       fmt::format("this is not JSON ({}): {}",
                                   place_in(source_, position == 0 ? 0 : position - 1), why),
                       "JSON text in UTF-8",
                       R"({"key": "value"})",
                       {},
                       {}};
    return false;
  }

 private:
  bool put(Node node) {
    if (tree_->size() >= k_most_nodes) {
      return refuse(fmt::format("more than {} values in one text", k_most_nodes));
    }
    node.key = key_;
    key_ = {};
    last_ = tree_->add(depth_ == 0 ? Node::k_none : open_[depth_ - 1], node);
    return true;
  }
  bool open(Node::Is is) {
    if (depth_ >= k_deepest) {
      return refuse(fmt::format("nested deeper than {} levels", k_deepest));
    }
    if (!put({.is = is})) return false;
    open_[depth_++] = last_;
    return true;
  }
  bool close() {
    --depth_;
    return true;
  }
  bool refuse(std::string what) {
    problem_ = Problem{Kind::out_of_bounds, {}, std::move(what), "a smaller text", {}, {}, {}};
    return false;
  }

  Tree* tree_;
  std::string_view source_;
  std::string_view key_;
  std::uint32_t open_[k_deepest]{};
  std::size_t depth_{};
  std::uint32_t last_{};
  std::optional<Problem> problem_;
};

}  // namespace

std::string place_in(std::string_view text, std::size_t offset) {
  const auto before = text.substr(0, std::min(offset, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const auto start = before.rfind('\n');
  const auto column = before.size() - (start == std::string_view::npos ? 0 : start + 1) + 1;
  return fmt::format("line {}, column {}", line, column);
}

std::optional<Problem> parse_json(std::string_view json, Tree& tree) {
  tree.clear();
  if (json.size() > k_largest_text) {
    return Problem{Kind::out_of_bounds,
                   {},
                   fmt::format("the text is {} bytes long", json.size()),
                   fmt::format("at most {} bytes (4 MiB)", k_largest_text),
                   {},
                   "send it in parts",
                   {}};
  }
  tree.reserve_text(json.size());
  TreeBuilder builder(tree, json);
  const bool good = nlohmann::json::sax_parse(json.data(), json.data() + json.size(), &builder);
  if (good) return std::nullopt;
  if (builder.problem()) return builder.problem();
  return Problem{Kind::bad_text, {}, "this is not JSON", "JSON text in UTF-8", {}, {}, {}};
}

}  // namespace wm::calculation::detail
