// What the line does to a hose besides pressure and heat: fluid, suction, fire, bore, age.
#include <fmt/core.h>

#include "hose/detail/rating_rules.hpp"
#include "hose/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {
namespace {

constexpr double k_equal = 1e-9;

bool above(double a, double b) { return a > b + k_equal * (1.0 + (b < 0 ? -b : b)); }

std::string_view liner_row(LinerCompound liner, Lining lining) {
  if (is_ptfe(lining)) return "ptfe";
  switch (liner) {
    case LinerCompound::nitrile:
      return "nitrile";
    case LinerCompound::neoprene:
      return "neoprene";
    case LinerCompound::butyl:
      return "butyl";
    case LinerCompound::epdm:
      return "epdm";
    default:
      return {};
  }
}

std::string_view fluid_row(LineFluid fluid) {
  switch (fluid) {
    case LineFluid::avgas:
      return "avgas";
    case LineFluid::petrol:
      return "petrol";
    case LineFluid::petrol_with_alcohol:
      return "petrol-with-alcohol";
    case LineFluid::mineral_engine_oil:
      return "mineral-engine-oil";
    case LineFluid::hydraulic_mineral:
      return "hydraulic-mineral";
    case LineFluid::phosphate_ester:
      return "phosphate-ester";
    default:
      return {};
  }
}

/// How the families' column "carries" calls it; nothing where a family's word would not do.
std::string_view carried_as(LineFluid fluid) {
  switch (fluid) {
    case LineFluid::avgas:
    case LineFluid::petrol:
      return "fuel";
    case LineFluid::mineral_engine_oil:
      return "oil";
    case LineFluid::hydraulic_mineral:
      return "hydraulic";
    case LineFluid::water:
      return "water";
    default:
      return {};
  }
}

std::string entered_source(const HoseCandidate& hose) {
  return hose.limits_source.empty() ? "the owner's or maker's word, entered"
                                    : "entered: " + hose.limits_source;
}

/// What the maker says of the fluid itself. @return true when that settles it
bool makers_word(const Looked& l, Said& said) {
  const bool alcohol = l.demand->fluid == LineFluid::petrol_with_alcohol;
  const Known word = alcohol && l.hose->alcohol_stated != Known::not_known ? l.hose->alcohol_stated
                                                                           : l.hose->fluid_stated;
  if (word == Known::not_known) return false;
  const auto fluid = words(l.demand->fluid);
  if (word == Known::yes) {
    said.met("fluid", fmt::format("its maker names it for {}", fluid), entered_source(*l.hose),
             "entered");
  } else {
    said.refuses("fluid", fmt::format("its maker does not name it for {}", fluid),
                 entered_source(*l.hose), "entered");
  }
  return true;
}

/// Families made for something else. @return true when that settles it
bool family_against_fluid(const Looked& l, Said& said) {
  if (!l.family || l.family->carries.empty()) return false;
  const auto& family = *l.family;
  const auto fluid = words(l.demand->fluid);
  if (family.carries == "water" && l.demand->fluid != LineFluid::water) {
    said.refuses(
        "fluid",
        fmt::format("{} is potable-water hose: not for {} ({})", family.family, fluid, family.note),
        family.source, family.carries_known);
    return true;
  }
  const auto as = carried_as(l.demand->fluid);
  if (!as.empty() && family.carries.find(as) == std::string::npos) {
    said.asks("fluid",
              fmt::format("{} is made for {}: ask whether its maker names it for {}", family.family,
                          family.carries, fluid),
              family.source, family.carries_known);
    return true;
  }
  return false;
}

/// The liner against the fluid, by the table. @return true when the table has the pair
bool liner_by_table(const Looked& l, Said& said) {
  const Rows rows(l.context->table("hose-liners"));
  const auto liner = liner_row(l.hose->liner, l.lining);
  const auto fluid = fluid_row(l.demand->fluid);
  for (std::size_t i = 0; i < rows.size() && !liner.empty(); ++i) {
    if (rows.word(i, "liner") != liner || rows.word(i, "fluid") != fluid) continue;
    const std::string known(rows.provenance(i));
    const std::string source(rows.word(i, "source"));
    const std::string note =
        rows.word(i, "note").empty() ? "" : fmt::format(" ({})", rows.word(i, "note"));
    const auto pair =
        fmt::format("{} liner, {}", liner == "ptfe" ? "PTFE" : liner, words(l.demand->fluid));
    const auto stands = rows.word(i, "stands");
    if (stands == "no") {
      if (known == "read") {
        said.refuses("fluid", pair + ": not for it" + note, source, known);
      } else {
        said.asks("fluid", pair + ": not for it" + note + "; ask the maker", source, known);
      }
    } else if (stands == "less") {
      said.advises("fluid", pair + note, source, known);
    } else if (known == "read") {
      said.met("fluid", pair + ": suits" + note, source, known);
    } else {
      said.advises("fluid", pair + note, source, known);
    }
    return true;
  }
  return false;
}

void family_for_fluid(const Looked& l, Said& said) {
  const auto fluid = words(l.demand->fluid);
  const auto as = carried_as(l.demand->fluid);
  if (l.demand->fluid == LineFluid::petrol_with_alcohol) {
    said.asks("fluid",
              "petrol with alcohol through an elastomer whose maker is not known to name it for "
              "that: ask the maker, or take PTFE",
              "hoses notes, section 9: reports of an authority's bulletin of 2006", "secondary");
    return;
  }
  if (l.family && !as.empty() && l.family->carries.find(as) != std::string::npos) {
    const auto text = fmt::format("{} is made for {}", l.family->family, l.family->carries);
    if (l.family->carries_known == "read") {
      said.met("fluid", text, l.family->source, l.family->carries_known);
    } else {
      said.advises("fluid", text + ": not read in its document, check the maker's list of fluids",
                   l.family->source, l.family->carries_known);
    }
    return;
  }
  said.asks("fluid",
            fmt::format("nothing says whether this liner stands {}: ask the maker what it is made "
                        "of and whether it is named for that",
                        fluid),
            "gap", "derived");
}

void static_rule(const Looked& l, Said& said) {
  if (!is_ptfe(l.lining) || !is_fuel(l.demand->fluid)) return;
  const char* const source = "hoses notes, section 9 (secondary reports; SAE J1645 asks the same)";
  if (l.hose->carbon_loaded == Known::yes) {
    said.met("static charge", "carbon-loaded liner", source, "entered");
    return;
  }
  said.asks("static charge",
            l.hose->carbon_loaded == Known::no
                ? "a plain PTFE liner charges up in a fuel line and sparks pin holes through to "
                  "the braid; hydraulic or brake lines only, unless its maker names it for fuel"
                : "is its PTFE liner loaded with carbon? A plain one charges up in a fuel line and "
                  "sparks pin holes through to the braid",
            source, "secondary");
}

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

std::string compound_word(LinerCompound liner) {
  return liner == LinerCompound::chlorinated_polyethylene ? "chlorinated-polyethylene" : "";
}

/// Storage ages that documents give from the end of the cure quarter.
void storage_ages(const Looked& l, Said& said) {
  const Rows rows(l.context->table("hose-age-figures"));
  const auto from = end_of_quarter(l.cure->last);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows.word(i, "kind") != "elastomer" || rows.word(i, "clock") != "shelf" ||
        rows.word(i, "from") != "cure") {
      continue;
    }
    const auto compound = rows.word(i, "compound");
    if (!compound.empty() && compound != compound_word(l.hose->liner)) continue;
    const auto quarters = quantity::parse_number(rows.word(i, "quarters"));
    if (!quarters) continue;
    const auto due = add_quarters(from, static_cast<int>(*quarters));
    if (l.fitting <= due) continue;
    const std::string known(rows.provenance(i));
    const std::string text =
        fmt::format("cured {}, fitted {}: past {}, {} quarters to {}", quarter_name(l.cure->last),
                    quantity::print_date(l.fitting), rows.word(i, "what"), rows.word(i, "quarters"),
                    quarter_name(due));
    if (known == "read") {
      said.refuses("age", text, std::string(rows.word(i, "source")), known);
    } else {
      said.advises("age", text, std::string(rows.word(i, "source")), known);
    }
  }
}

