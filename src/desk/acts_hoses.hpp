#pragma once
/// Hoses: drawn for the aircraft, proved on the bench. The hose room computes; here the answer
/// becomes a fact of the record.

#include "desk/acts.hpp"
#include "hose/proof.hpp"
#include "hose/sheet.hpp"

namespace wm::desk {

/// Keep a drawing: the sheet is worked out once more and its figures are kept beside its input.
struct DrawHose {
  std::string aircraft, id;
  std::string position, change;
  hose::HoseSheetInput sheet;
  std::string note;
};
std::string_view describe(describe::Fields<DrawHose>& f);

/// A hose under an id that exists is drawn anew; proofs of the old drawing stay, and are told.
/// @return what hose-sheet refuses, below "sheet/"; refused, when the change is withdrawn
[[nodiscard]] Simple draw_hose(const DrawHose& in, const Desk& desk);

/// Keep a proof test with its verdict.
struct ProveHose {
  std::string aircraft, hose, part;
  std::optional<quantity::Date> assembled;
  hose::ProofTestInput test;
  std::string by, note;
};
std::string_view describe(describe::Fields<ProveHose>& f);

struct Proved {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string words, id;
  std::vector<std::string> notes;
};
std::string_view describe(describe::Fields<Proved>& f);

/// Every proof is kept, also one that failed: the verdict is a fact.
/// @return what proof-test refuses, below "test/"; out_of_bounds for a day of assembly to come
[[nodiscard]] Checked<Outcome<Proved>> prove_hose(const ProveHose& in, const Desk& desk);

}  // namespace wm::desk
