#pragma once
/// What must hold for every printed page, whatever is on it.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "drawing/text_measurer.hpp"

namespace wm::drawing::test {

struct Box {
  double left, top, right, bottom;
  std::string text;
};

inline std::vector<Box> text_boxes(const Page& page, const TextMeasurer& measurer) {
  std::vector<Box> out;
  for (const Item& item : page.items)
    if (const auto* t = std::get_if<Text>(&item)) {
      const double w = measurer.width(t->text, t->size, t->weight);
      const double left = t->at.x - (t->anchor == Anchor::start    ? 0
                                     : t->anchor == Anchor::middle ? w / 2
                                                                   : w);
      // Height of capitals and depth of a descender, about 0.73 em and 0.2 em.
      out.push_back({left, t->at.y - 0.73 * t->size, left + w, t->at.y + 0.2 * t->size, t->text});
    }
  return out;
}

/// No text leaves the page (less `margin`), and none lies on another.
inline void expect_tidy(const Page& page, const TextMeasurer& measurer, double margin) {
  const auto boxes = text_boxes(page, measurer);
  constexpr double slack = 0.06;  // rounding of glyph positions to 1/1024 point, summed up
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const Box& a = boxes[i];
    EXPECT_GE(a.left, margin - slack) << a.text;
    EXPECT_LE(a.right, page.width - margin + slack) << a.text;
    EXPECT_GE(a.top, 0) << a.text;
    EXPECT_LE(a.bottom, page.height) << a.text;
    for (std::size_t k = i + 1; k < boxes.size(); ++k) {
      const Box& b = boxes[k];
      const bool apart = a.right <= b.left + slack || b.right <= a.left + slack ||
                         a.bottom <= b.top + slack || b.bottom <= a.top + slack;
      EXPECT_TRUE(apart) << "\"" << a.text << "\" lies on \"" << b.text << "\"";
    }
  }
}

inline std::string all_text(const std::vector<Page>& pages) {
  std::string out;
  for (const Page& page : pages)
    for (const Item& item : page.items)
      if (const auto* t = std::get_if<Text>(&item)) out += t->text + ' ';
  return out;
}

inline std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++n;
  return n;
}

}  // namespace wm::drawing::test
