#pragma once
/// Paints a display list with cairo; shared by PDF and PNG.

#include <memory>
#include <optional>

#include <cairo.h>

#include "drawing/detail/pango_text.hpp"
#include "drawing/display_list.hpp"
#include "drawing/palette.hpp"

namespace wm::drawing::detail {

struct SurfaceFree {
  void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
};
struct CairoFree {
  void operator()(cairo_t* c) const { cairo_destroy(c); }
};
using SurfacePtr = std::unique_ptr<cairo_surface_t, SurfaceFree>;
using CairoPtr = std::unique_ptr<cairo_t, CairoFree>;

/// One painter for one surface, in points; visit each item with it.
class CairoPainter {
 public:
  CairoPainter(cairo_t* cr, Ground ground) : cr_(cr), ground_(ground), layout_(make_layout(cr)) {}

  void operator()(const Line& line);
  void operator()(const Path& path);
  void operator()(const Rect& rect);
  void operator()(const Circle& circle);
  void operator()(const Text& text);
  void operator()(const QrCode& code);

  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }

 private:
  void use(Role role);
  void fill_and_stroke(std::optional<Role> fill, const Pen& pen);

  cairo_t* cr_;
  Ground ground_;
  LayoutPtr layout_;
  std::optional<Problem> problem_;
};

}  // namespace wm::drawing::detail
