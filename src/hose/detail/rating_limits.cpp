// Pressure and temperature: the limits that bind, and the demand against them.
#include <fmt/core.h>

#include <algorithm>

#include "hose/detail/rating_rules.hpp"
#include "hose/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {
namespace {

using quantity::pencil;
using quantity::PressureGauge;
using quantity::Temperature;

constexpr Temperature k_share_from = quantity::celsius(20);

const char* const k_room_text = "27 degC (room, common practice)";

template <class Q>
SourcedFigure<Q> entered(const quantity::Entered<Q>& e, const Looked& l) {
  const std::string text =
      e.text.empty() ? pencil(e.value.si, quantity::typed_unit(e, l.context->units)) : e.text;
  return {e.value, text, words_entered(*l.hose), "entered"};
}

std::string pressure_text(const Looked& l, PressureGauge p) {
  return pencil(p.si, quantity::typed_unit(l.demand->working_pressure, l.context->units));
}
std::string temperature_text(const Looked& l, Temperature t) {
  return pencil(t.si, quantity::typed_unit(l.demand->fluid_highest, l.context->units));
}

/// The factor on the operating pressure at this temperature.
struct HotFactor {
  double k{1.0};
  bool known{};
  bool derived{};
  std::string why;
};

HotFactor hot_factor(const Looked& l) {
  const HoseCandidate& hose = *l.hose;
  const double t = l.hottest.si;
  if (hose.operating && hose.operating_to) {
    if (!above(t, hose.operating_to->value.si)) {
      return {1.0, true, false,
              "the figure entered is said to hold up to " + entered(*hose.operating_to, l).text};
    }
    return {1.0, false, false,
            "the figure entered holds only up to " + entered(*hose.operating_to, l).text};
  }
  if (!above(t, k_room.si)) return {1.0, true, false, std::string("not above ") + k_room_text};
  if (l.lining == Lining::ptfe_convoluted) {
    const auto ratio = convoluted_hot_ratio(*l.context);
    if (ratio && !above(t, k_hot_burst.si)) {
      return {ratio->si, true, true,
              fmt::format("burst at 204 degC over burst at room temperature, MA620 table 1 "
                          "(derived): {}",
                          pencil(ratio->si))};
    }
    return {1.0, false, false, "hotter than the 204 degC of the hot burst test"};
  }
  const bool from_table = l.family && l.family->operating;
  const bool no_more_than_table =
      from_table && !above(l.operating->value.si, l.family->operating->value.si);
  if (no_more_than_table && l.family->highest && !above(t, l.family->highest->value.si)) {
    return {1.0, true, false,
            "its table gives the pressure for the whole range up to " + l.family->highest->text};
  }
  return {1.0, false, false, "no figure says up to which temperature that pressure holds"};
}

void operating_unknown(const Looked& l, Said& said) {
  const std::string system = pressure_text(l, l.system);
  if (l.family && l.family->operating_most) {
    const auto& most = *l.family->operating_most;
    if (above(l.system.si, most.value.si)) {
      said.refuses("pressure",
                   fmt::format("{} with surge is above {}, the most of any size of this family",
                               system, most.text),
                   most.source, most.known);
      return;
    }
  }
  std::string text = fmt::format(
      "the operating pressure of this size is not known (needed: {} with surge); take the maker's "
      "figure from its data sheet or tag, and the temperature up to which it holds",
      system);
  std::string source = "gap";
  if (l.family && l.family->proof) {
    text += fmt::format("; its proof pressure is {}, half of which would be {} (unconfirmed)",
                        l.family->proof->text, pressure_text(l, {l.family->proof->value.si / 2.0}));
    source = l.family->proof->source;
  } else if (l.family && l.family->operating_most) {
    text +=
        fmt::format("; the strongest size of the family has {}", l.family->operating_most->text);
    source = l.family->operating_most->source;
  }
  said.asks("pressure", text, source, {});
}

}  // namespace

std::string words_entered(const HoseCandidate& hose) {
  return hose.limits_source.empty() ? "the owner's or maker's word, entered"
                                    : "entered: " + hose.limits_source;
}

