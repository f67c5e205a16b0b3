#pragma once
/// The leads of a harness against each other: advice, never a verdict.

#include "ignition/harness.hpp"

namespace wm::ignition::detail {

/// Fill `siblings` of each lead, and the harness's own ohm for a length and ends.
void compare_leads(const HarnessCheckInput& in, const describe::Context& context,
                   HarnessCheckAnswer& out);

/// By each single figure of the trade: what the two ends of the shortest lead would hold.
void what_the_ends_hold(const HarnessCheckInput& in, const describe::Context& context,
                        HarnessCheckAnswer& out);

}  // namespace wm::ignition::detail
