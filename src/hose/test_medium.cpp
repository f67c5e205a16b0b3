#include "hose/test_medium.hpp"

#include <algorithm>

namespace wm::hose {
namespace {

constexpr double k_zero_celsius = 273.15;

Problem problem(std::string path, Kind kind, std::string what, std::string expected,
                std::string example) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  p.example = std::move(example);
  return p;
}

constexpr std::string_view k_maker_page =
    "engineering-data page of a maker of hydraulic components";

}  // namespace

bool is_gas(TestMedium medium) {
  return medium == TestMedium::air || medium == TestMedium::nitrogen;
}

std::string_view words(TestMedium medium) {
  switch (medium) {
    case TestMedium::water:
      return "water";
    case TestMedium::hydraulic_oil:
      return "hydraulic oil";
    case TestMedium::light_oil:
      return "light oil";
    case TestMedium::other_liquid:
      return "the liquid entered";
    case TestMedium::fuel:
      return "fuel";
    case TestMedium::air:
      return "air";
    case TestMedium::nitrogen:
      return "nitrogen";
  }
  return "";
}

double water_density(quantity::Temperature at) {
  const double t = std::clamp(at.si - k_zero_celsius, 0.0, 100.0);
  const double above =
      999.83952 +
      t * (16.945176 +
           t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1.0 + 16.879850e-3 * t);
}

double water_expansion(quantity::Temperature at) {
  constexpr double k_half_step = 0.05;
  const double low = water_density({at.si - k_half_step});
  const double high = water_density({at.si + k_half_step});
  return (low - high) / (2.0 * k_half_step) / water_density(at);
}

Checked<MediumFigures> figures_of(TestMedium medium,
                                  std::optional<quantity::PressureDifference> bulk_modulus,
                                  std::optional<quantity::Fraction> expansion_per_k,
                                  quantity::Temperature at) {
  MediumFigures out;
  switch (medium) {
    case TestMedium::water:
      out = {{2.2e9, water_expansion(at)},
             "water: 2.2 GPa (IAPWS-95: 2.179 to 2.225), expansion from its density"};
      break;
    case TestMedium::hydraulic_oil:
      out = {{1.79e9, 8.3e-4}, "hydraulic oil: " + std::string(k_maker_page)};
      break;
    case TestMedium::light_oil:
      out = {{1.5e9, 7e-4},
             "light oil: " + std::string(k_maker_page) + "; its expansion from memory"};
      break;
    case TestMedium::other_liquid: {
      Problems problems;
      if (!bulk_modulus) {
        problems.push_back(problem("bulk_modulus", Kind::missing,
                                   "how stiff this liquid is, is not known",
                                   "its bulk modulus, from its data sheet", "1500 MPa"));
      }
      if (!expansion_per_k) {
        problems.push_back(problem("expansion", Kind::missing,
                                   "how much this liquid grows with heat is not known",
                                   "its growth in volume for each degC", "0.08 %"));
      }
      if (!problems.empty()) return Fail(std::move(problems));
      out.source = "the liquid's figures: entered";
      break;
    }
    default:
      return Fail(Problems{problem(
          "medium", Kind::refused, std::string(words(medium)) + " is no liquid for a proof test",
          "water, hydraulic oil, light oil, or another liquid that the liner accepts", "water")});
  }
  if (bulk_modulus) out.liquid.bulk_modulus_pa = bulk_modulus->si;
  if (expansion_per_k) out.liquid.expansion_per_k = expansion_per_k->si;
  if (bulk_modulus || expansion_per_k) out.source += "; figures entered win";
  return out;
}

std::string_view describe(describe::Choices<TestMedium>& c) {
  c.has(TestMedium::water, "water", "water")
      .has(TestMedium::hydraulic_oil, "hydraulic-oil", "hydraulic oil, red mineral")
      .has(TestMedium::light_oil, "light-oil", "light lubricating oil")
      .has(TestMedium::other_liquid, "other-liquid", "another liquid that the liner accepts")
      .has(TestMedium::fuel, "fuel", "fuel (refused)")
      .has(TestMedium::air, "air", "air (refused)")
      .has(TestMedium::nitrogen, "nitrogen", "nitrogen (refused)");
  return "test-medium";
}

}  // namespace wm::hose
