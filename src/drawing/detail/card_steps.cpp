// Steps of a card: tick box, text, torque, readings, second person.
#include <algorithm>

#include <fmt/format.h>

#include "drawing/detail/card_pieces.hpp"

namespace wm::drawing::detail {
namespace {

constexpr double k_box = 4.6;          ///< side of a tick box
constexpr double k_number_end = 12.5;  ///< step numbers end here
constexpr double k_text_start = 15;    ///< step texts begin here
constexpr double k_second_width = 37;  ///< column of the second person
constexpr double k_state_width = 14;
constexpr double k_field_height = 7.4;  ///< of a box to write in: common practice, no source
constexpr double k_gutter = 2.5;

void tick_box(std::vector<Item>& items, double x, double y, bool ticked) {
  items.emplace_back(Rect{{x, y}, k_box, k_box, 0.4, {}, {Role::ink, k_line}});
  if (ticked)
    items.emplace_back(Path{
        {{x + 0.9, y + 2.4}, {x + 1.9, y + 3.6}, {x + 3.8, y + 0.9}}, false, {}, {Role::ink, 0.6}});
}

/// Where the columns of a reading stand.
struct ReadingColumns {
  double label_width, box_x, box_width, limit_x, limit_width, verdict_x, verdict_width;
};
ReadingColumns reading_columns(double width) {
  const double room = width - k_text_start;
  const double label = room * 0.30;
  const double box = room * 0.19;
  const double limit = room * 0.29;
  const double box_x = k_text_start + label + k_gutter;
  const double limit_x = box_x + box + k_gutter;
  const double verdict_x = limit_x + limit + k_gutter;
  return {label, box_x, box, limit_x, limit, verdict_x, width - verdict_x};
}

constexpr Style k_value{3.9, Weight::bold, Role::ink};
constexpr Style k_unit{k_small_size, Weight::normal, Role::second_ink};

/// A value with its unit on one line of its box, the unit smaller and lighter.
bool write_in_box(const Setter& set, const ReadingField& field, const ReadingColumns& at,
                  std::vector<Item>& items) {
  const double unit = set.width(field.unit, k_unit);
  const double room = at.box_width - 3;
  if (unit > room * 0.6 || set.width(field.value, k_value) + unit + 1 > room) return false;
  if (field.value.find('\n') != std::string::npos) return false;
  const double end = at.box_x + at.box_width - 1.5;
  const double baseline = k_field_height / 2 + 1.4;
  items.emplace_back(
      Text{{end, baseline}, field.unit, k_unit.size, k_unit.weight, Anchor::end, k_unit.role});
  if (!field.value.empty())
    items.emplace_back(Text{{end - unit - 1, baseline},
                            field.value,
                            k_value.size,
                            k_value.weight,
                            Anchor::end,
                            k_value.role});
  return true;
}

Pieces reading_pieces(const Setter& set, const ReadingField& field, double width) {
  const ReadingColumns at = reading_columns(width);
  Cell label = set.cell(k_text_start, at.label_width, field.label);
  Cell limit{at.limit_x, at.limit_width, {}};
  if (field.limit.empty()) {
    set.write(limit, "no limit given", k_small);
  } else {
    set.write(limit, "limit: " + field.limit, k_body);
    set.write(limit, field.source.empty() ? "source not given" : field.source, k_small);
  }
  Cell verdict{at.verdict_x, at.verdict_width, {}};
  set.write(verdict, field.verdict, k_strong);

  std::vector<Item> in_box;
  const bool boxed = write_in_box(set, field, at, in_box);
  Cell value{at.box_x + 1.2, at.box_width - 2.4, {}};
  if (!boxed) {
    set.write(value, field.value, k_strong);
    set.write(value, field.unit, k_unit);
  }
  Pieces out = row({label, limit, verdict, value}, k_field_height);
  Piece& first = out[0];
  for (Item& item : first.items) item = moved(std::move(item), 0, 1.0);
  first.height = std::max(first.height + 1.0, k_field_height);
  const double box_height =
      boxed ? k_field_height : std::max(k_field_height, std::min(height(value), k_highest_row) + 2);
  first.height = std::max(first.height, boxed || out.size() == 1 ? box_height : 0.0);
  if (boxed || out.size() == 1)
    first.items.emplace_back(Rect{{at.box_x, 0},
                                  at.box_width,
                                  box_height,
                                  0.6,
                                  {},
                                  {field.value.empty() ? Role::ink : Role::second_ink,
                                   field.value.empty() ? k_line : k_hairline}});
  for (Item& item : in_box) first.items.push_back(std::move(item));
  if (field.verdict.empty()) {
    const double y = k_field_height - 2.6;
    first.items.emplace_back(Line{{at.verdict_x, y}, {width, y}, {Role::second_ink, k_hairline}});
    first.items.emplace_back(Text{{at.verdict_x, k_field_height},
                                  "verdict",
                                  2.1,
                                  Weight::normal,
                                  Anchor::start,
                                  Role::second_ink});
  }
  out[0].gap_before = 2;
  return out;
}

Pieces torque_pieces(const Setter& set, const Step& step, double width) {
  const ReadingColumns at = reading_columns(width);
  Cell label = set.cell(k_text_start, at.label_width, "Torque");
  Cell value =
      set.cell(at.box_x, at.box_width + k_gutter + at.limit_width * 0.15, step.torque, k_strong);
  const double x = at.box_x + at.box_width + k_gutter + at.limit_width * 0.2;
  Cell source{x, width - x, {}};
  set.write(source, step.torque_source.empty() ? "source not given" : step.torque_source, k_small);
  Pieces out = row({label, value, source});
  out[0].gap_before = 1.6;
  return out;
}

/// The step's own line: box, number, text, state, second person.
Pieces text_pieces(const Setter& set, const Step& step, int number, double width) {
  const bool worded = !step.state.empty();
  const double second = step.second_person ? k_second_width + k_gutter : 0;
  // The state stands above the verdicts, so that one glance runs down the column.
  const double word_width =
      step.second_person ? k_state_width : reading_columns(width).verdict_width;
  const double state = worded ? word_width + k_gutter : 0;
  Cell text = set.cell(k_text_start, width - k_text_start - second - state, step.text);
  Cell word{width - second - word_width, word_width, {}};
  set.write(word, step.state, k_strong);
  Pieces out = row({text, word}, step.second_person ? 9.5 : k_box + 0.4);
  Piece& first = out[0];
  tick_box(first.items, 0, 0, step.state == "done");
  first.items.emplace_back(
      line_at(k_number_end, 0, fmt::format("{}", number), k_strong, Anchor::end));
  if (step.second_person) {
    const double x = width - k_second_width;
    tick_box(first.items, x, 0, false);
    first.items.emplace_back(line_at(x + k_box + 1.5, 0, "second person", k_small));
    const double y = 8.6;
    first.items.emplace_back(
        Line{{x + k_box + 1.5, y}, {width, y}, {Role::second_ink, k_hairline}});
    first.items.emplace_back(Text{{x + k_box + 1.5, y + 2.3},
                                  "initials",
                                  2.1,
                                  Weight::normal,
                                  Anchor::start,
                                  Role::second_ink});
    first.height = std::max(first.height, 11.2);
  }
  return out;
}

}  // namespace

Pieces step_pieces(const Setter& set, const Step& step, int number, double width) {
  Pieces out = text_pieces(set, step, number, width);
  const auto append = [&](Pieces more) {
    for (Piece& piece : more) out.push_back(std::move(piece));
  };
  if (!step.torque.empty()) append(torque_pieces(set, step, width));
  for (const ReadingField& field : step.readings) append(reading_pieces(set, field, width));
  keep_together(out);
  out[0].gap_before = 2.2;
  Piece& last = out.back();
  last.height += 2.2;
  last.items.emplace_back(
      Line{{0, last.height}, {width, last.height}, {Role::second_ink, k_hairline}});
  return out;
}

}  // namespace wm::drawing::detail
