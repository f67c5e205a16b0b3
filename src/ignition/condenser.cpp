#include "ignition/condenser.hpp"

#include <fmt/core.h>

#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"

namespace wm::ignition {
namespace {

constexpr std::string_view meaning(OhmmeterShows shows) {
  switch (shows) {
    case OhmmeterShows::climbs:
      return "climbs towards over-range: it takes a charge (common practice, no source)";
    case OhmmeterShows::stays_low:
      return "stays low: shorted; no spark at all, like a grounded magneto (common practice, no "
             "source)";
    case OhmmeterShows::over_range_at_once:
      return "over-range at once: open, or too small for this meter; points burn and the spark is "
             "weak (common practice, no source)";
    default:
      return "not tried";
  }
}

}  // namespace

Checked<CondenserCheckAnswer> condenser_check(const CondenserCheckInput& in,
                                              const describe::Context& context) {
  if (!in.capacitance && !in.leakage && in.ohmmeter == OhmmeterShows::not_tried) {
    return Fail(Problems{detail::problem("capacitance", Kind::missing, "nothing was read",
                                         "its capacitance, its leakage, or what an ohmmeter shows",
                                         "0.35 uF")});
  }
  CondenserCheckAnswer out;
  detail::HowRead how;
  how.meter = in.meter;
  auto judged =
      detail::judge({"capacitance", detail::any(in.capacitance), false, "capacitance", "lowest"},
                    detail::entered(in.lowest, in.highest, in.limit_source), how, context);
  if (!judged) return Fail(judged.error());
  out.capacitance = std::move(*judged);
  std::vector<PartVerdict> all{out.capacitance};
  if (in.leakage) {
    auto leakage = judge_insulation(*in.leakage, "leakage", "condenser", context);
    if (!leakage) return Fail(leakage.error());
    all.push_back(leakage->judged);
    out.leakage = std::move(*leakage);
  } else {
    out.notes.emplace_back(
        "leakage: not tested; an ohmmeter's few volts pass a leaky condenser, which is worst when "
        "hot");
  }
  out.ohmmeter = std::string(meaning(in.ohmmeter));
  const bool shows_a_fault =
      in.ohmmeter == OhmmeterShows::stays_low || in.ohmmeter == OhmmeterShows::over_range_at_once;
  if (shows_a_fault && worst(all) == evidence::Verdict::conforms) {
    // What the trade knows is no limit, but it keeps a good capacitance from passing the part.
    PartVerdict shown;
    shown.what = "ohmmeter";
    shown.verdict = evidence::Verdict::undecided;
    shown.in_words = std::string(words(shown.verdict));
    shown.reason = out.ohmmeter;
    shown.limit_source = "common practice, no source: advice";
    shown.do_next.emplace_back(
        "lift one end, take its charge off, read capacitance and ohmmeter again");
    out.notes.push_back(fmt::format("{}: {}", shown.do_next.front(),
                                    "the ohmmeter and the capacitance do not fit together"));
    all.push_back(std::move(shown));
  }
  out.figures = detail::figures(context.table("condenser-figures"), "capacitance",
                                detail::any(in.capacitance));
  out.notes.emplace_back("lift one end first, and take its charge off before it is touched");
  out.verdict = worst(all);
  out.in_words = std::string(words(out.verdict));
  return out;
}

std::string_view describe(describe::Choices<OhmmeterShows>& c) {
  c.has(OhmmeterShows::not_tried, "not-tried", "not tried")
      .has(OhmmeterShows::climbs, "climbs", "climbs towards over-range")
      .has(OhmmeterShows::stays_low, "stays-low", "stays low")
      .has(OhmmeterShows::over_range_at_once, "over-range-at-once", "over-range at once");
  return "ohmmeter-shows";
}

std::string_view describe(describe::Fields<CondenserCheckInput>& f) {
  using In = CondenserCheckInput;
  const quantity::Capacitance none{0};
  const quantity::Capacitance most{1e-3};
  f.has<&In::capacitance>("capacitance", "Capacitance read")
      .example("0.35 uF +- 0.01 uF")
      .between(none, most);
  f.has<&In::lowest>("lowest", "Lowest").example("0.30 uF").between(none, most);
  f.has<&In::highest>("highest", "Highest").example("0.40 uF").between(none, most);
  f.has<&In::limit_source>("limit_source", "Where the limits are written")
      .example("overhaul manual of the magneto");
  f.has<&In::meter>("meter", "Range of the meter and its accuracy");
  f.has<&In::leakage>("leakage", "Leakage");
  f.has<&In::ohmmeter>("ohmmeter", "What an ohmmeter shows").example("climbs");
  return "condenser-check-input";
}

std::string_view describe(describe::Fields<CondenserCheckAnswer>& f) {
  using A = CondenserCheckAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::capacitance>("capacitance", "Capacitance");
  f.has<&A::leakage>("leakage", "Leakage");
  f.has<&A::ohmmeter>("ohmmeter", "What the ohmmeter says");
  f.has<&A::figures>("figures", "Figures of the trade: advice");
  f.has<&A::notes>("notes", "Notes");
  return "condenser-check-answer";
}

}  // namespace wm::ignition
