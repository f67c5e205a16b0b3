// Source:    fluids notes section 9: CHK-34 (an engineering-data page of a maker of hydraulic
//            components) and CHK-35 (computed there with scipy 1.10.1 from the closed forms);
//            hoses notes section 5, last paragraph (derived there), section 11 cases 6, 9, 12, 13
//            and 16, and section 3.1 (MIL-DTL-8790F 1.2, example number of NAVEDTRA 14018 p. 5-12).
// Tolerance: CHK-35: 0.5 % as stated there; else half a unit of the last printed digit.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>

#include "hose/declarations.hpp"
#include "hose/ends.hpp"
#include "hose/incoming.hpp"
#include "hose/proof.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

constexpr double k_degree = 3.14159265358979323846 / 180.0;
constexpr const char* k_half = "half a unit of the last printed digit";

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}

class ProofCases : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  ProofTestInput hose(const std::string& pressure, const std::string& bore,
                      const std::string& length) {
    ProofTestInput in;
    in.makers_proof = typed<quantity::PressureGauge>(pressure);
    in.bore = typed<quantity::Length>(bore);
    in.length = typed<quantity::Length>(length);
    return in;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

// ---------------------------------------------------------------- CHK-35, the whole table

struct EnergyRow {
  const char* pressure;
  double water, soft, isentropic, brode, isothermal, ratio, added_ml;
};

TEST_F(ProofCases, Chk35StoredEnergy) {
  const EnergyRow rows[] = {{"1.0 MPa", 0.029, 0.106, 172, 317, 206, 6000, 0.058},
                            {"3.5 MPa", 0.353, 1.29, 729, 1108, 1186, 2070, 0.20},
                            {"14.0 MPa", 5.64, 20.7, 3376, 4434, 7043, 600, 0.81}};
  for (const EnergyRow& row : rows) {
    auto in = hose(row.pressure, "12.7 mm", "1 m");
    const auto water = proof_test(in, context);
    in.bulk_modulus = typed<quantity::PressureDifference>("600 MPa");
    const auto soft = proof_test(in, context);
    ASSERT_TRUE(water && soft);
    const auto expect = [&](const char* what, const char* unit, double printed, double got,
                            double half_digit) {
      // 0.5 %, but never finer than the digits that are printed.
      test::check({"proof-test", fmt::format("CHK-35, {}: {}", row.pressure, what),
                   "fluids notes 9.2, CHK-35", fmt::format("{} {}", printed, unit), printed, got,
                   std::max(0.005 * printed, half_digit),
                   "0.5 % as stated there, or half a unit of its last digit"});
    };
    const StoredEnergy& e = water->energy;
    expect("water", "J", row.water, e.liquid.value.si, row.water < 1 ? 0.0005 : 0.005);
    expect("liquid of K 0.6 GPa", "J", row.soft, soft->energy.liquid.value.si,
           row.soft < 1    ? 0.0005
           : row.soft < 10 ? 0.005
                           : 0.05);
    expect("air, isentropic", "J", row.isentropic, e.gas_isentropic.value.si, 0.5);
    expect("air, upper figure", "J", row.brode, e.gas_brode.value.si, 0.5);
    expect("air, isothermal", "J", row.isothermal, e.gas_isothermal.value.si, 0.5);
    expect("air against water", "times", row.ratio, e.gas_to_liquid, row.ratio > 5000 ? 50 : 5);
    expect("water added", "mL", row.added_ml, water->liquid_added.value.si * 1e6,
           row.added_ml < 0.1 ? 0.0005 : 0.005);
    EXPECT_NEAR(e.volume.value.si * 1e3, 0.1267, 0.00005);
  }
}

TEST_F(ProofCases, ABubbleAt14MPa) {
  const auto got = proof_test(hose("14.0 MPa", "12.7 mm", "1 m"), context);
  ASSERT_TRUE(got);
  test::check({"proof-test", "1 mL of air at 14 MPa", "fluids notes 9.2", "about 27 J", 27,
               got->energy.bubble.value.si, 0.5, k_half});
}

TEST_F(ProofCases, HosesSection5WaterAgainstAir) {
  // -8 hose, 13/32 in bore, 0.6 m, 4000 psi.
  const auto got = proof_test(hose("4000 psi", "13/32 in", "0.6 m"), context);
  ASSERT_TRUE(got);
  const char* source = "hoses notes, section 5, last paragraph";
  test::check({"proof-test", "-8, 0.6 m: inside", source, "50 cm3", 50,
               got->energy.volume.value.si * 1e6, 0.5, k_half});
  test::check({"proof-test", "-8, 0.6 m, 4000 psi: water", source, "8.7 J", 8.7,
               got->energy.liquid.value.si, 0.05, k_half});
  test::check({"proof-test", "-8, 0.6 m, 4000 psi: air", source, "2.8 kJ", 2.8,
               got->energy.gas_isentropic.value.si / 1e3, 0.05, k_half});
  EXPECT_GT(got->energy.gas_to_liquid, 300);
}

// ---------------------------------------------------------------- CHK-34

TEST_F(ProofCases, Chk34TrappedHeatedLiquid) {
  // 3.0e5 psi x 0.00046 /F x 50 F: per 10 degC (18 F) it is 18/50 of 6900 psi.
  auto in = hose("1000 psi", "0.5 in", "1 m");
  in.bulk_modulus = typed<quantity::PressureDifference>("300000 psi");
  in.expansion = quantity::ratio(0.00046 * 1.8);
  const auto got = proof_test(in, context);
  ASSERT_TRUE(got);
  const double psi = quantity::psi_gauge(1).si;
  test::check({"proof-test", "CHK-34: liquid heated by 50 degF between closed ends",
               "engineering-data page of a maker of hydraulic components", "6900 psi", 6900,
               got->trapped_rise.value.si / psi * 50.0 / 18.0, 0.5, "printed in full"});
}

TEST_F(ProofCases, GasolineTrappedRisesByEachKelvin) {
  // fluids notes 9.1: 1.03 GPa x 1.30e-3 = 1.34 MPa per K.
  test::check({"proof-test", "gasoline between closed ends, 1 K", "fluids notes 9.1", "1.34 MPa",
               1.34, trapped_rise({1.03e9, 1.30e-3}, 1.0) / 1e6, 0.005, k_half});
}

// ---------------------------------------------------------------- case 16: by table

TEST_F(ProofCases, Case16ProofByTableNotByRatio) {
  struct Row {
    const char* size;
    double psi;
    double operating;
  };
  for (const Row& row : {Row{"-12", 3000, 1750}, Row{"-20", 1250, 600}, Row{"-40", 300, 200}}) {
    const auto got = proof_limit(context, {ProofFamily::medium_elastomer, row.size, {}, {}});
    ASSERT_TRUE(got) << row.size;
    const double psi = got->proof.si / quantity::psi_gauge(1).si;
    test::check({"proof-test", fmt::format("case 16: MIL-H-8794 {}", row.size),
                 "AC 43.13-1B CHG 1 table 9-3, page 9-22", fmt::format("{} psi", row.psi), row.psi,
                 psi, 1e-6, "printed in full"});
    EXPECT_NE(row.psi, 2.0 * row.operating);
  }
}

// ---------------------------------------------------------------- case 6: change of length

TEST_F(ProofCases, Case6ChangeOfLength) {
  auto in = hose("1000 psi", "0.5 in", "32 in");
  for (const auto& [text, per_cent] :
       {std::pair{"32.64 in +- 0.001 in", 2.0}, std::pair{"30.72 in +- 0.001 in", -4.0}}) {
    in.marks_low = quantity::Measured<quantity::Length>{quantity::inches(32), {}, 0, {}};
    const auto high = *quantity::parse_measured(text, quantity::KindOf::length);
    in.marks_high = quantity::Measured<quantity::Length>{
        {high.value.si}, high.expanded->si, high.value.resolution_si, text};
    const auto got = proof_test(in, context);
    ASSERT_TRUE(got);
    test::check({"proof-test", fmt::format("case 6: 32 in of hose, {:+} %", per_cent),
                 "AC 43.13-1B CHG 1 fig. 9-9; MIL-PRF-11588H 4.5.4",
                 fmt::format("{:+} %", per_cent), per_cent, got->length_change->value.si * 100.0,
                 0.005, k_half});
  }
}

// ---------------------------------------------------------------- codes of an order

TEST_F(ProofCases, Case9ClockingCode) {
  test::check_text("hose-order", "case 9: clocking 50 degrees", "MIL-DTL-83796B 1.2", "10",
                   *clocking_code(quantity::degrees(50)));
  test::check_text("hose-order", "case 9: clocking 30 degrees", "MIL-DTL-83796/5 fig. 3 note 4",
                   "06", *clocking_code(quantity::degrees(30)));
}

TEST_F(ProofCases, LengthCodeOfTheExampleNumber) {
  test::check_text("hose-order", "16 4/8 in", "MIL-DTL-8790F 1.2; NAVEDTRA 14018 p. 5-12", "0164",
                   *length_code(typed<quantity::Length>("16 4/8 in").value));
}

// ---------------------------------------------------------------- cases 12, 13: clocking vectors

TEST_F(ProofCases, Cases12And13ClockingVectors) {
  // A straight hose along +x; near elbow down. Right of the viewer = -y.
  struct Row {
    const char* id;
    Vector far;
    double degrees;
  };
  for (const Row& row :
       {Row{"case 12: both down", {0, 0, -1}, 0}, Row{"case 12: far elbow up", {0, 0, 1}, 180},
        Row{"case 13: far elbow to the viewer's right", {0, -1, 0}, 90}}) {
    Shape straight;
    straight.tangents = {{1, 0, 0}, {1, 0, 0}, {1, 0, 0}};
    const double got = clocking(straight, {0, 0, -1}, row.far) / k_degree;
    test::check({"hose-shape", row.id, "hoses notes, section 11 (derived)",
                 fmt::format("{} deg", row.degrees), row.degrees, got, 1e-6, "exact"});
  }
}

// The tolerance of the clocking, as an incoming check judges by it.
TEST_F(ProofCases, ClockingToleranceByLength) {
  struct Row {
    const char* overall;
    const char* read;
    const char* word;
  };
  for (const Row& row : {Row{"24 in", "52.9 deg +- 0.1 deg", "conforms"},
                         Row{"24 in", "53.2 deg +- 0.1 deg", "does-not-conform"},
                         Row{"24 1/8 in", "54.9 deg +- 0.1 deg", "conforms"},
                         Row{"24 1/8 in", "55.2 deg +- 0.1 deg", "does-not-conform"}}) {
    HoseIncomingInput in;
    auto& order = in.ordered;
    order.specification = "elastomer hose";
    order.size = "-8";
    order.liner = Liner::elastomer;
    order.carries = Carries::oil;
    order.sleeve = FireSleeve::integral;
    order.near_end = {EndForm::elbow_90, "3/4-16", "", ""};
    order.far_end = {EndForm::elbow_90, "3/4-16", "", ""};
    order.overall = typed<quantity::Length>(row.overall);
    order.length_tolerance = typed<quantity::Length>("0.2 in");
    order.clocking = typed<quantity::Angle>("50 deg");
    order.makers_proof = typed<quantity::PressureGauge>("3000 psi");
    const auto read = *quantity::parse_measured(row.read, quantity::KindOf::angle);
    in.clocking = quantity::Measured<quantity::Angle>{{read.value.si}, read.expanded->si, 0, {}};
    const auto got = hose_incoming(in, context);
    ASSERT_TRUE(got);
    test::check_text("hose-incoming",
                     fmt::format("clocking 50 deg at {}: read {}", row.overall, row.read),
                     "MIL-DTL-83796/5 fig. 3 note 3: 3 degrees up to 2 ft, 5 above", row.word,
                     std::string(evidence::word(got->lines[1].verdict)));
  }
}

}  // namespace
