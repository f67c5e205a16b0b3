#include "hose/plan.hpp"

#include <gtest/gtest.h>

#include "hose/declarations.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using quantity::inches;

EnteredLength typed(const std::string& text) { return *quantity::read<quantity::Length>(text); }
bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}
quantity::Date day(int y, unsigned m, unsigned d) {
  return quantity::Date{std::chrono::year{y}, std::chrono::month{m}, std::chrono::day{d}};
}
double in_inches(const EnteredLength& l) { return l.value / inches(1); }

class CutPlan : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
    context.today = day(2026, 11, 25);
  }
  static StockCoil coil(const std::string& name, const std::string& length) {
    StockCoil c;
    c.name = name;
    c.family = "A";
    c.size = "-8";
    c.length = typed(length);
    return c;
  }
  static PieceToCut piece(const std::string& name, const std::string& length,
                          std::int64_t count = 1) {
    return {name, "A", "-8", typed(length), count};
  }
  static CutPlanInput usual() {
    CutPlanInput in;
    in.kerf = typed("0 in");
    in.end_trim = typed("0 in");
    in.least_kept = typed("10 in");
    return in;
  }
  std::string paths(const CutPlanInput& in) {
    const auto got = cut_plan(in, context);
    std::string all;
    if (!got) {
      for (const Problem& p : got.error()) all += p.path + " ";
    }
    return all;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

// By hand: 30 and 18 in fill the 48 in exactly; the longest first would put 30 with 16 in.
TEST_F(CutPlan, FillsACoilThatFirstFitWastes) {
  auto in = usual();
  in.aim = CutAim::opened;
  in.coils = {coil("one", "46 in"), coil("two", "48 in"), coil("three", "50 in")};
  in.pieces = {piece("a", "30 in"), piece("b", "18 in"), piece("c", "24 in"), piece("d", "22 in")};
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  EXPECT_TRUE(got->all_cut);
  ASSERT_EQ(got->totals.size(), 1U);
  EXPECT_NEAR(in_inches(got->totals[0].total), 94.0, 1e-9);
  EXPECT_TRUE(got->totals[0].proved);
  EXPECT_NEAR(in_inches(*got->totals[0].first_fit), 144.0, 1e-9);
  EXPECT_EQ(got->untouched, std::vector<std::string>{"three"});
  EXPECT_TRUE(says(got->notes, "that end must be square"));
  EXPECT_NE(got->in_words.find("50 in more"), std::string::npos);
}

TEST_F(CutPlan, RunningPositionsAndTheSum) {
  auto in = usual();
  in.kerf = typed("1/16 in");
  in.end_trim = typed("1/2 in");
  in.coils = {coil("one", "60 in")};
  in.pieces = {piece("a", "10 in"), piece("b", "20 in")};
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  ASSERT_EQ(got->coils.size(), 1U);
  const PlannedCoil& one = got->coils[0];
  ASSERT_EQ(one.cuts.size(), 2U);
  EXPECT_EQ(one.cuts[0].piece, "b") << "the longest first";
  EXPECT_NEAR(in_inches(one.cuts[0].from), 0.5, 1e-9);
  EXPECT_NEAR(in_inches(one.cuts[0].to), 20.5, 1e-9);
  EXPECT_NEAR(in_inches(one.cuts[1].from), 20.5625, 1e-9);
  EXPECT_NEAR(in_inches(one.cuts[1].to), 30.5625, 1e-9);
  EXPECT_NEAR(in_inches(one.remainder), 29.375, 1e-9);
  EXPECT_TRUE(one.goes_back);
  EXPECT_NEAR(in_inches(got->totals[0].total), 30.625, 1e-9);
  EXPECT_TRUE(says(got->working,
                   "one: 0.5 in trim + 20 in + 10 in + 2 x 0.0625 in kerf = 30.625 in of 60 in, "
                   "remainder 29.375 in"));
}

// "12 ft" once came back as "140 in": the length before is worked with, not only shown.
TEST_F(CutPlan, TheLengthBeforeKeepsItsDigits) {
  auto in = usual();
  in.coils = {coil("one", "12 ft")};
  in.pieces = {piece("a", "20 in")};
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  EXPECT_EQ(quantity::print(got->coils[0].length.value.si,
                            *quantity::find_unit(quantity::KindOf::length, "in"),
                            got->coils[0].length.resolution_si),
            "144.000 in");
  EXPECT_TRUE(says(got->notes, "without an age limit"));
}

TEST_F(CutPlan, AShortRemainderIsUsedUpAndSoAvoided) {
  auto in = usual();
  in.coils = {coil("short", "25 in"), coil("long", "60 in")};
  in.pieces = {piece("a", "20 in")};
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  EXPECT_EQ(got->coils[0].coil, "long") << "5 in of the short one would be lost";
  in.least_kept = typed("5 in");
  EXPECT_EQ(cut_plan(in, context)->coils[0].coil, "short") << "now both lose nothing";
  in.least_kept = typed("6 in");
  in.aim = CutAim::opened;
  const auto opened = cut_plan(in, context);
  EXPECT_EQ(opened->coils[0].coil, "short");
  EXPECT_FALSE(opened->coils[0].goes_back);
  EXPECT_NE(opened->coils[0].in_words.find("too short to keep"), std::string::npos);
}

TEST_F(CutPlan, TakesOffcutsThenTheOldest) {
  auto in = usual();
  in.coils = {coil("new", "60 in"), coil("old", "60 in"), coil("rest", "60 in")};
  in.coils[0].cure = "1Q2026";
  in.coils[1].cure = "1Q2024";
  in.coils[2].cure = "2Q2026";
  in.coils[2].offcut = true;
  in.pieces = {piece("a", "20 in")};
  EXPECT_EQ(cut_plan(in, context)->coils[0].coil, "rest");
  in.coils[2].offcut = false;
  EXPECT_EQ(cut_plan(in, context)->coils[0].coil, "old");
  in.coils[0].take = 1;
  EXPECT_EQ(cut_plan(in, context)->coils[0].coil, "new");
}

TEST_F(CutPlan, RefusesACoilThatIsTooOld) {
  auto in = usual();
  in.coils = {coil("old", "60 in"), coil("unknown", "60 in"), coil("good", "60 in")};
  for (auto& c : in.coils) c.oldest_quarters = 32;
  in.coils[0].cure = "3Q2018";
  in.coils[2].cure = "4Q2018";
  in.age_source = "maker's page";
  in.pieces = {piece("a", "20 in")};
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  ASSERT_EQ(got->refused.size(), 2U);
  EXPECT_EQ(got->coils[0].coil, "good");
  std::string all;
  for (const auto& r : got->refused) all += r.coil + ": " + r.why + "\n";
  EXPECT_NE(all.find("old: too old: cured 3Q2018, 32 quarters end with 3Q2026"), std::string::npos);
  EXPECT_NE(all.find("limit: maker's page"), std::string::npos);
  EXPECT_NE(all.find("unknown: it has an age limit but no cure date"), std::string::npos);
  in.day_of_use = day(2026, 9, 30);
  EXPECT_EQ(cut_plan(in, context)->refused.size(), 1U);
}

TEST_F(CutPlan, SaysWhatTheStockCannotHold) {
  auto in = usual();
  in.coils = {coil("one", "48 in")};
  in.pieces = {piece("a", "20 in", 3), piece("b", "55 in")};
  in.pieces.push_back({"c", "B", "-6", typed("10 in"), 1});
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->all_cut);
  ASSERT_EQ(got->not_cut.size(), 3U);
  EXPECT_EQ(got->coils[0].cuts.size(), 2U);
  std::string all;
  for (const auto& n : got->not_cut) all += n.piece + ": " + n.why + "\n";
  EXPECT_NE(all.find("a: the stock cannot hold one piece more"), std::string::npos) << all;
  EXPECT_NE(all.find("b: longer than any coil (48 in after the trim)"), std::string::npos) << all;
  EXPECT_NE(all.find("c: there is no B -6 in stock"), std::string::npos) << all;
  EXPECT_TRUE(says(got->notes, "a coil of 75 in more would hold them"));
  EXPECT_NE(got->in_words.find("3 pieces are not cut"), std::string::npos);
}

