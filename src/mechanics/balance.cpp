#include "mechanics/balance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "quantity/as_typed.hpp"

namespace wm::mechanics {
namespace {

using quantity::Length;
using quantity::Mass;
using quantity::pencil;
using quantity::Unit;

/// A moment of 1 kg m; a limit met to this is met.
constexpr double k_rounding_m = 1e-9;
constexpr double k_rounding_kg = 1e-9;
constexpr Mass k_negligible_light{0.45359237};       // 1 lb, empty mass below 5000 lb
constexpr Mass k_negligible_middle{2 * 0.45359237};  // 2 lb, 5000 to 50 000 lb
constexpr Mass k_negligible_heavy{5 * 0.45359237};   // 5 lb above
constexpr double k_negligible_of_mac = 0.0005;

struct Units {
  const Unit* mass;
  const Unit* arm;
};

struct Body {
  double mass{};
  double moment{};
  void add(double kilograms, double metres) {
    mass += kilograms;
    moment += kilograms * metres;
  }
  [[nodiscard]] double arm() const { return moment / mass; }
};

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {}) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

std::string signed_pencil(double si, const Unit& unit) {
  return (si >= 0.0 ? "+" : "") + pencil(si, unit);
}

std::string moment_words(double si, const Units& u) {
  return fmt::format("{} {}.{}", pencil(si / u.mass->factor / u.arm->factor), u.mass->symbol,
                     u.arm->symbol);
}

Mass least_of(const Station& s, const MassBalanceInput& in) {
  if (s.least) return s.least->value;
  if (s.fuel && in.power) return std::min(minimum_fuel(in.power->value), s.most.value);
  return {};
}

void check_fields(const MassBalanceInput& in, Problems& problems) {
  if (!(in.empty_mass.value.si > 0.0)) {
    problems.push_back(
        problem("empty_mass", Kind::missing, "no empty mass", "from the last report"));
  }
  for (std::size_t i = 0; i < in.changes.size(); ++i) {
    const MassChange& c = in.changes[i];
    if ((c.kind == MassChangeKind::moved) != c.to_arm.has_value()) {
      problems.push_back(problem(fmt::format("changes/{}/to_arm", i),
                                 c.to_arm ? Kind::conflict : Kind::missing,
                                 c.to_arm ? "only a moved item has a second arm"
                                          : "where the item was moved to is not said",
                                 "the new arm of a moved item"));
    }
  }
  for (std::size_t i = 0; i < in.stations.size(); ++i) {
    const Station& s = in.stations[i];
    if (s.least && s.least->value > s.most.value) {
      problems.push_back(problem(fmt::format("stations/{}/least", i), Kind::conflict,
                                 "the least mass is above the most", "least up to most"));
    }
  }
  if (in.forward_limit && in.aft_limit && in.forward_limit->value > in.aft_limit->value) {
    problems.push_back(problem("forward_limit", Kind::conflict,
                               "the forward limit lies behind the aft limit",
                               "arms grow towards the tail"));
  }
  if (in.mac_leading_edge.has_value() != in.mac_length.has_value()) {
    problems.push_back(problem(in.mac_length ? "mac_leading_edge" : "mac_length", Kind::missing,
                               "half of the mean chord is missing", "leading edge and length"));
  }
  for (std::size_t i = 0; i < in.loadings.size(); ++i) {
    for (std::size_t k = 0; k < in.loadings[i].items.size(); ++k) {
      const std::string& name = in.loadings[i].items[k].station;
      const bool known = std::any_of(in.stations.begin(), in.stations.end(),
                                     [&](const Station& s) { return s.name == name; });
      if (!known) {
        problems.push_back(problem(fmt::format("loadings/{}/items/{}/station", i, k),
                                   Kind::not_found, fmt::format("there is no station \"{}\"", name),
                                   "the name of one of the stations"));
      }
    }
  }
}

Body apply_changes(const MassBalanceInput& in, const Units& u, std::vector<std::string>& working) {
  Body body;
  body.add(in.empty_mass.value.si, in.empty_arm.value.si);
  working.push_back(fmt::format("empty before: {} x {} = {}", pencil(body.mass, *u.mass),
                                signed_pencil(in.empty_arm.value.si, *u.arm),
                                moment_words(body.moment, u)));
  for (const MassChange& c : in.changes) {
    const double mass = c.mass.value.si;
    const double arm = c.arm.value.si;
    if (c.kind == MassChangeKind::moved) {
      body.moment += mass * (c.to_arm->value.si - arm);
      working.push_back(fmt::format("moved {}: {} from {} to {}, moment {}", c.what,
                                    pencil(mass, *u.mass), signed_pencil(arm, *u.arm),
                                    signed_pencil(c.to_arm->value.si, *u.arm),
                                    moment_words(mass * (c.to_arm->value.si - arm), u)));
      continue;
    }
    const double sign = c.kind == MassChangeKind::added ? 1.0 : -1.0;
    body.add(sign * mass, arm);
    working.push_back(fmt::format("{} {}: {} x {} = {}", sign > 0 ? "added" : "removed", c.what,
                                  pencil(sign * mass, *u.mass), signed_pencil(arm, *u.arm),
                                  moment_words(sign * mass * arm, u)));
  }
  return body;
}

std::optional<quantity::Fraction> of_mac(const MassBalanceInput& in, double arm) {
  if (!in.mac_length || !(in.mac_length->value.si > 0.0)) return std::nullopt;
  return quantity::ratio((arm - in.mac_leading_edge->value.si) / in.mac_length->value.si);
}

/// What is on board in a loading: one mass a station.
using Load = std::vector<double>;

/// The loading that pulls the centre of gravity farthest to one side of `threshold`.
Load extreme(const MassBalanceInput& in, double empty_mass, double threshold, bool forward) {
  Load load;
  double mass = empty_mass;
  for (const Station& s : in.stations) {
    load.push_back(least_of(s, in).si);
    mass += load.back();
  }
  std::vector<std::size_t> order(in.stations.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  const auto pull = [&](std::size_t i) {
    const double d = in.stations[i].arm.value.si - threshold;
    return forward ? -d : d;
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return pull(a) > pull(b); });
  for (const std::size_t i : order) {
    if (pull(i) <= 0.0) break;
    double more = in.stations[i].most.value.si - load[i];
    if (in.most_mass) more = std::min(more, std::max(0.0, in.most_mass->value.si - mass));
    load[i] += more;
    mass += more;
  }
  return load;
}

Within judge(const MassBalanceInput& in, const Body& body, const Units& u, std::string& words) {
  std::vector<std::string> wrong;
  const double arm = body.arm();
  if (in.forward_limit && arm < in.forward_limit->value.si - k_rounding_m) {
    wrong.push_back("ahead of the forward limit " +
                    signed_pencil(in.forward_limit->value.si, *u.arm));
  }
  if (in.aft_limit && arm > in.aft_limit->value.si + k_rounding_m) {
    wrong.push_back("behind the aft limit " + signed_pencil(in.aft_limit->value.si, *u.arm));
  }
  if (in.most_mass && body.mass > in.most_mass->value.si + k_rounding_kg) {
    wrong.push_back("heavier than " + pencil(in.most_mass->value.si, *u.mass));
  }
  const std::string figures = fmt::format("{} at {:+.2f} {}", pencil(body.mass, *u.mass),
                                          arm / u.arm->factor, u.arm->symbol);
  if (!wrong.empty()) {
    words = figures + ": outside the limits you entered, ";
    for (std::size_t i = 0; i < wrong.size(); ++i) words += (i == 0 ? "" : " and ") + wrong[i];
    return Within::outside;
  }
  if (!in.forward_limit || !in.aft_limit || !in.most_mass) {
    words =
        figures + ": not judged, forward limit, aft limit and greatest mass are not all entered";
    return Within::not_judged;
  }
  words = figures + ": inside the limits you entered";
  return Within::inside;
}

LoadingAnswer weigh(const MassBalanceInput& in, const Body& empty, std::string name,
                    const Load& load, const Units& u) {
  LoadingAnswer answer;
  answer.name = std::move(name);
  Body body = empty;
  for (std::size_t i = 0; i < load.size(); ++i) {
    if (load[i] <= 0.0) continue;
    const Station& s = in.stations[i];
    body.add(load[i], s.arm.value.si);
    answer.carried.push_back(fmt::format("{} {} at {}", s.name, pencil(load[i], *u.mass),
                                         signed_pencil(s.arm.value.si, *u.arm)));
  }
  answer.carried.push_back(
      fmt::format("together {}, {}", pencil(body.mass, *u.mass), moment_words(body.moment, u)));
  answer.mass = {Mass{body.mass}, in.empty_mass.resolution_si, {}};
  answer.arm = {Length{body.arm()}, 0.01 * u.arm->factor, {}};
  answer.of_mac = of_mac(in, body.arm());
  answer.within = judge(in, body, u, answer.in_words);
  return answer;
}

void weigh_all(const MassBalanceInput& in, const Body& empty, const Units& u,
               MassBalanceAnswer& answer) {
  if (!in.stations.empty()) {
    const double middle = empty.arm();
    const double forward = in.forward_limit ? in.forward_limit->value.si : middle;
    const double aft = in.aft_limit ? in.aft_limit->value.si : middle;
    answer.loadings.push_back(
        weigh(in, empty, "farthest forward", extreme(in, empty.mass, forward, true), u));
    answer.loadings.push_back(
        weigh(in, empty, "farthest aft", extreme(in, empty.mass, aft, false), u));
  }
  for (const Loading& loading : in.loadings) {
    Load load(in.stations.size(), 0.0);
    for (const LoadedItem& item : loading.items) {
      for (std::size_t i = 0; i < load.size(); ++i) {
        if (in.stations[i].name == item.station) load[i] += item.mass.value.si;
      }
    }
    answer.loadings.push_back(weigh(in, empty, loading.name, load, u));
  }
}

void conclude(MassBalanceAnswer& answer) {
  if (answer.loadings.empty()) {
    answer.in_words = "no loading judged: enter the stations and the limits";
    return;
  }
  answer.within = Within::inside;
  for (const LoadingAnswer& one : answer.loadings) {
    if (one.within == Within::outside) {
      answer.within = Within::outside;
      answer.in_words = one.name + ": " + one.in_words;
      return;
    }
    if (one.within == Within::not_judged) answer.within = Within::not_judged;
  }
  answer.in_words = answer.within == Within::inside
                        ? "every loading shown lies inside the limits you entered"
                        : "not judged: limits are missing";
}

void judge_change(const MassBalanceInput& in, const Units& u, MassBalanceAnswer& answer) {
  if (in.changes.empty() && !in.not_yet_counted) {
    answer.negligible = true;
    answer.change_in_words = "nothing changed";
    return;
  }
  const Mass earlier = in.not_yet_counted ? in.not_yet_counted->value : Mass{};
  const double mass = std::abs((answer.mass_change.value + earlier).si);
  const double heavy = in.empty_mass.value / quantity::pounds(1);
  const Mass bound = heavy < 5000 ? k_negligible_light
                                  : (heavy <= 50000 ? k_negligible_middle : k_negligible_heavy);
  const bool light = mass <= bound.si + k_rounding_kg;
  std::optional<double> share;
  if (in.mac_length && in.mac_length->value.si > 0.0) {
    share = std::abs(answer.arm_change.value.si) / in.mac_length->value.si;
  }
  answer.negligible = light && share && *share < k_negligible_of_mac;
  std::string words = fmt::format(
      "mass changes by {}{}", signed_pencil(answer.mass_change.value.si, *u.mass),
      in.not_yet_counted ? ", with what was not yet counted " +
                               signed_pencil((answer.mass_change.value + earlier).si, *u.mass)
                         : "");
  words += fmt::format(" ({} {})", light ? "not above" : "above", pencil(bound.si, *u.mass));
  words += share ? fmt::format(", centre of gravity by {:.3f} % of the mean chord ({} 0.05 %)",
                               *share * 100.0, *share < k_negligible_of_mac ? "below" : "not below")
                 : std::string(", centre of gravity not judged: the mean chord is not entered");
  words += answer.negligible ? ": negligible; add it to the sum of what is not yet counted"
                             : ": revise empty mass and centre of gravity";
  answer.change_in_words = words;
}

}  // namespace

