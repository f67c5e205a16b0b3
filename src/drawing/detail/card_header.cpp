// Title, title block, cautions, headings and paragraphs of a card.
#include <algorithm>

#include <fmt/format.h>

#include "drawing/detail/card_pieces.hpp"

namespace wm::drawing::detail {
namespace {

constexpr double k_block_padding = 1.6;

struct Fact {
  std::string label, value;
};

/// One row of the title block: cells with a small label above their value.
Pieces block_row(const Setter& set, const std::vector<Fact>& facts, double width,
                 std::size_t columns, bool first) {
  const double each = width / static_cast<double>(columns);
  std::vector<Cell> cells;
  for (std::size_t i = 0; i < facts.size(); ++i) {
    Cell cell{static_cast<double>(i) * each + k_block_padding, each - 2 * k_block_padding, {}};
    set.write(cell, facts[i].label, k_small);
    set.write(cell, facts[i].value.empty() ? "–" : facts[i].value, k_strong);
    cells.push_back(std::move(cell));
  }
  Pieces pieces = row(cells);
  for (std::size_t p = 0; p < pieces.size(); ++p) {
    Piece& piece = pieces[p];
    for (Item& item : piece.items) item = moved(std::move(item), 0, 0.7);
    piece.height += 1.9;
    for (std::size_t i = 0; i <= columns; ++i) {
      const double x = static_cast<double>(i) * each;
      piece.items.emplace_back(Line{{x, 0}, {x, piece.height}, {Role::ink, k_hairline}});
    }
    if (p == 0)
      piece.items.emplace_back(
          Line{{0, 0}, {width, 0}, {Role::ink, first ? 2 * k_line : k_hairline}});
    if (p + 1 == pieces.size())
      piece.items.emplace_back(
          Line{{0, piece.height}, {width, piece.height}, {Role::ink, k_hairline}});
  }
  keep_together(pieces);
  return pieces;
}

void append(Pieces& to, Pieces from) {
  for (Piece& piece : from) to.push_back(std::move(piece));
}

}  // namespace

Pieces header_pieces(const Setter& set, const Card& card, double width) {
  Pieces out = row({set.cell(0, width, card.title, {k_title_size, Weight::bold, Role::ink})});
  if (!card.subtitle.empty())
    append(out, row({set.cell(0, width, card.subtitle, {3.8, Weight::normal, Role::second_ink})}));
  Pieces block = block_row(
      set, {{"aircraft", card.aircraft}, {"registration", card.registration}, {"date", card.date}},
      width, 3, true);
  block[0].gap_before = 2;
  append(out, std::move(block));
  for (std::size_t i = 0; i < card.facts.size(); i += 2) {
    std::vector<Fact> pair;
    for (std::size_t k = i; k < std::min(i + 2, card.facts.size()); ++k)
      pair.push_back({card.facts[k].first, card.facts[k].second});
    append(out, block_row(set, pair, width, 2, false));
  }
  return out;
}

Pieces caution_pieces(const Setter& set, const std::vector<std::string>& cautions, double width) {
  if (cautions.empty()) return {};
  constexpr double k_bar = 1.6;
  constexpr double k_inset = 5;
  Pieces out = row(
      {set.cell(k_inset, width - 2 * k_inset, "Cautions", {k_body_size, Weight::bold, Role::ink})});
  for (const std::string& caution : cautions) {
    Cell cell = set.cell(k_inset + 4, width - 2 * k_inset - 4, caution);
    if (cell.lines.empty()) continue;
    Pieces lines = row({cell});
    lines[0].items.emplace_back(line_at(k_inset, 0, "–", k_strong));
    append(out, std::move(lines));
  }
  keep_together(out);
  for (std::size_t i = 0; i < out.size(); ++i) {
    Piece& piece = out[i];
    const double top = i == 0 ? 1.8 : 0;
    const double below = i + 1 == out.size() ? 1.8 : 0.6;
    for (Item& item : piece.items) item = moved(std::move(item), 0, top);
    piece.height += top + below;
    const double h = piece.height;
    // Drawn piece by piece so that a box over a page break stays a box.
    // A little longer than the piece: no white hairline between one and the next.
    const double bar = i + 1 == out.size() ? h : h + 0.2;
    piece.items.emplace_back(Rect{{0, 0}, k_bar, bar, 0, Role::ink, {}});
    piece.items.emplace_back(Line{{width, 0}, {width, h}, {Role::ink, k_line}});
    if (i == 0) piece.items.emplace_back(Line{{0, 0}, {width, 0}, {Role::ink, k_line}});
    if (i + 1 == out.size())
      piece.items.emplace_back(Line{{0, h}, {width, h}, {Role::ink, k_line}});
  }
  out[0].gap_before = 4;
  return out;
}

Pieces heading_pieces(const Setter& set, const std::string& heading, double width) {
  Cell cell = set.cell(0, width, heading, {k_heading_size, Weight::bold, Role::ink});
  if (cell.lines.empty()) return {};
  Pieces out = row({cell});
  out[0].gap_before = 5.5;
  Piece& last = out.back();
  last.height += 0.6;
  last.items.emplace_back(Line{{0, last.height}, {width, last.height}, {Role::ink, k_line}});
  for (Piece& piece : out) piece.keep_with_next = true;
  return out;
}

Pieces paragraph_pieces(const Setter& set, const std::string& text, double width) {
  Cell cell = set.cell(0, width, text);
  if (cell.lines.empty()) return {};
  Pieces out = row({cell});
  out[0].gap_before = 1.8;
  return out;
}

}  // namespace wm::drawing::detail
