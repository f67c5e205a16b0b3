// The fields of plug-check, as every face shows them.
#include "ignition/plug.hpp"

namespace wm::ignition {

using quantity::inches;
using quantity::ohms;

namespace {
constexpr auto k_most_ohms = ohms(1e12);
}

std::string_view describe(describe::Choices<PlugLook>& c) {
  c.has(PlugLook::not_looked, "not-looked", "not looked at")
      .has(PlugLook::normal, "normal", "dry, tan to grey")
      .has(PlugLook::dry_soot, "dry-soot", "black and dry")
      .has(PlugLook::wet_oil, "wet-oil", "black and wet")
      .has(PlugLook::lead_beads, "lead-beads", "beads of lead")
      .has(PlugLook::worn_electrodes, "worn-electrodes", "worn electrodes")
      .has(PlugLook::cracked_ceramic, "cracked-ceramic", "cracked or chipped ceramic")
      .has(PlugLook::damaged_thread, "damaged-thread", "damaged threads or barrel")
      .has(PlugLook::corroded_seat, "corroded-seat", "corroded seat")
      .has(PlugLook::well_flashover, "well-flashover", "flashover in the well");
  return "plug-look";
}

std::string_view describe(describe::Choices<SparkFrom>& c) {
  c.has(SparkFrom::magneto, "magneto", "magneto")
      .has(SparkFrom::double_ended_coil, "double-ended-coil", "coils with two towers");
  return "spark-from";
}

std::string_view describe(describe::Fields<PlugReading>& f) {
  using P = PlugReading;
  f.has<&P::name>("name", "Which plug").needed("3 top").unique();
  f.has<&P::gaps>("gaps", "Gap at each electrode").example("0.018 in").at_most(4);
  f.has<&P::resistor>("resistor", "Resistor, well contact to centre electrode")
      .example("1050 ohm")
      .between(ohms(-1), k_most_ohms);
  f.has<&P::resistor_over_range>("resistor_over_range", "Resistor: over-range");
  f.has<&P::resistor_range>("resistor_range", "Resistor: range of the meter");
  f.has<&P::insulation>("insulation", "Insulation, centre electrode to shell")
      .between(ohms(-1), k_most_ohms);
  f.has<&P::insulation_over_range>("insulation_over_range", "Insulation: over-range");
  f.has<&P::insulation_range>("insulation_range", "Insulation: range of the meter");
  f.has<&P::look>("look", "What it looks like").example("normal");
  f.has<&P::half_worn>("half_worn", "An electrode is at half its original size");
  f.has<&P::dropped>("dropped", "It was dropped");
  return "plug-reading";
}

std::string_view describe(describe::Fields<PlugCheckInput>& f) {
  using In = PlugCheckInput;
  f.has<&In::plugs>("plugs", "The plugs")
      .example(R"([{"name": "3 top", "gaps": ["0.018 in", "0.019 in"], "resistor": "1.050 kohm",
 "look": "normal"}])")
      .at_most(24);
  f.has<&In::gap_lowest>("gap_lowest", "Gap, least")
      .example("0.016 in")
      .between(inches(0.001), inches(0.2));
  f.has<&In::gap_highest>("gap_highest", "Gap, greatest")
      .example("0.021 in")
      .between(inches(0.001), inches(0.2));
  f.has<&In::resistor_highest>("resistor_highest", "Resistor, highest")
      .between(ohms(0), k_most_ohms)
      .help("The maker's figure; no table gives a limit.");
  f.has<&In::insulation_least>("insulation_least", "Insulation, least")
      .between(ohms(0), k_most_ohms);
  f.has<&In::limit_source>("limit_source", "Where the limits are written")
      .example("service bulletin of the plugs' maker");
  f.has<&In::ranges>("ranges", "Ranges of the meter and their accuracy")
      .example(R"([{"name": "2 kohm", "full_scale": "2 kohm", "resolution": "1 ohm",
 "of_reading": "0.8 %", "counts": 3}])")
      .at_most(16);
  f.has<&In::test_leads>("test_leads", "Test leads").example("nulled");
  f.has<&In::test_lead_resistance>("test_lead_resistance", "Resistance of the test leads")
      .between(ohms(0), ohms(100));
  f.has<&In::gauge_step>("gauge_step", "Step between the wires of the gap gauge")
      .example("0.001 in")
      .between(quantity::metres(0), inches(0.05));
  f.has<&In::firing_order>("firing_order", "Firing order, for a plan of rotation")
      .example("1-3-2-4");
  f.has<&In::spark_from>("spark_from", "Where the sparks come from");
  return "plug-check-input";
}

std::string_view describe(describe::Fields<PlugAnswer>& f) {
  using A = PlugAnswer;
  f.has<&A::name>("name", "Plug");
  f.has<&A::gap>("gap", "Gap");
  f.has<&A::resistor>("resistor", "Resistor");
  f.has<&A::insulation>("insulation", "Insulation");
  f.has<&A::look>("look", "Look");
  f.has<&A::figures>("figures", "Figures of the trade: advice");
  return "plug-answer";
}

std::string_view describe(describe::Fields<PlugMove>& f) {
  f.has<&PlugMove::from>("from", "Comes out of");
  f.has<&PlugMove::to>("to", "Goes into");
  return "plug-move";
}

std::string_view describe(describe::Fields<PlugCheckAnswer>& f) {
  using A = PlugCheckAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::plugs>("plugs", "Each plug");
  f.has<&A::rotation>("rotation", "Where each plug goes back");
  f.has<&A::rotation_in_words>("rotation_in_words", "The rotation in words");
  f.has<&A::notes>("notes", "Notes");
  return "plug-check-answer";
}

}  // namespace wm::ignition
