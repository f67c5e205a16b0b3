#include "hose/supports.hpp"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <cmath>

#include "hose/detail/near.hpp"
#include "hose/detail/say.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

constexpr double k_gravity = 9.80665;  // NIST SP 811 (2008), B.8: standard acceleration

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {},
                std::string do_next = {}) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, std::move(do_next), {}};
}

/// The straight axis of the metal of one end: from the seat (elbow: the port's axis) to the hose.
struct Metal {
  Vector from, to;
};
Metal metal_of(const Vector& leaves_at, const Vector& way, double rigid) {
  return {leaves_at - way * rigid, leaves_at};
}

struct ToSolid {
  const std::string& path;
  const describe::Context& context;
  Problems& problems;

  std::optional<Solid> operator()(const BallShape& s) const {
    return Solid(Sphere{vector_of(s.centre), s.radius.value.si});
  }
  std::optional<Solid> operator()(const TubeShape& s) const {
    return Solid(Capsule{vector_of(s.from), vector_of(s.to), s.radius.value.si});
  }
  std::optional<Solid> operator()(const BoxShape& s) const {
    return Solid(Box{vector_of(s.centre),
                     0.5 * Vector(s.size_x.value.si, s.size_y.value.si, s.size_z.value.si),
                     Eigen::Matrix3d::Identity()});
  }
  std::optional<Solid> operator()(const WallShape& s) const {
    const Vector normal(s.free_side.x, s.free_side.y, s.free_side.z);
    if (normal.norm() == 0) {
      problems.push_back(problem(path + "/shape/free_side", Kind::out_of_bounds,
                                 "a direction needs a length",
                                 "x, y and z of which one at least is not 0"));
      return std::nullopt;
    }
    return Solid(Wall{vector_of(s.point), normal.normalized()});
  }
  std::optional<Solid> operator()(const MeshShape& s) const {
    const auto refuse = [&](Problem p) {
      p.path = p.kind == Kind::stopped ? std::string{} : path + "/shape/file";
      problems.push_back(std::move(p));
      return std::nullopt;
    };
    const auto bytes = context.file ? context.file(s.file) : std::nullopt;
    if (!bytes) {
      return refuse(problem(
          {}, Kind::not_found, fmt::format("no file \"{}\" here", s.file),
          "an attachment of the binder, or a file beside the command line, of at most 64 MiB"));
    }
    auto triangles = read_stl(*bytes, s.one_unit.value.si,
                              s.origin ? vector_of(*s.origin) : Vector(0, 0, 0), context.progress);
    if (!triangles) return refuse(triangles.error());
    const auto open = open_edge(*triangles, context.progress);
    if (!open) return refuse(open.error());
    if (*open) {
      const auto& at = (*open)->from;
      // In the unit in which the file was said to be: there the corner is found again.
      const auto& unit = quantity::typed_unit(s.one_unit, context.units);
      const auto place = [&](double metres) { return detail::say(metres, unit); };
      return refuse(problem(
          {}, Kind::refused,
          fmt::format("the surface is not closed: {} edge{} open, the first at x {}, y {}, z {}",
                      (*open)->edges, (*open)->edges == 1 ? " is" : "s are", place(at.x()),
                      place(at.y()), place(at.z())),
          "a closed solid, every edge used once in each direction",
          "Close it in the program that drew it, or use boxes and tubes."));
    }
    return Solid(std::make_shared<const Mesh>(std::move(*triangles)));
  }
};

bool inside(const Solid& solid, const Vector& at) {
  const auto* mesh = std::get_if<std::shared_ptr<const Mesh>>(&solid);
  return mesh != nullptr && (*mesh)->holds(at);
}

}  // namespace

std::vector<Support> supports_of(const std::vector<HoseClamp>& clamps, Problems& problems) {
  std::vector<Support> out;
  double last = 0;
  for (std::size_t i = 0; i < clamps.size(); ++i) {
    const auto& clamp = clamps[i];
    const auto path = fmt::format("clamps/{}", i);
    Support support;
    support.place = vector_of(clamp.place);
    if (clamp.way) {
      const Vector way(clamp.way->x, clamp.way->y, clamp.way->z);
      if (way.norm() == 0) {
        problems.push_back(problem(path + "/way", Kind::out_of_bounds, "a direction needs a length",
                                   "x, y and z of which one at least is not 0"));
        continue;
      }
      support.way = way.normalized();
    }
    if (clamp.at_hose) {
      const double at = clamp.at_hose->value.si;
      if (at <= last) {
        problems.push_back(problem(path + "/at_hose", Kind::conflict,
                                   "it grips the hose before the clamp ahead of it does",
                                   "clamps in the order in which the hose runs through them"));
      }
      last = at;
      support.station = at;
    }
    out.push_back(support);
  }
  return out;
}

