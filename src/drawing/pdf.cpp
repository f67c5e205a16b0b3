#include "drawing/pdf.hpp"

#include <chrono>
#include <stdexcept>
#include <string_view>

#include <cairo-pdf.h>
#include <fmt/format.h>

#include "drawing/detail/cairo_painter.hpp"
#include "drawing/detail/clean_text.hpp"

namespace wm::drawing {
namespace {

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

/// "2026-11-25" or "2026-11-25T14:05:00Z", a day and a time that exist.
bool is_date(std::string_view text) {
  constexpr std::string_view form = "dddd-dd-ddTdd:dd:ddZ";
  if (text.size() != 10 && text.size() != form.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool digit = text[i] >= '0' && text[i] <= '9';
    if (form[i] == 'd' ? !digit : text[i] != form[i]) return false;
  }
  const auto number = [&](std::size_t from, std::size_t count) {
    unsigned value = 0;
    for (char c : text.substr(from, count)) value = value * 10 + static_cast<unsigned>(c - '0');
    return value;
  };
  const std::chrono::year_month_day day{std::chrono::year{static_cast<int>(number(0, 4))},
                                        std::chrono::month{number(5, 2)},
                                        std::chrono::day{number(8, 2)}};
  if (!day.ok()) return false;
  return text.size() == 10 || (number(11, 2) < 24 && number(14, 2) < 60 && number(17, 2) < 60);
}

Result<std::string> creation_date(const std::string& text) {
  if (is_date(text)) return text.size() == 10 ? text + "T00:00:00Z" : text;
  Problem p{Kind::bad_text,
            "created",
            fmt::format("the date of the paper is \"{}\"",
                        detail::clean_text(std::string_view{text}.substr(0, 40))),
            "a date that exists, or a date with a time in UTC",
            "2026-11-25T14:05:00Z",
            {},
            {}};
  return Fail(std::move(p));
}

void set_metadata(cairo_surface_t* surface, const PdfInfo& info, const std::string& created) {
  const auto set = [&](cairo_pdf_metadata_t key, const std::string& value) {
    cairo_pdf_surface_set_metadata(surface, key, detail::clean_text(value).c_str());
  };
  set(CAIRO_PDF_METADATA_TITLE, info.title);
  set(CAIRO_PDF_METADATA_SUBJECT, info.subject);
  set(CAIRO_PDF_METADATA_CREATOR, "Witnessmark");
  set(CAIRO_PDF_METADATA_CREATE_DATE, created);
  set(CAIRO_PDF_METADATA_MOD_DATE, created);
}

}  // namespace

Result<std::string> pdf(std::span<const Page> pages, const PdfInfo& info) {
  if (pages.empty()) return Fail(Kind::missing, "nothing to print", "one page or more");
  for (const Page& page : pages)
    if (auto sound = check(page); !sound) return Fail(sound.error());
  const auto created = creation_date(info.created);
  if (!created) return Fail(created.error());

  std::string bytes;
  const auto pt = [](double mm) { return mm * detail::k_points_per_mm; };
  const detail::SurfacePtr surface{
      cairo_pdf_surface_create_for_stream(append, &bytes, pt(pages[0].width), pt(pages[0].height))};
  set_metadata(surface.get(), info, *created);
  {
    const detail::CairoPtr cr{cairo_create(surface.get())};
    detail::CairoPainter painter{cr.get(), Ground::print};
    for (const Page& page : pages) {
      cairo_pdf_surface_set_size(surface.get(), pt(page.width), pt(page.height));
      for (const Item& item : page.items) std::visit(painter, item);
      cairo_show_page(cr.get());
    }
    if (painter.problem()) {
      cairo_surface_finish(surface.get());
      return Fail(*painter.problem());
    }
    if (cairo_status(cr.get()) != CAIRO_STATUS_SUCCESS)
      throw std::runtime_error{cairo_status_to_string(cairo_status(cr.get()))};
  }
  cairo_surface_finish(surface.get());
  if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error{cairo_status_to_string(status)};
  return bytes;
}

}  // namespace wm::drawing
