// The fields of harness-check, as every face shows them.
#include "ignition/harness.hpp"

namespace wm::ignition {

using quantity::feet;
using quantity::inches;
using quantity::ohms;

namespace {
constexpr auto k_most_ohms = ohms(1e9);
}

std::string_view describe(describe::Choices<LeadCore>& c) {
  c.has(LeadCore::not_said, "not-said", "not said")
      .has(LeadCore::spiral, "spiral", "spiral-wound")
      .has(LeadCore::carbon, "carbon", "carbon")
      .has(LeadCore::metal, "metal", "solid or stranded metal");
  return "lead-core";
}

std::string_view describe(describe::Fields<HarnessLead>& f) {
  using L = HarnessLead;
  f.has<&L::name>("name", "Which lead").needed("1 top").unique();
  f.has<&L::length>("length", "Length, end to end of the conductor")
      .example("38 in")
      .between(inches(1), feet(50));
  f.has<&L::reading>("reading", "Resistance read")
      .example("188.3 ohm")
      .between(ohms(-1), k_most_ohms);
  f.has<&L::over_range>("over_range", "The display showed over-range");
  f.has<&L::range>("range", "Range of the meter")
      .help("Left out: the lowest range that can show the reading.");
  f.has<&L::flexing>("flexing", "Read again while it was flexed").at_most(32);
  f.has<&L::open_when_flexed>("open_when_flexed", "Over-range for a moment while it was flexed");
  f.has<&L::lowest>("lowest", "Lowest for this lead").between(ohms(0), k_most_ohms);
  f.has<&L::highest>("highest", "Highest for this lead").between(ohms(0), k_most_ohms);
  f.has<&L::earlier>("earlier", "Its own earlier reading").between(ohms(-1), k_most_ohms);
  return "harness-lead";
}

std::string_view describe(describe::Fields<HarnessCheckInput>& f) {
  using In = HarnessCheckInput;
  const quantity::ResistancePerLength none{0};
  const quantity::ResistancePerLength most{1e8};
  f.has<&In::leads>("leads", "The leads")
      .example(R"([{"name": "1 top", "length": "13.2 in", "reading": "0.085 kohm"},
 {"name": "1 bottom", "length": "36 in", "reading": "0.181 kohm"}])")
      .at_most(24);
  f.has<&In::core>("core", "Core of the leads").example("spiral");
  f.has<&In::per_length_low>("per_length_low", "Lowest resistance for a length")
      .example("45 ohm/ft")
      .between(none, most)
      .help("The lead maker's figure; no table gives a limit.");
  f.has<&In::per_length_high>("per_length_high", "Highest resistance for a length")
      .example("55 ohm/ft")
      .between(none, most);
  f.has<&In::terminals>("terminals", "Resistance of both ends of a lead together")
      .example("30 ohm")
      .between(ohms(0), k_most_ohms);
  f.has<&In::lowest>("lowest", "Lowest for every lead").between(ohms(0), k_most_ohms);
  f.has<&In::highest>("highest", "Highest for every lead").between(ohms(0), k_most_ohms);
  f.has<&In::limit_basis>("limit_basis", "Whose limit");
  f.has<&In::limit_source>("limit_source", "Where the limit is written")
      .example("data sheet of the leads' maker");
  f.has<&In::temperature>("temperature", "Temperature of the leads")
      .between(quantity::celsius(-40), quantity::celsius(150));
  f.has<&In::temperature_coefficient>("temperature_coefficient",
                                      "Change of resistance for a kelvin, as a share")
      .between(-0.01, 0.01);
  f.has<&In::ranges>("ranges", "Ranges of the meter and their accuracy")
      .example(R"([{"name": "2 kohm", "full_scale": "2 kohm", "resolution": "1 ohm",
 "of_reading": "0.8 %", "counts": 3}])")
      .at_most(16);
  f.has<&In::test_leads>("test_leads", "Test leads").example("nulled");
  f.has<&In::test_lead_resistance>("test_lead_resistance", "Resistance of the test leads")
      .between(ohms(0), ohms(100));
  f.has<&In::guard_from>("guard_from", "Guard band from");
  f.has<&In::insulation>("insulation", "Insulation, core to shield").at_most(24);
  f.has<&In::firing_order>("firing_order", "Firing order").example("1-3-2-4");
  f.has<&In::towers>("towers", "Each tower, and the plug its lead was traced to").at_most(24);
  return "harness-check-input";
}

std::string_view describe(describe::Fields<HarnessLeadAnswer>& f) {
  using A = HarnessLeadAnswer;
  f.has<&A::name>("name", "Lead");
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::found>("found", "Found");
  f.has<&A::reason>("reason", "Why");
  f.has<&A::lowest>("lowest", "Lowest for this lead");
  f.has<&A::highest>("highest", "Highest for this lead");
  f.has<&A::guard>("guard", "Guard band");
  f.has<&A::per_length>("per_length", "Read, for a length");
  f.has<&A::siblings>("siblings", "Among its siblings");
  f.has<&A::earlier>("earlier", "Against its own earlier reading");
  f.has<&A::flexing>("flexing", "While flexed");
  f.has<&A::not_covered>("not_covered", "Not covered by this check");
  f.has<&A::do_next>("do_next", "What to do next");
  f.has<&A::working>("working", "The sum, step by step");
  return "harness-lead-answer";
}

std::string_view describe(describe::Fields<HarnessCheckAnswer>& f) {
  using A = HarnessCheckAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::leads>("leads", "Each lead");
  f.has<&A::own_per_length>("own_per_length", "Resistance for a length, by its own leads");
  f.has<&A::own_ends>("own_ends", "Both ends of a lead, by its own leads");
  f.has<&A::own_in_words>("own_in_words", "By its own leads, in words");
  f.has<&A::insulation>("insulation", "Insulation");
  f.has<&A::lead_map>("lead_map", "Where each lead goes");
  f.has<&A::figures>("figures", "Figures of the trade: advice");
  f.has<&A::notes>("notes", "Notes");
  return "harness-check-answer";
}

}  // namespace wm::ignition
