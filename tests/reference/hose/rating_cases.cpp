// Source:    hoses notes, section 11, cases 10, 11, 14, 15 and 16 (AC 43.13-1B table 9-3, MA620
//            table 1, AS150E, study cards on AS1933), and section 12, items 4 to 7 and 9; the whole
//            of AC 43.13-1B CHG 1 table 9-3, page 9-22, typed here a second time from section 1.1.
// Tolerance: exact for table figures; half a unit of the last printed digit for derived ones.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "hose/date_code.hpp"
#include "hose/declarations.hpp"
#include "hose/detail/rows.hpp"
#include "hose/family.hpp"
#include "hose/rating.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

constexpr const char* k_exact = "a figure of the table";
constexpr const char* k_half = "half a unit of the last printed digit";
constexpr const char* k_table = "AC 43.13-1B CHG 1 table 9-3, page 9-22";

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}

double psi(quantity::PressureGauge p) { return p.si / quantity::psi_gauge(1).si; }

class RatingCases : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  /// A line that an ordinary hose does with ease, behind the firewall.
  HoseRatingInput line() {
    HoseRatingInput in;
    in.demand.fluid = LineFluid::mineral_engine_oil;
    in.demand.working_pressure = typed<quantity::PressureGauge>("60 psi");
    in.demand.surge = typed<quantity::PressureDifference>("20 psi");
    in.demand.fluid_highest = typed<quantity::Temperature>("220 degF");
    in.demand.surrounding_highest = typed<quantity::Temperature>("180 degF");
    in.demand.lowest = typed<quantity::Temperature>("0 degF");
    in.demand.fitting = quantity::Date{std::chrono::year{2026} / 11 / 25};
    HoseCandidate hose;
    hose.name = "one";
    hose.family = "MIL-H-8794";
    hose.size = "-8";
    hose.liner = LinerCompound::nitrile;
    hose.cure = "2Q2024";
    hose.assembly = "A3Q25";
    in.candidates.push_back(hose);
    return in;
  }
  std::string stands(const HoseRatingInput& in) {
    const auto got = hose_rating(in, context);
    EXPECT_TRUE(got);
    const auto word = got->ranked.front().stands;
    if (word == CandidateStands::accepted) return "accepted";
    return word == CandidateStands::asks ? "asks" : "refused";
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

struct Row {
  const char* size;
  const char* tube;
  const char* inside;
  const char* outside;
  double operating, proof, burst;
  const char* radius;
  double proof_ratio, burst_ratio;  ///< as the notes derive them
};

// Every row of the table; the ratios are those the notes derive, to two decimals.
TEST_F(RatingCases, Table9_3Whole) {
  const Row rows[] = {{"-3", "3/16", "1/8", "0.45", 3000, 6000, 12000, "3.00", 2.00, 4.00},
                      {"-4", "1/4", "3/16", "0.52", 3000, 6000, 12000, "3.00", 2.00, 4.00},
                      {"-5", "5/16", "1/4", "0.58", 3000, 5000, 10000, "3.38", 1.67, 3.33},
                      {"-6", "3/8", "5/16", "0.67", 2000, 4500, 9000, "4.00", 2.25, 4.50},
                      {"-8", "1/2", "13/32", "0.77", 2000, 4000, 8000, "4.63", 2.00, 4.00},
                      {"-10", "5/8", "1/2", "0.92", 1750, 3500, 7000, "5.50", 2.00, 4.00},
                      {"-12", "3/4", "5/8", "1.08", 1750, 3000, 6000, "6.50", 1.71, 3.43},
                      {"-16", "1", "7/8", "1.23", 800, 1600, 3200, "7.38", 2.00, 4.00},
                      {"-20", "1 1/4", "1 1/8", "1.50", 600, 1250, 2500, "9.00", 2.08, 4.17},
                      {"-24", "1 1/2", "1 3/8", "1.75", 500, 1000, 2000, "11.00", 2.00, 4.00},
                      {"-32", "2", "1 13/16", "2.22", 350, 700, 1400, "13.25", 2.00, 4.00},
                      {"-40", "2 1/2", "2 3/8", "2.88", 200, 300, 1000, "24.00", 1.50, 5.00},
                      {"-48", "3", "3", "3.56", 200, 300, 800, "33.00", 1.50, 4.00}};
  const hose::detail::Rows table(context.table("hose-medium-elastomer"));
  ASSERT_EQ(table.size(), std::size(rows));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const Row& row = rows[i];
    EXPECT_EQ(table.word(i, "size"), row.size);
    EXPECT_EQ(table.word(i, "tube-od"), row.tube) << row.size;
    EXPECT_EQ(table.word(i, "id"), row.inside) << row.size;
    EXPECT_EQ(table.word(i, "od"), row.outside) << row.size;
    EXPECT_EQ(table.word(i, "bend-radius"), row.radius) << row.size;
    const auto operating = *table.value<quantity::PressureGauge>(i, "operating");
    const auto proof = *table.value<quantity::PressureGauge>(i, "proof");
    const auto burst = *table.value<quantity::PressureGauge>(i, "burst");
    EXPECT_NEAR(psi(operating), row.operating, 1e-9) << row.size;
    EXPECT_NEAR(psi(proof), row.proof, 1e-9) << row.size;
    EXPECT_NEAR(psi(burst), row.burst, 1e-9) << row.size;
    EXPECT_NEAR(proof.si / operating.si, row.proof_ratio, 0.005) << row.size;
    EXPECT_NEAR(burst.si / operating.si, row.burst_ratio, 0.005) << row.size;
    const auto figures = family_figures(context, "MIL-H-8794", row.size);
    ASSERT_TRUE(figures) << row.size;
    test::check({"hose-rating", fmt::format("operating pressure, {}", row.size), k_table,
                 fmt::format("{} psi", row.operating), row.operating,
                 psi(figures->operating->value), 1e-9 * row.operating, k_exact});
  }
}

