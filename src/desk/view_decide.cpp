// Renew, watch or leave, for every part that is fitted.
#include <algorithm>

#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::desk {

Checked<DecidePage> decide_page(const OfAircraft& in, const bay::State& state,
                                const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  DecidePage out{header_of(aircraft), {}, 0, 0, 0};
  for (const auto& id : aircraft.position_order) {
    if (!aircraft.fitted.contains(id)) continue;
    out.parts.push_back(
        part_evidence(state, aircraft, aircraft.positions.find(id)->second, context));
    switch (out.parts.back().leans) {
      case bay::PartDecision::renew:
        ++out.renew;
        break;
      case bay::PartDecision::watch:
        ++out.watch;
        break;
      case bay::PartDecision::leave:
        ++out.leave;
        break;
    }
  }
  // What the record asks most for first; of two alike the one whose failure is graver.
  std::ranges::stable_sort(out.parts, [](const PartEvidence& a, const PartEvidence& b) {
    if (a.leans != b.leans) return a.leans < b.leans;
    return a.grave && !b.grave;
  });
  return out;
}

Checked<PartEvidence> evidence_of(const OfPosition& in, const bay::State& state,
                                  const Context& context) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  return part_evidence(state, aircraft, aircraft.positions.find(in.position)->second, context);
}

std::string_view describe(describe::Fields<DecidePage>& f) {
  f.has<&DecidePage::header>("header", "Header");
  f.has<&DecidePage::parts>("parts", "Parts");
  f.has<&DecidePage::renew>("renew", "Lean to renewing");
  f.has<&DecidePage::watch>("watch", "Lean to watching");
  f.has<&DecidePage::leave>("leave", "Lean to leaving");
  return "decide-page";
}

}  // namespace wm::desk
