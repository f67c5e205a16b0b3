#include "binder/trend_paper.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <ranges>

#include "drawing/text_measurer.hpp"
#include "quantity/date.hpp"

namespace wm::binder {
namespace {

constexpr double k_side = 16;  // mm
constexpr double k_top = 18;
constexpr double k_text = 3.2;
constexpr double k_small = 2.7;
constexpr double k_plot_height = 95;

std::vector<const desk::ReadingPoint*> drawn_points(const desk::CheckHistory& history) {
  std::vector<const desk::ReadingPoint*> out;
  for (const auto& p : history.points)
    if (p.number) out.push_back(&p);
  return out;
}

class Sheet {
 public:
  Sheet(drawing::Page page) : page_(std::move(page)) {}

  void text(const std::string& text, double size, drawing::Weight weight) {
    for (auto& line : measurer_.wrap(text, size, weight, width())) {
      y_ += size * 1.4;
      page_.items.emplace_back(drawing::Text{{k_side, y_}, std::move(line), size, weight});
    }
  }
  void plot(const drawing::Fragment& fragment) {
    drawing::place(page_, fragment.page, {k_side, y_ + 4});
    y_ += 4 + fragment.page.height + 3;
  }
  void gap(double mm) { y_ += mm; }
  [[nodiscard]] double width() const { return page_.width - 2 * k_side; }
  [[nodiscard]] double left_over() const { return page_.height - 18 - y_; }
  [[nodiscard]] drawing::Page page() const { return page_; }

 private:
  drawing::Page page_;
  drawing::TextMeasurer measurer_;
  double y_{k_top};
};

/// The readings below each other, newest first, as many as there is room for.
void readings(Sheet& sheet, const desk::CheckHistory& history) {
  sheet.text("Readings, newest first", k_text, drawing::Weight::bold);
  std::size_t shown = 0;
  for (const auto& p : std::ranges::reverse_view(history.points)) {
    if (sheet.left_over() < 3 * k_small * 1.4) break;
    auto line = fmt::format("{}  {}  {}", p.day, p.value, p.words);
    if (p.engine_hours) line += fmt::format("  at {:.1f} h", *p.engine_hours);
    if (!p.part.empty()) line += "  " + p.part;
    if (p.corrected) line += "  (corrected)";
    sheet.text(line, k_small, drawing::Weight::normal);
    ++shown;
  }
  if (shown < history.points.size())
    sheet.text(fmt::format("and {} more: see the record", history.points.size() - shown), k_small,
               drawing::Weight::normal);
}

}  // namespace

Result<drawing::Trend> trend_of(const desk::CheckHistory& history) {
  const auto points = drawn_points(history);
  if (points.empty())
    return Fail(Kind::not_applicable, "no reading of this check has a value",
                "one reading or more");
  const bool hours =
      std::ranges::all_of(points, [](const auto* p) { return p->engine_hours.has_value(); });
  const auto first = *quantity::parse_date(points.front()->day);
  const auto when = [&](const desk::ReadingPoint& p) {
    return hours ? *p.engine_hours
                 : static_cast<double>(quantity::days_between(first, *quantity::parse_date(p.day)));
  };
  drawing::Trend out;
  out.name = history.check.title;
  std::string part = points.front()->part;
  for (const auto* p : points) {
    out.points.push_back({when(*p), *p->number, p->uncertainty.value_or(0.0)});
    if (p->part != part) out.changes.push_back(when(*p));
    part = p->part;
  }
  std::ranges::stable_sort(out.points, {}, &drawing::TrendPoint::when);
  const auto ends = [&](const desk::ReadingPoint& p) {
    return hours ? fmt::format("{:.1f} h, {}", *p.engine_hours, p.day) : p.day;
  };
  out.first_when = ends(*points.front());
  out.last_when = ends(*points.back());
  out.last_text = points.back()->value;
  if (history.lowest) out.lower = {*history.lowest, "lowest " + history.check.lowest};
  if (history.highest) out.upper = {*history.highest, "highest " + history.check.highest};
  if (history.line) {
    out.line_from = {history.line->from_at, history.line->from_value, 0};
    out.line_to = {history.line->to_at, history.line->to_value, 0};
  }
  out.words = history.trend;
  return out;
}

Result<drawing::Page> trend_page(const desk::CheckHistory& history, const std::string& aircraft,
                                 bool letter) {
  auto trend = trend_of(history);
  if (!trend) return Fail(trend.error());
  // source: ISO 216 (A4 210 mm by 297 mm); ANSI/ASME Y14.1 size A (8.5 in by 11 in).
  Sheet sheet(letter ? drawing::Page{215.9, 279.4, {}} : drawing::Page{210, 297, {}});
  sheet.text(history.check.title, 5, drawing::Weight::bold);
  sheet.text(aircraft, k_text, drawing::Weight::normal);
  sheet.text(history.check.limit_source, k_small, drawing::Weight::normal);
  trend->name.clear();
  trend->words.clear();
  trend->width = sheet.width();
  trend->height = k_plot_height;
  const auto plot = drawing::trend(*trend);
  if (!plot) return Fail(plot.error());
  sheet.plot(*plot);
  for (const auto& line : history.trend_lines) sheet.text(line, k_text, drawing::Weight::bold);
  for (const auto& line : history.trend_notes) sheet.text(line, k_small, drawing::Weight::normal);
  sheet.gap(3);
  readings(sheet, history);
  return sheet.page();
}

}  // namespace wm::binder
