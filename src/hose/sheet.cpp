#include "hose/sheet.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "hose/envelope.hpp"
#include "hose/rod_measure.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Length;

constexpr std::size_t k_ghost_points = 25;

HoseLengthInput length_of(const HoseSheetInput& in) {
  HoseLengthInput out;
  out.near_end = in.near_end;
  out.far_end = in.far_end;
  out.outside_diameter = in.outside_diameter;
  out.least_radius = in.least_radius;
  out.radius_to = in.radius_to;
  out.lengthens = in.lengthens;
  out.shortens = in.shortens;
  out.motion = in.motion;
  out.keep_outs = in.keep_outs;
  out.clamps = in.clamps;
  out.weight = in.weight;
  out.chosen_overall = in.overall;
  return out;
}

HoseShapeInput shape_of(const HoseSheetInput& in, const EnteredLength& overall) {
  HoseShapeInput out;
  out.near_end = in.near_end;
  out.far_end = in.far_end;
  out.overall = overall;
  out.outside_diameter = in.outside_diameter;
  out.least_radius = in.least_radius;
  out.radius_to = in.radius_to;
  out.clamps = in.clamps;
  out.weight = in.weight;
  out.fineness = Fineness::printed;
  out.points = 65;
  return out;
}

class Sheet {
 public:
  Sheet(const HoseSheetInput& in, const describe::Context& context)
      : in_(in), unit_(quantity::typed_unit(in.outside_diameter, context.units)) {}

  HoseSheetAnswer run(HoseShapeAnswer shape, HoseLengthAnswer length) {
    out_.shape = std::move(shape);
    out_.length = std::move(length);
    bend();
    window();
    for (const auto& near : out_.length.near) out_.lines.push_back(near.words + ".");
    clocking();
    pressure();
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string say(Length l) const { return quantity::print(l.si, unit_, 0.0); }

  void bend() {
    const auto& s = out_.shape;
    std::string limit;
    if (s.least_radius) {
      limit = in_.radius_to == RadiusTo::inside
                  ? fmt::format("; limit {} ({} to the inside + half the hose)",
                                say(*s.least_radius), say(in_.least_radius.value))
                  : fmt::format("; limit {}", say(*s.least_radius));
      if (!in_.radius_source.empty()) limit += ", " + in_.radius_source;
    }
    out_.lines.push_back(fmt::format("Tightest radius {} at {} from the near end{}.",
                                     say(s.tightest_radius), say(s.tightest_at), limit));
    for (const auto& load : s.under_load)
      out_.lines.push_back(fmt::format("Pulled {}: tightest radius {}, moves up to {}.", load.pull,
                                       say(load.tightest_radius), say(load.moves)));
  }

  void window() {
    const auto& l = out_.length;
    std::string binding = l.binding;
    if (!binding.empty()) binding[0] = static_cast<char>(std::toupper(binding[0]));
    if (l.shortest && l.longest) {
      out_.lines.push_back(fmt::format("Overall length {}; permitted {} to {}.",
                                       say(out_.shape.overall), say(*l.shortest), say(*l.longest)));
    }
    if (!binding.empty()) out_.lines.push_back(binding + ".");
  }

  void clocking() {
    const auto& s = out_.shape;
    if (!s.clocking || !s.clocking_tolerance) return;
    const double degree = std::numbers::pi / 180;
    out_.lines.push_back(fmt::format("Clocking {:.0f} degrees +-{:.0f}. {}",
                                     s.clocking->si / degree, s.clocking_tolerance->si / degree,
                                     s.clocking_read));
  }

  void pressure() {
    if (!in_.proof_pressure) {
      out_.lines.emplace_back("Proof pressure not entered: proof-test gives it, with its source.");
    }
  }

  const HoseSheetInput& in_;
  const quantity::Unit& unit_;
  HoseSheetAnswer out_;
};

}  // namespace

Checked<HoseSheetAnswer> hose_sheet(const HoseSheetInput& in, const describe::Context& context) {
  auto length = hose_length(length_of(in), context);
  if (!length) return Fail(length.error());
  const EnteredLength overall = in.overall         ? *in.overall
                                : length->to_order ? *length->to_order
                                                   : EnteredLength{length->best, 0.0, {}};
  auto shape = hose_shape(shape_of(in, overall), context);
  if (!shape) return Fail(shape.error());
  return Sheet(in, context).run(std::move(*shape), std::move(*length));
}

}  // namespace wm::hose