// The program must not derive proof from operating by one ratio: the table has several.
TEST_F(RatingCases, Case16ProofIsNoFixedRatio) {
  const hose::detail::Rows table(context.table("hose-medium-elastomer"));
  const std::pair<const char*, double> printed[] = {{"-12", 3000}, {"-20", 1250}, {"-40", 300}};
  for (const auto& [size, proof] : printed) {
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.word(i, "size") != size) continue;
      const double got = psi(*table.value<quantity::PressureGauge>(i, "proof"));
      const double operating = psi(*table.value<quantity::PressureGauge>(i, "operating"));
      test::check({"hose-rating", fmt::format("case 16: proof of {}", size), k_table,
                   fmt::format("{} psi", proof), proof, got, 1e-9 * proof, k_exact});
      EXPECT_GT(std::abs(got - 2.0 * operating), 1.0) << size;
    }
  }
}

// The cross checks that the notes name: a row typed wrongly breaks them.
TEST_F(RatingCases, TheOtherTablesAgreeWithThemselves) {
  using quantity::PressureGauge;
  const hose::detail::Rows high(context.table("hose-high-elastomer"));
  ASSERT_EQ(high.size(), 7U);
  for (std::size_t i = 0; i < high.size(); ++i) {
    EXPECT_EQ(high.word(i, "operating"), "3000");
    const auto burst = high.value<PressureGauge>(i, "burst");
    if (burst) {
      EXPECT_NEAR(burst->si, 2.0 * high.value<PressureGauge>(i, "proof")->si, 1e-3);
    }
    EXPECT_LT(high.value<quantity::Length>(i, "bore")->si,
              high.value<quantity::Length>(i, "id")->si);
  }
  // -16: one copy prints 19,000 psi where twice the proof would be 10,000; left empty.
  EXPECT_EQ(high.word(6, "burst"), "") << "the doubtful figure is back: check the edition";
  const hose::detail::Rows ptfe(context.table("hose-ptfe-proof"));
  ASSERT_EQ(ptfe.size(), 10U);
  for (std::size_t i = 0; i < ptfe.size(); ++i) {
    const auto flanged = ptfe.value<PressureGauge>(i, "proof-flanged");
    if (flanged) {
      EXPECT_LE(flanged->si, ptfe.value<PressureGauge>(i, "proof-swivel")->si);
    }
  }
  // Every 90 degree end of AS1635 has a band of 0.070 in for its drop.
  const hose::detail::Rows ends(context.table("hose-swivel-ends"));
  ASSERT_EQ(ends.size(), 9U);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    EXPECT_NEAR((*ends.value<quantity::Length>(i, "drop-most") -
                 *ends.value<quantity::Length>(i, "drop-least")) /
                    quantity::inches(1),
                0.070, 1e-9)
        << ends.word(i, "size");
  }
}

struct Range {
  const char* family;
  const char* size;
  double lowest, highest;  ///< degF; -999 where none was seen
};