quantity::Mass minimum_fuel(quantity::Power power) {
  constexpr double k_watt_a_horsepower = 550.0 * 0.3048 * 0.45359237 * 9.80665;
  return quantity::pounds(power.si / k_watt_a_horsepower / 2.0);
}

Checked<MassBalanceAnswer> mass_balance(const MassBalanceInput& input,
                                        const describe::Context& context) {
  Problems problems;
  check_fields(input, problems);
  if (!problems.empty()) return Fail(std::move(problems));
  const Units u{&quantity::typed_unit(input.empty_mass, context.units),
                &quantity::typed_unit(input.empty_arm, context.units)};
  MassBalanceAnswer answer;
  const Body empty = apply_changes(input, u, answer.working);
  if (!(empty.mass > 0.0)) {
    return Fail(Problems{problem("changes", Kind::conflict, "more is removed than there was",
                                 "an empty mass above 0 afterwards")});
  }
  answer.working.push_back(fmt::format("empty after: {} / {} = {}", moment_words(empty.moment, u),
                                       pencil(empty.mass, *u.mass),
                                       signed_pencil(empty.arm(), *u.arm)));
  const double arm_resolution = std::min(input.empty_arm.resolution_si, 0.01 * u.arm->factor);
  double mass_resolution = input.empty_mass.resolution_si;
  for (const MassChange& c : input.changes) {
    mass_resolution = std::min(mass_resolution, c.mass.resolution_si);
  }
  answer.empty_mass = {Mass{empty.mass}, mass_resolution, {}};
  answer.empty_arm = {Length{empty.arm()}, arm_resolution, {}};
  answer.empty_moment = {{empty.moment}, 0.1 * u.mass->factor * u.arm->factor, {}};
  answer.mass_change = {Mass{empty.mass - input.empty_mass.value.si}, mass_resolution, {}};
  answer.arm_change = {Length{empty.arm() - input.empty_arm.value.si}, arm_resolution, {}};
  answer.empty_of_mac = of_mac(input, empty.arm());
  judge_change(input, u, answer);
  weigh_all(input, empty, u, answer);
  for (const LoadingAnswer& one : answer.loadings) {
    answer.working.push_back(one.name + ": " + one.in_words);
  }
  conclude(answer);
  return answer;
}

}  // namespace wm::mechanics