TEST_F(CutPlan, HosesAreNotMixed) {
  auto in = usual();
  in.coils = {coil("a", "60 in"), coil("b", "60 in"), coil("c", "60 in")};
  in.coils[1].size = "-6";
  in.coils[2].family = "B";
  in.pieces = {piece("x", "20 in")};
  in.pieces.push_back({"y", "A", "-6", typed("20 in"), 1});
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  ASSERT_EQ(got->coils.size(), 2U);
  EXPECT_EQ(got->coils[0].size + got->coils[1].size, "-8-6");
  EXPECT_EQ(got->untouched, std::vector<std::string>{"c"});
  EXPECT_EQ(got->totals.size(), 2U);
}

// The best plan so far with its bound, and never an endless search.
TEST_F(CutPlan, StoppedEarlyItShowsTheBound) {
  auto in = usual();
  in.kerf = typed("0.05 in");
  in.aim = CutAim::opened;
  for (int i = 0; i < 45; ++i) {
    in.pieces.push_back(piece(
        "p" + std::to_string(i),
        std::to_string(12 + (i * 37) % 23) + "." + std::to_string(10 + (i * 53) % 89) + " in"));
  }
  for (int i = 0; i < 18; ++i) {
    in.coils.push_back(coil("c" + std::to_string(i), std::to_string(70 + (i * 29) % 41) + " in"));
  }
  int asked = 0;
  context.progress = [&](double share) {
    EXPECT_GE(share, 0.0);
    EXPECT_LE(share, 1.0);
    return ++asked < 3;
  };
  const auto got = cut_plan(in, context);
  ASSERT_TRUE(got);
  EXPECT_TRUE(got->all_cut);
  EXPECT_FALSE(got->totals[0].proved);
  EXPECT_LT(got->totals[0].bound.value.si, got->totals[0].total.value.si);
  EXPECT_NE(got->totals[0].in_words.find("of the least possible"), std::string::npos);
  EXPECT_TRUE(says(got->notes, "stopped early"));
}

