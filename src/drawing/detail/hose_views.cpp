#include "drawing/detail/hose_views.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "drawing/detail/hose_dimension.hpp"
#include "drawing/detail/hose_keep_outs.hpp"
#include "drawing/detail/hose_parts.hpp"

namespace wm::drawing::detail {
namespace {

// Room around and between the views, mm.
constexpr double k_left = 2;
constexpr double k_right = 13;  // the dimension up the page
constexpr double k_between = 8;
constexpr double k_title = 5.5;   // above each row of views
constexpr double k_bottom = 8.5;  // the dimensions along the page
constexpr double k_pad = 3;       // within each view, around the hose

struct Room {
  double width, height;
};
Room room(const Frame& frame) {
  return {frame.width - k_left - k_right - k_between - 4 * k_pad,
          frame.height - 2 * k_title - k_bottom - 4 * k_pad};
}

bool fits(const Vector& size, const Scale& scale, const Room& room) {
  const double mm = scale.mm_per_m();
  return (size.x() + size.y()) * mm <= room.width && (size.y() + size.z()) * mm <= room.height;
}

Vector mixed(const Vector& a, const Vector& b, double share) { return a + share * (b - a); }

/// As much of `wanted` beyond `core` as the paper left at this scale has room for.
Extent widened(const Extent& core, const Extent& wanted, const Scale& scale, const Room& room) {
  double low = 0;
  double high = 1;
  for (int i = 0; i < 24; ++i) {
    const double share = i == 0 ? 1.0 : 0.5 * (low + high);
    const Vector size =
        mixed(*core.high, *wanted.high, share) - mixed(*core.low, *wanted.low, share);
    (fits(size, scale, room) ? low : high) = share;
    if (low == 1.0) break;
  }
  return {mixed(*core.low, *wanted.low, low), mixed(*core.high, *wanted.high, low)};
}

class Views {
 public:
  Views(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject)
      : items_(items), measurer_(measurer), subject_(subject), labels_(measurer, items) {}

  Result<ViewsDrawn> draw(const Frame& frame) {
    if (auto sound = place(frame); !sound) return Fail(sound.error());
    find_things();
    for (auto& pane : panes_) draw_body(pane);
    titles();
    dimensions();
    marks();
    name_things();
    name_ends();
    return out_;
  }

 private:
  Result<Done> place(const Frame& frame) {
    const auto core = hose_extent(subject_);
    const Room paper = room(frame);
    const Vector size = core.size();
    const auto& scales = standard_scales();
    const auto scale =
        std::ranges::find_if(scales, [&](const Scale& s) { return fits(size, s, paper); });
    if (scale == scales.end())
      return Fail(Kind::out_of_bounds, "the hose is too long for a sheet at any standard scale",
                  "a hose within a few hundred metres");
    out_.scale = *scale;
    Extent wanted = core;
    const double reach = 0.8 * size.maxCoeff();
    for (const auto& thing : subject_.in.keep_outs) {
      auto extent = thing_extent(thing, subject_);
      if (const auto near = closest(thing, subject_); near && extent.empty())
        extent.take(near->on_thing, 0.02 * reach);
      if (extent.empty()) continue;
      // Things far away do not make the hose small.
      wanted.take(extent.low->cwiseMax(*core.low - Vector::Constant(reach))
                      .cwiseMin(*core.high + Vector::Constant(reach)));
      wanted.take(extent.high->cwiseMax(*core.low - Vector::Constant(reach))
                      .cwiseMin(*core.high + Vector::Constant(reach)));
    }
    const auto shown = widened(core, wanted, *scale, paper);
    const double mm = scale->mm_per_m();
    const Vector drawn = shown.size() * mm;
    // What is left of the paper goes around the views, evenly; a little of it into each.
    const double spare_x = paper.width - drawn.x() - drawn.y();
    const double spare_y = paper.height - drawn.y() - drawn.z();
    const double grow_x = std::min(spare_x / 4, 9.0);
    const double grow_y = std::min(spare_y / 4, 9.0);
    const double front_width = drawn.y() + 2 * k_pad + 2 * grow_x;
    const double side_width = drawn.x() + 2 * k_pad + 2 * grow_x;
    const double top_height = drawn.y() + 2 * k_pad + 2 * grow_y;
    const double side_height = drawn.z() + 2 * k_pad + 2 * grow_y;
    const double left = frame.left + k_left + (spare_x - 4 * grow_x) / 2;
    const double top = frame.top + k_title + (spare_y - 4 * grow_y) / 2;
    const double side_left = left + front_width + k_between;
    const double lower = top + top_height + k_title;
    const std::array<Frame, 3> frames{Frame{side_left, lower, side_width, side_height},
                                      Frame{left, lower, front_width, side_height},
                                      Frame{side_left, top, side_width, top_height}};
    for (std::size_t i = 0; i < 3; ++i)
      panes_.emplace_back(items_, labels_, Placed{&views()[i], frames[i], shown.middle(), mm});
    // The title of the front view stands in between.
    out_.spare = {frame.left, frame.top, side_left - 3 - frame.left,
                  lower - k_title - 1.5 - frame.top};
    labels_.take(out_.spare);
    return Done{};
  }

