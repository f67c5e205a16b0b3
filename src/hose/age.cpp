#include "hose/age.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "hose/date_code.hpp"
#include "hose/detail/problem.hpp"
#include "hose/detail/rows.hpp"
#include "hose/family.hpp"

namespace wm::hose {
namespace {

using detail::problem;
using detail::Rows;
using quantity::Date;
using quantity::print_date;

bool is_set(Date date) { return date.ok() && static_cast<int>(date.year()) != 0; }

/// The days from which and to which an age can count.
struct Days {
  std::optional<DatedSpan> cure, assembly, proof;
  std::optional<Date> delivery, fitting;
  Date now{};
};

std::optional<DatedSpan> date_of(const std::string& text, const char* path, Problems& problems) {
  if (text.empty()) return std::nullopt;
  auto span = read_date_code(text);
  if (span) return *span;
  Problem p = span.error();
  p.path = path;
  problems.push_back(std::move(p));
  return std::nullopt;
}

void not_after(const std::optional<DatedSpan>& first, const char* path, const char* word,
               std::optional<Date> second, const char* second_word, Problems& problems) {
  if (!first || !second || first->first <= *second) return;
  problems.push_back(problem(
      path, Kind::conflict,
      fmt::format("{} {} is after {} {}", word, first->text, second_word, print_date(*second)),
      fmt::format("{} before {}", word, second_word)));
}

Days days_of(const HoseAgeInput& in, const describe::Context& context, Problems& problems) {
  Days d;
  d.cure = date_of(in.cure, "cure", problems);
  d.assembly = date_of(in.assembly, "assembly", problems);
  d.proof = date_of(in.proof, "proof", problems);
  d.delivery = in.delivery;
  d.fitting = in.fitting;
  d.now = in.on.value_or(context.today);
  if (!is_set(d.now)) {
    problems.push_back(problem("on", Kind::missing,
                               "the day is not said, and today is not known here",
                               "the day on which the age is asked", "2026-11-25"));
  }
  if (d.cure && d.cure->assembled) {
    problems.push_back(problem("cure", Kind::conflict,
                               "a code that begins with A is the date of assembly",
                               "the cure date on the hose itself", "2Q2018"));
  }
  if (d.assembly) not_after(d.cure, "cure", "cure", d.assembly->last, "assembly", problems);
  not_after(d.cure, "cure", "cure", d.fitting, "fitting", problems);
  not_after(d.cure, "cure", "cure", d.delivery, "delivery", problems);
  not_after(d.assembly, "assembly", "assembly", d.fitting, "fitting", problems);
  if (is_set(d.now)) {
    not_after(d.cure, "cure", "cure", d.now, "the day asked,", problems);
    not_after(d.assembly, "assembly", "assembly", d.now, "the day asked,", problems);
    not_after(d.proof, "proof", "proof test", d.now, "the day asked,", problems);
  }
  return d;
}

HoseKind kind_of(const HoseAgeInput& in, const describe::Context& context, Problems& problems) {
  HoseKind kind = in.kind;
  if (!in.family.empty()) {
    const auto lining = family_lining(context, in.family);
    if (!lining) {
      problems.push_back(lining.error());
      return kind;
    }
    const HoseKind of_family = is_ptfe(*lining) ? HoseKind::ptfe : HoseKind::elastomer;
    if (kind != HoseKind::not_said && kind != of_family) {
      problems.push_back(problem("kind", Kind::conflict,
                                 fmt::format("{} is of the other kind", in.family),
                                 "the kind of the family, or no family"));
    }
    kind = of_family;
  }
  if (kind == HoseKind::not_said) {
    problems.push_back(problem("kind", Kind::missing, "neither the family nor the kind is said",
                               "elastomer or ptfe", "elastomer"));
  }
  return kind;
}

struct Counted {
  std::optional<Date> from;
  std::string words;
};

Counted counted_from(const Days& d, std::string_view from) {
  if (from == "cure" && d.cure) {
    return {end_of_quarter(d.cure->last), "from the end of " + quarter_name(d.cure->last)};
  }
  if ((from == "assembly" || from == "made") && d.assembly) {
    return {d.assembly->last, "from assembly, " + d.assembly->text};
  }
  if (from == "proof" && d.proof) return {d.proof->first, "from the test, " + d.proof->text};
  if (from == "fitting" && d.fitting) return {d.fitting, "from fitting, " + print_date(*d.fitting)};
  if (from.empty()) return {};
  return {std::nullopt, fmt::format("from {}, which is not known", from)};
}

/// The day the count stops, and how to call it. A hose on the shelf goes on ageing.
std::pair<Date, std::string> counted_to(const Days& d, std::string_view to) {
  if (to == "delivery" && d.delivery) return {*d.delivery, "to delivery"};
  if (to == "assembly" && d.assembly) return {d.assembly->first, "to assembly"};
  if (to != "now" && d.fitting) return {*d.fitting, "to fitting"};
  return {d.now, "to " + print_date(d.now)};
}

void judge(AgeFigure& figure, const Counted& from, const std::pair<Date, std::string>& to,
           std::optional<int> months) {
  figure.counted = from.words;
  if (!from.words.empty() && from.from) figure.counted += ", " + to.second;
  if (!from.from || !months) return;
  figure.due = add_months(*from.from, *months);
  figure.due_quarter = quarter_name(*figure.due);
  figure.stands = to.first <= *figure.due ? AgeStands::within : AgeStands::past;
}

const char* clock_word(std::string_view clock) {
  if (clock == "store") return "storage";
  if (clock == "old") return "superseded";
  return clock == "service" ? "service" : "shelf";
}

std::vector<AgeFigure> published(const Days& days, HoseKind kind, LinerCompound liner,
                                 const describe::Context& context) {
  const Rows rows(context.table("hose-age-figures"));
  std::vector<AgeFigure> out;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows.word(i, "kind") != (kind == HoseKind::ptfe ? "ptfe" : "elastomer")) continue;
    const auto compound = rows.word(i, "compound");
    AgeFigure figure;
    figure.what = std::string(rows.word(i, "what"));
    figure.clock = clock_word(rows.word(i, "clock"));
    figure.source = std::string(rows.word(i, "source"));
    figure.known = std::string(rows.provenance(i));
    figure.note = std::string(rows.word(i, "note"));
    const auto quarters = quantity::parse_number(rows.word(i, "quarters"));
    if (quarters) figure.limit = fmt::format("{} quarters", rows.word(i, "quarters"));
    const bool speaks_of_it = compound.empty() || liner == LinerCompound::chlorinated_polyethylene;
    if (!speaks_of_it) {
      if (liner != LinerCompound::not_said) continue;
      figure.note += "; only for that compound, which is not said here";
    }
    std::optional<int> months;
    if (quarters && speaks_of_it) months = 3 * static_cast<int>(*quarters);
    judge(figure, counted_from(days, rows.word(i, "from")), counted_to(days, rows.word(i, "to")),
          months);
    out.push_back(std::move(figure));
  }
  return out;
}

