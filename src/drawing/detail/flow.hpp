#pragma once
/// Pieces that flow down a column and over page breaks.

#include <vector>

#include "drawing/display_list.hpp"

namespace wm::drawing::detail {

/// The smallest thing that a page break leaves whole; its items start at (0, 0).
struct Piece {
  double height{};
  double gap_before{};    ///< left out at the top of a page
  bool keep_with_next{};  ///< no page break between this and the next
  std::vector<Item> items;
};
using Pieces = std::vector<Piece>;

/// Let the pieces hold together as far as a page allows.
void keep_together(Pieces& pieces);

/// The place for pieces on a sheet, mm.
struct Column {
  double left{};
  double first_top{};  ///< on the first page
  double next_top{};   ///< on all others
  double bottom{};
};

class Flow {
 public:
  void add(Piece piece);
  void add(Pieces pieces);

  /// From here to `end_repeat`, each new page begins with a copy of these pieces.
  /// They are not placed at once: add them as ordinary pieces too.
  void begin_repeat(Pieces head);
  void end_repeat() { repeat_ = -1; }

  /// Items page by page. A piece higher than a page overhangs: do not make such pieces.
  /// @return  at most `most_pages` pages; an empty list when there would be more.
  [[nodiscard]] std::vector<std::vector<Item>> pages(const Column& column,
                                                     std::size_t most_pages) const;

 private:
  struct Entry {
    Piece piece;
    int repeat{-1};
  };
  std::vector<Entry> entries_;
  std::vector<Pieces> repeats_;
  int repeat_{-1};

  friend class Placer;
};

}  // namespace wm::drawing::detail
