#pragma once
/// What the readings of one check tell together.

#include "bay/state.hpp"
#include "evidence/reading_trend.hpp"

namespace wm::desk {

/// Drifts, steps and when a limit would be met; nothing with fewer than two readings, or where the
/// readings are of another kind than their limits.
[[nodiscard]] std::optional<evidence::ReadingTrendAnswer> trend_of(
    const bay::CheckRecord& check, const describe::Context& context);

}  // namespace wm::desk
