#include "hose/stl.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>
#include <numeric>

#include "quantity/text.hpp"

namespace wm::hose {
namespace {

constexpr std::size_t k_head = 84, k_record = 50;
constexpr std::size_t k_told_every = 65536;
constexpr double k_farthest = 1000;  // metres: no engine bay reaches beyond

Problem bad(std::string what, std::string expected = "an STL file, text or binary") {
  return {Kind::bad_text, {}, std::move(what), std::move(expected), {}, {}, {}};
}
Problem stopped() { return {Kind::stopped, {}, "stopped", {}, {}, {}, {}}; }

std::uint32_t little(std::string_view bytes) {
  std::uint32_t out = 0;
  for (std::size_t i = 4; i-- > 0;) out = out << 8U | static_cast<unsigned char>(bytes[i]);
  return out;
}

struct Placing {
  double unit;
  const Vector& origin;
  [[nodiscard]] std::optional<Vector> put(double x, double y, double z) const {
    Vector out = origin + unit * Vector(x, y, z);
    if (!out.allFinite() || out.cwiseAbs().maxCoeff() > k_farthest) return std::nullopt;
    return out;
  }
};

Problem far_off(std::size_t triangle) {
  return {Kind::out_of_bounds,
          {},
          fmt::format("triangle {} has a corner that is no number or lies beyond 1 km", triangle),
          "corners near the aircraft",
          {},
          "Look whether the length of one unit of the file is right.",
          {}};
}

Result<std::vector<Triangle>> read_binary(std::string_view bytes, const Placing& placing,
                                          const GoOn& go_on) {
  const std::size_t count = little(bytes.substr(80, 4));
  std::vector<Triangle> out;
  out.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    if (i % k_told_every == 0 && go_on &&
        !go_on(static_cast<double>(i) / static_cast<double>(count)))
      return Fail(stopped());
    const auto record = bytes.substr(k_head + i * k_record, k_record);
    Triangle triangle;
    for (std::size_t corner = 0; corner < 3; ++corner) {
      double c[3];
      for (std::size_t k = 0; k < 3; ++k)
        c[k] = static_cast<double>(
            std::bit_cast<float>(little(record.substr(12 + 12 * corner + 4 * k, 4))));
      const auto at = placing.put(c[0], c[1], c[2]);
      if (!at) return Fail(far_off(i + 1));
      triangle[corner] = *at;
    }
    out.push_back(triangle);
  }
  return out;
}

/// Words of a text file, with the line they stand in.
class Words {
 public:
  explicit Words(std::string_view text) : text_(text) {}
  std::string_view next() {
    while (at_ < text_.size() && is_space(text_[at_])) line_ += text_[at_++] == '\n' ? 1U : 0U;
    const auto begin = at_;
    while (at_ < text_.size() && !is_space(text_[at_])) ++at_;
    return text_.substr(begin, at_ - begin);
  }
  void to_line_end() {
    while (at_ < text_.size() && text_[at_] != '\n') ++at_;
  }
  [[nodiscard]] std::size_t line() const { return line_; }
  [[nodiscard]] double share() const {
    return static_cast<double>(at_) / static_cast<double>(std::max<std::size_t>(text_.size(), 1));
  }

 private:
  static bool is_space(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
  std::string_view text_;
  std::size_t at_{}, line_{1};
};

bool is_word(std::string_view got, std::string_view wanted) {
  return got.size() == wanted.size() &&
         std::equal(got.begin(), got.end(), wanted.begin(), [](char a, char b) {
           return (a >= 'A' && a <= 'Z' ? static_cast<char>(a - 'A' + 'a') : a) == b;
         });
}

class TextFile {
 public:
  TextFile(std::string_view text, const Placing& placing, const GoOn& go_on)
      : words_(text), placing_(placing), go_on_(go_on) {}

  Result<std::vector<Triangle>> read() {
    if (!is_word(words_.next(), "solid"))
      return Fail(
          bad("no STL file: it begins neither with `solid` nor with the header and triangle count "
              "of the binary form"));
    words_.to_line_end();
    for (;;) {
      const auto word = words_.next();
      if (is_word(word, "endsolid")) {
        words_.to_line_end();
        const auto more = words_.next();
        if (more.empty()) return std::move(out_);
        if (!is_word(more, "solid")) return Fail(unexpected(more, "solid, or the end"));
        words_.to_line_end();
        continue;
      }
      if (!is_word(word, "facet")) return Fail(unexpected(word, "facet or endsolid"));
      if (auto problem = facet()) return Fail(std::move(*problem));
      if (out_.size() % k_told_every == 0 && go_on_ && !go_on_(words_.share()))
        return Fail(stopped());
    }
  }

