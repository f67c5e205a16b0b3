#include "hose/clearance.hpp"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "hose/window.hpp"

namespace wm::hose {
namespace {

constexpr double k_far = std::numeric_limits<double>::infinity();
constexpr double k_most_slope = 0.7;  // of a bow, where the rule for small slopes still serves
constexpr int k_sides = 8;            // looked at first, then halved where it may get nearer
constexpr int k_halvings = 4;         // to 2.8 degrees: 0.03 % of the bow, for a smooth gap

double angle_between(const Vector& a, const Vector& b) {
  return std::atan2(a.cross(b).norm(), a.dot(b));
}

Vector end_of(const Shape& shape) {
  Vector out = shape.start;
  for (const auto& t : shape.tangents) out += t * shape.spacing();
  return out;
}

bool alike(const Lie& a, const Lie& b) {
  const auto &x = a.spans.front().tangents, &y = b.spans.front().tangents;
  double apart = 0;
  for (std::size_t i = 0; i < x.size(); ++i) apart = std::max(apart, (x[i] - y[i]).squaredNorm());
  return apart < 1e-6;
}

Lie lie_of(Shape shape) {
  Lie out;
  out.settled = shape.settled;
  out.length = shape.length;
  out.energy = shape.energy;
  out.spans.push_back(std::move(shape));
  return out;
}

/// A shape on its way round the line between its ends.
class Round {
 public:
  Round(const Shape& shape, double outside_diameter)
      : shape_(shape),
        diameter_(outside_diameter),
        from_(shape.start),
        to_(end_of(shape)),
        axis_((to_ - from_).normalized()),
        turned_(shape) {
    Vector at = from_;
    for (const auto& t : shape.tangents) {
      const Vector out = at - from_;
      reach_ = std::max(reach_, (out - axis_ * out.dot(axis_)).norm());
      along_low_ = std::min(along_low_, out.dot(axis_));
      along_high_ = std::max(along_high_, out.dot(axis_));
      at += t * shape.spacing();
    }
    along_high_ = std::max(along_high_, (to_ - from_).norm());
  }

  /// The least gap on the way round, if it is less than `known`. A turn by an angle moves no place
  /// by more than that times the reach: where even that does not get nearer, nothing is looked at.
  void least(const Solid& thing, Gap& known) {
    const auto core =
        nearest(thing, from_ + axis_ * along_low_, from_ + axis_ * along_high_).distance;
    if (core - reach_ - 0.5 * diameter_ >= known.clear) return;
    const double step = 2 * std::numbers::pi / k_sides;
    const double first = look(thing, 0, known);
    double before = first;
    for (int k = 1; k <= k_sides; ++k) {
      const double here = k == k_sides ? first : look(thing, k * step, known);
      between(thing, (k - 1) * step, before, k * step, here, k_halvings, known);
      before = here;
    }
  }

 private:
  double look(const Solid& thing, double angle, Gap& known) {
    const Eigen::Matrix3d turn = Eigen::AngleAxisd(angle, axis_).toRotationMatrix();
    for (std::size_t i = 0; i < shape_.tangents.size(); ++i)
      turned_.tangents[i] = turn * shape_.tangents[i];
    const auto here = gap(turned_, diameter_, thing);
    if (here.clear < known.clear) known = here;
    return here.clear;
  }

  void between(const Solid& thing, double a, double at_a, double b, double at_b, int halvings,
               Gap& known) {
    const double bound = 0.5 * (at_a + at_b - reach_ * (b - a));
    if (halvings == 0 || bound >= known.clear) return;
    const double middle = 0.5 * (a + b), here = look(thing, middle, known);
    between(thing, a, at_a, middle, here, halvings - 1, known);
    between(thing, middle, here, b, at_b, halvings - 1, known);
  }

