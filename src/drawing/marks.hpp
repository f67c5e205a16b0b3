#pragma once
/// The stripe, the acceptance band and the small trend: marks and plots for screen and
/// paper. Every number on them comes as text, rounded and with its unit, from the room
/// that owns it; the doubles here only set the places.

#include <optional>
#include <string>
#include <vector>

#include "drawing/display_list.hpp"

namespace wm::drawing {

enum class StripeState {
  used,       ///< a share of the allowance is used; above 1 the limit is passed
  undecided,  ///< the instrument cannot tell
  unknown,    ///< nothing is recorded
  not_tested
};

struct StripeMark {
  StripeState state{StripeState::unknown};
  double used{};         ///< share of the allowance, 0 or more; the best estimate
  double uncertainty{};  ///< undecided only: expanded uncertainty in the same share
  bool drifting{};       ///< only for a reading with a trend
  std::string name;      ///< "starter contactor"
  std::string detail;    ///< "0.09 V of 0.20 V at 180 A"
  double height{6.35};   ///< of the sign, mm; 6.35 mm are 24 px
  bool with_words{true};
};

/// "nothing used yet", "45 % used", "past limit", "undecided", "unknown", "not tested".
/// Never rounds up to a full allowance and never down to an unused one.
[[nodiscard]] std::string stripe_words(const StripeMark& mark);

/// The sign of the program: a stripe across a joint, its lower half displaced by the
/// share that is used, a dotted line at the limit, in two ragged pieces past it.
///
/// @return  or `Kind::out_of_bounds` for a share or uncertainty below 0 or not finite, or
///          a height outside 2 mm to 100 mm.
[[nodiscard]] Result<Fragment> stripe(const StripeMark& mark);

struct BandLimit {
  double value{};
  std::string text;  ///< "highest 8.0 kΩ"
  friend bool operator==(const BandLimit&, const BandLimit&) = default;
};

struct AcceptanceBand {
  std::string name;  ///< "lead 2 bottom, resistance"
  std::optional<BandLimit> lower;
  std::optional<BandLimit> upper;
  std::optional<double> reading;
  double uncertainty{};      ///< expanded, in the unit of the reading
  std::string reading_text;  ///< "7.9 ± 0.2 kΩ"
  std::string verdict;       ///< "undecided"
  std::string source;        ///< where the limits come from
  double width{100};         ///< mm
};

/// Limits as lines, the reading as a dot with its uncertainty bar, words on both.
/// A reading far outside stands at the edge with an arrow and "off this scale".
///
/// @return  or `Kind::missing` without any limit, `Kind::conflict` when the lower limit is
///          above the upper one, `Kind::out_of_bounds` for figures that are not finite, a
///          negative uncertainty or a width outside 40 mm to 400 mm.
[[nodiscard]] Result<Fragment> acceptance_band(const AcceptanceBand& band);

struct TrendPoint {
  double when{};  ///< days or hours, any origin
  double value{};
  double uncertainty{};
};

struct Trend {
  std::string name;
  std::vector<TrendPoint> points;  ///< in order of time
  std::string first_when, last_when;
  std::string last_text;  ///< the last reading, with unit
  std::optional<BandLimit> lower;
  std::optional<BandLimit> upper;
  std::string words;                                 ///< "+0.4 kΩ a year", spoken and printed below
  double width{90};                                  ///< mm
  double height{32};                                 ///< of the plot alone, mm
  std::optional<TrendPoint> line_from{}, line_to{};  ///< a line through the readings
  std::vector<double> changes{};                     ///< moments at which the part was changed
};

/// Readings over time as dots, limits as lines, the last reading in lacquer with its text.
///
/// @return  or `Kind::missing` without a point, `Kind::out_of_bounds` for figures that are
///          not finite, points out of order or sizes outside 20 mm to 400 mm.
[[nodiscard]] Result<Fragment> trend(const Trend& trend);

}  // namespace wm::drawing
