#include "ignition/breakdown.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "describe/fields.hpp"
#include "ignition/detail/problem.hpp"
#include "ignition/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::ignition {
namespace {

using detail::problem;
using quantity::Length;
using quantity::pencil;
using quantity::PressureAbsolute;
using quantity::Temperature;
using quantity::Voltage;

constexpr double k_b = 365.0;  ///< V/(torr cm)
constexpr double k_c = 1.18;   ///< ln(A / ln(1 + 1/gamma)), rounded as in the notes
constexpr double k_atmosphere = 101325.0;
constexpr double k_torr_per_atmosphere = 760.0;
constexpr double k_reference_kelvin = 293.15;

/// x of Paschen's law, torr cm.
double torr_cm(Length gap, double density) {
  return density * k_torr_per_atmosphere * gap.si * 100.0;
}

std::string kilovolts(Voltage v) { return fmt::format("{:.3g} kV", v.si / 1000.0); }

class Reserve {
 public:
  Reserve(const SparkReserveInput& in, const describe::Context& context)
      : in_(in), context_(context) {}

  Checked<SparkReserveAnswer> run() {
    find_density();
    if (!problems_.empty()) return Fail(std::move(problems_));
    plug();
    mate();
    path();
    if (!problems_.empty()) return Fail(std::move(problems_));
    conclude();
    return std::move(out_);
  }

 private:
  void miss(const char* path, const char* what, const char* expected, const char* example) {
    problems_.push_back(problem(path, Kind::missing, what, expected, example));
  }

  void find_density() {
    const bool chamber = in_.chamber_pressure.has_value();
    const bool manifold = in_.manifold_pressure.has_value();
    if (chamber && manifold) {
      problems_.push_back(problem("manifold_pressure", Kind::conflict,
                                  "the pressure at the spark and a manifold pressure as well",
                                  "one of the two ways"));
      return;
    }
    if (!chamber && !manifold) {
      miss("chamber_pressure", "the pressure at the spark is not known",
           "it, or manifold pressure and compression ratio", "6 atm");
      return;
    }
    if (chamber) {
      const auto t = in_.chamber_temperature.value_or(Temperature{k_reference_kelvin});
      out_.density = relative_density(*in_.chamber_pressure, t);
      out_.working.push_back(fmt::format("density = {} / 760 torr x 293.15 / {} = {}",
                                         torr(*in_.chamber_pressure), pencil(t.si),
                                         pencil(out_.density)));
      return;
    }
    if (!in_.compression_ratio) {
      miss("compression_ratio", "a manifold pressure needs the compression ratio",
           "the engine's compression ratio", "8.5");
      return;
    }
    const auto t = in_.charge_temperature.value_or(Temperature{k_reference_kelvin});
    out_.density = relative_density(*in_.manifold_pressure, t) * *in_.compression_ratio;
    out_.working.push_back(fmt::format("density = {} / 760 torr x 293.15 / {} x {} = {}",
                                       torr(*in_.manifold_pressure), pencil(t.si),
                                       pencil(*in_.compression_ratio), pencil(out_.density)));
    out_.notes.emplace_back(
        "the full compression ratio is counted: the spark comes before top centre, at less");
  }

  static std::string torr(PressureAbsolute p) {
    return pencil(p.si / k_atmosphere * k_torr_per_atmosphere) + " torr";
  }

  std::optional<Voltage> townsend(Length gap, double density, const char* at) {
    auto v = breakdown_townsend(gap, density);
    if (v) {
      const double x = torr_cm(gap, density);
      out_.working.push_back(fmt::format(
          "x = {} x 760 torr x {} cm = {} torr cm; 365 x {} / (1.18 "
          "+ ln {}) = {}",
          pencil(density), pencil(gap.si * 100.0), pencil(x), pencil(x), pencil(x), kilovolts(*v)));
      return *v;
    }
    Problem p = v.error();
    p.path = at;
    problems_.push_back(std::move(p));
    return std::nullopt;
  }

