#pragma once
/// The readings of one check over time, for paper and for the command line.

#include "desk/views.hpp"
#include "drawing/marks.hpp"

namespace wm::binder {

/// Over engine hours where every reading has them, else over the calendar.
/// @return not_applicable without a reading that has a value
[[nodiscard]] Result<drawing::Trend> trend_of(const desk::CheckHistory& history);

/// One page: the plot, what it tells line by line, the readings as a table.
[[nodiscard]] Result<drawing::Page> trend_page(const desk::CheckHistory& history,
                                               const std::string& aircraft, bool letter);

}  // namespace wm::binder
