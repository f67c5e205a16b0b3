#include "drawing/text_plot.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace wm::drawing {
namespace {

class Grid {
 public:
  Grid(const Trend& trend, int columns, int rows)
      : t_(trend),
        columns_(columns),
        rows_(rows),
        cells_(static_cast<std::size_t>(rows), std::string(static_cast<std::size_t>(columns), ' ')),
        notes_(static_cast<std::size_t>(rows)) {
    low_ = high_ = t_.points.front().value;
    const auto take = [&](double v) {
      low_ = std::min(low_, v);
      high_ = std::max(high_, v);
    };
    for (const auto& p : t_.points) take(p.value);
    for (const auto* limit : {&t_.lower, &t_.upper})
      if (*limit) take((*limit)->value);
    for (const auto* end : {&t_.line_from, &t_.line_to})
      if (*end) take((*end)->value);
    if (high_ <= low_) {
      low_ -= 0.5;
      high_ += 0.5;
    }
  }

  std::string text() {
    for (const double when : t_.changes)
      if (const auto c = column(when)) bar(*c);
    for (const auto* limit : {&t_.lower, &t_.upper})
      if (*limit) level(**limit);
    line();
    for (const auto& p : t_.points) put(p, &p == &t_.points.back());
    return joined();
  }

 private:
  const Trend& t_;
  int columns_, rows_;
  double low_{}, high_{};
  std::vector<std::string> cells_;
  std::vector<std::string> notes_;

  [[nodiscard]] std::optional<std::size_t> column(double when) const {
    const double from = t_.points.front().when;
    const double to = t_.points.back().when;
    if (when < from || when > to) return std::nullopt;
    const double share = to > from ? (when - from) / (to - from) : 0.5;
    return static_cast<std::size_t>(std::lround(share * (columns_ - 1)));
  }
  [[nodiscard]] std::size_t row(double value) const {
    const double share = (value - low_) / (high_ - low_);
    return static_cast<std::size_t>(
        std::clamp(std::lround((1.0 - share) * (rows_ - 1)), 0L, static_cast<long>(rows_ - 1)));
  }
  void bar(std::size_t c) {
    for (auto& line : cells_) line[c] = '|';
  }
  void level(const BandLimit& limit) {
    const auto r = row(limit.value);
    std::ranges::replace(cells_[r], ' ', '-');
    notes_[r] += (notes_[r].empty() ? " " : ", ") + limit.text;
  }
  void line() {
    if (!t_.line_from || !t_.line_to) return;
    const auto from = column(t_.line_from->when);
    const auto to = column(t_.line_to->when);
    if (!from || !to || *to <= *from) return;
    for (std::size_t c = *from; c <= *to; ++c) {
      const double share = static_cast<double>(c - *from) / static_cast<double>(*to - *from);
      const double value = t_.line_from->value + share * (t_.line_to->value - t_.line_from->value);
      cells_[row(value)][c] = '.';
    }
  }
  void put(const TrendPoint& p, bool last) {
    const auto c = column(p.when);
    if (!c) return;
    char& cell = cells_[row(p.value)][*c];
    cell = last ? '@' : (cell == 'o' || cell == '8' ? '8' : 'o');
  }
  [[nodiscard]] std::string joined() const {
    std::string out;
    if (!t_.name.empty()) out += t_.name + "\n\n";
    for (std::size_t r = 0; r < cells_.size(); ++r) {
      const double value =
          high_ - (high_ - low_) * static_cast<double>(r) / static_cast<double>(rows_ - 1);
      const bool scale = r == 0 || r + 1 == cells_.size() || r == cells_.size() / 2;
      auto line = fmt::format("{:>9} {}{}", scale ? fmt::format("{:.4g}", value) : std::string{},
                              cells_[r], notes_[r]);
      while (line.ends_with(' ')) line.pop_back();
      out += line + "\n";
    }
    const auto room = static_cast<std::size_t>(columns_);
    const auto used = t_.first_when.size() + t_.last_when.size();
    out += std::string(10, ' ') + t_.first_when + std::string(used < room ? room - used : 1, ' ') +
           t_.last_when + "\n";
    out += std::string(10, ' ') + "o reading  @ the last" +
           (t_.last_text.empty() ? std::string{} : ": " + t_.last_text) +
           (t_.changes.empty() ? "" : "  | change of part") +
           (t_.line_from ? "  . line through them" : "") + "\n";
    return out;
  }
};

}  // namespace

Result<std::string> text_plot(const Trend& wanted, int columns, int rows) {
  if (columns < 20 || columns > 200 || rows < 5 || rows > 60)
    return Fail(Kind::out_of_bounds, fmt::format("a plot of {} by {} letters", columns, rows),
                "20 to 200 wide, 5 to 60 high");
  // The same rules as for the drawn one.
  if (const auto good = trend(wanted); !good) return Fail(good.error());
  return Grid(wanted, columns, rows).text();
}

}  // namespace wm::drawing
