// The words of "hose-rating": fields, labels, bounds, examples.
#include "hose/rating.hpp"

namespace wm::hose {

using quantity::celsius;
using quantity::feet;
using quantity::inches;
using quantity::psi_gauge;

namespace {

constexpr quantity::PressureDifference k_no_difference{0.0};
constexpr quantity::PressureDifference k_most_surge{2e8};
constexpr quantity::PressureDifference k_most_suction{101325.0};

constexpr std::string_view k_demand =
    R"({"fluid": "avgas", "working_pressure": "30 psi", "surge": "10 psi", )"
    R"("fluid_highest": "150 degF", "surrounding_highest": "200 degF", "lowest": "-20 )"
    R"(degF", "ahead_of_firewall": true, "least_bore": "0.25 in", "fitting": )"
    R"("2026-11-25"})";
constexpr std::string_view k_candidates =
    R"([{"name": "elastomer with sleeve", "family": "MIL-H-8794", "size": "-6", )"
    R"("ends": "steel", "liner": "nitrile", "sleeve": "over", "fire_class": "class-a", )"
    R"("cure": "2Q2024", "assembly": "A3Q25", "proof": "2026-02-10", "bore": "0.27 )"
    R"(in"}, {"name": "smooth PTFE", "family": "AS1946 class I", "size": "-6", "ends": )"
    R"("steel", "carbon_loaded": "yes", "sleeve": "integral", "fire_class": "class-a", )"
    R"("proof": "2026-06-01", "bore": "0.27 in", "operating": "1500 psi", )"
    R"("operating_to": "400 degF", "limits_source": "maker's data sheet"}])";

}  // namespace

std::string_view describe(describe::Choices<LineFluid>& c) {
  c.has(LineFluid::not_said, "not-said", "not said")
      .has(LineFluid::avgas, "avgas", "avgas")
      .has(LineFluid::petrol, "petrol", "motor petrol without alcohol")
      .has(LineFluid::petrol_with_alcohol, "petrol-with-alcohol",
           "motor petrol with ethanol or methanol")
      .has(LineFluid::mineral_engine_oil, "mineral-engine-oil", "mineral engine oil")
      .has(LineFluid::hydraulic_mineral, "hydraulic-mineral", "hydraulic oil, mineral")
      .has(LineFluid::phosphate_ester, "phosphate-ester", "hydraulic fluid, phosphate ester")
      .has(LineFluid::water, "water", "water")
      .has(LineFluid::other, "other", "another fluid: its maker is asked");
  return "line-fluid";
}

std::string_view describe(describe::Choices<EndMetal>& c) {
  c.has(EndMetal::not_said, "not-said", "not said")
      .has(EndMetal::steel, "steel", "steel")
      .has(EndMetal::aluminium, "aluminium", "aluminium");
  return "end-metal";
}

std::string_view describe(describe::Choices<LinerCompound>& c) {
  c.has(LinerCompound::not_said, "not-said", "not said: as the family has it")
      .has(LinerCompound::nitrile, "nitrile", "nitrile rubber")
      .has(LinerCompound::neoprene, "neoprene", "neoprene")
      .has(LinerCompound::chlorinated_polyethylene, "chlorinated-polyethylene",
           "chlorinated polyethylene")
      .has(LinerCompound::butyl, "butyl", "butyl rubber")
      .has(LinerCompound::epdm, "epdm", "EPDM")
      .has(LinerCompound::other_elastomer, "other-elastomer", "another rubber")
      .has(LinerCompound::ptfe_smooth, "ptfe-smooth", "PTFE, smooth")
      .has(LinerCompound::ptfe_convoluted, "ptfe-convoluted", "PTFE, convoluted");
  return "liner-compound";
}

std::string_view describe(describe::Choices<SleeveFitted>& c) {
  c.has(SleeveFitted::not_said, "not-said", "not said")
      .has(SleeveFitted::none, "none", "none")
      .has(SleeveFitted::over, "over", "slid over and banded")
      .has(SleeveFitted::integral, "integral", "moulded or bonded on");
  return "sleeve-fitted";
}

