#include "drawing/detail/flow.hpp"

#include <algorithm>
#include <utility>

namespace wm::drawing::detail {

void keep_together(Pieces& pieces) {
  for (std::size_t i = 0; i + 1 < pieces.size(); ++i) pieces[i].keep_with_next = true;
}

/// Places entries one chain (pieces kept together) after the other.
class Placer {
 public:
  Placer(const Flow& flow, const Column& column) : flow_(flow), column_(column) { new_page(); }

  std::size_t next_chain(std::size_t from) {
    std::size_t end = from;
    while (end + 1 < flow_.entries_.size() && flow_.entries_[end].piece.keep_with_next) ++end;
    ++end;
    if (!empty_ && better_on_a_new_page(from, end)) break_before(from);
    for (std::size_t i = from; i < end; ++i) {
      const Flow::Entry& entry = flow_.entries_[i];
      if (piece_height(entry.piece) > room() && !empty_) break_before(i);
      put(entry.piece);
    }
    return end;
  }

  [[nodiscard]] std::vector<std::vector<Item>> take() { return std::move(pages_); }
  [[nodiscard]] std::size_t count() const { return pages_.size(); }

 private:
  /// A chain that a whole page could hold is not torn; a longer one starts here at once, so
  /// that no half page stays white, provided that its beginning does not stand alone.
  [[nodiscard]] bool better_on_a_new_page(std::size_t from, std::size_t end) const {
    const double height = chain_height(from, end);
    if (height <= room()) return false;
    if (height <= column_.bottom - column_.next_top) return true;
    return chain_height(from, std::min(from + 2, end)) > room();
  }
  [[nodiscard]] double room() const { return column_.bottom - y_ + 1e-6; }
  [[nodiscard]] double piece_height(const Piece& piece) const {
    return piece.height + (empty_ ? 0 : piece.gap_before);
  }
  [[nodiscard]] double chain_height(std::size_t from, std::size_t end) const {
    double height = 0;
    for (std::size_t i = from; i < end; ++i) {
      const Piece& piece = flow_.entries_[i].piece;
      height += piece.height + (i == from && empty_ ? 0 : piece.gap_before);
    }
    return height;
  }
  void new_page() {
    y_ = pages_.empty() ? column_.first_top : column_.next_top;
    pages_.emplace_back();
    empty_ = true;
  }
  void break_before(std::size_t at) {
    new_page();
    const int repeat = flow_.entries_[at].repeat;
    if (repeat < 0) return;
    for (const Piece& piece : flow_.repeats_[static_cast<std::size_t>(repeat)]) put(piece);
    empty_ = true;  // a head alone does not fill a page: no second break before the row
  }
  void put(const Piece& piece) {
    if (!empty_) y_ += piece.gap_before;
    for (const Item& item : piece.items) pages_.back().push_back(moved(item, column_.left, y_));
    y_ += piece.height;
    empty_ = false;
  }

  const Flow& flow_;
  const Column& column_;
  std::vector<std::vector<Item>> pages_;
  double y_{};
  bool empty_{true};
};

void Flow::add(Piece piece) { entries_.push_back({std::move(piece), repeat_}); }

void Flow::add(Pieces pieces) {
  for (Piece& piece : pieces) add(std::move(piece));
}

void Flow::begin_repeat(Pieces head) {
  repeat_ = static_cast<int>(repeats_.size());
  repeats_.push_back(std::move(head));
}

std::vector<std::vector<Item>> Flow::pages(const Column& column, std::size_t most_pages) const {
  Placer placer{*this, column};
  for (std::size_t i = 0; i < entries_.size();) {
    i = placer.next_chain(i);
    if (placer.count() > most_pages) return {};
  }
  return placer.take();
}

}  // namespace wm::drawing::detail
