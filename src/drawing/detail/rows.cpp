#include "drawing/detail/rows.hpp"

#include <algorithm>

namespace wm::drawing::detail {
namespace {

double line_height(const Style& style) { return style.size * k_leading; }

/// From the top of a line to its baseline.
/// Ascent of the font is about 0.93 em and descent 0.24 em; the rest is leading.
double baseline(const Style& style) {
  return (line_height(style) - style.size * 1.17) / 2 + style.size * 0.93;
}

/// The lines from `next` on that fit into `room`, at least one; moves `next` past them.
double put_lines(const Cell& cell, std::size_t& next, double room, double top,
                 std::vector<Item>& items) {
  double y = next < cell.lines.size() ? top : 0;
  while (next < cell.lines.size()) {
    const StyledLine& line = cell.lines[next];
    const double high = line_height(line.style);
    if (y > top && y + high > room) break;
    if (!line.text.empty()) items.emplace_back(line_at(cell.x, y, line.text, line.style));
    y += high;
    ++next;
  }
  return y;
}

}  // namespace

void Setter::write(Cell& cell, std::string_view text, const Style& style) const {
  for (std::string& line : measurer_.wrap(text, style.size, style.weight, cell.width))
    cell.lines.push_back({std::move(line), style});
}

Cell Setter::cell(double x, double width, std::string_view text, const Style& style) const {
  Cell out{x, width, {}};
  write(out, text, style);
  return out;
}

double height(const Cell& cell) {
  double sum = 0;
  for (const StyledLine& line : cell.lines) sum += line_height(line.style);
  return sum;
}

Pieces row(const std::vector<Cell>& cells, double least_height) {
  Pieces pieces;
  std::vector<std::size_t> next(cells.size(), 0);
  const auto left_over = [&] {
    for (std::size_t i = 0; i < cells.size(); ++i)
      if (next[i] < cells[i].lines.size()) return true;
    return false;
  };
  // Small and large print beside each other stand on one baseline.
  double first = 0;
  for (const Cell& cell : cells)
    if (!cell.lines.empty()) first = std::max(first, baseline(cell.lines[0].style));
  do {
    Piece piece;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const bool begins = next[i] == 0 && !cells[i].lines.empty();
      const double top = begins ? first - baseline(cells[i].lines[0].style) : 0;
      piece.height =
          std::max(piece.height, put_lines(cells[i], next[i], k_highest_row, top, piece.items));
    }
    pieces.push_back(std::move(piece));
  } while (left_over());
  if (pieces.size() == 1) pieces[0].height = std::max(pieces[0].height, least_height);
  return pieces;
}

Text line_at(double x, double top, std::string text, const Style& style, Anchor anchor) {
  return {
      {x, top + baseline(style)}, std::move(text), style.size, style.weight, anchor, style.role};
}

}  // namespace wm::drawing::detail
