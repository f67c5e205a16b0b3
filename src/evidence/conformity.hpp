#pragma once
/// The calculation `conformity`: a reading against its limit, with a plain verdict.
///
/// The live verdict on the screen and the recorded one are this same call.

#include "describe/catalogue.hpp"
#include "evidence/decision.hpp"
#include "evidence/reading.hpp"
#include "evidence/verdict.hpp"

namespace wm::evidence {

/// Which width the guard band is made from.
enum class GuardFrom : std::uint8_t {
  expanded,   ///< U = 2 u
  worst_case  ///< the half-width of the maker's bounds, as it stands
};
std::string_view describe(describe::Choices<GuardFrom>& c);

/// How such parts usually turn out: only needed for the long-run risks.
struct SuchParts {
  describe::AnyQuantity mean;
  describe::AnyQuantity standard_deviation;
};
std::string_view describe(describe::Fields<SuchParts>& f);

struct ConformityInput {
  std::optional<describe::AnyQuantity> reading;  ///< nothing, and not over-range: not tested
  bool over_range{};
  std::vector<describe::AnyQuantity> repeats;
  std::optional<MeterRange> meter;
  TestLeads leads{TestLeads::not_stated};
  std::optional<describe::AnyQuantity> lead_resistance;
  std::optional<describe::AnyQuantity> lower;
  std::optional<describe::AnyQuantity> upper;
  std::string limit_source;
  Rule rule{Rule::guarded};
  GuardFrom guard_from{GuardFrom::expanded};
  double guard_factor{1.0};
  quantity::Fraction probability{0.95};
  std::optional<SuchParts> such_parts;
};
std::string_view describe(describe::Fields<ConformityInput>& f);

struct Conformity {
  Verdict verdict{Verdict::not_tested};
  bool open{};                   ///< over-range where a resistance should be small: an open circuit
  std::string in_words;          ///< "does not conform (open)"
  std::string reason;            ///< one sentence, with figures and units
  std::string risk;              ///< how likely the verdict is wrong, in words
  bool meter_good_enough{true};  ///< false: no reading of this meter could conform
  bool accuracy_known{true};     ///< false: only the last digit is counted
  std::vector<NextStep> do_next;
  std::optional<describe::AnyQuantity> value;        ///< with its expanded uncertainty
  std::optional<describe::AnyQuantity> guard;        ///< guard band w
  std::optional<describe::AnyQuantity> accept_from;  ///< conforms from here
  std::optional<describe::AnyQuantity> accept_to;    ///< to here
  std::optional<quantity::Fraction> probability_of_conformity;
  std::optional<quantity::Fraction> false_accept;  ///< when it conforms: and is yet outside
  std::optional<quantity::Fraction> false_reject;  ///< when it does not: and is yet inside
  std::optional<quantity::Fraction> allowance_used;
  std::optional<quantity::Fraction> consumer_risk;  ///< over many such parts
  std::optional<quantity::Fraction> producer_risk;
  std::string limit_source;
  std::vector<std::string> working;
};
std::string_view describe(describe::Fields<Conformity>& f);

/// Judge a reading.
///
/// Over-range is a reading. Above an upper limit it does not conform, and for a resistance it
/// is called open; above a lower limit (insulation) it conforms; if the range used ends below
/// the limit it says nothing, and a higher range is asked for.
///
/// @return missing (no limit), wrong_dimension, out_of_bounds, conflict: each with its path.
///         That the meter cannot tell is a verdict, not an error.
/// @source JCGM 106:2012 (from memory, unconfirmed); ILAC-G8:09/2019 par. 4.2 (read in extract).
[[nodiscard]] Checked<Conformity> conformity(const ConformityInput& input,
                                             const describe::Context& context);

/// The input for a reading taken with an instrument; limits and rule are left to the caller.
/// @param instrument  May be null: then only the stated uncertainty or the last digit counts.
/// @return not_found when the reading names a range the instrument does not have.
[[nodiscard]] Result<ConformityInput> conformity_input(const Reading& reading,
                                                       const Instrument* instrument);

}  // namespace wm::evidence
