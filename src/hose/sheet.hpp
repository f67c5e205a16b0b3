#pragma once
/// "hose-sheet": everything that stands on the drawing sheet of one hose, from one call.

#include <optional>
#include <string>
#include <vector>

#include "hose/fit.hpp"
#include "hose/shape.hpp"

namespace wm::hose {

struct HoseSheetInput {
  std::string title;
  HoseEnd near_end, far_end;
  std::string near_at, far_at;  ///< what they are screwed to: "oil cooler, inlet"
  std::string family, size;     ///< of the hose
  EnteredLength outside_diameter;
  EnteredLength least_radius;
  RadiusTo radius_to{RadiusTo::inside};
  std::string radius_source;
  std::optional<EnteredLength> overall;  ///< nothing: what hose-length says to order
  quantity::Fraction lengthens{0.02};    ///< under pressure
  quantity::Fraction shortens{0.04};
  std::optional<EngineMotion> motion;  ///< of the far end
  /// How well the far end is known against the near one (k = 2), from hose-ends.
  std::optional<EnteredLength> place_within;
  std::optional<quantity::Entered<quantity::Angle>> directions_within;
  std::vector<KeepOut> keep_outs;
  std::vector<HoseClamp> clamps;
  std::optional<HoseWeight> weight;
  std::optional<quantity::Entered<quantity::PressureGauge>> working_pressure, proof_pressure;
  std::string proof_source;
  std::string drawn_by;
  std::optional<quantity::Date> drawn_on;
};

/// One extreme shape that motion or pressure brings about.
struct HoseGhost {
  std::string why;
  quantity::Length tightest_radius;
  std::vector<HosePoint> points;
};

struct HoseSheetAnswer {
  HoseShapeAnswer shape;    ///< at the overall length of the sheet, certificate grade
  HoseLengthAnswer length;  ///< window, binding rule, what is near
  std::vector<HoseGhost> ghosts;
  std::vector<std::string> lines;  ///< the verdict in words, each a line
};

/// @return what hose-length and hose-shape refuse; out_of_bounds (a working or proof pressure above
///         the table of its family and size)
[[nodiscard]] Checked<HoseSheetAnswer> hose_sheet(const HoseSheetInput& in,
                                                  const describe::Context& context);

std::string_view describe(describe::Fields<HoseSheetInput>& f);
std::string_view describe(describe::Fields<HoseGhost>& f);
std::string_view describe(describe::Fields<HoseSheetAnswer>& f);

}  // namespace wm::hose
