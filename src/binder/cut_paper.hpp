#pragma once
/// The making of hoses as a card for the bench: what "hose-cut" says, step by step.

#include "drawing/card.hpp"
#include "hose/cut.hpp"

namespace wm::binder {

/// A section an assembly, with its lengths and its steps, then what has to be fetched. Not tied
/// to the record: nothing of it was recorded.
[[nodiscard]] drawing::Card cut_card(const hose::HoseCutAnswer& answer,
                                     const describe::Calculation& calculation,
                                     quantity::Date today);

}  // namespace wm::binder
