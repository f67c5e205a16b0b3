#include "hose/declarations.hpp"

#include "hose/fit.hpp"
#include "hose/length.hpp"
#include "hose/measured_ends.hpp"
#include "hose/shape.hpp"
#include "hose/sheet.hpp"
#include "hose/stiffness.hpp"
#include "tables/hose/all.hpp"

namespace wm::hose {

using quantity::feet;
using quantity::inches;
using quantity::per_cent;

std::string_view describe(describe::Choices<EndForm>& c) {
  c.has(EndForm::straight, "straight", "straight swivel")
      .has(EndForm::elbow_45, "elbow-45", "45 degree elbow")
      .has(EndForm::elbow_90, "elbow-90", "90 degree elbow")
      .has(EndForm::male_thread, "male-thread", "male thread");
  return "end-form";
}

std::string_view describe(describe::Choices<SlackRule>& c) {
  c.has(SlackRule::of_total, "of-total", "share of the hose's total length")
      .has(SlackRule::of_gap, "of-gap", "longer than the gap");
  return "slack-rule";
}

std::string_view describe(describe::Fields<EndFitting>& f) {
  f.has<&EndFitting::form>("form", "Form");
  f.has<&EndFitting::rigid>("rigid", "Its length that does not bend")
      .example("1.2 in")
      .between(inches(0), inches(24))
      .help("From the sealing seat to where the hose can bend.");
  f.has<&EndFitting::cut_off>("cut_off", "Its cut-off")
      .example("0.94 in")
      .between(inches(0), inches(12))
      .help("Overall length less hose length for this end; the maker's figure, or measured.");
  f.has<&EndFitting::family>("family", "Its cut-off from the table")
      .example("MS24587")
      .help("Row of the table hose-cut-off.");
  return "end-fitting";
}

std::string_view describe(describe::Fields<LengthAllowanceInput>& f) {
  f.has<&LengthAllowanceInput::between_seats>("between_seats", "Between the two sealing seats")
      .example("30 in")
      .above(inches(0))
      .at_most(feet(100))
      .help("Along the way the hose shall run.");
  f.has<&LengthAllowanceInput::overall>("overall", "Overall length, where it is settled")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&LengthAllowanceInput::slack_rule>("slack_rule", "Slack is meant as");
  f.has<&LengthAllowanceInput::slack_from>("slack_from", "Slack at least")
      .between(per_cent(0), per_cent(50));
  f.has<&LengthAllowanceInput::slack_to>("slack_to", "Slack at most")
      .between(per_cent(0), per_cent(50));
  f.has<&LengthAllowanceInput::size>("size", "Dash number").example("-8");
  f.has<&LengthAllowanceInput::near_end>("near_end", "Near end")
      .example(R"({"rigid": "1.50 in", "cut_off": "0.94 in"})");
  f.has<&LengthAllowanceInput::far_end>("far_end", "Far end")
      .example(R"({"form": "elbow-90", "rigid": "1.80 in", "cut_off": "1.31 in"})");
  f.has<&LengthAllowanceInput::pair_form>("pair_form", "PTFE assembly, both ends alike")
      .help("Form as the table hose-cut-off-pair words it: straight, 45 degree elbow, ...");
  f.has<&LengthAllowanceInput::outside_diameter>("outside_diameter", "Outside diameter of the hose")
      .example("0.77 in")
      .above(inches(0))
      .at_most(inches(12));
  return "length-allowance-input";
}

std::string_view describe(describe::Fields<LengthAllowanceAnswer>& f) {
  using A = LengthAllowanceAnswer;
  f.has<&A::overall>("overall", "Overall length to make, seat to seat");
  f.has<&A::overall_shortest>("overall_shortest", "Shortest by the slack rule");
  f.has<&A::overall_longest>("overall_longest", "Longest by the slack rule");
  f.has<&A::cut_length>("cut_length", "Cut the hose to");
  f.has<&A::flexible>("flexible", "Hose that can bend");
  f.has<&A::flexible_shortest>("flexible_shortest", "Hose that can bend, shortest");
  f.has<&A::flexible_longest>("flexible_longest", "Hose that can bend, longest");
  f.has<&A::lengthens>("lengthens", "Under pressure longer by up to");
  f.has<&A::shortens>("shortens", "Under pressure shorter by up to");
  f.has<&A::in_hand>("in_hand", "In hand when it has shortened");
  f.has<&A::slack>("slack", "Slack, of its total length");
  f.has<&A::straight_at_ends>("straight_at_ends", "Straight behind each end, at least");
  f.has<&A::measured>("measured", "How the length is measured");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "length-allowance-answer";
}

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  for (const Table* table : tables::all_of_hose()) catalogue.add(*table);
  catalogue.add(calculation<&length_allowance>(
      "length-allowance", "Length of a hose assembly with its slack, and the hose to cut for it",
      {read("AC 43.13-1B CHG 1", "fig. 9-9, page 9-23: +2 % to -4 % under pressure"),
       read("FAA-H-8083-30", "page 7-19: slack 5 to 8 %, two diameters straight at each end"),
       read("NAVEDTRA 14018", "table 5-2 and page 5-12: cut length"),
       read("TM 1-1500-204-23-2", "table 4-22: PTFE assemblies"),
       read("MIL-DTL-83796/5", "fig. 2, notes 2 to 4: how length is measured at elbows")},
      {caution::eye_protection, caution::look_again, caution::defer}));
  catalogue.add(calculation<&hose_shape>(
      "hose-shape", "How a hose of a given length lies between two fittings",
      {derived(
           "least bending energy of an inextensible rod clamped at both ends "
           "(docs/method/hose-shape.md); compared with closed forms and a boundary-value solver"),
       read("MIL-DTL-83796/5", "fig. 3, notes 1, 3, 4 and 5: clocking, its steps and tolerance"),
       read("TM 1-1500-204-23-2", "table 4-15, page 4-47: bend radius to the inside")},
      {caution::eye_protection, caution::look_again, caution::defer}));
  catalogue.add(calculation<&hose_length>(
      "hose-length", "The window of lengths between two fittings, and what is near the hose",
      {derived("the tightest bend as a function of the length (docs/method/hose-shape.md)"),
       read("AC 43.13-1B CHG 1", "fig. 9-9, page 9-23: +2 % to -4 % under pressure"),
       read("AC 43.13-1B CHG 1", "par. 11-96, page 11-44: distance of fuel lines from wiring"),
       read("FAA-H-8083-30", "page 7-19: slack 5 to 8 %, two diameters straight at each end"),
       read("TM 1-1500-204-23-2", "table 4-15, page 4-47: bend radius to the inside")},
      {caution::hot_parts, caution::look_again, caution::defer}));
  catalogue.add(calculation<&hose_ends>(
      "hose-ends", "Where two fittings sit, from a dummy tube or from tape and inclinometer",
      {derived("least squares and the law of propagation over the readings "
               "(docs/method/hose-shape.md, section on measuring the ends)"),
       from_memory("JCGM 100:2008", "4.3.7 and 5.1.2: limits taken as uniform, and combined"),
       read("MIL-DTL-83796/5", "fig. 3, note 3: clocking within 3 degrees up to 2 ft, 5 above")},
      {caution::look_again, caution::defer}));
  catalogue.add(calculation<&hose_stiffness>(
      "hose-stiffness", "Bending stiffness of a hose, from the sag test or between two boards",
      {derived("heavy cantilever and elastica between two boards (docs/method/hose-shape.md); "
               "compared with a shooting solver and with closed forms")},
      {caution::eye_protection, caution::defer}));
  catalogue.add(calculation<&hose_sheet>(
      "hose-sheet", "Everything on the drawing sheet of one hose",
      {derived("hose-shape and hose-length for one hose (docs/method/hose-shape.md)"),
       read("AC 43.13-1B CHG 1", "fig. 9-9, page 9-23: +2 % to -4 % under pressure"),
       read("AC 43.13-1B CHG 1",
            "table 9-3, page 9-22: radius, working and proof pressure of MIL-H-8794 hose"),
       read("TM 1-1500-204-23-2",
            "tables 4-15 and 4-23: the same of MIL-H-8788 hose, proof pressure of MIL-H-25579"),
       read("MIL-DTL-83796/5", "fig. 3, notes 1, 3, 4 and 5: clocking, its steps and tolerance")},
      {caution::proof_with_liquid, caution::hot_parts, caution::eye_protection, caution::look_again,
       caution::defer}));
  declare_proof(catalogue);
  declare_rating(catalogue);
  declare_making(catalogue);
}

}  // namespace wm::hose
