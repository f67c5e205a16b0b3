#pragma once
/// Draws into one view of a hose sheet, cut to its frame; labels keep off what was drawn.

#include "drawing/detail/hose_space.hpp"
#include "drawing/detail/label_room.hpp"

namespace wm::drawing::detail {

/// Line widths, mm. @source ISO 128-2: narrow and wide lines in the ratio 1 to 2 (from memory)
inline constexpr Pen k_wide{Role::ink, 0.3};
inline constexpr Pen k_narrow{Role::ink, 0.15};
inline constexpr Pen k_behind{Role::second_ink, 0.15};
inline constexpr Pen k_ghost{Role::second_ink, 0.13, 1.6, 0.9};
inline constexpr double k_label_size = 2.3;

class Pane {
 public:
  Pane(std::vector<Item>& items, LabelRoom& labels, Placed placed)
      : items_(items), labels_(labels), placed_(std::move(placed)) {}

  [[nodiscard]] const Placed& placed() const { return placed_; }
  [[nodiscard]] LabelRoom& labels() { return labels_; }
  [[nodiscard]] Point at(const Vector& v) const { return placed_.at(v); }
  [[nodiscard]] double mm(double metres) const { return metres * placed_.mm_per_m; }

  void line(const std::vector<Point>& points, const Pen& pen, bool closed = false);
  /// Filled with paper, so that it hides what lies behind.
  void shape(const std::vector<Point>& points, const Pen& pen);
  void tube(const std::vector<Point>& along, double radius_mm, const Pen& pen, bool round_ends);
  void body(const Body& body, const Pen& pen, bool filled);
  void centreline(const std::vector<Point>& points);
  /// A filled arrow head with its tip at `tip`, coming from `from`.
  void arrow(Point from, Point tip);
  /// @return false where there is no room
  [[nodiscard]] bool label(const std::string& text, Point near, Weight weight = Weight::normal);
  /// How much of a polyline is to be seen here, mm.
  [[nodiscard]] double seen_of(const std::vector<Point>& points, bool closed) const;

 private:
  std::vector<Item>& items_;
  LabelRoom& labels_;
  Placed placed_;
};

/// A filled arrow head. @source ISO 129-1 (from memory): closed, about 15 degrees
void arrow_head(std::vector<Item>& items, Point from, Point tip);

}  // namespace wm::drawing::detail