std::string_view describe(describe::Choices<FireTested>& c) {
  c.has(FireTested::not_known, "not-known", "not known")
      .has(FireTested::none, "none", "none")
      .has(FireTested::class_a, "class-a", "class A, 5 min")
      .has(FireTested::class_b, "class-b", "class B, 15 min");
  return "fire-tested";
}

std::string_view describe(describe::Choices<Known>& c) {
  c.has(Known::not_known, "not-known", "not known").has(Known::yes, "yes", "yes");
  c.has(Known::no, "no", "no");
  return "known";
}

std::string_view describe(describe::Choices<CandidateStands>& c) {
  c.has(CandidateStands::accepted, "accepted", "accepted")
      .has(CandidateStands::asks, "asks", "to be asked about")
      .has(CandidateStands::refused, "refused", "refused");
  return "candidate-stands";
}

std::string_view describe(describe::Choices<ReasonStands>& c) {
  c.has(ReasonStands::met, "met", "within")
      .has(ReasonStands::advises, "advises", "advice")
      .has(ReasonStands::asks, "asks", "ask")
      .has(ReasonStands::refuses, "refuses", "against it");
  return "reason-stands";
}

std::string_view describe(describe::Fields<HoseCandidate>& f) {
  using C = HoseCandidate;
  f.has<&C::name>("name", "Which hose").needed("elastomer with sleeve").unique();
  f.has<&C::family>("family", "Hose family")
      .example("MIL-H-8794")
      .help("Row of the table hose-families; empty: the limits entered below alone.");
  f.has<&C::size>("size", "Dash number").needed("-6");
  f.has<&C::ends>("ends", "Metal of its end fittings");
  f.has<&C::liner>("liner", "Liner")
      .help("What the fluid touches. The family says whether it is rubber or PTFE.");
  f.has<&C::carbon_loaded>("carbon_loaded", "Liner loaded with carbon")
      .help("PTFE for fuel: black inside, not white. Unknown is an answer.");
  f.has<&C::sleeve>("sleeve", "Fire sleeve");
  f.has<&C::fire_class>("fire_class", "Fire class of the assembly")
      .help("As the whole assembly was tested with fluid in it; a sleeve alone has none.");
  f.has<&C::cure>("cure", "Cured")
      .example("2Q2024")
      .help("Quarter and year on the hose, or a day. Counted from the end of the quarter.");
  f.has<&C::assembly>("assembly", "Assembled")
      .example("A3Q25")
      .help("On the tag: A2Q80 is the 2nd quarter of 1980.");
  f.has<&C::proof>("proof", "Last proof test").example("2026-02-10");
  f.has<&C::bore>("bore", "Bore of its end fitting")
      .example("0.27 in")
      .above(inches(0))
      .at_most(inches(6))
      .help("The narrowest place of the line; a number drill measures it.");
  f.has<&C::operating>("operating", "Operating pressure, maker's or your own")
      .example("1500 psi")
      .above(psi_gauge(0))
      .at_most(psi_gauge(30000))
      .help("Wins over the table.");
  f.has<&C::operating_to>("operating_to", "That pressure holds up to")
      .example("400 degF")
      .between(celsius(-100), celsius(500));
  f.has<&C::highest>("highest", "Highest temperature, maker's or your own")
      .example("450 degF")
      .between(celsius(-100), celsius(500))
      .help("Of the assembly with these ends. Wins over the table.");
  f.has<&C::lowest>("lowest", "Lowest temperature, maker's or your own")
      .example("-65 degF")
      .between(celsius(-150), celsius(100));
  f.has<&C::suction_limit>("suction_limit", "Most suction, below the surroundings")
      .example("10 inHg")
      .between(k_no_difference, k_most_suction);
  f.has<&C::fluid_stated>("fluid_stated", "Its maker names it for this fluid");
  f.has<&C::alcohol_stated>("alcohol_stated", "Its maker names it for petrol with alcohol");
  f.has<&C::limits_source>("limits_source", "Where these limits come from")
      .example("maker's data sheet");
  return "hose-candidate";
}