void Said::met(std::string about, std::string text, std::string source, std::string known) {
  reasons.push_back(
      {std::move(about), ReasonStands::met, std::move(text), std::move(source), std::move(known)});
}
void Said::advises(std::string about, std::string text, std::string source, std::string known) {
  reasons.push_back({std::move(about), ReasonStands::advises, std::move(text), std::move(source),
                     std::move(known)});
}
void Said::asks(std::string about, std::string text, std::string source, std::string known) {
  reasons.push_back(
      {std::move(about), ReasonStands::asks, std::move(text), std::move(source), std::move(known)});
}
void Said::refuses(std::string about, std::string text, std::string source, std::string known) {
  reasons.push_back({std::move(about), ReasonStands::refuses, std::move(text), std::move(source),
                     std::move(known)});
}
void Said::share_left(double share, std::string of) {
  if (margin && margin->si <= share) return;
  margin = quantity::ratio(share);
  margin_of = std::move(of);
}

void settle_limits(Looked& l) {
  const HoseCandidate& hose = *l.hose;
  if (l.family) {
    l.operating = l.family->operating;
    l.highest = l.family->highest;
    l.lowest = l.family->lowest;
  }
  if (is_ptfe(l.lining) && hose.ends == EndMetal::aluminium &&
      (!l.highest || above(l.highest->value.si, k_aluminium_ends.si))) {
    l.highest = TemperatureFigure{k_aluminium_ends, "275 degF, set by the aluminium ends",
                                  "AS1946F 1.2.1", "read"};
  }
  if (hose.operating) l.operating = entered(*hose.operating, l);
  if (hose.highest) l.highest = entered(*hose.highest, l);
  if (hose.lowest) l.lowest = entered(*hose.lowest, l);
}

void pressure_rule(const Looked& l, Said& said) {
  if (!l.operating) {
    operating_unknown(l, said);
    return;
  }
  const PressureFigure& op = *l.operating;
  const std::string system = pressure_text(l, l.system);
  if (!op.may_refuse()) {
    said.asks("pressure",
              fmt::format("{} with surge against {}: that figure was not read in its document; "
                          "take the maker's",
                          system, op.text),
              op.source, op.known);
    return;
  }
  if (above(l.system.si, op.value.si)) {
    said.refuses("pressure", fmt::format("{} with surge is above {}", system, op.text), op.source,
                 op.known);
    said.share_left(1.0 - l.system.si / op.value.si, "pressure");
    return;
  }
  if (l.hose->operating && l.family && l.family->operating &&
      above(op.value.si, l.family->operating->value.si)) {
    said.advises("pressure",
                 fmt::format("the figure entered, {}, is above the table's {} and wins over it",
                             op.text, l.family->operating->text),
                 l.family->operating->source, l.family->operating->known);
  }
  const HotFactor hot = hot_factor(l);
  if (!hot.known) {
    said.asks("pressure",
              fmt::format("{} with surge is within {}, but {}: ask for the maker's operating "
                          "pressure at {}",
                          system, op.text, hot.why, temperature_text(l, l.hottest)),
              op.source, op.known);
    said.share_left(1.0 - l.system.si / op.value.si, "pressure");
    return;
  }
  const PressureGauge allowed{hot.k * op.value.si};
  said.allowed = allowed;
  said.share_left(1.0 - l.system.si / allowed.si, "pressure");
  said.working.push_back(fmt::format("k(T) x operating = {} x {} = {} ({})", pencil(hot.k), op.text,
                                     pressure_text(l, allowed), hot.why));
  if (above(l.system.si, allowed.si)) {
    said.asks(
        "pressure",
        fmt::format("{} with surge is above {} x {} = {} at {}: ask for the maker's operating "
                    "pressure at that temperature",
                    system, pencil(hot.k), op.text, pressure_text(l, allowed),
                    temperature_text(l, l.hottest)),
        "MA620 table 1, hot burst over cold burst", "derived");
    return;
  }
  said.met("pressure",
           fmt::format("{} with surge is within {}{}", system,
                       hot.derived ? fmt::format("{} x ", pencil(hot.k)) : "", op.text),
           op.source, hot.derived ? "derived" : op.known);
}

