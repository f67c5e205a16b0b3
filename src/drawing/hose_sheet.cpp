#include "drawing/hose_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "drawing/detail/hose_gauges.hpp"
#include "drawing/detail/hose_pane.hpp"
#include "drawing/detail/hose_views.hpp"
#include "drawing/detail/hose_words.hpp"

namespace wm::drawing {
namespace {

using detail::Frame;
using detail::k_narrow;
using detail::k_wide;
using detail::Subject;

constexpr double k_margin = 9;
constexpr double k_inside = 2.5;  // text to the frame lines
constexpr double k_words_wide = 88;
constexpr double k_band_high = 49;
constexpr double k_dial_wide = 37;
constexpr double k_title_high = 31;

Page blank(Paper paper) {
  // source: ISO 216 (A4 297 mm by 210 mm); ANSI/ASME Y14.1 size A (11 in by 8.5 in).
  return paper == Paper::a4 ? Page{297, 210, {}} : Page{279.4, 215.9, {}};
}

std::string unit_words(const quantity::Unit& unit) {
  if (unit.symbol == "in") return "inches";
  if (unit.symbol == "ft") return "feet";
  return std::string(unit.symbol);
}

/// One field of the title block: what it is, small, and what it says.
void field(Page& page, const TextMeasurer& measurer, const Frame& box, std::string_view what,
           const std::string& text) {
  page.items.emplace_back(Rect{{box.left, box.top}, box.width, box.height, 0, {}, k_narrow});
  page.items.emplace_back(Text{{box.left + 1, box.top + 2.1},
                               std::string(what),
                               1.7,
                               Weight::normal,
                               Anchor::start,
                               Role::second_ink});
  if (text.empty()) return;
  page.items.emplace_back(Text{{box.left + 1, box.bottom() - 1.2},
                               measurer.shortened(text, 2.5, Weight::normal, box.width - 2),
                               2.5,
                               Weight::normal,
                               Anchor::start,
                               Role::ink});
}

/// @source ISO 7200 (from memory): fields of a title block
Result<Done> title_block(Page& page, const TextMeasurer& measurer, const Subject& subject,
                         const Frame& frame, const std::string& scale) {
  const auto& in = subject.in;
  const double row = 6.2;
  const double title_high = frame.height - 3 * row;
  page.items.emplace_back(Rect{{frame.left, frame.top}, frame.width, frame.height, 0, {}, k_wide});
  page.items.emplace_back(Text{{frame.left + 1, frame.top + 2.1},
                               "hose sheet",
                               1.7,
                               Weight::normal,
                               Anchor::start,
                               Role::second_ink});
  double size = 0;
  std::vector<std::string> lines;
  bool fits = false;
  for (int tenths = 42; tenths >= 20 && !fits; tenths -= 2) {
    size = 0.1 * tenths;
    lines = measurer.wrap(in.title, size, Weight::bold, frame.width - 2.5);
    fits = 2.6 + 1.2 * size * static_cast<double>(lines.size()) <= title_high;
  }
  if (!fits)
    return Fail(Problem{Kind::out_of_bounds,
                        "title",
                        "the title is too long for its block",
                        "some words that name the hose",
                        "oil cooler, pressure side",
                        {},
                        {}});
  double y = frame.top + 2.4 + size;
  for (const auto& line : lines) {
    page.items.emplace_back(
        Text{{frame.left + 1.2, y}, line, size, Weight::bold, Anchor::start, Role::ink});
    y += 1.2 * size;
  }
  const auto cell = [&](int r, double from, double to) {
    return Frame{frame.left + from * frame.width, frame.top + title_high + r * row,
                 (to - from) * frame.width, row};
  };
  const auto day = in.drawn_on.value_or(subject.about.today);
  field(page, measurer, cell(0, 0, 0.28), "date", day.ok() ? quantity::print_date(day) : "");
  field(page, measurer, cell(0, 0.28, 0.46), "scale", scale);
  field(page, measurer, cell(0, 0.46, 0.78), "figures in", unit_words(subject.unit));
  field(page, measurer, cell(0, 0.78, 1), "sheet", "1 of 1");
  field(page, measurer, cell(1, 0, 0.62), "drawn by", in.drawn_by);
  field(page, measurer, cell(1, 0.62, 1), "signed", "");
  field(page, measurer, cell(2, 0, 0.62), "checked by", "");
  field(page, measurer, cell(2, 0.62, 1), "signed, date", "");
  return Done{};
}

}  // namespace

Result<Page> lay_out_hose(const hose::HoseSheetInput& in, const hose::HoseSheetAnswer& answer,
                          const HoseSheetAbout& about, Paper paper) {
  const Subject subject(in, answer, about);
  const TextMeasurer measurer;
  Page page = blank(paper);
  const Frame sheet{k_margin, k_margin, page.width - 2 * k_margin, page.height - 2 * k_margin};
  page.items.emplace_back(
      Rect{{sheet.left, sheet.top}, sheet.width, sheet.height, 0, {}, {Role::ink, 0.5}});
  const double split = sheet.right() - k_words_wide;
  const double band = sheet.bottom() - k_band_high;
  page.items.emplace_back(Line{{split, sheet.top}, {split, sheet.bottom()}, k_wide});
  page.items.emplace_back(Line{{sheet.left, band}, {split, band}, k_wide});

  const Frame views{sheet.left + k_inside, sheet.top + k_inside, split - sheet.left - 2 * k_inside,
                    band - sheet.top - 2 * k_inside};
  const auto drawn = detail::draw_views(page.items, measurer, subject, views);
  if (!drawn) return Fail(drawn.error());

  const double dial = split - k_dial_wide - k_inside;
  const double left_wide = dial - sheet.left - 3 * k_inside;
  detail::draw_window(page.items, measurer, subject,
                      {sheet.left + k_inside, band + 1.2, left_wide, 23});
  detail::draw_strip(page.items, measurer, subject,
                     {sheet.left + k_inside, band + 25.2, left_wide, k_band_high - 26});
  detail::draw_dial(page.items, measurer, subject,
                    {dial, band + 1.2, k_dial_wide, k_band_high - 2});

  const Frame title{split, sheet.bottom() - k_title_high, k_words_wide, k_title_high};
  if (auto done = title_block(page, measurer, subject, title, drawn->scale.text()); !done)
    return Fail(done.error());

  std::vector<std::string> not_drawn;
  for (const auto& name : drawn->not_shown) not_drawn.push_back(name + ": outside of the views");
  for (const auto& name : drawn->not_named) not_drawn.push_back(name + ": drawn without its name");
  std::vector<Frame> columns{{split + k_inside, sheet.top + 1.6, k_words_wide - 2 * k_inside,
                              title.top - sheet.top - 2.4}};
  Frame spare = drawn->spare;
  spare.top += 0.5;
  if (spare.width >= 45 && spare.height >= 14) columns.push_back(spare);
  const auto blocks = detail::blocks_of(subject, not_drawn);
  if (!detail::set_blocks(page.items, measurer, blocks, columns))
    return Fail(Kind::out_of_bounds, "the words of this sheet do not fit on one page",
                "shorter names and sources");
  const std::string arrangement =
      "Views in third-angle arrangement: each stands on the side from which it is seen.";
  page.items.emplace_back(Text{{views.left, band - 1.2},
                               measurer.shortened(arrangement, 1.9, Weight::normal, views.width),
                               1.9,
                               Weight::normal,
                               Anchor::start,
                               Role::second_ink});
  if (auto sound = check(page); !sound) return Fail(sound.error());
  return page;
}

}  // namespace wm::drawing
