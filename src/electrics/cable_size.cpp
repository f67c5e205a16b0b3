#include "electrics/cable_size.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "electrics/cable_temperature.hpp"
#include "electrics/detail/figures.hpp"
#include "electrics/detail/problem.hpp"
#include "quantity/as_typed.hpp"
#include "tables/electrics/wire_aircraft_copper.hpp"
#include "tables/electrics/wire_metric.hpp"
#include "tables/electrics/wire_protection.hpp"

namespace wm::electrics {
namespace {

using detail::problem;
using quantity::pencil;

constexpr double k_reference_celsius = 20.0;
constexpr std::string_view k_least_aluminium = "8";
constexpr std::size_t k_sizes_larger = 2;
constexpr double k_least_aluminium_mm2 = 8.37;  // No. 8, by the gauge formula

class Sizing {
 public:
  explicit Sizing(const CableSizeInput& in) : in_(in) {}

  Checked<CableSizeAnswer> run() {
    Problems problems;
    if (in_.kind == CableKind::makers_copper || in_.kind == CableKind::makers_aluminium) {
      problems.push_back(problem("kind", Kind::not_applicable,
                                 "a maker's cable has no row of sizes to choose from",
                                 "judge one cable with cable-drop", "aircraft-copper"));
    }
    auto limit =
        drop_limit({in_.nominal, in_.duty, in_.role, in_.regulated, in_.limit, in_.limit_source});
    if (!limit) problems.push_back(limit.error());
    if (in_.surroundings) {
      if (auto p = check(*in_.surroundings, "surroundings")) problems.push_back(std::move(*p));
    }
    if (!problems.empty()) return Fail(std::move(problems));
    limit_ = *limit;
    out_.limit = quantity::Voltage{limit_.volts};
    out_.limit_from = limit_.source;
    return search();
  }

 private:
  std::vector<std::string> sizes() const {
    const bool aircraft = in_.kind == CableKind::aircraft_copper;
    const auto& table = aircraft ? tables::wire_aircraft_copper : tables::wire_metric;
    std::vector<std::string> all;
    for (const auto& row : table.rows) all.emplace_back(row.front());
    return all;
  }

  Checked<CableSizeAnswer> search() {
    const auto all = sizes();
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto wire = figures_of({in_.kind, all[i], {}}, "kind");
      if (!wire) continue;  // no figure for aluminium this small
      if (!fits(*wire)) continue;
      std::size_t chosen = i;
      if (in_.metal == Metal::aluminium && in_.kind == CableKind::aircraft_copper) {
        chosen = aluminium(all, i);
        if (chosen >= all.size()) break;
      }
      finish(*wire, all[chosen]);
      return std::move(out_);
    }
    return Fail(Problems{none_fits(all)});
  }

  Problem none_fits(const std::vector<std::string>& all) const {
    if (!out_.tried.empty() && out_.tried.back().drop_met && !out_.tried.back().allowed) {
      return problem(
          "surroundings", Kind::not_applicable,
          "the wires of the curves are too small, and for No. 8 and larger there is only "
          "table 11-9: up to 70 degC, 9 wires, 20 % loading",
          "a run apart from the bundle (1 wire), or the wire maker's figure",
          R"({"ambient": "50 degC", "rating": "150 degC", "wires": 1})");
    }
    return problem(
        "current", Kind::not_found,
        fmt::format("no size of the table is large enough: {} would lose {} V", all.back(),
                    pencil(out_.tried.empty() ? 0.0 : out_.tried.back().drop.si)),
        "a shorter run, a smaller current, or a maker's cable judged with cable-drop", "100 A");
  }

  double celsius_of(const CurrentAllowed& allowed) {
    if (in_.temperature) return in_.temperature->value.si - k_zero_celsius;
    if (!in_.surroundings) return k_reference_celsius;
    const auto t = estimated_celsius(*in_.surroundings, in_.current.value.si, allowed);
    return t.value_or(in_.surroundings->rating.value.si - k_zero_celsius);
  }

  bool fits(const ConductorFigures& wire) {
    CurrentAllowed allowed;
    if (in_.surroundings) allowed = current_allowed(wire, in_.kind, *in_.surroundings);
    const double celsius = celsius_of(allowed);
    const double warm = std::max(1.0, warm_factor(wire.metal, celsius));
    const double run =
        in_.length.value.si + (in_.return_length ? in_.return_length->value.si : 0.0);
    SizeTried t;
    t.size = wire.size;
    t.drop = {wire.ohm_per_metre * warm * run * in_.current.value.si};
    t.drop_met = against(t.drop.si, limit_.volts, false) == Against::within;
    const auto standing = stands(in_.current.value.si, allowed);
    const bool current_met = !in_.surroundings || carries(standing);
    if (in_.surroundings && standing != CurrentStanding::no_figure) t.current_met = current_met;
    if (allowed.figure()) t.allowed = quantity::Current{*allowed.figure()};
    t.why = fmt::format("drop {} V at {} degC{}{}", quantity::significant(t.drop.si, 3),
                        pencil(celsius), t.drop_met ? "" : ": over",
                        in_.surroundings ? fmt::format("; current: {}", words(standing)) : "");
    out_.advice = limit_.advice || !wire.read || standing == CurrentStanding::within_curves;
    standing_ = standing;
    out_.tried.push_back(t);
    out_.working.push_back(fmt::format("{}: {}", wire.in_words, t.why));
    last_ = allowed;
    return t.drop_met && current_met;
  }

