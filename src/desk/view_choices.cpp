#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::desk {

Checked<FrontPage> front_page(const Nothing&, const bay::State& state, const Context& context) {
  FrontPage out{{}, context.today};
  for (const auto& [id, aircraft] : state.aircraft) out.aircraft.push_back(header_of(aircraft));
  return out;
}

Checked<NamedChoices> named_choices(const ChoicesWanted& in, const bay::State& state,
                                    const Context&) {
  NamedChoices out;
  const auto add = [&](const std::string& value, const std::string& label,
                       const std::string& note = {}) {
    out.choices.push_back({value, label, note});
  };
  if (in.of == "aircraft") {
    for (const auto& [id, a] : state.aircraft) add(id, a.about.name, a.about.registration);
  } else if (in.of == "part") {
    for (const auto& [id, p] : state.parts) {
      const auto* current = p.current();
      add(id, p.about.description.empty() ? p.about.type : p.about.description,
          current ? "in " + current->position : "on the shelf");
    }
  } else if (in.of == "instrument") {
    for (const auto& [id, i] : state.instruments) add(id, i.about.name, i.bad ? "found bad" : "");
  }
  const auto* aircraft = state.find_aircraft(in.aircraft);
  if (aircraft == nullptr) return out;
  if (in.of == "counter") {
    for (const auto& [id, c] : aircraft->counters) add(id, c.about.name);
  } else if (in.of == "position") {
    for (const auto& id : aircraft->position_order) {
      const auto& p = aircraft->positions.find(id)->second;
      add(id, p.name, std::string(bay::label(p.system)));
    }
  } else if (in.of == "joint") {
    for (const auto& id : aircraft->joint_order) {
      const auto& j = aircraft->joints.find(id)->second;
      add(id, j.about.name, j.closed() ? "" : "open");
    }
  } else if (in.of == "limit") {
    for (const auto& [id, l] : aircraft->limits) add(id, l.about.title);
  } else if (in.of == "check") {
    for (const auto& id : aircraft->check_order)
      add(id, aircraft->checks.find(id)->second.about.title);
  } else if (in.of == "defect") {
    for (const auto& [id, d] : aircraft->defects)
      add(id, d.about.text, d.closed ? "closed" : "open");
  } else if (in.of == "change") {
    for (const auto& id : aircraft->change_order) {
      const auto& c = aircraft->changes.find(id)->second;
      add(id, c.about.title,
          c.withdrawn       ? "withdrawn"
          : c.done          ? "done"
          : c.stage.empty() ? "in no stage"
                            : c.stage);
    }
  } else if (in.of == "stage") {
    for (const auto& id : aircraft->stage_order) {
      const auto& s = aircraft->stages.find(id)->second;
      add(id, s.about.title, std::string(bay::label(s.state)));
    }
  } else if (in.of == "hose") {
    for (const auto& id : aircraft->hose_order) {
      const auto& h = aircraft->hoses.find(id)->second;
      add(id, h.about.title, h.about.overall.text);
    }
  } else if (in.of == "entry") {
    for (const auto& [id, e] : aircraft->entries)
      add(id, std::string(bay::label(e.about.purpose)), quantity::print_date(e.day));
  }
  return out;
}

}  // namespace wm::desk
