// The fluid against family, liner and the maker's word.
#include <fmt/core.h>

#include "hose/detail/rating_rules.hpp"
#include "hose/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {
namespace {

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

/// What the maker says of the fluid itself. @return true when that settles it
bool makers_word(const Looked& l, Said& said) {
  const bool alcohol = l.demand->fluid == LineFluid::petrol_with_alcohol;
  const Known word = alcohol && l.hose->alcohol_stated != Known::not_known ? l.hose->alcohol_stated
                                                                           : l.hose->fluid_stated;
  if (word == Known::not_known) return false;
  const auto fluid = words(l.demand->fluid);
  if (word == Known::yes) {
    said.met("fluid", fmt::format("its maker names it for {}", fluid), words_entered(*l.hose),
             "entered");
  } else {
    said.refuses("fluid", fmt::format("its maker does not name it for {}", fluid),
                 words_entered(*l.hose), "entered");
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
        said.refuses("fluid", fmt::format("{}: not for it{}", pair, note), source, known);
      } else {
        said.asks("fluid", fmt::format("{}: not for it{}; ask the maker", pair, note), source,
                  known);
      }
    } else if (stands == "less") {
      said.advises("fluid", pair + note, source, known);
    } else if (known == "read") {
      said.met("fluid", fmt::format("{}: suits{}", pair, note), source, known);
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
            "gap", {});
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

}  // namespace wm::hose::detail
