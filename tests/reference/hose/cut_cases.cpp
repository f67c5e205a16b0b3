// Source:    hoses notes, section 11: case 2 (NAVEDTRA 14018 table 5-2), case 3 (TM 1-1500-204-23-2
//            table 4-22 against NAVEDTRA 14018) and case 11 (quarters of cure); section 1.2
//            (TM 1-1500-204-23-2 table 4-15: bores) with MIL-DTL-8789F 4.9.2 (ball). The totals of
//            cut plans are compared in tests/property/hose/cut_plan_laws.cpp.
// Tolerance: half a unit of the last printed digit; whole quarters and whole lengths exactly.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "hose/cut.hpp"
#include "hose/declarations.hpp"
#include "hose/plan.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

EnteredLength typed(const std::string& text) { return *quantity::read<quantity::Length>(text); }
double inches_of(const EnteredLength& l) { return l.value / quantity::inches(1); }

class CutCases : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  void expect(const char* id, const char* source, double expected, double got) {
    test::check({"hose-cut", id, source, fmt::format("{} in", expected), expected, got, 0.005,
                 "half a unit of the last printed digit"});
  }
  static AssemblyToMake assembly(Making making, const char* size, const char* overall) {
    AssemblyToMake a;
    a.name = "case";
    a.making = making;
    a.size = size;
    a.overall = typed(overall);
    return a;
  }
  double cut(const AssemblyToMake& a) {
    HoseCutInput in;
    in.assemblies = {a};
    const auto got = hose_cut(in, context);
    EXPECT_TRUE(got);
    return got ? inches_of(got->assemblies[0].cut_length) : 0.0;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(CutCases, Case2ElastomerTwoEnds) {
  auto a = assembly(Making::elastomer_screwed, "-8", "16.50 in");
  a.near_end.family = a.far_end.family = "MS24587";
  expect("case 2: -8, 16 4/8 in", "NAVEDTRA 14018 table 5-2", 14.62, cut(a));
}

TEST_F(CutCases, Case3PtfeByEitherTable) {
  auto a = assembly(Making::ptfe_sleeved, "-6", "18.00 in");
  a.pair_form = "straight";
  expect("case 3: -6 PTFE, per pair", "TM 1-1500-204-23-2 table 4-22", 16.38, cut(a));
  a.pair_form.clear();
  a.near_end.family = a.far_end.family = "MS27616 straight flared (PTFE)";
  expect("case 3: -6 PTFE, each end", "NAVEDTRA 14018 table 5-2", 16.38, cut(a));
}

TEST_F(CutCases, TheBallIsOneToTwoThousandthsUnderTheBore) {
  auto a = assembly(Making::elastomer_screwed, "-10", "20 in");
  a.near_end.family = a.far_end.family = "MS24587";
  a.proof_family = ProofFamily::high_elastomer;
  HoseCutInput in;
  in.assemblies = {a};
  const auto got = hose_cut(in, context);
  ASSERT_TRUE(got);
  std::string text;
  for (const auto& step : got->assemblies[0].card) {
    if (step.text.rfind("Bore check", 0) == 0) text = step.text.substr(12, 27);
  }
  test::check_text("hose-cut", "ball of the bore check, -10, bore 0.455 in",
                   "TM 1-1500-204-23-2 table 4-15; MIL-DTL-8789F 4.9.2",
                   "a ball of 0.453 to 0.454 in", text);
}

// Cured 2Q2018: 32 quarters end with 2Q2026, 48 with 2Q2030.
TEST_F(CutCases, Case11LastQuarterInWhichACoilMayBeCut) {
  const auto used_on = [&](std::int64_t quarters, int year, unsigned month, unsigned day) {
    CutPlanInput in;
    StockCoil coil;
    coil.name = "coil";
    coil.length = typed("60 in");
    coil.cure = "2Q2018";
    coil.oldest_quarters = quarters;
    in.coils = {coil};
    in.pieces = {{"a", "", "", typed("20 in"), 1}};
    in.day_of_use =
        quantity::Date{std::chrono::year{year} / static_cast<int>(month) / static_cast<int>(day)};
    const auto got = cut_plan(in, context);
    return got && got->refused.empty() ? "cut" : "refused";
  };
  const char* source = "hoses notes, section 11, case 11";
  test::check_text("cut-plan", "case 11: cured 2Q2018, 32 quarters, on 30 June 2026", source, "cut",
                   used_on(32, 2026, 6, 30));
  test::check_text("cut-plan", "case 11: the day after", source, "refused",
                   used_on(32, 2026, 7, 1));
  test::check_text("cut-plan", "case 11: 48 quarters, on 30 June 2030", source, "cut",
                   used_on(48, 2030, 6, 30));
  test::check_text("cut-plan", "case 11: the day after", source, "refused",
                   used_on(48, 2030, 7, 1));
}

}  // namespace
