#include "hose/ends.hpp"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/rod_measure.hpp"

namespace wm::hose {
namespace {

constexpr double k_angle_room = 5;  // degrees between what was entered and the elbow's own angle

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {},
                std::string do_next = {}) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, std::move(do_next), {}};
}

std::optional<Vector> unit(const Way& way, const std::string& path, Problems& problems) {
  const Vector v(way.x, way.y, way.z);
  if (v.norm() > 0) return v.normalized();
  problems.push_back(problem(path, Kind::out_of_bounds, "a direction needs a length",
                             "x, y and z of which one at least is not 0"));
  return std::nullopt;
}

struct End {
  Vector leaves_at{0, 0, 0}, way{1, 0, 0};
  double rigid{};
  std::optional<Vector> outlet;
};

double angle_of(EndForm form) { return form == EndForm::elbow_90 ? 90 : 45; }

std::optional<End> end_of(const HoseEnd& in, const std::string& path, Problems& problems) {
  const auto way = unit(in.leaves, path + "/leaves", problems);
  if (!in.rigid) {
    problems.push_back(problem(path + "/rigid", Kind::missing,
                               "how much of the end fitting does not bend is not known",
                               "its length from the seat (elbow: from the port's axis) to where "
                               "the hose can bend"));
  }
  End out;
  const bool elbow = in.form == EndForm::elbow_45 || in.form == EndForm::elbow_90;
  out.leaves_at = vector_of(in.seat);
  if (elbow) {
    if (!in.drop)
      problems.push_back(problem(path + "/drop", Kind::missing,
                                 "an elbow needs the distance from its seat to the hose's axis"));
    if (!in.port) {
      problems.push_back(problem(path + "/port", Kind::missing,
                                 "an elbow needs the axis of its port",
                                 "the direction out of the port"));
    } else if (const auto port = unit(*in.port, path + "/port", problems); port && way) {
      const double degrees =
          std::acos(std::clamp(port->dot(*way), -1.0, 1.0)) * 180 / std::numbers::pi;
      if (std::abs(degrees - angle_of(in.form)) > k_angle_room) {
        problems.push_back(
            problem(path + "/leaves", Kind::conflict,
                    fmt::format("the port's axis and the hose are {:.0f} degrees apart", degrees),
                    fmt::format("{:.0f} degrees, within {:.0f}, for this elbow", angle_of(in.form),
                                k_angle_room),
                    "Measure both directions again, or choose the other elbow."));
      } else {
        if (in.drop) out.leaves_at += *port * in.drop->value.si;
        // Back along the port's axis, as far as it is square to the hose.
        out.outlet = Vector((-*port + *way * port->dot(*way)).normalized());
      }
    }
  }
  if (!way || !in.rigid) return std::nullopt;
  out.way = *way;
  out.rigid = in.rigid->value.si;
  out.leaves_at += *way * out.rigid;
  return out;
}

}  // namespace

Vector vector_of(const Place& p) { return {p.x.value.si, p.y.value.si, p.z.value.si}; }

Spot spot_of(const Vector& v) {
  // A picometre is a rounding, and would print as a puzzling "5.8e-16 in".
  const auto tidy = [](double m) { return quantity::Length{std::abs(m) < 1e-12 ? 0.0 : m}; };
  return {tidy(v.x()), tidy(v.y()), tidy(v.z())};
}

Checked<Reach> reach(const HoseEnd& near, const HoseEnd& far) {
  Problems problems;
  const auto a = end_of(near, "near_end", problems);
  const auto b = end_of(far, "far_end", problems);
  if (a && b && (vector_of(near.seat) - vector_of(far.seat)).norm() < 1e-6) {
    problems.push_back(problem("far_end/seat", Kind::conflict, "both seats are in one place",
                               "where the other fitting sits"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  Reach out;
  out.rod.start = a->leaves_at;
  out.rod.start_direction = a->way;
  out.rod.end = b->leaves_at;
  out.rod.end_direction = -b->way;
  out.rigid_near = a->rigid;
  out.rigid_far = b->rigid;
  if (a->outlet && b->outlet) {
    out.outlet_near = a->outlet;
    out.outlet_far = b->outlet;
  }
  return out;
}

double clocking(const Shape& shape, const Vector& outlet_near, const Vector& outlet_far) {
  const double right_hand =
      angle_about(shape.end_direction, carried(shape, outlet_near), outlet_far);
  const double turn = 2 * std::numbers::pi;
  const double out = std::fmod(turn - right_hand, turn);
  return out < turn - 1e-9 ? out : 0.0;
}

double centreline_radius(double radius, RadiusTo to, double outside_diameter) {
  return to == RadiusTo::inside ? radius + 0.5 * outside_diameter : radius;
}

}  // namespace wm::hose
