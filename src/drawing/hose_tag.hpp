#pragma once
/// The tag of a hose: what the next mechanic reads on the hose itself, to cut out, twice on a page.

#include <cstdint>
#include <string>
#include <vector>

#include "drawing/card.hpp"
#include "drawing/display_list.hpp"
#include "quantity/date.hpp"

namespace wm::drawing {

/// Texts as shown; an empty one leaves its line out, but never the proof.
struct HoseTag {
  std::string title, registration;
  std::string between;  ///< "oil cooler, inlet to engine, oil outlet"
  std::string made_as;  ///< "MIL-H-8794 -8, overall 23.12 in"
  std::string clocking;
  std::string working_pressure;  ///< "at most 90 psi"
  std::string assembled;         ///< "4Q26 (2026-11-20)"
  bool proved{};                 ///< a proof test of this drawing conformed
  std::string proof;             ///< "4000 psi, 5 min, water, 2026-11-25: conforms", or why not
  std::string by;                ///< who proved it
  std::string part;              ///< number under which it is registered
  std::string mark;              ///< text of the square; empty: none
  std::string mark_words;        ///< "record at entry 812, head 1a2b 3c4d ..."
};

/// "4Q26": quarter and year of assembly.
/// @source NAVEDTRA 14018, pp. 5-3 and 5-10 (date code of hose assemblies)
[[nodiscard]] std::string quarter_code(quantity::Date day);

/// One tag as a page of its own size, 110 mm wide and as high as its text asks.
/// @return `Kind::missing` without a title, `Kind::out_of_bounds` where it would be higher than
///         a page.
[[nodiscard]] Result<Page> lay_out_tag(const HoseTag& tag);

/// The tag twice on a sheet, with lines to cut along: one for the hose, one for the papers.
[[nodiscard]] Result<Page> lay_out_tags(const HoseTag& tag, Paper paper);

}  // namespace wm::drawing