  void find_things() {
    for (const auto& thing : subject_.in.keep_outs)
      for (auto& pane : panes_) things_.push_back(thing_seen(thing, subject_, pane.placed()));
  }

  void draw_body(Pane& pane) {
    const auto view = static_cast<std::size_t>(&pane - panes_.data());
    const std::size_t count = subject_.in.keep_outs.size();
    for (std::size_t i = 0; i < count; ++i) draw_thing(pane, things_[3 * i + view]);
    draw_hose(pane, subject_);
    // Over the hose: else the tube would hide the places it is drawn to show.
    draw_ghosts(pane, subject_);
  }

  void write(Text text) {
    labels_.take(text);
    items_.emplace_back(std::move(text));
  }

  void titles() {
    for (const auto& pane : panes_) {
      const Frame& f = pane.placed().frame;
      const View& view = *pane.placed().view;
      const double y = f.top - 1.4;
      const double room_right = f.width;
      write({{f.left, y}, std::string(view.title), 2.6, Weight::bold, Anchor::start, Role::ink});
      const double used = measurer_.width(view.title, 2.6, Weight::bold) + 1.6;
      if (room_right > used + 6)
        write({{f.left + used, y},
               measurer_.shortened(view.how, 2.1, Weight::normal, room_right - used),
               2.1,
               Weight::normal,
               Anchor::start,
               Role::second_ink});
    }
  }

  void dimensions() {
    const Vector near = hose::vector_of(subject_.in.near_end.seat);
    const Vector far = hose::vector_of(subject_.in.far_end.seat);
    const auto text = [&](double metres) {
      return subject_.say(quantity::Length{std::abs(metres)});
    };
    const Vector d = far - near;
    const double least = 0.5 / out_.scale.mm_per_m();  // half a millimetre on paper
    const auto& side = panes_[k_side];
    const auto& front = panes_[k_front];
    if (std::abs(d.x()) > least)
      along_page(
          items_, labels_, measurer_,
          {side.at(near), side.at(far), side.placed().frame.bottom() + 4.6, "x " + text(d.x())});
    if (std::abs(d.y()) > least)
      along_page(
          items_, labels_, measurer_,
          {front.at(near), front.at(far), front.placed().frame.bottom() + 4.6, "y " + text(d.y())});
    if (std::abs(d.z()) > least)
      up_page(items_, labels_,
              {side.at(near), side.at(far), side.placed().frame.right() + 4.2, "z " + text(d.z())});
  }

  void marks() {
    std::size_t best = k_side;
    for (std::size_t i = 0; i < 3; ++i)
      if (bend_shows(subject_, views()[i]) > bend_shows(subject_, views()[best]) + 1e-9) best = i;
    for (std::size_t i = 0; i < 3; ++i) draw_bend(panes_[i], subject_, i == best);
    for (std::size_t i = 0; i < 3; ++i) draw_clamps(panes_[i], subject_, i == k_side);
  }

