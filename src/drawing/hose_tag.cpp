#include "drawing/hose_tag.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "drawing/text_measurer.hpp"
#include "quantity/date.hpp"

namespace wm::drawing {
namespace {

constexpr double k_width = 110;  ///< mm
constexpr double k_side = 4;
constexpr double k_top = 4;
constexpr double k_square = 27;  ///< of the code, with its quiet zone
constexpr double k_title_size = 4.2;
constexpr double k_proof_size = 3.4;
constexpr double k_small_size = 2.8;
constexpr double k_line = 1.35;        ///< line feed, times the size
constexpr double k_highest = 120;      ///< two of them and the words below still fit a letter page
constexpr double k_hole_radius = 2;    ///< for a tie
constexpr double k_band = 12;          ///< room for the hole at the left
constexpr double k_cut_from_top = 24;  ///< of the sheet, mm

struct Line {
  std::string text;
  double size;
  Weight weight;
  Role role{Role::ink};
};

/// Lines below each other, each broken where the room ends.
class Column {
 public:
  Column(double left, double width, double top) : left_(left), width_(width), y_(top) {}

  void add(const Line& line) {
    if (line.text.empty()) return;
    for (const auto& part : measurer_.wrap(line.text, line.size, line.weight, width_)) {
      y_ += line.size * k_line;
      items_.emplace_back(
          Text{{left_, y_}, part, line.size, line.weight, Anchor::start, line.role});
    }
  }
  void gap(double mm) { y_ += mm; }
  [[nodiscard]] double bottom() const { return y_; }
  [[nodiscard]] const std::vector<Item>& items() const { return items_; }

 private:
  TextMeasurer measurer_;
  double left_, width_, y_;
  std::vector<Item> items_;
};

std::string labelled(std::string_view label, const std::string& text) {
  return text.empty() ? std::string{} : fmt::format("{} {}", label, text);
}

}  // namespace

std::string quarter_code(quantity::Date day) {
  const auto month = static_cast<unsigned>(day.month());
  return fmt::format("{}Q{:02}", (month - 1) / 3 + 1, static_cast<int>(day.year()) % 100);
}

Result<Page> lay_out_tag(const HoseTag& tag) {
  if (tag.title.empty())
    return Fail(Problem{Kind::missing,
                        "title",
                        "the tag has no title",
                        "which hose it is",
                        "oil cooler, pressure side",
                        {},
                        {}});
  const double room = tag.mark.empty() ? 0 : k_square + 2;
  Column column(k_band, k_width - k_band - k_side - room, k_top);
  column.add({tag.title, k_title_size, Weight::bold});
  column.add({labelled(tag.registration + ":", tag.between), k_small_size, Weight::normal});
  column.add({tag.made_as, k_small_size, Weight::normal});
  column.add({labelled("Clocking", tag.clocking), k_small_size, Weight::normal});
  column.gap(1.2);
  column.add({tag.proved ? "Proved: " + tag.proof : "NOT PROVED. " + tag.proof, k_proof_size,
              Weight::bold});
  column.add({labelled("By", tag.by), k_small_size, Weight::normal});
  column.gap(0.8);
  column.add({labelled("Working pressure", tag.working_pressure), k_small_size, Weight::normal});
  column.add({labelled("Assembled", tag.assembled), k_small_size, Weight::normal});
  column.add({labelled("Number", tag.part), k_small_size, Weight::normal});
  column.add({tag.mark_words, k_small_size, Weight::normal, Role::second_ink});
  column.add({"Not a maker's tag: the maker's data and the record decide.", k_small_size,
              Weight::normal, Role::second_ink});
  Page page{k_width, std::max(column.bottom() + k_top, room + 2 * k_top), column.items()};
  if (page.height > k_highest)
    return Fail(Problem{Kind::out_of_bounds,
                        "title",
                        "the tag would be higher than half a page",
                        "shorter words for the hose and its ends",
                        {},
                        {},
                        {}});
  page.items.emplace_back(Rect{{0, 0}, page.width, page.height, 0, std::nullopt, {Role::ink, 0.3}});
  page.items.emplace_back(
      Circle{{k_band / 2, page.height / 2}, k_hole_radius, std::nullopt, {Role::ink, 0.3}});
  if (!tag.mark.empty())
    page.items.emplace_back(QrCode{{k_width - k_side - k_square, k_top}, k_square, tag.mark});
  return page;
}

Result<Page> lay_out_tags(const HoseTag& tag, Paper paper) {
  const auto one = lay_out_tag(tag);
  if (!one) return Fail(one.error());
  // source: ISO 216 (A4 210 mm by 297 mm); ANSI/ASME Y14.1 size A (8.5 in by 11 in).
  Page page = paper == Paper::a4 ? Page{210, 297, {}} : Page{215.9, 279.4, {}};
  const double left = (page.width - one->width) / 2;
  page.items.emplace_back(Text{{left, k_cut_from_top - 6},
                               "Tag of a hose: one for the hose, one for the papers. Cut along the "
                               "frames; print at 100 %.",
                               k_small_size,
                               Weight::normal,
                               Anchor::start,
                               Role::second_ink});
  place(page, *one, {left, k_cut_from_top});
  place(page, *one, {left, k_cut_from_top + one->height + 4});
  return page;
}

}  // namespace wm::drawing
