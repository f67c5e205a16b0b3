#pragma once
/// The rows behind kinds.hpp: every unit with the spellings that are understood.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/kinds.hpp"

namespace wm::quantity::detail {

/// How a unit may be typed. In `text` a '-' stands for any separator (blank, '-', '·', '.') or
/// none at all: "in-lb" also reads "in lb", "in·lb", "inlb".
struct Spelling {
  std::string text;
  bool any_case;  ///< "PSI" is as good as "psi"; never for prefixes, where M is not m
  const Unit* unit;
};

struct KindTable {
  std::vector<Unit> units;
  std::vector<Spelling> spellings;
};

/// @pre kind is one of the 28.
[[nodiscard]] const KindTable& table_of(KindOf kind);

/// Units that may stand together in one value, largest first: "3 ft 4 in", "2 h 30 min".
/// @return the place in its chain (1 largest) and the chain's number; 0 when there is none.
struct ChainPlace {
  int chain{};
  int place{};
};
[[nodiscard]] ChainPlace chain_place(const Unit& unit);

/// Match a folded unit text (see fold.hpp) against one kind.
[[nodiscard]] const Unit* match(KindOf kind, std::string_view folded);

/// Nearest spelling by edit distance; nullptr when nothing is near.
[[nodiscard]] const Unit* nearest(KindOf kind, std::string_view folded);

/// "in, ft, yd, mm, cm, m"
[[nodiscard]] std::string symbols_of(KindOf kind);

}  // namespace wm::quantity::detail