std::string_view from_word(AgeFrom from) {
  switch (from) {
    case AgeFrom::cure:
      return "cure";
    case AgeFrom::assembly:
      return "assembly";
    case AgeFrom::proof:
      return "proof";
    case AgeFrom::fitting:
      return "fitting";
  }
  return "";
}

AgeFigure entered(const OwnAgeLimit& own, const Days& days) {
  AgeFigure figure;
  const bool shelf = own.clock == AgeClock::shelf;
  figure.what = shelf ? "your limit on the shelf" : "your limit in service";
  figure.clock = shelf ? "shelf" : "service";
  figure.limit = fmt::format("{} months", own.months);
  figure.source = own.source.empty() ? "entered" : "entered: " + own.source;
  figure.known = "entered";
  figure.decides = true;
  judge(figure, counted_from(days, from_word(own.from)),
        counted_to(days, shelf ? "fitting" : "now"), static_cast<int>(own.months));
  return figure;
}

AgeReading reading(const char* clock, std::optional<Date> from, Date to, const std::string& start,
                   const std::string& unknown) {
  AgeReading out;
  out.clock = clock;
  out.from = from;
  if (!from) {
    out.in_words = unknown;
    return out;
  }
  out.to = to;
  out.quarters = to < *from ? 0 : quarters_between(*from, to);
  out.in_words = fmt::format("{} whole quarters, {} to {}", *out.quarters, start, print_date(to));
  return out;
}

