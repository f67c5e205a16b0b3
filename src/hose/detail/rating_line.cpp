// What the line does to a hose besides pressure, heat and fluid: suction, fire, bore.
#include <fmt/core.h>

#include "hose/detail/rating_rules.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {
namespace {

void push_on_rule(const Looked& l, Said& said) {
  if (!l.family || !l.family->family.starts_with("MIL-DTL-6000")) return;
  said.advises("ends", "push-on hose with clamps: never with screwed end fittings",
               "catalogue page", "secondary");
  const char* const source = "MIL-DTL-6000D 6.1";
  if (!l.demand->length) {
    said.asks("length", "push-on hose tends to collapse if longer than 18 in: how long is it?",
              source, "read");
    return;
  }
  const std::string length = typed(*l.demand->length, *l.context);
  if (!above(l.demand->length->value.si, k_push_on_longest.si)) {
    said.met("length", length + " is within 18 in", source, "read");
    return;
  }
  if (l.hose->suction_limit) {
    said.advises("length",
                 length +
                     " is above 18 in, where push-on hose tends to collapse; the suction "
                     "limit entered wins over that",
                 source, "read");
    return;
  }
  said.refuses("length", length + " is above 18 in, where push-on hose tends to collapse", source,
               "read");
}

}  // namespace

void suction_rule(const Looked& l, Said& said) {
  if (l.demand->suction && l.demand->suction->value.si > 0.0) {
    const std::string suction = typed(*l.demand->suction, *l.context);
    if (!l.hose->suction_limit) {
      said.asks("suction",
                fmt::format("{} below the surroundings, and no vacuum limit of this hose is known: "
                            "ask for the maker's figure at this size, bend and temperature",
                            suction),
                "gap: none found in MIL-DTL-8794, MIL-H-27267 or AS1946", {});
    } else {
      const auto& limit = *l.hose->suction_limit;
      const std::string text = typed(limit, *l.context);
      if (limit.value.si > 0.0) {
        said.share_left(1.0 - l.demand->suction->value.si / limit.value.si, "suction");
      }
      if (above(l.demand->suction->value.si, limit.value.si)) {
        said.refuses("suction", fmt::format("{} is above {}", suction, text),
                     words_entered(*l.hose), "entered");
      } else {
        said.met("suction", fmt::format("{} is within {}", suction, text), words_entered(*l.hose),
                 "entered");
      }
    }
    if (is_ptfe(l.lining)) {
      said.advises("suction",
                   "a PTFE liner dents inwards for good and the braid hides it: look through the "
                   "bore",
                   "common practice, no source", "common-practice");
    }
  }
  push_on_rule(l, said);
}

void fire_rule(const Looked& l, Said& said) {
  if (!l.demand->ahead_of_firewall || l.demand->fluid == LineFluid::water) return;
  const bool elastomer = !is_ptfe(l.lining);
  const char* const source = "MIL-DTL-8794F 6.1; NAVEDTRA 14009 (flame-resistant hose)";
  if (elastomer && l.hose->sleeve == SleeveFitted::none) {
    said.refuses("fire", "elastomer hose ahead of the firewall without a fire sleeve", source,
                 "read");
  } else if (elastomer && l.hose->sleeve == SleeveFitted::not_said) {
    said.asks("fire", "elastomer hose ahead of the firewall: has it a fire sleeve?", source,
              "read");
  }
  if (l.family && l.family->family == "SAE J1527") {
    said.advises("fire", "marine petrol hose: its flame test lasts 2.5 min, half of class A",
                 l.family->source, "secondary");
  }
  const char* const classes = "AS150E; 14 CFR 33.17; the class belongs to the assembly as tested";
  switch (l.hose->fire_class) {
    case FireTested::class_a:
      said.met("fire", "assembly tested to class A: 5 min, fire resistant", classes, "entered");
      break;
    case FireTested::class_b:
      said.met("fire", "assembly tested to class B: 15 min, fireproof", classes, "entered");
      break;
    case FireTested::none:
      said.asks("fire",
                "the assembly has no fire class: whether it may go ahead of the firewall is for "
                "the rules of the aircraft and its maker to say; a sleeve by itself has no class",
                classes, "derived");
      break;
    case FireTested::not_known:
      said.asks("fire",
                "to which class was the assembly tested, with fluid in it: A (5 min) or B "
                "(15 min)? A sleeve by itself has no class",
                classes, "derived");
      break;
  }
}

void bore_rule(const Looked& l, Said& said) {
  if (!l.demand->least_bore) return;
  const double least = l.demand->least_bore->value.si;
  const std::string needed = typed(*l.demand->least_bore, *l.context);
  if (l.hose->bore) {
    const std::string bore = typed(*l.hose->bore, *l.context);
    if (above(least, l.hose->bore->value.si)) {
      said.refuses("bore", fmt::format("{} in its fitting is under {}", bore, needed),
                   "entered: bore of the fitting", "entered");
    } else {
      said.met("bore", fmt::format("{} in its fitting, {} needed", bore, needed),
               "entered: bore of the fitting", "entered");
    }
    return;
  }
  if (l.family) {
    for (const auto* figure : {&l.family->bore, &l.family->inside}) {
      if (!*figure) continue;
      const LengthFigure& f = **figure;
      if (above(least, f.value.si) && f.may_refuse()) {
        said.refuses("bore",
                     fmt::format("{} of the {} is under {}", f.text,
                                 figure == &l.family->bore ? "fitting" : "hose itself", needed),
                     f.source, f.known);
        return;
      }
    }
    if (l.family->bore && l.family->bore->may_refuse()) {
      said.met("bore", fmt::format("{} in its fitting, {} needed", l.family->bore->text, needed),
               l.family->bore->source, l.family->bore->known);
      return;
    }
  }
  const std::string hint = l.family && l.family->bore
                               ? fmt::format(" ({}: {} at least, its columns are uncertain)",
                                             l.family->bore->source, l.family->bore->text)
                               : "";
  said.asks("bore",
            fmt::format("the bore of its end fitting is not known, {} is needed: measure it, it is "
                        "the narrowest place{}",
                        needed, hint),
            "hoses notes, section 1.3", "derived");
}

}  // namespace wm::hose::detail
