#include "hose/rating.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "hose/detail/problem.hpp"
#include "hose/detail/rating_rules.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::Looked;
using detail::problem;
using detail::Said;
using quantity::pencil;

Lining lining_of(LinerCompound liner) {
  switch (liner) {
    case LinerCompound::not_said:
      return Lining::not_said;
    case LinerCompound::ptfe_smooth:
      return Lining::ptfe_smooth;
    case LinerCompound::ptfe_convoluted:
      return Lining::ptfe_convoluted;
    default:
      return Lining::elastomer;
  }
}

void check_demand(const HoseDemand& d, quantity::Date fitting, Problems& problems) {
  if (d.fluid == LineFluid::not_said) {
    problems.push_back(problem("demand/fluid", Kind::missing, "what flows through is not said",
                               "the fluid", "avgas"));
  }
  if (!fitting.ok() || static_cast<int>(fitting.year()) == 0) {
    problems.push_back(problem("demand/fitting", Kind::missing,
                               "the day of fitting is not said, and today is not known here",
                               "the day on which the hose is to be fitted", "2026-11-25"));
  }
  for (const auto& [hot, path] :
       {std::pair{&d.fluid_highest, "demand/fluid_highest"},
        std::pair{&d.surrounding_highest, "demand/surrounding_highest"}}) {
    if (hot->value < d.lowest.value) {
      problems.push_back(problem(path, Kind::conflict, "it is below the lowest temperature",
                                 "a highest temperature above the lowest"));
    }
  }
}

std::optional<DatedSpan> date_of(const std::string& text, std::string path, Problems& problems) {
  if (text.empty()) return std::nullopt;
  auto span = read_date_code(text);
  if (span) return *span;
  Problem p = span.error();
  p.path = std::move(path);
  problems.push_back(std::move(p));
  return std::nullopt;
}

void check_dates(const Looked& l, const std::string& at, Problems& problems) {
  const auto in_order = [&](const std::optional<DatedSpan>& first, const char* first_word,
                            quantity::Date second, const char* second_word, const char* field) {
    if (!first || first->first <= second) return;
    problems.push_back(problem(at + field, Kind::conflict,
                               fmt::format("{} {} is after {} {}", first_word, first->text,
                                           second_word, quantity::print_date(second)),
                               fmt::format("{} before {}", first_word, second_word)));
  };
  if (l.assembly) in_order(l.cure, "cure", l.assembly->last, "assembly", "cure");
  if (l.proof) in_order(l.assembly, "assembly", l.proof->last, "proof test", "assembly");
  if (!l.fitting.ok()) return;
  in_order(l.cure, "cure", l.fitting, "the day of fitting,", "cure");
  in_order(l.assembly, "assembly", l.fitting, "the day of fitting,", "assembly");
  in_order(l.proof, "proof test", l.fitting, "the day of fitting,", "proof");
}

/// Everything that can be known of a candidate before it is judged.
Looked look_at(const HoseRatingInput& in, std::size_t i, const describe::Context& context,
               quantity::Date fitting, Problems& problems) {
  const HoseCandidate& hose = in.candidates[i];
  const std::string at = fmt::format("candidates/{}/", i);
  Looked l;
  l.demand = &in.demand;
  l.hose = &hose;
  l.context = &context;
  l.fitting = fitting;
  l.system = in.demand.working_pressure.value + in.demand.surge.value;
  l.hottest = std::max(in.demand.fluid_highest.value, in.demand.surrounding_highest.value);
  l.lining = lining_of(hose.liner);
  if (!hose.family.empty()) {
    auto found = family_figures(context, hose.family, hose.size);
    if (found) {
      l.family = std::move(*found);
    } else {
      Problem p = found.error();
      p.path = at + p.path;
      problems.push_back(std::move(p));
    }
  }
  if (l.family) {
    if (l.lining != Lining::not_said && l.lining != l.family->lining) {
      problems.push_back(problem(at + "liner", Kind::conflict,
                                 fmt::format("{} has another liner", hose.family),
                                 "the liner of the family, or no family"));
    }
    l.lining = l.family->lining;
  } else if (hose.family.empty() && l.lining == Lining::not_said) {
    problems.push_back(
        problem(at + "liner", Kind::missing, "neither the family nor the liner is said",
                "a row of hose-families, or what the liner is made of", "ptfe-smooth"));
  }
  l.cure = date_of(hose.cure, at + "cure", problems);
  l.assembly = date_of(hose.assembly, at + "assembly", problems);
  l.proof = date_of(hose.proof, at + "proof", problems);
  if (l.cure && l.cure->assembled) {
    problems.push_back(problem(at + "cure", Kind::conflict,
                               "a code that begins with A is the date of assembly",
                               "the cure date on the hose itself", "2Q2018"));
  }
  check_dates(l, at, problems);
  detail::settle_limits(l);
  return l;
}

int weight(ReasonStands stands) { return -static_cast<int>(stands); }

