// Source:    hoses notes, section 7.3: AL0907 p. 54 (leak, broken wires), NAVEDTRA 14018 p. 5-26,
//            NAVEDTRA 14315 p. 10-19 region (fire sleeve, twist, swivel nut).
// Tolerance: exact; the verdict at and beside each printed figure.
#include <gtest/gtest.h>

#include "hose/condition.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

/// The verdict of the one line that speaks of it.
std::string line(const HoseConditionInput& in, const std::string& what) {
  const auto got = hose_condition(in, {});
  for (const auto& c : got->criteria) {
    if (c.what.starts_with(what)) return std::string(evidence::word(c.verdict));
  }
  return "no such line";
}

void expect(const char* id, const char* source, const char* verdict, const HoseConditionInput& in,
            const char* what) {
  test::check_text("hose-condition", id, source, verdict, line(in, what));
}

TEST(ConditionCases, BrokenWires) {
  HoseConditionInput in;
  in.kind = HoseKind::elastomer;
  in.wires_in_one_plait = 2;
  in.wires_per_foot = 6;
  expect("elastomer: 2 wires in one plait", "AL0907 p. 54", "does-not-conform", in,
         "broken wires in one plait");
  expect("elastomer: 6 wires a foot", "AL0907 p. 54", "does-not-conform", in,
         "broken wires in one foot");
  in.kind = HoseKind::ptfe;
  expect("PTFE: 2 wires in one plait", "AL0907 p. 54", "does-not-conform", in,
         "broken wires in one plait");
  expect("PTFE: 6 wires a foot are not more than 6", "AL0907 p. 54", "conforms", in,
         "broken wires in one foot");
}

TEST(ConditionCases, LeakOfAPtfeHose) {
  HoseConditionInput in;
  in.kind = HoseKind::ptfe;
  in.drops_per_hour = 1.0;
  expect("PTFE: 1 drop an hour", "AL0907 p. 54", "conforms", in, "leak, standing still");
  in.drops_per_hour = 1.01;
  expect("PTFE: over 1 drop an hour", "AL0907 p. 54", "does-not-conform", in,
         "leak, standing still");
}

TEST(ConditionCases, OilSoakedSleeve) {
  HoseConditionInput in;
  in.kind = HoseKind::elastomer;
  in.sleeve = SleeveState::oil_soaked;
  expect("oil-soaked fire sleeve: replace", "NAVEDTRA 14315 p. 10-19 region", "does-not-conform",
         in, "fire sleeve");
}

}  // namespace
