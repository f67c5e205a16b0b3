#pragma once
/// Judging a reading: the same call for the live verdict and for the recorded one.

#include "bay/state.hpp"
#include "describe/catalogue.hpp"
#include "evidence/conformity.hpp"

namespace wm::desk {

/// How one sibling read last.
struct SiblingReading {
  std::string check, title;
  std::string value;
  std::string verdict;
};
std::string_view describe(describe::Fields<SiblingReading>& f);

struct Judged {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string words;   ///< "does not conform (open)"
  std::string reason;  ///< one sentence with figures
  std::string next;    ///< what to do about it
  std::string risk;
  std::optional<describe::AnyQuantity> value, lowest, highest;
  std::optional<double> allowance_used;
  std::optional<double> probability_within;
  bool meter_good_enough{true};
  std::string limit_source;  ///< document, revision and authority of the limit
  std::string rule;
  std::string last_time;   ///< "7.1 kohm at 1062 h"
  std::string siblings;    ///< "5.2 to 5.9 kohm"
  std::string not_tested;  ///< what this reading does not show: insulation
  std::vector<SiblingReading> sibling_readings;
  std::vector<std::string> working;
};
std::string_view describe(describe::Fields<Judged>& f);

/// @return every problem with its path in the reading; that the instrument cannot tell is a
///         verdict, not a problem.
[[nodiscard]] Checked<Judged> judge(const bay::ReadingTaken& reading, const bay::State& state,
                                    const describe::Context& context);

/// The limits of a check: as entered, or by length for a lead.
struct CheckLimits {
  std::optional<describe::AnyQuantity> lowest, highest;
  std::vector<std::string> working;
};
[[nodiscard]] CheckLimits limits_of(const bay::CheckDescribed& check);

/// "maker's sheet, rev. C (maker, recommended)"
[[nodiscard]] std::string limit_source(const bay::CheckDescribed& check);
/// A value in the unit in which it was typed, or the one the check is read in.
[[nodiscard]] std::string say(const describe::AnyQuantity& value, const std::string& unit);

/// The verdict of a judgement as the fact that is recorded beside its reading.
[[nodiscard]] bay::VerdictGiven as_fact(const Judged& judged, const bay::ReadingTaken& reading,
                                        const std::string& part);

}  // namespace wm::desk
