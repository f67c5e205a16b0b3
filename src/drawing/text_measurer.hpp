#pragma once
/// How wide a text is, and where its lines break, in the font that is printed.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/display_list.hpp"

namespace wm::drawing {

/// Measures as the PDF and PNG emitters paint: DejaVu Sans, without hinting.
/// One object for one thread; making one costs some milliseconds.
class TextMeasurer {
 public:
  TextMeasurer();
  ~TextMeasurer();
  TextMeasurer(TextMeasurer&&) noexcept;
  TextMeasurer& operator=(TextMeasurer&&) noexcept;
  TextMeasurer(const TextMeasurer&) = delete;
  TextMeasurer& operator=(const TextMeasurer&) = delete;

  /// @param size  Em of the font, mm.
  /// @return      Advance width in mm.
  [[nodiscard]] double width(std::string_view text, double size, Weight weight) const;

  /// Lines no wider than `width` mm; words are broken only where one is wider than that.
  ///
  /// A line feed in the text ends a line. Runs of spaces become one. The text is made
  /// harmless first. An empty text gives no line.
  /// @pre `width` holds at least one character; a single wider one overhangs.
  [[nodiscard]] std::vector<std::string> wrap(std::string_view text, double size, Weight weight,
                                              double width) const;

  /// The text if it fits, else its beginning with "…". Only for what stands in full elsewhere.
  [[nodiscard]] std::string shortened(std::string_view text, double size, Weight weight,
                                      double width) const;

 private:
  struct Hidden;
  std::unique_ptr<Hidden> hidden_;
};

}  // namespace wm::drawing
