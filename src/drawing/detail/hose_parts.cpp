#include "drawing/detail/hose_parts.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace wm::drawing::detail {
namespace {

// Sizes of a fitting's outline as multiples of the hose's outside diameter: a picture to know it
// by, no measure of any real part.
constexpr double k_nut = 0.78;     // radius to the corners
constexpr double k_socket = 0.58;  // radius
constexpr double k_elbow = 0.36;   // radius of a bent tube
constexpr double k_nut_long = 0.9;

Vector unit_of(const hose::Way& way) {
  const Vector v(way.x, way.y, way.z);
  return v.norm() > 0 ? Vector(v.normalized()) : Vector(1, 0, 0);
}

/// Direction of the hose where it passes nearest to a point.
Vector way_near(const std::vector<Vector>& line, const Vector& at) {
  Vector way(1, 0, 0);
  double best = 1e300;
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    if (const double d = (0.5 * (line[i] + line[i + 1]) - at).norm(); d < best)
      best = d, way = (line[i + 1] - line[i]).normalized();
  return way;
}

bool is_elbow(const hose::HoseEnd& end) {
  return (end.form == hose::EndForm::elbow_45 || end.form == hose::EndForm::elbow_90) &&
         end.port.has_value();
}

}  // namespace

Vector vector_of(const hose::Spot& spot) { return {spot.x.si, spot.y.si, spot.z.si}; }

std::vector<Vector> centreline_of(const std::vector<hose::HosePoint>& points) {
  std::vector<Vector> out;
  out.reserve(points.size());
  for (const auto& p : points) out.emplace_back(p.x.si, p.y.si, p.z.si);
  return out;
}

FittingDrawn fitting(const hose::HoseEnd& end, double outside_diameter) {
  const double od = outside_diameter;
  FittingDrawn out;
  const Vector seat = hose::vector_of(end.seat);
  const Vector leaves = unit_of(end.leaves);
  const double rigid = end.rigid ? end.rigid->value.si : 0;
  const auto add = [&](const Vector& from, const Vector& to, double radius, int sides) {
    if ((to - from).norm() > 1e-6) out.bodies.push_back(prism(from, to, radius, sides));
  };
  out.axis.push_back(seat);
  if (is_elbow(end)) {
    const Vector port = unit_of(*end.port);
    const double drop = end.drop ? end.drop->value.si : 0;
    const Vector corner = seat + port * drop;
    const double nut = std::min(k_nut_long * od, 0.6 * drop);
    const double bend = 0.4 * std::min(drop, rigid);
    out.axis.push_back(corner);
    out.tube.push_back(seat + port * nut);
    for (int i = 0; i <= 12; ++i) {
      const double t = i / 12.0;
      out.tube.push_back(corner - port * bend * (1 - t) * (1 - t) + leaves * bend * t * t);
    }
    out.tube.push_back(corner + leaves * rigid);
    out.tube_radius = k_elbow * od;
    add(seat, seat + port * nut, k_nut * od, 6);
    add(corner + leaves * rigid * 0.5, corner + leaves * rigid, k_socket * od, 32);
    out.axis.push_back(corner + leaves * rigid);
    return out;
  }
  const double nut = std::min(k_nut_long * od, 0.5 * rigid);
  if (end.form == hose::EndForm::male_thread) {
    add(seat, seat + leaves * 0.4 * rigid, 0.42 * od, 32);
    add(seat + leaves * 0.4 * rigid, seat + leaves * 0.65 * rigid, k_nut * od, 6);
    add(seat + leaves * 0.65 * rigid, seat + leaves * rigid, k_socket * od, 32);
  } else {
    add(seat + leaves * nut, seat + leaves * rigid, k_socket * od, 32);
    add(seat, seat + leaves * nut, k_nut * od, 6);
  }
  out.axis.push_back(seat + leaves * rigid);
  return out;
}

void draw_ghosts(Pane& pane, const Subject& subject) {
  for (const auto& ghost : subject.answer.ghosts)
    pane.line(pane.placed().at(centreline_of(ghost.points)), k_ghost);
}

