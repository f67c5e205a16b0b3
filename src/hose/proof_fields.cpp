// The words of "proof-test": fields, labels, bounds, examples.
#include "hose/proof.hpp"

namespace wm::hose {

using quantity::celsius;
using quantity::degrees;
using quantity::feet;
using quantity::inches;
using quantity::per_cent;
using quantity::psi_gauge;

namespace {

constexpr quantity::PressureDifference megapascals(double v) { return {v * 1e6}; }
constexpr quantity::Volume millilitres(double v) { return {v * 1e-6}; }

constexpr std::string_view k_holds =
    R"([{"start": "4000 psi", "end": "3850 psi", "lasted": "5 min", "temperature_start": "20.0 degC",
         "temperature_end": "20.0 degC", "pumped_in": "4.2 mL"},
        {"start": "4000 psi", "end": "3960 psi", "lasted": "5 min", "temperature_start": "20.0 degC",
         "temperature_end": "20.2 degC", "pumped_in": "4.1 mL"}])";
constexpr std::string_view k_blank =
    R"({"start": "4000 psi", "end": "3940 psi", "lasted": "5 min", "temperature_start": "20.0 degC",
        "temperature_end": "20.0 degC", "pumped_in": "1.2 mL"})";

}  // namespace

std::string_view describe(describe::Choices<ProofFamily>& c) {
  c.has(ProofFamily::not_said, "not-said", "not said")
      .has(ProofFamily::medium_elastomer, "medium-elastomer",
           "elastomer, one wire braid, fabric cover (MIL-H-8794)")
      .has(ProofFamily::high_elastomer, "high-elastomer",
           "elastomer, high pressure (MIL-H-8788 in MS28759, MS28762)")
      .has(ProofFamily::ptfe_swivel, "ptfe-swivel",
           "PTFE, medium pressure (MIL-H-25579), swivel nut ends")
      .has(ProofFamily::ptfe_flanged, "ptfe-flanged",
           "PTFE, medium pressure (MIL-H-25579), flanged ends")
      .has(ProofFamily::other, "other", "another hose: its maker's figure");
  return "proof-family";
}

std::string_view describe(describe::Choices<HoldTime>& c) {
  c.has(HoldTime::five_minutes, "five-minutes", "5 min: common practice, no source")
      .has(HoldTime::thirty_seconds, "thirty-seconds",
           "30 s: MIL-PRF-11588H 4.5.3, a ground fuel hose")
      .has(HoldTime::as_entered, "as-entered", "the maker's, entered");
  return "hold-time";
}

std::string_view describe(describe::Choices<MadeIn>& c) {
  c.has(MadeIn::factory, "factory", "made in a factory or hose shop")
      .has(MadeIn::field, "field", "made in the field");
  return "made-in";
}

std::string_view describe(describe::Fields<PressureHold>& f) {
  using H = PressureHold;
  f.has<&H::start>("start", "Pressure at the start")
      .needed("4000 psi +- 10 psi")
      .between(psi_gauge(0), psi_gauge(30000));
  f.has<&H::end>("end", "Pressure at the end")
      .needed("3960 psi +- 10 psi")
      .between(psi_gauge(0), psi_gauge(30000));
  f.has<&H::lasted>("lasted", "How long")
      .needed("5 min")
      .above(quantity::seconds(0))
      .at_most(quantity::hours(48));
  f.has<&H::temperature_start>("temperature_start", "Temperature of the liquid at the start")
      .example("20.0 degC")
      .between(celsius(-40), celsius(100));
  f.has<&H::temperature_end>("temperature_end", "Temperature of the liquid at the end")
      .example("20.0 degC")
      .between(celsius(-40), celsius(100));
  f.has<&H::pumped_in>("pumped_in", "Liquid pumped in, from when the air was out")
      .example("4.2 mL")
      .above(millilitres(0))
      .at_most(millilitres(1e5))
      .help("Strokes times the volume of one. It tells how stiff hose and pump are.");
  return "pressure-hold";
}

