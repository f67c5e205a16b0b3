// The words of "cut-plan": fields, labels, bounds, examples.
#include "hose/plan.hpp"

namespace wm::hose {

using quantity::feet;
using quantity::inches;

std::string_view describe(describe::Choices<CutAim>& c) {
  c.has(CutAim::used, "used", "least used up: remainders worth keeping go back")
      .has(CutAim::opened, "opened", "least opened: the whole length of each coil that is cut");
  return "cut-aim";
}

std::string_view describe(describe::Fields<StockCoil>& f) {
  f.has<&StockCoil::name>("name", "Which coil").needed("coil 2").unique();
  f.has<&StockCoil::family>("family", "Hose family").example("MIL-H-8794");
  f.has<&StockCoil::size>("size", "Dash number").example("-8");
  f.has<&StockCoil::length>("length", "Sound hose on it")
      .needed("12 ft")
      .above(inches(0))
      .at_most(feet(1000));
  f.has<&StockCoil::offcut>("offcut", "It is an offcut").help("Offcuts are taken before coils.");
  f.has<&StockCoil::cure>("cure", "Cure date")
      .example("3Q2024")
      .help("As printed on the hose: quarter and year, or a day.");
  f.has<&StockCoil::oldest_quarters>("oldest_quarters", "Not to be cut when older than, quarters")
      .between(0, 200)
      .help("From your maker or authority. Counted from the end of the quarter of cure.");
  f.has<&StockCoil::take>("take", "Take it as number")
      .between(1, 1000)
      .help("1 before all others. Left empty: offcuts, then the oldest, then the shortest.");
  return "stock-coil";
}

std::string_view describe(describe::Fields<PieceToCut>& f) {
  f.has<&PieceToCut::name>("name", "For which hose").needed("oil cooler, supply");
  f.has<&PieceToCut::family>("family", "Hose family").example("MIL-H-8794");
  f.has<&PieceToCut::size>("size", "Dash number").example("-8");
  f.has<&PieceToCut::length>("length", "Cut length")
      .needed("21.12 in")
      .above(inches(0))
      .at_most(feet(1000));
  f.has<&PieceToCut::count>("count", "How many").between(1, 300);
  return "piece-to-cut";
}

std::string_view describe(describe::Fields<CutPlanInput>& f) {
  using I = CutPlanInput;
  f.has<&I::pieces>("pieces", "Pieces to cut")
      .needed(
          R"([{"name": "oil cooler, supply", "family": "MIL-H-8794", "size": "-8", "length": "21.12 in"}, {"name": "oil cooler, return", "family": "MIL-H-8794", "size": "-8", "length": "24.62 in"}, {"name": "breather", "family": "MIL-H-8794", "size": "-8", "length": "14.12 in", "count": 2}])");
  f.has<&I::coils>("coils", "Stock")
      .needed(
          R"([{"name": "offcut 1", "family": "MIL-H-8794", "size": "-8", "length": "47 in", "offcut": true, "cure": "3Q2024"}, {"name": "coil 2", "family": "MIL-H-8794", "size": "-8", "length": "12 ft", "cure": "1Q2025", "oldest_quarters": 32}])");
  f.has<&I::kerf>("kerf", "Kerf: lost at each cut")
      .needed("1/16 in")
      .between(inches(0), inches(2))
      .help("Width of the saw or wheel; 0 for a knife. Measure it on a trial cut.");
  f.has<&I::end_trim>("end_trim", "Trimmed off the end of a coil first")
      .needed("1/2 in")
      .between(inches(0), feet(10))
      .help("Once a coil, with its own cut, so that the first piece begins square.");
  f.has<&I::least_kept>("least_kept", "Shortest remainder worth keeping")
      .needed("10 in")
      .between(inches(0), feet(1000));
  f.has<&I::aim>("aim", "What is to be least");
  f.has<&I::day_of_use>("day_of_use", "Day of use").help("Left empty: today.");
  f.has<&I::age_source>("age_source", "Where the age limits stand")
      .example("maker's service life page");
  f.has<&I::longer>("longer", "Search so many times as long").between(1, 100);
  return "cut-plan-input";
}

std::string_view describe(describe::Fields<PlannedCut>& f) {
  f.has<&PlannedCut::piece>("piece", "Piece");
  f.has<&PlannedCut::length>("length", "Cut length");
  f.has<&PlannedCut::from>("from", "From");
  f.has<&PlannedCut::to>("to", "To");
  return "planned-cut";
}

std::string_view describe(describe::Fields<PlannedCoil>& f) {
  using C = PlannedCoil;
  f.has<&C::coil>("coil", "Coil");
  f.has<&C::family>("family", "Hose family");
  f.has<&C::size>("size", "Dash number");
  f.has<&C::length>("length", "Length before");
  f.has<&C::cuts>("cuts", "Cuts, in this order");
  f.has<&C::remainder>("remainder", "Remainder");
  f.has<&C::goes_back>("goes_back", "Goes back into stock");
  f.has<&C::in_words>("in_words", "In words");
  return "planned-coil";
}

std::string_view describe(describe::Fields<HoseTotal>& f) {
  using T = HoseTotal;
  f.has<&T::family>("family", "Hose family");
  f.has<&T::size>("size", "Dash number");
  f.has<&T::cut>("cut", "All pieces together");
  f.has<&T::total>("total", "Stock it takes");
  f.has<&T::bound>("bound", "No plan can take less than");
  f.has<&T::proved>("proved", "Proved to be the least");
  f.has<&T::first_fit>("first_fit", "First-fit-decreasing would take");
  f.has<&T::in_words>("in_words", "In words");
  return "hose-total";
}

std::string_view describe(describe::Fields<PieceNotCut>& f) {
  f.has<&PieceNotCut::piece>("piece", "Piece");
  f.has<&PieceNotCut::length>("length", "Cut length");
  f.has<&PieceNotCut::why>("why", "Why");
  return "piece-not-cut";
}

std::string_view describe(describe::Fields<CoilNotUsed>& f) {
  f.has<&CoilNotUsed::coil>("coil", "Coil");
  f.has<&CoilNotUsed::why>("why", "Why");
  return "coil-not-used";
}

std::string_view describe(describe::Fields<CutPlanAnswer>& f) {
  using A = CutPlanAnswer;
  f.has<&A::all_cut>("all_cut", "Every piece is cut");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::coils>("coils", "Coil by coil");
  f.has<&A::totals>("totals", "What it takes");
  f.has<&A::not_cut>("not_cut", "Pieces that the stock does not hold");
  f.has<&A::refused>("refused", "Coils that may not be cut");
  f.has<&A::untouched>("untouched", "Coils not touched");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "cut-plan-answer";
}

}  // namespace wm::hose
