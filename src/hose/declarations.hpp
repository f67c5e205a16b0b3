#pragma once
/// What the room hose adds to the catalogue.

#include "describe/catalogue.hpp"

namespace wm::hose {
/// "length-allowance", "hose-shape", "hose-length", and the cut-off and tolerance tables.
void declare(describe::Catalogue& catalogue);
/// "proof-test", "hose-order", "hose-incoming".
void declare_proof(describe::Catalogue& catalogue);
/// "hose-rating", "hose-age", "hose-condition".
void declare_rating(describe::Catalogue& catalogue);
/// "hose-cut", "cut-plan".
void declare_making(describe::Catalogue& catalogue);
}  // namespace wm::hose
