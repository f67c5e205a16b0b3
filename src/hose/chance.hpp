#pragma once
/// How often a hose keeps its radius and its distances when motion and tolerances are drawn.

#include <functional>
#include <vector>

#include "hose/chain.hpp"
#include "hose/envelope.hpp"
#include "hose/solid.hpp"

namespace wm::hose {

struct Apart {
  Solid solid;
  double needed{};
};

struct ChanceAsk {
  Rod rod;  ///< nominal, with its length
  std::vector<Support> supports;
  Motion motion;
  double least_radius{};
  double outside_diameter{};
  double length_tolerance{};       ///< each way, uniform
  double direction_tolerance{};    ///< of both ends (rad), each way, uniform
  double lengthens{}, shortens{};  ///< by pressure, as shares; uniform between
  std::vector<Apart> keep_outs;
  std::int64_t samples{10000};
  std::uint64_t seed{1};
  int segments{64};
};

struct Chance {
  std::int64_t samples{}, kept{};
  std::int64_t too_tight{}, too_near{}, taut{};
  std::int64_t jumped{};  ///< left its family of shapes: it can snap
  double worst_radius{};
};

/// Seeded: equal seeds give equal answers. Warm from the nominal shape.
/// @param go_on  asked now and then; false ends it early, with `samples` as far as it came
[[nodiscard]] Chance chance(const ChanceAsk& ask, const std::function<bool(double)>& go_on);

}  // namespace wm::hose
