#include "electrics/detail/start_model.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "electrics/circuit.hpp"
#include "electrics/detail/figures.hpp"
#include "electrics/detail/milliohm.hpp"
#include "electrics/detail/problem.hpp"
#include "tables/electrics/battery_cold.hpp"
#include "tables/electrics/starting_elements.hpp"

namespace wm::electrics {

std::optional<double> cold_factor(double celsius) {
  const auto& table = tables::battery_cold;
  return detail::between(detail::numbers(table, "temperature"), detail::numbers(table, "factor"),
                         celsius);
}

namespace detail {
namespace {

using quantity::pencil;

std::string_view word_of(StartElementKind kind) {
  switch (kind) {
    case StartElementKind::contactor:
      return "contactor";
    case StartElementKind::joint:
      return "joint";
    case StartElementKind::ground:
    case StartElementKind::cable:
      break;
  }
  return "ground";
}

Result<ModelElement> cable(const StartElement& e, double celsius, const std::string& path) {
  if (!e.conductor || !e.length) {
    return Fail(problem(path + (e.conductor ? "/length" : "/conductor"), Kind::missing,
                        "a cable needs its conductor and its length, or its resistance",
                        "both, or a resistance", e.conductor ? "12 ft" : R"({"size": "2"})"));
  }
  const auto wire = figures_of(*e.conductor, path + "/conductor");
  if (!wire) return Fail(wire.error());
  ModelElement m;
  m.expected = wire->ohm_per_metre * warm_factor(wire->metal, celsius) * e.length->value.si;
  m.basis = fmt::format("{}, {} m at {} degC: {}", wire->in_words, pencil(e.length->value.si),
                        pencil(celsius), wire->source);
  m.table_cable = !wire->entered;
  return m;
}

Result<ModelElement> one(const StartElement& e, double celsius, const std::string& path) {
  ModelElement m;
  if (e.resistance) {
    m.expected = e.resistance->value.si;
    m.basis = "entered";
    return m;
  }
  if (e.kind == StartElementKind::cable) return cable(e, celsius, path);
  const auto& table = tables::starting_elements;
  const auto row = row_of(table, word_of(e.kind)).value_or(0);
  m.expected = figure(table, row, "good-to").value_or(0.0) / 1e3;
  m.basis = fmt::format("at most {}, {} ({})", milliohm(m.expected), word(table, row, "basis"),
                        provenance(table, row) == "read" ? "FAA handbook" : "advice, no source");
  return m;
}

/// Index of the element that `beside` names, earlier in the list and itself a head.
Result<std::size_t> head_of(const StartingInput& in, std::size_t i, const std::string& path) {
  const StartElement& e = in.elements[i];
  if (e.beside.empty()) return i;
  for (std::size_t k = 0; k < i; ++k) {
    if (in.elements[k].name == e.beside && in.elements[k].beside.empty()) {
      if (!e.drop) return k;
      return Fail(
          problem(path + "/drop", Kind::conflict,
                  fmt::format("elements side by side have one drop: enter it at `{}`", e.beside),
                  "no drop here"));
    }
  }
  return Fail(problem(path + "/beside", Kind::not_found,
                      fmt::format("no earlier element `{}` that lies in line", e.beside),
                      "the name of an earlier element"));
}

void check_names(const StartingInput& in, Problems& problems) {
  if (in.elements.empty()) {
    problems.push_back(problem("elements", Kind::missing, "there is no element",
                               "cables, contactors, joints and the ground path, in order",
                               R"([{"name": "engine ground", "kind": "ground"}])"));
  }
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      if (in.elements[i].name != in.elements[k].name) continue;
      problems.push_back(problem(fmt::format("elements/{}/name", i), Kind::duplicate,
                                 fmt::format("two elements are called `{}`", in.elements[i].name),
                                 "a name of its own"));
      break;
    }
  }
}

double battery_ohm(const StartBattery& b, std::vector<std::string>& working) {
  const double warm = b.internal.value.si;
  if (!b.temperature) return warm;
  const double celsius = b.temperature->value.si - k_zero_celsius;
  const double factor = cold_factor(celsius).value_or(1.0);
  working.push_back(
      fmt::format("battery at {} degC: {} x {} = {} (factor from memory, unconfirmed)",
                  pencil(celsius), milliohm(warm), pencil(factor), milliohm(warm * factor)));
  return warm * factor;
}

/// Battery, feed side, [the starter between "s" and "f"], return side down to "0".
std::vector<CircuitElement> circuit(const StartingInput& in, const StartModel& model) {
  std::vector<CircuitElement> all{
      {Branch::voltage_source, "battery", "plus", "0", model.emf, model.battery_ohm}};
  std::vector<std::size_t> feed;
  std::vector<std::size_t> back;
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    if (model.elements[i].head == i) (in.elements[i].in_return ? back : feed).push_back(i);
  }
  std::vector<std::pair<std::string, std::string>> ends(in.elements.size());
  const auto chain = [&](const std::vector<std::size_t>& heads, std::string from,
                         const std::string& last) {
    for (std::size_t k = 0; k < heads.size(); ++k) {
      std::string to = k + 1 == heads.size() ? last : fmt::format("n{}", heads[k]);
      ends[heads[k]] = {from, to};
      from = std::move(to);
    }
  };
  chain(feed, "plus", "s");
  chain(back, "f", "0");
  const auto wire = [&](const char* name, const char* from, const char* to) {
    all.push_back({Branch::resistor, name, from, to, 0.0, 0.0});
  };
  if (feed.empty()) wire("no feed", "plus", "s");
  if (back.empty()) wire("no return", "f", "0");
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    const auto& [from, to] = ends[model.elements[i].head];
    all.push_back({Branch::resistor, fmt::format("element {}", i), from, to, model.ohms[i], 0.0});
  }
  return all;
}

}  // namespace