  /// A size of the aircraft table without a figure is never chosen for its lack of one. Metric
  /// cables have no figures at all: there the answer says that the current was not judged.
  bool carries(CurrentStanding s) const {
    if (s == CurrentStanding::no_figure) return in_.kind != CableKind::aircraft_copper;
    return s == CurrentStanding::within_table || s == CurrentStanding::within_curves;
  }

  /// AC 43.13-1B page 11-23: two sizes larger than the copper wire, not below No. 8.
  std::size_t aluminium(const std::vector<std::string>& all, std::size_t copper) {
    const auto least = static_cast<std::size_t>(
        std::find(all.begin(), all.end(), k_least_aluminium) - all.begin());
    out_.working.push_back(
        fmt::format("aluminium: two sizes larger than No. {}, not below No. 8", all[copper]));
    aluminium_least_ = copper + k_sizes_larger < least;
    return std::max(copper + k_sizes_larger, least);
  }

  void finish(const ConductorFigures& wire, const std::string& size) {
    const SizeTried& last = out_.tried.back();
    out_.size = size;
    bind();
    const bool as_aluminium = size != wire.size;
    if (!as_aluminium) out_.drop = last.drop;
    out_.in_words = fmt::format(
        "{}: {}", as_aluminium ? "No. " + size + " aluminium" : wire.in_words, binding_words());
    out_.notes = last_.notes;
    if (!in_.surroundings) {
      out_.notes.emplace_back("Current not judged: the surroundings of the wire are not there.");
    } else if (standing_ == CurrentStanding::no_figure) {
      out_.notes.emplace_back("Current not judged: there is no figure for this wire here.");
    }
    metal_notes(wire, as_aluminium, last);
    protect(wire, as_aluminium);
  }

  void metal_notes(const ConductorFigures& wire, bool as_aluminium, const SizeTried& copper) {
    if (!as_aluminium && wire.metal == Metal::copper) return;
    if (as_aluminium) {
      out_.notes.push_back(fmt::format(
          "Resistance of aluminium wire: its table was not obtained. The copper wire it stands for "
          "(No. {}) would lose {} V; judge the aluminium with its maker's figure in cable-drop.",
          wire.size, quantity::significant(copper.drop.si, 3)));
    }
    if (!as_aluminium && *wire.area_mm2 < k_least_aluminium_mm2) {
      out_.notes.emplace_back("Below No. 8 no aluminium (AC 43.13-1B page 11-23).");
    }
    out_.notes.emplace_back(
        "Aluminium: not on engine-mounted accessories nor where it vibrates, corrodes or is often "
        "disconnected, discouraged for runs under 3 ft (FAA handbook text, second hand).");
  }

  /// The rule that turned the last smaller size away.
  void bind() {
    if (aluminium_least_) {
      out_.binding = SizeRule::aluminium;
    } else if (out_.tried.size() > 1) {
      const SizeTried& before = out_.tried[out_.tried.size() - 2];
      out_.binding = before.drop_met ? SizeRule::current : SizeRule::drop;
    }
  }

  std::string binding_words() const {
    switch (out_.binding) {
      case SizeRule::drop:
        return "the voltage drop binds";
      case SizeRule::current:
        return "the current binds";
      case SizeRule::aluminium:
        return "the least size of aluminium binds";
      case SizeRule::none:
        break;
    }
    return "the smallest size of the table is enough";
  }

  void protect(const ConductorFigures& wire, bool as_aluminium) {
    if (in_.kind != CableKind::aircraft_copper || as_aluminium) {
      out_.notes.emplace_back(
          "Breakers and fuses: table 11-3 speaks of copper aircraft wire only.");
      return;
    }
    const auto p = protection_of(wire.size);
    if (p.breaker) out_.breaker = quantity::Current{*p.breaker};
    if (p.fuse) out_.fuse = quantity::Current{*p.fuse};
    if (!p.breaker && !p.fuse) {
      out_.notes.push_back(fmt::format("Table 11-3 has no protection for No. {}.", wire.size));
      return;
    }
    if (in_.current.value.si > std::max(p.breaker.value_or(0), p.fuse.value_or(0))) {
      out_.notes.emplace_back(
          "The load is above the largest breaker or fuse that table 11-3 has "
          "for this wire: take the size whose protection carries the load.");
    }
    out_.notes.emplace_back(
        "The breaker must open before the rating of the wire, or the sum of "
        "the loads, is passed, whichever is lower; it sits close to the bus "
        "(AC 43.13-1B par. 11-47, 11-48).");
  }

  const CableSizeInput& in_;
  DropLimit limit_;
  CurrentAllowed last_;
  CurrentStanding standing_{CurrentStanding::no_figure};
  bool aluminium_least_{};
  CableSizeAnswer out_;
};

}  // namespace

Protection protection_of(std::string_view size) {
  const auto& table = tables::wire_protection;
  const auto row = detail::row_of(table, size);
  if (!row) return {};
  return {detail::figure(table, *row, "breaker"), detail::figure(table, *row, "fuse")};
}

Checked<CableSizeAnswer> cable_size(const CableSizeInput& input,
                                    const describe::Context& /*context*/) {
  return Sizing(input).run();
}

}  // namespace wm::electrics
