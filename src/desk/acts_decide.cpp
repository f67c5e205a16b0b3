#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"
#include "desk/part_evidence.hpp"

namespace wm::desk {

Simple decide_part(const DecidePart& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& position = aircraft.positions.find(in.position)->second;
  const auto evidence = part_evidence(desk.state, aircraft, position, desk.context);
  Problems wrong;
  if (evidence.part.empty())
    wrong.push_back(problem(Kind::missing, "position",
                            fmt::format("no part is on record in {}", position.name),
                            "register the part and install it there first"));
  if (in.look_again && *in.look_again <= desk.day())
    wrong.push_back(problem(Kind::out_of_bounds, "look_again",
                            "the day to look again is not after the day of the decision",
                            "give a later day, or leave it empty"));
  if (!wrong.empty()) return Fail(std::move(wrong));

  bay::PartDecided decided{in.aircraft,   in.position, evidence.part, in.decision, in.reason,
                           in.look_again, in.cost,     in.by,         {}};
  for (const auto& line : evidence.lines)
    decided.evidence.push_back(fmt::format("{}: {}", line.topic, line.words));
  Said said{fmt::format("{}: {}.", position.name, bay::label(in.decision)), in.position, {}};
  if (in.decision == bay::PartDecision::leave && evidence.leans == bay::PartDecision::renew)
    said.notes.push_back(fmt::format(
        "The record leans to renewing it: {}. Your reason stands beside it.", evidence.because));
  if (in.decision == bay::PartDecision::watch && !in.look_again)
    said.notes.push_back("Watched without a day: nothing will call it up again.");
  return Outcome<Said>{{{std::move(decided), {}}}, std::move(said)};
}

std::string_view describe(describe::Fields<DecidePart>& f) {
  using D = DecidePart;
  f.has<&D::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&D::position>("position", "Position").needed("oil-hose-upper").refers_to("position");
  f.has<&D::decision>("decision", "What is decided");
  f.has<&D::reason>("reason", "Why")
      .needed("past its years, and it carries oil beside the exhaust");
  f.has<&D::look_again>("look_again", "Look again on").example("2027-05-01");
  f.has<&D::cost>("cost", "What it costs").example("240 for the hose, 4 hours of work");
  f.has<&D::by>("by", "By").example("owner");
  return "decide-part";
}

}  // namespace wm::desk
