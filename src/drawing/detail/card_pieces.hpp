#pragma once
/// The parts of a card as pieces; `width` is that of the column, mm.

#include "drawing/card.hpp"
#include "drawing/detail/rows.hpp"

namespace wm::drawing::detail {

[[nodiscard]] Pieces header_pieces(const Setter& set, const Card& card, double width);
[[nodiscard]] Pieces caution_pieces(const Setter& set, const std::vector<std::string>& cautions,
                                    double width);
[[nodiscard]] Pieces heading_pieces(const Setter& set, const std::string& heading, double width);
[[nodiscard]] Pieces paragraph_pieces(const Setter& set, const std::string& text, double width);
[[nodiscard]] Pieces step_pieces(const Setter& set, const Step& step, int number, double width);
[[nodiscard]] Pieces sign_pieces(const Setter& set, const std::vector<SignBlock>& blocks,
                                 double width);

/// Head and rows of a table apart, because the head comes again on each page.
struct TablePieces {
  Pieces head;
  std::vector<Pieces> rows;
};
[[nodiscard]] TablePieces table_pieces(const Setter& set, const Table& table, double width);

/// Least width of a table column, padding included.
inline constexpr double k_narrowest_column = 8;

/// Widths of the columns of a table, their sum being `width`.
[[nodiscard]] std::vector<double> column_widths(const Table& table, double width);

/// Everything that is wrong with a card, checked before anything is laid out.
[[nodiscard]] Result<Done> check_card(const Card& card, double width);

}  // namespace wm::drawing::detail
