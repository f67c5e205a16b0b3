#pragma once
/// Finds free places for labels on a drawing.

#include <string>
#include <vector>

#include "drawing/detail/hose_space.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing::detail {

/// Keeps labels off each other, and off the lines where there is room to.
class LabelRoom {
 public:
  LabelRoom(const TextMeasurer& measurer, std::vector<Item>& items)
      : measurer_(measurer), items_(items) {}

  /// No label may lie here.
  void take(const Frame& box) { taken_.push_back(box); }
  /// A text is on the sheet: no label may lie on it.
  void take(const Text& text);
  /// A line runs here: labels avoid it.
  void avoid(const std::vector<Point>& line, bool closed = false);

  /// Writes `text` near `at` within `frame`, with a thin line to it where it stands away.
  /// @return false where there is no free place; nothing is written then
  [[nodiscard]] bool put(const std::string& text, Point at, const Frame& frame, double size,
                         Weight weight = Weight::normal);
  /// The same with its own place, if that is free.
  [[nodiscard]] bool is_free(const Frame& box) const;

 private:
  [[nodiscard]] double cost(const Frame& box) const;
  [[nodiscard]] bool leader_is_free(Point from, Point to) const;

  const TextMeasurer& measurer_;
  std::vector<Item>& items_;
  std::vector<Frame> taken_;
  std::vector<Point> lines_;
};

/// Where a text lies on the page, capitals to descenders.
[[nodiscard]] Frame box_of(const Text& text, const TextMeasurer& measurer);

}  // namespace wm::drawing::detail
