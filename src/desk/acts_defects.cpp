#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"

namespace wm::desk {

Simple note_defect(const bay::DefectNoted& in, const Desk& desk) {
  const auto name = name_for(aircraft_of(desk.state, in.aircraft).defects, in.id, in.text);
  if (!name) return Fail(Problems{name.error()});
  bay::DefectNoted defect = in;
  defect.id = *name;
  Said said{"Defect noted.", defect.id, {}};
  if (in.decision == bay::FlyDecision::undecided) {
    said.notes.push_back(
        "Fly or stay on the ground is not decided yet: it stays on the list until somebody does.");
  }
  return Outcome<Said>{{{std::move(defect), {}}}, std::move(said)};
}

Simple decide_defect(const bay::DefectDecided& in, const Desk& desk) {
  const auto& defect = aircraft_of(desk.state, in.aircraft).defects.find(in.defect)->second;
  if (defect.closed) {
    return Fail(Problems{problem(Kind::conflict, "defect", "this defect is closed already")});
  }
  return Outcome<Said>{{{in, {}}},
                       {fmt::format("Decided: {}.", bay::label(in.decision)), in.defect, {}}};
}

Simple close_defect(const bay::DefectClosed& in, const Desk& desk) {
  const auto& defect = aircraft_of(desk.state, in.aircraft).defects.find(in.defect)->second;
  if (defect.closed) {
    return Fail(Problems{problem(Kind::conflict, "defect", "this defect is closed already")});
  }
  return Outcome<Said>{{{in, {}}}, {"Defect closed.", in.defect, {}}};
}

}  // namespace wm::desk