TEST_F(RatingCases, TemperaturesOfTheFamilies) {
  const Range rows[] = {{"MIL-H-8794", "-12", -65, 250},    {"MIL-H-8794", "-16", -40, 250},
                        {"MIL-H-8788", "-8", -65, 160},     {"MIL-DTL-83796", "-8", -65, 250},
                        {"AS1946 class I", "-8", -67, 450}, {"AS1946 class II", "-8", -67, 275},
                        {"AS620", "-8", -65, 400},          {"AS1339", "-8", -999, 400},
                        {"AS604", "-20", -999, 275},        {"AS604", "-8", -999, 400},
                        {"MIL-H-25579", "-8", -999, -999}};
  for (const Range& row : rows) {
    const auto got = family_figures(context, row.family, row.size);
    ASSERT_TRUE(got) << row.family;
    const auto expect = [&](const char* which, double printed,
                            const std::optional<TemperatureFigure>& figure) {
      if (printed < -900) {
        EXPECT_FALSE(figure) << row.family;
        return;
      }
      ASSERT_TRUE(figure) << row.family;
      test::check({"hose-rating", fmt::format("{} {}, {} temperature", row.family, row.size, which),
                   "hoses notes 1.1 to 1.3: " + figure->source, fmt::format("{} degF", printed),
                   printed, (figure->value.si - 273.15) * 1.8 + 32.0, 1e-9, k_exact});
    };
    expect("lowest", row.lowest, got->lowest);
    expect("highest", row.highest, got->highest);
  }
}

TEST_F(RatingCases, Case10LeakageTypeTest) {
  const hose::detail::Rows table(context.table("hose-medium-elastomer"));
  ASSERT_EQ(table.word(3, "size"), "-6");
  test::check({"hose-rating", "case 10: -6, 70 % of burst",
               "hoses notes, case 10 (MIL-DTL-8794F 4.8.19)", "6300 psi", 6300,
               0.7 * psi(*table.value<quantity::PressureGauge>(3, "burst")), 0.5, k_half});
}

TEST_F(RatingCases, Case14HotBurst) {
  test::check({"hose-rating", "case 14: hot burst of DN06 over cold",
               "MA620 table 1, as derived in case 14", "0.699", 0.699,
               convoluted_hot_ratio(context)->si, 0.0005, k_half});
}

TEST_F(RatingCases, Case15FlowOfTheFireTest) {
  const auto figures = family_figures(context, "MIL-H-8794", "-8");
  ASSERT_TRUE(figures && figures->inside);
  const double inside = figures->inside->value / quantity::inches(1);
  test::check({"hose-rating", "case 15: 5 x ID squared, 13/32 in", "AS150E, case 15", "0.825",
               0.825, 5.0 * inside * inside, 0.0005, k_half});
}

TEST_F(RatingCases, Item4EthanolWithAnUnnamedElastomer) {
  auto in = line();
  in.demand.fluid = LineFluid::petrol_with_alcohol;
  in.candidates[0].liner = LinerCompound::not_said;
  test::check_text("hose-rating", "item 4: petrol with alcohol, elastomer not named for it",
                   "hoses notes, section 12", "asks", stands(in));
}

TEST_F(RatingCases, Item5SuctionWithoutAVacuumFigure) {
  auto in = line();
  in.demand.suction = typed<quantity::PressureDifference>("4 inHg");
  test::check_text("hose-rating", "item 5: suction line without a vacuum figure",
                   "hoses notes, section 12", "asks", stands(in));
}

TEST_F(RatingCases, Item6NoCureOrAssemblyDate) {
  auto in = line();
  in.candidates[0].cure.clear();
  test::check_text("hose-rating", "item 6: no cure date", "hoses notes, section 12", "asks",
                   stands(in));
  in = line();
  in.candidates[0].assembly.clear();
  test::check_text("hose-rating", "item 6: no assembly date", "hoses notes, section 12", "asks",
                   stands(in));
}

TEST_F(RatingCases, Item7NoSleeveAheadOfTheFirewall) {
  auto in = line();
  in.demand.ahead_of_firewall = true;
  in.candidates[0].sleeve = SleeveFitted::none;
  in.candidates[0].fire_class = FireTested::class_a;
  test::check_text("hose-rating", "item 7: elastomer ahead of the firewall without sleeve",
                   "MIL-DTL-8794F 6.1", "refused", stands(in));
}

TEST_F(RatingCases, Item9AluminiumEnds) {
  auto in = line();
  auto& hose = in.candidates[0];
  hose.family = "AS1946 class I";
  hose.liner = LinerCompound::not_said;
  hose.ends = EndMetal::aluminium;
  hose.proof = "2026-06-01";
  hose.operating = typed<quantity::PressureGauge>("1500 psi");
  hose.operating_to = typed<quantity::Temperature>("450 degF");
  in.demand.fluid_highest = typed<quantity::Temperature>("275 degF");
  test::check_text("hose-rating", "item 9: PTFE with aluminium ends at 275 degF", "AS1946F 1.2.1",
                   "accepted", stands(in));
  in.demand.fluid_highest = typed<quantity::Temperature>("276 degF");
  test::check_text("hose-rating", "item 9: PTFE with aluminium ends at 276 degF", "AS1946F 1.2.1",
                   "refused", stands(in));
}

}  // namespace
