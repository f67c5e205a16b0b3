// The words of "hose-condition": fields, labels, bounds, examples.
#include "hose/condition.hpp"

namespace wm::hose {

std::string_view describe(describe::Choices<SleeveState>& c) {
  c.has(SleeveState::not_looked, "not-looked", "not looked")
      .has(SleeveState::no_sleeve, "none", "there is none")
      .has(SleeveState::whole, "whole", "whole and dry")
      .has(SleeveState::worn_through, "worn-through", "worn through")
      .has(SleeveState::torn, "torn", "torn")
      .has(SleeveState::cut, "cut", "cut")
      .has(SleeveState::oil_soaked, "oil-soaked", "oil soaked");
  return "sleeve-state";
}

std::string_view describe(describe::Choices<NutLeak>& c) {
  c.has(NutLeak::not_looked, "not-looked", "not looked")
      .has(NutLeak::dry, "dry", "dry")
      .has(NutLeak::leaks, "leaks", "leaks, not yet put right")
      .has(NutLeak::still_leaks, "still-leaks", "still leaks, seat cleaned and torqued again");
  return "nut-leak";
}

std::string_view describe(describe::Fields<HoseConditionInput>& f) {
  using I = HoseConditionInput;
  f.has<&I::kind>("kind", "Kind").needed("elastomer");
  f.has<&I::operating>("operating", "Its operating pressure")
      .example("2000 psi")
      .between(quantity::psi_gauge(0), quantity::psi_gauge(30000));
  f.has<&I::drops_per_hour>("drops_per_hour", "Drops an hour, standing still")
      .example("0")
      .between(0.0, 100000.0)
      .help("Count for an hour with the line full. Empty: not looked.");
  f.has<&I::wires_in_one_plait>("wires_in_one_plait", "Broken wires in the worst plait")
      .example("1")
      .between(0, 1000)
      .help("Empty: not looked.");
  f.has<&I::wires_per_foot>("wires_per_foot", "Broken wires in the worst foot")
      .example("2")
      .between(0, 100000)
      .help("Empty: not looked.");
  f.has<&I::wire_where_kink>("wire_where_kink", "A broken wire where it kinks");
  f.has<&I::cover_parted>("cover_parted", "Cover or braid parted from the tube");
  f.has<&I::cracked>("cracked", "Cracks, hardening, stiffness");
  f.has<&I::cold_flow>("cold_flow", "Cold flow: a lasting dent or crack at a clamp");
  f.has<&I::fabric_shows>("fabric_shows", "Weather check that shows fabric");
  f.has<&I::abraded_or_kinked>("abraded_or_kinked", "Abrasion, kink, bulge or sharp bend");
  f.has<&I::blistered>("blistered", "Blisters, bubbles, flared or frayed braid");
  f.has<&I::rust>("rust", "Rust through the braid");
  f.has<&I::sleeve>("sleeve", "Fire sleeve");
  f.has<&I::twisted>("twisted", "Twisted").help("The printed line winds round the hose.");
  f.has<&I::end_moved>("end_moved", "An end fitting moved off its mark");
  f.has<&I::swage_failed>("swage_failed", "A swaged end has failed");
  f.has<&I::nut>("nut", "Leak at a swivel nut");
  return "hose-condition-input";
}

std::string_view describe(describe::Fields<HoseConditionAnswer>& f) {
  using A = HoseConditionAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::criteria>("criteria", "Criteria");
  f.has<&A::not_looked_at>("not_looked_at", "Not looked at");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  return "hose-condition-answer";
}

}  // namespace wm::hose
