#pragma once
/// One way of setting text with pango, shared by measuring and painting so that the
/// printed line is as wide as the measured one.

#include <memory>
#include <string>

#include <pango/pangocairo.h>

#include "drawing/display_list.hpp"

namespace wm::drawing::detail {

inline constexpr double k_points_per_mm = 72.0 / 25.4;

struct GObjectFree {
  void operator()(gpointer object) const { g_object_unref(object); }
};
using LayoutPtr = std::unique_ptr<PangoLayout, GObjectFree>;

/// A layout in points, without hinting; `cr` may be null for measuring.
[[nodiscard]] LayoutPtr make_layout(cairo_t* cr);

/// Set text (already clean) and font.
void set_text(PangoLayout* layout, const std::string& text, double size_mm, Weight weight);

}  // namespace wm::drawing::detail
