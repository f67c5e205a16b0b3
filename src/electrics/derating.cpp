#include "electrics/derating.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "electrics/detail/figures.hpp"
#include "electrics/detail/problem.hpp"
#include "quantity/as_typed.hpp"
#include "tables/electrics/wire_aircraft_copper.hpp"
#include "tables/electrics/wire_altitude_factor.hpp"
#include "tables/electrics/wire_bundle_factor.hpp"
#include "tables/electrics/wire_free_air.hpp"

namespace wm::electrics {
namespace {

using quantity::pencil;

constexpr double k_lowest_rise = 30.0;  // kelvin; first and last point of the curves
constexpr double k_highest_rise = 250.0;
constexpr double k_curve_doubt = 0.03;   // worst miss of the fit against independent readings
constexpr double k_factor_doubt = 0.02;  // no reading doubt is stated: taken
constexpr double k_least_loading = 0.2;
constexpr double k_most_wires_at_any_loading = 19.0;

// Basis of table 11-9.
constexpr double k_table_ambient = 70.0;
constexpr std::int64_t k_table_wires_small = 33;
constexpr std::int64_t k_table_wires_large = 9;
constexpr quantity::Length k_table_altitude = quantity::feet(60000);

constexpr std::array<std::string_view, 5> k_loadings{"at-20", "at-40", "at-60", "at-80", "at-100"};
const std::vector<double>& loadings() {
  static const std::vector<double> shares{0.2, 0.4, 0.6, 0.8, 1.0};
  return shares;
}

/// Factor of one row of the table at a loading.
std::optional<double> at_row(std::size_t row, double loading) {
  std::vector<double> xs;
  std::vector<double> ys;
  for (std::size_t i = 0; i < k_loadings.size(); ++i) {
    if (const auto f = detail::figure(tables::wire_bundle_factor, row, k_loadings.at(i))) {
      xs.push_back(loadings()[i]);
      ys.push_back(*f);
    }
  }
  return detail::between(xs, ys, loading);
}

bool is_small(std::string_view size) { return free_air_curve(size).has_value(); }

double feet_of(quantity::Length l) { return l.si / quantity::feet(1).si; }

void from_table(const ConductorFigures& wire, const Surroundings& where, CurrentAllowed& out) {
  const double ambient = where.ambient.value.si - k_zero_celsius;
  const double rating = where.rating.value.si - k_zero_celsius;
  const auto most_wires = is_small(wire.size) ? k_table_wires_small : k_table_wires_large;
  const auto amperes = bundle_column(wire.size, rating);
  const bool inside = ambient <= k_table_ambient + 1e-9 && where.wires <= most_wires &&
                      (where.wires == 1 || where.loading.si <= k_least_loading + 1e-12) &&
                      where.altitude <= k_table_altitude;
  if (amperes && inside) {
    out.table = amperes;
    out.working.push_back(fmt::format(
        "table 11-9, No. {}, at or below {} degC: {} A (70 degC ambient, {} wires at 20 %, 60,000 "
        "ft)",
        wire.size, pencil(rating), pencil(*amperes), most_wires));
    return;
  }
  out.notes.push_back(
      amperes ? fmt::format("Table 11-9 does not speak of these surroundings: it holds up to 70 "
                            "degC, {} wires, 20 % loading, 60,000 ft.",
                            most_wires)
              : "Table 11-9 has no column for a wire rated below 105 degC.");
}

void from_curves(const ConductorFigures& wire, const Surroundings& where, CurrentAllowed& out) {
  const auto curve = free_air_curve(wire.size);
  if (!curve) {
    out.notes.push_back(fmt::format(
        "No free-air points were obtained for No. {}: nothing is guessed. Table 11-9 (bundles) is "
        "used where its basis covers the case; a wire alone carries more.",
        wire.size));
    return;
  }
  const double rise = where.rating.value.si - where.ambient.value.si;
  const auto bundle = bundle_factor(static_cast<double>(where.wires), where.loading);
  const auto altitude = altitude_factor(where.altitude);
  if (rise < k_lowest_rise || rise > k_highest_rise) {
    out.notes.push_back(fmt::format(
        "The free-air curves run from 30 to 250 K above ambient; this is {} K.", pencil(rise)));
    return;
  }
  if (!bundle || !altitude) {
    out.notes.emplace_back(
        bundle ? "The altitude factor ends at 60,000 ft."
               : "The bundle factors end at 19 wires, or at 33 wires with 20 % loading.");
    return;
  }
  out.free_air = free_air_current(*curve, rise);
  out.curves = *out.free_air * *altitude * *bundle;
  out.doubt = *out.curves - *out.free_air * (1 - k_curve_doubt) * (*altitude - k_factor_doubt) *
                                (where.wires > 1 ? *bundle - k_factor_doubt : 1.0);
  out.working.push_back(fmt::format("one wire in free air: {} A x ({} K)^{} = {} A",
                                    pencil(curve->k), pencil(rise), pencil(curve->m),
                                    pencil(*out.free_air)));
  out.working.push_back(fmt::format("x {} ({} ft) x {} ({} wires, {} %) = {} A, +-{} A",
                                    pencil(*altitude), pencil(feet_of(where.altitude)),
                                    pencil(*bundle), where.wires, pencil(100 * where.loading.si),
                                    pencil(*out.curves), pencil(out.doubt)));
}

}  // namespace

std::optional<FreeAirCurve> free_air_curve(std::string_view size) {
  const auto& table = tables::wire_free_air;
  const auto row = detail::row_of(table, size);
  if (!row) return std::nullopt;
  const double low = detail::figure(table, *row, "at-30").value_or(1.0);
  const double high = detail::figure(table, *row, "at-250").value_or(1.0);
  FreeAirCurve curve;
  curve.m = std::log(high / low) / std::log(k_highest_rise / k_lowest_rise);
  curve.k = low / std::pow(k_lowest_rise, curve.m);
  return curve;
}

double free_air_current(const FreeAirCurve& curve, double kelvin_above) {
  return curve.k * std::pow(kelvin_above, curve.m);
}

std::optional<double> bundle_factor(double wires, quantity::Fraction loading) {
  const double share = std::max(loading.si, k_least_loading);
  const auto counts = detail::numbers(tables::wire_bundle_factor, "wires");
  if (wires > k_most_wires_at_any_loading && share > k_least_loading + 1e-12) return std::nullopt;
  std::vector<double> xs;
  std::vector<double> ys;
  for (std::size_t row = 0; row < counts.size(); ++row) {
    if (const auto f = at_row(row, share)) {
      xs.push_back(counts[row]);
      ys.push_back(*f);
    }
  }
  return detail::between(xs, ys, wires);
}

std::optional<double> altitude_factor(quantity::Length altitude) {
  const auto& table = tables::wire_altitude_factor;
  return detail::between(detail::numbers(table, "altitude"), detail::numbers(table, "factor"),
                         std::max(0.0, feet_of(altitude)));
}

std::optional<double> bundle_column(std::string_view size, double rating_celsius) {
  const auto& table = tables::wire_aircraft_copper;
  const auto row = detail::row_of(table, size);
  if (!row || rating_celsius < 105.0 - 1e-9) return std::nullopt;
  // Only a row that was read can hold a wire back or let it pass.
  if (detail::provenance(table, *row) != "read") return std::nullopt;
  const auto* column = rating_celsius < 150.0 - 1e-9
                           ? "bundle-105"
                           : (rating_celsius < 200.0 - 1e-9 ? "bundle-150" : "bundle-200");
  return detail::figure(table, *row, column);
}

CurrentAllowed current_allowed(const ConductorFigures& wire, CableKind kind,
                               const Surroundings& where) {
  CurrentAllowed out;
  if (kind != CableKind::aircraft_copper) {
    out.notes.emplace_back(
        "The current tables speak of aircraft copper wire only; for this cable ask its maker.");
    return out;
  }
  from_curves(wire, where, out);
  from_table(wire, where, out);
  return out;
}

CurrentStanding stands(double amperes, const CurrentAllowed& allowed) {
  if (allowed.table && amperes <= *allowed.table) return CurrentStanding::within_table;
  if (allowed.curves) {
    if (amperes <= *allowed.curves - allowed.doubt) return CurrentStanding::within_curves;
    return amperes <= *allowed.curves + allowed.doubt ? CurrentStanding::too_close
                                                      : CurrentStanding::over;
  }
  return allowed.table ? CurrentStanding::over : CurrentStanding::no_figure;
}

std::string_view words(CurrentStanding s) {
  switch (s) {
    case CurrentStanding::within_table:
      return "within table 11-9";
    case CurrentStanding::within_curves:
      return "within what the curves allow (advice)";
    case CurrentStanding::too_close:
      return "too close to the curves to tell: take the next larger size";
    case CurrentStanding::over:
      return "more than this wire carries here";
    case CurrentStanding::no_figure:
      break;
  }
  return "no figure for this wire here: ask its maker";
}

std::optional<Problem> check(const Surroundings& where, const std::string& path) {
  if (where.rating.value.si > where.ambient.value.si) return std::nullopt;
  return detail::problem(path + "/rating", Kind::conflict,
                         "the wire's rating does not lie above the ambient temperature",
                         "a rating above the ambient temperature", "150 degC");
}

std::string_view describe(describe::Choices<CurrentStanding>& c) {
  c.has(CurrentStanding::within_table, "within-table", "within table 11-9")
      .has(CurrentStanding::within_curves, "within-curves", "within the curves (advice)")
      .has(CurrentStanding::too_close, "too-close", "too close to the curves to tell")
      .has(CurrentStanding::over, "over", "more than it carries")
      .has(CurrentStanding::no_figure, "no-figure", "no figure");
  return "current-standing";
}

std::string_view describe(describe::Fields<Surroundings>& f) {
  using S = Surroundings;
  f.has<&S::ambient>("ambient", "Temperature around the wire")
      .needed("50 degC")
      .between(quantity::celsius(-60), quantity::celsius(250));
  f.has<&S::rating>("rating", "Temperature rating of the wire")
      .needed("150 degC")
      .between(quantity::celsius(60), quantity::celsius(300));
  f.has<&S::wires>("wires", "Wires in the bundle").example("8").between(1.0, 500.0);
  f.has<&S::loading>("loading", "Share of the bundle's capacity in use")
      .example("60 %")
      .between(quantity::per_cent(0), quantity::per_cent(100));
  f.has<&S::altitude>("altitude", "Highest altitude")
      .example("20000 ft")
      .between(quantity::feet(-1500), quantity::feet(60000))
      .help("20,000 ft when left empty: our choice, to be on the cautious side.");
  return "wire-surroundings";
}

}  // namespace wm::electrics