void elastomer_age(const Looked& l, Said& said) {
  const char* const source = "hoses notes, section 12, item 6; NAVEDTRA 14018 pp. 5-3, 5-10";
  if (!l.cure) {
    said.asks("age", "its cure date is not known: it stands on the hose (2Q2018)", source,
              "derived");
  } else {
    const auto from = end_of_quarter(l.cure->last);
    said.working.push_back(fmt::format(
        "age on the day of fitting: from the end of {} ({}) to {} = {} whole quarters",
        quarter_name(l.cure->last), quantity::print_date(from), quantity::print_date(l.fitting),
        l.fitting < from ? 0 : quarters_between(from, l.fitting)));
    storage_ages(l, said);
  }
  if (!l.assembly) {
    said.asks("age", "its assembly date is not known: it stands on the tag (A2Q80)", source,
              "derived");
  }
}

void ptfe_age(const Looked& l, Said& said) {
  const char* const source = "TM 1-1500-204-23-2 page 4-56 region";
  if (!l.proof) {
    said.asks("proof test", "the date of its last proof test is not known: it stands on the band",
              source, "read");
    return;
  }
  const auto until = add_quarters(l.proof->first, 4);
  const std::string dates =
      fmt::format("tested {}, fitted {}", l.proof->text, quantity::print_date(l.fitting));
  if (l.fitting > until) {
    said.asks("proof test",
              dates + ": more than one year; test it again and put on a new band before fitting",
              source, "read");
  } else {
    said.met("proof test", dates + ": within one year", source, "read");
  }
}

}  // namespace