  void plug() {
    out_.townsend = townsend(in_.gap.value, out_.density, "gap");
    out_.linear = breakdown_linear(in_.gap.value, out_.density);
    out_.asked = out_.townsend;
  }

  void mate() {
    if (!in_.mate_gap) return;
    const auto pressure = in_.mate_pressure.value_or(PressureAbsolute{k_atmosphere});
    const double density = relative_density(pressure, Temperature{k_reference_kelvin});
    out_.mate = townsend(in_.mate_gap->value, density, "mate_gap");
    if (out_.mate && out_.asked) out_.sum = *out_.asked + *out_.mate;
    out_.notes.emplace_back(
        "both plugs of a double-ended coil hang in series: the coil must give the sum. The mate, "
        "on its exhaust stroke, is counted as cold: that is the most it can ask");
  }

  void path() {
    if (!in_.air_path) return;
    const Length altitude = in_.altitude ? in_.altitude->value : Length{};
    const double density =
        relative_density(standard_pressure(altitude), Temperature{k_reference_kelvin});
    out_.path_townsend = townsend(in_.air_path->value, density, "air_path");
    out_.path_linear = breakdown_linear(in_.air_path->value, density);
    if (out_.path_townsend) out_.path_holds = std::min(*out_.path_townsend, *out_.path_linear);
    out_.sphere_factor = sphere_gap_factor(context_.table("sphere-gap-factor"), density);
    out_.notes.emplace_back(
        "an air path that holds at sea level may flash over at altitude; hot gas, dirt, moisture "
        "and sharp edges lower it further, by 10 to 30 % for edges (common practice, no source)");
  }

  void conclude() {
    out_.notes.emplace_back(
        "uniform field; at 1 cm and sea level the Townsend form lies 13 % above what is measured "
        "(30.4 to 31.8 kV). Advice, no verdict");
    const Voltage needed = out_.sum ? *out_.sum : out_.asked.value_or(Voltage{});
    out_.in_words =
        fmt::format("the {} for {}", out_.sum ? "two gaps ask" : "gap asks", kilovolts(needed));
    if (in_.available) {
      out_.reserve = in_.available->value - needed;
      const double share = out_.reserve->si / in_.available->value.si;
      out_.in_words +=
          fmt::format(" of {}: {} {} ({:.0f} %)", kilovolts(in_.available->value),
                      out_.reserve->si < 0 ? "short by" : "reserve",
                      kilovolts(Voltage{std::abs(out_.reserve->si)}), std::abs(share) * 100.0);
    }
    if (out_.path_holds) {
      out_.in_words += fmt::format("; the air path holds about {}", kilovolts(*out_.path_holds));
      // A path is stressed by what the gap asks for, not by all the coil could give.
      if (*out_.path_holds < needed) out_.in_words += ", less than the spark asks for";
    }
  }

  const SparkReserveInput& in_;
  const describe::Context& context_;
  Problems problems_;
  SparkReserveAnswer out_;
};

}  // namespace

double relative_density(PressureAbsolute pressure, Temperature temperature) {
  return pressure.si / k_atmosphere * k_reference_kelvin / temperature.si;
}

PressureAbsolute standard_pressure(Length altitude) {
  return {k_atmosphere * std::pow(1.0 - 0.0065 * altitude.si / 288.15, 5.2559)};
}

Result<Voltage> breakdown_townsend(Length gap, double density) {
  const double x = torr_cm(gap, density);
  if (!(x >= std::exp(1.0 - k_c))) {
    return Fail(
        Kind::not_applicable,
        fmt::format("pressure times gap is {} torr cm, below the minimum of the law", pencil(x)),
        "0.835 torr cm or more", "0.018 in at 1 atm");
  }
  return Voltage{k_b * x / (k_c + std::log(x))};
}