void draw_hose(Pane& pane, const Subject& subject) {
  const double od = subject.outside_diameter();
  const auto line = pane.placed().at(centreline_of(subject.answer.shape.points));
  pane.tube(line, pane.mm(0.5 * od), k_wide, false);
  std::vector<FittingDrawn> ends{fitting(subject.in.near_end, od), fitting(subject.in.far_end, od)};
  // The farther one first, so that the nearer one covers it.
  const auto depth = [&](const FittingDrawn& f) {
    return f.axis.front().dot(pane.placed().view->towards);
  };
  if (depth(ends[0]) > depth(ends[1])) std::swap(ends[0], ends[1]);
  for (auto& end : ends) {
    if (!end.tube.empty())
      pane.tube(pane.placed().at(end.tube), pane.mm(end.tube_radius), k_wide, false);
    std::ranges::sort(end.bodies, {}, [&](const Body& b) {
      double sum = 0;
      for (const auto& c : b.corners) sum += c.dot(pane.placed().view->towards);
      return sum / static_cast<double>(b.corners.size());
    });
    for (const auto& body : end.bodies) pane.body(body, k_wide, true);
    pane.centreline(pane.placed().at(end.axis));
  }
  pane.centreline(line);
}

void draw_clamps(Pane& pane, const Subject& subject, bool named) {
  const auto line = centreline_of(subject.answer.shape.points);
  const double od = subject.outside_diameter();
  for (const auto& clamp : subject.in.clamps) {
    const Vector at = hose::vector_of(clamp.place);
    const Vector way = clamp.way ? unit_of(*clamp.way) : way_near(line, at);
    pane.body(prism(at - 0.25 * od * way, at + 0.25 * od * way, 0.68 * od, 32), k_wide, true);
    if (named)
      (void)pane.label(clamp.name + (clamp.at_hose ? " (grips)" : " (slides)"), pane.at(at));
  }
}

double bend_shows(const Subject& subject, const View& view) {
  const auto& bend = subject.answer.shape.bend;
  if (!bend) return 0;
  return std::abs(Vector(bend->square.x, bend->square.y, bend->square.z).dot(view.towards));
}

void draw_bend(Pane& pane, const Subject& subject, bool with_radius) {
  const auto& bend = subject.answer.shape.bend;
  if (!bend) return;
  const Vector centre = vector_of(bend->centre);
  const Vector spoke = vector_of(bend->at) - centre;
  const Vector other = Vector(bend->square.x, bend->square.y, bend->square.z).cross(spoke);
  // The whole circle where it is measured; elsewhere only the part beside the bend.
  std::vector<Vector> circle;
  constexpr int count = 120;
  const int half = with_radius ? count / 2 : count / 6;
  for (int i = -half; i <= half; ++i) {
    const double turn = 2 * std::numbers::pi * i / count;
    circle.push_back(centre + std::cos(turn) * spoke + std::sin(turn) * other);
  }
  const Pen pen{Role::second_ink, 0.13, with_radius ? 0.0 : 0.5, with_radius ? 0.0 : 0.7};
  pane.line(pane.placed().at(circle), pen);
  const Point at = pane.at(vector_of(bend->at));
  if (!with_radius) return;
  const Point from = pane.at(centre);
  // From the centre where that is on the sheet, else the end of the spoke that is.
  const auto spoke_seen = clipped({from, at}, false, pane.placed().frame);
  if (spoke_seen.empty() || spoke_seen.front().size() < 2) return;
  pane.line({from, at}, k_narrow);
  pane.arrow(spoke_seen.front().front(), at);
  if (pane.placed().frame.holds(from)) {
    pane.line({{from.x - 0.9, from.y}, {from.x + 0.9, from.y}}, k_narrow);
    pane.line({{from.x, from.y - 0.9}, {from.x, from.y + 0.9}}, k_narrow);
  }
  const Point middle{0.5 * (spoke_seen.front().front().x + at.x),
                     0.5 * (spoke_seen.front().front().y + at.y)};
  (void)pane.label("R " + subject.say(subject.answer.shape.tightest_radius) + ", tightest", middle,
                   Weight::bold);
}

Extent hose_extent(const Subject& subject) {
  Extent out;
  const double od = subject.outside_diameter();
  for (const auto& p : centreline_of(subject.answer.shape.points)) out.take(p, 0.5 * od);
  for (const auto& ghost : subject.answer.ghosts)
    for (const auto& p : centreline_of(ghost.points)) out.take(p);
  for (const auto* end : {&subject.in.near_end, &subject.in.far_end})
    for (const auto& p : fitting(*end, od).axis) out.take(p, k_nut * od);
  for (const auto& clamp : subject.in.clamps) out.take(hose::vector_of(clamp.place), 0.68 * od);
  return out;
}

}  // namespace wm::drawing::detail