void both_maxima_rule(const Looked& l, Said& said) {
  if (!l.operating || !l.highest || !l.operating->may_refuse() || l.operating->value.si <= 0.0) {
    return;
  }
  const HoseCandidate& hose = *l.hose;
  // The maker has said that the pressure holds at that temperature.
  if (hose.operating && hose.operating_to && !above(l.hottest.si, hose.operating_to->value.si)) {
    return;
  }
  const double share = l.system.si / l.operating->value.si;
  const double short_of = l.highest->value.si - l.hottest.si;
  const std::string demand =
      fmt::format("{} of {} together with {} of {}", pressure_text(l, l.system), l.operating->text,
                  temperature_text(l, l.hottest), l.highest->text);
  const bool at_both = share >= 1.0 - k_equal && short_of <= k_equal * l.hottest.si;
  if (at_both && l.family && l.family->not_both_maxima) {
    said.refuses("both maxima",
                 demand + ": highest temperature and highest pressure are not to be used together",
                 "AC 43.13-1B CHG 1 table 9-3, note", "read");
    return;
  }
  if (share >= k_near_pressure - k_equal &&
      short_of <= k_near_temperature.si + k_equal * l.hottest.si) {
    said.asks(
        "both maxima",
        demand + fmt::format(": at or near both maxima at once (from 90 % of the pressure and "
                             "25 degF below the temperature on: common practice, no source); "
                             "ask for the maker's operating pressure at {}",
                             temperature_text(l, l.hottest)),
        "AC 43.13-1B CHG 1 table 9-3, note, widened", "common-practice");
  }
}

void temperature_rule(const Looked& l, Said& said) {
  const std::string hot = temperature_text(l, l.hottest);
  const std::string sleeve =
      l.hose->sleeve == SleeveFitted::over || l.hose->sleeve == SleeveFitted::integral
          ? "; a fire sleeve does not raise it (NAVEDTRA 14018 page 5-15)"
          : "";
  const bool over_ends = is_ptfe(l.lining) && above(l.hottest.si, k_aluminium_ends.si);
  if (over_ends && !l.hose->highest && l.hose->ends == EndMetal::not_said) {
    said.asks("metal of the ends",
              fmt::format("{} is above the 275 degF that aluminium ends allow a PTFE assembly: are "
                          "its ends steel or aluminium?",
                          hot),
              "AS1946F 1.2.1", "read");
  }
  if (over_ends && l.hose->highest && l.hose->ends == EndMetal::aluminium) {
    said.advises(
        "metal of the ends",
        fmt::format("{} is above the 275 degF that aluminium ends allow; the limit entered "
                    "wins over it: make sure that it is meant for these ends",
                    hot),
        "AS1946F 1.2.1", "read");
  }
  if (!l.highest) {
    said.asks(
        "highest temperature",
        fmt::format("its highest temperature is not known (needed: {}); take the maker's", hot),
        "gap", {});
  } else {
    const auto& high = *l.highest;
    const double span = high.value.si - k_share_from.si;
    const double left = high.value.si - l.hottest.si;
    if (span > 0) said.share_left(std::min(1.0, left / span), "temperature above 20 degC");
    if (!high.may_refuse()) {
      said.asks("highest temperature",
                fmt::format("{} against {}: that figure was not read in its document; take the "
                            "maker's",
                            hot, high.text),
                high.source, high.known);
    } else if (above(l.hottest.si, high.value.si)) {
      said.refuses("highest temperature", fmt::format("{} is above {}{}", hot, high.text, sleeve),
                   high.source, high.known);
    } else {
      said.met("highest temperature", fmt::format("{} is within {}", hot, high.text), high.source,
               high.known);
    }
  }
  const std::string cold = typed(l.demand->lowest, *l.context);
  if (!l.lowest) {
    said.asks(
        "lowest temperature",
        fmt::format("its lowest temperature is not known (needed: {}); take the maker's", cold),
        "gap", {});
  } else if (!l.lowest->may_refuse()) {
    said.asks("lowest temperature",
              fmt::format("{} against {}: that figure was not read in its document; take the "
                          "maker's",
                          cold, l.lowest->text),
              l.lowest->source, l.lowest->known);
  } else if (above(l.lowest->value.si, l.demand->lowest.value.si)) {
    said.refuses("lowest temperature", fmt::format("{} is colder than {}", cold, l.lowest->text),
                 l.lowest->source, l.lowest->known);
  } else {
    said.met("lowest temperature", fmt::format("{} is not colder than {}", cold, l.lowest->text),
             l.lowest->source, l.lowest->known);
  }
}

}  // namespace wm::hose::detail