std::vector<std::string> asked(const Days& d, HoseKind kind) {
  std::vector<std::string> out;
  if (kind == HoseKind::elastomer && !d.cure) {
    out.emplace_back(
        "cure date: it stands on the hose itself (2Q2018); without it nobody can tell how old the "
        "rubber is");
  }
  if (!d.assembly) {
    out.emplace_back(
        kind == HoseKind::ptfe
            ? "assembly date: it stands on the band (A2Q80)"
            : "assembly date: it stands on the tag (A2Q80); no tag: replace (US Air Force, as a "
              "trade article reports it)");
  }
  if (kind == HoseKind::ptfe && !d.proof) {
    out.emplace_back("date of the last proof test: it stands on the band");
  }
  if (!d.fitting) {
    out.emplace_back("day of fitting: none entered, so the hose is taken to lie on the shelf");
  }
  return out;
}

AgeStanding standing_of(const std::vector<AgeFigure>& figures) {
  AgeStanding standing = AgeStanding::no_limit_entered;
  for (const auto& f : figures) {
    if (!f.decides) continue;
    if (f.stands == AgeStands::past) return AgeStanding::past_limit;
    if (f.stands == AgeStands::not_dated) standing = AgeStanding::not_known;
    if (standing == AgeStanding::no_limit_entered) standing = AgeStanding::within_limit;
  }
  return standing;
}

std::string summary(AgeStanding standing, const std::vector<AgeFigure>& figures) {
  const auto past = std::count_if(figures.begin(), figures.end(), [](const AgeFigure& f) {
    return !f.decides && f.stands == AgeStands::past;
  });
  std::string own;
  switch (standing) {
    case AgeStanding::past_limit:
      own = "past a limit that you entered";
      break;
    case AgeStanding::within_limit:
      own = "within the limits that you entered";
      break;
    case AgeStanding::not_known:
      own = "a limit that you entered counts from a day that is not known";
      break;
    case AgeStanding::no_limit_entered:
      own = "you have entered no limit: choose one of the figures below, or the maker's";
      break;
  }
  return fmt::format(
      "{}; of the {} published figures it is past {}", own,
      std::count_if(figures.begin(), figures.end(), [](const AgeFigure& f) { return !f.decides; }),
      past);
}

}  // namespace

Checked<HoseAgeAnswer> hose_age(const HoseAgeInput& in, const describe::Context& context) {
  Problems problems;
  const HoseKind kind = kind_of(in, context, problems);
  const Days days = days_of(in, context, problems);
  if (!problems.empty()) return Fail(std::move(problems));

  HoseAgeAnswer out;
  const auto from_cure = counted_from(days, "cure");
  const auto shelf_end = counted_to(days, "fitting").first;
  out.clocks.push_back(reading("shelf", from_cure.from, shelf_end, from_cure.words,
                               kind == HoseKind::ptfe ? "no cure date: PTFE has none to count from"
                                                      : "the cure date is not known"));
  const bool fitted = days.fitting && *days.fitting <= days.now;
  out.clocks.push_back(reading("service", fitted ? days.fitting : std::nullopt, days.now,
                               fitted ? "from fitting, " + print_date(*days.fitting) : "",
                               "not yet fitted"));
  for (const auto& own : in.own_limits) out.figures.push_back(entered(own, days));
  for (auto& figure : published(days, kind, in.liner, context)) {
    out.figures.push_back(std::move(figure));
  }
  for (const auto& f : out.figures) {
    if (!f.due) continue;
    out.working.push_back(fmt::format("{}: {} + {} = {} ({})", f.what, f.counted, f.limit,
                                      print_date(*f.due), f.due_quarter));
  }
  out.missing = asked(days, kind);
  out.standing = standing_of(out.figures);
  out.in_words = summary(out.standing, out.figures);
  out.notes = {
      "figures that conflict stand side by side; only the maker's, the authority's or your own "
      "limit "
      "decides, and only when it is entered",
      "seals in the store have figures of their own (ARP5316, reported): they do not apply to a "
      "fitted hose"};
  if (kind == HoseKind::ptfe) {
    out.notes.emplace_back(
        "on condition means: inspected, checked or tested so as to be satisfied until the next "
        "inspection; not: run until it fails (NZ accident commission, recommendation 056/98)");
  }
  return out;
}

}  // namespace wm::hose
