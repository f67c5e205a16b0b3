#include "drawing/detail/hose_dimension.hpp"

#include <algorithm>

#include "drawing/detail/hose_pane.hpp"

namespace wm::drawing::detail {
namespace {

constexpr double k_arrows = 6;    // mm between, at least, for two arrows inside
constexpr double k_beyond = 1.2;  // of an extension line beyond the dimension line
constexpr double k_off = 0.8;     // extension line from what is measured

void write(std::vector<Item>& items, LabelRoom& labels, Text text) {
  labels.take(text);
  items.emplace_back(std::move(text));
}

}  // namespace

void along_page(std::vector<Item>& items, LabelRoom& labels, const TextMeasurer& measurer,
                const Dimension& d) {
  const double left = std::min(d.from.x, d.to.x);
  const double right = std::max(d.from.x, d.to.x);
  for (const Point& p : {d.from, d.to}) {
    const double way = d.line > p.y ? 1 : -1;
    items.emplace_back(Line{{p.x, p.y + way * k_off}, {p.x, d.line + way * k_beyond}, k_narrow});
    labels.avoid({{p.x, p.y}, {p.x, d.line}});
  }
  const double width = measurer.width(d.text, k_label_size, Weight::normal);
  const bool roomy = right - left >= k_arrows;
  const Point a{left, d.line};
  const Point b{right, d.line};
  if (roomy) {
    items.emplace_back(Line{a, b, k_narrow});
    arrow_head(items, b, a);
    arrow_head(items, a, b);
  } else {
    items.emplace_back(Line{{left - 4, d.line}, {right + 4, d.line}, k_narrow});
    arrow_head(items, {left - 4, d.line}, a);
    arrow_head(items, {right + 4, d.line}, b);
  }
  const bool fits = width + 1 < right - left;
  write(items, labels,
        {fits ? Point{(left + right) / 2, d.line - 0.7}
              : Point{right + (roomy ? 1.2 : 5), d.line + 0.8},
         d.text, k_label_size, Weight::normal, fits ? Anchor::middle : Anchor::start, Role::ink});
}

void up_page(std::vector<Item>& items, LabelRoom& labels, const Dimension& d) {
  const double top = std::min(d.from.y, d.to.y);
  const double bottom = std::max(d.from.y, d.to.y);
  for (const Point& p : {d.from, d.to}) {
    const double way = d.line > p.x ? 1 : -1;
    items.emplace_back(Line{{p.x + way * k_off, p.y}, {d.line + way * k_beyond, p.y}, k_narrow});
    labels.avoid({{p.x, p.y}, {d.line, p.y}});
  }
  const double middle = (top + bottom) / 2;
  const double half = 0.75 * k_label_size;
  const Point a{d.line, top};
  const Point b{d.line, bottom};
  if (bottom - top >= k_arrows + 2 * half) {
    items.emplace_back(Line{a, {d.line, middle - half}, k_narrow});
    items.emplace_back(Line{{d.line, middle + half}, b, k_narrow});
    arrow_head(items, b, a);
    arrow_head(items, a, b);
    write(items, labels,
          {{d.line, middle + 0.36 * k_label_size},
           d.text,
           k_label_size,
           Weight::normal,
           Anchor::middle,
           Role::ink});
    return;
  }
  if (bottom - top >= k_arrows) {
    items.emplace_back(Line{a, b, k_narrow});
    arrow_head(items, b, a);
    arrow_head(items, a, b);
  } else {
    items.emplace_back(Line{{d.line, top - 4}, {d.line, bottom + 4}, k_narrow});
    arrow_head(items, {d.line, top - 4}, a);
    arrow_head(items, {d.line, bottom + 4}, b);
  }
  write(items, labels,
        {{d.line + k_beyond + 0.6, middle + 0.36 * k_label_size},
         d.text,
         k_label_size,
         Weight::normal,
         Anchor::start,
         Role::ink});
}

}  // namespace wm::drawing::detail
