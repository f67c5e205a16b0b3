#pragma once
/// Shortest, best and longest length of a hose between two ends.
///
/// The tightest radius is no simple function of the length: taut it is nothing, then it rises to
/// a peak, falls as the hose bulges, and for very long hoses rises again. So the lengths that
/// keep a least radius form a window, and there may be more than one.

#include <optional>
#include <vector>

#include "hose/chain.hpp"

namespace wm::hose {

struct WindowAsk {
  /// The positions that the ends take, the nominal first; `length` in them does not matter.
  std::vector<Rod> positions;
  std::vector<Support> supports;  ///< the same in every position; grips stretch with the hose
  double least_radius{};          ///< of the centreline
  double straight{};              ///< length behind each end that should be straight
  double most_turn{};  ///< most that the hose may turn within it (rad); 0: any. A length that
                       ///< turns more counts as too tight in the same proportion
  /// Free length over nominal that pressure may make of it: 1 alone, or 0.96, 1, 1.02.
  std::vector<double> stretches{1.0};
  double longest_asked{};  ///< 0: twice the distance of the ends, or what a full turn needs
  int segments{64};
  int lengths{40};  ///< up to twice the distance of the ends, and as many beyond
};

struct ScanPoint {
  double length{};
  double radius{};  ///< tightest of all positions and stretches; 0: taut, or no stable shape
};

struct Window {
  std::vector<ScanPoint> scan;
  double best{};  ///< length with the greatest radius, in the window if there is one
  double best_radius{};
  std::optional<double> shortest, longest;  ///< nothing: no length keeps the radius
  bool open_above{};  ///< the window goes on beyond the longest length that was looked at
  bool another{};     ///< a longer hose would keep the radius too, in a wider loop
};

/// Scans the lengths, brackets every crossing of the least radius and closes each by Brent's rule.
[[nodiscard]] Window length_window(const WindowAsk& ask);

/// The same window with its ends at 128 pieces and extrapolated from both: errors fall with the
/// square of the spacing. An end that does not cross the radius stays as it is.
[[nodiscard]] Window refined(const WindowAsk& ask, Window window);

/// Tightest radius over all positions and stretches at one length; 0 where one is taut or
/// unstable.
[[nodiscard]] double worst_radius(const WindowAsk& ask, double length);

/// Angle that the hose turns within `straight` of each end, the greater of both (rad).
[[nodiscard]] double turn_at_ends(const Lie& lie, double straight);

/// Supports on a hose that pressure has stretched.
[[nodiscard]] std::vector<Support> stretched(std::vector<Support> supports, double stretch);

}  // namespace wm::hose