TEST_F(CutPlan, NamesWhatIsMissingOrWrong) {
  EXPECT_EQ(paths(usual()), "pieces coils ");
  auto in = usual();
  in.coils = {coil("one", "48 in")};
  in.pieces = {piece("a", "20 in")};
  in.coils[0].cure = "5Q2018";
  EXPECT_EQ(paths(in), "coils/0/cure ");
  in.coils[0].cure = "2Q2027";
  EXPECT_EQ(paths(in), "coils/0/cure ");
  in.coils[0].cure = "2Q2024";
  in.coils[0].oldest_quarters = 32;
  context.today = {};
  EXPECT_EQ(paths(in), "day_of_use ");
  in.coils[0].oldest_quarters.reset();
  in.pieces[0].count = 0;
  EXPECT_EQ(paths(in), "pieces/0/count ");
  in.pieces = {piece("a", "20 in", 200), piece("b", "20 in", 200)};
  EXPECT_EQ(paths(in), "pieces ");
  in.pieces = {piece("a", "0 in")};
  in.coils[0].length = typed("0 in");
  in.kerf = typed("-1 in");
  EXPECT_EQ(paths(in), "kerf pieces/0/length coils/0/length ");
  in = usual();
  in.pieces = {piece("a", "20 in")};
  in.coils.assign(201, coil("one", "48 in"));
  EXPECT_EQ(paths(in), "coils ");
}

TEST_F(CutPlan, IsDeclaredWithoutAGap) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<CutPlanInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<CutPlanAnswer>()), "");
}

}  // namespace
