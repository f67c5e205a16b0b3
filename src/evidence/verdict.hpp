#pragma once
/// Evidence: readings, instruments, uncertainty, limits, decision rules, verdicts.
/// What a reading is worth, and what may be said from it. Pure: no clock, no file.
///
/// This header: the four verdicts.

#include <cstdint>
#include <string_view>

#include "describe/fields.hpp"
#include "outcome/result.hpp"

namespace wm::evidence {

/// What may be said of a reading against its limit. Never "safe": a person decides that.
enum class Verdict : std::uint8_t {
  not_tested,        ///< nothing was read; as important as any other
  conforms,          ///< inside, with the meter's doubt taken off
  does_not_conform,  ///< outside, with the meter's doubt taken off
  undecided          ///< this meter cannot tell; ends in something to do
};

/// "conforms", "does-not-conform", "undecided", "not-tested": as stored and shown.
[[nodiscard]] std::string_view word(Verdict verdict);
/// The same in a sentence for people: "does not conform", "not tested".
[[nodiscard]] std::string_view words(Verdict verdict);
/// @return unknown_choice for any other word.
[[nodiscard]] Result<Verdict> verdict_by_word(std::string_view text);

std::string_view describe(describe::Choices<Verdict>& c);

/// What to do next when a reading has not settled the matter.
enum class NextStep : std::uint8_t {
  reseat_and_repeat,
  use_lower_range,
  use_higher_range,
  null_the_leads,
  give_the_accuracy,
  swap_with_sibling,
  other_instrument,
  hold
};
[[nodiscard]] std::string_view words(NextStep step);
std::string_view describe(describe::Choices<NextStep>& c);

}  // namespace wm::evidence
