#pragma once
/// Which tower a lead was traced from, and which plug it reached: crossed leads are found by a
/// person with a buzzer, never by an ohm reading.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/fields.hpp"
#include "evidence/verdict.hpp"
#include "outcome/result.hpp"

namespace wm::ignition {

struct TowerTrace {
  std::string tower;         ///< as marked: "1", "A1"
  std::string should_reach;  ///< empty: from the firing order, by the number of the tower
  std::string reached;       ///< where the buzzer answered; empty: not traced
};

struct TowerFound {
  std::string tower;
  std::string should_reach;
  std::string reached;
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
};

struct LeadMapAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<std::string> crossed;  ///< each pair named
  std::vector<TowerFound> towers;
  std::vector<std::string> do_next;
};

/// Cylinders in the order in which they fire, from "1-3-2-4" (also with commas or blanks).
/// @return bad_text for what is no number, out_of_bounds below 2 or above 12 cylinders, conflict
///         when it is not each cylinder once.
[[nodiscard]] Result<std::vector<int>> firing_order(std::string_view text);

/// Compare what was traced with the map entered, or with the firing order: the towers of a
/// distributor are numbered in the order in which they fire, so that tower n belongs to the n-th
/// cylinder of the firing order. Against a firing order only the cylinder is compared, not
/// whether it is its upper or its lower plug.
///
/// @return missing (no map and no firing order), conflict (two towers that should reach one
///         plug; a tower beyond the firing order), bad_text; paths "towers/2/..." and
///         "firing_order".
/// @source Numbering of distributor towers: FAA-H-8083-32 (from memory, unconfirmed).
[[nodiscard]] Checked<LeadMapAnswer> trace_leads(const std::vector<TowerTrace>& towers,
                                                 const std::string& order);

std::string_view describe(describe::Fields<TowerTrace>& f);
std::string_view describe(describe::Fields<TowerFound>& f);
std::string_view describe(describe::Fields<LeadMapAnswer>& f);

}  // namespace wm::ignition
