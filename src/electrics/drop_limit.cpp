#include <fmt/core.h>

#include <algorithm>

#include "electrics/cable_drop.hpp"
#include "electrics/detail/figures.hpp"
#include "electrics/detail/problem.hpp"
#include "quantity/as_typed.hpp"
#include "tables/electrics/wire_drop_limits.hpp"

namespace wm::electrics {
namespace {

constexpr double k_feeder_share = 0.02;

std::string_view volts_of(NominalVoltage nominal) {
  switch (nominal) {
    case NominalVoltage::v14:
      return "14";
    case NominalVoltage::v28:
      return "28";
    case NominalVoltage::v115:
      return "115";
    case NominalVoltage::v200:
      break;
  }
  return "200";
}

std::string_view word_of(Duty duty) {
  return duty == Duty::continuous ? "continuous" : "intermittent";
}

}  // namespace

Result<DropLimit> drop_limit(const DropLimitQuestion& question) {
  if (question.own) {
    const auto& from = question.own_source;
    return DropLimit{question.own->value.si, from.empty() ? "entered" : "entered: " + from, false};
  }
  if (question.role == CircuitRole::feeder) {
    if (!question.regulated) {
      return Fail(detail::problem("regulated", Kind::missing,
                                  "a feeder is judged by the regulated voltage, which is not there",
                                  "the voltage that the regulator holds", "14.2 V"));
    }
    return DropLimit{k_feeder_share * question.regulated->value.si,
                     "2 % of the regulated voltage, generator at rated current or battery at its "
                     "5-minute rate: FAA-H-8083-31 (text of fig. 9-121), FAA-H-8083-32 (fig. 4-78)",
                     false};
  }
  const auto& table = tables::wire_drop_limits;
  std::size_t row = 0;
  while (table.rows[row][0] != volts_of(question.nominal) ||
         table.rows[row][1] != word_of(question.duty)) {
    ++row;
  }
  const bool advice = detail::provenance(table, row) != "read";
  return DropLimit{
      detail::figure(table, row, "limit").value_or(0.0),
      fmt::format("{}, {} V {}{}", detail::cited(table), table.rows[row][0], table.rows[row][1],
                  advice ? " (from a public transcription of the table: advice)" : ""),
      advice};
}

Against against(double value, double limit, bool advice) {
  // A tie of the last bit is a tie: 1.0 V against 1 V is within.
  const bool over = value > limit * (1.0 + 1e-12);
  if (advice) return over ? Against::advice_over : Against::advice_within;
  return over ? Against::over : Against::within;
}

std::string_view words(Against a) {
  switch (a) {
    case Against::within:
      return "within the limit";
    case Against::over:
      return "over the limit";
    case Against::advice_within:
      return "within a figure that is advice, no limit";
    case Against::advice_over:
      return "over a figure that is advice, no limit";
    case Against::no_limit:
      break;
  }
  return "no limit to compare with";
}

}  // namespace wm::electrics