 private:
  [[nodiscard]] Problem unexpected(std::string_view got, std::string_view wanted) const {
    return bad(got.empty() ? fmt::format("line {}: the file ends too early", words_.line())
                           : fmt::format("line {}: \"{}\"", words_.line(), got.substr(0, 40)),
               std::string(wanted));
  }
  std::optional<Problem> facet() {
    for (const std::string_view wanted : {"normal", "", "", "", "outer", "loop"}) {
      const auto word = words_.next();
      if (word.empty() || (!wanted.empty() && !is_word(word, wanted)))
        return unexpected(word, wanted.empty() ? "a number" : wanted);
    }
    Triangle triangle;
    for (auto& corner : triangle) {
      const auto word = words_.next();
      if (!is_word(word, "vertex")) return unexpected(word, "vertex");
      double c[3];
      for (auto& value : c) {
        const auto text = words_.next();
        const auto number = quantity::parse_number(text);
        if (!number) return unexpected(text, "a number");
        value = *number;
      }
      const auto at = placing_.put(c[0], c[1], c[2]);
      if (!at) return far_off(out_.size() + 1);
      corner = *at;
    }
    for (const std::string_view wanted : {"endloop", "endfacet"}) {
      const auto word = words_.next();
      if (!is_word(word, wanted)) return unexpected(word, wanted);
    }
    out_.push_back(triangle);
    return std::nullopt;
  }

  Words words_;
  const Placing& placing_;
  const GoOn& go_on_;
  std::vector<Triangle> out_;
};

}  // namespace

Result<std::vector<Triangle>> read_stl(std::string_view bytes, double unit, const Vector& origin,
                                       const GoOn& go_on) {
  const Placing placing{unit, origin};
  const bool binary = bytes.size() >= k_head &&
                      (bytes.size() - k_head) / k_record == little(bytes.substr(80, 4)) &&
                      (bytes.size() - k_head) % k_record == 0;
  if (!binary && bytes.size() >= k_head && !is_word(bytes.substr(0, 5), "solid")) {
    const auto count = little(bytes.substr(80, 4));
    return Fail(bad(fmt::format("a binary STL file of {} triangles has {} bytes; this one has {}",
                                count, k_head + std::size_t{count} * k_record, bytes.size()),
                    "the whole file"));
  }
  auto out = binary ? read_binary(bytes, placing, go_on) : TextFile(bytes, placing, go_on).read();
  if (out && out->empty()) return Fail(bad("the file holds no triangle"));
  return out;
}

Result<std::optional<OpenEdge>> open_edge(const std::vector<Triangle>& triangles,
                                          const GoOn& go_on) {
  // Corners by number: sorted once, equal ones get the same.
  const std::size_t corners = 3 * triangles.size();
  const auto corner = [&](std::size_t i) -> const Vector& { return triangles[i / 3][i % 3]; };
  std::vector<std::uint32_t> order(corners), number(corners);
  std::iota(order.begin(), order.end(), 0U);
  if (go_on && !go_on(0.1)) return Fail(stopped());
  std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
    const Vector &p = corner(a), &q = corner(b);
    return std::lexicographical_compare(p.data(), p.data() + 3, q.data(), q.data() + 3);
  });
  if (go_on && !go_on(0.5)) return Fail(stopped());
  std::uint32_t last = 0;
  for (std::size_t i = 0; i < corners; ++i) {
    if (i > 0 && corner(order[i]) != corner(order[i - 1])) last = static_cast<std::uint32_t>(i);
    number[order[i]] = last;
  }
  struct Edge {
    std::uint32_t low, high;
    std::int32_t way;
  };
  std::vector<Edge> edges;
  edges.reserve(corners);
  for (std::size_t t = 0; t < triangles.size(); ++t) {
    const std::uint32_t n[3] = {number[3 * t], number[3 * t + 1], number[3 * t + 2]};
    if (n[0] == n[1] || n[1] == n[2] || n[2] == n[0]) continue;
    for (int k = 0; k < 3; ++k) {
      const auto a = n[k], b = n[(k + 1) % 3];
      edges.push_back({std::min(a, b), std::max(a, b), a < b ? 1 : -1});
    }
  }
  std::sort(edges.begin(), edges.end(), [](const Edge& a, const Edge& b) {
    return a.low != b.low ? a.low < b.low : a.high < b.high;
  });
  if (go_on && !go_on(0.9)) return Fail(stopped());
  std::optional<OpenEdge> out;
  for (std::size_t i = 0; i < edges.size();) {
    std::int32_t sum = 0;
    std::size_t j = i;
    for (; j < edges.size() && edges[j].low == edges[i].low && edges[j].high == edges[i].high; ++j)
      sum += edges[j].way;
    if (sum != 0) {
      if (!out) out = OpenEdge{0, corner(order[edges[i].low]), corner(order[edges[i].high])};
      ++out->edges;
    }
    i = j;
  }
  return out;
}

}  // namespace wm::hose