RatedHose judge(const Looked& l, std::int64_t number, std::vector<std::string>& working) {
  Said said;
  detail::pressure_rule(l, said);
  detail::both_maxima_rule(l, said);
  detail::temperature_rule(l, said);
  detail::fluid_rule(l, said);
  detail::suction_rule(l, said);
  detail::fire_rule(l, said);
  detail::bore_rule(l, said);
  detail::age_rule(l, said);
  // Above all where two documents differ: both stand in the note.
  if (l.family && !l.family->note.empty()) {
    said.advises("family", l.family->note, l.family->source, {});
  }
  RatedHose out;
  out.number = number;
  out.name = l.hose->name;
  out.margin = said.margin;
  out.margin_of = said.margin_of;
  if (said.allowed) {
    const double step = quantity::typed_unit(l.demand->working_pressure, l.context->units).factor;
    out.allowed = EnteredPressure{*said.allowed, step, {}};
  }
  std::stable_sort(said.reasons.begin(), said.reasons.end(),
                   [](const RatingReason& a, const RatingReason& b) {
                     return weight(a.stands) < weight(b.stands);
                   });
  out.reasons = std::move(said.reasons);
  switch (out.reasons.front().stands) {
    case ReasonStands::refuses:
      out.stands = CandidateStands::refused;
      break;
    case ReasonStands::asks:
      out.stands = CandidateStands::asks;
      break;
    default:
      out.stands = CandidateStands::accepted;
  }
  for (const auto& line : said.working) {
    working.push_back(fmt::format("{}: {}", l.hose->name, line));
  }
  return out;
}

bool before(const RatedHose& a, const RatedHose& b) {
  if (a.stands != b.stands) return a.stands < b.stands;
  if (a.margin.has_value() != b.margin.has_value()) return a.margin.has_value();
  return a.margin && *a.margin > *b.margin;
}

std::string summary(const std::vector<RatedHose>& ranked) {
  const auto count = [&](CandidateStands stands) {
    return std::count_if(ranked.begin(), ranked.end(),
                         [stands](const RatedHose& r) { return r.stands == stands; });
  };
  return fmt::format("{} accepted, {} to be asked about, {} refused",
                     count(CandidateStands::accepted), count(CandidateStands::asks),
                     count(CandidateStands::refused));
}

std::vector<std::string> notes_of(const HoseRatingInput& in) {
  std::vector<std::string> notes{
      "accepted means that nothing in what was looked at here speaks against the hose; its maker's "
      "manual and the rules of the aircraft decide",
      "shape, length and bend radius are not looked at here: hose-length and hose-shape do that",
      "every hose is proof tested after assembly, and one that was stored again before fitting, "
      "factory-made too (FAA-H-8083-30 page 7-18; AL0907 page 58): proof-test"};
  if (!in.demand.suction) {
    notes.emplace_back(
        "no suction was entered: if this line runs from a tank to a pump, or a pump can run it "
        "dry, "
        "enter it, for it collapses hoses that pressure leaves whole");
  }
  if (!in.demand.least_bore) {
    notes.emplace_back(
        "no least bore was entered: the bore of the end fitting is the narrowest place of a line");
  }
  if (in.demand.fluid == LineFluid::petrol_with_alcohol) {
    notes.emplace_back(
        "petrol with alcohol attacks rubber, water drops out of it when it cools, and it vapour "
        "locks sooner: shorten the interval of inspection (secondary reports)");
  }
  return notes;
}

}  // namespace

Checked<HoseRatingAnswer> hose_rating(const HoseRatingInput& in, const describe::Context& context) {
  Problems problems;
  const quantity::Date fitting = in.demand.fitting.value_or(context.today);
  check_demand(in.demand, fitting, problems);
  if (in.candidates.empty()) {
    problems.push_back(problem("candidates", Kind::missing, "there is no hose to judge",
                               "at least one candidate"));
  }
  std::vector<Looked> looked;
  std::set<std::string> names;
  for (std::size_t i = 0; i < in.candidates.size(); ++i) {
    looked.push_back(look_at(in, i, context, fitting, problems));
    if (!names.insert(in.candidates[i].name).second) {
      problems.push_back(problem(fmt::format("candidates/{}/name", i), Kind::duplicate,
                                 fmt::format("\"{}\" is there twice", in.candidates[i].name),
                                 "a name of its own for each candidate"));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));

  HoseRatingAnswer out;
  out.fitting = fitting;
  const auto& pressure_unit = quantity::typed_unit(in.demand.working_pressure, context.units);
  const auto& temperature_unit = quantity::typed_unit(in.demand.fluid_highest, context.units);
  out.system_pressure = {looked.front().system, pressure_unit.factor, {}};
  out.hottest = {looked.front().hottest, temperature_unit.factor, {}};
  out.working.push_back(fmt::format("system pressure = {} + {} = {}",
                                    pencil(in.demand.working_pressure.value.si, pressure_unit),
                                    detail::typed(in.demand.surge, context),
                                    pencil(out.system_pressure.value.si, pressure_unit)));
  out.working.push_back(
      fmt::format("T = the hotter of fluid ({}) and surroundings ({}) = {}",
                  pencil(in.demand.fluid_highest.value.si, temperature_unit),
                  pencil(in.demand.surrounding_highest.value.si, temperature_unit),
                  pencil(out.hottest.value.si, temperature_unit)));
  for (std::size_t i = 0; i < looked.size(); ++i) {
    out.ranked.push_back(judge(looked[i], static_cast<std::int64_t>(i) + 1, out.working));
  }
  std::stable_sort(out.ranked.begin(), out.ranked.end(), before);
  std::int64_t place = 0;
  for (RatedHose& rated : out.ranked) rated.place = ++place;
  out.ranked_by =
      "accepted first, then those to be asked about, then the refused; within each by the least "
      "share left of allowed pressure, of temperature above 20 degC and of suction, the most "
      "first; without a known share last; equal ones as they were entered";
  out.in_words = summary(out.ranked);
  out.notes = notes_of(in);
  return out;
}

}  // namespace wm::hose
