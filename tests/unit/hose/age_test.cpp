#include "hose/age.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include "hose/declarations.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

quantity::Date day(const std::string& text) { return *quantity::parse_date(text); }

class HoseAge : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
    context.today = day("2026-11-25");
  }
  HoseAgeInput fitted() const {
    HoseAgeInput in;
    in.family = "MIL-H-8794";
    in.cure = "2Q2018";
    in.assembly = "A4Q2018";
    in.fitting = day("2019-04-20");
    return in;
  }
  HoseAgeAnswer of(const HoseAgeInput& in) const {
    const auto got = hose_age(in, context);
    EXPECT_TRUE(got) << got.error().front().path << ": " << got.error().front().what;
    return got ? *got : HoseAgeAnswer{};
  }
  /// "2026-06-30 2Q2026 past" of the figure whose words begin so.
  static std::string due(const HoseAgeAnswer& answer, const std::string& what) {
    static const char* const k_stands[] = {"not-dated", "within", "past"};
    for (const auto& f : answer.figures) {
      if (!f.what.starts_with(what)) continue;
      return fmt::format("{} {} {}", f.due ? quantity::print_date(*f.due) : "-", f.due_quarter,
                         k_stands[static_cast<int>(f.stands)]);
    }
    return "no such figure";
  }
  std::string paths(const HoseAgeInput& in) const {
    std::string all;
    const auto got = hose_age(in, context);
    if (got) return "none";
    for (const auto& p : got.error()) all += p.path + " ";
    return all;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(HoseAge, TwoClocks) {
  const auto got = of(fitted());
  ASSERT_EQ(got.clocks.size(), 2U);
  // End of 2Q2018 to 20 April 2019: three whole quarters and a part of the fourth.
  EXPECT_EQ(got.clocks[0].in_words, "3 whole quarters, from the end of 2Q2018 to 2019-04-20");
  EXPECT_EQ(got.clocks[1].in_words, "30 whole quarters, from fitting, 2019-04-20 to 2026-11-25");
}

TEST_F(HoseAge, ConflictingFiguresStandSideBySide) {
  const auto got = of(fitted());
  EXPECT_EQ(due(got, "acceptance"), "2026-06-30 2Q2026 within");  // delivered before it was fitted
  EXPECT_EQ(due(got, "cure to entry"), "2030-06-30 2Q2030 within");
  EXPECT_EQ(due(got, "MIL-STD-1523 "), "2021-06-30 2Q2021 within");
  EXPECT_EQ(due(got, "service life exposed"), "2026-04-20 2Q2026 past");
  EXPECT_EQ(due(got, "service life by its tag"), "2028-12-31 4Q2028 within");
  EXPECT_EQ(due(got, "engine-side"), "2024-04-20 2Q2024 past");
  EXPECT_EQ(due(got, "DIN 20066: assembly in all"), "2024-12-31 4Q2024 past");
  for (const auto& f : got.figures) {
    EXPECT_FALSE(f.source.empty()) << f.what;
    EXPECT_FALSE(f.known.empty()) << f.what;
    EXPECT_FALSE(f.decides) << f.what;
  }
  EXPECT_EQ(got.standing, AgeStanding::no_limit_entered);
  EXPECT_NE(got.in_words.find("past 3"), std::string::npos) << got.in_words;
}

TEST_F(HoseAge, OnlyAnEnteredLimitDecides) {
  auto in = fitted();
  in.own_limits.push_back({AgeClock::service, AgeFrom::fitting, 120, "maker's manual"});
  auto got = of(in);
  EXPECT_EQ(got.standing, AgeStanding::within_limit);
  EXPECT_TRUE(got.figures.front().decides);
  EXPECT_EQ(got.figures.front().source, "entered: maker's manual");
  EXPECT_EQ(due(got, "your limit in service"), "2029-04-20 2Q2029 within");
  in.own_limits.push_back({AgeClock::shelf, AgeFrom::cure, 6, ""});
  got = of(in);
  EXPECT_EQ(got.standing, AgeStanding::past_limit);  // on the shelf until April 2019
  EXPECT_EQ(due(got, "your limit on the shelf"), "2018-12-31 4Q2018 past");
  in.own_limits = {{AgeClock::service, AgeFrom::proof, 12, ""}};
  EXPECT_EQ(of(in).standing, AgeStanding::not_known);
}

TEST_F(HoseAge, WhatIsMissingIsAskedFor) {
  HoseAgeInput in;
  in.kind = HoseKind::elastomer;
  const auto got = of(in);
  ASSERT_EQ(got.missing.size(), 3U);
  EXPECT_TRUE(got.missing[0].starts_with("cure date"));
  EXPECT_TRUE(got.missing[1].starts_with("assembly date"));
  EXPECT_TRUE(got.missing[2].starts_with("day of fitting"));
  EXPECT_EQ(due(got, "acceptance"), "-  not-dated");
  EXPECT_EQ(got.clocks[0].in_words, "the cure date is not known");
  EXPECT_EQ(got.clocks[1].in_words, "not yet fitted");
}

TEST_F(HoseAge, AHoseOnTheShelfGoesOnAgeing) {
  auto in = fitted();
  in.fitting.reset();
  const auto got = of(in);
  EXPECT_EQ(due(got, "acceptance"), "2026-06-30 2Q2026 past");
  EXPECT_EQ(due(got, "service life exposed"), "-  not-dated");
  in.delivery = day("2019-03-04");
  EXPECT_EQ(due(of(in), "acceptance"), "2026-06-30 2Q2026 within");
}

TEST_F(HoseAge, TheCompoundSaysWhichFiguresSpeakOfIt) {
  auto in = fitted();
  EXPECT_EQ(due(of(in), "age of bulk hose"), "-  not-dated");  // the compound is not said
  in.liner = LinerCompound::nitrile;
  EXPECT_EQ(due(of(in), "age of bulk hose"), "no such figure");
  in.liner = LinerCompound::chlorinated_polyethylene;
  EXPECT_EQ(due(of(in), "age of bulk hose"), "2030-06-30 2Q2030 within");
}

TEST_F(HoseAge, PtfeHasNoAgeOnTheShelfButATest) {
  HoseAgeInput in;
  in.family = "AS1946 class I";
  in.assembly = "A1Q2020";
  in.proof = "2025-11-25";
  auto got = of(in);
  EXPECT_EQ(due(got, "storage"), "-  not-dated");
  EXPECT_EQ(due(got, "test date"), "2026-11-25 4Q2026 within");
  EXPECT_EQ(due(got, "service, US Navy at sea"), "2027-03-31 1Q2027 within");
  EXPECT_EQ(due(got, "service on condition"), "-  not-dated");
  EXPECT_EQ(got.missing.size(), 1U);
  EXPECT_NE(got.notes.back().find("not: run until it fails"), std::string::npos);
  in.proof = "2025-11-24";
  EXPECT_EQ(due(of(in), "test date"), "2026-11-24 4Q2026 past");
  in.proof.clear();
  EXPECT_EQ(of(in).missing.size(), 2U);
}

TEST_F(HoseAge, NamesWhatIsMissingOrContradicts) {
  EXPECT_EQ(paths({}), "kind ");
  auto in = fitted();
  in.kind = HoseKind::ptfe;
  EXPECT_EQ(paths(in), "kind ");
  in = fitted();
  in.family = "MIL-H-9999";
  EXPECT_EQ(paths(in), "family ");
  in = fitted();
  in.cure = "A2Q2018";
  EXPECT_EQ(paths(in), "cure ");
  in.cure = "1Q2019";  // after its assembly
  EXPECT_EQ(paths(in), "cure ");
  in.cure = "3Q2019";  // after fitting too
  EXPECT_EQ(paths(in), "cure cure ");
  in = fitted();
  in.proof = "2027-01-01";
  EXPECT_EQ(paths(in), "proof ");
  in = fitted();
  in.assembly = "soon";
  EXPECT_EQ(paths(in), "assembly ");
  context.today = {};
  EXPECT_EQ(paths(fitted()), "on ");
  in = fitted();
  in.on = day("2026-11-25");
  EXPECT_EQ(paths(in), "none");
}

TEST_F(HoseAge, IsDescribedWithoutAGap) {
  for (const auto* type : {&describe::type_of<HoseAgeInput>(), &describe::type_of<HoseAgeAnswer>(),
                           &describe::type_of<AgeFigure>(), &describe::type_of<AgeReading>(),
                           &describe::type_of<OwnAgeLimit>()}) {
    EXPECT_EQ(describe::undescribed_gap(*type), "") << type->name;
  }
}

}  // namespace