std::string_view describe(describe::Fields<ProofFindings>& f) {
  using F = ProofFindings;
  f.has<&F::leak>("leak", "Leak seen, during or after").example("no");
  f.has<&F::push_off_moved>("push_off_moved", "Push-off mark moved").example("no");
  f.has<&F::gap_changed>("gap_changed", "Gap at the socket changed").example("no");
  f.has<&F::deformed>("deformed", "Lasting deformation").example("no");
  f.has<&F::bulge_or_kink>("bulge_or_kink", "Bulge or kink").example("no");
  return "proof-findings";
}

std::string_view describe(describe::Fields<ProofTestInput>& f) {
  using I = ProofTestInput;
  f.has<&I::family>("family", "Hose").example("medium-elastomer");
  f.has<&I::size>("size", "Dash number").example("-8");
  f.has<&I::makers_proof>("makers_proof", "Proof pressure by its maker, if there is one")
      .above(psi_gauge(0))
      .at_most(psi_gauge(30000))
      .help("Wins over the table.");
  f.has<&I::makers_source>("makers_source", "Where that stands");
  f.has<&I::bore>("bore", "Bore of the hose")
      .needed("13/32 in")
      .above(inches(0))
      .at_most(inches(12));
  f.has<&I::length>("length", "Length of the assembly")
      .needed("24 in")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&I::carries>("carries", "The line carries").example("oil");
  f.has<&I::system_pressure>("system_pressure", "Pressure of the system, with surge")
      .example("100 psi")
      .between(psi_gauge(0), psi_gauge(10000));
  f.has<&I::reused_ends>("reused_ends", "New hose with ends that were used before");
  f.has<&I::test_pressure>("test_pressure", "Test pressure")
      .above(psi_gauge(0))
      .at_most(psi_gauge(30000))
      .help("Left empty: the proof pressure, or what pump and gauge can do, whichever is least.");
  f.has<&I::pump_limit>("pump_limit", "The pump's greatest pressure")
      .example("5000 psi")
      .above(psi_gauge(0))
      .at_most(psi_gauge(100000));
  f.has<&I::gauge_limit>("gauge_limit", "The gauge's greatest pressure")
      .example("6000 psi")
      .above(psi_gauge(0))
      .at_most(psi_gauge(100000));
  f.has<&I::pump_stroke>("pump_stroke", "Volume of one stroke")
      .example("0.3 mL")
      .above(millilitres(0))
      .at_most(millilitres(1e4));
  f.has<&I::medium>("medium", "Tested with");
  f.has<&I::bulk_modulus>("bulk_modulus", "Bulk modulus of the liquid, if known")
      .between(megapascals(100), megapascals(10000))
      .help("Needed for another liquid.");
  f.has<&I::expansion>("expansion", "Growth of the liquid's volume for each degC, if known")
      .between(per_cent(-0.1), per_cent(1));
  f.has<&I::medium_temperature>("medium_temperature", "Temperature of the liquid")
      .between(celsius(-40), celsius(100))
      .help("20 degC unless said; the holds' own readings win.");
  f.has<&I::pump_volume>("pump_volume", "Liquid in pump and its line")
      .example("12 mL")
      .between(millilitres(0), millilitres(1e5));
  f.has<&I::closed_off>("closed_off", "Shut off from the pump during the hold");
  f.has<&I::hold>("hold", "Hold time");
  f.has<&I::hold_time>("hold_time", "Hold time by the maker")
      .above(quantity::seconds(0))
      .at_most(quantity::hours(48))
      .help("Wins over the choice.");
  f.has<&I::findings>("findings", "What was seen")
      .example(
          R"({"leak": "no", "push_off_moved": "no", "gap_changed": "no", "deformed": "no", "bulge_or_kink": "no"})");
  f.has<&I::two_elbows>("two_elbows", "Elbows at both ends");
  f.has<&I::made_in>("made_in", "Where it was made").shown_when("two_elbows=yes");
  f.has<&I::clocking_before>("clocking_before", "Clocking before the test")
      .between(degrees(-360), degrees(360))
      .shown_when("two_elbows=yes");
  f.has<&I::clocking_after>("clocking_after", "Clocking after the test")
      .between(degrees(-360), degrees(360))
      .shown_when("two_elbows=yes");
  f.has<&I::holds>("holds", "Holds, in order").example(k_holds);
  f.has<&I::blank>("blank", "Blank run: the same pump with its end capped").example(k_blank);
  f.has<&I::gauge_doubt>("gauge_doubt", "Uncertainty of the gauge (U, k = 2)")
      .example("10 psi")
      .between(megapascals(0), megapascals(100))
      .help("For pressures that do not state their own.");
  f.has<&I::fall_allowed>("fall_allowed", "Fall in a hold that is still accepted")
      .example("100 psi")
      .between(megapascals(0), megapascals(100))
      .help(
          "Beyond what pump and temperature explain. No published figure was found: the maker's.");
  f.has<&I::fall_source>("fall_source", "Where that comes from").example("entered by the owner");
  f.has<&I::steady_share>("steady_share", "A later fall of this share is no settling")
      .between(per_cent(10), per_cent(100))
      .help("Our convention, no source: a leak falls as much again, a hose that settles less.");
  f.has<&I::marks_low>("marks_low", "Between two marks on the cover, at 10 psi")
      .example("500.0 mm +- 0.5 mm")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&I::marks_high>("marks_high", "The same at the test pressure, after 30 s")
      .example("494.0 mm +- 0.5 mm")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&I::lengthens_to>("lengthens_to", "The maker's: longer by at most")
      .between(per_cent(0), per_cent(50));
  f.has<&I::shortens_to>("shortens_to", "The maker's: shorter by at most")
      .between(per_cent(0), per_cent(50));
  return "proof-test-input";
}