std::optional<Problem> too_short(const Rod& rod, const std::vector<Support>& supports,
                                 const std::vector<HoseClamp>& clamps, std::string path,
                                 double extra, const quantity::Unit& unit) {
  const auto say = [&](double metres) { return detail::say(metres, unit); };
  for (std::size_t i = 0; i < supports.size(); ++i) {
    if (!supports[i].station || *supports[i].station < rod.length) continue;
    return problem(
        fmt::format("clamps/{}/at_hose", i), Kind::out_of_bounds,
        fmt::format("{} grips {} from the near end, and the hose that can bend ends at {}",
                    clamps[i].name, say(*supports[i].station), say(rod.length)),
        "a place on the hose, before its far end");
  }
  const auto span = taut_span(rod, supports);
  if (!span) return std::nullopt;
  bool grips = false;
  for (const auto& s : supports) grips = grips || s.station;
  if (!grips) {
    return problem(std::move(path), Kind::not_applicable,
                   fmt::format("too short: needs more than {} of hose; you gave {}",
                               say(shortest_way(rod, supports) + extra), say(rod.length + extra)),
                   supports.empty() ? "more than the straight distance between the fittings"
                                    : "more than the straight way through the clamps");
  }
  const bool to_end = *span == supports.size();
  return problem(to_end ? std::move(path) : fmt::format("clamps/{}/at_hose", *span),
                 Kind::not_applicable,
                 fmt::format("too short: no slack is left before {}",
                             to_end ? std::string("the far end") : clamps[*span].name),
                 "more hose there than the straight distance");
}

std::vector<Pull> pulls_of(const HoseWeight& weight) {
  std::vector<Pull> out;
  const double per_g = weight.filled.value.si * k_gravity / weight.stiffness.value.si;
  const auto add = [&](std::string words, const Vector& factor) {
    if (!factor.isZero(0.0)) out.push_back({std::move(words), factor * per_g});
  };
  const auto g = [](double factor, const char* way) {
    return fmt::format("{} g {}", quantity::pencil(factor), way);
  };
  add(g(weight.down, "down"), {0, 0, -weight.down});
  add(g(weight.up, "up"), {0, 0, weight.up});
  add(g(weight.sideways, "to the right"), {0, weight.sideways, 0});
  add(g(weight.sideways, "to the left"), {0, -weight.sideways, 0});
  add(g(weight.fore_and_aft, "aft"), {weight.fore_and_aft, 0, 0});
  add(g(weight.fore_and_aft, "forward"), {-weight.fore_and_aft, 0, 0});
  if (weight.sideways == 0 && weight.fore_and_aft == 0) return out;
  for (const double z : {-weight.down, weight.up}) {
    for (const double y : {weight.sideways, -weight.sideways}) {
      for (const double x : {weight.fore_and_aft, -weight.fore_and_aft}) {
        std::string words = g(std::abs(z), z < 0 ? "down" : "up");
        if (y != 0) words += ", " + g(std::abs(y), y > 0 ? "to the right" : "to the left");
        if (x != 0) words += ", " + g(std::abs(x), x > 0 ? "aft" : "forward");
        if (z != 0) add(std::move(words), {x, y, z});
        if (weight.fore_and_aft == 0) break;
      }
      if (weight.sideways == 0) break;
    }
  }
  return out;
}

std::optional<Solid> solid_of(const KeepOut& keep, const std::string& path,
                              const describe::Context& context, Problems& problems) {
  return std::visit(ToSolid{path, context, problems}, keep.shape);
}

std::optional<Problem> around_an_end(const KeepOut& keep, const Solid& solid, const Reach& ends,
                                     double outside_diameter, const std::string& path) {
  const auto near = metal_of(ends.rod.start, ends.rod.start_direction, ends.rigid_near);
  const auto far = metal_of(ends.rod.end, -ends.rod.end_direction, ends.rigid_far);
  for (const auto& [metal, word] : {std::pair{near, "near"}, std::pair{far, "far"}}) {
    if (nearest(solid, metal.to, metal.to).distance < 0.5 * outside_diameter ||
        inside(solid, metal.to)) {
      return problem(path + "/shape", Kind::conflict,
                     fmt::format("{} lies around the {} end of the hose", keep.name, word),
                     "a thing beside the hose, not around its fitting");
    }
    if (nearest(solid, metal.from, metal.to).distance <= 0) {
      return problem(path + "/shape", Kind::conflict,
                     fmt::format("{} lies around the {} fitting", keep.name, word),
                     "a thing beside the fitting, not around it");
    }
  }
  return std::nullopt;
}

std::optional<Problem> ends_collide(const Reach& ends, double outside_diameter,
                                    const quantity::Unit& unit) {
  const auto a = metal_of(ends.rod.start, ends.rod.start_direction, ends.rigid_near);
  const auto b = metal_of(ends.rod.end, -ends.rod.end_direction, ends.rigid_far);
  if ((a.to - a.from).norm() == 0 || (b.to - b.from).norm() == 0) return std::nullopt;
  const auto [on_a, on_b] = detail::between_segments(a.from, a.to, b.from, b.to);
  const double apart = (on_a - on_b).norm();
  if (apart >= outside_diameter) return std::nullopt;
  return problem("far_end", Kind::conflict,
                 fmt::format("the rigid parts of the two ends run into each other: their axes come "
                             "within {}, and the hose is {} thick",
                             detail::say(apart, unit), detail::say(outside_diameter, unit)),
                 "ends whose metal keeps apart by the thickness of the hose",
                 "Measure the seats and the directions again.");
}

}  // namespace wm::hose
