#include "drawing/detail/pango_text.hpp"

#include <new>

#if defined(__SANITIZE_ADDRESS__)
// fontconfig loses sight of what it set up first: 288 bytes, rarely some kilobytes when two
// threads begin at once; seen with 2.14.1, once a process however many texts are set. Weak, so that
// a program may bring its own list.
extern "C" __attribute__((weak)) const char* __lsan_default_suppressions();              // NOLINT
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig\n"; }  // NOLINT
#endif

namespace wm::drawing::detail {

LayoutPtr make_layout(cairo_t* cr) {
  using FontMapPtr = std::unique_ptr<PangoFontMap, GObjectFree>;
  using ContextPtr = std::unique_ptr<PangoContext, GObjectFree>;
  // An own font map: the default one is shared within a thread, and its settings with it.
  const FontMapPtr fonts{pango_cairo_font_map_new()};
  if (!fonts) throw std::bad_alloc{};
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(fonts.get()), 72);
  const ContextPtr context{pango_font_map_create_context(fonts.get())};
  if (cr != nullptr) pango_cairo_update_context(cr, context.get());
  const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> options{
      cairo_font_options_create(), &cairo_font_options_destroy};
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), options.get());
  pango_cairo_context_set_resolution(context.get(), 72);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  // The machine's language must not change where a line breaks.
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  pango_context_set_base_dir(context.get(), PANGO_DIRECTION_LTR);
  LayoutPtr layout{pango_layout_new(context.get())};
  if (!layout) throw std::bad_alloc{};
  pango_layout_set_auto_dir(layout.get(), FALSE);
  return layout;
}

void set_text(PangoLayout* layout, const std::string& text, double size_mm, Weight weight) {
  const std::unique_ptr<PangoFontDescription, decltype(&pango_font_description_free)> font{
      pango_font_description_new(), &pango_font_description_free};
  pango_font_description_set_family(font.get(), "DejaVu Sans");
  pango_font_description_set_weight(
      font.get(), weight == Weight::bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(font.get(), size_mm * k_points_per_mm * PANGO_SCALE);
  pango_layout_set_font_description(layout, font.get());
  pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
}

}  // namespace wm::drawing::detail
