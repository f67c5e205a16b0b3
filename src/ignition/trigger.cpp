#include "ignition/trigger.hpp"

#include <fmt/core.h>

#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"

namespace wm::ignition {
namespace {

constexpr double k_minute = 60;

std::string minutes(quantity::Duration d) {
  return quantity::significant(d.si / k_minute, 3) + " min";
}

void add_standby(TriggerSupplyAnswer& out, const StandbySupply& standby) {
  const double usable = standby.capacity.value.si * standby.of_it.si;
  const quantity::Duration lasts{usable / standby.draw.value.si};
  out.lasts = lasts;
  out.working.push_back(fmt::format("standby: {} x {} / {} = {}", standby.capacity.text,
                                    quantity::significant(standby.of_it.si, 3), standby.draw.text,
                                    minutes(lasts)));
  out.lasts_words = fmt::format("the standby supply carries them for {}", minutes(lasts));
  if (standby.noticed_after)
    out.notes.push_back(fmt::format(
        "before the change-over they hang on the failing bus for {}: the volts there fall first, "
        "and their least figure decides whether they still fire",
        standby.noticed_after->text));
  if (!standby.wanted) return;
  const bool enough = lasts >= standby.wanted->value;
  out.lasts_words += fmt::format("; wanted {}: {}", standby.wanted->text,
                                 enough ? "enough by this sum" : "too short by this sum");
}

}  // namespace

Checked<TriggerSupplyAnswer> trigger_supply(const TriggerSupplyInput& in,
                                            const describe::Context& context) {
  if (in.modules.empty())
    return Fail(Problems{detail::problem("modules", Kind::missing, "no module is named",
                                         "each module or trigger, with its volts",
                                         R"([{"name": "module 1", "running": "13.8 V"}])")});
  TriggerSupplyAnswer out;
  Problems problems;
  detail::HowRead how;
  how.meter = in.meter;
  for (std::size_t i = 0; i < in.modules.size(); ++i) {
    const auto& m = in.modules[i];
    const auto limit =
        detail::entered(m.least, std::optional<decltype(m.least)::value_type>{}, in.limit_source);
    const auto one = [&](const auto& reading, std::string_view what) {
      auto judged =
          detail::judge({m.name + ", " + std::string(what), detail::any(reading), false,
                         fmt::format("modules/{}/{}", i, what), fmt::format("modules/{}/least", i)},
                        limit, how, context);
      if (judged)
        out.modules.push_back(std::move(*judged));
      else
        problems.insert(problems.end(), judged.error().begin(), judged.error().end());
    };
    one(m.running, "running");
    one(m.cranking, "cranking");
  }
  if (!problems.empty()) return Fail(std::move(problems));
  if (in.standby)
    add_standby(out, *in.standby);
  else
    out.notes.emplace_back("standby supply: not described");
  out.verdict = worst(out.modules);
  out.in_words = std::string(words(out.verdict));
  out.notes.emplace_back(
      "read at the module's own terminals, ground side as well: a drop in its wire does not show "
      "at the bus");
  return out;
}

std::string_view describe(describe::Fields<SupplyRead>& f) {
  using S = SupplyRead;
  const quantity::Voltage none{0};
  const quantity::Voltage most{60};
  f.has<&S::name>("name", "Module or trigger").needed("module 1").unique();
  f.has<&S::running>("running", "Volts at its terminals, engine running")
      .example("13.8 V")
      .between(none, most);
  f.has<&S::cranking>("cranking", "Least volts while cranking")
      .example("9.6 V")
      .between(none, most);
  f.has<&S::least>("least", "Least that its maker asks for").example("8.0 V").between(none, most);
  return "supply-read";
}

std::string_view describe(describe::Fields<StandbySupply>& f) {
  using S = StandbySupply;
  f.has<&S::capacity>("capacity", "Capacity of the standby battery")
      .needed("4.5 Ah")
      .above(quantity::Charge{0})
      .at_most(quantity::Charge{3.6e6});
  f.has<&S::of_it>("of_it", "Share of it that is there: age, cold, charge")
      .between(quantity::per_cent(1), quantity::per_cent(100));
  f.has<&S::draw>("draw", "Current of all that it carries")
      .needed("2.4 A")
      .above(quantity::Current{0})
      .at_most(quantity::Current{1000});
  f.has<&S::wanted>("wanted", "Time wanted")
      .example("60 min")
      .above(quantity::seconds(0))
      .at_most(quantity::hours(48));
  f.has<&S::noticed_after>("noticed_after", "On the failing bus before the change-over")
      .example("5 min")
      .between(quantity::seconds(0), quantity::hours(48));
  return "standby-supply";
}

std::string_view describe(describe::Fields<TriggerSupplyInput>& f) {
  using In = TriggerSupplyInput;
  f.has<&In::modules>("modules", "Modules and triggers")
      .needed(
          R"([{"name": "module 1", "running": "13.8 V +- 0.1 V", "cranking": "9.6 V +- 0.1 V", "least": "8.0 V"}])")
      .at_most(16);
  f.has<&In::limit_source>("limit_source", "Where the least volts are written")
      .example("manual of the module's maker");
  f.has<&In::meter>("meter", "Range of the meter and its accuracy");
  f.has<&In::standby>("standby", "Standby supply")
      .example(R"({"capacity": "4.5 Ah", "draw": "2.4 A", "wanted": "60 min"})");
  return "trigger-supply-input";
}

std::string_view describe(describe::Fields<TriggerSupplyAnswer>& f) {
  using A = TriggerSupplyAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::modules>("modules", "Each reading");
  f.has<&A::lasts>("lasts", "The standby supply lasts");
  f.has<&A::lasts_words>("lasts_words", "Standby supply");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "trigger-supply-answer";
}

}  // namespace wm::ignition