std::string_view describe(describe::Fields<HoldAnswer>& f) {
  using A = HoldAnswer;
  f.has<&A::fall>("fall", "Fall of pressure");
  f.has<&A::pump_at_most>("pump_at_most", "The pump's own, at most");
  f.has<&A::temperature_at_most>("temperature_at_most", "The temperature's, at most");
  f.has<&A::unexplained>("unexplained", "Not explained by either");
  f.has<&A::leak_would_be>("leak_would_be", "If that were a leak");
  return "hold-answer";
}

std::string_view describe(describe::Fields<StoredEnergy>& f) {
  using E = StoredEnergy;
  f.has<&E::volume>("volume", "Volume inside");
  f.has<&E::liquid>("liquid", "Stored by the liquid");
  f.has<&E::gas_isentropic>("gas_isentropic", "Stored by air instead, isentropic");
  f.has<&E::gas_brode>("gas_brode", "The same, upper figure (Brode)");
  f.has<&E::gas_isothermal>("gas_isothermal", "The same, isothermal");
  f.has<&E::gas_to_liquid>("gas_to_liquid", "Air against liquid, times");
  f.has<&E::bubble>("bubble", "Stored by 1 mL of air left in");
  return "stored-energy";
}

std::string_view describe(describe::Fields<ProofTestAnswer>& f) {
  using A = ProofTestAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::do_next>("do_next", "What to do next");
  f.has<&A::test_pressure>("test_pressure", "Test pressure");
  f.has<&A::pressure_from>("pressure_from", "Which is");
  f.has<&A::proof_limit>("proof_limit", "Proof pressure of the hose, a maximum");
  f.has<&A::limit_from>("limit_from", "Where that comes from");
  f.has<&A::hold_time>("hold_time", "Hold time");
  f.has<&A::hold_from>("hold_from", "Where that comes from");
  f.has<&A::criteria>("criteria", "Line by line");
  f.has<&A::holds>("holds", "Holds");
  f.has<&A::length_change>("length_change", "Change of length");
  f.has<&A::clocking_change>("clocking_change", "Change of clocking");
  f.has<&A::energy>("energy", "Stored energy, liquid against gas");
  f.has<&A::liquid_added>("liquid_added", "Liquid pumped in, the hose's swelling left out");
  f.has<&A::strokes_at_least>("strokes_at_least", "Strokes, at least");
  f.has<&A::air_at_most>("air_at_most", "Air left in, at most, as it is in the room");
  f.has<&A::trapped_rise>("trapped_rise",
                          "Heated by 10 degC with both ends closed: rises by up to");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "proof-test-answer";
}

}  // namespace wm::hose
