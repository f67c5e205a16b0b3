#pragma once
/// "cut-plan": which piece is cut from which coil of the stock, in which order, and what is left.
///
/// The sum behind it is in cut_plan.hpp; here are the words, the dates and the owner's order.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "hose/cut_plan.hpp"
#include "hose/length.hpp"

namespace wm::hose {

struct StockCoil {
  std::string name;
  std::string family;
  std::string size;
  EnteredLength length;                         ///< sound hose on it
  bool offcut{};                                ///< taken before coils
  std::string cure;                             ///< date code or day
  std::optional<std::int64_t> oldest_quarters;  ///< not to be used when older
  std::optional<std::int64_t> take;             ///< 1: before all others
};

struct PieceToCut {
  std::string name;
  std::string family;
  std::string size;
  EnteredLength length;
  std::int64_t count{1};
};

struct CutPlanInput {
  std::vector<PieceToCut> pieces;
  std::vector<StockCoil> coils;
  EnteredLength kerf;
  EnteredLength end_trim;
  EnteredLength least_kept;
  CutAim aim{CutAim::used};
  std::optional<quantity::Date> day_of_use;
  std::string age_source;  ///< where the age limits stand
  std::int64_t longer{1};  ///< search so many times as long
};

struct PlannedCut {
  std::string piece;
  EnteredLength length;
  EnteredLength from;  ///< position on the tape, from the end where cutting begins
  EnteredLength to;
};

struct PlannedCoil {
  std::string coil;
  std::string family;
  std::string size;
  EnteredLength length;
  std::vector<PlannedCut> cuts;
  EnteredLength remainder;
  bool goes_back{};
  std::string in_words;
};

struct HoseTotal {
  std::string family;
  std::string size;
  EnteredLength cut;    ///< pieces alone
  EnteredLength total;  ///< by the aim
  EnteredLength bound;  ///< no plan can do with less
  bool proved{};
  std::optional<EnteredLength> first_fit;  ///< total of first-fit-decreasing, if that cuts all
  std::string in_words;
};

struct PieceNotCut {
  std::string piece;
  EnteredLength length;
  std::string why;
};

struct CoilNotUsed {
  std::string coil;
  std::string why;
};

struct CutPlanAnswer {
  bool all_cut{};
  std::string in_words;
  std::vector<PlannedCoil> coils;
  std::vector<HoseTotal> totals;
  std::vector<PieceNotCut> not_cut;
  std::vector<CoilNotUsed> refused;    ///< too old, or of an age that is not known
  std::vector<std::string> untouched;  ///< coils from which nothing is cut
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// @return missing (pieces, coils; the day of use where an age limit is set), bad_text (cure date),
///         conflict (cured after the day of use), out_of_bounds (more than 300 pieces of one hose
///         or 200 coils; a length that is none), stopped (before there was any plan)
/// @source branch and bound, compared with GLPK (docs/method/cut-plan.md); a hose that carries no
///         date is not cut where an age limit is set: hoses notes, section 12 item 6
[[nodiscard]] Checked<CutPlanAnswer> cut_plan(const CutPlanInput& input,
                                              const describe::Context& context);

std::string_view describe(describe::Choices<CutAim>& c);
std::string_view describe(describe::Fields<StockCoil>& f);
std::string_view describe(describe::Fields<PieceToCut>& f);
std::string_view describe(describe::Fields<CutPlanInput>& f);
std::string_view describe(describe::Fields<PlannedCut>& f);
std::string_view describe(describe::Fields<PlannedCoil>& f);
std::string_view describe(describe::Fields<HoseTotal>& f);
std::string_view describe(describe::Fields<PieceNotCut>& f);
std::string_view describe(describe::Fields<CoilNotUsed>& f);
std::string_view describe(describe::Fields<CutPlanAnswer>& f);

}  // namespace wm::hose
