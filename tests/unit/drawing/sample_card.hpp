#pragma once
/// An invented card for the tests: aircraft "Pebblewing", Q-PEB, is nobody's.

#include "drawing/card.hpp"

namespace wm::drawing::test {

inline const char* const k_head =
    "9f3ac01d77b2e4560a1b2c3d4e5f60718293a4b5c6d7e8f90a1b2c3d4e5f6071";

inline Step lead_step(const std::string& lead, const std::string& value,
                      const std::string& verdict) {
  Step step;
  step.text = "Measure " + lead + " from tower contact to plug contact, lead off at both ends.";
  step.readings = {{"resistance of " + lead, "kΩ", "3.0 kΩ to 8.0 kΩ",
                    "owner's sheet, 12 Oct 2026, from the harness maker's sheet", value, verdict}};
  return step;
}

inline Card sample_card() {
  Card card;
  card.title = "Work card: left ignition harness and fuel hose";
  card.subtitle = "Stage 2 of 4: renew, prove on the bench, install";
  card.aircraft = "Pebblewing";
  card.registration = "Q-PEB";
  card.date = "2026-11-25";
  card.facts = {{"engine hours", "1 140.6 h"},
                {"airframe hours", "1 212.3 h"},
                {"changes in this stage",
                 "left ignition harness (renewed); fuel hose, strainer to "
                 "pump (renewed)"},
                {"instrument", "multimeter M1, checked 2026-03-04"}};
  card.cautions = {
      "Treat the propeller as live: a magneto needs no battery, and an open ground lead leaves it "
      "hot. Prove the switch, then take the leads off the plugs before anything is turned.",
      "Fuel and vapour: bond container and aircraft, battery off, no ignition source, ventilate.",
      "A harness whose conductor conforms is not thereby insulated, and its leads can be crossed."};
  Section bench{
      "On the bench", {"Zero the meter with its leads joined; write down what it shows."}, {}, {}};
  bench.steps = {lead_step("lead 1 top", "5.6", "conforms"),
                 lead_step("lead 2 top", "8.9", "does not conform"),
                 lead_step("lead 3 top", "", ""), lead_step("lead 4 top", "7.9", "undecided")};
  bench.steps[0].state = "done";
  bench.steps[1].state = "open";
  Section install{"Installation", {}, {}, {}};
  install.steps = {
      {"Fit the fuel hose, strainer end first; clocking 45° from the top, seen from the strainer, "
       "turning clockwise. No twist: the lay line stays straight.",
       {},
       "",
       "",
       false,
       ""},
      {"Tighten the strainer nut with the second wrench on the fitting.",
       {},
       "225 in·lb ± 10 in·lb",
       "hose maker's table 3, rev. C, entered by the owner",
       true,
       ""},
      {"Tighten the pump nut with the second wrench on the fitting.",
       {},
       "225 in·lb ± 10 in·lb",
       "",
       true,
       ""},
      {"Draw the stripe across both nuts.", {}, "", "", false, ""},
      {"Connect the left harness in firing order 1-3-2-4; each lead to its own plug.",
       {},
       "",
       "",
       true,
       ""},
      {"Tighten the plug nuts, hold the barrel still.",
       {},
       "95 in·lb",
       "engine maker's manual, "
       "section 7, rev. 4",
       false,
       ""}};
  Section prove{"Proof", {}, {}, {}};
  prove.steps = {{"Tank head leak run, engine stopped, ten minutes: dry cloth around both nuts.",
                  {{"drips in ten minutes", "", "none", "common practice, no source", "", ""},
                   {"pressure at the pump inlet, fuel at rest", "psi", "", "", "", ""}},
                  "",
                  "",
                  false,
                  ""},
                 {"Ground run, uncowled: note the drop on each side.",
                  {{"drop on left", "rpm", "175 rpm at most",
                    "engine maker's manual, section 3, rev. 4", "", ""},
                   {"drop on right", "rpm", "175 rpm at most",
                    "engine maker's manual, section 3, rev. 4", "", ""},
                   {"difference", "rpm", "50 rpm at most",
                    "engine maker's manual, section 3, rev. 4", "", ""}},
                  "",
                  "",
                  true,
                  ""}};
  prove.table =
      Table{{"part off", "serial or batch", "time in place", "part on", "serial or batch"},
            {{"fuel hose, strainer to pump", "batch 07", "64 months, 412.0 h",
              "fuel hose, strainer to pump", "batch 31, cured 2026-08"},
             {"left harness", "H-114", "1 140.6 h", "left harness", "H-260"}},
            {3, 2, 2.4, 3, 2.6}};
  card.sections = {bench, install, prove};
  card.signatures = {{"Work done as described", "", "", "", false},
                     {"Seen by a second person", "A. Example", "none", "2026-11-26", true}};
  card.sequence = 412;
  card.head = k_head;
  return card;
}

}  // namespace wm::drawing::test
