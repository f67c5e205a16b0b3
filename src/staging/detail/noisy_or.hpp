#pragma once
/// Which faults explain what was seen: exact chances, several faults at once allowed.

#include <vector>

namespace wm::staging::detail {

/// How surely a fault brings about a symptom that was seen.
struct ShowsAs {
  int seen{};  ///< number of the symptom among those seen
  double chance{};
};

/// Something that may be at fault, with everything but the symptoms seen folded into two weights.
struct Cause {
  double absent{1.0};   ///< chance of being in order x what else was found, given that
  double present{0.0};  ///< chance of a fault x what else was found, given that
  std::vector<ShowsAs> shows_as;
};

struct Explained {
  double evidence{};             ///< chance of all that was found
  std::vector<double> at_fault;  ///< of each cause, given all that was found
};

/// A symptom is absent with chance (1 - leak) x product over present causes of (1 - chance); causes
/// are independent beforehand (noisy-OR).
///
/// Exact: goes through the causes and keeps the chance of every set of seen symptoms that those so
/// far have brought about. Every term is positive, so nothing cancels, however rare the evidence.
/// Effort: causes x links x 2^seen.
///
/// @param leaks  one a seen symptom: chance that something not listed brings it about
/// @pre leaks.size() <= k_most_seen
[[nodiscard]] Explained explain(const std::vector<Cause>& causes, const std::vector<double>& leaks);
/// Chance of the evidence alone.
[[nodiscard]] double evidence(const std::vector<Cause>& causes, const std::vector<double>& leaks);

inline constexpr std::size_t k_most_seen = 16;

}  // namespace wm::staging::detail