bool is_fuel(LineFluid fluid) {
  return fluid == LineFluid::avgas || fluid == LineFluid::petrol ||
         fluid == LineFluid::petrol_with_alcohol;
}

std::string_view words(LineFluid fluid) {
  switch (fluid) {
    case LineFluid::not_said:
      return "a fluid not said";
    case LineFluid::avgas:
      return "avgas";
    case LineFluid::petrol:
      return "motor petrol without alcohol";
    case LineFluid::petrol_with_alcohol:
      return "petrol with alcohol";
    case LineFluid::mineral_engine_oil:
      return "mineral engine oil";
    case LineFluid::hydraulic_mineral:
      return "mineral hydraulic oil";
    case LineFluid::phosphate_ester:
      return "phosphate ester";
    case LineFluid::water:
      return "water";
    case LineFluid::other:
      return "this fluid";
  }
  return "";
}

void fluid_rule(const Looked& l, Said& said) {
  const bool settled =
      makers_word(l, said) || family_against_fluid(l, said) || liner_by_table(l, said);
  if (!settled) family_for_fluid(l, said);
  static_rule(l, said);
  if (!is_ptfe(l.lining) && l.demand->fluid == LineFluid::avgas) {
    said.advises("fluid",
                 "one engine maker limited an older elastomer hose on low-lead avgas to 2 years: "
                 "see what the maker says of this one",
                 "hoses notes, section 9", "secondary");
  }
}

void suction_rule(const Looked& l, Said& said) {
  if (l.demand->suction && l.demand->suction->value.si > 0.0) {
    const std::string suction = typed(*l.demand->suction, *l.context);
    if (!l.hose->suction_limit) {
      said.asks("suction",
                fmt::format("{} below the surroundings, and no vacuum limit of this hose is known: "
                            "ask for the maker's figure at this size, bend and temperature",
                            suction),
                "gap: none found in MIL-DTL-8794, MIL-H-27267 or AS1946", "derived");
    } else {
      const auto& limit = *l.hose->suction_limit;
      const std::string text = typed(limit, *l.context);
      if (limit.value.si > 0.0) {
        said.share_left(1.0 - l.demand->suction->value.si / limit.value.si, "suction");
      }
      if (above(l.demand->suction->value.si, limit.value.si)) {
        said.refuses("suction", fmt::format("{} is above {}", suction, text),
                     entered_source(*l.hose), "entered");
      } else {
        said.met("suction", fmt::format("{} is within {}", suction, text), entered_source(*l.hose),
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

void age_rule(const Looked& l, Said& said) {
  if (is_ptfe(l.lining)) {
    ptfe_age(l, said);
  } else {
    elastomer_age(l, said);
  }
  said.advises("before fitting",
               "every hose is proof tested after assembly, and one that was stored again before "
               "fitting, factory-made too",
               "FAA-H-8083-30 page 7-18; AL0907 page 58", "read");
}

}  // namespace wm::hose::detail