  const Shape& shape_;
  double diameter_;
  Vector from_, to_, axis_;
  double reach_{}, along_low_{}, along_high_{};
  Shape turned_;
};

}  // namespace

bool bows_to_any_side(const Shape& shape) {
  const Vector chord = end_of(shape) - shape.start;
  const double distance = chord.norm();
  if (shape.far_end_free || distance < 0.05 * shape.length) return false;
  const double slope =
      std::min(k_most_slope, 2 * std::sqrt(std::max(0.0, shape.length / distance - 1)));
  const double off = std::max(angle_between(shape.start_direction, chord),
                              angle_between(shape.end_direction, chord));
  const double arch = 0.5 * angle_between(shape.start_direction, shape.end_direction);
  return off <= slope / 4 && arch <= slope / 20;
}

void Clearance::add(const Clearance& other) {
  for (std::size_t i = 0; i < least.size(); ++i) {
    if (other.least[i].clear < least[i].clear) least[i] = other.least[i];
    if (other.as_drawn[i].clear < as_drawn[i].clear) as_drawn[i] = other.as_drawn[i];
  }
  looked_at += other.looked_at;
  restless += other.restless;
  taut += other.taut;
  snapped += other.snapped;
  taut_as_made = taut_as_made || other.taut_as_made;
  taut_shortened = taut_shortened || other.taut_shortened;
  any_side = any_side || other.any_side;
  other_shapes = other_shapes || other.other_shapes;
}

std::string Clearance::left_out() const {
  std::string out;
  if (taut > 0) {
    std::string when;
    if (taut_as_made) when = "as made";
    if (taut_shortened) when += std::string(when.empty() ? "" : ", ") + "shortened under pressure";
    if (when.empty()) when = "where the far end can move to";
    out = fmt::format("where the hose is taut ({})", when);
  }
  if (restless > 0) out += std::string(out.empty() ? "" : " or ") + "where no rest was found";
  if (snapped > 0)
    out += std::string(out.empty() ? "" : " or ") + "where a pull of its weight makes it snap";
  return out;
}

Clearances::Clearances(ClearAsk ask) : ask_(std::move(ask)) {}

const std::vector<Lie>& Clearances::seeds(double length, bool afresh) {
  if (!afresh && !found_.empty()) {
    auto above = found_.lower_bound(length);
    if (above == found_.end()) return std::prev(above)->second;
    if (above == found_.begin()) return above->second;
    const auto below = std::prev(above);
    return length - below->first < above->first - length ? below->second : above->second;
  }
  auto& out = found_[length];
  out.clear();
  Rod rod = ask_.positions.front();
  rod.length = length;
  if (taut_span(rod, ask_.supports)) return out;
  Lie first;
  lies_.cold(rod, ask_.supports, first);
  if (first.settled == Settled::stable) out.push_back(first);
  if (!ask_.supports.empty()) return out;
  for (auto& shape : rods_.every(rod)) {
    // Round an axis they are all one shape.
    const bool round = bows_to_any_side(shape);
    Lie other = lie_of(std::move(shape));
    const bool known = std::any_of(out.begin(), out.end(), [&](const Lie& lie) {
      return alike(lie, other) ||
             (round && std::abs(lie.energy - other.energy) < 1e-4 * lie.energy);
    });
    if (!known) out.push_back(std::move(other));
  }
  return out;
}

std::vector<Lie> Clearances::ways(const Rod& rod, const std::vector<Support>& supports,
                                  const std::vector<Lie>& from) {
  std::vector<Lie> out;
  Lie lie;
  if (!supports.empty() || from.empty()) {
    if (from.empty())
      lies_.cold(rod, supports, lie);
    else
      lies_.warm(rod, supports, from.front(), lie);
    if (lie.settled == Settled::stable) out.push_back(std::move(lie));
    return out;
  }
  Shape shape;
  for (std::size_t k = 0; k < from.size(); ++k) {
    rods_.follow(rod, from[k].spans.front(), shape);
    if (shape.settled != Settled::stable && k == 0) rods_.cold(rod, shape);
    if (shape.settled == Settled::stable) out.push_back(lie_of(shape));
  }
  return out;
}

void Clearances::measure(const Lie& lie, const Vector& pull, bool drawn, Clearance& out) const {
  for (std::size_t i = 0; i < ask_.things.size(); ++i) {
    const auto here = gap(lie, ask_.outside_diameter, ask_.things[i]);
    if (here.clear < out.least[i].clear) out.least[i] = here;
    if (drawn && here.clear < out.as_drawn[i].clear) out.as_drawn[i] = here;
  }
  double begun = 0;
  for (const auto& span : lie.spans) {
    const Vector chord = end_of(span) - span.start;
    if (bows_to_any_side(span) && pull.cross(chord).norm() <= 1e-9 * pull.norm() * chord.norm()) {
      out.any_side = true;
      Round round(span, ask_.outside_diameter);
      for (std::size_t i = 0; i < ask_.things.size(); ++i) {
        Gap least = out.least[i];
        round.least(ask_.things[i], least);
        if (!(least.clear < out.least[i].clear)) continue;
        least.station += begun;
        out.least[i] = least;
      }
    }
    begun += span.length;
  }
}

Clearance Clearances::at(double length, bool afresh, bool pulled) {
  Clearance out;
  Gap nothing;
  nothing.clear = k_far;
  out.least.assign(ask_.things.size(), nothing);
  out.as_drawn = out.least;
  const auto& from = seeds(length, afresh);
  out.other_shapes = from.size() > 1;
  for (const auto& position : ask_.positions) {
    for (const double stretch : ask_.stretches) {
      const bool nominal = &position == &ask_.positions.front();
      Rod rod = position;
      rod.length = length * stretch;
      const auto supports = stretched(ask_.supports, stretch);
      if (taut_span(rod, supports)) {
        ++out.taut;
        out.taut_as_made = out.taut_as_made || (nominal && stretch == 1);
        out.taut_shortened = out.taut_shortened || (nominal && stretch < 1);
        continue;
      }
      const auto lies = ways(rod, supports, from);
      if (lies.empty()) {
        ++out.restless;
        continue;
      }
      ++out.looked_at;
      for (std::size_t k = 0; k < lies.size(); ++k) measure(lies[k], Vector(0, 0, 0), k == 0, out);
      if (!pulled) continue;
      for (const auto& pull : ask_.pulls) {
        rod.weight = pull;
        bool rests = false;
        for (std::size_t k = 0; k < lies.size(); ++k) {
          Lie bent;
          lies_.warm(rod, supports, lies[k], bent);
          if (bent.settled != Settled::stable) continue;
          rests = true;
          measure(bent, pull, k == 0, out);
        }
        out.snapped += rests ? 0 : 1;
      }
    }
  }
  return out;
}

}  // namespace wm::hose
