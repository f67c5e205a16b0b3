#pragma once
/// The small drawings beside the views of a hose sheet: window of lengths, strip of radii,
/// clocking.

#include "drawing/detail/hose_space.hpp"
#include "drawing/detail/hose_subject.hpp"
#include "drawing/text_measurer.hpp"

namespace wm::drawing::detail {

inline constexpr double k_note_size = 2.1;

/// Heading of a part of the sheet; gives the y below it.
[[nodiscard]] double part_heading(std::vector<Item>& items, const Frame& frame,
                                  std::string_view text);

/// The window as our stripe: on the plate above it stands at the best length, on the plate below
/// at the length chosen; dotted lines at the shortest and the longest. A bracket shows what
/// pressure makes of the length chosen.
void draw_window(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject,
                 const Frame& frame);

/// The hose laid out straight; in each part the tightest radius in figures, hatched where it is
/// less than one and a half times the limit, crossed where it is below it.
void draw_strip(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject,
                const Frame& frame);

/// The near elbow at six o'clock, the far one as the hand.
void draw_dial(std::vector<Item>& items, const TextMeasurer& measurer, const Subject& subject,
               const Frame& frame);

}  // namespace wm::drawing::detail