Voltage breakdown_linear(Length gap, double density) {
  return {1000.0 * (30.0 * density * gap.si * 100.0 + 1.35)};
}

std::optional<double> sphere_gap_factor(const describe::Table* table, double density) {
  if (table == nullptr) return std::nullopt;
  std::optional<std::pair<double, double>> below;
  for (const auto& row : table->rows) {
    const auto at = quantity::parse_number(row[0]);
    const auto factor = quantity::parse_number(row[1]);
    if (!at || !factor) return std::nullopt;
    if (std::abs(*at - density) < 1e-9) return *factor;
    if (*at > density) {
      if (!below) return std::nullopt;
      return below->second +
             (*factor - below->second) * (density - below->first) / (*at - below->first);
    }
    below = std::pair{*at, *factor};
  }
  return std::nullopt;
}

Checked<SparkReserveAnswer> spark_reserve(const SparkReserveInput& in,
                                          const describe::Context& context) {
  return Reserve(in, context).run();
}

std::string_view describe(describe::Fields<SparkReserveInput>& f) {
  using In = SparkReserveInput;
  const Length least{1e-5};
  const Length most = quantity::inches(2);
  const PressureAbsolute thin{100.0};
  const PressureAbsolute thick{2e7};
  f.has<&In::gap>("gap", "Gap of the plug").needed("0.018 in").between(least, most);
  f.has<&In::chamber_pressure>("chamber_pressure", "Pressure at the spark, absolute")
      .example("6 atm")
      .between(thin, thick);
  f.has<&In::chamber_temperature>("chamber_temperature", "Temperature of the gas at the spark")
      .help("Left out: the pressure is taken as if at 20 degC, the most the gap can ask.")
      .between(quantity::celsius(-60), quantity::celsius(1500));
  f.has<&In::manifold_pressure>("manifold_pressure", "Manifold pressure, absolute")
      .between(thin, thick);
  f.has<&In::charge_temperature>("charge_temperature", "Temperature of the charge in the manifold")
      .between(quantity::celsius(-60), quantity::celsius(200));
  f.has<&In::compression_ratio>("compression_ratio", "Compression ratio").between(1.0, 25.0);
  f.has<&In::available>("available", "Voltage that the ignition can give")
      .example("20 kV")
      .between(quantity::volts(100), quantity::volts(100000));
  f.has<&In::mate_gap>("mate_gap", "Gap of the mate on the same coil").between(least, most);
  f.has<&In::mate_pressure>("mate_pressure", "Pressure in the mate's cylinder, absolute")
      .between(thin, thick);
  f.has<&In::air_path>("air_path", "Shortest way through air in distributor or plug well")
      .example("3 mm")
      .between(least, most);
  f.has<&In::altitude>("altitude", "Altitude")
      .example("10000 ft")
      .between(quantity::feet(-2000), quantity::feet(36000));
  return "spark-reserve-input";
}

std::string_view describe(describe::Fields<SparkReserveAnswer>& f) {
  using A = SparkReserveAnswer;
  f.has<&A::density>("density", "Density, air at 760 torr and 20 degC being 1");
  f.has<&A::townsend>("townsend", "Breakdown, Townsend's form");
  f.has<&A::linear>("linear", "Breakdown, linear form");
  f.has<&A::asked>("asked", "What the gap asks for");
  f.has<&A::mate>("mate", "What its mate asks for");
  f.has<&A::sum>("sum", "Both together");
  f.has<&A::reserve>("reserve", "Reserve");
  f.has<&A::path_townsend>("path_townsend", "Air path, Townsend's form");
  f.has<&A::path_linear>("path_linear", "Air path, linear form");
  f.has<&A::path_holds>("path_holds", "Air path holds about");
  f.has<&A::sphere_factor>("sphere_factor", "Factor of a sphere gap at this density");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "spark-reserve-answer";
}

}  // namespace wm::ignition