  void name_things() {
    for (std::size_t i = 0; i < subject_.in.keep_outs.size(); ++i) name_thing(i);
  }

  /// The gap as hose-length found it over all positions, where it knows this thing.
  [[nodiscard]] std::string name_of(const hose::KeepOut& thing) const {
    const auto& near = subject_.answer.length.near;
    const auto found = std::ranges::find(near, thing.name, &hose::NearThing::name);
    if (found == near.end() || !found->gap) return thing.name;
    if (found->gap->si < 0) return thing.name + ": runs through it";
    return thing.name + " " + subject_.say_gap(*found->gap);
  }

  void name_thing(std::size_t i) {
    const auto& thing = subject_.in.keep_outs[i];
    const auto near = closest(thing, subject_);
    // Named where the gap is seen longest on paper, else where most of the outline is seen.
    std::size_t best = 3;
    double most = 0;
    for (std::size_t v = 0; v < 3; ++v) {
      const double outline = shows(panes_[v], things_[3 * i + v]);
      if (outline < 1) continue;
      double score = std::min(outline, 200.0) / 200;
      if (near && panes_[v].placed().frame.holds(panes_[v].at(near->on_thing)))
        score += distance(panes_[v].at(near->on_hose), panes_[v].at(near->on_thing));
      if (score > most) most = score, best = v;
    }
    if (best == 3) {
      out_.not_shown.push_back(name_of(thing));
      return;
    }
    Pane& pane = panes_[best];
    const auto& seen = things_[3 * i + best];
    Point anchor = visible_point(pane, seen);
    if (near && pane.placed().frame.holds(pane.at(near->on_thing))) {
      const Point a = pane.at(near->on_hose);
      const Point b = pane.at(near->on_thing);
      pane.line({a, b}, k_narrow);
      if (distance(a, b) > 5) {
        pane.arrow(b, a);
        pane.arrow(a, b);
      } else if (distance(a, b) > 0.3) {
        // Too short for two arrows inside: they come from outside.
        const double x = (b.x - a.x) / distance(a, b);
        const double y = (b.y - a.y) / distance(a, b);
        pane.arrow({a.x - 3 * x, a.y - 3 * y}, a);
        pane.arrow({b.x + 3 * x, b.y + 3 * y}, b);
      }
      anchor = {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
    }
    const auto text = measurer_.shortened(name_of(thing), k_label_size, Weight::normal, 60);
    if (!pane.label(text, anchor)) out_.not_named.push_back(name_of(thing));
  }

  static Point visible_point(const Pane& pane, const ThingSeen& seen) {
    const auto& frame = pane.placed().frame;
    const Point middle{frame.left + frame.width / 2, frame.top + frame.height / 2};
    Point best = middle;
    double least = 1e300;
    const auto look = [&](const std::vector<Point>& line, bool closed) {
      for (const auto& piece : clipped(line, closed, frame))
        for (const Point& p : piece)
          if (const double d = distance(p, middle); d < least) least = d, best = p;
    };
    for (const auto& ring : seen.closed) look(ring, true);
    for (const auto& line : seen.open) look(line, false);
    return best;
  }

  void name_ends() {
    for (auto& pane : panes_)
      for (const bool far : {false, true}) {
        const auto& end = far ? subject_.in.far_end : subject_.in.near_end;
        (void)pane.label(far ? "far" : "near", pane.at(hose::vector_of(end.seat)), Weight::bold);
      }
  }

  std::vector<Item>& items_;
  const TextMeasurer& measurer_;
  const Subject& subject_;
  LabelRoom labels_;
  std::vector<Pane> panes_;
  std::vector<ThingSeen> things_;  ///< three a thing: side, front, top
  ViewsDrawn out_;
};

}  // namespace

Result<ViewsDrawn> draw_views(std::vector<Item>& items, const TextMeasurer& measurer,
                              const Subject& subject, const Frame& frame) {
  return Views(items, measurer, subject).draw(frame);
}

}  // namespace wm::drawing::detail
