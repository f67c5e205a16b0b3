#include "drawing/card.hpp"

#include <fmt/format.h>

#include "drawing/detail/card_pieces.hpp"

namespace wm::drawing {
namespace {

using detail::Flow;
using detail::Pieces;
using detail::Setter;

constexpr double k_side = 16;  ///< margins left and right, mm
constexpr double k_top = 12;
constexpr double k_running_head = 9;  ///< on all pages but the first
constexpr double k_footer = 27;       ///< from its rule to the edge of the sheet
constexpr double k_qr_side = 19;      ///< 45 squares of 0.42 mm for a hash of 64 digits
constexpr std::size_t k_most_pages = 1000;

struct Sheet {
  double width, height;
};
Sheet sheet(Paper paper) {
  // source: ISO 216 (A4 210 mm by 297 mm); ANSI/ASME Y14.1 size A (8.5 in by 11 in).
  return paper == Paper::a4 ? Sheet{210, 297} : Sheet{215.9, 279.4};
}

/// A hash in groups of four, the beginning only: enough to compare by eye.
std::string short_head(const std::string& head) {
  std::string out;
  for (std::size_t i = 0; i < head.size() && i < 16; ++i) {
    if (i > 0 && i % 4 == 0) out += ' ';
    out += head[i];
  }
  return head.size() > 16 ? out + " …" : out;
}

void fill(Flow& flow, const Setter& set, const Card& card, double width) {
  flow.add(detail::header_pieces(set, card, width));
  flow.add(detail::caution_pieces(set, card.cautions, width));
  int number = 0;
  for (const Section& section : card.sections) {
    flow.add(detail::heading_pieces(set, section.heading, width));
    for (const std::string& text : section.paragraphs)
      flow.add(detail::paragraph_pieces(set, text, width));
    for (const Step& step : section.steps)
      flow.add(detail::step_pieces(set, step, ++number, width));
    if (section.table) {
      detail::TablePieces table = detail::table_pieces(set, *section.table, width);
      double head_height = 0;
      for (const detail::Piece& piece : table.head) head_height += piece.height;
      // A head that would fill the page itself is printed once only.
      flow.begin_repeat(head_height <= detail::k_highest_row ? table.head : Pieces{});
      flow.add(std::move(table.head));
      for (Pieces& row : table.rows) flow.add(std::move(row));
      flow.end_repeat();
    }
  }
  // The closing line stays on the page of the last signature.
  Pieces signs = detail::sign_pieces(set, card.signatures, width);
  if (!signs.empty()) signs.back().keep_with_next = true;
  flow.add(std::move(signs));
  Pieces last = detail::row(
      {set.cell(0, width, card.defer_line.empty() ? standing_defer_line() : card.defer_line,
                detail::k_small)});
  last[0].gap_before = 5;
  detail::keep_together(last);
  flow.add(std::move(last));
}

void running_head(Page& page, const Setter& set, const Card& card, double width) {
  const auto& m = set.measurer();
  const detail::Style small = detail::k_small;
  page.items.emplace_back(detail::line_at(
      k_side, k_top, m.shortened(card.title, small.size, small.weight, width * 0.62), small));
  const std::string craft =
      card.aircraft.empty() ? card.registration : card.aircraft + " · " + card.registration;
  page.items.emplace_back(detail::line_at(
      k_side + width, k_top, m.shortened(craft, small.size, small.weight, width * 0.35), small,
      Anchor::end));
  const double y = k_top + 4.4;
  page.items.emplace_back(Line{{k_side, y}, {k_side + width, y}, {Role::ink, detail::k_hairline}});
}

void footer(Page& page, const Setter& set, const Card& card, double width, std::size_t number,
            std::size_t count) {
  const double top = page.height - k_footer;
  page.items.emplace_back(
      Line{{k_side, top}, {k_side + width, top}, {Role::ink, detail::k_hairline}});
  const bool tied = !card.head.empty();
  const double text_end = k_side + width - (tied ? k_qr_side + 3 : 0);
  const auto& m = set.measurer();
  const detail::Style small = detail::k_small;
  const std::string craft = fmt::format("{} · {} · {}", card.title, card.registration, card.date);
  const double y = top + 2.2;
  page.items.emplace_back(detail::line_at(
      k_side, y, m.shortened(craft, small.size, small.weight, text_end - k_side - 30), small));
  page.items.emplace_back(detail::line_at(text_end, y, fmt::format("page {} of {}", number, count),
                                          {detail::k_small_size, Weight::bold, Role::ink},
                                          Anchor::end));
  if (!tied) {
    page.items.emplace_back(detail::line_at(k_side, y + 4.4, "not tied to the record", small));
    return;
  }
  page.items.emplace_back(detail::line_at(
      k_side, y + 4.4,
      fmt::format("record at entry {}, head {}", card.sequence, short_head(card.head)), small));
  page.items.emplace_back(
      detail::line_at(k_side, y + 8.8, "the square holds the whole head hash", small));
  page.items.emplace_back(
      QrCode{{k_side + width - k_qr_side, top + 1.2}, k_qr_side, record_mark(card)});
}

}  // namespace

const std::string& standing_defer_line() {
  static const std::string line =
      "The maker's manual, the local rules and licensed practice decide; where this card differs "
      "from them, follow them. A person signs, not this paper.";
  return line;
}

std::string record_mark(const Card& card) {
  return fmt::format("WM1 {} {}", card.sequence, card.head);
}

Result<std::vector<Page>> lay_out(const Card& card, Paper paper) {
  const Sheet size = sheet(paper);
  const double width = size.width - 2 * k_side;
  if (auto sound = detail::check_card(card, width); !sound) return Fail(sound.error());

  const Setter set;
  Flow flow;
  fill(flow, set, card, width);
  auto columns =
      flow.pages({k_side, k_top, k_top + k_running_head, size.height - k_footer - 3}, k_most_pages);
  if (columns.empty())
    return Fail(Kind::out_of_bounds, fmt::format("the card takes more than {} pages", k_most_pages),
                "a shorter card; print long lists in parts");
  std::vector<Page> pages;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    Page page{size.width, size.height, std::move(columns[i])};
    if (i > 0) running_head(page, set, card, width);
    footer(page, set, card, width, i + 1, columns.size());
    pages.push_back(std::move(page));
  }
  return pages;
}

Result<std::string> card_pdf(const Card& card, Paper paper, const std::string& created) {
  const auto pages = lay_out(card, paper);
  if (!pages) return Fail(pages.error());
  return pdf(*pages, {card.title,
                      fmt::format("{} {}, record at entry {}", card.aircraft, card.registration,
                                  card.sequence),
                      created});
}

}  // namespace wm::drawing
