#pragma once
/// Dimensions with arrows, along the page or up it.

#include "drawing/detail/hose_space.hpp"
#include "drawing/detail/label_room.hpp"

namespace wm::drawing::detail {

/// Writes the figure above a dimension line along the page, or in a gap of one up the page: all
/// figures are read from the bottom of the sheet. Where two arrows do not fit between, they point
/// inwards from outside.
/// @source ISO 129-1 (from memory): extension lines, arrows inside or outside, figure at the line
struct Dimension {
  Point from, to;    ///< what is measured, on the page
  double line{};     ///< y (along the page) or x (up the page) of the dimension line
  std::string text;  ///< with its unit
};

void along_page(std::vector<Item>& items, LabelRoom& labels, const TextMeasurer& measurer,
                const Dimension& dimension);
void up_page(std::vector<Item>& items, LabelRoom& labels, const Dimension& dimension);

}  // namespace wm::drawing::detail
