// Tables and sign blocks of a card.
#include <algorithm>
#include <numeric>

#include "drawing/detail/card_pieces.hpp"

namespace wm::drawing::detail {
namespace {

constexpr double k_padding = 1.2;

std::size_t column_count(const Table& table) {
  std::size_t count = table.heads.size();
  for (const auto& cells : table.rows) count = std::max(count, cells.size());
  return count;
}

Pieces cells_row(const Setter& set, const std::vector<std::string>& texts,
                 const std::vector<double>& widths, const Style& style) {
  std::vector<Cell> cells;
  double x = 0;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    if (i < texts.size())
      cells.push_back(set.cell(x + k_padding, widths[i] - 2 * k_padding, texts[i], style));
    x += widths[i];
  }
  Pieces out = row(cells, style.size * k_leading);
  for (Item& item : out[0].items) item = moved(std::move(item), 0, 0.9);
  out[0].height += 0.9;
  out.back().height += 0.9;
  return out;
}

void rule_below(Piece& piece, double width, const Pen& pen) {
  piece.items.emplace_back(Line{{0, piece.height}, {width, piece.height}, pen});
}

/// One field of two sign blocks side by side: a small name and what stands there.
struct SignField {
  const char* label;
  std::string SignBlock::* value;
};

constexpr double k_sign_gap = 8;

Pieces sign_row(const Setter& set, const SignBlock* const (&pair)[2], double each,
                const SignField& field) {
  std::vector<Cell> cells;
  for (int i = 0; i < 2; ++i) {
    if (pair[i] == nullptr) continue;
    const double x = i * (each + k_sign_gap);
    cells.push_back(set.cell(x, 20, field.label, k_small));
    cells.push_back(set.cell(x + 21, each - 21, pair[i]->*field.value, k_strong));
  }
  Pieces out = row(cells, 6);
  for (int i = 0; i < 2; ++i) {
    if (pair[i] == nullptr) continue;
    const double x = i * (each + k_sign_gap) + 21;
    Piece& last = out.back();
    last.items.emplace_back(
        Line{{x, last.height}, {x + each - 21, last.height}, {Role::second_ink, k_hairline}});
  }
  out[0].gap_before = 1.4;
  return out;
}

Pieces signature_row(const Setter& set, const SignBlock* const (&pair)[2], double each) {
  std::vector<Cell> cells;
  for (int i = 0; i < 2; ++i) {
    if (pair[i] == nullptr) continue;
    const double x = i * (each + k_sign_gap);
    cells.push_back(set.cell(x, 20, "signature", k_small));
    if (pair[i]->signed_already)
      cells.push_back(set.cell(x + 21, each - 21, "signed in the record", k_strong));
  }
  Pieces out = row(cells, 11);
  for (Item& item : out[0].items) item = moved(std::move(item), 0, 5.5);
  for (int i = 0; i < 2; ++i) {
    if (pair[i] == nullptr) continue;
    const double x = i * (each + k_sign_gap) + 21;
    out.back().items.emplace_back(
        Line{{x, out.back().height}, {x + each - 21, out.back().height}, {Role::ink, k_line}});
  }
  return out;
}

Pieces sign_pair(const Setter& set, const SignBlock* const (&pair)[2], double each) {
  std::vector<Cell> roles;
  for (int i = 0; i < 2; ++i)
    if (pair[i] != nullptr)
      roles.push_back(set.cell(i * (each + k_sign_gap), each, pair[i]->role, k_strong));
  Pieces out = row(roles, 5);
  const auto append = [&](Pieces more) {
    for (Piece& piece : more) out.push_back(std::move(piece));
  };
  append(sign_row(set, pair, each, {"name", &SignBlock::name}));
  append(sign_row(set, pair, each, {"certificate", &SignBlock::certificate}));
  append(sign_row(set, pair, each, {"date", &SignBlock::date}));
  append(signature_row(set, pair, each));
  keep_together(out);
  out[0].gap_before = 5;
  return out;
}

}  // namespace

std::vector<double> column_widths(const Table& table, double width) {
  const std::size_t count = column_count(table);
  std::vector<double> widths = table.shares;
  if (widths.empty()) widths.assign(count, 1);
  const double sum = std::accumulate(widths.begin(), widths.end(), 0.0);
  for (double& w : widths) w = w / sum * width;
  return widths;
}

TablePieces table_pieces(const Setter& set, const Table& table, double width) {
  const std::vector<double> widths = column_widths(table, width);
  TablePieces out;
  if (!table.heads.empty()) {
    out.head = cells_row(set, table.heads, widths, {k_small_size + 0.15, Weight::bold, Role::ink});
    for (Piece& piece : out.head) {
      piece.items.insert(piece.items.begin(), Rect{{0, 0}, width, piece.height, 0, Role::zinc, {}});
      piece.keep_with_next = true;
    }
    rule_below(out.head.back(), width, {Role::ink, k_line});
    out.head[0].gap_before = 2.5;
  }
  for (const auto& texts : table.rows) {
    Pieces pieces = cells_row(set, texts, widths, {3.0, Weight::normal, Role::ink});
    rule_below(pieces.back(), width, {Role::second_ink, k_hairline});
    out.rows.push_back(std::move(pieces));
  }
  return out;
}

Pieces sign_pieces(const Setter& set, const std::vector<SignBlock>& blocks, double width) {
  const double each = (width - k_sign_gap) / 2;
  Pieces out;
  for (std::size_t i = 0; i < blocks.size(); i += 2) {
    const SignBlock* const pair[2] = {&blocks[i], i + 1 < blocks.size() ? &blocks[i + 1] : nullptr};
    for (Piece& piece : sign_pair(set, pair, each)) out.push_back(std::move(piece));
  }
  return out;
}

}  // namespace wm::drawing::detail
