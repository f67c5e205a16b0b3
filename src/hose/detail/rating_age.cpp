// Age on the day of fitting, and the last proof test.
#include <fmt/core.h>

#include "hose/detail/rating_rules.hpp"
#include "hose/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {
namespace {

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
    // Bulk hose ages until it is made up; without that date, which is asked for, nothing is said.
    const bool bulk = rows.word(i, "to") == "assembly";
    if (bulk && !l.assembly) continue;
    const auto end = bulk ? l.assembly->first : l.fitting;
    if (end <= due) continue;
    const std::string known(rows.provenance(i));
    const std::string text =
        fmt::format("cured {}, {} {}: past {}, {} quarters to {}", quarter_name(l.cure->last),
                    bulk ? "assembled" : "fitted", quantity::print_date(end), rows.word(i, "what"),
                    rows.word(i, "quarters"), quarter_name(due));
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

void age_rule(const Looked& l, Said& said) {
  if (is_ptfe(l.lining)) {
    ptfe_age(l, said);
  } else {
    elastomer_age(l, said);
  }
}

}  // namespace wm::hose::detail
