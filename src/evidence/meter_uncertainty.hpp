#pragma once
/// The calculation `meter-uncertainty`: how well a reading is known.

#include "describe/catalogue.hpp"
#include "evidence/reading.hpp"
#include "evidence/uncertainty.hpp"

namespace wm::evidence {

std::string_view describe(describe::Choices<CoverageRule>& c);

struct MeterUncertaintyInput {
  describe::AnyQuantity reading;
  std::vector<describe::AnyQuantity> repeats;
  std::optional<MeterRange> meter;
  TestLeads leads{TestLeads::not_stated};
  std::optional<describe::AnyQuantity> lead_resistance;
  CoverageRule coverage{CoverageRule::k_two};
  quantity::Fraction level{0.95};
};
std::string_view describe(describe::Fields<MeterUncertaintyInput>& f);

struct BudgetRow {
  std::string what;
  std::string how;
  describe::AnyQuantity standard_uncertainty;
  quantity::Fraction share{};                ///< of u squared
  std::optional<double> degrees_of_freedom;  ///< nothing: no end of them
};
std::string_view describe(describe::Fields<BudgetRow>& f);

struct MeterUncertainty {
  describe::AnyQuantity value;                 ///< with its expanded uncertainty
  describe::AnyQuantity standard_uncertainty;  ///< u
  describe::AnyQuantity expanded_uncertainty;  ///< U = k u
  describe::AnyQuantity worst_case;            ///< the maker's bounds, nothing combined
  double coverage_factor{};                    ///< k
  std::optional<double> degrees_of_freedom;    ///< nothing: no end of them
  std::string method;                          ///< how k was found
  bool accuracy_known{};  ///< false: only the last digit is counted, so U is too small
  std::string in_words;   ///< "12.340 V +- 0.095 V"
  std::vector<BudgetRow> budget;
  std::vector<std::string> working;
};
std::string_view describe(describe::Fields<MeterUncertainty>& f);

/// U = k sqrt(u_A^2 + (a / sqrt 3)^2 + (step / sqrt 12)^2 + ...), a = p |x| + n step + q FS
///
/// Percentages are of the figure on the display, in the unit typed.
///
/// @return wrong_dimension, out_of_bounds, missing, conflict: each with its path.
/// @source JCGM 100:2008, 4.2, 4.3.7, F.2.2.1, 5.1.2, G.4 (clauses from memory, unconfirmed).
[[nodiscard]] Checked<MeterUncertainty> meter_uncertainty(const MeterUncertaintyInput& input,
                                                          const describe::Context& context);

}  // namespace wm::evidence
