#include "drawing/png.hpp"

#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "drawing/detail/cairo_painter.hpp"

namespace wm::drawing {
namespace {

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

Result<std::string> png(const Page& page, double dpi, Ground ground) {
  if (auto sound = check(page); !sound) return Fail(sound.error());
  if (!(dpi >= 20 && dpi <= 1200))
    return Fail(Kind::out_of_bounds, fmt::format("{} dots an inch", dpi), "20 to 1200 dots an inch",
                "150");
  const double width = std::ceil(page.width / 25.4 * dpi);
  const double height = std::ceil(page.height / 25.4 * dpi);
  if (width * height > 100e6 || width > 30000 || height > 30000)
    return Fail(Kind::out_of_bounds, fmt::format("a picture of {} by {} dots", width, height),
                "at most 100 million dots, 30000 on a side");

  const detail::SurfacePtr surface{cairo_image_surface_create(
      CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height))};
  const detail::CairoPtr cr{cairo_create(surface.get())};
  cairo_scale(cr.get(), dpi / 72, dpi / 72);
  detail::CairoPainter painter{cr.get(), ground};
  painter(Rect{{-1, -1}, page.width + 2, page.height + 2, 0, Role::paper, {}});
  for (const Item& item : page.items) std::visit(painter, item);
  if (painter.problem()) return Fail(*painter.problem());
  if (cairo_status(cr.get()) != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error{cairo_status_to_string(cairo_status(cr.get()))};
  std::string bytes;
  if (const auto status = cairo_surface_write_to_png_stream(surface.get(), append, &bytes);
      status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error{cairo_status_to_string(status)};
  return bytes;
}

}  // namespace wm::drawing
