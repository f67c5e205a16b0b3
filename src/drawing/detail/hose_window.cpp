#include <algorithm>
#include <cmath>

#include "drawing/detail/hose_dimension.hpp"
#include "drawing/detail/hose_gauges.hpp"
#include "drawing/detail/hose_pane.hpp"

namespace wm::drawing::detail {
namespace {

constexpr double k_plate = 4.2;  // height of one plate, mm
constexpr double k_joint = 0.35;
constexpr double k_stripe = 2.0;  // width

struct Mark {
  double at{};  ///< x wanted
  std::string text;
  Weight weight{Weight::normal};
};

/// Sets the marks side by side in one row, each as near to its place as the others allow; what
/// finds no place goes to `rest`.
std::vector<Text> row_of(const TextMeasurer& measurer, std::vector<Mark> marks, double y,
                         const Frame& frame, double size, std::vector<Mark>& rest) {
  std::ranges::stable_sort(marks, {}, &Mark::at);
  std::vector<Text> out;
  std::vector<double> left, width;
  double needed = 0;
  for (const auto& m : marks) {
    width.push_back(measurer.width(m.text, size, m.weight));
    needed += width.back() + 1.6;
  }
  if (needed > frame.width + 1.6) {
    rest = marks;
    return out;
  }
  double from = frame.left;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    left.push_back(std::max(from, marks[i].at - width[i] / 2));
    from = left.back() + width[i] + 1.6;
  }
  double to = frame.right();
  for (std::size_t i = marks.size(); i-- > 0;) {
    left[i] = std::min(left[i], to - width[i]);
    to = left[i] - 1.6;
  }
  for (std::size_t i = 0; i < marks.size(); ++i)
    out.push_back({{left[i], y}, marks[i].text, size, marks[i].weight, Anchor::start, Role::ink});
  return out;
}

}  // namespace

double part_heading(std::vector<Item>& items, const Frame& frame, std::string_view text) {
  items.emplace_back(Text{{frame.left, frame.top + 2.2},
                          std::string(text),
                          2.5,
                          Weight::bold,
                          Anchor::start,
                          Role::ink});
  items.emplace_back(
      Line{{frame.left, frame.top + 3.2}, {frame.right(), frame.top + 3.2}, k_narrow});
  return frame.top + 3.2;
}

void draw_window(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject,
                 const Frame& frame) {
  const auto& length = subject.answer.length;
  double y = part_heading(items, frame, "Overall length, seat to seat, and its window");
  const double chosen = subject.overall();
  const double rigid = length.rigid.si;
  const double flexible = chosen - rigid;
  const double shorter = rigid + flexible * (1 - subject.in.shortens.si);
  const double longer = rigid + flexible * (1 + subject.in.lengthens.si);
  double low = std::min({chosen, length.best.si, shorter});
  double high = std::max({chosen, length.best.si, longer});
  if (length.shortest) low = std::min(low, length.shortest->si);
  if (length.longest) high = std::max(high, length.longest->si);
  const double room = std::max(0.06 * (high - low), 0.01 * high);
  low -= room;
  high += room;
  const auto x = [&](double l) {
    return frame.left + 1 + (frame.width - 2) * (l - low) / (high - low);
  };
  // Above the plates: what the window is made of.
  std::vector<Mark> above{{x(length.best.si), "best " + subject.say(length.best)}};
  if (length.shortest)
    above.push_back({x(length.shortest->si), "shortest " + subject.say(*length.shortest)});
  if (length.longest)
    above.push_back({x(length.longest->si), "longest " + subject.say(*length.longest)});
  std::vector<Mark> rest;
  y += 3.4;
  const Frame line{frame.left, y, frame.width, 3};
  for (auto& t : row_of(measurer, above, y, line, k_label_size, rest))
    items.emplace_back(std::move(t));
  y += 1.2;
  items.emplace_back(Rect{{frame.left, y}, frame.width, k_plate, 0.3, Role::zinc, {}});
  const double below = y + k_plate + k_joint;
  items.emplace_back(Rect{{frame.left, below}, frame.width, k_plate, 0.3, Role::zinc_dark, {}});
  if (length.shortest && length.longest) {
    // The window itself, with a line around: outside of it the plate is only ground.
    items.emplace_back(Rect{{x(length.shortest->si), below},
                            x(length.longest->si) - x(length.shortest->si),
                            k_plate,
                            0,
                            Role::zinc_light,
                            {}});
  }
  const Pen edge{Role::lacquer_text, 0.25};
  items.emplace_back(Rect{{x(length.best.si) - k_stripe / 2, y + 0.4},
                          k_stripe,
                          k_plate - 0.4,
                          0,
                          Role::lacquer,
                          edge});
  items.emplace_back(
      Rect{{x(chosen) - k_stripe / 2, below}, k_stripe, k_plate - 0.4, 0, Role::lacquer, edge});
  const double foot = below + k_plate;
  for (const auto& limit : {length.shortest, length.longest})
    if (limit)
      items.emplace_back(
          Line{{x(limit->si), y - 0.7}, {x(limit->si), foot + 0.8}, {Role::ink, 0.3, 0.5, 0.45}});
  // What pressure makes of it.
  const double bracket = foot + 1.9;
  if (longer - shorter > 0) {
    items.emplace_back(Line{{x(shorter), bracket}, {x(longer), bracket}, k_narrow});
    for (const double l : {shorter, longer})
      items.emplace_back(Line{{x(l), bracket - 0.8}, {x(l), bracket + 0.8}, k_narrow});
  }
  std::vector<Mark> under{
      {x(chosen), "chosen " + subject.say(subject.answer.shape.overall), Weight::bold}};
  if (longer - shorter > 0) {
    under.push_back(
        {x(shorter), "shortened by pressure " + subject.say(quantity::Length{shorter})});
    under.push_back({x(longer), "lengthened " + subject.say(quantity::Length{longer})});
  }
  const Frame last{frame.left, bracket, frame.width, 3};
  for (auto& t : row_of(measurer, under, bracket + 3.2, last, k_label_size, rest))
    items.emplace_back(std::move(t));
  if (!length.shortest || !length.longest) {
    // Beside the stripe, wherever that stands.
    const bool on_the_left = x(length.best.si) > frame.left + frame.width / 2;
    items.emplace_back(Text{{on_the_left ? frame.left + 1 : frame.right() - 1, y + 0.72 * k_plate},
                            // Where the bend has one, it is what stands near that leaves none.
                            length.best_radius.si < length.least_radius.si
                                ? "no length keeps the least radius"
                                : "no length keeps all limits",
                            k_label_size,
                            Weight::bold,
                            on_the_left ? Anchor::start : Anchor::end,
                            Role::ink});
  }
  if (rest.empty()) return;
  // Too narrow for one row of marks: all of them in words.
  std::string words;
  for (const auto& m : rest) words += (words.empty() ? "" : "; ") + m.text;
  items.emplace_back(Text{{frame.left, bracket + 6.4},
                          measurer.shortened(words, k_note_size, Weight::normal, frame.width),
                          k_note_size,
                          Weight::normal,
                          Anchor::start,
                          Role::ink});
}

}  // namespace wm::drawing::detail
