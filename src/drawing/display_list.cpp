#include "drawing/display_list.hpp"

#include <cmath>
#include <initializer_list>

#include <fmt/format.h>

namespace wm::drawing {
namespace {

constexpr double k_largest_page_mm = 5000;
constexpr double k_farthest_mm = 1e6;

void shift(Point& p, double dx, double dy) {
  p.x += dx;
  p.y += dy;
}

struct Shift {
  double dx, dy;
  void operator()(Line& l) const {
    shift(l.from, dx, dy);
    shift(l.to, dx, dy);
  }
  void operator()(Path& p) const {
    for (Point& at : p.points) shift(at, dx, dy);
  }
  void operator()(Rect& r) const { shift(r.at, dx, dy); }
  void operator()(Circle& c) const { shift(c.centre, dx, dy); }
  void operator()(Text& t) const { shift(t.at, dx, dy); }
  void operator()(QrCode& q) const { shift(q.at, dx, dy); }
};

bool places(std::initializer_list<double> values) {
  for (double v : values)
    if (!(std::abs(v) <= k_farthest_mm)) return false;
  return true;
}
bool sizes(std::initializer_list<double> values) {
  for (double v : values)
    if (!(v >= 0 && v <= k_farthest_mm)) return false;
  return true;
}
bool sound(Point p) { return places({p.x, p.y}); }
bool sound(const Pen& p) { return sizes({p.width, p.dash_on, p.dash_off}); }

struct Sound {
  bool operator()(const Line& l) const { return sound(l.from) && sound(l.to) && sound(l.pen); }
  bool operator()(const Path& p) const {
    for (Point at : p.points)
      if (!sound(at)) return false;
    return sound(p.pen);
  }
  bool operator()(const Rect& r) const {
    return sound(r.at) && sizes({r.width, r.height, r.corner}) && sound(r.pen);
  }
  bool operator()(const Circle& c) const {
    return sound(c.centre) && sizes({c.radius}) && sound(c.pen);
  }
  bool operator()(const Text& t) const { return sound(t.at) && sizes({t.size}); }
  bool operator()(const QrCode& q) const { return sound(q.at) && sizes({q.side}); }
};

}  // namespace

Item moved(Item item, double dx, double dy) {
  std::visit(Shift{dx, dy}, item);
  return item;
}

void place(Page& page, const Page& fragment, Point at) {
  for (const Item& item : fragment.items) page.items.push_back(moved(item, at.x, at.y));
}

Result<Done> check(const Page& page) {
  for (double side : {page.width, page.height})
    if (!(side >= 1 && side <= k_largest_page_mm))
      return Fail(Kind::out_of_bounds,
                  fmt::format("a page of {} mm by {} mm", page.width, page.height),
                  "each side between 1 mm and 5000 mm", "210 mm by 297 mm");
  for (std::size_t i = 0; i < page.items.size(); ++i)
    if (!std::visit(Sound{}, page.items[i])) {
      Problem p{Kind::out_of_bounds,
                fmt::format("items/{}", i),
                "a shape without a sound place or size",
                "finite millimetres, sizes of zero or more",
                {},
                {},
                {}};
      return Fail(std::move(p));
    }
  return Done{};
}

}  // namespace wm::drawing
