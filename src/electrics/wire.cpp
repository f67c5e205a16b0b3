#include "electrics/wire.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "electrics/detail/figures.hpp"
#include "electrics/detail/problem.hpp"
#include "tables/electrics/wire_aircraft_copper.hpp"
#include "tables/electrics/wire_materials.hpp"
#include "tables/electrics/wire_metric.hpp"

namespace wm::electrics {
namespace {

using detail::figure;
using detail::problem;

constexpr double k_circ_mil_mm2 = 5.067075e-4;  // (0.001 in)^2 pi / 4, by definition
constexpr double k_thousand_feet = 304.8;
constexpr double k_reference_celsius = 20.0;
constexpr double k_page_aluminium_offset = 238.1;

std::size_t metal_row(Metal metal) { return metal == Metal::copper ? 0 : 1; }

double offset(Metal metal) {
  return figure(tables::wire_materials, metal_row(metal), "offset").value_or(0.0);
}

double heating(Metal metal) {
  return figure(tables::wire_materials, metal_row(metal), "heating").value_or(0.0);
}

struct MetricColumn {
  CableKind kind;
  std::string_view column;
  std::string_view words;
};
constexpr std::array<MetricColumn, 5> k_metric{{
    {CableKind::class_2_plain, "class-2-plain", "class 2 plain copper"},
    {CableKind::class_2_tinned, "class-2-tinned", "class 2 tinned copper"},
    {CableKind::class_5_plain, "class-5-plain", "class 5 plain copper"},
    {CableKind::class_5_tinned, "class-5-tinned", "class 5 tinned copper"},
    {CableKind::class_2_aluminium, "aluminium", "class 2 aluminium"},
}};

bool is_aluminium(CableKind kind) {
  return kind == CableKind::class_2_aluminium || kind == CableKind::makers_aluminium;
}

Problem no_size(const std::string& path, const describe::Table& table, const std::string& typed) {
  return problem(path + "/size", typed.empty() ? Kind::missing : Kind::not_found,
                 typed.empty() ? "the size is not said"
                               : fmt::format("{} has no size \"{}\"", table.title, typed),
                 detail::listed(table), std::string(table.rows[table.rows.size() / 2].front()));
}

Result<ConductorFigures> aircraft(const Conductor& c, const std::string& path) {
  const auto& table = tables::wire_aircraft_copper;
  const auto row = detail::row_of(table, plain_size(c.size));
  if (!row) return Fail(no_size(path, table, c.size));
  ConductorFigures out;
  out.size = plain_size(c.size);
  out.in_words = fmt::format("No. {} copper", out.size);
  out.ohm_per_metre = figure(table, *row, "most-ohm").value_or(0.0) / k_thousand_feet;
  out.area_mm2 = figure(table, *row, "area").value_or(0.0) * k_circ_mil_mm2;
  out.source = detail::cited(table);
  out.read = detail::provenance(table, *row) == "read";
  return out;
}

Result<ConductorFigures> metric(const Conductor& c, const std::string& path) {
  const auto& table = tables::wire_metric;
  const auto row = detail::row_of(table, plain_size(c.size));
  if (!row) return Fail(no_size(path, table, c.size));
  const auto* which = std::find_if(k_metric.begin(), k_metric.end(),
                                   [&](const auto& m) { return m.kind == c.kind; });
  const auto ohm_per_km = figure(table, *row, which->column);
  if (!ohm_per_km) {
    return Fail(problem(path + "/size", Kind::not_found,
                        fmt::format("{} mm2: no figure for {}", plain_size(c.size), which->words),
                        "10 mm2 or larger, or the maker's resistance for a length", "16 mm2"));
  }
  ConductorFigures out;
  out.size = plain_size(c.size);
  out.in_words = fmt::format("{} mm2 {}", out.size, which->words);
  out.ohm_per_metre = *ohm_per_km / 1000.0;
  out.area_mm2 = quantity::parse_number(out.size).value();
  out.source = detail::cited(table) + " (advice)";
  return out;
}

Result<ConductorFigures> makers(const Conductor& c, const std::string& path) {
  if (!c.resistance) {
    return Fail(problem(path + "/resistance", Kind::missing,
                        "there is no table for this conductor and its maker's figure is not there",
                        "the maker's resistance for a length at 20 degC", "1.26 mohm/ft"));
  }
  ConductorFigures out;
  out.size = plain_size(c.size);
  out.in_words = c.size.empty() ? "cable by its maker's figure" : c.size + " by its maker's figure";
  return out;
}

bool is_makers(CableKind kind) {
  return kind == CableKind::makers_copper || kind == CableKind::makers_aluminium;
}

Result<ConductorFigures> looked_up(const Conductor& c, const std::string& path) {
  if (is_makers(c.kind)) return makers(c, path);
  return c.kind == CableKind::aircraft_copper ? aircraft(c, path) : metric(c, path);
}

}  // namespace

std::string plain_size(std::string_view typed) {
  std::string out;
  for (const char ch : typed) {
    if (ch != ' ') out += (ch >= 'A' && ch <= 'Z') ? static_cast<char>(ch - 'A' + 'a') : ch;
  }
  for (const std::string_view head : {"awg", "no.", "no", "#"}) {
    if (out.starts_with(head)) out.erase(0, head.size());
  }
  for (const std::string_view tail : {"awg", "mm2"}) {
    if (out.ends_with(tail)) out.erase(out.size() - tail.size());
  }
  if (out.size() == 3 && out.ends_with("/0") && out[0] >= '1' && out[0] <= '4') {
    out.assign(static_cast<std::size_t>(out[0] - '0'), '0');
  }
  return out;
}

Result<ConductorFigures> figures_of(const Conductor& conductor, const std::string& path) {
  auto out = looked_up(conductor, path);
  if (!out) return out;
  out->metal = is_aluminium(conductor.kind) ? Metal::aluminium : Metal::copper;
  if (conductor.resistance) {
    // What the owner enters wins over the table.
    out->ohm_per_metre = conductor.resistance->value.si;
    out->source = "resistance for a length: entered";
    out->read = out->entered = true;
  }
  return out;
}

double warm_factor(Metal metal, double celsius) {
  const double b = offset(metal);
  return (b + celsius) / (b + k_reference_celsius);
}

double warm_factor_of_page(Metal metal, double celsius) {
  if (metal == Metal::copper) return warm_factor(metal, celsius);
  return (k_page_aluminium_offset + celsius) / (k_page_aluminium_offset + k_reference_celsius);
}

quantity::Length gauge_diameter(int gauge) {
  return quantity::inches(0.005 * std::pow(92.0, (36.0 - gauge) / 39.0));
}

double resistivity(Metal metal) {
  return figure(tables::wire_materials, metal_row(metal), "resistivity").value_or(0.0);
}

double adiabatic_celsius(const ConductorFigures& wire, quantity::Current current,
                         quantity::Duration time, double from_celsius) {
  const double ks = heating(wire.metal) * wire.area_mm2.value_or(0.0);
  const double b = offset(wire.metal);
  return (from_celsius + b) * std::exp(current.si * current.si * time.si / (ks * ks)) - b;
}

double adiabatic_seconds(const ConductorFigures& wire, quantity::Current current,
                         double from_celsius, double to_celsius) {
  const double ks = heating(wire.metal) * wire.area_mm2.value_or(0.0);
  const double b = offset(wire.metal);
  return ks * ks * std::log((to_celsius + b) / (from_celsius + b)) / (current.si * current.si);
}

std::string_view describe(describe::Choices<CableKind>& c) {
  c.has(CableKind::aircraft_copper, "aircraft-copper",
        "aircraft copper, tin-plated, No. 24 to 0000")
      .has(CableKind::class_2_plain, "class-2-plain", "metric, class 2, plain copper")
      .has(CableKind::class_2_tinned, "class-2-tinned", "metric, class 2, tinned copper")
      .has(CableKind::class_5_plain, "class-5-plain", "metric, class 5 (flexible), plain copper")
      .has(CableKind::class_5_tinned, "class-5-tinned", "metric, class 5 (flexible), tinned copper")
      .has(CableKind::class_2_aluminium, "class-2-aluminium", "metric, class 2, aluminium")
      .has(CableKind::makers_copper, "makers-copper", "copper, resistance by its maker")
      .has(CableKind::makers_aluminium, "makers-aluminium", "aluminium, resistance by its maker");
  return "cable-kind";
}

std::string_view describe(describe::Choices<Metal>& c) {
  c.has(Metal::copper, "copper", "copper").has(Metal::aluminium, "aluminium", "aluminium");
  return "metal";
}

std::string_view describe(describe::Fields<Conductor>& f) {
  using C = Conductor;
  f.has<&C::kind>("kind", "Kind of cable");
  f.has<&C::size>("size", "Size")
      .example("10")
      .help("Wire size such as 10 or 2/0, or mm2 for metric cable.");
  f.has<&C::resistance>("resistance", "Its maker's resistance for a length, at 20 degC")
      .above(quantity::ResistancePerLength{0})
      .at_most(quantity::ResistancePerLength{1000})
      .help("Wins over the table.");
  return "conductor";
}

}  // namespace wm::electrics