Checked<StartModel> model_of(const StartingInput& in, std::vector<std::string>& working) {
  Problems problems;
  check_names(in, problems);
  StartModel model;
  const double celsius = in.temperature ? in.temperature->value.si - k_zero_celsius : 20.0;
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    const std::string path = fmt::format("elements/{}", i);
    auto m = one(in.elements[i], celsius, path);
    const auto head = head_of(in, i, path);
    if (!m) problems.push_back(m.error());
    if (!head) problems.push_back(head.error());
    if (!m || !head) continue;
    m->head = *head;
    model.ohms.push_back(m->expected);
    model.elements.push_back(std::move(*m));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  model.emf = in.battery.open_circuit.value.si;
  model.battery_ohm = battery_ohm(in.battery, working);
  return model;
}

double together(const StartModel& model, std::size_t head) {
  double siemens = 0.0;
  for (std::size_t i = 0; i < model.elements.size(); ++i) {
    if (model.elements[i].head != head) continue;
    if (model.ohms[i] <= 0.0) return 0.0;
    siemens += 1.0 / model.ohms[i];
  }
  return siemens > 0.0 ? 1.0 / siemens : 0.0;
}

double outside(const StartModel& model) {
  double sum = 0.0;
  for (std::size_t i = 0; i < model.elements.size(); ++i) {
    if (model.elements[i].head == i) sum += together(model, i);
  }
  return sum;
}

Result<StartState> crank(const StartingInput& in, const StartModel& model, double amperes) {
  auto elements = circuit(in, model);
  elements.push_back({Branch::current_source, "starter", "s", "f", amperes, 0.0});
  const auto solved = solve(elements, "0");
  if (!solved) return Fail(solved.error());
  StartState state;
  state.at_battery = voltage_at(*solved, "plus").value();
  state.at_starter = branch_of(*solved, "starter")->volts;
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    state.drops.push_back(branch_of(*solved, fmt::format("element {}", i))->volts);
  }
  return state;
}

Result<double> first_moment(const StartingInput& in, const StartModel& model) {
  auto elements = circuit(in, model);
  elements.push_back({Branch::voltage_source, "starter", "s", "f", in.motor->brushes.value.si,
                      in.motor->armature.value.si});
  const auto solved = solve(elements, "0");
  if (!solved) return Fail(solved.error());
  return branch_of(*solved, "starter")->amperes;
}

}  // namespace detail
}  // namespace wm::electrics
