#include "evidence/verdict.hpp"

#include <array>
#include <string>
#include <utility>

namespace wm::evidence {
namespace {

struct VerdictRow {
  Verdict verdict;
  std::string_view word;
  std::string_view label;
};
constexpr std::array<VerdictRow, 4> k_verdicts{{
    {Verdict::not_tested, "not-tested", "not tested"},
    {Verdict::conforms, "conforms", "conforms"},
    {Verdict::does_not_conform, "does-not-conform", "does not conform"},
    {Verdict::undecided, "undecided", "undecided: the meter cannot tell"},
}};

struct StepRow {
  NextStep step;
  std::string_view word;
  std::string_view words;
};
constexpr std::array<StepRow, 8> k_steps{{
    {NextStep::reseat_and_repeat, "reseat-and-repeat",
     "clean and reseat the probes, hold until the reading settles, and repeat"},
    {NextStep::use_lower_range, "use-lower-range", "use the lowest range that does not over-range"},
    {NextStep::use_higher_range, "use-higher-range", "use a higher range"},
    {NextStep::null_the_leads, "null-the-leads",
     "short the probes, null the test leads and repeat; below about 2 ohm use four wires"},
    {NextStep::give_the_accuracy, "give-the-accuracy",
     "look up the meter's accuracy for this range and enter it"},
    {NextStep::swap_with_sibling, "swap-with-sibling",
     "swap with a sibling and see whether the reading moves with the part"},
    {NextStep::other_instrument, "other-instrument",
     "use another, more accurate instrument: this meter is not good enough for this tolerance"},
    {NextStep::hold, "hold", "hold: leave it open until it is settled"},
}};

}  // namespace

std::string_view word(Verdict verdict) {
  for (const auto& row : k_verdicts)
    if (row.verdict == verdict) return row.word;
  return "not-tested";
}

std::string_view words(Verdict verdict) {
  if (verdict == Verdict::does_not_conform) return "does not conform";
  return verdict == Verdict::not_tested ? "not tested" : word(verdict);
}

Result<Verdict> verdict_by_word(std::string_view text) {
  for (const auto& row : k_verdicts)
    if (row.word == text) return row.verdict;
  return Fail(Kind::unknown_choice,
              "no verdict is called `" + std::string(text.substr(0, 60)) + "`",
              "conforms, does-not-conform, undecided or not-tested", "conforms");
}

std::string_view describe(describe::Choices<Verdict>& c) {
  for (const auto& row : k_verdicts) c.has(row.verdict, row.word, row.label);
  return "verdict";
}

std::string_view words(NextStep step) {
  for (const auto& row : k_steps)
    if (row.step == step) return row.words;
  return {};
}

std::string_view describe(describe::Choices<NextStep>& c) {
  for (const auto& row : k_steps) c.has(row.step, row.word, row.words);
  return "next-step";
}

}  // namespace wm::evidence
