// Source:    electrical notes, section 9, case E18 (limits and meter term computed there; guard
//            band beside the limit as in ILAC-G8:09/2019 par. 4.2.3), E19 (meter specification
//            form), E22 (a value exactly at a limit).
// Tolerance: as the notes state, .001 kohm; otherwise exact up to rounding.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "ignition/lead.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::ignition;
using evidence::Verdict;

describe::AnyQuantity any(const char* text) { return *describe::read_any(text); }
MeasuredResistance read_ohms(const char* text) {
  const auto p = *quantity::parse_measured(text, quantity::KindOf::resistance);
  MeasuredResistance m{{p.value.si}, {}, p.value.resolution_si, text};
  if (p.expanded) m.expanded_si = p.expanded->si;
  return m;
}
quantity::Measured<quantity::Length> metres(const char* text) {
  const auto p = *quantity::parse_measured(text, quantity::KindOf::length);
  return {{p.value.si}, {}, p.value.resolution_si, text};
}

LeadCheckInput e18() {
  LeadCheckInput in;
  in.name = "3 top";
  in.length = metres("1.20 m");
  in.per_length_low = *quantity::read<quantity::ResistancePerLength>("10 kohm/m");
  in.per_length_high = *quantity::read<quantity::ResistancePerLength>("23 kohm/m");
  in.reading = read_ohms("26.50 kohm");
  evidence::MeterRange range;
  range.name = "60 kohm";
  range.full_scale = any("60 kohm");
  range.resolution = any("0.01 kohm");
  range.of_reading = quantity::per_cent(0.9);
  range.counts = 2;
  in.meter = range;
  in.leads = evidence::TestLeads::nulled;
  return in;
}

TEST(LeadCases, E18) {
  const auto got = lead_check(e18(), {});
  ASSERT_TRUE(got) << got.error()[0].what;
  const auto kohm = [](const auto& r) { return r->value.si / 1000; };
  const std::string source = "electrical notes, E18; ILAC-G8:09/2019 par. 4.2.3";
  const std::string why = "stated with the case";
  test::check(
      {"lead-check", "E18 lowest", source, "12.00 kohm", 12.00, kohm(got->lowest), 0.001, why});
  test::check(
      {"lead-check", "E18 highest", source, "27.60 kohm", 27.60, kohm(got->highest), 0.001, why});
  test::check(
      {"lead-check", "E18 guard band", source, ".2585 kohm", 0.2585, kohm(got->guard), 0.001, why});
  test::check({"lead-check", "E18 conforms up to", source, "27.34 kohm", 27.34,
               kohm(got->accept_to), 0.005, "half a unit of the last printed digit"});
  test::check_text("lead-check", "E18 verdict", source, "conforms", got->in_words);
}

// E19: 100.0, 1 % + 2 counts of 0.1: 98.8 to 101.2. Here in ohm, as the guard band of a lead.
TEST(LeadCases, E19MeterTermsInOhm) {
  LeadCheckInput in;
  in.highest = *quantity::read<quantity::Resistance>("102 ohm");
  in.reading = read_ohms("100.0 ohm");
  evidence::MeterRange range;
  range.resolution = any("0.1 ohm");
  range.of_reading = quantity::per_cent(1);
  range.counts = 2;
  in.meter = range;
  in.leads = evidence::TestLeads::nulled;
  const auto got = lead_check(in, {});
  ASSERT_TRUE(got);
  test::check({"lead-check", "E19 half-width", "electrical notes, E19: 98.8 to 101.2", "1.2 ohm",
               1.2, got->guard->value.si, 0.05, "half a unit of the last printed digit"});
  EXPECT_EQ(got->verdict, Verdict::conforms);
}

// A value exactly at its limit: these limits are inclusive, so without any doubt it conforms
// (E22 is the strict one, "not below 2.5").
TEST(LeadCases, AtTheLimitWithoutDoubtConforms) {
  auto in = e18();
  in.reading = read_ohms("27.60 kohm");
  in.meter->of_reading = {};
  in.meter->counts = 0;
  in.meter->resolution.reset();
  in.guard_from = evidence::GuardFrom::worst_case;
  const auto at = lead_check(in, {});
  ASSERT_TRUE(at);
  EXPECT_NE(at->verdict, Verdict::does_not_conform);
}

}  // namespace