std::string_view describe(describe::Fields<HoseDemand>& f) {
  using D = HoseDemand;
  f.has<&D::fluid>("fluid", "Fluid").needed("avgas");
  f.has<&D::working_pressure>("working_pressure", "Working pressure")
      .needed("30 psi")
      .between(psi_gauge(0), psi_gauge(30000));
  f.has<&D::surge>("surge", "Surge on top of it")
      .needed("10 psi")
      .between(k_no_difference, k_most_surge)
      .help("0 psi only where you know of none.");
  f.has<&D::fluid_highest>("fluid_highest", "Highest temperature of the fluid")
      .needed("150 degF")
      .between(celsius(-100), celsius(500));
  f.has<&D::surrounding_highest>("surrounding_highest", "Highest temperature around it")
      .needed("200 degF")
      .between(celsius(-100), celsius(500))
      .help("Also after the engine has stopped, when the bay is hottest.");
  f.has<&D::lowest>("lowest", "Lowest temperature")
      .needed("-20 degF")
      .between(celsius(-150), celsius(100));
  f.has<&D::suction>("suction", "Suction, below the surroundings")
      .example("4 inHg")
      .between(k_no_difference, k_most_suction)
      .help("Outside less inside: that is what collapses a hose. Empty: none.");
  f.has<&D::ahead_of_firewall>("ahead_of_firewall", "Ahead of the firewall").needed("yes");
  f.has<&D::least_bore>("least_bore", "Least bore needed")
      .example("0.25 in")
      .above(inches(0))
      .at_most(inches(6));
  f.has<&D::length>("length", "Length of the hose")
      .example("16 in")
      .above(inches(0))
      .at_most(feet(100));
  f.has<&D::fitting>("fitting", "Day of fitting").example("2026-11-25").help("Empty: today.");
  return "hose-demand";
}

std::string_view describe(describe::Fields<HoseRatingInput>& f) {
  f.has<&HoseRatingInput::demand>("demand", "What the line asks for").needed(k_demand);
  f.has<&HoseRatingInput::candidates>("candidates", "Hoses to choose from").needed(k_candidates);
  return "hose-rating-input";
}

std::string_view describe(describe::Fields<RatingReason>& f) {
  using R = RatingReason;
  f.has<&R::about>("about", "About");
  f.has<&R::stands>("stands", "It is");
  f.has<&R::text>("text", "Demand and limit");
  f.has<&R::source>("source", "Where the limit comes from");
  f.has<&R::known>("known", "How it is known");
  return "rating-reason";
}

std::string_view describe(describe::Fields<RatedHose>& f) {
  using R = RatedHose;
  f.has<&R::place>("place", "Place");
  f.has<&R::number>("number", "As entered, number");
  f.has<&R::name>("name", "Which hose");
  f.has<&R::stands>("stands", "It is");
  f.has<&R::margin>("margin", "Least share left");
  f.has<&R::margin_of>("margin_of", "of");
  f.has<&R::allowed>("allowed", "Pressure allowed at that temperature");
  f.has<&R::reasons>("reasons", "Reasons");
  return "rated-hose";
}

std::string_view describe(describe::Fields<HoseRatingAnswer>& f) {
  using A = HoseRatingAnswer;
  f.has<&A::in_words>("in_words", "In short");
  f.has<&A::ranked>("ranked", "Ranked");
  f.has<&A::ranked_by>("ranked_by", "Ranked by");
  f.has<&A::system_pressure>("system_pressure", "Working pressure with surge");
  f.has<&A::hottest>("hottest", "Hottest of fluid and surroundings");
  f.has<&A::fitting>("fitting", "Day of fitting");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-rating-answer";
}

}  // namespace wm::hose
