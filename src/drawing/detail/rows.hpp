#pragma once
/// Rows of cells with wrapped text, cut into pieces between lines where they are high.

#include <string>
#include <string_view>
#include <vector>

#include "drawing/detail/flow.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing::detail {

/// Font sizes of the paper, mm (points in brackets).
inline constexpr double k_title_size = 6.0;    // 17
inline constexpr double k_heading_size = 4.2;  // 12
inline constexpr double k_body_size = 3.35;    // 9.5
inline constexpr double k_small_size = 2.65;   // 7.5
inline constexpr double k_leading = 1.38;      ///< line height as a multiple of the em
inline constexpr double k_hairline = 0.15;
inline constexpr double k_line = 0.3;

struct Style {
  double size{k_body_size};
  Weight weight{Weight::normal};
  Role role{Role::ink};
};
inline constexpr Style k_body{};
inline constexpr Style k_strong{k_body_size, Weight::bold, Role::ink};
inline constexpr Style k_small{k_small_size, Weight::normal, Role::second_ink};

struct StyledLine {
  std::string text;
  Style style;
};

/// A column of lines at a place in a row.
struct Cell {
  double x{};
  double width{};
  std::vector<StyledLine> lines;
};

/// Writes with one measurer.
class Setter {
 public:
  [[nodiscard]] const TextMeasurer& measurer() const { return measurer_; }

  /// Wrap and append to a cell.
  void write(Cell& cell, std::string_view text, const Style& style) const;
  [[nodiscard]] Cell cell(double x, double width, std::string_view text,
                          const Style& style = k_body) const;
  [[nodiscard]] double width(std::string_view text, const Style& style) const {
    return measurer_.width(text, style.size, style.weight);
  }

 private:
  TextMeasurer measurer_;
};

/// Height of a cell's lines.
[[nodiscard]] double height(const Cell& cell);

/// The cells side by side. One piece of at least `least_height` where all fit within
/// `k_highest_row`, else several, each cut between lines.
inline constexpr double k_highest_row = 60;
[[nodiscard]] Pieces row(const std::vector<Cell>& cells, double least_height = 0);

/// A text on one line with its baseline where a line of this style has it.
[[nodiscard]] Text line_at(double x, double top, std::string text, const Style& style,
                           Anchor anchor = Anchor::start);

}  // namespace wm::drawing::detail
