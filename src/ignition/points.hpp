#pragma once
/// Breaker points, E-gap, timing to the engine, and where the spark comes while starting.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "ignition/part.hpp"
#include "quantity/text.hpp"

namespace wm::ignition {

using EnteredAngle = quantity::Entered<quantity::Angle>;
using MeasuredAngle = quantity::Measured<quantity::Angle>;

struct PointsTimingInput {
  bool handbook_model{};  ///< the points are of the worked model of FAA-H-8083-32
  std::vector<quantity::Measured<quantity::Length>> clearances;
  std::optional<quantity::Entered<quantity::Length>> clearance_lowest;
  std::optional<quantity::Entered<quantity::Length>> clearance_highest;
  std::optional<MeasuredAngle> e_gap;
  std::optional<EnteredAngle> e_gap_lowest;
  std::optional<EnteredAngle> e_gap_highest;
  std::optional<MeasuredAngle> left;  ///< crankshaft, before top centre
  std::optional<MeasuredAngle> right;
  std::optional<EnteredAngle> data_plate;
  std::optional<EnteredAngle> tolerance;
  std::string limit_source;
  std::optional<EnteredAngle> lag;  ///< of the coupling, magneto degrees
  std::optional<double> speed_ratio;
  std::optional<std::int64_t> cylinders;
  std::optional<std::int64_t> poles;
};

struct PointsTimingAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<PartVerdict> parts;
  std::optional<quantity::Angle> difference;  ///< left - right
  std::optional<double> speed_ratio;          ///< magneto to crankshaft
  std::optional<quantity::Angle> crank_lag;
  std::optional<quantity::Angle> start_after_top;  ///< below 0: before top centre
  std::vector<Figure> figures;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Magneto revolutions for one of the crankshaft: cylinders / (2 x poles).
/// @source handbook formula, from memory, unconfirmed: four cylinders, two poles 1; six 1.5.
[[nodiscard]] double magneto_speed_ratio(std::int64_t cylinders, std::int64_t poles);

/// Judge points and timing.
///   crank lag = lag of the magneto / (magneto speed / crank speed)
///   spark while starting = crank lag - advance, after top centre
/// @return missing (cylinders or ratio beside a lag; tolerance beside the data plate; anything to
///         judge), conflict, and what evidence::conformity refuses.
/// @source FAA-H-8083-32 for its worked model only: 0.018 +-0.006 in, table points-figures; the
///         rest is the maker's, entered.
[[nodiscard]] Checked<PointsTimingAnswer> points_timing(const PointsTimingInput& in,
                                                        const describe::Context& context);

std::string_view describe(describe::Fields<PointsTimingInput>& f);
std::string_view describe(describe::Fields<PointsTimingAnswer>& f);

}  // namespace wm::ignition
