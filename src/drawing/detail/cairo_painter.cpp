#include "drawing/detail/cairo_painter.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <string>

#include "drawing/detail/clean_text.hpp"
#include "drawing/qr.hpp"

namespace wm::drawing::detail {
namespace {

double pt(double mm) { return mm * k_points_per_mm; }

void rounded(cairo_t* cr, const Rect& r) {
  const double radius = pt(std::min({r.corner, r.width / 2, r.height / 2}));
  const double left = pt(r.at.x);
  const double top = pt(r.at.y);
  const double right = left + pt(r.width);
  const double bottom = top + pt(r.height);
  constexpr double quarter = std::numbers::pi / 2;
  cairo_new_sub_path(cr);
  cairo_arc(cr, right - radius, top + radius, radius, -quarter, 0);
  cairo_arc(cr, right - radius, bottom - radius, radius, 0, quarter);
  cairo_arc(cr, left + radius, bottom - radius, radius, quarter, 2 * quarter);
  cairo_arc(cr, left + radius, top + radius, radius, 2 * quarter, 3 * quarter);
  cairo_close_path(cr);
}

}  // namespace

void CairoPainter::use(Role role) {
  const Colour c = colour(role, ground_);
  cairo_set_source_rgb(cr_, c.red / 255.0, c.green / 255.0, c.blue / 255.0);
}

void CairoPainter::fill_and_stroke(std::optional<Role> fill, const Pen& pen) {
  if (fill) {
    use(*fill);
    cairo_fill_preserve(cr_);
  }
  if (pen.width > 0) {
    use(pen.role);
    cairo_set_line_width(cr_, pt(pen.width));
    const std::array dashes{pt(pen.dash_on), pt(pen.dash_off)};
    const bool dashed = pen.dash_on > 0;
    cairo_set_dash(cr_, dashes.data(), dashed ? 2 : 0, 0);
    cairo_stroke_preserve(cr_);
  }
  cairo_new_path(cr_);
}

void CairoPainter::operator()(const Line& line) {
  cairo_move_to(cr_, pt(line.from.x), pt(line.from.y));
  cairo_line_to(cr_, pt(line.to.x), pt(line.to.y));
  fill_and_stroke({}, line.pen);
}

void CairoPainter::operator()(const Path& path) {
  for (const Point& at : path.points) cairo_line_to(cr_, pt(at.x), pt(at.y));
  if (path.closed) cairo_close_path(cr_);
  fill_and_stroke(path.fill, path.pen);
}

void CairoPainter::operator()(const Rect& rect) {
  if (rect.corner > 0)
    rounded(cr_, rect);
  else
    cairo_rectangle(cr_, pt(rect.at.x), pt(rect.at.y), pt(rect.width), pt(rect.height));
  fill_and_stroke(rect.fill, rect.pen);
}

void CairoPainter::operator()(const Circle& circle) {
  cairo_new_sub_path(cr_);
  cairo_arc(cr_, pt(circle.centre.x), pt(circle.centre.y), pt(circle.radius), 0,
            2 * std::numbers::pi);
  cairo_close_path(cr_);
  fill_and_stroke(circle.fill, circle.pen);
}

void CairoPainter::operator()(const Text& text) {
  std::string line = clean_text(text.text);
  std::ranges::replace(line, '\n', ' ');
  if (line.empty() || text.size <= 0) return;
  pango_layout_set_width(layout_.get(), -1);
  set_text(layout_.get(), line, text.size, text.weight);
  int width = 0;
  pango_layout_get_size(layout_.get(), &width, nullptr);
  const double share = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? 0.5 : 1;
  const double x = pt(text.at.x) - share * width / PANGO_SCALE;
  const double y =
      pt(text.at.y) - static_cast<double>(pango_layout_get_baseline(layout_.get())) / PANGO_SCALE;
  use(text.role);
  cairo_move_to(cr_, x, y);
  pango_cairo_show_layout(cr_, layout_.get());
  cairo_new_path(cr_);
}

void CairoPainter::operator()(const QrCode& code) {
  auto squares = qr_squares(code.text);
  if (!squares) {
    if (!problem_) problem_ = squares.error();
    return;
  }
  const double side = pt(code.side) / (squares->side + 2 * k_quiet_zone);
  cairo_set_source_rgb(cr_, 1, 1, 1);
  cairo_rectangle(cr_, pt(code.at.x), pt(code.at.y), pt(code.side), pt(code.side));
  cairo_fill(cr_);
  // One path for all squares, so that no hairline shows between neighbours.
  for (int y = 0; y < squares->side; ++y)
    for (int x = 0; x < squares->side; ++x)
      if (squares->is_dark(x, y))
        cairo_rectangle(cr_, pt(code.at.x) + (x + k_quiet_zone) * side,
                        pt(code.at.y) + (y + k_quiet_zone) * side, side, side);
  cairo_set_source_rgb(cr_, 0, 0, 0);
  cairo_fill(cr_);
}

}  // namespace wm::drawing::detail
